package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.function.Executable;
import org.quietline.stats.capability.PerformanceIndex;
import org.quietline.stats.compare.Bias;
import org.quietline.stats.compare.BinomialTail;
import org.quietline.stats.compare.VarianceRatio;
import org.quietline.stats.control.ControlLimits;
import org.quietline.stats.control.WeightedMean;
import org.quietline.stats.distribution.NoncentralT;
import org.quietline.stats.distribution.ToleranceFactor;
import org.quietline.stats.model.StraightLine;
import org.quietline.stats.runlength.RunLength;
import org.quietline.stats.sample.DuplicateDeviation;
import org.quietline.stats.sample.NormalShape;
import org.quietline.stats.sample.RobustSummary;
import org.quietline.stats.sample.SerialDependence;
import org.quietline.stats.sample.Summary;

/** Every refusal, with its whole sentence. */
class InvalidInputTest {
  private static final double NAN = Double.NaN;
  private static final double INFINITE = Double.POSITIVE_INFINITY;

  /** Something that takes values. */
  private interface Taker {
    Object take(double... values);
  }

  private record Way(String name, int least, Taker taker) {}

  private static final List<Way> WAYS =
      List.of(
          new Way("Summary", 2, Summary::of),
          new Way("mean", 1, Summary::meanOf),
          new Way("robust", 2, RobustSummary::of),
          new Way("median", 1, RobustSummary::medianOf),
          new Way("dependence", 3, SerialDependence::of),
          new Way("moving range", 2, ControlLimits::fromMovingRange),
          new Way("sample deviation", 2, ControlLimits::fromSampleDeviation),
          new Way("prediction", 2, ControlLimits::prediction),
          new Way("guaranteed", 2, v -> ControlLimits.guaranteed(0.9, v)),
          new Way("duplicates", 1, DuplicateDeviation::of),
          new Way("shape", 8, NormalShape::of));

  @TestFactory
  Stream<DynamicTest> valuesAreCheckedEverywhere() {
    return WAYS.stream().map(way -> DynamicTest.dynamicTest(way.name(), () -> checkValues(way)));
  }

  private static void checkValues(Way way) {
    int least = way.least();
    String needs = "needs at least " + least + (least == 1 ? " value" : " values") + ", has ";
    refused(needs + 0, () -> way.taker().take());
    refused(needs + (least - 1), () -> way.taker().take(new double[least - 1]));
    double[] values = new double[least + 1];
    for (int i = 0; i < least; i++) {
      values[i] = i;
    }
    values[least] = NAN;
    String place = "value " + (least + 1) + " is ";
    refused(place + "NaN, not a usable number", () -> way.taker().take(values));
    values[least] = -INFINITE;
    refused(place + "-Infinity, not a usable number", () -> way.taker().take(values));
    values[least] = 1e200;
    refused(place + "1.0E200, not a usable number", () -> way.taker().take(values));
  }

  @Test
  void equalValuesWhereSpreadIsNeeded() {
    refused("all values are equal: 3.0", () -> SerialDependence.of(3, 3, 3));
    refused("all values are equal: 3.0", () -> NormalShape.of(3, 3, 3, 3, 3, 3, 3, 3));
    refused(
        "all x are equal: 2.0",
        () -> StraightLine.fit(new double[] {2, 2, 2}, new double[] {1, 2, 3}));
    refused(
        "spread of values is too small: 2.0E-200", () -> SerialDependence.of(0, 1e-200, 2e-200));
    refused(
        "deviation must be above zero, is 0.0",
        () -> PerformanceIndex.upper(new Summary(3, 1, 0), 2));
  }

  @Test
  void straightLine() {
    double[] three = {1, 2, 3};
    refused("3 values of x but 2 of y", () -> StraightLine.fit(three, new double[2]));
    refused(
        "needs at least 3 values, has 2",
        () -> StraightLine.fit(new double[] {1, 2}, new double[2]));
    refused(
        "value 2 is NaN, not a usable number",
        () -> StraightLine.fit(three, new double[] {1, NAN, 2}));
    StraightLine line = StraightLine.fit(three, new double[] {1, 2, 4});
    refused("x is NaN", () -> line.at(NAN));
    refused("x is Infinity", () -> line.standardErrorAt(INFINITE));
    refused("level must be between 0 and 1, is 1.0", () -> line.intervalAt(1, 1));
    refused("level must be between 0 and 1, is NaN", () -> line.slopeInterval(NAN));
    refused("allowance must not be below zero, is -1.0", () -> line.chanceBeyond(1, -1));
    refused(
        "shared uncertainty must not be below zero, is NaN", () -> line.withSharedUncertainty(NAN));
  }

  @Test
  void weightedMean() {
    refused("centre is NaN", () -> new WeightedMean(NAN, 1, 0.4, 3));
    refused("deviation must not be below zero, is -1.0", () -> new WeightedMean(0, -1, 0.4, 3));
    refused("weight must be above 0 and at most 1, is 0.0", () -> new WeightedMean(0, 1, 0, 3));
    refused("weight must be above 0 and at most 1, is 1.5", () -> new WeightedMean(0, 1, 1.5, 3));
    refused("weight must be above 0 and at most 1, is NaN", () -> new WeightedMean(0, 1, NAN, 3));
    refused("width must be above zero, is 0.0", () -> new WeightedMean(0, 1, 0.4, 0));
    WeightedMean chart = new WeightedMean(0, 1, 0.4, 3);
    refused("2 values but 1 restart marks", () -> chart.trace(new double[2], new boolean[1]));
    refused(
        "value 1 is NaN, not a usable number",
        () -> chart.trace(new double[] {NAN}, new boolean[1]));
  }

