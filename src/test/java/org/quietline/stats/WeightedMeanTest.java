package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class WeightedMeanTest {

  /** Numbers of the page typed from memory; it cuts its lower limit instead of rounding it. */
  @Test
  void handbookExample() {
    Reference nist = Reference.read("nist-6.3.2.4-ewma");
    WeightedMean chart =
        new WeightedMean(
            nist.number("/data/EWMA0"),
            nist.number("/data/s"),
            nist.number("/data/lambda"),
            nist.number("/data/k"));
    List<WeightedMean.Point> points = chart.trace(nist.numbers("/data/y", 20), new boolean[20]);
    double[] printed = nist.numbers("/expected/ewma_two_decimals_including_EWMA0", 21);
    double[] own = nist.numbers("/crosscheck/own/ewma", 21);
    double[] upper = nist.numbers("/crosscheck/own/time_varying_UCL", 20);
    for (int i = 0; i < 20; i++) {
      assertEquals(printed[i + 1], points.get(i).mean(), 0.005, "printed " + i);
      assertEquals(own[i + 1], points.get(i).mean(), 0.00005, "own " + i);
      assertEquals(upper[i], points.get(i).upper(), 0.00005, "upper " + i);
      assertEquals(100 - upper[i], points.get(i).lower(), 0.00005, "lower " + i);
      assertFalse(points.get(i).beyond());
    }
    assertEquals(nist.number("/expected/UCL"), chart.steadyLimits().upper(), 0.00005);
    assertEquals(nist.number("/expected/LCL"), chart.steadyLimits().lower(), 0.0001);
  }

  @Test
  void practitionersSixResults() {
    Reference reference = Reference.read("practitioner-individuals");
    double centre = reference.number("/data/centre");
    WeightedMean chart = new WeightedMean(centre, reference.number("/data/deviation"), 0.4, 3);
    var points = chart.trace(reference.numbers("/data/new", 6), new boolean[6]);
    double[] means = reference.numbers("/expected/weighted", 6);
    double[] upper = reference.numbers("/expected/weightedUpper", 6);
    for (int i = 0; i < 6; i++) {
      assertEquals(means[i], points.get(i).mean(), 1e-13);
      assertEquals(upper[i], points.get(i).upper(), 1e-13);
    }
    double steady = chart.steadyLimits().upper();
    assertEquals(reference.number("/expected/steadyUpper"), steady, 1e-13);
    // the printed tables say that the fifth is the first beyond the steady limit
    assertTrue(points.get(3).mean() < steady && points.get(4).mean() > steady);
  }

  @Test
  void aRestartForgetsWhatWasBefore() {
    WeightedMean chart = new WeightedMean(10, 2, 0.3, 2.7);
    double[] values = {11, 14, 9, 12, 13};
    boolean[] restarts = {false, false, true, false, false};
    var points = chart.trace(values, restarts);
    assertEquals(chart.trace(new double[] {9, 12, 13}, new boolean[3]), points.subList(2, 5));
    assertEquals(chart.trace(new double[] {11, 14}, new boolean[2]), points.subList(0, 2));
  }

  @Test
  void varianceOfTheMeanIsThatOfTheLimits() {
    SplittableRandom random = new SplittableRandom(9);
    WeightedMean chart = new WeightedMean(0, 1, 0.4, 1);
    int trials = 4000;
    double[] third = new double[trials];
    double half = 0;
    for (int i = 0; i < trials; i++) {
      var point = chart.trace(Simulation.normal(random, 3), new boolean[3]).get(2);
      third[i] = point.mean();
      half = point.upper();
    }
    assertEquals(half, Summary.of(third).deviation(), 4 * half / Math.sqrt(2.0 * trials));
  }

  @Test
  void weightOneIsTheIndividualsChart() {
    WeightedMean chart = new WeightedMean(5, 2, 1, 3);
    var points = chart.trace(new double[] {4, 12}, new boolean[2]);
    assertEquals(new WeightedMean.Point(4, -1, 11), points.get(0));
    assertEquals(new WeightedMean.Point(12, -1, 11), points.get(1));
    assertTrue(points.get(1).beyond());
    assertTrue(chart.trace(new double[] {-2}, new boolean[1]).get(0).beyond());
  }

  @Test
  void noValuesAndNoSpread() {
    assertTrue(new WeightedMean(0, 1, 0.4, 3).trace(new double[0], new boolean[0]).isEmpty());
    var still = new WeightedMean(0.2, 0, 0.4, 3);
    assertEquals(new Interval(0.2, 0.2), still.steadyLimits());
    assertEquals(
        new WeightedMean.Point(0.2, 0.2, 0.2),
        still.trace(new double[] {0.2}, new boolean[1]).get(0));
  }
}
