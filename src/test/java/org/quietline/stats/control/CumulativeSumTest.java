package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.control.CumulativeSum.AfterSignal;
import org.quietline.stats.sample.Summary;

class CumulativeSumTest {
  private static List<CumulativeSum.Point> trace(CumulativeSum chart, double... values) {
    return chart.trace(values, new boolean[values.length]);
  }

  private static int firstSignal(List<CumulativeSum.Point> points) {
    return IntStream.range(0, points.size())
        .filter(i -> points.get(i).signal())
        .findFirst()
        .orElse(-1);
  }

  /** Figures of the book from memory, recalculated. */
  @Test
  void textbookThirtyValues() {
    Reference book = Reference.read("montgomery-cusum-30-observations");
    var points = trace(CumulativeSum.usual(10, 1), book.numbers("/data/y", 30));
    for (int i = 0; i < 30; i++) {
      String value = " after value " + (i + 1);
      book.check(
          CumulativeSum.class,
          "upper sum" + value,
          "/expected/C_plus/" + i,
          points.get(i).high().sum(),
          0.005);
      double low = book.number("/crosscheck/own/C_minus/" + i);
      assertEquals(low, points.get(i).low().sum(), 0.005, "lower sum" + value);
    }
    int first = firstSignal(points);
    book.check(CumulativeSum.class, "first signal", "/expected/first_signal_period", first + 1);
    CumulativeSum.Arm high = points.get(first).high();
    book.check(CumulativeSum.class, "values since zero", "/expected/N_plus_at_29", high.count());
    double mean = 10 + high.shift().orElseThrow();
    book.check(CumulativeSum.class, "new mean", "/expected/new_mean_estimate", mean);
    book.check(CumulativeSum.class, "new mean", "/crosscheck/own/estimated_shifted_mean", mean);
  }

  /** Figures of the page from memory, recalculated; one of them is cut instead of rounded. */
  @Test
  void handbookTwentyGroupsInTheirUnit() {
    Reference nist = Reference.read("nist-6.3.2.3-cusum");
    CumulativeSum chart =
        CumulativeSum.inUnits(
            nist.number("/data/target"), nist.number("/data/k"), nist.number("/data/h"));
    var points = trace(chart, nist.numbers("/data/group_mean", 20));
    for (int i = 0; i < 20; i++) {
      String group = " after group " + (i + 1);
      CumulativeSum.Point point = points.get(i);
      nist.check(
          CumulativeSum.class,
          "upper sum" + group,
          "/expected/S_hi_two_decimals/" + i,
          point.high().sum(),
          0.0051);
      double low = nist.number("/crosscheck/own/S_lo/" + i);
      assertEquals(low, point.low().sum(), 0.00005, "lower sum" + group);
    }
    nist.check(
        CumulativeSum.class,
        "first signal",
        "/expected/first_out_of_control_group",
        firstSignal(points) + 1);
    assertEquals(
        Arrays.toString(nist.numbers("/expected/out_of_control_groups", 7)),
        Arrays.toString(
            IntStream.range(0, 20)
                .filter(i -> points.get(i).signal())
                .mapToDouble(i -> i + 1)
                .toArray()));
  }

  private static final Reference EXACT = Reference.read("cumulative-sums");

  @Test
  void sixValues() {
    CumulativeSum chart =
        CumulativeSum.usual(EXACT.number("/data/sixCentre"), EXACT.number("/data/sixDeviation"));
    check("six", trace(chart, EXACT.numbers("/data/six", 6)));
  }

  @Test
  void plain() {
    check("plain", new CumulativeSum(10, 0.8, 0.5, 4, 0, AfterSignal.GO_ON), new int[0]);
  }

  @Test
  void headStart() {
    CumulativeSum chart = new CumulativeSum(10, 0.8, 0.5, 4, 0, AfterSignal.GO_ON).withHeadStart();
    assertEquals(2, chart.headStart());
    check("headStart", chart, new int[0]);
  }

  @Test
  void restarts() {
    check(
        "restarts", new CumulativeSum(10, 0.8, 0.25, 3, 1.5, AfterSignal.GO_ON), new int[] {6, 14});
  }

