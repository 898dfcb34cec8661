package org.quietline.stats.runlength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.control.RunRule.Beyond;
import org.quietline.stats.control.RunRule.SameSide;
import org.quietline.stats.control.RunRule.Steady;
import org.quietline.stats.control.RunRule.Within;
import org.quietline.stats.runlength.Chart.Limits;
import org.quietline.stats.runlength.Chart.Side;
import org.quietline.stats.runlength.RunLength.Start;
import org.quietline.stats.runlength.RunLengthDistribution.Way;

class CombinedRunLengthTest {

  /** Simulated by the file; exact in the program for sums, simulated for mean and run. */
  @Test
  void chartsTogether() {
    Reference table = Reference.read("run-length-combinations");
    int rows = table.at("/expected/rows").size();
    assertEquals(24, rows);
    for (int at = 0; at < rows; at++) {
      String row = "/expected/rows/" + at;
      double[] figures = new double[9];
      for (int i = 0; i < 9; i++) {
        figures[i] = table.number(row + "/" + (i + 1));
      }
      boolean sums = table.at(row + "/0").asText().startsWith("sums");
      Chart chart =
          sums
              ? Chart.together(
                  Chart.individuals(figures[0]),
                  Chart.cumulativeSum(figures[1], figures[2], figures[3], Side.BOTH))
              : Chart.together(
                  Chart.weightedMean(figures[0], figures[1]),
                  Chart.rules(new SameSide((int) figures[2]), new Beyond(1, 1, figures[3])));
      RunLengthDistribution got = RunLength.of(chart, Change.shift(figures[4]));
      double error = figures[6];
      if (got.way() instanceof Way.Simulated simulated) {
        error = Math.hypot(error, simulated.averageError());
        assertEquals(100_000, simulated.trials());
      } else {
        assertTrue(sums);
      }
      table.check(
          Chart.Together.class,
          "average, " + chart + ", shift " + figures[4],
          row + "/6",
          got.average(),
          4 * error);
      assertEquals(figures[7], got.quantile(0.5), Math.max(1, 0.03 * figures[7]), "median");
      double trials = sums ? 200_000 : 66_000;
      double spread = Math.sqrt(figures[8] * (1 - figures[8]) / trials) + 1e-9;
      assertEquals(figures[8], got.chanceWithin(4), 4.5 * spread, "within 4");
    }
  }

  @Test
  void exactWhereTheProgramSaysSo() {
    Chart[] exact = {
      Chart.individuals(3),
      Chart.together(Chart.individuals(3), Chart.individuals(2)),
      Chart.together(Chart.individuals(3), Chart.rules(new SameSide(8), new Beyond(1, 1, 2.5))),
      Chart.together(Chart.weightedMean(1, 2.5), Chart.weightedMean(0.2, 3)),
      Chart.together(Chart.rules(new Beyond(1, 1, 3)), Chart.cumulativeSum(0.5, 4)),
      Chart.together(Chart.together(Chart.weightedMean(0.2, 3)), Chart.weightedMean(0.2, 3)),
      Chart.together(Chart.rules(new SameSide(8)), Chart.rules(new Beyond(2, 3, 2)))
    };
    for (Chart chart : exact) {
      assertEquals(new Way.Exact(), RunLength.of(chart, Change.shift(1)).way(), chart.toString());
    }
    Chart[] simulated = {
      Chart.together(Chart.weightedMean(0.2, 3), Chart.weightedMean(0.3, 3)),
      Chart.together(Chart.weightedMean(0.2, 3), Chart.cumulativeSum(0.5, 4)),
      Chart.together(Chart.weightedMean(0.2, 3), Chart.rules(new SameSide(8))),
      Chart.together(Chart.cumulativeSum(0.5, 4), Chart.cumulativeSum(1, 2.5))
    };
    for (Chart chart : simulated) {
      assertInstanceOf(
          Way.Simulated.class, RunLength.of(chart, Change.shift(1)).way(), chart.toString());
    }
  }

  @Test
  void theNarrowerOfTwoLimitsCounts() {
    double narrow = RunLength.individuals(2, 0.3);
    Change change = Change.shift(0.3);
    Chart one = Chart.together(Chart.individuals(3), Chart.rules(new Beyond(1, 1, 2)));
    Chart other = Chart.together(Chart.rules(new Beyond(1, 1, 3)), Chart.individuals(2));
    assertRelative(narrow, RunLength.of(one, change).average(), 1e-12, "rule");
    assertRelative(narrow, RunLength.of(other, change).average(), 1e-12, "limits");
  }

