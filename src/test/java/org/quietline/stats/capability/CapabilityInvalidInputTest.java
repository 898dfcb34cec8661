package org.quietline.stats.capability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.quietline.stats.capability.Conformance.Population;
import org.quietline.stats.capability.Conformance.Risks;
import org.quietline.stats.capability.PercentileIndex.Known;
import org.quietline.stats.capability.PercentileIndex.Shape;
import org.quietline.stats.distribution.NoncentralT;
import org.quietline.stats.sample.Summary;

/** Every refusal of indices and decisions, with its whole sentence. */
class CapabilityInvalidInputTest {
  private static final double NAN = Double.NaN;
  private static final double INFINITE = Double.POSITIVE_INFINITY;
  private static final OptionalDouble NONE = OptionalDouble.empty();
  private static final OptionalDouble ONE = OptionalDouble.of(1);

  @Test
  void capability() {
    WithinDeviation within = new WithinDeviation(1, 4);
    refused("n must be at least 1, is 0", () -> new CapabilityIndex(0, 0, within, NONE, ONE));
    refused("mean is NaN", () -> new CapabilityIndex(5, NAN, within, NONE, ONE));
    refused("needs a lower or an upper limit", () -> new CapabilityIndex(5, 0, within, NONE, NONE));
    refused(
        "upper limit is NaN",
        () -> new CapabilityIndex(5, 0, within, NONE, OptionalDouble.of(NAN)));
    refused("limits out of order: 1.0, 1.0", () -> new CapabilityIndex(5, 0, within, ONE, ONE));
    refused(
        "deviation must be above zero, is 0.0",
        () -> new CapabilityIndex(5, 0, new WithinDeviation(0, 4), NONE, ONE));
    CapabilityIndex index = new CapabilityIndex(5, 0, within, NONE, ONE);
    refused("level must be between 0 and 1, is 1.0", () -> index.lowerBound(1));
    refused("level must be between 0 and 1, is NaN", () -> index.interval(NAN));
    refused("level must be between 0 and 1, is 0.0", () -> index.shareBeyondInterval(0));
    refused("an index of the spread needs two limits, has one", index::spread);
    refused(
        "an index of the spread needs two limits, has one",
        () -> new CapabilityIndex(5, 0, within, ONE, NONE).spread());
    PerformanceIndex performance = PerformanceIndex.upper(new Summary(5, 0, 1), 1);
    refused("level must be between 0 and 1, is 2.0", () -> performance.interval(2));
    refused("level must be between 0 and 1, is -1.0", () -> performance.shareBeyondInterval(-1));
  }

  @Test
  void spread() {
    Summary s = new Summary(5, 0, 1);
    refused("lower limit is NaN", () -> SpreadIndex.of(s, NAN, 1));
    refused("upper limit is Infinity", () -> SpreadIndex.of(s, 0, INFINITE));
    refused("limits out of order: 2.0, 1.0", () -> SpreadIndex.of(s, 2, 1));
    refused(
        "deviation must be above zero, is 0.0", () -> SpreadIndex.of(new Summary(5, 0, 0), 0, 1));
    refused(
        "degrees of freedom must be at least 1 and finite, is 0.5",
        () -> new SpreadIndex(0, 1, 1, 0.5));
    refused(
        "degrees of freedom must be at least 1 and finite, is Infinity",
        () -> new SpreadIndex(0, 1, 1, INFINITE));
    refused("level must be between 0 and 1, is 1.0", () -> SpreadIndex.of(s, 0, 1).lowerBound(1));
    refused("level must be between 0 and 1, is NaN", () -> SpreadIndex.of(s, 0, 1).interval(NAN));
  }

  @Test
  void within() {
    refused("deviation must not be below zero, is NaN", () -> new WithinDeviation(NAN, 3));
    refused(
        "degrees of freedom must be at least 1 and finite, is NaN",
        () -> new WithinDeviation(1, NAN));
    refused(
        "degrees of freedom within groups must be at least 1, is 0",
        () -> WithinDeviation.pooled(List.of(new double[] {1}, new double[] {2})));
    refused(
        "needs at least 1 value, has 0",
        () -> WithinDeviation.pooled(List.of(new double[] {1, 2}, new double[0])));
    refused(
        "value 2 is NaN, not a usable number",
        () -> WithinDeviation.pooled(List.of(new double[] {1, NAN})));
    refused("needs at least 3 values, has 2", () -> WithinDeviation.fromMovingRange(1, 2));
  }

