package org.quietline.assess;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.quietline.assess.Diagnosis.Pattern;
import org.quietline.bench.Calibration;
import org.quietline.bench.Result;
import org.quietline.stats.compare.VonNeumannTest;
import org.quietline.stats.control.GroupedLimits;
import org.quietline.stats.distribution.FisherF;
import org.quietline.stats.mixed.GroupRatio;
import org.quietline.stats.sample.SerialDependence;

/**
 * Do the limits of a stream fit the results they come from?
 *
 * <p>Of simulated baselines of 20 results over 5 calibrations, whose deviation between calibrations
 * is 0, 0.5, 1 or 2 times that within, 1, 9, 45 and 88 % are said to have calibrations that differ,
 * and 15, 5, 1 and 0.1 % to be independent; most of the others show neither.
 */
final class StreamDiagnosis {
  /** Fewer results show no pattern. */
  static final int FEWEST = 8;

  /** A pattern is said to be there below this chance. */
  static final double CHANCE_THAT_TELLS = 0.01;

  /** Calibrations that differ by no more than this share of the deviation within are let pass. */
  static final double SHARE_LET_PASS = 0.5;

  private static final double CONFIDENCE = 0.95;
  private static final int MOST_CALIBRATIONS = 500;

  private StreamDiagnosis() {}

  static Answer<Diagnosis> of(Records records, List<Result> base, boolean allowsForCalibrations) {
    if (base.size() < FEWEST) {
      return Answer.cannotSay("needs " + FEWEST + " results, has " + base.size());
    }
    double[] values = base.stream().mapToDouble(r -> records.value(r).orElseThrow()).toArray();
    if (!Baselines.differ(records, values)) {
      return Answer.cannotSay("needs results that differ");
    }
    int[] labels = labels(records, base);
    SerialDependence serial = SerialDependence.of(values);
    VonNeumannTest test = VonNeumannTest.of(values);
    Optional<GroupRatio> groups = groups(values, labels);
    OptionalDouble chance =
        groups.map(g -> OptionalDouble.of(g.chance())).orElse(OptionalDouble.empty());
    OptionalDouble lower = deviation(groups, 1 - CONFIDENCE);
    OptionalDouble upper = deviation(groups, CONFIDENCE);
    Pattern pattern = pattern(test, chance, upper, allowsForCalibrations);
    return Answer.of(
        new Diagnosis(
            pattern,
            values.length,
            (int) Arrays.stream(labels).distinct().count(),
            serial.deviationRatio(),
            serial.lag1(),
            serial.vonNeumannRatio(),
            test.chanceBelow(),
            test.chanceAbove(),
            chance,
            lower,
            upper,
            pattern == Pattern.NOT_SHOWN ? needed(values.length, labels) : OptionalInt.empty()));
  }

  /** The calibration of each result as a number; results without one make a group of their own. */
  static int[] labels(Records records, List<Result> results) {
    List<Optional<String>> keys =
        results.stream().map(r -> records.bench().calibrationOf(r).map(Calibration::key)).toList();
    return keys.stream().mapToInt(keys::indexOf).toArray();
  }

  private static Optional<GroupRatio> groups(double[] values, int[] labels) {
    return GroupedLimits.tellApart(values, labels)
        ? Optional.of(GroupRatio.of(values, labels))
        : Optional.empty();
  }

  private static OptionalDouble deviation(Optional<GroupRatio> groups, double exceeded) {
    OptionalDouble ratio = groups.map(g -> g.bound(exceeded)).orElse(OptionalDouble.empty());
    return ratio.isPresent()
        ? OptionalDouble.of(Math.sqrt(ratio.getAsDouble()))
        : OptionalDouble.empty();
  }

  private static Pattern pattern(
      VonNeumannTest test,
      OptionalDouble chanceCalibrations,
      OptionalDouble upper,
      boolean allowsForCalibrations) {
    if (test.chanceAbove() < CHANCE_THAT_TELLS) {
      return Pattern.ALTERNATING;
    }
    if (allowsForCalibrations) {
      return Pattern.ALLOWED_FOR;
    }
    if (chanceCalibrations.isPresent() && chanceCalibrations.getAsDouble() < CHANCE_THAT_TELLS) {
      return Pattern.CALIBRATIONS_DIFFER;
    }
    if (test.chanceBelow() < CHANCE_THAT_TELLS) {
      return Pattern.DRIFTING;
    }
    return upper.isPresent() && upper.getAsDouble() <= SHARE_LET_PASS
        ? Pattern.INDEPENDENT
        : Pattern.NOT_SHOWN;
  }

  /**
   * How many calibrations of the usual number of results would bring the upper bound to {@link
   * #SHARE_LET_PASS}, if calibrations did not differ: where F equals 1, the bound solves {@code
   * 1/(1 + n·ρ) = F(0.05)}.
   */
  private static OptionalInt needed(int results, int[] labels) {
    double each = (double) results / Arrays.stream(labels).distinct().count();
    if (each <= 1) {
      return OptionalInt.empty();
    }
    double wanted = 1 / (1 + each * SHARE_LET_PASS * SHARE_LET_PASS);
    for (int groups = 2; groups <= MOST_CALIBRATIONS; groups++) {
      double within = groups * (each - 1);
      if (within >= 1 && FisherF.exceededWith(CONFIDENCE, groups - 1, within) >= wanted) {
        return OptionalInt.of(groups);
      }
    }
    return OptionalInt.empty();
  }
}
