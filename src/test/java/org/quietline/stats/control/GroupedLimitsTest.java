package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.stats.Coverage;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;

class GroupedLimitsTest {
  private static final double THREE = 1 - Normal.outside(3);

  private static int[] labels(int groups, int each) {
    int[] labels = new int[groups * each];
    Arrays.setAll(labels, i -> i / each);
    return labels;
  }

  private static double[] draw(SplittableRandom random, int groups, int each, double tau) {
    double[] values = Simulation.normal(random, groups * each);
    for (int g = 0; g < groups; g++) {
      double effect = tau * Simulation.normal(random);
      for (int i = 0; i < each; i++) {
        values[g * each + i] += effect;
      }
    }
    return values;
  }

  @Test
  void dyestuff() {
    Reference reference = Reference.read("grouped-limits");
    double[] values =
        reference.rows("/data/groups", 6).stream().flatMapToDouble(Arrays::stream).toArray();
    GroupedLimits grouped = GroupedLimits.of(values, labels(6, 5));
    ControlLimits limits = grouped.limits();
    Class<?> subject = GroupedLimits.class;
    reference.check(subject, "between", "/expected/between", grouped.between());
    reference.check(subject, "within", "/expected/within", grouped.within());
    reference.check(subject, "centre", "/expected/centre", limits.centre());
    reference.check(subject, "lower action", "/expected/action/0", limits.lowerAction());
    reference.check(subject, "upper action", "/expected/action/1", limits.upperAction());
    reference.check(subject, "lower warning", "/expected/warning/0", limits.lowerWarning());
    reference.check(subject, "upper warning", "/expected/warning/1", limits.upperWarning());
    assertEquals(ControlLimits.Basis.BETWEEN_GROUPS, limits.basis());
    assertRelative(
        Math.hypot(grouped.between(), grouped.within()), limits.deviation(), 1e-14, "deviation");
    assertRelative(
        ControlLimits.fromMovingRange(values).movingRangeUpper(),
        limits.movingRangeUpper(),
        1e-15,
        "moving range");
  }

  @RepeatedTest(10)
  void shiftScaleAndOrder(RepetitionInfo repetition) {
    SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
    int[] labels = {0, 0, 0, 1, 1, 2, 2, 2, 2, 3, 4, 4};
    double[] values = Simulation.normal(random, 12);
    for (int i = 0; i < 12; i++) {
      values[i] += labels[i] * random.nextDouble();
    }
    GroupedLimits before = GroupedLimits.of(values, labels);
    double[] moved = new double[12];
    int[] turned = new int[12];
    for (int i = 0; i < 12; i++) {
      moved[11 - i] = 5 * values[i] + 100;
      turned[11 - i] = 40 - 9 * labels[i];
    }
    GroupedLimits after = GroupedLimits.of(moved, turned);
    double width = before.limits().upperAction() - before.limits().lowerAction();
    assertEquals(5 * before.between(), after.between(), 1e-6 * before.within());
    assertRelative(5 * before.within(), after.within(), 1e-7, "within");
    assertEquals(
        5 * before.limits().upperAction() + 100, after.limits().upperAction(), 1e-6 * width);
    assertEquals(
        5 * before.limits().lowerWarning() + 100, after.limits().lowerWarning(), 1e-6 * width);
  }

