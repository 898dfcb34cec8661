package org.quietline.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Every refusal of the mixed models, with its whole sentence. */
class MixedModelInvalidInputTest {
  private static final double NAN = Double.NaN;
  private static final int[] PAIRS = {1, 1, 2, 2, 3, 3};
  private static final double[] Y = {1, 2, 4, 3, 7, 6};
  private static final double[] T = {0, 1, 2, 0, 1, 2, 0, 1, 2};
  private static final double[] V = {1, 2, 4, 3, 7, 6, 5, 9, 3};
  private static final int[] G = {1, 1, 1, 2, 2, 2, 3, 3, 3};

  private static void refused(String sentence, Executable call) {
    assertEquals(sentence, assertThrows(IllegalArgumentException.class, call).getMessage());
  }

  @Test
  void groups() {
    VarianceComponents pairs =
        VarianceComponents.fit(new double[] {1, 2, 3, 5, 4, 4.5}, NestedGroups.of(PAIRS));
    refused("level must be at most 0.995, is 0.999", () -> pairs.pivotal().interval(0.999, 1, 1));
    refused("needs 1 to 3 nested levels, has 0", NestedGroups::of);
    refused("needs 1 to 3 nested levels, has 4", () -> NestedGroups.of(PAIRS, PAIRS, PAIRS, PAIRS));
    refused("6 labels in level 0 but 2 in level 1", () -> NestedGroups.of(PAIRS, new int[] {1, 2}));
    refused(
        "needs at least 2 groups in the outermost level, has 1",
        () -> NestedGroups.of(new int[] {4, 4, 4}));
    refused("level must be 0 to 0, is 1", () -> NestedGroups.of(PAIRS).paths(1));
    refused("level must be 0 to 0, is -1", () -> NestedGroups.of(PAIRS).paths(-1));
  }

  @Test
  void ratioOfGroups() {
    refused("needs at least 2 values, has 1", () -> GroupRatio.of(new double[1], new int[1]));
    refused("6 values but 2 labels", () -> GroupRatio.of(Y, new int[2]));
    refused(
        "value 1 is NaN, not a usable number",
        () -> GroupRatio.of(new double[] {NAN, 1, 2}, new int[] {1, 1, 2}));
    refused("number of groups must be at least 2, is 1", () -> GroupRatio.of(Y, new int[6]));
    refused(
        "degrees of freedom within groups must be at least 1, is 0",
        () -> GroupRatio.of(new double[] {1, 2, 3}, new int[] {1, 2, 3}));
    refused(
        "variance within groups must be above zero, is 0.0",
        () -> GroupRatio.of(new double[] {1, 1, 3, 3}, new int[] {1, 1, 2, 2}));
    GroupRatio ratio = GroupRatio.of(Y, PAIRS);
    refused("chance must be between 0 and 1, is 0.0", () -> ratio.bound(0));
    refused("chance must be between 0 and 1, is 1.0", () -> ratio.bound(1));
    refused("chance must be between 0 and 1, is NaN", () -> ratio.bound(NAN));
  }

