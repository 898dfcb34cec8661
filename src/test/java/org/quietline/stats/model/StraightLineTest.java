package org.quietline.stats.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertAgree;
import static org.quietline.stats.Digits.assertRelative;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;

class StraightLineTest {
  private final Reference window = Reference.read("practitioner-drift-window");
  private final StraightLine drift =
      StraightLine.fit(window.numbers("/data/day", 5), window.numbers("/data/deviation", 5));

  @Test
  void practitionersDriftWindow() {
    check("slope", drift.slope());
    check("slopeError", drift.slopeError());
    check("intercept", drift.intercept());
    check("interceptError", drift.interceptError());
    check("residualDeviation", drift.residualDeviation());
    check("slopeLower95", drift.slopeInterval(0.95).lower());
    check("slopeUpper95", drift.slopeInterval(0.95).upper());
    assertEquals(3, drift.degreesOfFreedom());
    // the interval of level 1 - p just reaches zero
    double p = window.number("/expected/p");
    assertEquals(0, drift.slopeInterval(1 - p).lower(), 1e-14);
  }

  private void check(String name, double actual) {
    window.check(StraightLine.class, "drift window: " + name, "/expected/" + name, actual);
  }

  @Test
  void heightsWithAndWithoutASharedUncertainty() {
    double allowance = window.number("/data/allowance");
    for (int i = 0; i < 6; i++) {
      String row = "/expected/rows/" + i + "/";
      double at = window.number(row + 0);
      double shared = window.number(row + 1);
      StraightLine line = drift.withSharedUncertainty(shared);
      String where = " at day " + (int) at + " with shared uncertainty " + shared;
      window.check(StraightLine.class, "height" + where, row + 2, line.at(at));
      window.check(StraightLine.class, "error" + where, row + 3, line.standardErrorAt(at));
      Interval interval = line.intervalAt(at, 0.95);
      window.check(StraightLine.class, "lower 95" + where, row + 4, interval.lower());
      window.check(StraightLine.class, "upper 95" + where, row + 5, interval.upper());
      // the chance comes from a quadrature of SciPy's, to about nine digits
      window.check(
          StraightLine.class,
          "chance beyond the allowance" + where,
          row + 6,
          line.chanceBeyond(at, allowance),
          1e-9 * window.number(row + 6));
      assertEquals(drift.slopeInterval(0.9), line.slopeInterval(0.9));
      assertEquals(drift.covariance(), line.covariance());
      assertEquals(drift.predictionInterval(at, 1, 0.95), line.predictionInterval(at, 1, 0.95));
    }
  }

  @Test
  void certifiedNorris() {
    Reference norris = Reference.read("nist-strd-lls-norris");
    List<double[]> rows = norris.rows("/data/rows", 36);
    StraightLine line = column(rows, 1, 0);
    digits(norris, "B0", "/expected/params/B0", line.intercept());
    digits(norris, "B1", "/expected/params/B1", line.slope());
    digits(norris, "error of B0", "/expected/se/B0", line.interceptError());
    digits(norris, "error of B1", "/expected/se/B1", line.slopeError());
    digits(norris, "residual deviation", "/expected/residual_sd", line.residualDeviation());
    assertEquals(norris.at("/expected/residual/df").asInt(), line.degreesOfFreedom());
  }

  private static void digits(Reference norris, String what, String pointer, double got) {
    norris.checkDigits(StraightLine.class, "norris: " + what, pointer, got, 13);
  }

  private static StraightLine column(List<double[]> rows, int x, int y) {
    return StraightLine.fit(
        rows.stream().mapToDouble(r -> r[x]).toArray(),
        rows.stream().mapToDouble(r -> r[y]).toArray());
  }

