package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.quietline.bench.OutsideResult;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.agreement.ComparisonScore;

/** How do the bench's results compare with those of outside laboratories? */
final class OutsideComparisons {
  private OutsideComparisons() {}

  /** The samples that both measured, in the order of outside.csv. */
  static List<OutsideDifference> differences(Records records) {
    List<OutsideDifference> differences = new ArrayList<>();
    for (OutsideResult outside : own(records)) {
      for (String instrument : records.instruments()) {
        double[] values =
            records.results().stream()
                .filter(r -> r.instrument().equals(instrument) && isOf(r, outside))
                .filter(records::counts)
                .mapToDouble(r -> records.value(r).orElseThrow())
                .toArray();
        if (values.length > 0) {
          differences.add(difference(outside, instrument, values));
        }
      }
    }
    return differences;
  }

  private static List<OutsideResult> own(Records records) {
    return records.bench().outsideResults().stream()
        .filter(o -> o.method().equals(records.method().key()))
        .filter(o -> o.reportedOn().filter(d -> d.isAfter(records.now().toLocalDate())).isEmpty())
        .toList();
  }

  private static boolean isOf(Result result, OutsideResult outside) {
    return result.sample().equals(outside.sample())
        && (result.role() == Role.PRODUCT || result.role() == Role.RETEST);
  }

  private static OutsideDifference difference(
      OutsideResult outside, String instrument, double... values) {
    double own = 0;
    for (double value : values) {
      own += value / values.length;
    }
    return new OutsideDifference(
        outside.sample(),
        instrument,
        outside.laboratory(),
        outside.reportedOn(),
        own,
        values.length,
        outside.value().doubleValue(),
        stated(outside),
        outside
            .assessmentDeviation()
            .map(d -> OptionalDouble.of(d.doubleValue()))
            .orElse(OptionalDouble.empty()),
        outside.origin().file(),
        outside.origin().line());
  }

  /** An expanded uncertainty says nothing without its factor. */
  private static OptionalDouble stated(OutsideResult outside) {
    return outside.expandedUncertainty().isPresent() && outside.coverageFactor().isPresent()
        ? OptionalDouble.of(
            outside.expandedUncertainty().get().doubleValue()
                / outside.coverageFactor().get().doubleValue())
        : OptionalDouble.empty();
  }

  /** The differences with their scores, by the bench's own uncertainty where that is known. */
  static List<OutsideScore> scored(List<OutsideDifference> differences, List<Uncertainty> own) {
    return differences.stream()
        .map(
            d ->
                scored(
                    d,
                    own.stream()
                        .filter(u -> u.instrument().equals(d.instrument()))
                        .findFirst()
                        .map(Uncertainty::budget)
                        .orElse(Answer.cannotSay("the bench's own uncertainty is not known"))))
        .toList();
  }

  private static OutsideScore scored(OutsideDifference d, Answer<Uncertainty.Budget> budget) {
    Answer<Double> zeta;
    if (d.stated().isEmpty()) {
      zeta = Answer.cannotSay("the laboratory states no uncertainty with its factor");
    } else if (budget.value().isEmpty()) {
      zeta = Answer.cannotSay("the bench's own uncertainty is not known");
    } else {
      zeta =
          Answer.of(
              ComparisonScore.zeta(
                      d.own(),
                      budget.value().get().standard(),
                      d.outside(),
                      d.stated().getAsDouble())
                  .value());
    }
    return new OutsideScore(d, zeta, round(d));
  }

  /** The z score; z′ where the assigned value's uncertainty is too large to leave out. */
  private static Answer<OutsideScore.Round> round(OutsideDifference d) {
    if (d.assessment().isEmpty()) {
      return Answer.cannotSay("outside.csv gives no assessment_deviation");
    }
    double sigma = d.assessment().getAsDouble();
    boolean primed =
        d.stated().isPresent() && ComparisonScore.isUncertain(d.stated().getAsDouble(), sigma);
    return Answer.of(
        new OutsideScore.Round(
            primed
                ? ComparisonScore.zPrime(d.own(), d.outside(), sigma, d.stated().getAsDouble())
                    .value()
                : ComparisonScore.z(d.own(), d.outside(), sigma).value(),
            primed));
  }

  /** What the outside laboratories of the method state on the average, if any does. */
  static OptionalDouble statedUncertainty(Records records) {
    return own(records).stream().flatMapToDouble(o -> stated(o).stream()).average();
  }
}
