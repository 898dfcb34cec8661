package org.quietline.stats.model;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Coverage;
import org.quietline.stats.Simulation;
import org.quietline.stats.model.PrecisionProfile.Form;

/** How often intervals hold the truth, each of level 95 %. */
class ModelCoverageTest {
  private static final double LEVEL = 0.95;

  @ParameterizedTest
  @ValueSource(ints = {5, 8, 12, 20})
  void lines(int n) {
    SplittableRandom random = new SplittableRandom(300 + n);
    int trials = Coverage.trials(1500, 50_000);
    int[] held = new int[6];
    double[] x = new double[n];
    double[] weights = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] = 1 + 29.0 * i / (n - 1);
      weights[i] = 1 / (1 + 0.05 * x[i] * x[i]);
    }
    for (int trial = 0; trial < trials; trial++) {
      double[] y = new double[n];
      for (int i = 0; i < n; i++) {
        y[i] = 0.01 + 0.002 * x[i] + 0.02 * Simulation.normal(random) / Math.sqrt(weights[i]);
      }
      StraightLine line = StraightLine.weighted(x, y, weights);
      double further = 0.01 + 0.002 * 25 + 0.02 * Simulation.normal(random) / Math.sqrt(3);
      held[0] += line.slopeInterval(LEVEL).contains(0.002) ? 1 : 0;
      held[1] += line.intervalAt(30, LEVEL).contains(0.07) ? 1 : 0;
      held[2] += line.predictionInterval(25, 3, LEVEL).contains(further) ? 1 : 0;
      InversePrediction crossing = InversePrediction.ofHeight(line, 0.07, LEVEL);
      held[3] += crossing.contains(30) ? 1 : 0;
      held[4] += InversePrediction.ofReading(line, further, 3, LEVEL).contains(25) ? 1 : 0;
      held[5] += crossing instanceof InversePrediction.Bounded ? 1 : 0;
    }
    check(StraightLine.class, "slope, weighted", n + " points", held[0], trials);
    check(StraightLine.class, "height at the end, weighted", n + " points", held[1], trials);
    check(StraightLine.class, "mean of three further values", n + " points", held[2], trials);
    check(
        InversePrediction.class,
        "crossing of a height, all kinds of sets",
        n + " points",
        held[3],
        trials);
    check(
        InversePrediction.class,
        "x of the mean of three readings, all kinds of sets",
        n + " points",
        held[4],
        trials);
    org.junit.jupiter.api.Assertions.assertTrue(
        held[5] < trials && held[5] > 0, "bounded " + held[5]);
  }

  private static void check(Class<?> subject, String what, String size, int held, int trials) {
    Coverage.check(subject, what, size, LEVEL, held, trials, 0.935, 0.965);
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 8, 12, 20})
  void plainLines(int n) {
    SplittableRandom random = new SplittableRandom(200 + n);
    int trials = Coverage.trials(2000, 50_000);
    int[] held = new int[2];
    double[] x = new double[n];
    Arrays.setAll(x, i -> 1 + 30.0 * i / n);
    for (int trial = 0; trial < trials; trial++) {
      double[] y = new double[n];
      Arrays.setAll(y, i -> 0.01 + 0.002 * x[i] + 0.02 * Simulation.normal(random));
      StraightLine line = StraightLine.fit(x, y);
      held[0] += line.slopeInterval(LEVEL).contains(0.002) ? 1 : 0;
      held[1] += line.intervalAt(30, LEVEL).contains(0.07) ? 1 : 0;
    }
    check(StraightLine.class, "slope", n + " points", held[0], trials);
    check(StraightLine.class, "height at the end", n + " points", held[1], trials);
  }

  /** Three points leave one degree of freedom, where an approximate sum would cover 87 %. */
  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void linesWithASharedUncertainty(int n) {
    SplittableRandom random = new SplittableRandom(7);
    int trials = Coverage.trials(500, 20_000);
    int held = 0;
    double[] x = new double[n];
    Arrays.setAll(x, i -> 1 + 7.0 * i);
    for (int trial = 0; trial < trials; trial++) {
      double common = 0.012 * Simulation.normal(random);
      double[] y = new double[n];
      Arrays.setAll(y, i -> common + 0.02 * Simulation.normal(random));
      StraightLine line = StraightLine.fit(x, y).withSharedUncertainty(0.012);
      held += line.intervalAt(30, LEVEL).contains(0) ? 1 : 0;
    }
    Coverage.check(
        StraightLine.class,
        "height, shared uncertainty counted",
        n + " points",
        LEVEL,
        held,
        trials,
        0.94,
        0.98);
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 8, 12, 20})
  void parabolas(int n) {
    SplittableRandom random = new SplittableRandom(400 + n);
    int trials = Coverage.trials(300, 20_000);
    int[] held = new int[2];
    double[] x = new double[n];
    Arrays.setAll(x, i -> -1 + 2.0 * i / (n - 1));
    for (int trial = 0; trial < trials; trial++) {
      double[] y = Simulation.normal(random, n);
      for (int i = 0; i < n; i++) {
        y[i] += 3 - 2 * x[i] + x[i] * x[i];
      }
      LeastSquares fit = LeastSquares.fit(Terms.polynomial(2), x, y);
      double further = 1.75 + 1 + Simulation.normal(random) - 0.5;
      held[0] += fit.coefficientInterval(2, LEVEL).contains(1) ? 1 : 0;
      held[1] += fit.predictionInterval(LEVEL, 1, 0.5).contains(further) ? 1 : 0;
    }
    check(LeastSquares.class, "curvature of a parabola", n + " points", held[0], trials);
    check(LeastSquares.class, "one further value", n + " points", held[1], trials);
  }

  /** Outer groups of three inner groups of two values, with components 4 : 1 : 1 and 0 : 1 : 1. */
  @ParameterizedTest
  @CsvSource({"3, 4", "6, 4", "12, 4", "3, 0.25", "6, 0.25", "12, 0.25"})
  void nestedGroups(int a, double ratio) {
    SplittableRandom random = new SplittableRandom(500 + a);
    int trials = Coverage.trials(250, 20_000);
    int[] held = new int[5];
    for (int trial = 0; trial < trials; trial++) {
      double[][][] values = new double[a][3][2];
      for (double[][] outer : values) {
        double o = Math.sqrt(ratio) * Simulation.normal(random);
        for (double[] inner : outer) {
          double i = Simulation.normal(random);
          Arrays.setAll(inner, k -> 10 + o + i + Simulation.normal(random));
        }
      }
      NestedAnova anova = NestedAnova.threeStage(values);
      held[0] += anova.component(0).interval(LEVEL).contains(ratio) ? 1 : 0;
      held[1] += anova.component(1).interval(LEVEL).contains(1) ? 1 : 0;
      held[2] += anova.singleValue().interval(LEVEL).contains(ratio + 2) ? 1 : 0;
      held[3] += anova.meanOf(4).interval(LEVEL).contains(ratio + 1.25) ? 1 : 0;
      held[4] += anova.meanInterval(LEVEL).contains(10) ? 1 : 0;
    }
    String size = a + " groups of 3 of 2, outer component " + ratio;
    nested(NestedAnova.class, "component of outer groups", size, held[0], trials);
    nested(NestedAnova.class, "component of inner groups", size, held[1], trials);
    nested(VarianceCombination.class, "variance of a single value", size, held[2], trials);
    nested(VarianceCombination.class, "variance of a mean of four", size, held[3], trials);
    nested(NestedAnova.class, "mean", size, held[4], trials);
  }

  private static void nested(Class<?> subject, String what, String size, int held, int trials) {
    Coverage.check(subject, what, size, LEVEL, held, trials, 0.94, 0.978);
  }

  @ParameterizedTest
  @ValueSource(ints = {25, 40, 100})
  void precisionProfiles(int m) {
    SplittableRandom random = new SplittableRandom(600 + m);
    int trials = Coverage.trials(200, 10_000);
    int[] held = new int[6];
    for (int trial = 0; trial < trials; trial++) {
      double[] levels = new double[m];
      double[] differences = new double[m];
      for (int i = 0; i < m; i++) {
        levels[i] = 0.1 * Math.pow(30, random.nextDouble());
        differences[i] =
            Math.sqrt(2) * Math.hypot(0.01, 0.02 * levels[i]) * Simulation.normal(random);
      }
      PrecisionProfile both = PrecisionProfile.fit(Form.QUADRATURE, levels, differences);
      held[0] += both.deviationInterval(0.24, LEVEL).contains(Math.hypot(0.01, 0.0048)) ? 1 : 0;
      held[1] += both.deviationInterval(2.5, LEVEL).contains(Math.hypot(0.01, 0.05)) ? 1 : 0;
      held[2] += both.deviationInterval(0, LEVEL).contains(0.01) ? 1 : 0;
      held[3] += both.proportionInterval(LEVEL).contains(0.02) ? 1 : 0;
      PrecisionChoice.Chosen chosen =
          (PrecisionChoice.Chosen) PrecisionChoice.of(levels, differences);
      double low = Math.hypot(0.01, 0.0048);
      held[4] += chosen.deviationInterval(0.24, LEVEL).contains(low) ? 1 : 0;
      held[5] += chosen.profile().deviationInterval(0.24, LEVEL).contains(low) ? 1 : 0;
    }
    String size = m + " pairs over a factor of 30";
    profile("deviation at a low level", size, held[0], trials);
    profile("deviation at a high level", size, held[1], trials);
    profile("constant part", size, held[2], trials);
    profile("proportional part", size, held[3], trials);
    Coverage.check(
        PrecisionChoice.class,
        "deviation at a low level, form chosen",
        size,
        LEVEL,
        held[4],
        trials,
        0.935,
        0.965);
    // what the interval of the chosen form is worth if one forgets that it was chosen
    Coverage.check(
        PrecisionProfile.class,
        "deviation at a low level, of the chosen form as if it were known",
        size,
        LEVEL,
        held[5],
        trials,
        0.86,
        0.965);
  }

  private static void profile(String what, String size, int held, int trials) {
    Coverage.check(PrecisionProfile.class, what, size, LEVEL, held, trials, 0.935, 0.965);
  }
}
