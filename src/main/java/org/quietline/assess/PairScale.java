package org.quietline.assess;

import java.util.List;
import java.util.Optional;
import org.quietline.assess.PairFindings.AtLimit;
import org.quietline.assess.PairFindings.Form;
import org.quietline.assess.PairFindings.Scale;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;
import org.quietline.stats.model.PrecisionChoice;
import org.quietline.stats.sample.DuplicateDeviation;
import org.quietline.stats.sample.PooledDeviation;

/** How the deviation of a reading follows the level, from pairs; constant where it cannot tell. */
final class PairScale {
  private final double[] differences;
  private final double[] levels;
  private final double rounding;
  private final Optional<PrecisionChoice.Chosen> chosen;
  private final Optional<String> whyConstant;

  private PairScale(List<Result> pairs) {
    differences =
        pairs.stream()
            .map(r -> r.pair().orElseThrow())
            .mapToDouble(p -> p.first() - p.second())
            .toArray();
    levels = pairs.stream().mapToDouble(PairScale::level).toArray();
    rounding =
        CalibrationLine.roundingOf(
            pairs.stream()
                .flatMap(r -> r.readings().stream())
                .filter(Reading.Measured.class::isInstance)
                .map(r -> ((Reading.Measured) r).value())
                .toList());
    boolean positive = pairs.stream().allMatch(r -> level(r) > 0);
    Optional<PrecisionChoice> choice =
        positive ? Optional.of(PrecisionChoice.of(levels, differences)) : Optional.empty();
    chosen =
        choice
            .filter(PrecisionChoice.Chosen.class::isInstance)
            .map(PrecisionChoice.Chosen.class::cast);
    whyConstant =
        choice.map(PairScale::whyConstant).orElse(Optional.of("a level is not above zero"));
  }

  /** At least one pair. */
  static PairScale of(List<Result> pairs) {
    return new PairScale(pairs);
  }

  static double level(Result paired) {
    Result.Pair pair = paired.pair().orElseThrow();
    return (pair.first() + pair.second()) / 2;
  }

  private static Optional<String> whyConstant(PrecisionChoice choice) {
    if (choice instanceof PrecisionChoice.TooFewPairs few) {
      return Optional.of("needs " + PrecisionChoice.LEAST_PAIRS + " pairs, has " + few.pairs());
    }
    if (choice instanceof PrecisionChoice.LevelsAlike alike) {
      return Optional.of(
          "needs levels that differ by a factor of "
              + PrecisionChoice.LEAST_RATIO
              + ", has "
              + alike.ratio());
    }
    return choice instanceof PrecisionChoice.NoDifference
        ? Optional.of("needs pairs that differ")
        : Optional.empty();
  }

  /** The deviation of a reading; no smaller than what reading in steps leaves behind. */
  double deviationAt(double level) {
    double found =
        chosen.isPresent() && level > 0
            ? chosen.get().profile().deviationAt(level)
            : DuplicateDeviation.of(differences).deviation();
    return Math.max(found, rounding);
  }

  /**
   * One a pair for a constant deviation. Where the form was chosen, as many as give a deviation
   * estimated from normal values the upper end that the deviation has at this level.
   */
  double degreesOfFreedomAt(double level) {
    if (chosen.isEmpty() || !(level > 0)) {
      return differences.length;
    }
    double high = chosen.get().deviationInterval(level, 0.95).upper();
    double low = 1;
    double most = differences.length;
    double wanted = high / chosen.get().profile().deviationAt(level);
    while (most - low > 0.01) {
      double middle = (low + most) / 2;
      if (new PooledDeviation(middle, 1).interval(0.95).upper() > wanted) {
        low = middle;
      } else {
        most = middle;
      }
    }
    return low;
  }

  Answer<Scale> found(Optional<Double> limit) {
    DuplicateDeviation constant = DuplicateDeviation.of(differences);
    if (constant.deviation() == 0) {
      return Answer.cannotSay(
          "needs pairs that differ: the readings of all "
              + differences.length
              + " pairs are equal");
    }
    Form form = chosen.map(c -> Form.valueOf(c.profile().form().name())).orElse(Form.CONSTANT);
    return Answer.of(
        new Scale(
            form,
            chosen.map(c -> c.profile().constantPart()).orElse(constant.deviation()),
            chosen.map(c -> c.profile().proportionalPart()).orElse(0.0),
            differences.length,
            whyConstant,
            limit
                .filter(l -> l > 0)
                .map(l -> Answer.of(atLimit(l, constant)))
                .orElse(Answer.cannotSay("needs a product limit above zero"))));
  }

  private AtLimit atLimit(double limit, DuplicateDeviation constant) {
    return chosen
        .map(
            c ->
                new AtLimit(
                    limit, c.profile().deviationAt(limit), c.deviationInterval(limit, 0.95)))
        .orElse(new AtLimit(limit, constant.deviation(), constant.interval(0.95)));
  }
}
