package org.quietline.stats.runlength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.runlength.Chart.Limits;
import org.quietline.stats.runlength.RunLength.Start;
import org.quietline.stats.runlength.ShiftDelay.Baseline;

class ShiftDelayTest {
  private static final Baseline RIGHT = new Baseline.Right();
  private static final long SEED = 20_261_107;

  private static Chart usual(double width) {
    return Chart.together(Chart.individuals(width), Chart.weightedMean(0.4, width, Limits.GROWING));
  }

  /** Baselines of 20, started anew every four values: an independent simulation with NumPy. */
  @Test
  void shortBaselinesAndRestarts() {
    Reference reference = Reference.read("shift-delay");
    JsonNode rows = reference.at("/expected/rows");
    assertEquals(6, rows.size());
    int[] within = {1, 4, 12, 40};
    int benches = 40_000;
    for (int i = 0; i < rows.size(); i++) {
      JsonNode row = rows.get(i);
      boolean moving = row.get(0).asText().equals("moving");
      Baseline baseline =
          moving ? new Baseline.OfMovingRange(20) : new Baseline.SampleDeviation(20);
      double shift = row.get(2).doubleValue();
      ShiftDelay delay =
          ShiftDelay.simulate(usual(row.get(1).doubleValue()), baseline, 4, shift, benches, SEED);
      for (int j = 0; j < 4; j++) {
        String words = baseline + ", " + row.get(1) + " deviations, shift " + shift;
        double expected = row.get(3 + j).doubleValue();
        // four standard errors of both simulations
        double error = 4 * Math.sqrt(expected * (1 - expected) * (1.0 / benches + 1 / 400_000.0));
        reference.check(
            ShiftDelay.class,
            words + ": seen within " + within[j],
            "/expected/rows/" + i + "/" + (3 + j),
            delay.chanceWithin(within[j]),
            error);
      }
    }
  }

  /** Where every value starts the chart anew, each signals with the chance of a single value. */
  @Test
  void aStartAtEveryValue() {
    ShiftDelay delay = ShiftDelay.simulate(usual(3), RIGHT, 1, 1, 60_000, SEED);
    assertEquals(60_000, delay.benches());
    double p = Normal.above(2) + Normal.below(-4);
    for (int n : new int[] {1, 5, 30}) {
      double expected = 1 - Math.pow(1 - p, n);
      Simulation.assertShare(expected, (int) Math.round(delay.chanceWithin(n) * 60_000), 60_000);
    }
    // ln(0.5)/ln(1 − p) = 30.1
    assertEquals(Math.ceil(Math.log(0.5) / Math.log1p(-p)), delay.quantile(0.5), 1);
  }

  /** With right limits and one long stretch it is the exact run length of a settled chart. */
  @Test
  void oneLongStretch() {
    int benches = 2500;
    for (Chart chart :
        new Chart[] {
          Chart.individuals(3),
          Chart.weightedMean(0.4, 3, Limits.GROWING),
          Chart.cumulativeSum(0.5, 5)
        }) {
      ShiftDelay delay = ShiftDelay.simulate(chart, RIGHT, 1_000_000, 1.5, benches, SEED);
      RunLengthDistribution exact =
          RunLength.of(
              chart,
              Change.shift(1.5),
              chart instanceof Chart.Individuals ? Start.FRESH : Start.SETTLED);
      for (int n : new int[] {2, 4, 8, 16}) {
        double expected = exact.chanceWithin(n);
        double error = 4 * Math.sqrt(expected * (1 - expected) / benches) + 0.003;
        assertEquals(expected, delay.chanceWithin(n), error, chart + " within " + n);
      }
      double expected = exact.chanceWithin(8);
      Evidence.own(
          ShiftDelay.class,
          "seen within 8, right limits, no restart, " + chart,
          "exact run length of the settled chart",
          expected,
          delay.chanceWithin(8),
          4 * Math.sqrt((1 - expected) / expected / benches) + 0.01);
    }
  }

  @Test
  void quantilesAndShares() {
    ShiftDelay delay =
        ShiftDelay.simulate(usual(3), new Baseline.SampleDeviation(15), 4, 2, 100, SEED);
    assertEquals(0, delay.chanceWithin(0), 0.0);
    for (int percent = 1; percent < 100; percent++) {
      double quantile = delay.quantile(percent / 100.0);
      assertTrue(quantile >= 1);
      assertTrue(Math.round(100 * delay.chanceWithin((int) quantile)) >= percent);
      assertTrue(Math.round(100 * delay.chanceWithin((int) quantile - 1)) < percent);
    }
    // limits of ten deviations never see a shift of a tenth
    ShiftDelay never = ShiftDelay.simulate(Chart.individuals(10), RIGHT, 4, 0.1, 100, SEED);
    assertEquals(0, never.chanceWithin(500), 0.0);
    assertEquals(Double.POSITIVE_INFINITY, never.quantile(0.01), 0.0);
    // a shift of a hundred is seen at once, either way
    for (double shift : new double[] {100, -100}) {
      ShiftDelay soon = ShiftDelay.simulate(usual(3), RIGHT, 4, shift, 100, SEED);
      assertEquals(1, soon.quantile(0.99), 0.0);
    }
  }

  /** Single values: the exact chance over baselines. Sums: one over the exact run length. */
  @Test
  void falseSignals() {
    double single =
        ShiftDelay.falseSignalsPerValue(
            Chart.individuals(3), new Baseline.OfMovingRange(20), 4, 20_000, SEED);
    Evidence.own(
        ShiftDelay.class,
        "false signals a value, single values, moving ranges of 20",
        "BaselineRunLength, exact",
        BaselineRunLength.fromMovingRange(20, 3, 0).chancePerValue(),
        single,
        0.05);
    // 20 values less seldom than a settled chart, which costs a twentieth of a stretch of 500
    double sums =
        ShiftDelay.falseSignalsPerValue(Chart.cumulativeSum(0.5, 4), RIGHT, 500, 400, SEED);
    Evidence.own(
        ShiftDelay.class,
        "false signals a value, cumulative sums, right limits",
        "one over the exact average run length",
        1 / RunLength.of(Chart.cumulativeSum(0.5, 4), Change.none()).average(),
        sums,
        0.1);
    // no four results make a sum of 5 from a start, unless far out
    assertTrue(
        ShiftDelay.falseSignalsPerValue(Chart.cumulativeSum(0.5, 5), RIGHT, 4, 10_000, SEED)
            < 0.0005);
  }

  @Test
  void sameSeedSameDelays() {
    for (int n : new int[] {1, 10, 100}) {
      assertEquals(
          ShiftDelay.simulate(usual(3), new Baseline.OfMovingRange(20), 5, 1, 500, 4)
              .chanceWithin(n),
          ShiftDelay.simulate(usual(3), new Baseline.OfMovingRange(20), 5, 1, 500, 4)
              .chanceWithin(n),
          0.0);
    }
  }
}
