package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.quietline.stats.sample.Quantiles.Definition;

/** Every refusal of the newer sample statistics, with its whole sentence. */
class SampleInvalidInputTest {
  private static final double NAN = Double.NaN;
  private static final double[] NONE = {};

  private static void refused(String message, Executable call) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
  }

  @Test
  void decimals() {
    refused(
        "needs at least 2 values, has 1", () -> Summary.ofDecimals(List.of(new BigDecimal("1.5"))));
    refused(
        "value 2 is 1.0E160, not a usable number",
        () -> Summary.ofDecimals(List.of(BigDecimal.ONE, new BigDecimal("1e160"))));
  }

  @Test
  void quantiles() {
    refused("needs at least 1 value, has 0", () -> Quantiles.of(Definition.MEAN_PLACE));
    refused("value 1 is NaN, not a usable number", () -> Quantiles.of(Definition.MEAN_PLACE, NAN));
    Quantiles found = Quantiles.of(Definition.MEAN_PLACE, 1, 2);
    refused("p must be from 0 to 1, is -0.1", () -> found.at(-0.1));
    refused("p must be from 0 to 1, is 1.1", () -> found.at(1.1));
    refused("p must be from 0 to 1, is NaN", () -> found.at(NAN));
  }

  @Test
  void robustEstimates() {
    refused("needs at least 3 values, has 2", () -> AlgorithmA.of(1, 2));
    refused("value 3 is NaN, not a usable number", () -> AlgorithmA.of(1, 2, NAN));
    refused("n must be at least 3, is 2", () -> new AlgorithmA(2, 0, 1, 0, 1));
    refused("mean is NaN", () -> new AlgorithmA(3, NAN, 1, 0, 1));
    refused("deviation must be above zero, is 0.0", () -> new AlgorithmA(3, 0, 0, 0, 1));
    refused("drawn in must be at least 0, is -1", () -> new AlgorithmA(3, 0, 1, -1, 1));
    refused("rounds must be at least 1, is 0", () -> new AlgorithmA(3, 0, 1, 0, 0));
    refused("needs at least 2 values, has 1", () -> QMethod.of(1));
    refused("groups must be at least 2, is 1", () -> QMethod.ofGroups(List.of(new double[] {1})));
    refused(
        "needs at least 1 value, has 0", () -> QMethod.ofGroups(List.of(new double[] {1}, NONE)));
    refused(
        "groups of two or more values must be at least 1, is 0",
        () -> QMethod.within(List.of(new double[] {1}, new double[] {2})));
    refused(
        "value 2 is NaN, not a usable number",
        () -> QMethod.within(List.of(new double[] {1, NAN})));
    refused("groups must be at least 2, is 1", () -> new QMethod(1, 0, 1));
    refused("mean is NaN", () -> new QMethod(2, NAN, 1));
    refused("deviation must be above zero, is NaN", () -> new QMethod(2, 0, NAN));
    refused("deviation must not be below zero, is NaN", () -> HampelMean.of(NAN, 1));
    refused("needs at least 1 value, has 0", () -> HampelMean.of(1));
    refused("needs at least 2 values, has 1", () -> PairwiseDeviation.of(1));
  }

  @Test
  void weightedAverage() {
    double[] two = {1, 2};
    refused("needs at least 1 value, has 0", () -> WeightedAverage.of(NONE, NONE));
    refused("2 values but 1 uncertainties", () -> WeightedAverage.of(two, new double[] {1}));
    refused("uncertainty 2 is 0.0", () -> WeightedAverage.of(two, new double[] {1, 0}));
    refused("uncertainty 1 is NaN", () -> WeightedAverage.of(two, new double[] {NAN, 1}));
    refused("uncertainty 1 is Infinity", () -> WeightedAverage.of(two, new double[] {1 / 0.0, 1}));
    refused("n must be at least 1, is 0", () -> new WeightedAverage(0, 0, 1, 0));
    refused("mean is NaN", () -> new WeightedAverage(1, NAN, 1, 0));
    refused("internal error must be above zero, is 0.0", () -> new WeightedAverage(1, 0, 0, 0));
    refused("chi-square must not be below zero, is -1.0", () -> new WeightedAverage(1, 0, 1, -1));
  }

  @Test
  void pooledDeviation() {
    refused(
        "degrees of freedom must be at least 1, is 0",
        () -> PooledDeviation.ofGroups(List.of(new double[] {1})));
    refused("needs at least 1 value, has 0", () -> PooledDeviation.ofGroups(List.of(NONE)));
    refused("needs at least 1 value, has 0", () -> PooledDeviation.ofDeviations(NONE, NONE));
    refused(
        "1 deviations but 0 degrees of freedom",
        () -> PooledDeviation.ofDeviations(new double[] {1}, NONE));
    refused(
        "deviation must not be below zero, is -1.0",
        () -> PooledDeviation.ofDeviations(new double[] {-1}, new double[] {1}));
    refused(
        "degrees of freedom must be above zero, is 0.0",
        () -> PooledDeviation.ofDeviations(new double[] {1}, new double[] {0}));
    refused("degrees of freedom must be above zero, is NaN", () -> new PooledDeviation(NAN, 1));
    refused("deviation must not be below zero, is NaN", () -> new PooledDeviation(1, NAN));
    PooledDeviation one = new PooledDeviation(3, 1);
    refused("level must be between 0 and 1, is 1.0", () -> one.interval(1));
    refused("level must be between 0 and 1, is NaN", () -> one.upperBound(NAN));
    refused(
        "new degrees of freedom must be above zero, is 0.0", () -> one.upperLimitOfNext(0, 0.01));
    refused("chance must be between 0 and 1, is 0.0", () -> one.upperLimitOfNext(1, 0));
  }

  @Test
  void pairDiagnosis() {
    refused("needs at least 1 value, has 0", PairDiagnosis::of);
    refused("pairs must be at least 1, is 0", () -> new PairDiagnosis(0, 1, 1, 0, 1));
    refused(
        "deviation by range must not be below zero, is -1.0",
        () -> new PairDiagnosis(1, -1, 1, 0, 1));
    refused(
        "deviation by median must not be below zero, is NaN",
        () -> new PairDiagnosis(1, 1, NAN, 0, 1));
    refused("zeros must be at least 0, is -1", () -> new PairDiagnosis(1, 1, 1, -1, 1));
    refused("distinct must be at least 1, is 0", () -> new PairDiagnosis(1, 1, 1, 0, 0));
  }
}
