package org.quietline.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;

class GroupedLinesTest {
  private static final Class<GroupedLines> SUBJECT = GroupedLines.class;

  private static GroupedPoints points(Reference set) {
    return GroupedPoints.of(
        Cases.numbers(set, "/data/times"),
        Cases.numbers(set, "/data/values"),
        Cases.labels(set, "/data/groups"));
  }

  /** The components at time zero: heights, slopes, covariance, residual. */
  private static double[] components(GroupedLines lines, LineSpread spread) {
    double a = lines.interceptVariance();
    double b = lines.slopeVariance();
    double e = lines.residualVariance();
    return switch (spread) {
      case PARALLEL -> new double[] {a, e};
      case INDEPENDENT -> new double[] {a, b, e};
      case CORRELATED -> new double[] {a, b, lines.correlation().orElse(0) * Math.sqrt(a * b), e};
    };
  }

  @ParameterizedTest
  @CsvSource({
    "reml-drift-windows, PARALLEL",
    "reml-drift-windows, INDEPENDENT",
    "reml-growth, PARALLEL",
    "reml-growth, INDEPENDENT",
    "reml-growth, CORRELATED",
    "reml-sleep, PARALLEL",
    "reml-sleep, INDEPENDENT",
    "reml-sleep, CORRELATED"
  })
  void linesOfGroups(String id, LineSpread spread) {
    Reference set = Reference.read(id);
    GroupedLines lines = GroupedLines.fit(points(set), spread);
    String name = spread.name().toLowerCase(java.util.Locale.ROOT);
    String at = "/expected/" + name;
    double[] components = components(lines, spread);
    for (int i = 0; i < components.length; i++) {
      double expected = set.number(at + "/components/" + i);
      String what = name + ", component " + i;
      set.check(
          LineSpread.class,
          what,
          at + "/components/" + i,
          components[i],
          1e-6 * Math.abs(expected));
    }
    set.check(SUBJECT, name + ", log likelihood", at + "/logLikelihood", lines.logLikelihood());
    Cases.check(set, SUBJECT, name + ", slope", at + "/slope", lines.slope());
    Cases.check(set, SUBJECT, name + ", intercept", at + "/intercept", lines.coefficient(0));
    int group = set.at("/data/group").asInt();
    double time = set.number("/data/at");
    Cases.check(set, SUBJECT, name + ", average", at + "/average", lines.averageAt(time));
    predicted(set, name + ", group's line", at + "/groupLine", lines.groupLineAt(group, time));
    predicted(set, name + ", group's value", at + "/groupValue", lines.groupValueAt(group, time));
    predicted(set, name + ", new line", at + "/newLine", lines.newLineAt(time));
    predicted(set, name + ", new value", at + "/newValue", lines.newValueAt(time));
    predicted(set, name + ", group's slope", at + "/groupSlope", lines.groupSlope(group));
  }

  /** Errors were differentiated numerically; degrees of freedom below 2 are taken as 2. */
  private static void predicted(Reference set, String what, String pointer, StudentEstimate got) {
    set.check(StudentEstimate.class, what, pointer + "/0", got.value());
    double error = set.number(pointer + "/1");
    set.check(
        StudentEstimate.class, what + ": error", pointer + "/1", got.standardError(), 1e-5 * error);
    double df = set.number(pointer + "/2");
    if (df > 2) {
      set.check(
          StudentEstimate.class,
          what + ": degrees of freedom",
          pointer + "/2",
          got.degreesOfFreedom(),
          1e-4 * df);
    } else {
      assertEquals(2, got.degreesOfFreedom(), what);
    }
  }

