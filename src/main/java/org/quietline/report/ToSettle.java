package org.quietline.report;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.ConflictFinding;
import org.quietline.assess.Contradiction;
import org.quietline.assess.Findings;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.Signal;
import org.quietline.assess.Slip;
import org.quietline.assess.StreamFindings;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.Accounting.InConflict;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.bench.Action;
import org.quietline.bench.Check;

/**
 * The list of everything a person has to settle, as comma-separated text: {@code
 * kind,id,file,line,field,text,what_to_do,row}. With nothing to settle it holds its header only, so
 * that no earlier list is taken for this one.
 */
public final class ToSettle {
  private static final List<String> HEADER =
      List.of("kind", "id", "file", "line", "field", "text", "what_to_do", "row");

  private final List<List<String>> lines = new ArrayList<>();

  private ToSettle() {}

  /**
   * Writes the list.
   *
   * @param findings what a review found
   * @param out where to; it is flushed and left open
   * @throws IOException when writing fails
   */
  public static void write(Findings findings, OutputStream out) throws IOException {
    Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    SafeCsv csv = new SafeCsv(writer);
    csv.line(HEADER);
    for (List<String> line : lines(findings)) {
      csv.line(line);
    }
    writer.flush();
  }

  /**
   * How much there is to settle.
   *
   * @param findings what a review found
   * @return the number of lines under the header
   */
  public static int count(Findings findings) {
    return lines(findings).size();
  }

  private static List<List<String>> lines(Findings findings) {
    ToSettle list = new ToSettle();
    findings.methods().forEach(list::signals);
    list.conflicts(findings);
    findings.methods().forEach(list::slips);
    findings.contradictions().stream().filter(Contradiction::open).forEach(list::contradiction);
    findings
        .accounting()
        .aside()
        .forEach(a -> list.aside(a.rows() == 0 ? "remark" : "set-aside", a));
    findings.accounting().settingsAside().forEach(a -> list.aside("setting", a));
    findings.idleActions().forEach(a -> list.idle(a, findings));
    return list.lines;
  }

  private void signals(MethodFindings method) {
    for (StreamFindings stream : method.streams()) {
      for (Signal signal : stream.signals()) {
        if (signal.open()) {
          Optional<Point> point =
              stream.points().stream().filter(p -> p.at().equals(signal.id().at())).findFirst();
          add(
              "signal",
              signal.id().toString(),
              point.map(Point::file).orElse(""),
              point.map(p -> String.valueOf(p.line())).orElse(""),
              signal.id().rule().key(),
              RuleWords.seen(signal, method.method()),
              "Find the cause and write it into actions.csv with this id as signal.",
              "");
        }
      }
    }
  }

  private void slips(MethodFindings method) {
    for (Slip slip : method.slips().questions()) {
      if (slip.open()) {
        add(
            "slip",
            slip.id().toString(),
            slip.result().origin().file(),
            String.valueOf(slip.result().origin().line()),
            slip.id().check().key(),
            SlipWords.written(slip.result()),
            SlipWords.question(slip, method.method())
                + " Compare it with the pad or the instrument, and answer by a row in actions.csv"
                + " with this id as signal and a cause.",
            "");
      }
    }
  }

  private void conflicts(Findings findings) {
    List<ConflictFinding> open =
        findings.across().conflicts().stream().filter(ConflictFinding::open).toList();
    for (InConflict row : findings.accounting().conflicts()) {
      Optional<ConflictFinding> asked =
          open.stream().filter(c -> c.conflict().other().origin().equals(row.origin())).findFirst();
      if (row.id().isEmpty() || asked.isPresent()) {
        add(
            "conflict",
            row.id().map(Object::toString).orElse(""),
            row.origin().file(),
            String.valueOf(row.origin().line()),
            row.field(),
            row.text(),
            asked.map(ConflictWords::sentence).orElse("Correct the wrong one of the two: " + row),
            row.raw());
      }
    }
  }

  private void contradiction(Contradiction found) {
    add(
        "contradiction",
        found.id().toString(),
        found.asked().origins().get(0).file(),
        String.valueOf(found.asked().origins().get(0).line()),
        found.check().key(),
        ContradictionWords.sentence(found),
        ContradictionWords.whatToDo(found.check())
            + (found.check() == Check.TIME_IN_FUTURE
                ? ""
                : " Or answer it by a row in actions.csv with this id as signal and a cause."),
        "");
  }

  private void aside(String kind, SetAside aside) {
    add(
        kind,
        "",
        aside.file(),
        String.valueOf(aside.line()),
        aside.field(),
        aside.text(),
        aside.reason(),
        aside.raw());
  }

  private void idle(Action action, Findings findings) {
    add(
        "action",
        action.matter().toString(),
        action.origin().file(),
        String.valueOf(action.origin().line()),
        "signal",
        action.cause().orElse(""),
        IntakeWords.idle(action, findings),
        "");
  }

  private void add(String... fields) {
    lines.add(List.of(fields));
  }
}
