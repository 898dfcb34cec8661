package org.quietline.stats.runlength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.quietline.stats.control.RunRule;
import org.quietline.stats.control.RunRule.Beyond;
import org.quietline.stats.control.RunRule.EitherSide;
import org.quietline.stats.control.RunRule.Opposite;
import org.quietline.stats.control.RunRule.SameSide;
import org.quietline.stats.runlength.Chart.Side;
import org.quietline.stats.runlength.ShiftDelay.Baseline;

class RunLengthInvalidInputTest {
  private static final double NAN = Double.NaN;

  private static void refused(String sentence, Executable call) {
    assertEquals(
        sentence, assertThrows(IllegalArgumentException.class, call, sentence).getMessage());
  }

  @Test
  void charts() {
    refused("width must be above 0 and at most 10, is 0.0", () -> Chart.individuals(0));
    refused("width must be above 0 and at most 10, is 10.1", () -> Chart.individuals(10.1));
    refused("width must be above 0 and at most 10, is NaN", () -> Chart.weightedMean(0.2, NAN));
    refused("weight must be from 0.01 to 1, is 0.009", () -> Chart.weightedMean(0.009, 3));
    refused("weight must be from 0.01 to 1, is NaN", () -> Chart.weightedMean(NAN, 3));
    refused("number of rules must be at least 1, is 0", Chart::rules);
    refused("number of charts must be at least 1, is 0", Chart::together);
    refused(
        "a rule that not all of its values need to meet can span at most 31, spans 32",
        () -> Chart.rules(new Beyond(3, 32, 1)));
    refused(
        "a rule that not all of its values need to meet can span at most 31, spans 40",
        () -> Chart.rulesEvery(2, new EitherSide(39, 40, 1)));
    refused("every must be at least 1, is 0", () -> Chart.rulesEvery(0, new SameSide(8)));
    refused("number of rules must be at least 1, is 0", () -> Chart.rulesEvery(2));
    Chart.rules(new Beyond(3, 31, 1), new Beyond(40, 40, 1));
    Chart.rules(new EitherSide(3, 31, 1), new EitherSide(40, 40, 1), new Opposite(40, 1));
    Chart.individuals(10);
    Chart.weightedMean(0.01, 3);
    Chart.weightedMean(1, 3);
  }

  @Test
  void delays() {
    Chart chart = Chart.individuals(3);
    Baseline right = new Baseline.Right();
    refused("n must be at least 2, is 1", () -> new Baseline.SampleDeviation(1));
    refused("n must be at least 2, is 1", () -> new Baseline.OfMovingRange(1));
    refused(
        "between must be at least 1, is 0", () -> ShiftDelay.simulate(chart, right, 0, 1, 100, 1));
    refused(
        "benches must be at least 100, is 99",
        () -> ShiftDelay.simulate(chart, right, 4, 1, 99, 1));
    refused(
        "shift must be from -100 to 100, is NaN",
        () -> ShiftDelay.simulate(chart, right, 4, NAN, 100, 1));
    refused(
        "between must be at least 1, is 0",
        () -> ShiftDelay.falseSignalsPerValue(chart, right, 0, 100, 1));
    refused(
        "benches must be at least 100, is 99",
        () -> ShiftDelay.falseSignalsPerValue(chart, right, 4, 99, 1));
    ShiftDelay delay = ShiftDelay.simulate(chart, right, 4, 3, 100, 1);
    refused("values must be from 0 to 500, is -1", () -> delay.chanceWithin(-1));
    refused("values must be from 0 to 500, is 501", () -> delay.chanceWithin(501));
    refused("share must be between 0 and 1, is 0.0", () -> delay.quantile(0));
    refused("share must be between 0 and 1, is 1.0", () -> delay.quantile(1));
    refused("share must be between 0 and 1, is NaN", () -> delay.quantile(NAN));
  }

  @Test
  void sums() {
    refused("reference value must be from 0.1 to 3, is 0.09", () -> Chart.cumulativeSum(0.09, 3));
    refused(
        "reference value must be from 0.0 to 3, is -0.1",
        () -> Chart.cumulativeSum(-0.1, 3, 0, Side.UPPER));
    refused(
        "reference value must be from 0.0 to 3, is NaN",
        () -> Chart.cumulativeSum(NAN, 3, 0, Side.LOWER));
    refused(
        "decision interval must be above 0 and at most 20.0, is 20.5",
        () -> Chart.cumulativeSum(0.5, 20.5));
    refused(
        "decision interval must be above 0 and at most 50.0, is 0.0",
        () -> Chart.cumulativeSum(3, 0));
    refused(
        "decision interval must be above 0 and at most 50.0, is 51.0",
        () -> Chart.cumulativeSum(0.5, 51, 0, Side.UPPER));
    refused(
        "decision interval must be above 0 and at most 20.0, is NaN",
        () -> Chart.cumulativeSum(0.5, NAN));
    refused(
        "head start must be from 0 to 2.5, is 2.6",
        () -> Chart.cumulativeSum(0.5, 5, 2.6, Side.BOTH));
    refused(
        "head start must be from 0 to 5.0, is -1.0",
        () -> Chart.cumulativeSum(0.5, 5, -1, Side.UPPER));
    refused(
        "head start must be from 0 to 5.0, is NaN",
        () -> Chart.cumulativeSum(0.5, 5, NAN, Side.LOWER));
    Chart.cumulativeSum(0, 50, 50, Side.UPPER);
    Chart.cumulativeSum(0.5, 20, 10, Side.BOTH);
    Chart.cumulativeSum(3, 50);
  }