  /** The estimate lies on the boundary ρ = −1, where derivatives along the boundary are zero. */
  @Test
  void correlatedWindowsEndOnTheBoundary() {
    Reference set = Reference.read("reml-drift-windows");
    GroupedLines lines = GroupedLines.fit(points(set), LineSpread.CORRELATED);
    String at = "/expected/correlated";
    set.check(SUBJECT, "correlated, log likelihood", at + "/logLikelihood", lines.logLikelihood());
    set.check(
        LineSpread.class, "correlated, heights", at + "/components/0", lines.interceptVariance());
    set.check(LineSpread.class, "correlated, slopes", at + "/components/1", lines.slopeVariance());
    set.check(
        LineSpread.class, "correlated, residual", at + "/components/3", lines.residualVariance());
    assertEquals(-1, lines.correlation().getAsDouble(), 1e-9);
    Cases.check(set, SUBJECT, "correlated, slope", at + "/slope", lines.slope());
    Cases.check(set, SUBJECT, "correlated, average", at + "/average", lines.averageAt(30));
  }

  @Test
  void correlatedLinesAreTestedWithVarianceAndCovarianceTogether() {
    Reference set = Reference.read("reml-drift-windows");
    BoundaryTest test = GroupedLines.fit(points(set), LineSpread.CORRELATED).slopeSpreadTest();
    Class<?> subject = BoundaryTest.class;
    set.check(
        subject, "ratio, variance and covariance", "/expected/slopeSpread/0", test.statistic());
    set.check(subject, "its chance", "/expected/slopeSpread/1", test.chance());
    BoundaryTest none = GroupedLines.fit(points(set), LineSpread.INDEPENDENT).slopeSpreadTest();
    assertEquals(0, none.statistic(), 1e-9);
  }

  @Test
  void intervalsOfTheSlope() {
    Reference set = Reference.read("reml-drift-windows");
    for (LineSpread spread : List.of(LineSpread.PARALLEL, LineSpread.INDEPENDENT)) {
      String name = spread.name().toLowerCase(java.util.Locale.ROOT);
      String at = "/expected/" + name + "/slopeInterval95";
      var interval = GroupedLines.fit(points(set), spread).slope().interval(0.95);
      set.check(StudentEstimate.class, name + ", lower end", at + "/0", interval.lower());
      set.check(StudentEstimate.class, name + ", upper end", at + "/1", interval.upper());
    }
  }

  @Test
  void printedResults() {
    Reference printed = Reference.read("reml-published");
    GroupedLines growth =
        GroupedLines.fit(points(Reference.read("reml-growth")), LineSpread.CORRELATED);
    check(printed, "growth", "intercept", Math.sqrt(growth.interceptVariance()));
    check(printed, "growth", "slope", Math.sqrt(growth.slopeVariance()));
    check(printed, "growth", "correlation", growth.correlation().getAsDouble());
    check(printed, "growth", "residual", Math.sqrt(growth.residualVariance()));
    check(printed, "growth", "logLikelihood", growth.logLikelihood());
    check(printed, "growth", "meanIntercept", growth.coefficient(0).value());
    check(printed, "growth", "meanSlope", growth.slope().value());
    GroupedPoints nights = points(Reference.read("reml-sleep"));
    GroupedLines sleep = GroupedLines.fit(nights, LineSpread.CORRELATED);
    check(printed, "sleep", "intercept", Math.sqrt(sleep.interceptVariance()));
    check(printed, "sleep", "slope", Math.sqrt(sleep.slopeVariance()));
    check(printed, "sleep", "correlation", sleep.correlation().getAsDouble());
    check(printed, "sleep", "residual", Math.sqrt(sleep.residualVariance()));
    check(printed, "sleep", "criterion", -2 * sleep.logLikelihood());
    check(printed, "sleep", "meanIntercept", sleep.coefficient(0).value());
    check(printed, "sleep", "meanSlope", sleep.slope().value());
    check(printed, "sleep", "errorIntercept", sleep.coefficient(0).standardError());
    check(printed, "sleep", "errorSlope", sleep.slope().standardError());
    check(printed, "sleep", "degreesOfFreedom", sleep.slope().degreesOfFreedom());
    GroupedLines apart = GroupedLines.fit(nights, LineSpread.INDEPENDENT);
    check(printed, "sleepIndependent", "intercept", Math.sqrt(apart.interceptVariance()));
    check(printed, "sleepIndependent", "slope", Math.sqrt(apart.slopeVariance()));
    check(printed, "sleepIndependent", "residual", Math.sqrt(apart.residualVariance()));
    check(printed, "sleepIndependent", "criterion", -2 * apart.logLikelihood());
  }

