package org.quietline.stats.model;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertAgree;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.compare.VarianceRatio;

class LeastSquaresTest {
  private static final double DIGITS = 13;

  @ParameterizedTest
  @CsvSource({
    "longley, 16, 6, FREE",
    "norris, 36, 1, FREE",
    "noint1, 11, 1, ZERO",
    "noint2, 3, 1, ZERO"
  })
  void certifiedLinearSets(String name, int n, int predictors, Terms.Intercept intercept) {
    Reference reference = Reference.read("nist-strd-lls-" + name);
    List<double[]> rows = reference.rows("/data/rows", n);
    double[] y = rows.stream().mapToDouble(r -> r[0]).toArray();
    double[][] x =
        rows.stream().map(r -> Arrays.copyOfRange(r, 1, r.length)).toArray(double[][]::new);
    LeastSquares fit = LeastSquares.fit(new Terms(predictors, 1, intercept), x, y);
    int first = intercept == Terms.Intercept.FREE ? 0 : 1;
    for (int k = 0; k < fit.terms().count(); k++) {
      String b = "B" + (k + first);
      String what = name + ": " + b;
      reference.checkDigits(
          LeastSquares.class, what, "/expected/params/" + b, fit.coefficient(k), DIGITS);
      reference.checkDigits(
          LeastSquares.class, what + " error", "/expected/se/" + b, fit.standardError(k), DIGITS);
    }
    checkWhole(reference, name, fit);
    check(reference, name + ": F", "/expected/regression/F", ratio(fit));
    check(
        reference, name + ": explained squares", "/expected/regression/ss", fit.explainedSquares());
    check(reference, name + ": residual squares", "/expected/residual/ss", fit.residualSquares());
    assertEquals(reference.at("/expected/residual/df").asInt(), fit.degreesOfFreedom());
  }

  private static void checkWhole(Reference reference, String name, LeastSquares fit) {
    check(
        reference, name + ": residual deviation", "/expected/residual_sd", fit.residualDeviation());
    check(
        reference,
        name + ": explained share",
        "/expected/r_squared",
        fit.explainedShare().orElseThrow());
  }

  private static void check(Reference reference, String what, String pointer, double got) {
    reference.checkDigits(LeastSquares.class, what, pointer, got, DIGITS);
  }

  private static double ratio(LeastSquares fit) {
    return fit.explainedRatio().orElseThrow().ratio();
  }

  @ParameterizedTest
  @CsvSource({
    "filip, 82",
    "pontius, 40",
    "wampler1, 21",
    "wampler2, 21",
    "wampler3, 21",
    "wampler4, 21",
    "wampler5, 21"
  })
  void certifiedPolynomials(String name, int n) {
    Reference reference = Reference.read("strd-lls-" + name);
    int degree = reference.at("/data/degree").asInt();
    LeastSquares fit =
        LeastSquares.fit(
            Terms.polynomial(degree),
            reference.numbers("/data/x", n),
            reference.numbers("/data/y", n));
    for (int k = 0; k <= degree; k++) {
      String what = name + ": B" + k;
      check(reference, what, "/expected/params/B" + k, fit.coefficient(k));
      // two sets fit exactly: where the certified error is 0, "digits" are those after the point
      check(reference, what + " error", "/expected/se/B" + k, fit.standardError(k));
    }
    checkWhole(reference, name, fit);
    if (reference.number("/expected/residual_sd") > 0) {
      check(reference, name + ": F", "/expected/F", ratio(fit));
    } else {
      assertTrue(fit.explainedRatio().map(r -> r.ratio() > 1e25).orElse(true));
    }
  }