  /** How often a value of a new group leaves the limits, as the javadoc says, in per cent. */
  @ParameterizedTest
  @CsvSource({
    "20, 4, 0, 0.27", "20, 4, 0.5, 0.27", "20, 4, 1, 0.29", "20, 4, 2, 0.30",
    "10, 4, 0, 0.25", "10, 4, 0.5, 0.27", "10, 4, 1, 0.31", "10, 4, 2, 0.35",
    "5, 4, 0, 0.22", "5, 4, 0.5, 0.25", "5, 4, 1, 0.37", "5, 4, 2, 0.59",
    "3, 5, 0, 0.19", "3, 5, 0.5, 0.24", "3, 5, 1, 0.53", "3, 5, 2, 1.34"
  })
  void theNextGroupsValue(int groups, int each, double tau, double stated) {
    SplittableRandom random = new SplittableRandom(20261108 + 10L * groups);
    int trials = Coverage.trials(1500, 20_000);
    double scale = Math.hypot(1, tau);
    double sum = 0;
    double squares = 0;
    int held = 0;
    for (int i = 0; i < trials; i++) {
      double[] values = draw(random, groups, each, tau);
      ControlLimits limits = GroupedLimits.of(values, labels(groups, each)).limits();
      double outside =
          Normal.above(limits.upperAction() / scale) + Normal.below(limits.lowerAction() / scale);
      sum += outside;
      squares += outside * outside;
      double next = scale * Simulation.normal(random);
      held += next >= limits.lowerAction() && next <= limits.upperAction() ? 1 : 0;
    }
    double mean = sum / trials;
    double error = Math.sqrt((squares / trials - mean * mean) / trials);
    assertEquals(stated / 100, mean, 4 * error + 0.0001);
    Coverage.check(
        GroupedLimits.class,
        "value of a new group, action limits",
        groups + " groups of " + each + ", between/within " + tau,
        THREE,
        held,
        trials,
        1 - stated / 100,
        1 - stated / 100);
  }

  /** What the limits are for: from the moving range they would be left far more often. */
  @Test
  void movingRangesDoNotSeeGroups() {
    double[] stated = {0.0062, 0.0116, 0.032, 0.109};
    double[] ratios = {0, 0.5, 1, 2};
    for (int k = 0; k < 4; k++) {
      SplittableRandom random = new SplittableRandom(20261109);
      double scale = Math.hypot(1, ratios[k]);
      double sum = 0;
      for (int i = 0; i < 4000; i++) {
        ControlLimits limits = ControlLimits.fromMovingRange(draw(random, 10, 4, ratios[k]));
        sum +=
            Normal.above(limits.upperAction() / scale) + Normal.below(limits.lowerAction() / scale);
      }
      Evidence.own(
          ControlLimits.class,
          "moving range of 10 groups of 4, next group, between/within " + ratios[k],
          "simulation, as the javadoc of GroupedLimits states",
          stated[k],
          sum / 4000,
          0.06);
    }
  }

  /** It says beforehand where there is an answer: over small designs of all kinds. */
  @Test
  void tellsApartWhereThereIsAnAnswer() {
    SplittableRandom random = new SplittableRandom(20261110);
    int answers = 0;
    for (int i = 0; i < 3000; i++) {
      int n = 2 + random.nextInt(9);
      double[] values = new double[n];
      int[] labels = new int[n];
      for (int j = 0; j < n; j++) {
        labels[j] = random.nextInt(4);
        values[j] = 0.1 + 0.2 * random.nextInt(4) + (i % 3 == 0 ? 50 * labels[j] : 0);
      }
      if (GroupedLimits.tellApart(values, labels)) {
        answers++;
        assertTrue(GroupedLimits.of(values, labels).within() > 0);
      } else {
        assertThrows(
            IllegalArgumentException.class,
            () -> GroupedLimits.of(values, labels),
            Arrays.toString(values) + Arrays.toString(labels));
      }
    }
    assertTrue(answers > 1000, "answers " + answers);
    // 0.1 + 0.2 is not 0.3, by arithmetic alone
    double[] dust = {0.3, 0.1 + 0.2, 0.5, 0.5, 0.7};
    assertFalse(GroupedLimits.tellApart(dust, new int[] {1, 1, 2, 2, 3}));
    for (double[] values : List.of(new double[0], new double[] {1}, new double[] {1, 2})) {
      assertFalse(GroupedLimits.tellApart(values, new int[values.length]));
    }
  }
}