  private static void check(Reference printed, String set, String what, double got) {
    printed.check(SUBJECT, set + ", " + what, "/expected/" + set + "/" + what, got);
  }

  @ParameterizedTest
  @EnumSource(LineSpread.class)
  void linesWithRegressors(LineSpread spread) {
    Reference set = Reference.read("reml-growth-by-sex");
    GroupedPoints points =
        GroupedPoints.of(
            Cases.numbers(set, "/data/times"),
            Cases.numbers(set, "/data/values"),
            Cases.labels(set, "/data/groups"),
            Cases.numbers(set, "/data/regressors/0"),
            Cases.numbers(set, "/data/regressors/1"));
    assertEquals(108, points.size());
    assertEquals(27, points.groups().size());
    GroupedLines lines = GroupedLines.fit(points, spread);
    String name = spread.name().toLowerCase(java.util.Locale.ROOT);
    String at = "/expected/" + name;
    Class<?> subject = GroupedPoints.class;
    set.check(subject, name + ", log likelihood", at + "/logLikelihood", lines.logLikelihood());
    for (int i = 0; i < 4; i++) {
      String what = name + ", coefficient " + i;
      Cases.check(set, subject, what, at + "/coefficients/" + i, lines.coefficient(i));
    }
    double girlAtTen =
        lines.coefficient(0).value()
            + lines.coefficient(1).value() * 10
            + lines.coefficient(2).value()
            + lines.coefficient(3).value() * 10;
    assertRelative(girlAtTen, lines.averageAt(10, 1, 10).value(), 1e-13, "a girl at ten");
    assertRelative(girlAtTen, lines.newLineAt(10, 1, 10).value(), 1e-13, "a new girl at ten");
    assertTrue(
        lines.newValueAt(10, 1, 10).standardError() > lines.newLineAt(10, 1, 10).standardError());
  }

  @Test
  void parallelLinesAreOneComponentWithARegressor() {
    Reference set = Reference.read("reml-growth");
    GroupedLines lines = GroupedLines.fit(points(set), LineSpread.PARALLEL);
    VarianceComponents same =
        VarianceComponents.fit(
            Cases.numbers(set, "/data/values"),
            NestedGroups.of(Cases.labels(set, "/data/groups")),
            Cases.numbers(set, "/data/times"));
    String how = "nested components with a regressor";
    double heights = same.components().get(0);
    Evidence.own(SUBJECT, "heights", how, heights, lines.interceptVariance(), 1e-10);
    assertRelative(same.logLikelihood(), lines.logLikelihood(), 1e-13, "log likelihood");
    assertRelative(
        same.groupMean(0, 4, 11).standardError(),
        lines.groupLineAt(4, 11).standardError(),
        1e-9,
        "error of a group's line");
    assertRelative(
        same.newValue(11).degreesOfFreedom(), lines.newValueAt(11).degreesOfFreedom(), 1e-9, "df");
    assertEquals(0, lines.slopeVariance());
    assertEquals(OptionalDouble.empty(), lines.correlation());
    assertEquals(lines.interceptVariance(), lines.heightVarianceAt(9));
    assertEquals(new BoundaryTest(0, 1), lines.slopeSpreadTest());
    assertEquals(
        same.fullLikelihood().logLikelihood(), lines.fullLikelihood().logLikelihood(), 1e-10);
  }

