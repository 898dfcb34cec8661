package org.quietline.stats.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.quietline.stats.Interval;
import org.quietline.stats.model.PrecisionProfile.Form;

/** What a caller of this package gets wrong is told whole. */
class ModelInvalidInputTest {
  private static final double NAN = Double.NaN;
  private static final double INFINITE = Double.POSITIVE_INFINITY;
  private static final double[] FOUR = {1, 2, 3, 4};
  private static final double[] HEIGHTS = {1, 2, 4, 9};

  private static void refused(String sentence, Executable attempt) {
    assertEquals(sentence, assertThrows(IllegalArgumentException.class, attempt).getMessage());
  }

  @Test
  void terms() {
    refused("predictors must be at least 1, is 0", () -> Terms.linear(0));
    refused("degree must be at least 1, is 0", () -> Terms.polynomial(0));
    refused("degree must be at least 1, is -3", () -> new Terms(2, -3, Terms.Intercept.ZERO));
  }

  @Test
  void leastSquares() {
    Terms line = Terms.linear(1);
    refused("3 points but 4 values", () -> LeastSquares.fit(line, new double[3], HEIGHTS));
    refused(
        "3 weights but 4 values", () -> LeastSquares.weighted(line, FOUR, HEIGHTS, new double[3]));
    refused(
        "needs at least 3 values, has 2",
        () -> LeastSquares.fit(line, new double[] {1, 2}, new double[] {1, 2}));
    refused(
        "needs at least 5 values, has 4",
        () -> LeastSquares.fit(Terms.polynomial(3), FOUR, HEIGHTS));
    refused(
        "value 2 is NaN, not a usable number",
        () -> LeastSquares.fit(line, FOUR, new double[] {1, NAN, 2, 3}));
    refused(
        "value 1 is Infinity, not a usable number",
        () -> LeastSquares.fit(line, new double[] {1, INFINITE, 2, 3}, HEIGHTS));
    refused(
        "a point of 1 numbers for 2 predictors",
        () -> LeastSquares.fit(Terms.linear(2), FOUR, HEIGHTS));
    for (double weight : new double[] {0, -1}) {
      refused(
          "weight must be above zero, is " + weight,
          () -> LeastSquares.weighted(line, FOUR, HEIGHTS, new double[] {1, 1, weight, 1}));
    }
    refused(
        "value 3 is NaN, not a usable number",
        () -> LeastSquares.weighted(line, FOUR, HEIGHTS, new double[] {1, 1, NAN, 1}));
  }

  @Test
  void combinedTerms() {
    refused(
        "term 2 of 2 is a combination of the terms before it, to 15 digits",
        () -> LeastSquares.fit(Terms.linear(1), new double[] {7, 7, 7, 7}, HEIGHTS));
    refused(
        "term 1 of 1 is a combination of the terms before it, to 15 digits",
        () -> LeastSquares.fit(Terms.linear(1).throughOrigin(), new double[4], HEIGHTS));
    double[][] points = new double[6][];
    double[] y = new double[6];
    for (int i = 0; i < 6; i++) {
      double a = Math.sqrt(i + 1);
      double b = Math.cos(i);
      points[i] = new double[] {a, b, 0.3 * a + 0.7 * b};
      y[i] = i;
    }
    refused(
        "term 4 of 4 is a combination of the terms before it, to 15 digits",
        () -> LeastSquares.fit(Terms.linear(3), points, y));
  }

  @Test
  void questionsToAFit() {
    LeastSquares fit = LeastSquares.fit(Terms.linear(1), FOUR, HEIGHTS);
    refused("no coefficient 2 among 2, counted from 0", () -> fit.coefficient(2));
    refused("no coefficient -1 among 2, counted from 0", () -> fit.standardError(-1));
    refused("no coefficient 9 among 2, counted from 0", () -> fit.covariance(0, 9));
    refused("a point of 2 numbers for 1 predictors", () -> fit.at(1, 2));
    refused("a point of 0 numbers for 1 predictors", () -> fit.standardErrorAt());
    refused("value 1 is NaN, not a usable number", () -> fit.intervalAt(0.9, NAN));
    refused("level must be between 0 and 1, is 1.0", () -> fit.intervalAt(1, 2));
    refused("level must be between 0 and 1, is NaN", () -> fit.coefficientInterval(0, NAN));
    refused("weight must be above zero, is 0.0", () -> fit.predictionInterval(0.9, 0, 2));
    refused("weight must be above zero, is NaN", () -> fit.predictionInterval(0.9, NAN, 2));
    refused("level must be between 0 and 1, is 0.0", () -> fit.predictionInterval(0, 1, 2));
  }

