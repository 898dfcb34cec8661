package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.quietline.stats.capability.PerformanceIndex;
import org.quietline.stats.control.ControlLimits;
import org.quietline.stats.control.WeightedMean;
import org.quietline.stats.model.StraightLine;
import org.quietline.stats.sample.DuplicateDeviation;
import org.quietline.stats.sample.NormalShape;
import org.quietline.stats.sample.SerialDependence;
import org.quietline.stats.sample.Summary;

/** What a shift, a scale or another order may and may not change. */
class InvarianceTest {
  private static final double NEAR = 1e-10;

  private double[] values = {};
  private double[] moved = {};
  private double[] shuffled = {};
  private double shift;
  private double scale;

  private void draw(RepetitionInfo repetition) {
    SplittableRandom random = new SplittableRandom(1000 + repetition.getCurrentRepetition());
    values = Simulation.normal(random, 8 + random.nextInt(30));
    shift = random.nextDouble(-5, 5);
    scale = random.nextDouble(0.2, 5);
    moved = Arrays.stream(values).map(v -> shift + scale * v).toArray();
    shuffled = values.clone();
    for (int i = shuffled.length - 1; i > 0; i--) {
      int j = random.nextInt(i + 1);
      double kept = shuffled[i];
      shuffled[i] = shuffled[j];
      shuffled[j] = kept;
    }
  }

  @RepeatedTest(20)
  void summaryAndLimitsMoveWithTheValues(RepetitionInfo repetition) {
    draw(repetition);
    assertEquals(shift + scale * Summary.of(values).mean(), Summary.of(moved).mean(), NEAR);
    assertRelative(
        scale * Summary.of(values).deviation(), Summary.of(moved).deviation(), NEAR, "deviation");
    same(ControlLimits.fromMovingRange(values), ControlLimits.fromMovingRange(moved));
    same(ControlLimits.fromSampleDeviation(values), ControlLimits.fromSampleDeviation(moved));
    same(ControlLimits.prediction(values), ControlLimits.prediction(moved));
    same(ControlLimits.guaranteed(0.9, values), ControlLimits.guaranteed(0.9, moved));
  }

  private void same(ControlLimits before, ControlLimits after) {
    assertEquals(shift + scale * before.centre(), after.centre(), NEAR);
    assertEquals(shift + scale * before.lowerAction(), after.lowerAction(), NEAR * 100);
    assertEquals(shift + scale * before.lowerWarning(), after.lowerWarning(), NEAR * 100);
    assertEquals(shift + scale * before.upperWarning(), after.upperWarning(), NEAR * 100);
    assertEquals(shift + scale * before.upperAction(), after.upperAction(), NEAR * 100);
    assertRelative(scale * before.movingRangeUpper(), after.movingRangeUpper(), NEAR, "range");
  }

  @RepeatedTest(20)
  void shapeAndDependenceDoNotMove(RepetitionInfo repetition) {
    draw(repetition);
    assertRelative(
        NormalShape.of(values).adjusted(), NormalShape.of(moved).adjusted(), NEAR, "shape");
    SerialDependence before = SerialDependence.of(values);
    SerialDependence after = SerialDependence.of(moved);
    assertEquals(before.lag1(), after.lag1(), NEAR);
    assertRelative(before.vonNeumannRatio(), after.vonNeumannRatio(), NEAR, "ratio");
    assertRelative(before.deviationRatio(), after.deviationRatio(), NEAR, "deviations");
    double limit = 4;
    assertRelative(
        PerformanceIndex.upper(Summary.of(values), limit).index(),
        PerformanceIndex.upper(Summary.of(moved), shift + scale * limit).index(),
        NEAR,
        "index");
  }

  @RepeatedTest(20)
  void orderMattersOnlyToWhatLooksAtOrder(RepetitionInfo repetition) {
    draw(repetition);
    assertRelative(
        Summary.of(values).deviation(), Summary.of(shuffled).deviation(), 1e-14, "deviation");
    assertEquals(NormalShape.of(values), NormalShape.of(shuffled));
    assertRelative(
        DuplicateDeviation.of(values).deviation(),
        DuplicateDeviation.of(shuffled).deviation(),
        1e-14,
        "duplicates");
    assertRelative(
        ControlLimits.prediction(values).upperAction(),
        ControlLimits.prediction(shuffled).upperAction(),
        1e-13,
        "prediction");
    double[] reversed =
        IntStream.range(0, values.length).mapToDouble(i -> values[values.length - 1 - i]).toArray();
    assertEquals(SerialDependence.of(values).lag1(), SerialDependence.of(reversed).lag1(), 1e-14);
  }

  @RepeatedTest(20)
  void lineMovesWithItsPoints(RepetitionInfo repetition) {
    draw(repetition);
    double[] x = IntStream.range(0, values.length).mapToDouble(i -> 1.5 * i).toArray();
    double[] later = Arrays.stream(x).map(v -> v + 100).toArray();
    StraightLine before = StraightLine.fit(x, values);
    StraightLine after = StraightLine.fit(later, moved);
    assertEquals(scale * before.slope(), after.slope(), NEAR);
    assertRelative(scale * before.slopeError(), after.slopeError(), NEAR, "slope error");
    assertEquals(shift + scale * before.at(7), after.at(107), NEAR);
    assertRelative(
        scale * before.standardErrorAt(7), after.standardErrorAt(107), NEAR, "height error");
  }

  @RepeatedTest(20)
  void weightedMeanMovesWithItsValues(RepetitionInfo repetition) {
    draw(repetition);
    boolean[] restarts = new boolean[values.length];
    restarts[values.length / 2] = true;
    var before = new WeightedMean(0.3, 1.1, 0.4, 3).trace(values, restarts);
    var after = new WeightedMean(shift + scale * 0.3, scale * 1.1, 0.4, 3).trace(moved, restarts);
    for (int i = 0; i < values.length; i++) {
      assertEquals(shift + scale * before.get(i).mean(), after.get(i).mean(), NEAR);
      assertEquals(shift + scale * before.get(i).upper(), after.get(i).upper(), NEAR);
    }
  }
}