  /**
   * Published: the likelihood ratio of the two spreads of the sleep data against parallel lines.
   */
  @Test
  void testsOfTheSpreadOfSlopes() {
    Reference set = Reference.read("reml-sleep");
    double parallel = set.number("/expected/parallel/logLikelihood");
    GroupedPoints points = points(set);
    BoundaryTest two = GroupedLines.fit(points, LineSpread.INDEPENDENT).slopeSpreadTest();
    BoundaryTest three = GroupedLines.fit(points, LineSpread.CORRELATED).slopeSpreadTest();
    double ratio = 2 * (set.number("/expected/independent/logLikelihood") - parallel);
    assertRelative(ratio, two.statistic(), 1e-7, "independent");
    ratio = 2 * (set.number("/expected/correlated/logLikelihood") - parallel);
    assertRelative(ratio, three.statistic(), 1e-7, "correlated");
    assertTrue(two.chance() < 1e-10 && three.chance() < 1e-9);
  }

  /** Random unbalanced lines: the conditions of an optimum on the cone of covariance matrices. */
  @ParameterizedTest
  @EnumSource(LineSpread.class)
  void noOtherSpreadIsMoreLikely(LineSpread spread) {
    Random random = new Random(4);
    int atBoundary = 0;
    for (int trial = 0; trial < 40; trial++) {
      Made made = Made.of(random, 4 + trial % 3, trial % 3, 0.15 * (trial % 4));
      GroupedLines lines = GroupedLines.fit(made.points(), spread);
      DenseModel dense = made.dense(spread);
      double[] best = components(lines, spread);
      assertRelative(dense.logLikelihood(best), lines.logLikelihood(), 1e-9, "log likelihood");
      double[] score = dense.score(best);
      int last = best.length - 1;
      assertEquals(0, score[last] * best[last], 1e-6, "residual");
      if (spread == LineSpread.CORRELATED) {
        atBoundary += conditionsOnTheCone(best, score);
      } else {
        for (int k = 0; k < last; k++) {
          atBoundary += best[k] == 0 ? 1 : 0;
          assertTrue(best[k] == 0 ? score[k] <= 1e-9 : Math.abs(score[k] * best[k]) < 1e-6);
        }
      }
      for (int i = 0; i < 30; i++) {
        double[] other = other(random, best, spread);
        assertTrue(dense.logLikelihood(other) <= lines.logLikelihood() + 1e-9);
      }
    }
    assertTrue(atBoundary >= 3, "at the boundary " + atBoundary);
  }

  private static double[] other(Random random, double[] best, LineSpread spread) {
    double residual = best[best.length - 1];
    double a = Math.exp(2 * random.nextGaussian());
    double b = 0.1 * Math.exp(2 * random.nextGaussian());
    double cross = (2 * random.nextDouble() - 1) * a * b;
    double e = residual * Math.exp(0.3 * random.nextGaussian());
    return switch (spread) {
      case PARALLEL -> new double[] {a * a * residual, e};
      case INDEPENDENT -> new double[] {a * a * residual, b * b * residual, e};
      case CORRELATED -> new double[] {a * a * residual, b * b * residual, cross * residual, e};
    };
  }

  /** With Γ the derivative by the matrix D: Γ·D = 0, and −Γ has no negative eigenvalue. */
  private static int conditionsOnTheCone(double[] best, double[] score) {
    double half = score[2] / 2;
    double sizeA = Math.sqrt(best[0]) + 1e-3;
    double sizeB = Math.sqrt(best[1]) + 1e-4;
    assertEquals(0, (score[0] * best[0] + half * best[2]), 1e-5);
    assertEquals(0, (half * best[2] + score[1] * best[1]), 1e-5);
    assertEquals(0, (score[0] * best[2] + half * best[1]) * sizeA / sizeB, 1e-4);
    assertTrue(score[0] * sizeA * sizeA <= 1e-5 && score[1] * sizeB * sizeB <= 1e-5);
    double determinant = (score[0] * score[1] - half * half) * sizeA * sizeA * sizeB * sizeB;
    assertTrue(determinant >= -1e-5, "determinant " + determinant);
    return best[0] * best[1] - best[2] * best[2] <= 1e-9 * best[0] * best[1] ? 1 : 0;
  }