  @Test
  void startingAnewAfterSignals() {
    CumulativeSum chart =
        new CumulativeSum(10, 0.8, 0.5, 3, 1.5, AfterSignal.GO_ON).startingAnewAfterSignals();
    check("startingAnew", chart, new int[0]);
  }

  private static void check(String name, CumulativeSum chart, int[] restarts) {
    boolean[] marks = new boolean[24];
    for (int at : restarts) {
      marks[at] = true;
    }
    check(name, chart.trace(EXACT.numbers("/data/series", 24), marks));
  }

  /** All values are held to their figures; the last of each case stands on the table. */
  private static void check(String name, List<CumulativeSum.Point> points) {
    for (int i = 0; i < points.size(); i++) {
      String at = "/expected/" + name + "/" + i + "/";
      String words = name + ", value " + (i + 1);
      CumulativeSum.Arm high = points.get(i).high();
      CumulativeSum.Arm low = points.get(i).low();
      assertEquals(EXACT.number(at + 0), high.sum(), NEAR, words);
      assertEquals(EXACT.number(at + 1), low.sum(), NEAR, words);
      assertEquals(EXACT.number(at + 2), high.count(), words);
      assertEquals(EXACT.number(at + 3), low.count(), words);
      shift(words, EXACT.at(at + 4), high.shift());
      shift(words, EXACT.at(at + 5), low.shift());
      assertEquals(EXACT.number(at + 6) == 1, points.get(i).signal(), words);
      if (i == points.size() - 1) {
        EXACT.check(CumulativeSum.class, words + ", upper sum", at + 0, high.sum(), NEAR);
        EXACT.check(CumulativeSum.class, words + ", lower sum", at + 1, low.sum(), NEAR);
      }
    }
  }

  /** The sums cancel, so they are held to 1e-12 of a deviation rather than of themselves. */
  private static final double NEAR = 1e-12;

  private static void shift(String words, JsonNode expected, OptionalDouble shift) {
    assertEquals(expected.isNull(), shift.isEmpty(), words);
    if (shift.isPresent()) {
      assertEquals(Reference.number(expected), shift.getAsDouble(), NEAR, words);
    }
  }

  /** Simulated here with the chart as it is; the table is from memory and recalculated. */
  @Test
  void publishedRunLengths() {
    Reference table = Reference.read("arl-cusum-montgomery-k0.5");
    int[] columns = {2, 4, 6, 8};
    for (String h : new String[] {"4", "5"}) {
      for (int column : columns) {
        double shift = table.number("/data/shifts_in_sigma/" + column);
        CumulativeSum chart =
            new CumulativeSum(0, 1, 0.5, Double.parseDouble(h), 0, AfterSignal.GO_ON);
        double[] lengths = runLengths(chart, shift, 600 + 400 * column, column);
        Summary summary = Summary.of(lengths);
        table.check(
            CumulativeSum.class,
            "simulated run length, h = " + h + ", shift " + shift,
            "/expected/h=" + h + "/" + column,
            summary.mean(),
            4 * summary.deviation() / Math.sqrt(lengths.length) + 0.05);
      }
    }
  }

  private static double[] runLengths(CumulativeSum chart, double shift, int trials, long seed) {
    SplittableRandom seeds = new SplittableRandom(seed);
    double[] lengths = new double[trials];
    for (int t = 0; t < trials; t++) {
      long own = seeds.nextLong();
      int first = -1;
      for (int size = 32; first < 0; size *= 8) {
        // the same seed gives the same values again and further ones after them
        double[] values = Simulation.normal(new SplittableRandom(own), size);
        first = firstSignal(trace(chart, Arrays.stream(values).map(v -> v + shift).toArray()));
      }
      lengths[t] = first + 1;
    }
    return lengths;
  }