  @Test
  void twoPredictorsWithTheirSquares() {
    Reference reference = Reference.read("two-predictors-degree-two");
    double[][] points = reference.rows("/data/points", 8).toArray(double[][]::new);
    Terms terms = new Terms(2, 2, Terms.Intercept.FREE);
    LeastSquares fit = LeastSquares.fit(terms, points, reference.numbers("/data/y", 8));
    for (int k = 0; k < 5; k++) {
      reference.check(
          Terms.class, "place of coefficient " + k, "/expected/params/B" + k, fit.coefficient(k));
      reference.check(
          LeastSquares.class,
          "two predictors: error of B" + k,
          "/expected/se/B" + k,
          fit.standardError(k));
    }
    double[] at = reference.numbers("/data/at", 2);
    reference.check(LeastSquares.class, "two predictors: height", "/expected/height", fit.at(at));
    reference.check(
        LeastSquares.class,
        "two predictors: error of the height",
        "/expected/height_error",
        fit.standardErrorAt(at));
    assertEquals(5, terms.count());
    assertEquals(4, terms.throughOrigin().count());
    assertEquals(8, fit.n());
    assertEquals(3, fit.degreesOfFreedom());
  }

  @Test
  void weights() {
    Reference reference = Reference.read("line-weighted");
    LeastSquares fit =
        LeastSquares.weighted(
            Terms.linear(1),
            reference.numbers("/data/x", 8),
            reference.numbers("/data/y", 8),
            reference.numbers("/data/w", 8));
    for (int k = 0; k < 2; k++) {
      on(reference, "B" + k, "/params/B" + k, fit.coefficient(k));
      on(reference, "error of B" + k, "/se/B" + k, fit.standardError(k));
      assertEquals(
          fit.standardError(k) * fit.standardError(k), fit.covariance(k, k), 1e-15, "variance");
    }
    on(reference, "covariance", "/covariance", fit.covariance(0, 1));
    on(reference, "covariance", "/covariance", fit.covariance(1, 0));
    on(reference, "residual deviation", "/residual_sd", fit.residualDeviation());
    on(reference, "explained share", "/r_squared", fit.explainedShare().orElseThrow());
    on(reference, "F", "/F", ratio(fit));
    for (int i = 0; i < 3; i++) {
      String row = "/rows/" + i + "/";
      double x = reference.number("/expected" + row + 0);
      double weight = reference.number("/expected" + row + 1);
      String at = " at " + x;
      on(reference, "height" + at, row + 2, fit.at(x));
      on(reference, "error" + at, row + 3, fit.standardErrorAt(x));
      on(reference, "lower 95" + at, row + 4, fit.intervalAt(0.95, x).lower());
      on(reference, "upper 95" + at, row + 5, fit.intervalAt(0.95, x).upper());
      Interval further = fit.predictionInterval(0.95, weight, x);
      on(reference, "further value, lower 95" + at, row + 6, further.lower());
      on(reference, "further value, upper 95" + at, row + 7, further.upper());
    }
  }

  private static void on(Reference reference, String what, String place, double got) {
    reference.check(LeastSquares.class, "weighted line: " + what, "/expected" + place, got);
  }

  @Test
  void weightedLineOfTheAlaskaPipeline() {
    Reference printed = Reference.read("nist-4.6.2-alaska-weighted");
    LeastSquares fit = alaska(printed.number("/data/power"));
    String what = "Alaska pipeline, weighted: ";
    printed.check(
        LeastSquares.class, what + "intercept", "/expected/intercept", fit.coefficient(0));
    printed.check(
        LeastSquares.class, what + "error", "/expected/se_intercept", fit.standardError(0));
    printed.check(LeastSquares.class, what + "slope", "/expected/slope", fit.coefficient(1));
    printed.check(
        LeastSquares.class, what + "error of slope", "/expected/se_slope", fit.standardError(1));
    printed.check(
        LeastSquares.class, what + "deviation", "/expected/residual_sd", fit.residualDeviation());
    assertAgree(12, printed.number("/expected/own/params/B1"), fit.coefficient(1), "slope");
    assertAgree(12, printed.number("/expected/own/se/B0"), fit.standardError(0), "error");
  }