  @Test
  void theOriginOfTimeDoesNotMatterToCorrelatedLines() {
    Random random = new Random(9);
    Made made = Made.of(random, 8, 1, 0.3);
    double[] later = made.t.clone();
    for (int i = 0; i < later.length; i++) {
      later[i] += 20_000;
    }
    GroupedLines here = GroupedLines.fit(made.points(), LineSpread.CORRELATED);
    GroupedLines there =
        GroupedLines.fit(GroupedPoints.of(later, made.y, made.groups), LineSpread.CORRELATED);
    assertRelative(here.logLikelihood(), there.logLikelihood(), 1e-11, "log likelihood");
    assertRelative(here.slopeVariance(), there.slopeVariance(), 1e-7, "slopes");
    assertRelative(here.heightVarianceAt(5), there.heightVarianceAt(20_005), 1e-7, "heights");
    assertRelative(here.slope().standardError(), there.slope().standardError(), 1e-7, "error");
    for (int group : List.of(0, 5)) {
      StudentEstimate before = here.groupLineAt(group, 12);
      StudentEstimate after = there.groupLineAt(group, 20_012);
      assertEquals(before.value(), after.value(), 1e-7);
      assertRelative(before.standardError(), after.standardError(), 1e-6, "error of a line");
      assertRelative(before.degreesOfFreedom(), after.degreesOfFreedom(), 1e-5, "its df");
    }
  }

  @ParameterizedTest
  @EnumSource(LineSpread.class)
  void offsetScaleTiltAndOrderChangeNothingElse(LineSpread spread) {
    Made made = Made.of(new Random(12), 6, 1, 0.3);
    int n = made.y.length;
    double[] y = new double[n];
    double[] t = new double[n];
    int[] groups = new int[n];
    for (int i = 0; i < n; i++) {
      int from = n - 1 - i;
      y[i] = 1e3 * made.y[from] + 5e5 + 70 * made.t[from];
      t[i] = made.t[from];
      groups[i] = 100 - made.groups[from];
    }
    GroupedLines first = GroupedLines.fit(made.points(), spread);
    GroupedLines second = GroupedLines.fit(GroupedPoints.of(t, y, groups), spread);
    double[] before = components(first, spread);
    double[] after = components(second, spread);
    for (int k = 0; k < before.length; k++) {
      assertEquals(1e6 * before[k], after[k], 1e-7 * Math.abs(1e6 * before[k]), "component " + k);
    }
    assertEquals(1e3 * first.slope().value() + 70, second.slope().value(), 1e-9);
    StudentEstimate line = first.groupLineAt(2, 7);
    StudentEstimate other = second.groupLineAt(98, 7);
    assertRelative(1e3 * line.value() + 5e5 + 490, other.value(), 1e-12, "height");
    assertRelative(1e3 * line.standardError(), other.standardError(), 1e-7, "error");
    assertRelative(line.degreesOfFreedom(), other.degreesOfFreedom(), 1e-6, "df");
  }

  /** Equal slopes in all groups: the variance of slopes is zero, and the average keeps doubt. */
  @Test
  void noSpreadIsZeroExactly() {
    double[] t = {0, 1, 2, 3, 0, 1, 2, 3, 0, 1, 2, 3};
    double[] y = {1, 3, 2, 4, 1, 3, 2, 4, 1, 3, 2, 4};
    int[] groups = {1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3};
    GroupedPoints points = GroupedPoints.of(t, y, groups);
    for (LineSpread spread : LineSpread.values()) {
      GroupedLines lines = GroupedLines.fit(points, spread);
      assertEquals(0, lines.interceptVariance(), 1e-12);
      assertEquals(0, lines.slopeVariance(), 1e-12);
      assertEquals(0.54, lines.residualVariance(), 1e-9);
      assertEquals(0.8, lines.slope().value(), 1e-12);
    }
    assertEquals(
        2, GroupedLines.fit(points, LineSpread.INDEPENDENT).newLineAt(1).degreesOfFreedom());
    assertEquals(
        OptionalDouble.empty(), GroupedLines.fit(points, LineSpread.INDEPENDENT).correlation());
  }

