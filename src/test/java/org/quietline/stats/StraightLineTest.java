package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertAgree;
import static org.quietline.stats.Digits.assertRelative;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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
    assertRelative(window.number("/expected/" + name), actual, window.tolerance(), name);
  }

  @Test
  void heightsWithAndWithoutASharedUncertainty() {
    double allowance = window.number("/data/allowance");
    for (double[] row : window.rows("/expected/rows", 6)) {
      StraightLine line = drift.withSharedUncertainty(row[1]);
      assertEquals(row[2], line.at(row[0]), 1e-15);
      assertRelative(row[3], line.standardErrorAt(row[0]), 1e-11, "error");
      assertRelative(row[4], line.intervalAt(row[0], 0.95).lower(), 1e-10, "lower");
      assertRelative(row[5], line.intervalAt(row[0], 0.95).upper(), 1e-10, "upper");
      assertRelative(row[6], line.chanceBeyond(row[0], allowance), 1e-9, "chance");
      assertEquals(drift.slopeInterval(0.9), line.slopeInterval(0.9));
    }
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
      assertAgree(14, exact.slope(), line.slope(), "slope at " + offset);
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

  @ParameterizedTest
  @ValueSource(ints = {5, 8, 12, 20})
  void slopeAndHeightIntervalsCoverTheTruth(int n) {
    SplittableRandom random = new SplittableRandom(200 + n);
    int trials = 3000;
    int slopes = 0;
    int heights = 0;
    for (int i = 0; i < trials; i++) {
      double[] x = new double[n];
      double[] y = new double[n];
      for (int j = 0; j < n; j++) {
        x[j] = 1 + 30.0 * j / n;
        y[j] = 0.01 + 0.002 * x[j] + 0.02 * Simulation.normal(random);
      }
      StraightLine line = StraightLine.fit(x, y);
      slopes += line.slopeInterval(0.95).contains(0.002) ? 1 : 0;
      heights += line.intervalAt(30, 0.95).contains(0.07) ? 1 : 0;
    }
    Simulation.assertShare(0.95, slopes, trials);
    Simulation.assertShare(0.95, heights, trials);
  }

  /** Three points leave one degree of freedom, where an approximate sum would cover 87 %. */
  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void sharedUncertaintyKeepsTheCoverage(int n) {
    SplittableRandom random = new SplittableRandom(7);
    int trials = 3000;
    int heights = 0;
    for (int i = 0; i < trials; i++) {
      double common = 0.012 * Simulation.normal(random);
      double[] x = new double[n];
      double[] y = new double[n];
      for (int j = 0; j < n; j++) {
        x[j] = 1 + 7 * j;
        y[j] = common + 0.02 * Simulation.normal(random);
      }
      StraightLine line = StraightLine.fit(x, y).withSharedUncertainty(0.012);
      heights += line.intervalAt(30, 0.95).contains(0) ? 1 : 0;
    }
    Simulation.assertShareAtLeast(0.94, heights, trials);
    assertTrue(heights < 0.98 * trials, "coverage " + heights);
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