  static LeastSquares alaska(double power) {
    List<double[]> rows = Reference.read("nist-4.6.2-alaska-pipeline").rows("/data/rows", 107);
    double[] field = rows.stream().mapToDouble(r -> r[0]).toArray();
    double[] lab = rows.stream().mapToDouble(r -> r[1]).toArray();
    double[] weights = Arrays.stream(lab).map(v -> Math.pow(v, power)).toArray();
    return LeastSquares.weighted(Terms.linear(1), lab, field, weights);
  }

  @Test
  void loadCellParabola() {
    Reference printed = Reference.read("nist-2.3.6.5-loadcell-quadratic-calibration");
    LeastSquares fit = loadCell(2);
    String what = "load cell parabola: ";
    printed.check(LeastSquares.class, what + "a", "/expected/a", fit.coefficient(0));
    printed.check(LeastSquares.class, what + "b", "/expected/b", fit.coefficient(1));
    // the last digit was cut, not rounded: 7.0318651e-6 is printed as 7.03186e-6
    printed.check(LeastSquares.class, what + "c", "/expected/c", fit.coefficient(2), 1e-11);
    printed.check(
        LeastSquares.class, what + "deviation", "/expected/residual_sd", fit.residualDeviation());
    double[] errors = printed.numbers("/crosscheck/own/se", 3);
    for (int k = 0; k < 3; k++) {
      assertAgree(4, errors[k], fit.standardError(k), "error " + k);
    }
    assertEquals(printed.at("/expected/residual_df").asInt(), fit.degreesOfFreedom());
  }

  static LeastSquares loadCell(int degree) {
    List<double[]> rows =
        Reference.read("nist-2.3.6.5-loadcell-quadratic-calibration").rows("/data/rows", 33);
    return LeastSquares.fit(
        Terms.polynomial(degree),
        rows.stream().mapToDouble(r -> r[0]).toArray(),
        rows.stream().mapToDouble(r -> r[1]).toArray());
  }

  /** The normal equations in 120 digits, for points that only just leave the terms apart. */
  @ParameterizedTest
  @ValueSource(doubles = {1, 1e3, 1e6, 1e9})
  void agreesWithDecimalArithmeticHoweverCloseTheTerms(double offset) {
    SplittableRandom random = new SplittableRandom(4);
    double[][] points = new double[12][];
    double[] y = new double[12];
    double[] weights = new double[12];
    for (int i = 0; i < 12; i++) {
      double x = offset + random.nextDouble(10);
      points[i] = new double[] {x, 3 * x + Math.rint(random.nextDouble(8))};
      y[i] = offset / 3 + 0.1 * x + Simulation.normal(random);
      weights[i] = 0.1 + random.nextDouble(5);
    }
    LeastSquares fit = LeastSquares.weighted(Terms.linear(2), points, y, weights);
    BigDecimal[][] solved = DecimalEquations.solve(points, y, weights);
    for (int k = 0; k < 3; k++) {
      double exact = solved[k][0].doubleValue();
      Evidence.own(
          LeastSquares.class,
          "coefficient " + k + " at offset " + offset,
          "normal equations in 120 digits",
          exact,
          fit.coefficient(k),
          1e-14);
    }
    double s2 = DecimalEquations.residualSquares(points, y, weights, solved) / 9;
    assertAgree(14, Math.sqrt(s2), fit.residualDeviation(), "deviation");
    assertAgree(
        13, Math.sqrt(s2 * solved[1][2].doubleValue()), fit.standardError(1), "standard error");
    assertAgree(13, s2 * solved[1][3].doubleValue(), fit.covariance(1, 2), "covariance");
  }

  /** Columns: the right side, then the inverse. */
  private static final class DecimalEquations {
    private static final MathContext EXACT = new MathContext(120);

