package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.quietline.stats.control.CumulativeSum.AfterSignal;

/** Every refusal of the charts, with its whole sentence. */
class ControlInvalidInputTest {
  private static final double NAN = Double.NaN;
  private static final double INFINITE = Double.POSITIVE_INFINITY;

  private static void refused(String message, Executable call) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
  }

  @Test
  void rules() {
    refused("count must be at least 1, is 0", () -> new RunRule.Beyond(0, 1, 3));
    refused("of must be at least 3, is 2", () -> new RunRule.Beyond(3, 2, 3));
    refused("zone must not be below zero, is NaN", () -> new RunRule.Beyond(1, 1, NAN));
    refused("count must be at least 1, is 0", () -> new RunRule.EitherSide(0, 1, 3));
    refused("of must be at least 3, is 2", () -> new RunRule.EitherSide(3, 2, 3));
    refused("zone must not be below zero, is -1.0", () -> new RunRule.EitherSide(1, 1, -1));
    refused("set must be at least 2, is 1", () -> new RunRule.Opposite(1, 2));
    refused("zone must not be below zero, is NaN", () -> new RunRule.Opposite(2, NAN));
    refused("count must be at least 2, is 1", () -> new RunRule.SameSide(1));
    refused("count must be at least 3, is 2", () -> new RunRule.Steady(2));
    refused("count must be at least 4, is 3", () -> new RunRule.Alternating(3));
    refused("count must be at least 2, is 1", () -> new RunRule.Within(1, 1));
    refused("zone must be above zero, is 0.0", () -> new RunRule.Within(2, 0));
    refused("count must be at least 2, is 1", () -> new RunRule.Outside(1, 1));
    refused("zone must be above zero, is NaN", () -> new RunRule.Outside(2, NAN));
    refused("number of rules must be at least 1, is 0", RunRules::of);
    refused(
        "rule given twice: SameSide[count=8]",
        () -> RunRules.of(new RunRule.SameSide(8), new RunRule.Steady(6), new RunRule.SameSide(8)));
    refused("set must be at least 2, is 1", () -> RunRules.multirule(1));
  }

  @Test
  void series() {
    refused("value 2 is NaN, not a usable number", () -> ChartedSeries.of(1, NAN));
    refused("centre is NaN", () -> ChartedSeries.standardised(NAN, 1, 2));
    refused("deviation must be above zero, is 0.0", () -> ChartedSeries.standardised(0, 0, 2));
    refused(
        "value 1 is Infinity, not a usable number",
        () -> ChartedSeries.standardised(0, 1, INFINITE));
    refused("start 2 in a series of 2", () -> ChartedSeries.of(1, 2).startingAnewAt(0, 2));
    refused("left-out place -1 in a series of 2", () -> ChartedSeries.of(1, 2).leavingOut(-1));
    refused("start 0 in a series of 0", () -> new ChartedSeries(List.of(), Set.of(0), Set.of()));
  }

  @Test
  void signalChances() {
    refused("n must be at least 3, is 2", () -> SignalChance.fromSampleDeviation(2));
    refused("n must be at least 3, is 2", () -> SignalChance.fromMovingRange(2));
    refused("n must be at least 3, is 2", () -> new SignalChance(2, 4, 1));
    refused("degrees of freedom must be above 1, is 1.0", () -> new SignalChance(9, 1, 1));
    refused("degrees of freedom must be above 1, is NaN", () -> new SignalChance(9, NAN, 1));
    refused("correction must be at least 1, is 0.9", () -> new SignalChance(9, 8, 0.9));
    refused("correction must be at least 1, is NaN", () -> new SignalChance(9, 8, NAN));
    SignalChance chance = SignalChance.fromMovingRange(20);
    SignalChance sample = SignalChance.fromSampleDeviation(20);
    refused("width must be above zero, is 0.0", () -> chance.ofNextValue(0));
    refused("width must be above zero, is NaN", () -> chance.ofOwnValue(NAN));
    refused("width must be above zero, is -3.0", () -> sample.ofOwnValue(-3));
    refused("width must be above zero, is -1.0", () -> chance.ofMovingRange(-1));
    refused("width must be above zero, is 0.0", () -> chance.ofWeightedMean(0, 0.4, 1));
    refused("since must be at least 1, is 0", () -> chance.ofWeightedMean(3, 0.4, 0));
    refused("since must be at least 1, is 0", () -> chance.ofOwnWeightedMean(3, 0.4, 0));
    refused("weight must be above 0 and at most 1, is 0.0", () -> chance.ofWeightedMean(3, 0, 1));
    refused(
        "weight must be above 0 and at most 1, is NaN", () -> chance.ofOwnWeightedMean(3, NAN, 1));
    RunRule.Beyond rule = new RunRule.Beyond(2, 3, 2);
    refused("since must be at least 1, is 0", () -> chance.ofPattern(rule, 0));
    refused("since must be at least 1, is -1", () -> SignalChance.ofPatternIfRight(rule, -1));
  }

  @Test
  void groupedLimits() {
    double[] values = {1, 2, 4, 3};
    int[] pairs = {1, 1, 2, 2};
    refused(
        "needs at least 2 groups in the outermost level, has 1",
        () -> GroupedLimits.of(values, new int[4]));
    refused("4 values but labels of 3", () -> GroupedLimits.of(values, new int[] {1, 1, 2}));
    refused(
        "value 2 is NaN, not a usable number",
        () -> GroupedLimits.of(new double[] {1, NAN, 3, 4}, pairs));
    refused(
        "no value is left for the residual: needs innermost groups of two or more",
        () -> GroupedLimits.of(values, new int[] {1, 2, 3, 4}));
    refused(
        "the values do not scatter within the innermost groups: nothing to measure effects by",
        () -> GroupedLimits.of(new double[] {1, 1, 4, 4}, pairs));
    ControlLimits limits = GroupedLimits.of(values, pairs).limits();
    refused(
        "deviation between groups must not be below zero, is -1.0",
        () -> new GroupedLimits(limits, -1, 1));
    refused(
        "deviation within groups must be above zero, is 0.0",
        () -> new GroupedLimits(limits, 0, 0));
  }

  @Test
  void weightedMeansWithASharedError() {
    WeightedMean chart = new WeightedMean(0, 1, 0.4, 3);
    refused(
        "shared deviation must not be below zero, is -1.0",
        () -> chart.trace(new double[1], new boolean[1], -1));
    refused(
        "shared deviation must not be below zero, is NaN",
        () -> chart.trace(new double[1], new boolean[1], NAN));
    refused("2 values but 1 restart marks", () -> chart.trace(new double[2], new boolean[1], 0.5));
    refused(
        "value 1 is NaN, not a usable number",
        () -> chart.trace(new double[] {NAN}, new boolean[1], 0.5));
  }

  private static Executable sum(
      double centre, double deviation, double reference, double decision, double head) {
    return () -> new CumulativeSum(centre, deviation, reference, decision, head, AfterSignal.GO_ON);
  }

  @Test
  void cumulativeSums() {
    refused("centre is Infinity", sum(INFINITE, 1, 0.5, 5, 0));
    refused("deviation must be above zero, is 0.0", sum(0, 0, 0.5, 5, 0));
    refused("reference value must not be below zero, is -0.5", sum(0, 1, -0.5, 5, 0));
    refused("decision interval must be above zero, is NaN", sum(0, 1, 0.5, NAN, 0));
    refused("head start must not be below zero, is NaN", sum(0, 1, 0.5, 5, NAN));
    refused("head start 5.5 is above the decision interval 5.0", sum(0, 1, 0.5, 5, 5.5));
    CumulativeSum chart = CumulativeSum.usual(0, 1);
    refused("2 values but 1 restart marks", () -> chart.trace(new double[2], new boolean[1]));
    refused(
        "value 1 is NaN, not a usable number",
        () -> chart.trace(new double[] {NAN}, new boolean[1]));
    CumulativeSum narrow = CumulativeSum.usual(0, 1e-200);
    refused(
        "value 2 is 1.0E200, not a usable number",
        () -> narrow.trace(new double[] {0, 1}, new boolean[2]));
    refused("centre is NaN", () -> SpreadScore.of(NAN, 1, 2));
    refused("deviation must be above zero, is -1.0", () -> SpreadScore.of(0, -1, 2));
    refused("value 1 is NaN, not a usable number", () -> SpreadScore.of(0, 1, NAN));
  }

  @Test
  void weightedMeans() {
    WeightedMean chart = new WeightedMean(0, 1, 0.4, 3);
    double[] two = {1, 2};
    refused("2 values but 1 restart marks", () -> chart.trace(two, new double[2], new boolean[1]));
    refused("2 values but 3 gaps", () -> chart.trace(two, new double[3], new boolean[2]));
    refused(
        "gap must be above zero, is 0.0",
        () -> chart.trace(two, new double[] {1, 0}, new boolean[2]));
    refused(
        "gap must be above zero, is NaN",
        () -> chart.trace(two, new double[] {NAN, 1}, new boolean[2]));
    refused(
        "value 2 is NaN, not a usable number",
        () -> chart.trace(new double[] {1, NAN}, new double[] {1, 1}, new boolean[2]));
  }

  @Test
  void startUp() {
    refused("centre is NaN", () -> QStatistics.knownCentre(NAN));
    refused("deviation must be above zero, is 0.0", () -> QStatistics.knownDeviation(0));
    refused("deviation must be above zero, is NaN", () -> QStatistics.known(1, NAN));
    refused(
        "2 values but 1 restart marks",
        () -> QStatistics.unknown().trace(new double[2], new boolean[1]));
    refused(
        "value 1 is NaN, not a usable number",
        () -> QStatistics.unknown().trace(new double[] {NAN}, new boolean[1]));
    refused("centre is NaN", () -> new QStatistics(OptionalDouble.of(NAN), OptionalDouble.empty()));
    refused("centre is NaN", () -> new PredictiveLimits(NAN, 1, 1, 1));
    refused("weight must be above zero, is 0.0", () -> new PredictiveLimits(0, 0, 1, 1));
    refused(
        "degrees of freedom must be above zero, is NaN", () -> new PredictiveLimits(0, 1, NAN, 1));
    refused("deviation must not be below zero, is -1.0", () -> new PredictiveLimits(0, 1, 1, -1));
    PredictiveLimits prior = new PredictiveLimits(0, 1, 1, 1);
    refused("value 1 is Infinity, not a usable number", () -> prior.updatedBy(INFINITE));
    refused("false alarm must be between 0 and 1, is 1.0", () -> prior.limits(1));
    refused("needs at least 2 values, has 1", () -> PredictiveLimits.withoutPrior(3));
  }

  @Test
  void subgroups() {
    refused(
        "number of subgroups must be at least 1, is 0", () -> SubgroupLimits.fromRanges(List.of()));
    List<double[]> single = List.of(new double[] {1, 2}, new double[] {3});
    refused("needs at least 2 values, has 1", () -> SubgroupLimits.fromRanges(single));
    refused("needs at least 2 values, has 1", () -> SubgroupLimits.fromDeviations(single));
    refused("needs at least 2 values, has 1", () -> SubgroupLimits.fromPooledDeviation(single));
    refused(
        "value 2 is NaN, not a usable number",
        () -> SubgroupLimits.fromDeviations(List.of(new double[] {1, NAN})));
    refused(
        "subgroup size must be at most 25, is 26",
        () -> SubgroupLimits.fromRanges(List.of(new double[26])));
    SubgroupLimits limits = new SubgroupLimits(SubgroupLimits.Basis.RANGES, 0, 1, 10);
    refused("subgroup size must be at least 1, is 0", () -> limits.ofMean(0));
    refused("subgroup size must be at least 2, is 1", () -> limits.ofRange(1));
    refused("subgroup size must be at least 2, is 1", () -> limits.ofDeviation(1));
    refused("subgroup size must be at least 2, is 1", () -> limits.ofDeviation(1, 0.01));
    refused("subgroup size must be at least 1, is 0", () -> limits.ofMean(0, 0.01));
    refused("false alarm must be between 0 and 1, is 0.0", () -> limits.ofMean(2, 0));
    refused("false alarm must be between 0 and 1, is NaN", () -> limits.ofRange(2, NAN));
    refused("false alarm must be between 0 and 1, is 1.0", () -> limits.ofDeviation(2, 1));
    refused("centre is NaN", () -> new SubgroupLimits(SubgroupLimits.Basis.RANGES, NAN, 1, 10));
    refused(
        "deviation must not be below zero, is NaN",
        () -> new SubgroupLimits(SubgroupLimits.Basis.RANGES, 0, NAN, 10));
    refused(
        "degrees of freedom must be above zero, is 0.0",
        () -> new SubgroupLimits(SubgroupLimits.Basis.RANGES, 0, 1, 0));
  }

  @Test
  void precisionsCountsAndShares() {
    refused("needs at least 1 value, has 0", () -> PrecisionLimits.pool(3));
    refused(
        "2 deviations but 1 degrees of freedom",
        () -> PrecisionLimits.pool(new int[1], new double[2]));
    refused("deviation must not be below zero, is -1.0", () -> PrecisionLimits.pool(3, 1, -1));
    refused("degrees of freedom must be at least 1, is 0", () -> PrecisionLimits.pool(0, 1));
    refused("pooled deviation must not be below zero, is NaN", () -> new PrecisionLimits(NAN, 3));
    refused("degrees of freedom must be at least 1, is 0", () -> new PrecisionLimits(1, 0));
    PrecisionLimits limits = new PrecisionLimits(1, 3);
    refused("degrees of freedom must be at least 1, is 0", () -> limits.upper(0, 0.01));
    refused("degrees of freedom must be at least 1, is 0", () -> limits.lower(0, 0.01));
    refused("chance must be between 0 and 1, is 0.0", () -> limits.upper(1, 0));
    refused("chance must be between 0 and 1, is NaN", () -> limits.lower(1, NAN));

    refused("number of counts must be at least 1, is 0", CountLimits::of);
    refused("count must be at least 0, is -1", () -> CountLimits.of(3, -1));
    refused("mean count must not be below zero, is NaN", () -> new CountLimits(NAN));

    refused(
        "number of samples must be at least 1, is 0", () -> ShareLimits.of(new int[0], new int[0]));
    refused("1 counts but 2 sizes", () -> ShareLimits.of(new int[1], new int[] {1, 1}));
    refused("count must be at least 0, is -1", () -> ShareLimits.of(new int[] {-1}, new int[] {1}));
    refused("sample size must be at least 1, is 0", () -> ShareLimits.of(new int[1], new int[1]));
    refused(
        "sample size must be at least 3, is 2", () -> ShareLimits.of(new int[] {3}, new int[] {2}));
    refused("share must be from 0 to 1, is NaN", () -> new ShareLimits(NAN));
    refused("share must be from 0 to 1, is 1.5", () -> new ShareLimits(1.5));
    refused("sample size must be at least 1, is 0", () -> new ShareLimits(0.5).limits(0));
    refused("sample size must be at least 1, is 0", () -> new ShareLimits(0.5).falseAlarm(0));
  }

  @Test
  void chartLimits() {
    refused("limits out of order: 2.0, 1.0", () -> new ChartLimits(2, 1.5, 1));
    refused("lower limit is NaN", () -> new ChartLimits(NAN, 1, 2));
    refused("centre is NaN", () -> new ChartLimits(0, NAN, 2));
    refused("upper limit is Infinity", () -> new ChartLimits(0, 1, INFINITE));
  }
}
