package org.quietline.stats.runlength;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.control.WeightedMean;
import org.quietline.stats.runlength.Chart.Limits;
import org.quietline.stats.runlength.RunLength.Start;

class WeightedMeanRunLengthTest {

  @Test
  void wholeDistributionUnderShiftAndDrift() {
    Reference table = Reference.read("run-length-weighted-mean");
    int at = 0;
    for (double[] row : table.rows("/expected/rows", 78)) {
      Limits limits = row[2] == 1 ? Limits.GROWING : Limits.STEADY;
      Change change = row[4] == 0 ? Change.shift(row[3]) : Change.drift(row[4]);
      RunLengthDistribution got = RunLength.of(Chart.weightedMean(row[0], row[1], limits), change);
      Expected.check(
          table,
          Chart.WeightedMean.class,
          "/expected/rows/" + at,
          5,
          got,
          "weighted mean " + row[0] + ", width " + row[1] + ", " + limits + ", " + change);
      at++;
    }
  }

  @Test
  void settledStart() {
    Reference table = Reference.read("run-length-settled");
    int at = 0;
    for (double[] row : table.rows("/expected/rows", 9)) {
      double got =
          RunLength.of(Chart.weightedMean(row[0], row[1]), Change.shift(row[2]), Start.SETTLED)
              .average();
      table.check(
          RunLength.class,
          "average, settled weighted mean " + row[0] + ", width " + row[1] + ", shift " + row[2],
          "/expected/rows/" + at + "/3",
          got);
      at++;
    }
  }

  /** Crowder's table, typed from memory. */
  @ParameterizedTest
  @ValueSource(strings = {"0.75", "0.50", "0.25", "0.10"})
  void crowdersTable(String weight) {
    Reference.read("arl-ewma-crowder-1987")
        .check(
            Chart.WeightedMean.class,
            "average, weighted mean " + weight + ", width 3, no shift",
            "/expected/" + weight,
            RunLength.of(Chart.weightedMean(Double.parseDouble(weight), 3), Change.none())
                .average());
  }

  /** The chart itself, given random values. */
  @Test
  void theChartItselfAgrees() {
    SplittableRandom random = new SplittableRandom(9);
    WeightedMean chart = new WeightedMean(0, 1, 0.3, 2.5);
    int trials = 4000;
    int within = 0;
    for (int trial = 0; trial < trials; trial++) {
      double[] values = new double[12];
      for (int i = 0; i < 12; i++) {
        values[i] = 0.1 * (i + 1) + Simulation.normal(random);
      }
      within +=
          chart.trace(values, new boolean[12]).stream().anyMatch(WeightedMean.Point::beyond)
              ? 1
              : 0;
    }
    double expected =
        RunLength.of(Chart.weightedMean(0.3, 2.5, Limits.GROWING), Change.drift(0.1))
            .chanceWithin(12);
    Simulation.assertShare(expected, within, trials);
    Evidence.own(
        Change.Drift.class,
        "chance within 12, weighted mean 0.3, width 2.5, growing limits, drift 0.1",
        "the chart itself on 4000 seeded series",
        (double) within / trials,
        expected,
        0.04);
  }

  @Test
  void growingLimitsSignalSoonerAndWiderLimitsLater() {
    SplittableRandom random = new SplittableRandom(4);
    for (int i = 0; i < 20; i++) {
      double weight = 0.05 + 0.9 * random.nextDouble();
      double width = 2 + random.nextDouble();
      Change change = Change.shift(2 * random.nextDouble());
      RunLengthDistribution steady = RunLength.of(Chart.weightedMean(weight, width), change);
      RunLengthDistribution growing =
          RunLength.of(Chart.weightedMean(weight, width, Limits.GROWING), change);
      RunLengthDistribution wider = RunLength.of(Chart.weightedMean(weight, width + 0.1), change);
      assertTrue(growing.average() < steady.average());
      assertTrue(steady.average() < wider.average());
      for (int n = 1; n < 40; n++) {
        assertTrue(growing.chanceWithin(n) >= steady.chanceWithin(n) - 1e-12);
        assertTrue(steady.chanceWithin(n) > wider.chanceWithin(n) - 1e-12);
      }
    }
  }

  @Test
  void singleValuesBesideTakeNothingAwayWhereTheirLimitsAreFar() {
    Chart mean = Chart.weightedMean(0.2, 2.8, Limits.GROWING);
    Chart both = Chart.together(Chart.individuals(9), mean);
    for (double shift : new double[] {0, 1, 2}) {
      RunLengthDistribution a = RunLength.of(mean, Change.shift(shift));
      RunLengthDistribution b = RunLength.of(both, Change.shift(shift));
      assertRelative(a.average(), b.average(), 1e-9, "average");
      assertRelative(a.chanceWithin(7), b.chanceWithin(7), 1e-9, "in 7");
    }
  }

  @Test
  void averagesFarBeyondAnyUseKeepTheirDigits() {
    double got = RunLength.of(Chart.weightedMean(0.999999, 9), Change.none()).average();
    assertRelative(
        RunLength.of(Chart.individuals(9), Change.none()).average(), got, 2e-4, "width 9");
    for (double width : new double[] {3, 6, 9.5}) {
      Chart chart = Chart.weightedMean(0.1, width);
      RunLengthDistribution still = RunLength.of(chart, Change.none(), Start.SETTLED);
      assertRelative(1, still.average() * still.chanceWithin(1), 1e-8, "width " + width);
      RunLengthDistribution fresh = RunLength.of(chart, Change.none());
      assertTrue(fresh.average() >= still.average());
    }
    // SciPy: norm.sf(9) = 1.1285884059538324e-19
    assertRelative(1 / (2 * 1.1285884059538324e-19), got, 2e-4, "width 9");
  }
}