  @Test
  void weightedLine() {
    refused("3 weights but 4 points", () -> StraightLine.weighted(FOUR, HEIGHTS, new double[3]));
    refused(
        "weight must be above zero, is 0.0",
        () -> StraightLine.weighted(FOUR, HEIGHTS, new double[] {1, 0, 1, 1}));
    refused(
        "value 4 is NaN, not a usable number",
        () -> StraightLine.weighted(FOUR, HEIGHTS, new double[] {1, 1, 1, NAN}));
    refused("4 values of x but 3 of y", () -> StraightLine.weighted(FOUR, new double[3], FOUR));
    refused("all x are equal: 0.0", () -> StraightLine.weighted(new double[4], HEIGHTS, FOUR));
    StraightLine line = StraightLine.fit(FOUR, HEIGHTS);
    refused("weight must be above zero, is -1.0", () -> line.predictionInterval(1, -1, 0.9));
    refused("x is NaN", () -> line.predictionInterval(NAN, 1, 0.9));
    refused("level must be between 0 and 1, is 2.0", () -> line.predictionInterval(1, 1, 2));
  }

  @Test
  void inversePrediction() {
    StraightLine line = StraightLine.fit(FOUR, HEIGHTS);
    refused("height is NaN", () -> InversePrediction.ofHeight(line, NAN, 0.9));
    refused("level must be between 0 and 1, is 0.0", () -> InversePrediction.ofHeight(line, 1, 0));
    refused(
        "weight must be above zero, is 0.0", () -> InversePrediction.ofReading(line, 1, 0, 0.9));
    refused(
        "no exact set for a line with a shared uncertainty, here 0.5",
        () -> InversePrediction.ofHeight(line.withSharedUncertainty(0.5), 1, 0.9));
    Interval interval = new Interval(1, 2);
    refused("place is NaN", () -> new InversePrediction.Bounded(NAN, interval, 0.5));
    refused(
        "g of a bounded set must be from 0 to 1, is 1.5",
        () -> new InversePrediction.Bounded(1, interval, 1.5));
    refused(
        "g of a bounded set must be from 0 to 1, is NaN",
        () -> new InversePrediction.Bounded(1, interval, NAN));
    refused(
        "rays up to 3.0 and from 2.0",
        () -> new InversePrediction.TwoRays(OptionalDouble.empty(), 3, 2, 1));
    refused(
        "g of an unbounded set must be at least 1, is 0.5",
        () -> new InversePrediction.TwoRays(OptionalDouble.empty(), 2, 3, 0.5));
    refused(
        "g of an unbounded set must be at least 1, is NaN",
        () -> new InversePrediction.WholeLine(OptionalDouble.empty(), NAN));
  }

  @Test
  void curveReading() {
    LeastSquares curve = LeastSquares.fit(Terms.polynomial(2), FOUR, HEIGHTS);
    Interval range = new Interval(1, 4);
    refused("reading is NaN", () -> CurveReading.of(curve, range, NAN, 1, 0.9));
    refused("weight must be above zero, is -2.0", () -> CurveReading.of(curve, range, 3, -2, 0.9));
    refused("level must be between 0 and 1, is 1.0", () -> CurveReading.of(curve, range, 3, 1, 1));
    refused(
        "width of the range must be above zero, is 0.0",
        () -> CurveReading.of(curve, new Interval(2, 2), 3, 1, 0.9));
    double[][] points = {{1, 2}, {2, 1}, {3, 5}, {4, 0}};
    LeastSquares two = LeastSquares.fit(Terms.linear(2), points, HEIGHTS);
    refused("one predictor is needed, there are 2", () -> CurveReading.of(two, range, 3, 1, 0.9));
  }