  @Test
  void recordsCheckTheirFigures() {
    refused("n must be at least 2, is 1", () -> new Summary(1, 0, 0));
    refused("mean is Infinity", () -> new Summary(2, INFINITE, 0));
    refused("deviation must not be below zero, is NaN", () -> new Summary(2, 0, NAN));
    refused("lag1 is NaN", () -> new SerialDependence(NAN, 2, 1));
    refused("pairs must be at least 1, is 0", () -> new DuplicateDeviation(0, 1));
    refused("chance must be from 0 to 1, is NaN", () -> new NormalShape(1, 1, NAN));
    refused("chance must be from 0 to 1, is 2.0", () -> new NormalShape(1, 1, 2));
  }

  @Test
  void limitsOutOfOrder() {
    double[][] orders = {
      {-1, -2, 0, 2, 3},
      {-3, 1, 0, 2, 3},
      {-3, -2, 0, -1, 3},
      {-3, -2, 0, 4, 3},
      {-3, -2, NAN, 2, 3}
    };
    for (double[] o : orders) {
      refused(
          "limits out of order: " + o[0] + ", " + o[1] + ", " + o[2] + ", " + o[3] + ", " + o[4],
          () ->
              new ControlLimits(
                  ControlLimits.Basis.PREDICTION, o[2], 1, o[0], o[1], o[3], o[4], 1, 3));
    }
  }

  @Test
  void levelsAndChances() {
    DuplicateDeviation duplicates = new DuplicateDeviation(4, 1);
    refused("level must be between 0 and 1, is 0.0", () -> duplicates.interval(0));
    refused("false alarm must be between 0 and 1, is NaN", () -> duplicates.rangeLimit(NAN));
    refused(
        "confidence must be between 0 and 1, is 95.0", () -> ControlLimits.guaranteed(95, 1, 2));
    Summary s = new Summary(5, 0, 1);
    refused("alpha must be between 0 and 1, is 5.0", () -> Bias.of(s, 0, 1).significantAt(5));
    refused("reference is NaN", () -> Bias.of(s, NAN, 1));
    refused("standard uncertainty must not be below zero, is -1.0", () -> Bias.of(s, 0, -1));
    refused(
        "level must be between 0 and 1, is -1.0",
        () -> PerformanceIndex.upper(s, 1).lowerBound(-1));
  }

  @Test
  void performanceLimits() {
    Summary s = new Summary(5, 0, 1);
    OptionalDouble none = OptionalDouble.empty();
    refused("needs a lower or an upper limit", () -> PerformanceIndex.nearer(s, none, none));
    refused("upper limit is NaN", () -> PerformanceIndex.upper(s, NAN));
    refused("lower limit is -Infinity", () -> PerformanceIndex.lower(s, -INFINITE));
    refused(
        "limits out of order: 2.0, 2.0",
        () -> PerformanceIndex.nearer(s, OptionalDouble.of(2), OptionalDouble.of(2)));
  }

  @Test
  void comparisonsAndTails() {
    refused("second deviation must be above zero, is 0.0", () -> VarianceRatio.of(1, 3, 0, 3));
    refused("first deviation must not be below zero, is NaN", () -> VarianceRatio.of(NAN, 3, 1, 3));
    refused(
        "first degrees of freedom must be at least 1, is 0", () -> VarianceRatio.of(1, 0, 1, 3));
    refused(
        "second degrees of freedom must be at least 1, is -1", () -> VarianceRatio.of(1, 3, 1, -1));
    refused("n must be at least 0, is -1", () -> BinomialTail.atLeast(1, -1, 0.5));
    refused("p must be from 0 to 1, is 1.5", () -> BinomialTail.atLeast(1, 2, 1.5));
    refused("p must be from 0 to 1, is NaN", () -> BinomialTail.atLeast(1, 2, NAN));
    refused("t is NaN", () -> NoncentralT.cdf(NAN, 3, 1));
    refused("delta is Infinity", () -> NoncentralT.cdf(1, 3, INFINITE));
    refused(
        "degrees of freedom must be at least 1 and finite, is 0.0", () -> NoncentralT.cdf(1, 0, 1));
    refused("n must be at least 2, is 1", () -> ToleranceFactor.twoSided(1, 0.9, 0.9));
    refused("n must be at least 2, is 1", () -> ToleranceFactor.oneSided(1, 0.9, 0.9));
    refused("content must be between 0 and 1, is 1.0", () -> ToleranceFactor.twoSided(5, 1, 0.9));
    refused(
        "confidence must be between 0 and 1, is NaN", () -> ToleranceFactor.oneSided(5, 0.9, NAN));
  }

  @Test
  void runLengths() {
    refused("width must be above 0 and at most 6, is 0.0", () -> RunLength.individuals(0, 0));
    refused("width must be above 0 and at most 6, is NaN", () -> RunLength.individuals(NAN, 0));
    refused("shift must be from -100 to 100, is NaN", () -> RunLength.individuals(3, NAN));
    refused("weight must be from 0.01 to 1, is 0.0", () -> RunLength.weightedMean(0, 3, 0));
    refused("weight must be from 0.01 to 1, is 1.1", () -> RunLength.both(3, 1.1, 3, 0));
    refused(
        "weighted width must be above 0 and at most 6, is 7.0", () -> RunLength.both(3, 0.4, 7, 0));
  }

  private static void refused(String message, Executable call) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
  }
}
