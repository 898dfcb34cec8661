package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;

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
    double[] own = Arrays.copyOfRange(nist.numbers("/crosscheck/own/ewma", 21), 1, 21);
    for (int i = 0; i < 20; i++) {
      String value = " after value " + (i + 1);
      WeightedMean.Point point = points.get(i);
      // the page cuts some of its means instead of rounding them
      nist.check(
          WeightedMean.class,
          "weighted mean" + value,
          "/expected/ewma_two_decimals_including_EWMA0/" + (i + 1),
          point.mean(),
          0.0051);
      nist.check(
          WeightedMean.class,
          "upper limit" + value,
          "/crosscheck/own/time_varying_UCL/" + i,
          point.upper(),
          0.00005);
      assertEquals(own[i], point.mean(), 0.00005, "own " + i);
      assertEquals(100 - point.upper(), point.lower(), 1e-12, "lower " + i);
      assertFalse(point.beyond());
    }
    Interval steady = chart.steadyLimits();
    nist.check(WeightedMean.class, "steady upper limit", "/expected/UCL", steady.upper());
    nist.check(WeightedMean.class, "steady lower limit", "/expected/LCL", steady.lower(), 0.0001);
  }

  @Test
  void practitionersSixResults() {
    Reference reference = Reference.read("practitioner-individuals");
    double centre = reference.number("/data/centre");
    WeightedMean chart = new WeightedMean(centre, reference.number("/data/deviation"), 0.4, 3);
    var points = chart.trace(reference.numbers("/data/new", 6), new boolean[6]);
    for (int i = 0; i < 6; i++) {
      String value = " after value " + (i + 1);
      WeightedMean.Point point = points.get(i);
      reference.check(
          WeightedMean.class, "weighted mean" + value, "/expected/weighted/" + i, point.mean());
      reference.check(
          WeightedMean.class, "upper limit" + value, "/expected/weightedUpper/" + i, point.upper());
    }
    double steady = chart.steadyLimits().upper();
    reference.check(WeightedMean.class, "steady upper limit", "/expected/steadyUpper", steady);
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

  private final Reference options = Reference.read("weighted-mean-options");

  @Test
  void unevenSpacing() {
    WeightedMean chart = new WeightedMean(10, 0.8, 0.3, 3);
    boolean[] restarts = new boolean[12];
    restarts[7] = true;
    double[] values = options.numbers("/data/values", 12);
    var points = chart.trace(values, options.numbers("/data/gaps", 12), restarts);
    for (int i = 0; i < 12; i++) {
      String at = "/expected/spaced/" + i + "/";
      String value = ", uneven, after value " + (i + 1);
      WeightedMean.Point point = points.get(i);
      options.check(WeightedMean.class, "weighted mean" + value, at + 0, point.mean());
      options.check(WeightedMean.class, "lower limit" + value, at + 1, point.lower());
      options.check(WeightedMean.class, "upper limit" + value, at + 2, point.upper());
      assertFalse(point.held());
    }
    double[] ones = new double[12];
    Arrays.fill(ones, 1);
    var even = chart.trace(values, ones, restarts);
    var plain = chart.trace(values, restarts);
    for (int i = 0; i < 12; i++) {
      assertEquals(plain.get(i).mean(), even.get(i).mean(), 1e-14);
      assertEquals(plain.get(i).upper(), even.get(i).upper(), 1e-14);
      assertEquals(plain.get(i).lower(), even.get(i).lower(), 1e-14);
    }
  }

  @Test
  void heldSlips() {
    WeightedMean chart = new WeightedMean(10, 0.8, 0.3, 3).holdingSlips();
    assertEquals(WeightedMean.Slips.HELD, chart.slips());
    double[] values = options.numbers("/data/wild", 11);
    var points = chart.trace(values, new boolean[11]);
    double[] ones = new double[11];
    Arrays.fill(ones, 1);
    var even = chart.trace(values, ones, new boolean[11]);
    int held = 0;
    for (int i = 0; i < 11; i++) {
      String at = "/expected/held/" + i + "/";
      String value = ", held, after value " + (i + 1);
      WeightedMean.Point point = points.get(i);
      options.check(WeightedMean.class, "weighted mean" + value, at + 0, point.mean());
      assertEquals(options.number(at + 1) == 1, point.held(), value);
      assertEquals(point.held(), even.get(i).held(), value);
      assertEquals(point.mean(), even.get(i).mean(), 1e-13, value);
      held += point.held() ? 1 : 0;
    }
    assertTrue(held > 0 && held < 11);
  }

  /** One slip moves the mean by no more than three deviations' weight; a shift still gets there. */
  @Test
  void aSlipIsHeldAndAShiftIsNot() {
    WeightedMean chart = new WeightedMean(0, 1, 0.4, 3).holdingSlips();
    var slip = chart.trace(new double[] {1e6, 0}, new boolean[2]);
    assertEquals(1.2, slip.get(0).mean(), 1e-15);
    assertTrue(slip.get(0).held() && !slip.get(1).held());
    double[] shifted = new double[30];
    Arrays.fill(shifted, 8);
    assertEquals(8, chart.trace(shifted, new boolean[30]).get(29).mean(), 1e-4);
    var edge = chart.trace(new double[] {3, -1.8}, new boolean[2]);
    assertFalse(edge.get(0).held() || edge.get(1).held());
    assertEquals(
        chart.trace(new double[] {0.5, 1}, new boolean[2]),
        new WeightedMean(0, 1, 0.4, 3).trace(new double[] {0.5, 1}, new boolean[2]));
  }

  private final Reference sharing = Reference.read("weighted-mean-shared");
  private final WeightedMean sharer =
      new WeightedMean(
          sharing.number("/data/centre"),
          sharing.number("/data/deviation"),
          sharing.number("/data/weight"),
          sharing.number("/data/width"));

  private boolean[] sharedStarts() {
    boolean[] restarts = new boolean[14];
    for (double start : sharing.numbers("/data/starts", 4)) {
      restarts[(int) start] = true;
    }
    return restarts;
  }

  @Test
  void aSharedError() {
    double[] values = sharing.numbers("/data/values", 14);
    var points = sharer.trace(values, sharedStarts(), sharing.number("/data/shared"));
    for (int i = 0; i < 14; i++) {
      String at = "/expected/rows/" + i + "/";
      String value = ", shared error, after value " + (i + 1);
      WeightedMean.Point point = points.get(i);
      sharing.check(WeightedMean.class, "weighted mean" + value, at + 0, point.mean());
      sharing.check(WeightedMean.class, "lower limit" + value, at + 1, point.lower());
      sharing.check(WeightedMean.class, "upper limit" + value, at + 2, point.upper());
    }
    var without = sharer.trace(values, sharedStarts(), 0);
    var plain = sharer.trace(values, sharedStarts());
    for (int i = 0; i < 14; i++) {
      assertEquals(plain.get(i).mean(), without.get(i).mean(), 0.0);
      assertEquals(plain.get(i).upper(), without.get(i).upper(), 1e-14);
      assertEquals(plain.get(i).lower(), without.get(i).lower(), 1e-14);
    }
    // nothing but the shared error: the mean takes as much of it as its weights have reached
    var one = new WeightedMean(0, 0, 1, 2).trace(new double[] {1, 1}, new boolean[2], 3);
    assertEquals(new WeightedMean.Point(1, -6, 6), one.get(1));
    assertEquals(List.of(), sharer.trace(new double[0], new boolean[0], 1));
  }

  @Test
  void aSharedErrorMovesWithTheUnit() {
    double[] values = sharing.numbers("/data/values", 14);
    double[] moved = Arrays.stream(values).map(v -> 3 * v - 7).toArray();
    var before = sharer.trace(values, sharedStarts(), 0.6);
    var after =
        new WeightedMean(3 * sharer.centre() - 7, 3 * sharer.deviation(), 0.3, 3.2)
            .trace(moved, sharedStarts(), 1.8);
    for (int i = 0; i < 14; i++) {
      assertEquals(3 * before.get(i).mean() - 7, after.get(i).mean(), 1e-12);
      assertEquals(3 * before.get(i).lower() - 7, after.get(i).lower(), 1e-12);
    }
  }

  /** Each point is beyond its limits with the chance of its width, whatever the stretch. */
  @Test
  void aSharedErrorBySimulation() {
    SplittableRandom random = new SplittableRandom(20261105);
    WeightedMean chart = new WeightedMean(0, 1, 0.4, 2);
    int trials = 60_000;
    int[] beyond = new int[5];
    boolean[] restarts = {false, false, false, true, false};
    for (int i = 0; i < trials; i++) {
      double[] values = Simulation.normal(random, 5);
      double first = 1.5 * Simulation.normal(random);
      double second = 1.5 * Simulation.normal(random);
      for (int j = 0; j < 5; j++) {
        values[j] += j < 3 ? first : second;
      }
      var points = chart.trace(values, restarts, 1.5);
      for (int j = 0; j < 5; j++) {
        beyond[j] += points.get(j).beyond() ? 1 : 0;
      }
    }
    for (int count : beyond) {
      Simulation.assertShare(Normal.outside(2), count, trials);
    }
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
  void aMeanOnALimitIsInside() {
    assertFalse(new WeightedMean.Point(1, 1, 2).beyond());
    assertFalse(new WeightedMean.Point(2, 1, 2).beyond());
    assertTrue(new WeightedMean.Point(Math.nextUp(2.0), 1, 2).beyond());
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
