package org.quietline.stats.runlength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.control.ControlLimits;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Quadrature;
import org.quietline.stats.runlength.BaselineRunLength.Average;

class BaselineRunLengthTest {
  private static final double[] SHARES = {0.1, 0.5, 0.9};

  @Test
  void limitsFromTheSampleDeviation() {
    Reference table = Reference.read("run-length-baseline");
    int at = 0;
    for (double[] row : table.rows("/expected/sample", 15)) {
      int n = (int) row[0];
      BaselineRunLength got = BaselineRunLength.fromSampleDeviation(n, row[1], row[2]);
      String place = "/expected/sample/" + at + "/";
      String what = "baseline of " + n + ", width " + row[1] + ", shift " + row[2];
      for (int i = 0; i < 3; i++) {
        table.check(
            BaselineRunLength.class,
            "conditional average, quantile " + SHARES[i] + ", " + what,
            place + (3 + i),
            got.averageQuantile(SHARES[i]));
      }
      table.check(
          BaselineRunLength.class, "chance per value, " + what, place + 6, got.chancePerValue());
      table.check(
          BaselineRunLength.class, "chance within 20, " + what, place + 7, got.chanceWithin(20));
      at++;
    }
  }

  /** The file's figures are simulated, with errors of 0.1 and 0.5 %. */
  @Test
  void limitsFromTheMovingRange() {
    Reference table = Reference.read("run-length-baseline");
    int at = 0;
    for (double[] row : table.rows("/expected/range", 4)) {
      int n = (int) row[0];
      BaselineRunLength got = BaselineRunLength.fromMovingRange(n, row[1], 0);
      String place = "/expected/range/" + at + "/";
      String what = "moving range of " + n + ", width " + row[1];
      double[] relative = {0.005, 0.005, 0.02};
      for (int i = 0; i < 3; i++) {
        table.check(
            BaselineRunLength.class,
            "conditional average, quantile " + SHARES[i] + ", " + what,
            place + (2 + i),
            got.averageQuantile(SHARES[i]),
            relative[i] * row[2 + i]);
      }
      table.check(
          BaselineRunLength.class,
          "chance per value, " + what,
          place + 5,
          got.chancePerValue(),
          0.005 * row[5]);
      table.check(
          BaselineRunLength.class,
          "chance within 20, " + what,
          place + 6,
          got.chanceWithin(20),
          0.005 * row[6]);
      MovingRangeRatio ratio = new MovingRangeRatio(n);
      assertEquals(row[7], ratio.below(0.8), 0.0016);
      assertEquals(row[8], ratio.below(1.1), 0.0016);
      at++;
    }
  }

  /** The practitioner's simulated table; sample deviations there are divided by c4. */
  @Test
  void practitionersTable() {
    Reference table = Reference.read("run-length-baseline");
    for (double[] row : table.rows("/expected/sample", 15)) {
      if (row[1] != 3 && row[2] == 0) {
        BaselineRunLength got = BaselineRunLength.fromSampleDeviation((int) row[0], row[1], 0);
        double[] printed = table.numbers("/data/printedSample/" + (int) row[0], 3);
        for (int i = 0; i < 3; i++) {
          assertRelative(printed[i], got.averageQuantile(SHARES[i]), 0.06, "n " + row[0]);
        }
      }
    }
    BaselineRunLength fifteen = BaselineRunLength.fromMovingRange(15, 3, 0);
    double[] printed = table.numbers("/data/printedRange/15", 3);
    for (int i = 0; i < 3; i++) {
      assertRelative(printed[i], fifteen.averageQuantile(SHARES[i]), 0.06, "range");
    }
    assertEquals(0.0149, fifteen.chancePerValue(), 0.0004);
  }

  @Test
  void averageOverBaselines() {
    Reference table = Reference.read("run-length-baseline");
    int at = 0;
    for (double[] row : table.rows("/expected/marginal", 4)) {
      Average average = BaselineRunLength.fromSampleDeviation((int) row[0], 3, 0).average();
      table.check(
          BaselineRunLength.class,
          "average over baselines of " + (int) row[0],
          "/expected/marginal/" + at + "/2",
          assertInstanceOf(Average.Finite.class, average).value());
      at++;
    }
    assertEquals(new Average.Infinite(), BaselineRunLength.fromSampleDeviation(10, 3, 0).average());
    assertInstanceOf(
        Average.Finite.class, BaselineRunLength.fromSampleDeviation(11, 3, 0).average());
    assertEquals(new Average.Infinite(), BaselineRunLength.prediction(15, 0).average());
    assertEquals(new Average.NotKnown(), BaselineRunLength.fromMovingRange(20, 3, 0).average());
    assertEquals(
        new Average.NotKnown(),
        BaselineRunLength.fromSampleDeviation(10, Math.sqrt(8.9), 0).average());
  }

  /** Theory: prediction limits are left with 0.27 % over baselines, whatever n. */
  @ParameterizedTest
  @ValueSource(ints = {5, 8, 10, 15, 30, 200})
  void predictionLimitsKeepTheirPromise(int n) {
    BaselineRunLength got = BaselineRunLength.prediction(n, 0);
    Evidence.own(
        BaselineRunLength.class,
        "chance per value, prediction limits from " + n,
        "theory: 2·(1 − Φ(3))",
        2 * Normal.above(3),
        got.chancePerValue(),
        1e-9);
    assertTrue(got.chanceWithin(20) < 1 - Math.pow(1 - 2 * Normal.above(3), 20));
  }

