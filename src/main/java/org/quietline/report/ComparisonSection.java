package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.Answer;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.OutsideDifference;
import org.quietline.assess.OutsideScore;
import org.quietline.assess.PairedAgreement;
import org.quietline.assess.PairedComparison;
import org.quietline.assess.PairedComparison.Verdict;
import org.quietline.report.Block.Caption;
import org.quietline.report.Block.Column;
import org.quietline.report.Block.Figure;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Table;
import org.quietline.stats.Interval;

/** "Do others find the same?" */
final class ComparisonSection {
  /** The latest outside results that are listed. */
  private static final int MOST = 6;

  /** Lines of fewer samples are marked. */
  private static final int ADVISED = 30;

  /** Below this chance points are said to leave a straight line. */
  private static final double BENT = 0.01;

  private static final double HEIGHT = 92;

  private final MethodFindings findings;
  private final Numbers numbers;

  private ComparisonSection(MethodFindings findings) {
    this.findings = findings;
    this.numbers = new Numbers(findings.method().decimals());
  }

  /** The section of one method; nothing where no sample was measured in two ways. */
  static List<Block> of(MethodFindings findings) {
    return findings.batches().comparisons().isEmpty()
        ? List.of()
        : new ComparisonSection(findings).blocks();
  }

  /** A verdict as printed and written. */
  static String word(Verdict verdict) {
    return switch (verdict) {
      case ALIKE -> "alike";
      case DIFFERENT -> "different";
      case UNDECIDED -> "cannot say yet";
    };
  }