  @Test
  void conformance() {
    refused("needs a lower or an upper limit", () -> new Conformance(NONE, NONE, 1));
    refused("upper limit is NaN", () -> Conformance.atMost(NAN, 1));
    refused("lower limit is NaN", () -> Conformance.atLeast(NAN, 1));
    refused("limits out of order: 3.0, 2.0", () -> Conformance.between(3, 2, 1));
    refused("uncertainty must be above zero, is 0.0", () -> Conformance.atMost(1, 0));
    refused("population mean is NaN", () -> new Population(NAN, 1));
    refused("population deviation must be above zero, is 0.0", () -> new Population(0, 0));
    refused("risk must be from 0 to 1, is 1.5", () -> new Risks(1.5, 0));
    refused("risk must be from 0 to 1, is -0.5", () -> new Risks(0, -0.5));
    refused("risk must be from 0 to 1, is NaN", () -> new Risks(0, NAN));
    Conformance c = Conformance.atMost(1, 1);
    refused("result is NaN", () -> c.chance(NAN));
    refused("result is Infinity", () -> c.chanceBeyond(INFINITE));
    refused("result is NaN", () -> c.given(NAN, new Population(0, 1)));
    refused("confidence must be between 0 and 1, is 95.0", () -> c.guardBand(95));
    refused("confidence must be between 0 and 1, is NaN", () -> c.acceptance(NAN));
    refused("guard band is NaN", () -> c.acceptedWith(NAN));
    refused("guard band must not be below zero, is -1.0", () -> c.verdict(1, -1));
    refused("result is NaN", () -> c.verdict(NAN, 1));
  }

  @Test
  void percentiles() {
    double[] three = {1, 2, 3};
    refused(
        "needs at least 3 values, has 2",
        () -> PercentileIndex.of(new double[2], Shape.LOGNORMAL, NONE, ONE));
    refused(
        "all values are equal: 2.0",
        () -> PercentileIndex.of(new double[] {2, 2, 2}, Shape.LOGNORMAL, NONE, ONE));
    refused(
        "needs a lower or an upper limit",
        () -> PercentileIndex.of(three, Shape.LOGNORMAL, NONE, NONE));
    refused(
        "value must be above zero, is -1.0",
        () -> PercentileIndex.of(new double[] {-1, 1, 2}, Shape.LOGNORMAL, NONE, ONE));
    refused(
        "value 1 is -1.0: a power needs values above zero, and shifting them would decide the"
            + " power",
        () -> PercentileIndex.of(new double[] {-1, 1, 2}, Shape.POWER, NONE, ONE));
    refused(
        "samples must be at least 100, is 10",
        () -> PercentileIndex.interval(three, Shape.LOGNORMAL, NONE, ONE, 0.9, 10, 1));
    refused("points out of order: 2.0, 2.0, 3.0", () -> new Known(2, 2, 3, 1));
    refused("points out of order: 1.0, 3.0, 3.0", () -> new Known(1, 3, 3, 1));
    refused("index is NaN", () -> new Known(1, 2, 3, NAN));
  }

  @Test
  void noncentralT() {
    refused(
        "degrees of freedom must be at least 1 and finite, is 0.9",
        () -> NoncentralT.cdf(1, 0.9, 1));
    refused(
        "degrees of freedom must be at least 1 and finite, is NaN",
        () -> NoncentralT.cdf(1, NAN, 1));
    refused(
        "degrees of freedom must be at least 1 and finite, is Infinity",
        () -> NoncentralT.cdf(1, INFINITE, 1));
  }

  @Test
  void reasonsForNoPercentileIndex() {
    refused("has must be at least 0, is -1", () -> new PercentileIndex.TooFew(-1, 5));
    refused("needs must be at least 6, is 5", () -> new PercentileIndex.TooFew(5, 5));
    refused("median is NaN", () -> new PercentileIndex.NoSpread(Double.NaN));
  }

  private static void refused(String message, Executable call) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
  }
}