  @Test
  void linewidthCalibration() {
    Reference printed = Reference.read("nist-2.3.6.7-linewidth-calibration");
    StraightLine line = column(printed.rows("/data/rows", 40), 0, 1);
    String what = "linewidth: ";
    printed.check(StraightLine.class, what + "intercept", "/expected/a", line.intercept());
    printed.check(StraightLine.class, what + "error", "/expected/se_a", line.interceptError());
    printed.check(StraightLine.class, what + "slope", "/expected/b", line.slope());
    printed.check(StraightLine.class, what + "error of slope", "/expected/se_b", line.slopeError());
    printed.check(StraightLine.class, what + "covariance", "/expected/cov_ab", line.covariance());
    printed.check(
        StraightLine.class,
        what + "variance of slope",
        "/expected/cov_bb",
        line.slopeError() * line.slopeError());
    printed.check(
        StraightLine.class,
        what + "slope by its error",
        "/expected/t_b",
        line.slope() / line.slopeError());
    assertEquals(38, line.degreesOfFreedom());
  }

  @Test
  void thermometerOfTheGuide() {
    Reference printed = Reference.read("gum-h3-thermometer-calibration");
    double t0 = printed.number("/data/t0");
    StraightLine line =
        StraightLine.fit(
            Arrays.stream(printed.numbers("/data/t_degC", 11)).map(t -> t - t0).toArray(),
            printed.numbers("/data/correction_degC", 11));
    String what = "thermometer: ";
    printed.check(StraightLine.class, what + "y1", "/expected/y1", line.intercept());
    printed.check(StraightLine.class, what + "s(y1)", "/expected/s_y1", line.interceptError());
    printed.check(StraightLine.class, what + "y2", "/expected/y2", line.slope());
    printed.check(StraightLine.class, what + "s(y2)", "/expected/s_y2", line.slopeError());
    double correlation = line.covariance() / line.interceptError() / line.slopeError();
    printed.check(StraightLine.class, what + "correlation", "/expected/r", correlation);
    printed.check(StraightLine.class, what + "s", "/expected/s", line.residualDeviation());
    printed.check(StraightLine.class, what + "b(30 °C)", "/expected/b_at_30", line.at(10));
    printed.check(
        StraightLine.class, what + "u(b(30 °C))", "/expected/u_at_30", line.standardErrorAt(10));
    assertEquals(printed.at("/expected/df").asInt(), line.degreesOfFreedom());
  }

  @Test
  void alaskaPipelineFieldOnLab() {
    Reference printed = Reference.read("nist-4.6.2-alaska-pipeline");
    StraightLine line = column(printed.rows("/data/rows", 107), 1, 0);
    printed.check(
        StraightLine.class, "Alaska pipeline: intercept", "/expected/intercept", line.intercept());
    printed.check(StraightLine.class, "Alaska pipeline: slope", "/expected/slope", line.slope());
    printed.check(
        StraightLine.class,
        "Alaska pipeline: deviation",
        "/expected/residual_sd",
        line.residualDeviation());
  }

  @Test
  void weightedLine() {
    Reference reference = Reference.read("line-weighted");
    StraightLine line =
        StraightLine.weighted(
            reference.numbers("/data/x", 8),
            reference.numbers("/data/y", 8),
            reference.numbers("/data/w", 8));
    weighted(reference, "intercept", "/params/B0", line.intercept());
    weighted(reference, "slope", "/params/B1", line.slope());
    weighted(reference, "error of intercept", "/se/B0", line.interceptError());
    weighted(reference, "error of slope", "/se/B1", line.slopeError());
    weighted(reference, "covariance", "/covariance", line.covariance());
    weighted(reference, "residual deviation", "/residual_sd", line.residualDeviation());
    for (int i = 0; i < 3; i++) {
      String row = "/rows/" + i + "/";
      double x = reference.number("/expected" + row + 0);
      Interval further = line.predictionInterval(x, reference.number("/expected" + row + 1), 0.95);
      String at = " at " + x;
      weighted(reference, "height" + at, row + 2, line.at(x));
      weighted(reference, "error" + at, row + 3, line.standardErrorAt(x));
      weighted(reference, "lower 95" + at, row + 4, line.intervalAt(x, 0.95).lower());
      weighted(reference, "further value, lower 95" + at, row + 6, further.lower());
      weighted(reference, "further value, upper 95" + at, row + 7, further.upper());
    }
  }

  private static void weighted(Reference reference, String what, String place, double got) {
    reference.check(StraightLine.class, "weighted line: " + what, "/expected" + place, got);
  }