  private List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading("Do others find the same?"));
    List<Row> rows = new ArrayList<>();
    for (PairedComparison c : findings.batches().comparisons()) {
      rows.add(
          Row.of(
              ways(c),
              Integer.toString(c.pairs()),
              numbers.signed(c.mean()),
              c.intervals()
                  .value()
                  .map(
                      i ->
                          numbers.signed(i.of95().lower())
                              + " to "
                              + numbers.signed(i.of95().upper()))
                  .orElse("cannot say"),
              verdict(c)));
    }
    blocks.add(
        new Table(
            List.of(
                Column.words("", 0.31),
                Column.numbers("samples", 0.1),
                Column.numbers("difference", 0.12),
                Column.numbers("95 % interval", 0.24),
                Column.words("within the allowable bias?", 0.23)),
            rows,
            true));
    blocks.add(
        Paragraph.small(
            "Alike: the 90 % interval lies within the allowable bias either way (two one-sided tests)."
                + " A difference also holds what sessions and calibrations differ. No correlation is"
                + " given: it says nothing of agreement."));
    for (PairedComparison c : findings.batches().comparisons()) {
      c.agreement().value().ifPresent(a -> blocks.add(figure(c, a)));
    }
    scores().ifPresent(blocks::add);
    return blocks;
  }

  private Figure figure(PairedComparison comparison, PairedAgreement agreement) {
    List<Paragraph> side = new ArrayList<>();
    side.add(
        Paragraph.small(
                "About 95 of 100 such differences lie between "
                    + numbers.signed(agreement.limits().lower())
                    + " and "
                    + numbers.signed(agreement.limits().upper())
                    + ".")
            .in(Colour.INK));
    side.add(
        Paragraph.small(
            "With 95 % confidence the limits lie from "
                + range(agreement.ofLower())
                + ", and from "
                + range(agreement.ofUpper())
                + "."));
    side.add(Paragraph.small(trend(agreement)));
    return new Figure(
        ways(comparison),
        findings.method().unit() + ", against the mean of both, n = " + agreement.points().size(),
        side,
        DifferencePictures.of(comparison, agreement, numbers),
        HEIGHT,
        List.of(Caption.of(lines(agreement))),
        "Chart of " + agreement.points().size() + " differences against their levels.");
  }

  private String range(Interval interval) {
    return numbers.signed(interval.lower()) + " to " + numbers.signed(interval.upper());
  }

  private static String trend(PairedAgreement agreement) {
    if (agreement.trend().isEmpty()) {
      return "Whether it depends on the level: cannot say, all samples have one level.";
    }
    Interval slope = agreement.trend().get();
    String range = percent(slope.lower()) + " to " + percent(slope.upper());
    return slope.lower() <= 0 && slope.upper() >= 0
        ? "Nothing shows that it depends on the level; it may change by "
            + range
            + " of what the level changes."
        : "It depends on the level, or the two scatter differently: it changes by "
            + range
            + " of what the level changes.";
  }

  private static String percent(double share) {
    return (share > 0 ? "+" : "") + Numbers.fixed(100 * share, 0) + " %";
  }

  private String lines(PairedAgreement agreement) {
    if (agreement.deming().value().isEmpty() && agreement.passingBablok().value().isEmpty()) {
      return "No line of one against the other: "
          + agreement.deming().why().orElse("the levels are too much alike")
          + ".";
    }
    String few =
        agreement.points().size() < ADVISED
            ? " " + ADVISED + " samples over all levels are advised for lines."
            : "";
    String bent =
        agreement.linearityChance().isPresent() && agreement.linearityChance().getAsDouble() < BENT
            ? " The points do not follow a straight line."
            : "";
    return line("Deming, both scattering alike", agreement.deming())
        + "; "
        + line("Passing–Bablok", agreement.passingBablok())
        + "; in brackets the 95 % intervals. Slope 1 and intercept 0 mean the same result."
        + bent
        + few;
  }

  private String line(String name, Answer<PairedAgreement.Line> line) {
    return name
        + ": "
        + line.value()
            .map(
                l ->
                    "slope "
                        + Numbers.fixed(l.slope(), 3)
                        + " ("
                        + Numbers.fixed(l.ofSlope().lower(), 3)
                        + " to "
                        + Numbers.fixed(l.ofSlope().upper(), 3)
                        + "), intercept "
                        + numbers.signed(l.intercept())
                        + " ("
                        + range(l.ofIntercept())
                        + ")")
            .orElse("cannot say, " + line.why().orElse(""));
  }

  private static String ways(PairedComparison c) {
    return kind(c.kind()) + c.one() + " less " + c.other();
  }

  private static String kind(PairedComparison.Kind kind) {
    return switch (kind) {
      case LABORATORY, INSTRUMENT -> "";
      case REAGENT_LOT -> "lot ";
      case PERSON -> "person ";
    };
  }

  private String verdict(PairedComparison c) {
    if (c.verdict().value().isEmpty()) {
      return "cannot say: " + c.verdict().why().orElseThrow();
    }
    String word = word(c.verdict().value().get());
    boolean more = c.verdict().value().get() == Verdict.UNDECIDED;
    return !more
        ? word
        : c.needed().isPresent() && c.needed().getAsInt() > c.pairs()
            ? word + ": needs about " + (c.needed().getAsInt() - c.pairs()) + " more"
            : word;
  }

  /** Scores of the latest outside results, as far as uncertainties are stated. */
  private Optional<Block> scores() {
    List<OutsideScore> all = findings.batches().outside();
    if (all.isEmpty()) {
      return Optional.empty();
    }
    List<OutsideScore> latest = all.subList(Math.max(0, all.size() - MOST), all.size());
    boolean rounds = latest.stream().anyMatch(s -> s.round().value().isPresent());
    List<Column> columns = new ArrayList<>();
    columns.add(Column.words("outside results", rounds ? 0.3 : 0.36));
    columns.add(Column.numbers("bench", 0.12));
    columns.add(Column.numbers("outside", 0.12));
    columns.add(Column.numbers("difference", 0.13));
    columns.add(Column.numbers("E-n (fits from −1 to 1)", rounds ? 0.19 : 0.27));
    if (rounds) {
      columns.add(Column.numbers("z (fits −2 to 2)", 0.14));
    }
    return Optional.of(
        new Table(columns, latest.stream().map(s -> score(s, rounds)).toList(), true));
  }

  private Row score(OutsideScore score, boolean rounds) {
    OutsideDifference d = score.difference();
    List<String> cells = new ArrayList<>();
    cells.add(d.sample() + (d.reportedOn().isPresent() ? ", " + d.reportedOn().get() : ""));
    cells.add(numbers.fine(d.own()));
    cells.add(numbers.fine(d.outside()));
    cells.add(numbers.signed(d.difference()));
    cells.add(
        score
            .en()
            .value()
            .map(e -> Numbers.fixed(e, 2))
            .orElse(d.stated().isEmpty() ? "none stated" : "own not known"));
    if (rounds) {
      cells.add(
          score
              .round()
              .value()
              .map(z -> Numbers.fixed(z.score(), 2) + (z.primed() ? " (z′)" : ""))
              .orElse("no round"));
    }
    return new Row(cells, Colour.INK);
  }
}