    static BigDecimal[][] solve(double[][] points, double[] y, double[] weights) {
      BigDecimal[][] m = new BigDecimal[3][7];
      for (BigDecimal[] row : m) {
        Arrays.fill(row, BigDecimal.ZERO);
      }
      for (int i = 0; i < y.length; i++) {
        double[] row = {1, points[i][0], points[i][1], y[i]};
        for (int a = 0; a < 3; a++) {
          for (int b = 0; b < 4; b++) {
            BigDecimal product = new BigDecimal(row[a]).multiply(new BigDecimal(row[b]));
            m[a][b] = m[a][b].add(product.multiply(new BigDecimal(weights[i])));
          }
        }
      }
      for (int a = 0; a < 3; a++) {
        m[a][4 + a] = BigDecimal.ONE;
      }
      for (int a = 0; a < 3; a++) {
        BigDecimal pivot = m[a][a];
        for (int c = 0; c < 7; c++) {
          m[a][c] = m[a][c].divide(pivot, EXACT);
        }
        for (int b = 0; b < 3; b++) {
          BigDecimal factor = m[b][a];
          for (int c = 0; c < 7 && b != a; c++) {
            m[b][c] = m[b][c].subtract(factor.multiply(m[a][c], EXACT), EXACT);
          }
        }
      }
      return Arrays.stream(m)
          .map(row -> Arrays.copyOfRange(row, 3, 7))
          .toArray(BigDecimal[][]::new);
    }

    static double residualSquares(
        double[][] points, double[] y, double[] weights, BigDecimal[][] solved) {
      BigDecimal sum = BigDecimal.ZERO;
      for (int i = 0; i < y.length; i++) {
        BigDecimal left =
            new BigDecimal(y[i])
                .subtract(solved[0][0])
                .subtract(solved[1][0].multiply(new BigDecimal(points[i][0])))
                .subtract(solved[2][0].multiply(new BigDecimal(points[i][1])));
        sum = sum.add(left.multiply(left).multiply(new BigDecimal(weights[i])), EXACT);
      }
      return sum.doubleValue();
    }
  }

  @Test
  void doublingIsCarriedThroughExactly() {
    SplittableRandom random = new SplittableRandom(11);
    double[] x = Simulation.normal(random, 9);
    double[] y = Simulation.normal(random, 9);
    double[] weights = Arrays.stream(x).map(Math::exp).toArray();
    LeastSquares plain = LeastSquares.weighted(Terms.polynomial(2), x, y, weights);
    LeastSquares scaled =
        LeastSquares.weighted(
            Terms.polynomial(2), times(x, 0x1p300), times(y, 0x1p-400), times(weights, 0x1p-203));
    for (int k = 0; k < 3; k++) {
      int power = -400 - 300 * k;
      assertEquals(Math.scalb(plain.coefficient(k), power), scaled.coefficient(k));
      assertEquals(Math.scalb(plain.standardError(k), power), scaled.standardError(k));
    }
    assertAgree(
        15.5,
        plain.residualDeviation() * Math.pow(2, -501.5),
        scaled.residualDeviation(),
        "deviation");
    assertEquals(plain.explainedShare(), scaled.explainedShare());
    assertAgree(
        15, Math.scalb(plain.explainedSquares(), -1003), scaled.explainedSquares(), "explained");
    assertAgree(
        15, Math.scalb(plain.residualSquares(), -1003), scaled.residualSquares(), "residual");
    assertAgree(14, ratio(plain), ratio(scaled), "F");
    assertAgree(15, Math.scalb(plain.at(0.3), -400), scaled.at(Math.scalb(0.3, 300)), "height");
    Interval one = plain.predictionInterval(0.9, 0.5, 0.3);
    Interval other = scaled.predictionInterval(0.9, Math.scalb(0.5, -203), Math.scalb(0.3, 300));
    assertAgree(14, Math.scalb(one.upper(), -400), other.upper(), "further value");
  }

  private static double[] times(double[] values, double factor) {
    return Arrays.stream(values).map(v -> v * factor).toArray();
  }