  @Test
  void components() {
    NestedGroups pairs = NestedGroups.of(PAIRS);
    refused("needs at least 2 values, has 0", () -> VarianceComponents.fit(new double[0], pairs));
    refused(
        "value 2 is NaN, not a usable number",
        () -> VarianceComponents.fit(new double[] {1, NAN, 4, 3, 7, 6}, pairs));
    refused(
        "5 values but labels of 6",
        () -> VarianceComponents.fit(new double[] {1, 2, 4, 3, 7}, pairs));
    refused(
        "6 values but 2 in regressor 1",
        () -> VarianceComponents.fit(Y, pairs, new double[] {1, 2}));
    refused(
        "value 1 is Infinity, not a usable number",
        () -> VarianceComponents.fit(Y, pairs, new double[] {1 / 0.0, 1, 2, 3, 4, 5}));
    refused(
        "regressor 1 is a combination of the constant and those before it",
        () -> VarianceComponents.fit(Y, pairs, new double[] {3, 3, 3, 3, 3, 3}));
    refused(
        "regressor 2 is a combination of the constant and those before it",
        () ->
            VarianceComponents.fit(
                Y, pairs, new double[] {1, 2, 3, 1, 2, 3}, new double[] {3, 5, 7, 3, 5, 7}));
    refused(
        "regressor 1 is a combination of the constant and those before it",
        () -> VarianceComponents.fit(Y, pairs, new double[6]));
    refused(
        "level 1 adds no groups to what stands outside it",
        () -> VarianceComponents.fit(Y, NestedGroups.of(PAIRS, PAIRS)));
    refused(
        "level 0 adds no groups to what stands outside it",
        () ->
            VarianceComponents.fit(
                new double[] {1, 2, 4, 3},
                NestedGroups.of(new int[] {1, 1, 2, 2}),
                new double[] {0, 0, 1, 1}));
    refused(
        "no value is left for the residual: needs innermost groups of two or more",
        () -> VarianceComponents.fit(Y, NestedGroups.of(PAIRS, new int[] {1, 2, 3, 4, 5, 6})));
    refused(
        "the values do not scatter within the innermost groups: nothing to measure effects by",
        () -> VarianceComponents.fit(new double[] {1, 1, 4, 4, 7, 7}, pairs));
    refused(
        "the values do not scatter within the innermost groups: nothing to measure effects by",
        () -> VarianceComponents.fit(new double[6], pairs));
  }

  @Test
  void askingComponents() {
    VarianceComponents found = VarianceComponents.fit(Y, NestedGroups.of(PAIRS));
    refused("coefficient must be 0 to 0, is 1", () -> found.coefficient(1));
    refused("coefficient must be 0 to 0, is -1", () -> found.coefficient(-1));
    refused("level must be 0 to 0, is 1", () -> found.effects(1));
    refused("level must be 0 to 0, is 2", () -> found.testOf(2));
    refused("level must be 0 to 0, is -1", () -> found.groupMean(-1, 0));
    refused("group must be 0 to 2, is 3", () -> found.groupMean(0, 3));
    refused("group must be 0 to 2, is -1", () -> found.groupMean(0, -1));
    refused("needs 0 regressors, has 1", () -> found.newValue(2));
    refused("needs 2 weights, has 1", () -> found.sum(1));
    refused("weight must not be below zero, is -1.0", () -> found.sum(1, -1));
    refused("sum of the weights must be above zero, is 0.0", () -> found.sum(0, 0));
    PivotalComponents pivotal = found.pivotal();
    refused("level must be between 0 and 1, is 1.0", () -> pivotal.interval(1, 1, 1));
    refused("level must be between 0 and 1, is NaN", () -> pivotal.interval(NAN, 1, 1));
    refused("needs 2 weights, has 3", () -> pivotal.interval(0.9, 1, 1, 1));
    VarianceComponents with =
        VarianceComponents.fit(Y, NestedGroups.of(PAIRS), new double[] {1, 2, 3, 1, 2, 3});
    refused("regressor is NaN", () -> with.newValue(NAN));
    refused("needs 1 regressors, has 0", () -> with.groupMean(0, 1));
  }

  @Test
  void points() {
    refused(
        "2 values but 1 times and 2 group labels",
        () -> GroupedPoints.of(new double[1], new double[2], new int[2]));
    refused(
        "2 values but 2 times and 1 group labels",
        () -> GroupedPoints.of(new double[2], new double[2], new int[1]));
    refused(
        "needs at least 4 values, has 3",
        () -> GroupedPoints.of(new double[3], new double[3], new int[3]));
    refused(
        "value 1 is NaN, not a usable number",
        () -> GroupedPoints.of(new double[] {NAN, 1, 2, 3}, new double[4], new int[4]));
    refused(
        "value 4 is NaN, not a usable number",
        () -> GroupedPoints.of(new double[4], new double[] {1, 2, 3, NAN}, new int[4]));
    refused(
        "all times are equal: 2.0",
        () -> GroupedPoints.of(new double[] {2, 2, 2, 2}, new double[4], new int[] {1, 1, 2, 2}));
    refused(
        "number of groups must be at least 2, is 1",
        () -> GroupedPoints.of(new double[] {1, 2, 3, 4}, new double[4], new int[4]));
    refused(
        "regressor 2 is a combination of the constant and those before it",
        () -> GroupedPoints.of(T, V, G, T));
  }