  /** A group with one point, one with all points at one time, and a long one. */
  @Test
  void groupsMayHaveOnePoint() {
    double[] t = {3, 5, 5, 1, 4, 9, 2, 6, 8, 0, 5};
    double[] y = {1.2, 2.0, 2.4, 0.3, 1.9, 3.1, 0.1, 2.7, 3.9, 0.4, 1.5};
    int[] groups = {1, 2, 2, 3, 3, 3, 4, 4, 4, 4, 4};
    GroupedPoints points = GroupedPoints.of(t, y, groups);
    Made made = new Made(t, y, groups);
    for (LineSpread spread : List.of(LineSpread.PARALLEL, LineSpread.INDEPENDENT)) {
      GroupedLines lines = GroupedLines.fit(points, spread);
      double[] best = components(lines, spread);
      double dense = made.dense(spread).logLikelihood(best);
      Evidence.own(
          SUBJECT,
          "log likelihood, odd groups",
          "dense matrices",
          dense,
          lines.logLikelihood(),
          1e-11);
      assertTrue(lines.groupLineAt(1, 3).standardError() > lines.groupLineAt(4, 3).standardError());
    }
  }

  /** Points of made-up groups. */
  private static final class Made {
    private final double[] t;
    private final double[] y;
    private final int[] groups;

    Made(double[] t, double[] y, int[] groups) {
      this.t = t;
      this.y = y;
      this.groups = groups;
    }

    static Made of(Random random, int count, double height, double slope) {
      int n = 0;
      int[] sizes = new int[count];
      for (int j = 0; j < count; j++) {
        sizes[j] = 2 + random.nextInt(4) + (j == 0 ? 2 : 0);
        n += sizes[j];
      }
      double[] t = new double[n];
      double[] y = new double[n];
      int[] groups = new int[n];
      int place = 0;
      for (int j = 0; j < count; j++) {
        double a = height * random.nextGaussian();
        double b = 0.2 + slope * random.nextGaussian();
        for (int i = 0; i < sizes[j]; i++, place++) {
          t[place] = 1 + 3 * i + random.nextDouble();
          y[place] = a + b * t[place] + random.nextGaussian();
          groups[place] = j;
        }
      }
      return new Made(t, y, groups);
    }

    GroupedPoints points() {
      return GroupedPoints.of(t, y, groups);
    }

    DenseModel dense(LineSpread spread) {
      double[][] x = new double[t.length][2];
      for (int i = 0; i < t.length; i++) {
        x[i][0] = 1;
        x[i][1] = t[i];
      }
      RealMatrix[] parts = new RealMatrix[GroupedPoints.components(spread)];
      for (int k = 0; k < parts.length; k++) {
        parts[k] = DenseModel.lines(t, groups, k);
      }
      return DenseModel.of(y, x, parts);
    }
  }

  /** Lines that do not differ: nothing to correlate. */
  @Test
  void correlatedLinesThatDoNotDifferHaveNoCorrelation() {
    GroupedPoints points =
        GroupedPoints.of(
            new double[] {0, 10, 20, 0, 10, 20, 0, 10, 20},
            new double[] {1, 2, 3.1, 1, 2, 3.1, 1, 2, 3.1001},
            new int[] {1, 1, 1, 2, 2, 2, 3, 3, 3});
    GroupedLines lines = GroupedLines.fit(points, LineSpread.CORRELATED);
    assertEquals(0, lines.slopeVariance());
    assertEquals(0, lines.interceptVariance());
    assertTrue(lines.correlation().isEmpty());
  }
}