  @Test
  void theOrderOfThePointsDoesNotMatter() {
    SplittableRandom random = new SplittableRandom(12);
    double[] x = Simulation.normal(random, 15);
    double[] y = Simulation.normal(random, 15);
    LeastSquares forward = LeastSquares.fit(Terms.polynomial(3), x, y);
    LeastSquares backward = LeastSquares.fit(Terms.polynomial(3), reversed(x), reversed(y));
    for (int k = 0; k < 4; k++) {
      assertAgree(15, forward.coefficient(k), backward.coefficient(k), "coefficient");
    }
    assertArrayEquals(forward.residuals(), reversed(backward.residuals()), 1e-15);
    assertEquals(0, Arrays.stream(forward.residuals()).sum(), 1e-14);
  }

  private static double[] reversed(double[] values) {
    double[] reversed = new double[values.length];
    Arrays.setAll(reversed, i -> values[values.length - 1 - i]);
    return reversed;
  }

  @Test
  void wholeWeightsAreSoManyEqualValues() {
    double[] x = {1, 2, 3, 5};
    double[] y = {2, 3, 7, 8};
    LeastSquares weighted = LeastSquares.weighted(Terms.linear(1), x, y, new double[] {1, 2, 1, 3});
    LeastSquares repeated =
        LeastSquares.fit(
            Terms.linear(1),
            new double[] {1, 2, 2, 3, 5, 5, 5},
            new double[] {2, 3, 3, 7, 8, 8, 8});
    assertAgree(15, repeated.coefficient(1), weighted.coefficient(1), "slope");
    assertAgree(15, repeated.residualSquares(), weighted.residualSquares(), "squares");
    assertEquals(2, weighted.degreesOfFreedom());
    assertEquals(5, repeated.degreesOfFreedom());
  }

  @Test
  void coefficientIntervalAgreesWithTheLine() {
    Reference window = Reference.read("practitioner-drift-window");
    LeastSquares fit =
        LeastSquares.fit(
            Terms.linear(1), window.numbers("/data/day", 5), window.numbers("/data/deviation", 5));
    Interval slope = fit.coefficientInterval(1, 0.95);
    window.check(LeastSquares.class, "slope, lower 95", "/expected/slopeLower95", slope.lower());
    window.check(LeastSquares.class, "slope, upper 95", "/expected/slopeUpper95", slope.upper());
    VarianceRatio ratio = fit.explainedRatio().orElseThrow();
    // with one predictor F is the square of t and its tail that of both sides
    window.check(LeastSquares.class, "chance of the slope", "/expected/p", ratio.upperTail());
  }

  @Test
  void aPerfectFitIsExact() {
    double[] x = {1, 2, 3, 4, 7};
    double[] y = Arrays.stream(x).map(v -> 0.5 * v * v - 3).toArray();
    LeastSquares fit = LeastSquares.fit(Terms.polynomial(2), x, y);
    assertEquals(0, fit.residualDeviation());
    assertEquals(0.5, fit.coefficient(2));
    assertEquals(0, fit.coefficient(1), 1e-28);
    assertEquals(new Interval(15, 15), fit.predictionInterval(0.99, 1, 6));
    assertEquals(Optional.empty(), fit.explainedRatio());
    assertEquals(OptionalDouble.of(1), fit.explainedShare());
    assertArrayEquals(new double[5], fit.residuals());
  }

  @Test
  void equalValuesLeaveNothingToExplain() {
    double[] x = {1, 2, 3};
    LeastSquares level = LeastSquares.fit(Terms.linear(1), x, new double[] {4, 4, 4});
    assertEquals(OptionalDouble.empty(), level.explainedShare());
    assertEquals(4, level.at(9));
    LeastSquares zero =
        LeastSquares.fit(Terms.linear(1).throughOrigin(), x, new double[] {0, 0, 0});
    assertEquals(0, zero.coefficient(0));
    assertEquals(OptionalDouble.empty(), zero.explainedShare());
  }

  @Test
  void aLineOverALargeOffsetIsNoCombination() {
    double[] x = {1e15, 1e15 + 1, 1e15 + 2, 1e15 + 4};
    LeastSquares fit = LeastSquares.fit(Terms.linear(1), x, new double[] {0, 1, 2, 4});
    assertEquals(1, fit.coefficient(1));
    assertTrue(fit.residualDeviation() < 1e-10);
  }
}
