package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.OutsideDifference;
import org.quietline.assess.PairedComparison;
import org.quietline.assess.Uncertainty;
import org.quietline.report.Block.Column;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Table;
import org.quietline.stats.agreement.ComparisonScore;
import org.quietline.stats.compare.Equivalence;

/** "Do others find the same?" */
final class ComparisonSection {
  /** The latest outside results that are listed. */
  private static final int MOST = 6;

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
  static String word(Equivalence.Verdict verdict) {
    return switch (verdict) {
      case EQUIVALENT -> "alike";
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
              kind(c.kind()) + c.one() + " less " + c.other(),
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
                Column.words("", 0.34),
                Column.numbers("samples", 0.1),
                Column.numbers("difference", 0.12),
                Column.numbers("95 % interval", 0.19),
                Column.words("within the allowable bias?", 0.25)),
            rows,
            true));
    scores().ifPresent(blocks::add);
    blocks.add(
        Paragraph.small(
            "Alike: the 90 % interval lies within the allowable bias either way (two one-sided tests)."
                + " A difference also holds what sessions and calibrations differ. No correlation is"
                + " given: it says nothing of agreement."));
    return blocks;
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
    boolean more = c.verdict().value().get() == Equivalence.Verdict.UNDECIDED;
    return !more
        ? word
        : c.needed().isPresent() && c.needed().getAsInt() > c.pairs()
            ? word + ": needs about " + (c.needed().getAsInt() - c.pairs()) + " more"
            : word;
  }

  /** E-n numbers of the latest outside results, where both uncertainties are stated. */
  private Optional<Block> scores() {
    List<OutsideDifference> all = findings.batches().outside();
    List<Row> rows = new ArrayList<>();
    for (OutsideDifference d : all.subList(Math.max(0, all.size() - MOST), all.size())) {
      OptionalDouble own = uncertainty(d.instrument());
      rows.add(
          Row.of(
              d.sample() + (d.reportedOn().isPresent() ? ", " + d.reportedOn().get() : ""),
              numbers.fine(d.own()),
              numbers.fine(d.outside()),
              numbers.signed(d.difference()),
              own.isPresent() && d.stated().isPresent()
                  ? Numbers.fixed(
                      ComparisonScore.en(
                              d.own(),
                              2 * own.getAsDouble(),
                              d.outside(),
                              2 * d.stated().getAsDouble())
                          .value(),
                      2)
                  : d.stated().isEmpty() ? "laboratory states no uncertainty" : "own not known"));
    }
    return rows.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Table(
                List.of(
                    Column.words("outside results", 0.36),
                    Column.numbers("bench", 0.13),
                    Column.numbers("outside", 0.13),
                    Column.numbers("difference", 0.14),
                    Column.numbers("E-n (fits from −1 to 1)", 0.24)),
                rows,
                true));
  }

  private OptionalDouble uncertainty(String instrument) {
    return findings.batches().uncertainty().stream()
        .filter(u -> u.instrument().equals(instrument))
        .flatMap(u -> u.budget().value().stream())
        .mapToDouble(Uncertainty.Budget::standard)
        .findFirst();
  }
}
