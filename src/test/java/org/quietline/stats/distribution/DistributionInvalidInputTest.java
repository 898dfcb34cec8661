package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Every refusal of the distributions, with its whole sentence. */
class DistributionInvalidInputTest {
  private static final double NAN = Double.NaN;

  private static void refused(String message, Executable call) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
  }

  @Test
  void normalAndStudent() {
    refused("chance must be from 0 to 1, is NaN", () -> Normal.exceededWith(NAN));
    refused("chance must be from 0 to 1, is 1.5", () -> Normal.quantile(1.5));
    refused("value is NaN", () -> Student.above(NAN, 3));
    refused("degrees of freedom must be above zero, is 0.0", () -> Student.above(1, 0));
    refused("degrees of freedom must be above zero, is NaN", () -> Student.exceededWith(0.1, NAN));
    refused("chance must be from 0 to one half, is 0.6", () -> Student.exceededWith(0.6, 3));
    refused("chance must be from 0 to one half, is NaN", () -> Student.exceededWith(NAN, 3));
    refused(
        "value exceeded with chance 1.0E-10 is beyond 1.0E120 for 0.01 degrees of freedom",
        () -> Student.exceededWith(1e-10, 0.01));
    refused("value is NaN", () -> Normal.above(NAN));
    refused("value is NaN", () -> Normal.below(NAN));
    refused(
        "upper value must not be below the lower one, are 1.0 and 2.0", () -> Normal.between(2, 1));
    refused(
        "upper value must not be below the lower one, are NaN and 2.0",
        () -> Normal.between(2, NAN));
  }

  @Test
  void chiSquare() {
    refused("value must not be below zero, is -1.0", () -> ChiSquare.above(-1, 3));
    refused("value must not be below zero, is NaN", () -> ChiSquare.below(NAN, 3));
    refused("degrees of freedom must be above zero, is 0.0", () -> ChiSquare.above(1, 0));
    refused("degrees of freedom must be above zero, is NaN", () -> ChiSquare.quantile(0.1, NAN));
    refused(
        "degrees of freedom must be above zero, is -2.0", () -> ChiSquare.exceededWith(0.1, -2));
    refused("chance must be between 0 and 1, is 0.0", () -> ChiSquare.quantile(0, 3));
    refused("chance must be between 0 and 1, is NaN", () -> ChiSquare.exceededWith(NAN, 3));
    refused(
        "degrees of freedom must be at most 1.0E300, is 1.0E301", () -> ChiSquare.above(1, 1e301));
  }

  @Test
  void fisherF() {
    refused("ratio must not be below zero, is -1.0", () -> FisherF.above(-1, 3, 4));
    refused("ratio must not be below zero, is NaN", () -> FisherF.below(NAN, 3, 4));
    refused("first degrees of freedom must be above zero, is 0.0", () -> FisherF.above(1, 0, 4));
    refused("second degrees of freedom must be above zero, is NaN", () -> FisherF.above(1, 3, NAN));
    refused("first degrees of freedom must be above zero, is NaN", () -> FisherF.below(0, NAN, 4));
    refused("chance must be between 0 and 1, is 1.0", () -> FisherF.quantile(1, 3, 4));
    refused("chance must be between 0 and 1, is NaN", () -> FisherF.exceededWith(NAN, 3, 4));
  }

  @Test
  void studentPlusNormal() {
    refused(
        "estimated scale must not be below zero, is NaN", () -> new StudentPlusNormal(NAN, 3, 1));
    refused("known scale must not be below zero, is -1.0", () -> new StudentPlusNormal(1, 3, -1));
    refused("degrees of freedom must be above zero, is 0.0", () -> new StudentPlusNormal(1, 0, 1));
    refused(
        "chance must be from 0 to one half, is 0.6",
        () -> new StudentPlusNormal(1, 3, 1).exceededWith(0.6));
    refused("value is NaN", () -> new StudentPlusNormal(1, 3, 1).above(NAN));
  }

  @Test
  void incompleteBeta() {
    refused("first shape must be above zero, is 0.0", () -> IncompleteBeta.below(0, 1, 0.5, 0.5));
    refused(
        "second shape must be above zero, is NaN", () -> IncompleteBeta.below(1, NAN, 0.5, 0.5));
    refused(
        "x and y must be from 0 to 1 and add up to one, are 0.5 and 0.4",
        () -> IncompleteBeta.below(1, 1, 0.5, 0.4));
  }

  @Test
  void noncentralT() {
    refused("t is NaN", () -> NoncentralT.above(NAN, 3, 1));
    refused("delta is NaN", () -> NoncentralT.above(1, 3, NAN));
    refused(
        "degrees of freedom must be at least 1 and finite, is 0.0",
        () -> NoncentralT.above(1, 0, 1));
  }

  @Test
  void ranges() {
    refused("n must be at least 2, is 1", () -> new NormalRange(1));
    refused("n must be at most 100, is 101", () -> new NormalRange(101));
    NormalRange range = new NormalRange(3);
    refused("range must not be below zero, is -0.5", () -> range.below(-0.5));
    refused("range must not be below zero, is NaN", () -> range.above(NAN));
    refused("chance must be between 0 and 1, is 0.0", () -> range.quantile(0));
    refused("chance must be between 0 and 1, is NaN", () -> range.exceededWith(NAN));
    refused("n must be at least 2, is 1", () -> new StudentizedRange(1, 5));
    refused("degrees of freedom must be at least 1, is NaN", () -> new StudentizedRange(3, NAN));
    refused("degrees of freedom must be at least 1, is 0.5", () -> new StudentizedRange(3, 0.5));
    StudentizedRange studentized = new StudentizedRange(3, 5);
    refused("range must not be below zero, is -1.0", () -> studentized.below(-1));
    refused("range must not be below zero, is NaN", () -> studentized.above(NAN));
    refused("chance must be between 0 and 1, is 1.0", () -> studentized.exceededWith(1));
    refused("chance must be between 0 and 1, is NaN", () -> studentized.quantile(NAN));
  }

  @Test
  void factors() {
    refused("n must be at least 2, is 1", () -> ChartConstants.of(1));
    refused("n must be at most 100, is 101", () -> ChartConstants.of(101));
    refused("d2 must be above zero, is 0.0", () -> new ChartConstants(2, 0, 1, 1));
    refused("d3 must be above zero, is NaN", () -> new ChartConstants(2, 1, NAN, 1));
    refused("c4 must be above zero, is -1.0", () -> new ChartConstants(2, 1, 1, -1));
    refused("n must be at least 2, is 0", () -> CriticalRange.factor(0));
    refused("chance must be between 0 and 1, is 2.0", () -> CriticalRange.factor(3, 2));
    refused("degrees of freedom must be at least 1, is 0.0", () -> CriticalRange.factor(3, 0.1, 0));
  }

  @Test
  void pairs() {
    refused("deviation must not be below zero, is -1.0", () -> PairRangeLimits.byDeviations(-1));
    refused("deviation must not be below zero, is NaN", () -> PairRangeLimits.byChances(NAN));
    refused(
        "deviation must not be below zero, is Infinity",
        () -> PairRangeLimits.prediction(Double.POSITIVE_INFINITY, 3));
    refused(
        "degrees of freedom must be at least 1, is 0.0", () -> PairRangeLimits.prediction(1, 0));
    refused("false alarm must be between 0 and 1, is NaN", () -> PairRangeLimits.factor(NAN, 3));
    refused("limits out of order: 1.0, 3.0, 2.0", () -> limits(3, 1, 3, 2, 0.1, 0.1));
    refused("limits out of order: 4.0, 3.0, 5.0", () -> limits(3, 4, 3, 5, 0.1, 0.1));
    refused("centre must not be below zero, is NaN", () -> limits(3, NAN, 3, 5, 0.1, 0.1));
    refused("action is NaN", () -> limits(3, 1, 3, NAN, 0.1, 0.1));
    refused("warning chance must be between 0 and 1, is 0.0", () -> limits(3, 1, 2, 3, 0, 0.1));
    refused("action chance must be between 0 and 1, is NaN", () -> limits(3, 1, 2, 3, 0.1, NAN));
    refused("degrees of freedom must be at least 1, is 0.0", () -> limits(0, 1, 2, 3, 0.1, 0.1));
  }

  private static PairRangeLimits limits(
      double df, double centre, double warning, double action, double one, double two) {
    return new PairRangeLimits(PairRangeLimits.Form.CHANCES, df, centre, warning, action, one, two);
  }
}