  @Test
  void calibrationControl() {
    refused("intercept is NaN", () -> new CalibrationControl(NAN, 1, 1, 5, 2, 0.05));
    refused(
        "size of the slope must be above zero, is 0.0",
        () -> new CalibrationControl(0, 0, 1, 5, 2, 0.05));
    refused(
        "deviation must be above zero, is 0.0", () -> new CalibrationControl(0, 1, 0, 5, 2, 0.05));
    refused(
        "degrees of freedom must be above zero, is 0.0",
        () -> new CalibrationControl(0, 1, 1, 0, 2, 0.05));
    refused("checks must be at least 1, is 0", () -> new CalibrationControl(0, 1, 1, 5, 0, 0.05));
    refused(
        "false alarm must be between 0 and 1, is 1.0",
        () -> new CalibrationControl(0, 1, 1, 5, 1, 1));
    CalibrationControl control = new CalibrationControl(0, 1, 1, 5, 2, 0.05);
    refused("reading is NaN", () -> control.value(NAN, 1));
    refused("reference is Infinity", () -> control.value(1, INFINITE));
    refused("control value is NaN", () -> control.isBeyond(NAN));
  }

  @Test
  void oneWayAnova() {
    refused("number of groups must be at least 2, is 1", () -> OneWayAnova.of(FOUR));
    refused("number of groups must be at least 2, is 0", () -> OneWayAnova.ofDecimals(List.of()));
    refused(
        "degrees of freedom within groups must be at least 1, is 0",
        () -> OneWayAnova.of(new double[] {1}, new double[] {2}));
    refused("needs at least 1 value, has 0", () -> OneWayAnova.of(FOUR, new double[0]));
    refused(
        "value 2 is NaN, not a usable number", () -> OneWayAnova.of(FOUR, new double[] {1, NAN}));
    refused(
        "value 2 is Infinity, not a usable number",
        () ->
            OneWayAnova.ofDecimals(
                List.of(
                    List.of(BigDecimal.ONE, new BigDecimal("1e400")), List.of(BigDecimal.ONE))));
    OneWayAnova anova = OneWayAnova.of(FOUR, HEIGHTS);
    refused("no group 2 among 2, counted from 0", () -> anova.meanInterval(2, 0.9));
    refused("no group -1 among 2, counted from 0", () -> anova.differenceInterval(0, -1, 0.9));
    refused("level must be between 0 and 1, is 0.0", () -> anova.meanInterval(1, 0));
    List<OneWayAnova.Group> groups = anova.groups();
    refused(
        "squares between groups must not be below zero, is -1.0",
        () -> new OneWayAnova(groups, -1, 1));
    refused(
        "squares within groups must not be below zero, is NaN",
        () -> new OneWayAnova(groups, 1, NAN));
    refused("n must be at least 1, is 0", () -> new OneWayAnova.Group(0, 1));
    refused("mean is NaN", () -> new OneWayAnova.Group(1, NAN));
  }

  @Test
  void nestedAnova() {
    refused(
        "number of groups must be at least 2, is 1",
        () -> NestedAnova.twoStage(new double[][] {{1, 2}}));
    refused(
        "number of groups must be at least 2, is 0",
        () -> NestedAnova.threeStage(new double[0][][]));
    refused(
        "not balanced: group 2 holds 3, group 1 2",
        () -> NestedAnova.twoStage(new double[][] {{1, 2}, {1, 2, 3}}));
    refused(
        "not balanced: group 4 holds 3, group 1 2",
        () -> NestedAnova.threeStage(new double[][][] {{{1, 2}, {3, 4}}, {{5, 6}, {7, 8, 9}}}));
    refused(
        "not balanced: group 2 holds 1, group 1 2",
        () -> NestedAnova.threeStage(new double[][][] {{{1, 2}, {3, 4}}, {{5, 6}}}));
    refused(
        "size of each group must be at least 2, is 1",
        () -> NestedAnova.twoStage(new double[][] {{1}, {2}}));
    refused(
        "value 3 is NaN, not a usable number",
        () -> NestedAnova.twoStage(new double[][] {{1, 2}, {NAN, 3}}));
    NestedAnova anova = NestedAnova.twoStage(new double[][] {{1, 2}, {4, 3}});
    refused("no stage 2 among 2, counted from 0", () -> anova.component(2));
    refused("no stage -1 among 2, counted from 0", () -> anova.component(-1));
    refused("no stage 2 among 2, counted from 0", () -> anova.ratio(1));
    refused("values must be at least 1, is 0", () -> anova.meanOf(0));
    refused("level must be between 0 and 1, is 1.0", () -> anova.meanInterval(1));
  }