  @Test
  void changes() {
    refused("shift must be from -100 to 100, is 101.0", () -> Change.shift(101));
    refused("shift must be from -100 to 100, is NaN", () -> Change.shift(NAN));
    refused("drift per value must be from 0.0001 to 100 in size, is 0.0", () -> Change.drift(0));
    refused(
        "drift per value must be from 0.0001 to 100 in size, is -101.0", () -> Change.drift(-101));
    refused("drift per value must be from 0.0001 to 100 in size, is NaN", () -> Change.drift(NAN));
    Change.shift(-100);
    Change.drift(-0.0001);
    Change.drift(100);
  }

  @Test
  void distributions() {
    Chart exact = Chart.individuals(3);
    for (RunLengthDistribution d :
        List.of(
            RunLength.of(exact, Change.none()),
            RunLength.simulated(exact, Change.shift(2), 10, 1))) {
      refused("chance must be between 0 and 1, is 0.0", () -> d.quantile(0));
      refused("chance must be between 0 and 1, is 1.0", () -> d.quantile(1));
      refused("chance must be between 0 and 1, is NaN", () -> d.quantile(NAN));
      refused("values must not be below zero, is -1", () -> d.chanceWithin(-1));
      refused("set must be at least 1, is 0", () -> d.inSets(0));
      assertEquals(0, d.chanceWithin(0));
    }
    refused(
        "trials must be at least 2, is 1", () -> RunLength.simulated(exact, Change.none(), 1, 1));
    refused(
        "deviation ratio must be above zero, is 0.0",
        () -> RunLength.given(exact, Change.none(), 0, 0));
    refused(
        "deviation ratio must be above zero, is NaN",
        () -> RunLength.given(exact, Change.none(), 0, NAN));
    refused(
        "centre error must be from -100 to 100, is NaN",
        () -> RunLength.given(exact, Change.none(), NAN, 1));
    refused(
        "centre error must be from -100 to 100, is -100.5",
        () -> RunLength.given(exact, Change.none(), -100.5, 1));
  }

  @Test
  void simulationsThatWouldNotEnd() {
    Chart chart = Chart.together(Chart.weightedMean(0.2, 9), Chart.cumulativeSum(3, 50));
    refused(
        "a simulation would be too long: the shortest average run length of the charts is"
            + " above 5000.0",
        () -> RunLength.of(chart, Change.none()));
  }

  @Test
  void baselines() {
    refused("n must be at least 5, is 4", () -> BaselineRunLength.prediction(4, 0));
    refused("n must be at most 1000, is 1001", () -> BaselineRunLength.guaranteed(1001, 0.9, 0));
    refused("n must be at most 200, is 201", () -> BaselineRunLength.fromMovingRange(201, 3, 0));
    refused(
        "shift must be from -10 to 10, is NaN",
        () -> BaselineRunLength.fromSampleDeviation(10, 3, NAN));
    refused(
        "width must be above 0 and at most 10, is NaN",
        () -> BaselineRunLength.fromSampleDeviation(10, NAN, 0));
    refused(
        "width must be above 0 and at most 10, is 0.0",
        () -> BaselineRunLength.fromMovingRange(10, 0, 0));
    refused(
        "confidence must be between 0 and 1, is 1.0", () -> BaselineRunLength.guaranteed(10, 1, 0));
    BaselineRunLength chart = BaselineRunLength.fromSampleDeviation(10, 3, -10);
    refused("share must be between 0 and 1, is 1.0", () -> chart.averageQuantile(1));
    refused("values must be at least 1, is 0", () -> chart.chanceWithin(0));
    refused("values must be at most 1000000, is 1000001", () -> chart.chanceWithin(1_000_001));
    refused("average must be above 1 and at most 1e290, is 1.0", () -> chart.shareUpTo(1));
    refused("average must be above 1 and at most 1e290, is NaN", () -> chart.shareUpTo(NAN));
  }

  @Test
  void listsAreCopied() {
    List<RunRule> rules = new ArrayList<>(List.of(new SameSide(8), new SameSide(8)));
    Chart.Rules chart = new Chart.Rules(rules);
    List<Chart> charts = new ArrayList<>(List.of(chart));
    Chart.Together together = new Chart.Together(charts);
    rules.clear();
    charts.clear();
    assertEquals(List.of(new SameSide(8)), chart.rules());
    assertEquals(List.of(chart), together.charts());
  }

  /** A zone so narrow or wide that the rule itself does not take it. */
  @Test
  void rulesOutOfRangeWhenWidened() {
    Chart chart = Chart.rules(new EitherSide(2, 3, 1e200), new Opposite(2, 2));
    refused("zone must not be below zero, is Infinity", () -> chart.widened(1e200));
  }

  /** A run of 200 quiet values at 38 % each does not come. */
  @Test
  void aChartThatNeverSettlesIsRefusedInTime() {
    Chart restless =
        Chart.together(
            Chart.individuals(0.5), Chart.weightedMean(0.2, 2.9), Chart.cumulativeSum(0.5, 5));
    refused(
        "signals too often to settle: " + restless + " in 1000000 values",
        () -> RunLength.of(restless, Change.none(), RunLength.Start.SETTLED));
  }
}