  @Test
  void aSumOnTheDecisionIntervalIsNoSignal() {
    CumulativeSum chart = new CumulativeSum(0, 1, 0.5, 2, 0, AfterSignal.GO_ON);
    assertFalse(trace(chart, 2.5).get(0).signal());
    assertTrue(trace(chart, Math.nextUp(2.5)).get(0).signal());
    assertTrue(trace(chart, -2.75).get(0).low().beyond());
    assertFalse(trace(chart, -2.75).get(0).high().beyond());
    assertTrue(trace(chart).isEmpty());
    CumulativeSum onTheEdge = new CumulativeSum(0, 1, 0.5, 2, 2, AfterSignal.GO_ON);
    assertFalse(trace(onTheEdge, 0.5).get(0).signal());
  }

  @Test
  void namedCharts() {
    assertEquals(new CumulativeSum(1, 2, 0.5, 5, 0, AfterSignal.GO_ON), CumulativeSum.usual(1, 2));
    assertEquals(
        new CumulativeSum(1, 1, 0.2, 3, 0, AfterSignal.GO_ON), CumulativeSum.inUnits(1, 0.2, 3));
    assertEquals(
        new CumulativeSum(1, 2, 0.5, 5, 2.5, AfterSignal.START_ANEW),
        CumulativeSum.usual(1, 2).startingAnewAfterSignals().withHeadStart());
  }

  @RepeatedTest(20)
  void movesAndTurnsWithItsValues(RepetitionInfo repetition) {
    SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
    double[] values = Simulation.normal(random, 30);
    double shift = random.nextDouble(-5, 5);
    double scale = random.nextDouble(0.2, 5);
    CumulativeSum chart = CumulativeSum.usual(0.1, 0.9).withHeadStart();
    CumulativeSum moved = CumulativeSum.usual(shift + scale * 0.1, scale * 0.9).withHeadStart();
    CumulativeSum turned = CumulativeSum.usual(-0.1, 0.9).withHeadStart();
    var before = trace(chart, values);
    var after = trace(moved, Arrays.stream(values).map(v -> shift + scale * v).toArray());
    var mirrored = trace(turned, Arrays.stream(values).map(v -> -v).toArray());
    for (int i = 0; i < values.length; i++) {
      assertEquals(before.get(i).high().sum(), after.get(i).high().sum(), 1e-10);
      assertEquals(
          scale * before.get(i).high().shift().orElse(0),
          after.get(i).high().shift().orElse(0),
          1e-9);
      assertEquals(before.get(i).high().sum(), mirrored.get(i).low().sum());
      assertEquals(before.get(i).low().count(), mirrored.get(i).high().count());
      double turnedShift = -mirrored.get(i).high().shift().orElse(0);
      assertEquals(before.get(i).low().shift().orElse(0), turnedShift, 1e-15);
    }
  }

  @Test
  void spreadScores() {
    Reference reference = Reference.read("spread-scores");
    double[] us = reference.numbers("/data/u", 7);
    double[] values = Arrays.stream(us).map(u -> 20 + 4 * u).toArray();
    double[] scores = SpreadScore.of(20, 4, values);
    for (int i = 0; i < us.length; i++) {
      // 20 + 4u is rounded where u has no exact double: 1e-14 of the value, more of the score
      reference.check(
          SpreadScore.class, "score of " + us[i], "/expected/scores/" + i, scores[i], 1e-13);
    }
    // by the paper's two constants, each within half a unit of its last digit
    double[] printed = reference.numbers("/data/constantsAsPrinted", 2);
    assertEquals((1 - printed[0]) / printed[1], SpreadScore.of(0, 1, 1)[0], 0.0005 * 1.51 / 0.349);
    assertEquals(0, SpreadScore.of(0, 1).length);
  }

  @Test
  void spreadScoresOfNormalValuesHaveMeanZeroAndDeviationOne() {
    double[] scores = SpreadScore.of(0, 1, Simulation.normal(new SplittableRandom(81), 40_000));
    assertEquals(0, Summary.meanOf(scores), 4 / 200.0);
    assertEquals(1, Summary.of(scores).deviation(), 4 / Math.sqrt(80_000));
    double[] wider = SpreadScore.of(0, 0.5, Simulation.normal(new SplittableRandom(82), 2000));
    assertTrue(Summary.meanOf(wider) > 0.5);
  }
}
