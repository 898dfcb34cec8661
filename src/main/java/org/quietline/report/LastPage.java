package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.Findings;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.StreamFindings;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.FileRead;
import org.quietline.report.Block.Column;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Table;
import org.quietline.report.Block.Title;

/** The last page: what came in, row by row where it was set aside, and how to read the rest. */
final class LastPage {
  private static final int HASH_DIGITS = 12;

  /** More sentences than this fill pages nobody reads; findings.json holds them all. */
  private static final int MOST_ASIDE = 200;

  /** A stream with more results in the period is listed in findings.json alone. */
  private static final int MOST_CONTROLS = 40;

  private LastPage() {}

  static Page of(Findings findings) {
    Accounting accounting = findings.accounting();
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Title("What came in, and how to read this", "", Optional.empty()));
    blocks.add(Paragraph.lead(IntakeWords.counts(accounting) + "."));
    blocks.addAll(files(accounting));
    blocks.addAll(aside(accounting));
    blocks.addAll(AcrossSection.of(findings));
    blocks.addAll(idle(findings));
    blocks.addAll(controls(findings));
    blocks.addAll(HowToRead.blocks());
    return new Page("What came in, and how to read this", blocks);
  }

  private static List<Block> files(Accounting accounting) {
    if (accounting.files().isEmpty()) {
      return List.of(Paragraph.body("No file was read."));
    }
    List<Row> rows = new ArrayList<>();
    for (FileRead file : accounting.files()) {
      String hash = file.sha256();
      rows.add(
          Row.of(
              file.file(),
              String.valueOf(file.rows()),
              hash.substring(0, Math.min(HASH_DIGITS, hash.length()))));
    }
    return List.of(
        new Table(
            List.of(
                Column.words("file", 0.6),
                Column.numbers("rows", 0.1),
                Column.numbers("first 12 digits of SHA-256", 0.3)),
            rows,
            false));
  }

  private static List<Block> aside(Accounting accounting) {
    List<Block> blocks = new ArrayList<>();
    if (!accounting.aside().isEmpty()) {
      blocks.add(new Heading("Which rows were set aside?"));
      List<String> sentences = IntakeWords.sentences(accounting.aside());
      sentences.stream()
          .limit(MOST_ASIDE)
          .forEach(a -> blocks.add(Paragraph.small(a).in(Colour.INK)));
      if (sentences.size() > MOST_ASIDE) {
        blocks.add(
            Paragraph.small(
                    "And " + (sentences.size() - MOST_ASIDE) + " more, all in findings.json.")
                .in(Colour.INK));
      }
    }
    if (!accounting.settingsAside().isEmpty()) {
      blocks.add(new Heading("Which settings could not be used?"));
      accounting.settingsAside().forEach(a -> blocks.add(Paragraph.small(a.toString())));
    }
    return blocks;
  }

  private static List<Block> idle(Findings findings) {
    if (findings.idleActions().isEmpty()) {
      return List.of();
    }
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading("Which actions close nothing?"));
    findings
        .idleActions()
        .forEach(a -> blocks.add(Paragraph.small(IntakeWords.idle(a, findings)).in(Colour.INK)));
    return blocks;
  }

  /** The control results of the period with their places, so that each point can be traced. */
  private static List<Block> controls(Findings findings) {
    List<Row> rows = new ArrayList<>();
    for (MethodFindings method : findings.methods()) {
      Numbers numbers = new Numbers(method.method().decimals());
      for (StreamFindings stream : method.streams()) {
        stream.points().stream()
            .filter(p -> findings.period().contains(p.at()))
            .limit(MOST_CONTROLS)
            .forEach(p -> rows.add(control(stream, p, numbers)));
      }
    }
    if (rows.isEmpty()) {
      return List.of();
    }
    return List.of(
        new Heading("Where do the control results of the period come from?"),
        new Table(
            List.of(
                Column.words("control", 0.22),
                Column.words("taken", 0.17),
                Column.numbers("result", 0.09),
                Column.numbers("apart", 0.08),
                Column.numbers("weighted mean", 0.14),
                Column.numbers("file, line", 0.3)),
            rows,
            false));
  }

  private static Row control(StreamFindings stream, Point point, Numbers numbers) {
    return Row.of(
        Reasons.name(stream),
        Dates.minute(point.at()),
        point.value().isPresent()
            ? numbers.fine(point.value().getAsDouble()) + (point.excluded() ? " out" : "")
            : "a bound",
        point.range().isPresent() ? numbers.result(point.range().getAsDouble()) : "",
        point.weightedMean().isPresent() ? numbers.fine(point.weightedMean().getAsDouble()) : "",
        point.file() + ", " + point.line());
  }
}
