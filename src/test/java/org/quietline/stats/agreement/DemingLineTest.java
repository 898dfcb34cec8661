package org.quietline.stats.agreement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Digits;
import org.quietline.stats.Evidence;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.model.StraightLine;

class DemingLineTest {
  private static final double[] X = {1.1, 2.3, 2.9, 4.2, 5.0, 6.3, 7.7};
  private static final double[] Y = {2.0, 4.9, 6.1, 8.0, 10.4, 12.1, 15.9};

  @Test
  void agreesWithFortyDigits() {
    Reference lines = Reference.read("deming-lines");
    assertEquals(6, lines.at("/expected/cases").size());
    for (int i = 0; i < 6; i++) {
      String at = "/expected/cases/" + i + "/";
      double[] x = numbers(lines.at(at + "x"));
      double[] y = numbers(lines.at(at + "y"));
      DemingLine line = DemingLine.fit(x, y, lines.number(at + "ratio")).orElseThrow();
      double place = lines.number(at + "at");
      String name = lines.at(at + "name").asText() + ": ";
      lines.check(DemingLine.class, name + "slope", at + "slope", line.slope());
      lines.check(DemingLine.class, name + "height", at + "height", line.at(place));
      lines.check(
          DemingLine.class,
          name + "slope's error",
          at + "slopeError",
          line.slopeError().orElseThrow());
      lines.check(
          DemingLine.class,
          name + "height's error",
          at + "heightError",
          line.errorAt(place).orElseThrow());
      lines.check(DemingLine.class, name + "deviation", at + "deviationOfX", line.deviationOfX());
      Interval slope = line.slopeInterval(0.95).orElseThrow();
      lines.check(DemingLine.class, name + "lower end", at + "slopeLower95", slope.lower());
      lines.check(DemingLine.class, name + "upper end", at + "slopeUpper95", slope.upper());
      // a millionth is what the iterations of the distance regression reach
      lines.check(
          DemingLine.class,
          name + "slope of distance regression",
          at + "slopeOfDistanceRegression",
          line.slope(),
          5e-6);
      lines.check(DemingLine.class, name + "intercept", at + "intercept", line.intercept());
      lines.check(
          DemingLine.class,
          name + "intercept's error",
          at + "interceptError",
          line.errorAt(0).orElseThrow());
    }
  }

  /**
   * The quoted intercept is right to two decimals only, as the file says; its own figures are six.
   */
  @Test
  void pearsonsPoints() {
    Reference pearson = Reference.read("deming-orthogonal-pearson-1901");
    DemingLine line =
        DemingLine.fit(pearson.numbers("/data/x", 10), pearson.numbers("/data/y", 10), 1)
            .orElseThrow();
    pearson.check(DemingLine.class, "Pearson's slope", "/expected/slope_literature", line.slope());
    pearson.check(
        DemingLine.class,
        "Pearson's intercept",
        "/expected/intercept_pearson_recalled",
        line.intercept());
    pearson.check(DemingLine.class, "slope, recalculated", "/crosscheck/own/slope", line.slope());
    pearson.check(
        DemingLine.class, "intercept, recalculated", "/crosscheck/own/intercept", line.intercept());
  }

  /** The slope minimises the sum of squares; a slow search finds the same. */
  @Test
  void isTheLowestSum() {
    SplittableRandom random = new SplittableRandom(4);
    for (double ratio : new double[] {0.1, 1, 7}) {
      double[] x = Simulation.normal(random, 9);
      double[] y = Simulation.normal(random, 9);
      DemingLine line = DemingLine.fit(x, y, ratio).orElseThrow();
      double lowest = sum(x, y, ratio, Math.atan(line.slope()));
      double best = Math.PI;
      double least = Double.MAX_VALUE;
      for (double angle = -Math.PI / 2; angle < Math.PI / 2; angle += 1e-4) {
        double s = sum(x, y, ratio, angle);
        best = s < least ? angle : best;
        least = Math.min(least, s);
      }
      assertTrue(lowest <= least * (1 + 1e-12));
      assertEquals(best, Math.atan(line.slope()), 1.1e-4);
      Evidence.own(
          DemingLine.class, "least sum, ratio " + ratio, "search over angles", least, lowest, 1e-6);
    }
  }

  private static double sum(double[] x, double[] y, double ratio, double angle) {
    double b = Math.tan(angle);
    double mx = Arrays.stream(x).average().orElseThrow();
    double my = Arrays.stream(y).average().orElseThrow();
    double sum = 0;
    for (int i = 0; i < x.length; i++) {
      double left = y[i] - my - b * (x[i] - mx);
      sum += left * left / (ratio + b * b);
    }
    return sum;
  }

  @Test
  void exchangingBothGivesTheSameLine() {
    DemingLine line = DemingLine.fit(X, Y, 2.5).orElseThrow();
    DemingLine other = DemingLine.fit(Y, X, 1 / 2.5).orElseThrow();
    assertRelative(1 / line.slope(), other.slope(), 1e-14, "slope");
    assertRelative(-line.intercept() / line.slope(), other.intercept(), 1e-12, "intercept");
    assertRelative(line.deviationOfY(), other.deviationOfX(), 1e-12, "deviation");
    assertRelative(line.deviationOfX() * Math.sqrt(2.5), line.deviationOfY(), 1e-15, "ratio");
  }