  /** Theory: the confidence is the share of baselines with a run length of 370 or more. */
  @ParameterizedTest
  @ValueSource(doubles = {0.5, 0.9, 0.95})
  void guaranteedLimitsKeepTheirPromise(double confidence) {
    for (int n : new int[] {5, 10, 20, 50}) {
      Evidence.own(
          BaselineRunLength.class,
          "share of baselines up to 370, guaranteed " + confidence + " from " + n,
          "theory: 1 less the confidence",
          1 - confidence,
          BaselineRunLength.guaranteed(n, confidence, 0).shareUpTo(1 / (2 * Normal.above(3))),
          1e-7);
    }
  }

  /** The limits as the control package makes them, from seeded baselines. */
  @Test
  void theChartsThemselvesAgree() {
    SplittableRandom random = new SplittableRandom(14);
    int trials = 3000;
    int n = 12;
    int[] signals = new int[3];
    int[] early = new int[3];
    for (int trial = 0; trial < trials; trial++) {
      double[] values = Simulation.normal(random, n);
      ControlLimits[] limits = {
        ControlLimits.fromMovingRange(values),
        ControlLimits.fromSampleDeviation(values),
        ControlLimits.prediction(values)
      };
      double[] next = Simulation.normal(random, 20);
      for (int kind = 0; kind < 3; kind++) {
        ControlLimits limit = limits[kind];
        signals[kind] +=
            Arrays.stream(next).anyMatch(x -> x < limit.lowerAction() || x > limit.upperAction())
                ? 1
                : 0;
        double chance = Normal.above(limit.upperAction()) + Normal.below(limit.lowerAction());
        early[kind] += 1 / chance <= 100 ? 1 : 0;
      }
    }
    BaselineRunLength[] computed = {
      BaselineRunLength.fromMovingRange(n, 3, 0),
      BaselineRunLength.fromSampleDeviation(n, 3, 0),
      BaselineRunLength.prediction(n, 0)
    };
    for (int kind = 0; kind < 3; kind++) {
      Simulation.assertShare(computed[kind].chanceWithin(20), signals[kind], trials);
      Simulation.assertShare(computed[kind].shareUpTo(100), early[kind], trials);
    }
    assertEquals(3, computed[0].multiplier());
    assertRelative(4.0085, computed[2].multiplier(), 1e-3, "prediction");
  }

  /** Moments from the distribution function, against those of pairs of ranges in closed form. */
  @Test
  void movingRangeHasItsMoments() {
    Reference table = Reference.read("run-length-moving-range");
    int at = 0;
    for (double[] row : table.rows("/expected/rows", 5)) {
      MovingRangeRatio ratio = new MovingRangeRatio((int) row[0]);
      double[] edges = new double[9];
      for (int i = 0; i < edges.length; i++) {
        edges[i] = i * 6.0 / 8;
      }
      double mean = Quadrature.integrate(w -> 1 - ratio.below(w), edges);
      double square = Quadrature.integrate(w -> 2 * w * (1 - ratio.below(w)), edges);
      assertEquals(1, mean, row[0] < 8 ? 1e-6 : 1e-8);
      table.check(
          BaselineRunLength.class,
          "variance of the mean moving range of " + (int) row[0],
          "/expected/rows/" + at + "/1",
          square - mean * mean,
          row[0] < 8 ? 3e-6 : 1e-8);
      at++;
    }
  }

  @Test
  void moreValuesNarrowTheSpreadAndShiftsShortenTheRun() {
    double spread = Double.POSITIVE_INFINITY;
    for (int n : new int[] {8, 15, 30, 100, 400}) {
      BaselineRunLength chart = BaselineRunLength.fromSampleDeviation(n, 3, 0);
      double now = chart.averageQuantile(0.9) / chart.averageQuantile(0.1);
      assertTrue(now < spread, "n " + n);
      spread = now;
    }
    BaselineRunLength none = BaselineRunLength.fromMovingRange(20, 3, 0);
    BaselineRunLength shifted = BaselineRunLength.fromMovingRange(20, 3, 1.5);
    for (double share : SHARES) {
      assertTrue(shifted.averageQuantile(share) < none.averageQuantile(share));
      assertRelative(share, none.shareUpTo(none.averageQuantile(share)), 1e-9, "share");
    }
    assertTrue(shifted.chanceWithin(5) > none.chanceWithin(5));
    assertRelative(
        shifted.chanceWithin(5),
        BaselineRunLength.fromMovingRange(20, 3, -1.5).chanceWithin(5),
        1e-12,
        "sign");
  }

  @Test
  void manyValuesComeNearTheKnownDeviation() {
    BaselineRunLength chart = BaselineRunLength.fromSampleDeviation(1000, 3, 0);
    assertEquals(370.4, chart.averageQuantile(0.5), 3.5);
    // the first term of the expansion in 1/n: φ(K)·(K³/2 + K + K/2)/n
    double more = Normal.density(3) * (13.5 + 3 + 1.5) / 1000;
    assertEquals(2 * Normal.above(3) + more, chart.chancePerValue(), 2e-6);
  }

  @Test
  void farQuantilesAndChancesStayInTheirRange() {
    assertEquals(
        Double.POSITIVE_INFINITY, BaselineRunLength.guaranteed(5, 0.9999, 0).averageQuantile(0.9));
    BaselineRunLength atOnce = BaselineRunLength.fromSampleDeviation(1000, 1, 10);
    assertEquals(1, atOnce.averageQuantile(0.5));
    assertTrue(atOnce.shareUpTo(1.0000001) <= 1);
    assertTrue(BaselineRunLength.fromSampleDeviation(5, 0.5, 0).chanceWithin(1_000_000) <= 1);
  }
}
