package org.quietline.stats.agreement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.stats.Coverage;
import org.quietline.stats.Interval;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;

/** How often the intervals of compared methods hold the truth, y = x with errors in both. */
class MethodComparisonCoverageTest {
  private static final double ERROR = 0.1;

  /** A row of x and a row of y at levels from 1 to 2, evenly spread. */
  private static double[][] points(SplittableRandom random, int n) {
    double[][] points = new double[2][n];
    for (int i = 0; i < n; i++) {
      double level = 1 + i / (n - 1.0);
      points[0][i] = level + ERROR * Simulation.normal(random);
      points[1][i] = level + ERROR * Simulation.normal(random);
    }
    return points;
  }

  /** Intervals that were given, and those of them that held the truth. */
  private static final class Count {
    private int given;
    private int held;

    void add(Optional<Interval> interval, double truth) {
      given += interval.isPresent() ? 1 : 0;
      held += interval.filter(i -> i.contains(truth)).isPresent() ? 1 : 0;
    }

    void check(Class<?> subject, String what, String size, double least, double most) {
      Coverage.check(subject, what, size, 0.95, held, given, least, most);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "5, 0.945, 0.97, 0.925, 0.95", "8, 0.93, 0.955, 0.92, 0.945",
    "12, 0.935, 0.96, 0.93, 0.955", "20, 0.935, 0.96, 0.93, 0.955"
  })
  void deming(int n, double least, double most, double leastHeight, double mostHeight) {
    int trials = Coverage.trials(1000, 20_000);
    SplittableRandom random = new SplittableRandom(500 + n);
    Count slope = new Count();
    Count intercept = new Count();
    Count height = new Count();
    for (int i = 0; i < trials; i++) {
      double[][] p = points(random, n);
      DemingLine line = DemingLine.fit(p[0], p[1], 1).orElseThrow();
      slope.add(line.slopeInterval(0.95), 1);
      intercept.add(line.interceptInterval(0.95), 0);
      height.add(line.intervalAt(1.8, 0.95), 1.8);
    }
    String size = "n = " + n;
    assertEquals(trials, slope.given);
    slope.check(DemingLine.class, "slope by jackknife", size, least, most);
    intercept.check(DemingLine.class, "intercept by jackknife", size, least, most);
    height.check(
        DemingLine.class, "height near the end by jackknife", size, leastHeight, mostHeight);
  }

  /** At n = 5 one sample in seven has no interval; with eight and more hardly one. */
  @ParameterizedTest
  @CsvSource({
    "5, 0.83, 0.89, 0.97, 0.985",
    "8, 0.995, 1, 0.955, 0.975",
    "12, 1, 1, 0.945, 0.965",
    "20, 1, 1, 0.935, 0.96"
  })
  void passingBablok(int n, double leastGiven, double mostGiven, double least, double most) {
    int trials = Coverage.trials(1000, 20_000);
    SplittableRandom random = new SplittableRandom(600 + n);
    Count slope = new Count();
    Count intercept = new Count();
    for (int i = 0; i < trials; i++) {
      double[][] p = points(random, n);
      PassingBablok line = PassingBablok.fit(p[0], p[1]).orElseThrow();
      slope.add(line.slopeInterval(0.95), 1);
      intercept.add(line.interceptInterval(0.95), 0);
    }
    double given = (double) slope.given / trials;
    assertTrue(given >= leastGiven && given <= mostGiven, "share with an interval " + given);
    assertEquals(slope.given, intercept.given);
    String size = "n = " + n;
    slope.check(PassingBablok.class, "slope by ranks, where given", size, least, most);
    intercept.check(
        PassingBablok.class, "intercept by ranks, where given", size, least - 0.01, most);
  }

  /** Of true lines, the test of linearity rejects fewer than it says. */
  @ParameterizedTest
  @CsvSource({"8, 0, 0.002", "12, 0.004, 0.02", "20, 0.012, 0.03", "30, 0.015, 0.04"})
  void linearity(int n, double least, double most) {
    int trials = Coverage.trials(1000, 20_000);
    SplittableRandom random = new SplittableRandom(700 + n);
    int kept = 0;
    for (int i = 0; i < trials; i++) {
      double[][] p = points(random, n);
      PassingBablok line = PassingBablok.fit(p[0], p[1]).orElseThrow();
      kept += line.linearity().map(t -> t.chance() >= 0.05 ? 1 : 0).orElse(1);
    }
    Coverage.check(
        PassingBablok.class,
        "a true line kept by the test of linearity",
        "n = " + n,
        0.95,
        kept,
        trials,
        1 - most,
        1 - least);
  }

  @ParameterizedTest
  @CsvSource({"5", "8", "12", "20"})
  void limitsOfAgreement(int n) {
    int trials = Coverage.trials(300, 2000);
    SplittableRandom random = new SplittableRandom(800 + n);
    double z = Normal.exceededWith(0.025);
    int mean = 0;
    int lower = 0;
    int upper = 0;
    int trend = 0;
    for (int i = 0; i < trials; i++) {
      double[] differences = Simulation.normal(random, n);
      double[] first = new double[n];
      double[] second = new double[n];
      for (int k = 0; k < n; k++) {
        double level = 20 + 5 * Simulation.normal(random);
        first[k] = level - differences[k] / 2;
        second[k] = level + differences[k] / 2;
      }
      LimitsOfAgreement got = LimitsOfAgreement.ofDifferences(first, second);
      mean += got.meanInterval(0.95).contains(0) ? 1 : 0;
      lower += got.lowerLimitInterval(0.95, 0.95).contains(-z) ? 1 : 0;
      upper += got.upperLimitInterval(0.95, 0.95).contains(z) ? 1 : 0;
      trend += got.trend().orElseThrow().slopeInterval(0.95).contains(0) ? 1 : 0;
    }
    String size = "n = " + n;
    Class<?> subject = LimitsOfAgreement.class;
    Coverage.check(subject, "mean difference", size, 0.95, mean, trials, 0.94, 0.96);
    Coverage.check(subject, "lower limit", size, 0.95, lower, trials, 0.94, 0.96);
    Coverage.check(subject, "upper limit", size, 0.95, upper, trials, 0.94, 0.96);
    Coverage.check(subject, "slope of difference", size, 0.95, trend, trials, 0.94, 0.96);
  }
}
