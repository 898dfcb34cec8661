package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.quietline.assess.Answer;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.Precision;
import org.quietline.assess.Release;
import org.quietline.assess.Uncertainty;
import org.quietline.assess.VarianceSplit;
import org.quietline.assess.VarianceSplit.Averaged;
import org.quietline.assess.VarianceSplit.Part;
import org.quietline.report.Block.Column;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Table;

/** "How sure is a result, and may the batches go?" */
final class BatchSection {
  /** More batches that are not simply within are named by their number. */
  private static final int MOST = 8;

  private final MethodFindings findings;
  private final String unit;
  private final Numbers numbers;

  private BatchSection(MethodFindings findings) {
    this.findings = findings;
    this.unit = findings.method().unit().toString();
    this.numbers = new Numbers(findings.method().decimals());
  }

  /** The section of one method; nothing where nothing was asked. */
  static List<Block> of(MethodFindings findings) {
    return new BatchSection(findings).blocks();
  }

  private List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    if (findings.precision().splits().isEmpty() && findings.batches().releases().isEmpty()) {
      return blocks;
    }
    blocks.add(new Heading("How sure is a result, and may the batches go?"));
    Answer<VarianceSplit> split = findings.precision().leading();
    if (split.value().isPresent()) {
      blocks.add(parts(split.value().get()));
      blocks.add(Paragraph.small(averaging(split.value().get())).in(Colour.INK));
    } else {
      blocks.add(
          Paragraph.body("Where the scatter comes from: cannot say, " + split.why().get() + "."));
    }
    levels().ifPresent(blocks::add);
    findings.batches().uncertainty().forEach(u -> blocks.add(Paragraph.body(statement(u))));
    blocks.addAll(releases());
    return blocks;
  }

  private Table parts(VarianceSplit split) {
    List<Row> rows = new ArrayList<>();
    for (Part part : split.parts()) {
      rows.add(
          Row.of(
              source(part.source(), split),
              Numbers.uncertainty(part.deviation()),
              between(part.interval95().lower(), part.interval95().upper()),
              Integer.toString(part.groups())));
    }
    rows.add(
        Row.of(
            "a reported result, mean of "
                + Numbers.count(split.replicates(), "reading", "readings")
                + ", any calibration",
            Numbers.uncertainty(split.reported().deviation()),
            between(split.reported().interval95().lower(), split.reported().interval95().upper()),
            ""));
    return new Table(
        List.of(
            Column.words(split.material() + " on " + split.instrument() + ", " + unit, 0.5),
            Column.numbers("deviation", 0.14),
            Column.numbers("95 % interval", 0.22),
            Column.numbers("known from", 0.14)),
        rows,
        true);
  }

  private static String between(double lower, double upper) {
    return (lower == 0 ? "0" : Numbers.uncertainty(lower)) + " to " + Numbers.uncertainty(upper);
  }

  private static String source(VarianceSplit.Source source, VarianceSplit split) {
    return switch (source) {
      case CALIBRATION -> "between calibrations";
      case SESSION -> "between sessions of a calibration";
      case RESULT ->
          split.sessions() == split.results()
              ? "between results, that is sessions, of a calibration"
              : "between results of a calibration";
      case READING -> "between readings of a result";
    };
  }

  /** What averaging buys, by these components. */
  private static String averaging(VarianceSplit split) {
    return "The mean of "
        + split.averaging().stream().map(BatchSection::set).collect(Collectors.joining("; "))
        + ".";
  }

  private static String set(Averaged set) {
    String readings = Numbers.count(set.readings(), "reading", "readings");
    String where =
        set.calibrations() > 1
            ? " under each of " + set.calibrations() + " calibrations"
            : set.sessions() > 1 ? " in each of " + set.sessions() + " sessions" : "";
    return readings + where + " would scatter by " + Numbers.uncertainty(set.deviation());
  }

  /** Whether other levels scatter alike. */
  private Optional<Paragraph> levels() {
    List<VarianceSplit> known =
        findings.precision().splits().stream()
            .map(Precision.Split::split)
            .flatMap(a -> a.value().stream())
            .toList();
    if (known.size() < 2) {
      return Optional.empty();
    }
    return Optional.of(
        Paragraph.small(
            "By level, a reported result: "
                + known.stream()
                    .map(
                        s ->
                            s.material()
                                + " on "
                                + s.instrument()
                                + " at "
                                + numbers.fine(s.level())
                                + " "
                                + Numbers.uncertainty(s.reported().deviation())
                                + " ("
                                + between(
                                    s.reported().interval95().lower(),
                                    s.reported().interval95().upper())
                                + ")")
                    .collect(Collectors.joining("; "))
                + "."));
  }

  private String statement(Uncertainty uncertainty) {
    if (uncertainty.budget().value().isEmpty()) {
      return "Uncertainty of a result on "
          + uncertainty.instrument()
          + ": cannot say, "
          + uncertainty.budget().why().orElseThrow()
          + ".";
    }
    Uncertainty.Budget budget = uncertainty.budget().value().get();
    return "A result on "
        + uncertainty.instrument()
        + " is uncertain by ± "
        + Numbers.uncertainty(budget.expanded())
        + " "
        + unit
        + " (expanded, 95 %, k = "
        + Numbers.fixed(budget.coverageFactor(), 2)
        + ", standard "
        + Numbers.uncertainty(budget.standard())
        + "), at "
        + numbers.fine(budget.level())
        + away(budget)
        + ", by "
        + Numbers.count(budget.results(), "control result", "control results")
        + " of "
        + Dates.full(budget.from())
        + " to "
        + Dates.full(budget.to())
        + ": "
        + ReleaseWords.parts(budget)
        + ".";
  }

  /** A control far from the limit says little of the scatter there. */
  private String away(Uncertainty.Budget budget) {
    if (budget.limit().isEmpty()) {
      return "";
    }
    double limit = budget.limit().getAsDouble();
    double ratio = Math.max(limit, budget.level()) / Math.min(limit, budget.level());
    return ratio > 0 && ratio <= 1.5
        ? ", taken to hold at the limit of " + numbers.result(limit)
        : ", which is far from the limit of "
            + numbers.result(limit)
            + ": a control near it would tell more";
  }

  private List<Block> releases() {
    List<Release> releases = findings.batches().releases();
    if (releases.isEmpty()) {
      return List.of();
    }
    List<Release> near =
        releases.stream()
            .filter(r -> Set.of("too close to call", "beyond").contains(ReleaseWords.decided(r)))
            .toList();
    List<Block> blocks = new ArrayList<>();
    blocks.add(Paragraph.body(counts(releases) + held(releases)));
    if (!near.isEmpty()) {
      blocks.add(table(near.subList(0, Math.min(MOST, near.size()))));
    }
    if (near.size() > MOST) {
      blocks.add(
          Paragraph.small(
              "And "
                  + (near.size() - MOST)
                  + " more; all are in findings.json, and release writes a note on each."));
    }
    return blocks;
  }

  /** Which batches are held whatever their value. */
  private static String held(List<Release> releases) {
    List<Release> held =
        releases.stream().filter(r -> ReleaseWords.decided(r).equals("held")).toList();
    if (held.isEmpty()) {
      return "";
    }
    String why =
        held.stream()
            .flatMap(r -> r.held().stream())
            .map(Release.Held::kind)
            .distinct()
            .map(ReleaseWords::kind)
            .collect(Collectors.joining(", "));
    return " Held whatever their value ("
        + why
        + "): "
        + held.stream().limit(MOST).map(Release::sample).collect(Collectors.joining(", "))
        + (held.size() > MOST ? " and " + (held.size() - MOST) + " more" : "")
        + ".";
  }

  private static String counts(List<Release> releases) {
    List<String> parts = new ArrayList<>();
    for (String word : List.of("within", "held", "too close to call", "beyond", "cannot say")) {
      long many = releases.stream().filter(r -> ReleaseWords.decided(r).equals(word)).count();
      if (many > 0) {
        parts.add(many + " " + word);
      }
    }
    return "Batches of the period against their limit, each with its own uncertainty: "
        + String.join(", ", parts)
        + (releases.stream().allMatch(r -> r.judged().value().isEmpty())
            ? " (" + releases.get(0).judged().why().orElse("") + ")"
            : "")
        + ".";
  }

  private Table table(List<Release> releases) {
    List<Row> rows = new ArrayList<>();
    for (Release release : releases) {
      ReleaseWords words = new ReleaseWords(release);
      rows.add(
          Row.of(
              release.sample(),
              release.value().isPresent() ? numbers.fine(release.value().getAsDouble()) : "none",
              release
                  .judged()
                  .map(Release.Judged::chance)
                  .value()
                  .map(ReleaseWords::chance)
                  .orElse("cannot say"),
              ReleaseWords.decided(release),
              (words.wayOut() + " " + words.heldShort()).strip()));
    }
    return new Table(
        List.of(
            Column.words("sample", 0.11),
            Column.numbers("result", 0.09),
            Column.numbers("conforms", 0.13),
            Column.words("", 0.16),
            Column.words("what would settle it", 0.51)),
        rows);
  }
}