  @Test
  void stages() {
    NestedAnova.Stage six = new NestedAnova.Stage(1, 2, 6);
    NestedAnova.Stage four = new NestedAnova.Stage(1, 2, 4);
    NestedAnova.Stage one = new NestedAnova.Stage(1, 2, 1);
    refused("mean is NaN", () -> new NestedAnova(NAN, List.of(six, one)));
    refused("number of stages must be at least 2, is 1", () -> new NestedAnova(0, List.of(one)));
    refused("units of 6 values made of 4", () -> new NestedAnova(0, List.of(six, four, one)));
    refused("units of 1 values made of 1", () -> new NestedAnova(0, List.of(one, one)));
    refused(
        "the last stage is not the values but units of 4",
        () -> new NestedAnova(0, List.of(new NestedAnova.Stage(1, 2, 8), four)));
    refused("squares must not be below zero, is -1.0", () -> new NestedAnova.Stage(-1, 1, 1));
    refused("degrees of freedom must be at least 1, is 0", () -> new NestedAnova.Stage(1, 0, 1));
    refused("values per unit must be at least 1, is 0", () -> new NestedAnova.Stage(1, 1, 0));
  }

  @Test
  void varianceCombination() {
    VarianceCombination.Part minus = new VarianceCombination.Part(-1, 2, 3);
    refused("no factor is above zero among 1", () -> new VarianceCombination(List.of(minus)));
    refused("no factor is above zero among 0", () -> new VarianceCombination(List.of()));
    refused(
        "size of the factor must be above zero, is 0.0",
        () -> new VarianceCombination.Part(0, 2, 3));
    refused(
        "mean square must not be below zero, is NaN",
        () -> new VarianceCombination.Part(1, NAN, 3));
    refused(
        "degrees of freedom must be at least 1, is 0", () -> new VarianceCombination.Part(1, 1, 0));
    VarianceCombination sum =
        new VarianceCombination(List.of(new VarianceCombination.Part(1, 2, 3)));
    refused("level must be between 0 and 1, is 1.0", () -> sum.interval(1));
    refused("level must be between 0 and 1, is NaN", () -> sum.deviationUpperBound(NAN));
    refused("level must be between 0 and 1, is 0.0", () -> sum.deviationInterval(0));
  }

  @Test
  void lackOfFit() {
    refused(
        "squares of lack of fit must not be below zero, is -1.0", () -> new LackOfFit(-1, 1, 1, 1));
    refused(
        "degrees of freedom of lack of fit must be at least 1, is 0",
        () -> new LackOfFit(1, 0, 1, 1));
    refused(
        "squares of replicates must not be below zero, is NaN", () -> new LackOfFit(1, 1, NAN, 1));
    refused(
        "degrees of freedom of replicates must be at least 1, is 0",
        () -> new LackOfFit(1, 1, 1, 0));
  }

  @Test
  void precisionProfile() {
    refused(
        "3 levels but 4 differences",
        () -> PrecisionProfile.fit(Form.CONSTANT, new double[3], FOUR));
    refused(
        "needs at least 4 values, has 3",
        () -> PrecisionProfile.fit(Form.CONSTANT, new double[3], new double[3]));
    refused(
        "level must be above zero, is 0.0",
        () -> PrecisionProfile.fit(Form.CONSTANT, new double[4], FOUR));
    refused(
        "level must be above zero, is -1.0",
        () -> PrecisionChoice.of(new double[] {-1}, new double[] {2}));
    refused("2 levels but 1 differences", () -> PrecisionChoice.of(new double[2], new double[1]));
    refused(
        "value 2 is NaN, not a usable number",
        () -> PrecisionProfile.fit(Form.QUADRATURE, FOUR, new double[] {1, NAN, 1, 1}));
    refused(
        "all 4 differences are zero",
        () -> PrecisionProfile.fit(Form.QUADRATURE, FOUR, new double[4]));
    PrecisionProfile profile = PrecisionProfile.fit(Form.QUADRATURE, FOUR, HEIGHTS);
    refused("level must not be below zero, is -1.0", () -> profile.deviationAt(-1));
    refused("level must not be below zero, is NaN", () -> profile.deviationInterval(NAN, 0.9));
    refused("confidence must be between 0 and 1, is 1.0", () -> profile.deviationInterval(1, 1));
    refused("confidence must be between 0 and 1, is 0.0", () -> profile.proportionInterval(0));
    PrecisionProfile constant = PrecisionProfile.fit(Form.CONSTANT, FOUR, HEIGHTS);
    refused("confidence must be between 0 and 1, is NaN", () -> constant.deviationInterval(1, NAN));
  }
}