  @Test
  void followsShiftAndScale() {
    DemingLine line = DemingLine.fit(X, Y, 2).orElseThrow();
    double[] x = Arrays.stream(X).map(v -> 8 * v + 1024).toArray();
    double[] y = Arrays.stream(Y).map(v -> 0.5 * v - 512).toArray();
    DemingLine moved = DemingLine.fit(x, y, 2 * 0.25 / 64).orElseThrow();
    assertRelative(line.slope() / 16, moved.slope(), 1e-12, "slope");
    assertRelative(0.5 * line.at(3) - 512, moved.at(8 * 3 + 1024), 1e-13, "height");
    assertRelative(
        line.slopeError().orElseThrow() / 16, moved.slopeError().orElseThrow(), 1e-11, "error");
    assertRelative(
        line.errorAt(3).orElseThrow() / 2, moved.errorAt(1048).orElseThrow(), 1e-11, "at");
  }

  @Test
  void orderOfPointsDoesNotMatter() {
    double[] x = {X[3], X[0], X[6], X[1], X[5], X[2], X[4]};
    double[] y = {Y[3], Y[0], Y[6], Y[1], Y[5], Y[2], Y[4]};
    DemingLine line = DemingLine.fit(X, Y, 1).orElseThrow();
    DemingLine other = DemingLine.fit(x, y, 1).orElseThrow();
    assertRelative(line.slope(), other.slope(), 1e-14, "slope");
    assertRelative(line.slopeError().orElseThrow(), other.slopeError().orElseThrow(), 1e-12, "e");
  }

  @Test
  void largeRatioIsLeastSquaresAndSmallOneItsReverse() {
    double ordinary = StraightLine.fit(X, Y).slope();
    double reverse = 1 / StraightLine.fit(Y, X).slope();
    assertRelative(ordinary, DemingLine.fit(X, Y, 1e12).orElseThrow().slope(), 1e-9, "ordinary");
    assertRelative(reverse, DemingLine.fit(X, Y, 1e-12).orElseThrow().slope(), 1e-9, "reverse");
    double between = DemingLine.fit(X, Y, 1).orElseThrow().slope();
    assertTrue(ordinary < between && between < reverse);
  }

  @Test
  void pointsOnALineHaveNoErrors() {
    DemingLine line =
        DemingLine.fit(new double[] {1, 2, 4, 8}, new double[] {7, 5, 1, -7}, 1).orElseThrow();
    assertEquals(-2, line.slope(), 1e-15);
    assertEquals(9, line.intercept(), 1e-14);
    assertEquals(0, line.deviationOfX(), 1e-15);
    assertEquals(0, line.slopeError().orElseThrow(), 1e-14);
    assertEquals(2, line.degreesOfFreedom());
    Interval interval = line.interceptInterval(0.95).orElseThrow();
    assertEquals(9, interval.lower(), 1e-12);
    assertEquals(9, interval.upper(), 1e-12);
  }

  @Test
  void levelLineHasSlopeZero() {
    DemingLine line =
        DemingLine.fit(new double[] {1, 2, 3, 1, 2, 3}, new double[] {1, 1, 1, 2, 2, 2}, 1)
            .orElseThrow();
    assertEquals(0, line.slope());
    assertEquals(1.5, line.intercept());
  }

  @Test
  void noLineWithoutALongestDirection() {
    double[] x = {0, 1, 0, 1};
    double[] y = {0, 0, 1, 1};
    assertEquals(Optional.empty(), DemingLine.fit(x, y, 1));
    assertTrue(DemingLine.fit(x, y, 1.5).isPresent(), "a level line");
    assertEquals(Optional.empty(), DemingLine.fit(x, y, 0.5), "upright");
    double[] same = {2, 2, 2};
    assertEquals(Optional.empty(), DemingLine.fit(same, same, 1), "one place");
    assertEquals(Optional.empty(), DemingLine.fit(same, new double[] {1, 2, 3}, 1), "upright");
  }

  /** Without its last point the rest stands upright. */
  @Test
  void noErrorsWhereALineWithoutAPointIsMissing() {
    DemingLine line =
        DemingLine.fit(new double[] {1, 1, 1, 3}, new double[] {1, 2, 3, 4}, 1).orElseThrow();
    assertTrue(line.slopeError().isEmpty());
    assertTrue(line.errorAt(2).isEmpty());
    assertTrue(line.slopeInterval(0.95).isEmpty());
    assertTrue(line.intervalAt(2, 0.95).isEmpty());
    assertTrue(line.interceptInterval(0.95).isEmpty());
  }

  @Test
  void widerLevelIsWider() {
    DemingLine line = DemingLine.fit(X, Y, 1).orElseThrow();
    Interval narrow = line.intervalAt(9, 0.9).orElseThrow();
    Interval wide = line.intervalAt(9, 0.99).orElseThrow();
    assertTrue(wide.lower() < narrow.lower() && narrow.upper() < wide.upper());
    assertEquals(line.at(9), (wide.lower() + wide.upper()) / 2, 1e-13);
    assertTrue(line.errorAt(20).orElseThrow() > line.errorAt(4).orElseThrow());
    assertTrue(Digits.agreeing(line.intercept(), line.at(0)) > 15);
  }

  private static double[] numbers(JsonNode array) {
    double[] numbers = new double[array.size()];
    Arrays.setAll(numbers, i -> array.get(i).doubleValue());
    return numbers;
  }
}