  @Test
  void weightsAgreeWithLeastSquaresUnderOffsets() {
    SplittableRandom random = new SplittableRandom(23);
    for (double offset : new double[] {0, 1e4, 1e8, 1e13}) {
      double[] x = new double[9];
      double[] y = new double[9];
      double[] weights = new double[9];
      for (int i = 0; i < 9; i++) {
        double step = random.nextDouble(10);
        x[i] = offset + step;
        y[i] = 30 - step + Simulation.normal(random);
        weights[i] = Math.exp(Simulation.normal(random));
      }
      StraightLine line = StraightLine.weighted(x, y, weights);
      LeastSquares fit = LeastSquares.weighted(Terms.linear(1), x, y, weights);
      assertAgree(14, fit.coefficient(1), line.slope(), "slope at " + offset);
      assertAgree(14, fit.coefficient(0), line.intercept(), "intercept at " + offset);
      assertAgree(13, fit.residualDeviation(), line.residualDeviation(), "deviation");
      double near = offset + 3;
      assertAgree(13, fit.at(near), line.at(near), "height at " + offset);
      assertAgree(13, fit.standardErrorAt(near), line.standardErrorAt(near), "error");
      assertAgree(13, fit.covariance(0, 1), line.covariance(), "covariance");
    }
  }

  @Test
  void equalWeightsChangeOnlyWhatADeviationMeans() {
    double[] x = {1, 2, 4, 5};
    double[] y = {1, 3, 2, 6};
    StraightLine plain = StraightLine.fit(x, y);
    StraightLine four = StraightLine.weighted(x, y, new double[] {4, 4, 4, 4});
    assertRelative(plain.slopeError(), four.slopeError(), 1e-15, "error");
    assertRelative(2 * plain.residualDeviation(), four.residualDeviation(), 1e-15, "deviation");
    Interval one = plain.predictionInterval(3, 1, 0.95);
    assertRelative(one.upper(), four.predictionInterval(3, 4, 0.95).upper(), 1e-14, "new");
  }

  @Test
  void agreesWithDecimalArithmeticUnderOffsets() {
    SplittableRandom random = new SplittableRandom(21);
    for (double offset : new double[] {0, 1e3, 1e7}) {
      double[] x = new double[12];
      double[] y = new double[12];
      for (int i = 0; i < 12; i++) {
        x[i] = offset + random.nextDouble(30);
        y[i] = offset / 7 + 0.3 * x[i] + 0.05 * Simulation.normal(random);
      }
      StraightLine line = StraightLine.fit(x, y);
      DecimalLine exact = DecimalLine.fit(x, y);
      Evidence.own(
          StraightLine.class,
          "slope at offset " + offset,
          "normal equations in 80 digits",
          exact.slope(),
          line.slope(),
          1e-14);
      assertAgree(14, exact.intercept(), line.intercept(), "intercept at " + offset);
      assertAgree(13, exact.residual(), line.residualDeviation(), "residual at " + offset);
      assertAgree(14, exact.at(x[3]), line.at(x[3]), "height at " + offset);
    }
  }

  /** The same line by the normal equations in 80 decimal digits. */
  private record DecimalLine(BigDecimal a, BigDecimal b, double residual) {
    private static final MathContext EXACT = new MathContext(80);

    static DecimalLine fit(double[] x, double[] y) {
      BigDecimal n = BigDecimal.valueOf(x.length);
      BigDecimal[] s = new BigDecimal[4];
      java.util.Arrays.fill(s, BigDecimal.ZERO);
      for (int i = 0; i < x.length; i++) {
        BigDecimal bx = new BigDecimal(x[i]);
        BigDecimal by = new BigDecimal(y[i]);
        s[0] = s[0].add(bx);
        s[1] = s[1].add(by);
        s[2] = s[2].add(bx.multiply(bx));
        s[3] = s[3].add(bx.multiply(by));
      }
      BigDecimal under = n.multiply(s[2]).subtract(s[0].multiply(s[0]));
      BigDecimal b = n.multiply(s[3]).subtract(s[0].multiply(s[1])).divide(under, EXACT);
      BigDecimal a = s[1].subtract(b.multiply(s[0])).divide(n, EXACT);
      BigDecimal squares = BigDecimal.ZERO;
      for (int i = 0; i < x.length; i++) {
        BigDecimal r = new BigDecimal(y[i]).subtract(a).subtract(b.multiply(new BigDecimal(x[i])));
        squares = squares.add(r.multiply(r, EXACT));
      }
      BigDecimal variance = squares.divide(BigDecimal.valueOf(x.length - 2L), EXACT);
      return new DecimalLine(a, b, variance.sqrt(EXACT).doubleValue());
    }

