package org.quietline.stats.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertAgree;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Student;

class NestedAnovaTest {
  private static double[][][] threeStage(Reference reference, int a, int b, int n) {
    double[][][] groups = new double[a][][];
    Arrays.setAll(groups, i -> reference.rows("/data/groups/" + i, b).toArray(double[][]::new));
    assertEquals(n, groups[a - 1][b - 1].length);
    return groups;
  }

  private static void check(Reference reference, String what, String name, double got) {
    reference.check(NestedAnova.class, what, "/expected/" + name, got);
  }

  @Test
  void purityOfBatches() {
    Reference book = Reference.read("nested-purity-montgomery");
    NestedAnova anova = NestedAnova.threeStage(threeStage(book, 3, 4, 3));
    String[] names = {"outer", "inner", "within"};
    for (int k = 0; k < 3; k++) {
      NestedAnova.Stage stage = anova.stages().get(k);
      check(book, "purity: squares " + names[k], "ss_" + names[k], stage.squares());
      check(book, "purity: mean square " + names[k], "ms_" + names[k], stage.meanSquare());
      assertEquals(book.at("/expected/df/" + k).asInt(), stage.degreesOfFreedom());
    }
    check(book, "purity: F outer", "F_outer", anova.ratio(0).orElseThrow().ratio());
    check(book, "purity: F inner", "F_inner", anova.ratio(1).orElseThrow().ratio());
    check(book, "purity: component inner", "component_inner", anova.component(1).variance());
    check(book, "purity: component within", "component_within", anova.component(2).variance());
    VarianceCombination outer = anova.component(0);
    assertTrue(outer.isNegative());
    assertEquals(0, outer.variance());
    assertEquals(0, outer.deviation());
    assertTrue(outer.raw() < 0);
    assertEquals(OptionalDouble.empty(), outer.degreesOfFreedom());
    assertTrue(outer.deviationUpperBound(0.95) > 1);
  }

  @Test
  void calciumInLeaves() {
    Reference book = Reference.read("nested-calcium-snedecor");
    NestedAnova anova = NestedAnova.threeStage(threeStage(book, 4, 3, 2));
    String[] names = {"outer", "inner", "within"};
    for (int k = 0; k < 3; k++) {
      check(
          book,
          "calcium: mean square " + names[k],
          "ms_" + names[k],
          anova.stages().get(k).meanSquare());
      check(
          book,
          "calcium: component " + names[k],
          "component_" + names[k],
          anova.component(k).variance());
      assertFalse(anova.component(k).isNegative());
    }
    double sum = IntStream.range(0, 3).mapToDouble(k -> anova.component(k).variance()).sum();
    assertAgree(15, sum, anova.singleValue().variance(), "single value");
    double four = sum - 0.75 * anova.component(2).variance();
    assertAgree(15, four, anova.meanOf(4).variance(), "mean of four");
    assertEquals(2, anova.meanOf(2).parts().size(), "the last mean square drops out");
    double mean = Math.sqrt(anova.stages().get(0).meanSquare() / 24);
    assertEquals(
        2 * anova.mean(), anova.meanInterval(0.9).upper() + anova.meanInterval(0.9).lower(), 1e-14);
    assertAgree(
        14,
        anova.mean() + Student.exceededWith(0.05, 3) * mean,
        anova.meanInterval(0.9).upper(),
        "mean");
  }

  @Test
  void yieldOfDyestuff() {
    Reference book = Reference.read("nested-dyestuff-davies");
    NestedAnova anova = NestedAnova.twoStage(book.rows("/data/groups", 6).toArray(double[][]::new));
    NestedAnova.Stage between = anova.stages().get(0);
    NestedAnova.Stage within = anova.stages().get(1);
    check(book, "dyestuff: squares between", "ss_between", between.squares());
    check(book, "dyestuff: squares within", "ss_within", within.squares());
    check(book, "dyestuff: mean square between", "ms_between", between.meanSquare());
    check(book, "dyestuff: mean square within", "ms_within", within.meanSquare());
    check(book, "dyestuff: component", "component_between", anova.component(0).variance());
    check(book, "dyestuff: mean", "mean", anova.mean());
  }