  @Test
  void lines() {
    refused(
        "no value is left for the residual: no innermost group has more values than it has effects",
        () ->
            GroupedLines.fit(
                GroupedPoints.of(new double[] {0, 1, 0, 1, 0, 1}, Y, PAIRS),
                LineSpread.INDEPENDENT));
    refused(
        "the values do not scatter within the innermost groups: nothing to measure effects by",
        () ->
            GroupedLines.fit(
                GroupedPoints.of(T, new double[] {0, 1, 2, 0, 2, 4, 1, 1, 1}, G),
                LineSpread.INDEPENDENT));
    refused(
        "the components of variance cannot be told apart by these groups",
        () ->
            GroupedLines.fit(
                GroupedPoints.of(new double[] {1, 1, 1, 2, 2, 2, 3, 3, 3}, V, G),
                LineSpread.INDEPENDENT));
    GroupedPoints points = GroupedPoints.of(T, V, G);
    GroupedLines lines = GroupedLines.fit(points, LineSpread.INDEPENDENT);
    refused("coefficient must be 0 to 1, is 2", () -> lines.coefficient(2));
    refused("coefficient must be 0 to 1, is -1", () -> lines.coefficient(-1));
    refused("time is NaN", () -> lines.averageAt(NAN));
    refused("time is Infinity", () -> lines.heightVarianceAt(1 / 0.0));
    refused("there is no group 4", () -> lines.groupLineAt(4, 1));
    refused("there is no group 4", () -> lines.groupSlope(4));
    refused("needs 0 regressors, has 1", () -> lines.newLineAt(1, 2));
    GroupedLines with =
        GroupedLines.fit(
            GroupedPoints.of(T, V, G, new double[] {0, 1, 0, 1, 0, 1, 1, 1, 0}),
            LineSpread.PARALLEL);
    refused("regressor is NaN", () -> with.newValueAt(1, NAN));
    refused(
        "ratio of intercepts must not be below zero, is -1.0",
        () -> LinesGivenRatios.of(points, -1, 0, 0));
    refused(
        "ratio of slopes must not be below zero, is NaN",
        () -> LinesGivenRatios.of(points, 1, NAN, 0));
    refused(
        "ratio of covariance is 2.0, more than the variances allow",
        () -> LinesGivenRatios.of(points, 1, 1, 2));
    refused(
        "ratio of covariance is NaN, more than the variances allow",
        () -> LinesGivenRatios.of(points, 1, 1, NAN));
  }

  @Test
  void results() {
    refused("value is NaN", () -> new StudentEstimate(NAN, 1, 1));
    refused("standard error must not be below zero, is -1.0", () -> new StudentEstimate(1, -1, 1));
    refused("degrees of freedom must be above zero, is 0.0", () -> new StudentEstimate(1, 1, 0));
    refused(
        "level must be between 0 and 1, is 0.0", () -> new StudentEstimate(1, 1, 1).interval(0));
    refused("variance must not be below zero, is -1.0", () -> new VarianceEstimate(-1, 1));
    refused(
        "degrees of freedom must not be below zero, is NaN", () -> new VarianceEstimate(1, NAN));
    refused("statistic must not be below zero, is -1.0", () -> new BoundaryTest(-1, 0.5));
    refused("chance is 1.5", () -> new BoundaryTest(1, 1.5));
    refused("chance is NaN", () -> new BoundaryTest(1, NAN));
    refused("log likelihood is NaN", () -> new FullLikelihood(List.of(1.0), NAN, 2, 5));
    refused("parameters must be at least 1, is 0", () -> new FullLikelihood(List.of(), 1, 0, 5));
    refused("n must be at least 1, is 0", () -> new FullLikelihood(List.of(), 1, 1, 0));
    refused("value is NaN", () -> new LinesGivenRatios.Height(NAN, 1));
    refused(
        "unscaled variance must not be below zero, is -1.0",
        () -> new LinesGivenRatios.Height(1, -1));
  }
}