    double slope() {
      return b.doubleValue();
    }

    double intercept() {
      return a.doubleValue();
    }

    double at(double x) {
      return a.add(b.multiply(new BigDecimal(x))).doubleValue();
    }
  }

  @Test
  void aPerfectFitHasNoResidual() {
    StraightLine line = StraightLine.fit(new double[] {0, 1, 2, 5}, new double[] {1, 3, 5, 11});
    assertEquals(0, line.residualDeviation());
    assertEquals(new Interval(2, 2), line.slopeInterval(0.95));
    assertEquals(new Interval(7, 7), line.intervalAt(3, 0.95));
    assertEquals(1, line.chanceBeyond(3, 6.9));
    assertEquals(0, line.chanceBeyond(3, 7));
    StraightLine shared = line.withSharedUncertainty(0.5);
    assertEquals(0.5, shared.standardErrorAt(3));
    assertEquals(7 + 0.5 * Normal.quantile(0.975), shared.intervalAt(3, 0.95).upper(), 1e-14);
    assertEquals(Normal.above(2) + Normal.above(30), shared.chanceBeyond(3, 8), 1e-15);
    assertEquals(0, line.slopeError());
  }

  @Test
  void aFitPerfectButForRoundingIsAsCertain() {
    StraightLine line =
        StraightLine.fit(new double[] {0.1, 0.2, 0.3, 0.7}, new double[] {0.3, 0.6, 0.9, 2.1});
    assertEquals(0, line.residualDeviation(), 1e-15);
    for (double shared : new double[] {0, 1e-300, 1e-160}) {
      StraightLine with = line.withSharedUncertainty(shared);
      assertEquals(0, with.chanceBeyond(0.4, 1.3), 1e-12);
      assertEquals(1, with.chanceBeyond(0.4, 1.1), 1e-12);
      assertEquals(1.2, with.intervalAt(0.4, 0.95).upper(), 1e-14);
    }
    StraightLine exact = StraightLine.fit(new double[] {0, 1, 2}, new double[] {0, 1, 2});
    assertEquals(0, exact.withSharedUncertainty(1e-160).chanceBeyond(1, 2));
    assertEquals(1, exact.withSharedUncertainty(1e-160).chanceBeyond(1, 0.5));
  }

  @Test
  void aFlatLineThroughZeroIsBeyondNothingWithChanceOfBothTails() {
    StraightLine line = StraightLine.fit(new double[] {-1, 0, 1}, new double[] {1, -2, 1});
    assertEquals(0, line.slope());
    assertEquals(0, line.at(0.7));
    // t with one degree of freedom: P(|T| > t) = 1 - 2 atan(t) / pi
    double t = 3 / line.standardErrorAt(0.7);
    assertEquals(1 - 2 * Math.atan(t) / Math.PI, line.chanceBeyond(0.7, 3), 1e-13);
    assertEquals(1, line.chanceBeyond(0.7, 0), 1e-14);
  }

  @Test
  void sharedUncertaintyLastGivenCounts() {
    StraightLine line = drift.withSharedUncertainty(4).withSharedUncertainty(0);
    assertEquals(drift.standardErrorAt(9), line.standardErrorAt(9));
    double both = Math.hypot(drift.interceptError(), 0.1);
    assertRelative(both, drift.withSharedUncertainty(0.1).interceptError(), 1e-14, "intercept");
  }

  @Test
  void aSharedUncertaintyNeverLowersTheChance() {
    double before = drift.chanceBeyond(30, 0.012);
    for (double u : new double[] {1e-6, 1e-4, 5e-4, 1e-3, 2e-3, 4e-3, 1e-2}) {
      double now = drift.withSharedUncertainty(u).chanceBeyond(30, 0.012);
      assertTrue(now >= before * (1 - 1e-9), u + ": " + now + " under " + before);
      before = now;
    }
  }
}