  /** Every chart simulated by its own rules, against its exact distribution. */
  @Test
  void simulationOfEachChartAgrees() {
    Chart[] charts = {
      Chart.individuals(2),
      Chart.weightedMean(0.3, 2.2),
      Chart.weightedMean(0.1, 2, Limits.GROWING),
      Chart.cumulativeSum(0.5, 3),
      Chart.cumulativeSum(0.5, 3, 1.5, Side.BOTH),
      Chart.cumulativeSum(0.2, 3, 1, Side.UPPER),
      Chart.cumulativeSum(0.2, 3, 0, Side.LOWER),
      Chart.rules(new Beyond(2, 3, 1.5), new Steady(5), new Within(6, 1)),
      Chart.together(Chart.individuals(2.5), Chart.weightedMean(0.2, 2.4, Limits.GROWING)),
      Chart.together(Chart.individuals(2.2), Chart.cumulativeSum(0.5, 4, 2, Side.BOTH))
    };
    int trials = 3000;
    for (Chart chart : charts) {
      boolean oneSide = chart instanceof Chart.CumulativeSum sum && sum.side() != Side.BOTH;
      List<Change> changes =
          oneSide
              ? List.of(Change.none())
              : List.of(Change.none(), Change.shift(-0.8), Change.drift(0.05));
      for (Change change : changes) {
        RunLengthDistribution exact = RunLength.of(chart, change);
        RunLengthDistribution seen = RunLength.simulated(chart, change, trials, 3);
        double error = ((Way.Simulated) seen.way()).averageError();
        String what = "average, " + chart + ", " + change;
        Evidence.own(
            chart.getClass(),
            what,
            "3000 seeded runs",
            seen.average(),
            exact.average(),
            4 * error / seen.average());
        assertEquals(
            exact.standardDeviation(),
            seen.standardDeviation(),
            0.12 * exact.standardDeviation(),
            what);
        for (int n : new int[] {1, 3, 10}) {
          Simulation.assertShare(
              exact.chanceWithin(n), (int) Math.round(trials * seen.chanceWithin(n)), trials);
        }
      }
    }
  }

  @Test
  void settledCombinationIsSimulatedFromAQuietTime() {
    Chart chart = Chart.together(Chart.weightedMean(0.4, 3), Chart.rules(new SameSide(9)));
    RunLengthDistribution settled = RunLength.of(chart, Change.shift(1), Start.SETTLED);
    RunLengthDistribution fresh = RunLength.of(chart, Change.shift(1));
    assertTrue(settled.average() < fresh.average());
  }

  /** A chart with the wrong centre and deviation is another chart under another shift. */
  @Test
  void givenABaseline() {
    Chart chart = Chart.together(Chart.individuals(3), Chart.weightedMean(0.2, 2.9));
    Chart wider = Chart.together(Chart.individuals(3.3), Chart.weightedMean(0.2, 3.19));
    assertRelative(
        RunLength.of(wider, Change.shift(0.7)).average(),
        RunLength.given(chart, Change.shift(1), 0.3, 1.1).average(),
        1e-12,
        "mean");
    assertRelative(
        RunLength.of(Chart.cumulativeSum(0.4, 4, 1.6, Side.BOTH), Change.shift(-0.2)).average(),
        RunLength.given(Chart.cumulativeSum(0.5, 5, 2, Side.BOTH), Change.none(), 0.2, 0.8)
            .average(),
        1e-12,
        "sum");
    Chart rules =
        Chart.rules(new Beyond(2, 3, 2), new Within(15, 1), new Steady(6), new SameSide(8));
    Chart narrower =
        Chart.rules(new Beyond(2, 3, 1.8), new Within(15, 0.9), new Steady(6), new SameSide(8));
    assertRelative(
        RunLength.of(narrower, Change.shift(0.5)).average(),
        RunLength.given(rules, Change.none(), -0.5, 0.9).average(),
        1e-12,
        "rules");
    assertRelative(
        1 / 0.002699796063260207,
        RunLength.given(Chart.individuals(3), Change.shift(2), 2, 1).average(),
        1e-12,
        "moved centre");
  }

  @Test
  void simulationsRepeatAndDifferBySeed() {
    Chart chart = Chart.weightedMean(0.2, 2.5);
    RunLengthDistribution a = RunLength.simulated(chart, Change.none(), 500, 1);
    RunLengthDistribution b = RunLength.simulated(chart, Change.none(), 500, 1);
    RunLengthDistribution c = RunLength.simulated(chart, Change.none(), 500, 2);
    assertEquals(a.average(), b.average());
    assertTrue(a.average() != c.average());
    assertEquals(0, a.chanceWithin(0));
    assertEquals(1, a.chanceWithin((long) a.quantile(0.9999)));
    assertTrue(a.chanceWithin((long) a.quantile(0.5)) >= 0.5);
    assertTrue(a.chanceWithin((long) a.quantile(0.5) - 1) < 0.5);
    Way.Simulated way = (Way.Simulated) a.way();
    assertEquals(500, way.trials());
    assertRelative(a.standardDeviation() / Math.sqrt(500), way.averageError(), 1e-12, "error");
  }
}