  @Test
  void resistivityOfAWaferOverDaysAndRuns() {
    Reference printed = Reference.read("nist-2.4.4.2-reproducibility-stability");
    NestedAnova anova =
        NestedAnova.twoStage(
            new double[][] {printed.numbers("/data/run1", 6), printed.numbers("/data/run2", 6)});
    // the page's deviation of run means is the root of the mean square over the days of a run
    check(
        printed,
        "wafer 140: deviation of run means",
        "s3_wafer_140",
        Math.sqrt(anova.stages().get(0).meanSquare() / 6));
    printed.check(
        NestedAnova.class,
        "wafer 140: deviation between days",
        "/crosscheck/own/s2",
        anova.component(1).deviation());
    assertEquals(10, anova.stages().get(1).degreesOfFreedom());
    assertEquals(1, anova.stages().get(0).degreesOfFreedom());
  }

  @Test
  void groupsWithinGroupsOfOneStageAreTheOneWayAnalysis() {
    double[][] groups =
        Reference.read("nested-dyestuff-davies").rows("/data/groups", 6).toArray(double[][]::new);
    NestedAnova nested = NestedAnova.twoStage(groups);
    OneWayAnova plain = OneWayAnova.of(groups);
    assertAgree(15, plain.betweenSquares(), nested.stages().get(0).squares(), "between");
    assertAgree(15, plain.withinSquares(), nested.stages().get(1).squares(), "within");
    assertEquals(plain.ratio(), nested.ratio(0));
  }

  /** Each pair of values has a squared difference whose mean is twice the sum of what differs. */
  @Test
  void componentsAreThoseOfTheSquaredDifferencesOfPairs() {
    SplittableRandom random = new SplittableRandom(44);
    for (double offset : new double[] {0, 1e6, 1e12}) {
      double[][][] values = new double[4][3][2];
      for (double[][] outer : values) {
        double o = Simulation.normal(random);
        for (double[] inner : outer) {
          double i = Simulation.normal(random);
          Arrays.setAll(inner, k -> Math.rint((o + i + Simulation.normal(random)) * 1024) / 1024);
          Arrays.setAll(inner, k -> inner[k] + offset);
        }
      }
      double[] halves = halfSquares(values);
      NestedAnova anova = NestedAnova.threeStage(values);
      String how = "half the mean squared difference of all pairs of a kind";
      Evidence.own(
          NestedAnova.class,
          "component within at offset " + offset,
          how,
          halves[0],
          anova.component(2).raw(),
          1e-13);
      Evidence.own(
          NestedAnova.class,
          "component of inner groups at offset " + offset,
          how,
          halves[1] - halves[0],
          anova.component(1).raw(),
          1e-12);
      Evidence.own(
          NestedAnova.class,
          "component of outer groups at offset " + offset,
          how,
          halves[2] - halves[1],
          anova.component(0).raw(),
          1e-12);
    }
  }

  /** Of pairs of one inner group, of two of one outer group, and of two outer groups. */
  private static double[] halfSquares(double[][][] values) {
    double[] sums = new double[3];
    int[] counts = new int[3];
    int a = values.length;
    int b = values[0].length;
    int n = values[0][0].length;
    for (int p = 0; p < a * b * n; p++) {
      for (int q = 0; q < p; q++) {
        boolean sameInner = p / n == q / n;
        boolean sameOuter = p / (b * n) == q / (b * n);
        int kind = sameInner ? 0 : sameOuter ? 1 : 2;
        double d = at(values, p) - at(values, q);
        sums[kind] += d * d / 2;
        counts[kind]++;
      }
    }
    return new double[] {sums[0] / counts[0], sums[1] / counts[1], sums[2] / counts[2]};
  }

  private static double at(double[][][] values, int place) {
    int n = values[0][0].length;
    int b = values[0].length;
    return values[place / (b * n)][place / n % b][place % n];
  }

  @Test
  void allEqualGivesZerosAndNoRatio() {
    NestedAnova anova = NestedAnova.twoStage(new double[][] {{3, 3}, {3, 3}});
    assertEquals(Optional.empty(), anova.ratio(0));
    assertEquals(new Interval(3, 3), anova.meanInterval(0.95));
    assertEquals(0, anova.singleValue().variance());
    assertEquals(new Interval(0, 0), anova.singleValue().interval(0.95));
    assertEquals(OptionalDouble.empty(), anova.singleValue().degreesOfFreedom());
  }

  @Test
  void aSpreadOnlyBetweenGroupsKeepsItsDigits() {
    NestedAnova anova = NestedAnova.twoStage(new double[][] {{1e9, 1e9 + 1}, {-1e9, 1 - 1e9}});
    assertEquals(1, anova.stages().get(1).squares());
    assertEquals(0.5, anova.component(1).variance());
  }
}
