package org.quietline.stats.agreement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.quietline.stats.agreement.PassingBablok.Linearity;

/** Every refusal of compared methods, with its whole sentence. */
class MethodComparisonInvalidInputTest {
  private static final double NAN = Double.NaN;
  private static final double[] THREE = {1, 2, 4};
  private static final double[] OTHER = {1, 2.5, 4};

  @Test
  void deming() {
    refused("3 values of x but 2 of y", () -> DemingLine.fit(THREE, new double[2], 1));
    refused(
        "needs at least 3 values, has 2", () -> DemingLine.fit(new double[2], new double[2], 1));
    refused(
        "value 2 is NaN, not a usable number",
        () -> DemingLine.fit(THREE, new double[] {1, NAN, 2}, 1));
    refused(
        "value 1 is NaN, not a usable number",
        () -> DemingLine.fit(new double[] {NAN, 1, 2}, THREE, 1));
    refused("ratio of variances must be above zero, is 0.0", () -> DemingLine.fit(THREE, OTHER, 0));
    refused(
        "ratio of variances must be above zero, is NaN", () -> DemingLine.fit(THREE, OTHER, NAN));
    DemingLine line = DemingLine.fit(THREE, OTHER, 1).orElseThrow();
    refused("x is NaN", () -> line.at(NAN));
    refused("x is Infinity", () -> line.errorAt(1 / 0.0));
    refused("level must be between 0 and 1, is 1.0", () -> line.slopeInterval(1));
    refused("level must be between 0 and 1, is NaN", () -> line.interceptInterval(NAN));
    refused("x is NaN", () -> line.intervalAt(NAN, 0.9));
  }

  @Test
  void passingBablok() {
    refused("3 values of x but 2 of y", () -> PassingBablok.fit(THREE, new double[2]));
    refused(
        "needs at least 3 values, has 2", () -> PassingBablok.fit(new double[2], new double[2]));
    refused(
        "value 3 is Infinity, not a usable number",
        () -> PassingBablok.fit(THREE, new double[] {1, 2, 1 / 0.0}));
    PassingBablok line = PassingBablok.fit(THREE, OTHER).orElseThrow();
    refused("level must be between 0 and 1, is 0.0", () -> line.slopeInterval(0));
    refused("level must be between 0 and 1, is NaN", () -> line.interceptInterval(NAN));
    refused("points above must be at least 1, is 0", () -> new Linearity(0, 1, 1, 0.5));
    refused("points below must be at least 1, is 0", () -> new Linearity(1, 0, 1, 0.5));
    refused("statistic must not be below zero, is NaN", () -> new Linearity(1, 1, NAN, 0.5));
    refused("chance must be from 0 to 1, is 1.5", () -> new Linearity(1, 1, 1, 1.5));
    refused("chance must be from 0 to 1, is -0.5", () -> new Linearity(1, 1, 1, -0.5));
    refused("chance must be from 0 to 1, is NaN", () -> new Linearity(1, 1, 1, NAN));
  }

  @Test
  void limitsOfAgreement() {
    refused(
        "3 values of x but 2 of y", () -> LimitsOfAgreement.ofDifferences(THREE, new double[2]));
    refused(
        "needs at least 2 values, has 1",
        () -> LimitsOfAgreement.ofRelativeDifferences(new double[1], new double[1]));
    refused(
        "first value 2 must be above zero, is 0.0",
        () -> LimitsOfAgreement.ofRelativeDifferences(new double[] {1, 0}, new double[] {1, 2}));
    refused(
        "second value 1 must be above zero, is -1.0",
        () -> LimitsOfAgreement.ofRelativeDifferences(new double[] {1, 2}, new double[] {-1, 2}));
    LimitsOfAgreement got = LimitsOfAgreement.ofDifferences(THREE, OTHER);
    refused("level must be between 0 and 1, is 1.0", () -> got.meanInterval(1));
    refused("content must be between 0 and 1, is 1.0", () -> got.limits(1));
    refused("content must be between 0 and 1, is NaN", () -> got.lowerLimitInterval(NAN, 0.9));
    refused("level must be between 0 and 1, is NaN", () -> got.upperLimitInterval(0.9, NAN));
    refused("content must be between 0 and 1, is 0.0", () -> got.approximateLimitError(0));
    refused("confidence must be between 0 and 1, is 95.0", () -> got.holding(0.9, 95));
  }

  private static void refused(String message, Executable call) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
  }
}
