package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.quietline.assess.Answer;
import org.quietline.assess.Concern;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.PairsOfPeriod;
import org.quietline.assess.PersonPairs;
import org.quietline.assess.Replicates;
import org.quietline.bench.Method;
import org.quietline.bench.ReplicateKind;
import org.quietline.report.Block.Column;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Table;

/** "Do readings agree?" */
final class AgreementSection {
  private static final String NO_PAIRS =
      "Cannot say: there is no result with two readings to compare.";

  /** Fewer pairs than this make a limit that holds clearly less than 95 %. */
  private static final int SETTLED_PAIRS = 20;

  private final MethodFindings findings;
  private final Method method;
  private final Numbers numbers;

  private AgreementSection(MethodFindings findings) {
    this.findings = findings;
    this.method = findings.method();
    this.numbers = new Numbers(method.decimals());
  }

  /** The section of one method. */
  static List<Block> of(MethodFindings findings) {
    AgreementSection section = new AgreementSection(findings);
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading("Do readings agree?"));
    if (findings.replicates().isEmpty() && findings.precision().intermediate().value().isEmpty()) {
      blocks.add(Paragraph.body(NO_PAIRS + section.noDeviation()));
      return blocks;
    }
    if (findings.replicates().isEmpty()) {
      blocks.add(Paragraph.body(NO_PAIRS));
    }
    blocks.add(new Table(columns(), section.rows()));
    blocks.addAll(section.people());
    if (!findings.replicates().isEmpty()) {
      blocks.add(Paragraph.small(section.kind()));
    }
    return blocks;
  }

  /** The columns shared by the tables of a method's page. */
  static List<Column> columns() {
    return List.of(Column.words("", 0.36), Column.answers("", 0.15), Column.words("", 0.49));
  }

  private List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (Replicates pairs : findings.replicates()) {
      String what =
          "readings agree within (" + pairs.role().key() + ", " + pairs.instrument() + ")";
      rows.add(
          pairs.deviation() == 0
              ? Row.of(what, "cannot say", identical(pairs))
              : new Row(
                  List.of(
                      what, numbers.fine(pairs.limit()), deviation(pairs) + " " + inPeriod(pairs)),
                  tooMany(pairs) ? Colour.ACCENT : Colour.INK));
    }
    method
        .published()
        .ifPresent(
            p ->
                rows.add(
                    Row.of(
                        "published repeatability limit",
                        Numbers.written(p.limit()),
                        p.source().orElse("no source given"))));
    rows.add(
        answer(
            "one result over days, deviation",
            findings.precision().intermediate(),
            "control results about their mean, all calibrations and people"));
    return rows;
  }

  private static String deviation(Replicates pairs) {
    return (pairs.pairs() < SETTLED_PAIRS
            ? "provisional, under " + SETTLED_PAIRS + " pairs; deviation "
            : "about 95 % of pairs; deviation ")
        + Numbers.uncertainty(pairs.deviation())
        + " ("
        + Numbers.uncertainty(pairs.interval().lower())
        + " to "
        + Numbers.uncertainty(pairs.interval().upper())
        + "), n = "
        + pairs.pairs()
        + leftOut(pairs.leftOut())
        + ".";
  }

  private static String identical(Replicates pairs) {
    return pairs.pairs() == 1
        ? "the only pair is twice the same number"
        : "all " + pairs.pairs() + " pairs are twice the same number";
  }

  private String inPeriod(Replicates pairs) {
    return policy(pairs).map(PairWords::period).orElse("No pair in the period.");
  }

  private Optional<PairsOfPeriod> policy(Replicates pairs) {
    return findings.free().policy().stream()
        .filter(p -> p.instrument().equals(pairs.instrument()) && p.role() == pairs.role())
        .findFirst();
  }

  private boolean tooMany(Replicates pairs) {
    return policy(pairs)
        .filter(p -> findings.verdict().concerns().contains(new Concern.PairsDisagree(p)))
        .isPresent();
  }

  private String noDeviation() {
    return " How far one result is off over days: cannot say, "
        + findings.precision().intermediate().why().orElse("")
        + ".";
  }

  private static Row answer(String what, Answer<Double> answer, String note) {
    return answer
        .value()
        .map(v -> Row.of(what, Numbers.uncertainty(v), note))
        .orElse(Row.of(what, "cannot say", answer.why().orElse("")));
  }

  private static String leftOut(int results) {
    return results == 0 ? "" : "; " + results + " left out";
  }

  private List<Paragraph> people() {
    List<Paragraph> lines = new ArrayList<>();
    for (boolean differs : new boolean[] {true, false}) {
      String each =
          findings.people().stream()
              .filter(p -> p.differs() == differs)
              .map(AgreementSection::person)
              .collect(Collectors.joining("; "));
      if (!each.isEmpty()) {
        String start =
            differs ? "Further apart than the others' pairs: " : "Pairs against the others': ";
        Paragraph line = Paragraph.small(start + each + ".");
        lines.add(differs ? line.in(Colour.ACCENT) : line);
      }
    }
    return lines;
  }

  private static String person(PersonPairs p) {
    String numbers =
        p.person()
            + " ("
            + p.role().key()
            + ", "
            + p.instrument()
            + ") "
            + Numbers.uncertainty(p.deviation())
            + " against "
            + Numbers.uncertainty(p.othersDeviation())
            + " ("
            + p.pairs()
            + " and "
            + p.othersPairs()
            + " pairs";
    return numbers + (p.differs() ? ", chance " + Numbers.percent(p.chance()) : "") + ")";
  }

  private String kind() {
    return method.replicateKind() == ReplicateKind.RE_READ
        ? "Both readings are of one vial: the pair shows how steadily the instrument reads. It says"
            + " nothing about pipetting or preparation, nor about moves from day to day."
        : "Each reading is a fresh portion taken through the whole method: the pair shows pipetting,"
            + " preparation and reading together. It says nothing about moves from day to day.";
  }
}
