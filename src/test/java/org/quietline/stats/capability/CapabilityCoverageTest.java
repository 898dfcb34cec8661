package org.quietline.stats.capability;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Coverage;
import org.quietline.stats.Interval;
import org.quietline.stats.Simulation;
import org.quietline.stats.capability.PercentileIndex.Shape;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Roots;
import org.quietline.stats.sample.Summary;

/** How often bounds and intervals of indices hold the true index of a normal population. */
class CapabilityCoverageTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();
  private static final OptionalDouble UPPER = OptionalDouble.of(3.3);

  /**
   * Bounds depend on the values through the index alone and grow with it, so that they hold the
   * truth where the index lies on one side of the one whose bound is the truth. That one is found
   * once, with the bounds themselves.
   */
  private record Thresholds(double bound, double least, double most) {
    static Thresholds of(int n, double df, double truth) {
      return new Thresholds(
          where(n, df, truth, c -> c.lowerBound(0.95)),
          where(n, df, truth, c -> c.interval(0.95).upper()),
          where(n, df, truth, c -> c.interval(0.95).lower()));
    }

    private static double where(
        int n, double df, double truth, ToDoubleFunction<CapabilityIndex> end) {
      WithinDeviation within = new WithinDeviation(1, df);
      return Roots.of(
          index ->
              end.applyAsDouble(
                      new CapabilityIndex(n, 0, within, NONE, OptionalDouble.of(3 * index)))
                  - truth,
          truth,
          0.5);
    }
  }

  /** Counts of trials in which bound and interval held the truth. */
  private static final class Held {
    private final Thresholds thresholds;
    private int bound;
    private int interval;

    Held(Thresholds thresholds) {
      this.thresholds = thresholds;
    }

    void add(double index) {
      bound += index <= thresholds.bound ? 1 : 0;
      interval += index >= thresholds.least && index <= thresholds.most ? 1 : 0;
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 8, 12, 20})
  void performanceOfOneLimit(int n) {
    int trials = Coverage.trials(2000, 100_000);
    SplittableRandom random = new SplittableRandom(300 + n);
    Held held = new Held(Thresholds.of(n, n - 1, 1.1));
    for (int i = 0; i < trials; i++) {
      held.add(PerformanceIndex.upper(Summary.of(Simulation.normal(random, n)), 3.3).index());
    }
    String size = "n = " + n;
    Class<?> subject = PerformanceIndex.class;
    Coverage.check(subject, "Ppk, bound, one limit", size, 0.95, held.bound, trials, 0.949, 0.951);
    Coverage.check(
        subject, "Ppk, interval, one limit", size, 0.95, held.interval, trials, 0.949, 0.951);
  }

  /** The same without thresholds, and the share beyond. */
  @ParameterizedTest
  @ValueSource(ints = {5, 8, 12, 20})
  void shareBeyondOneLimit(int n) {
    int trials = Coverage.trials(200, 2000);
    SplittableRandom random = new SplittableRandom(350 + n);
    int bound = 0;
    int share = 0;
    for (int i = 0; i < trials; i++) {
      PerformanceIndex got = PerformanceIndex.upper(Summary.of(Simulation.normal(random, n)), 3.3);
      bound += got.lowerBound(0.95) <= 1.1 ? 1 : 0;
      share += got.shareBeyondInterval(0.95).contains(Normal.above(3.3)) ? 1 : 0;
    }
    String size = "n = " + n;
    Class<?> subject = PerformanceIndex.class;
    Coverage.check(subject, "Ppk, bound each time", size, 0.95, bound, trials, 0.949, 0.951);
    Coverage.check(subject, "share beyond one limit", size, 0.95, share, trials, 0.949, 0.951);
  }

  /** The worst case of two limits is a population in the middle. */
  @ParameterizedTest
  @CsvSource({"5, 0.93, 0.94", "8, 0.934, 0.944", "12, 0.935, 0.945", "20, 0.936, 0.946"})
  void performanceOfTwoLimits(int n, double least, double most) {
    int trials = Coverage.trials(2000, 100_000);
    SplittableRandom random = new SplittableRandom(400 + n);
    Held middle = new Held(Thresholds.of(n, n - 1, 1));
    Held nearer = new Held(Thresholds.of(n, n - 1, 1));
    for (int i = 0; i < trials; i++) {
      Summary s = Summary.of(Simulation.normal(random, n));
      OptionalDouble upper = OptionalDouble.of(3);
      middle.add(PerformanceIndex.nearer(s, OptionalDouble.of(-3), upper).index());
      nearer.add(PerformanceIndex.nearer(s, OptionalDouble.of(-6), upper).index());
    }
    String size = "n = " + n;
    Class<?> subject = PerformanceIndex.class;
    Coverage.check(
        subject, "Ppk, bound, middle of two", size, 0.95, middle.bound, trials, 0.965, 0.985);
    Coverage.check(
        subject, "Ppk, interval, middle of two", size, 0.95, middle.interval, trials, least, most);
    Coverage.check(
        subject, "Ppk, bound, nearer of two", size, 0.95, nearer.bound, trials, 0.949, 0.953);
    Coverage.check(
        subject, "Ppk, interval, nearer of two", size, 0.95, nearer.interval, trials, 0.948, 0.953);
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 12})
  void shareBeyondTwoLimits(int n) {
    int trials = Coverage.trials(200, 1000);
    SplittableRandom random = new SplittableRandom(450 + n);
    int share = 0;
    for (int i = 0; i < trials; i++) {
      PerformanceIndex got =
          PerformanceIndex.nearer(
              Summary.of(Simulation.normal(random, n)), OptionalDouble.of(-3), UPPER);
      double truth = Normal.above(3) + Normal.above(3.3);
      share += got.shareBeyondInterval(0.95).contains(truth) ? 1 : 0;
    }
    Coverage.check(
        PerformanceIndex.class,
        "share beyond two limits, near the middle",
        "n = " + n,
        0.95,
        share,
        trials,
        0.97,
        0.995);
  }

  /** Groups of 4, in control. */
  @ParameterizedTest
  @ValueSource(ints = {2, 3, 5})
  void capabilityOfPooledGroups(int count) {
    int trials = Coverage.trials(1000, 50_000);
    SplittableRandom random = new SplittableRandom(500 + count);
    Held held = new Held(Thresholds.of(4 * count, 3 * count, 1.1));
    int spread = 0;
    for (int i = 0; i < trials; i++) {
      List<double[]> groups = new ArrayList<>();
      double sum = 0;
      for (int k = 0; k < count; k++) {
        double[] group = Simulation.normal(random, 4);
        sum += 4 * Summary.meanOf(group);
        groups.add(group);
      }
      WithinDeviation within = WithinDeviation.pooled(groups);
      held.add(new CapabilityIndex(4 * count, sum / (4 * count), within, NONE, UPPER).index());
      spread += spreadHeld(within);
    }
    String size = "groups of 4: " + count;
    Class<?> subject = CapabilityIndex.class;
    Coverage.check(subject, "Cpk, bound, pooled", size, 0.95, held.bound, trials, 0.949, 0.951);
    Coverage.check(
        subject, "Cpk, interval, pooled", size, 0.95, held.interval, trials, 0.949, 0.951);
    Coverage.check(SpreadIndex.class, "Cp, pooled", size, 0.95, spread, trials, 0.949, 0.951);
  }

  private static int spreadHeld(WithinDeviation within) {
    SpreadIndex cp = new SpreadIndex(-3, 3, within.deviation(), within.degreesOfFreedom());
    return cp.interval(0.95).contains(1) ? 1 : 0;
  }

  @ParameterizedTest
  @CsvSource({"5, 0.968, 0.978", "8, 0.96, 0.97", "12, 0.956, 0.968", "20, 0.953, 0.965"})
  void capabilityOfMovingRanges(int n, double least, double most) {
    int trials = Coverage.trials(1000, 50_000);
    SplittableRandom random = new SplittableRandom(600 + n);
    double df = WithinDeviation.fromMovingRange(new double[n]).degreesOfFreedom();
    Held held = new Held(Thresholds.of(n, df, 1.1));
    int spread = 0;
    for (int i = 0; i < trials; i++) {
      double[] values = Simulation.normal(random, n);
      WithinDeviation within = WithinDeviation.fromMovingRange(values);
      held.add(new CapabilityIndex(n, Summary.meanOf(values), within, NONE, UPPER).index());
      spread += spreadHeld(within);
    }
    String size = "n = " + n;
    Class<?> subject = CapabilityIndex.class;
    Coverage.check(
        subject, "Cpk, bound, moving range", size, 0.95, held.bound, trials, least, most);
    Coverage.check(
        subject, "Cpk, interval, moving range", size, 0.95, held.interval, trials, 0.94, 0.956);
    Coverage.check(SpreadIndex.class, "Cp, moving range", size, 0.95, spread, trials, 0.935, 0.952);
  }

  /** The bootstrap falls short of what it says, as its page says. */
  @ParameterizedTest
  @CsvSource({"8, 0.79, 0.84", "12, 0.83, 0.88", "20, 0.87, 0.92", "50, 0.91, 0.945"})
  void percentileFormOfALognormalPopulation(int n, double least, double most) {
    int trials = Coverage.trials(200, 2000);
    SplittableRandom random = new SplittableRandom(700 + n);
    int held = 0;
    for (int i = 0; i < trials; i++) {
      double[] values = Simulation.normal(random, n);
      for (int k = 0; k < n; k++) {
        values[k] = Math.exp(0.5 * values[k]);
      }
      Interval got =
          PercentileIndex.interval(
                  values, Shape.LOGNORMAL, NONE, OptionalDouble.of(Math.exp(1.5)), 0.95, 999, i)
              .orElseThrow();
      held += got.contains(1) ? 1 : 0;
    }
    Coverage.check(
        PercentileIndex.class,
        "percentile index by bootstrap, lognormal population",
        "n = " + n,
        0.95,
        held,
        trials,
        least,
        most);
  }
}
