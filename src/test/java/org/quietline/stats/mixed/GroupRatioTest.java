package org.quietline.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Coverage;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.compare.VarianceRatio;
import org.quietline.stats.model.OneWayAnova;

class GroupRatioTest {
  private final Reference reference = Reference.read("group-ratio");

  private static double[] flat(List<double[]> groups) {
    return groups.stream().flatMapToDouble(Arrays::stream).toArray();
  }

  private static int[] labels(List<double[]> groups) {
    List<Integer> labels = new ArrayList<>();
    for (int i = 0; i < groups.size(); i++) {
      for (int j = 0; j < groups.get(i).length; j++) {
        labels.add(7 - 3 * i);
      }
    }
    return labels.stream().mapToInt(Integer::intValue).toArray();
  }

  private static GroupRatio of(List<double[]> groups) {
    return GroupRatio.of(flat(groups), labels(groups));
  }

  @ParameterizedTest
  @CsvSource({"unequal, 4", "dyestuff, 6", "alike, 3"})
  void waldsLimits(String name, int count) {
    GroupRatio ratio = of(reference.rows("/data/" + name, count));
    Class<?> subject = GroupRatio.class;
    String at = "/expected/" + name;
    assertEquals(count, ratio.count());
    reference.check(subject, name + ": chance of F", at + "/chance", ratio.chance());
    reference.check(subject, name + ": within", at + "/within", ratio.varianceWithin());
    JsonNode bounds = reference.at(at + "/bounds");
    assertEquals(7, bounds.size());
    for (int i = 0; i < 7; i++) {
      double chance = bounds.get(i).get(0).doubleValue();
      reference.check(
          subject,
          name + ": limit at " + chance,
          at + "/bounds/" + i + "/1",
          ratio.bound(chance).getAsDouble());
    }
  }

  private static VarianceRatio test(List<double[]> groups) {
    return OneWayAnova.of(groups.toArray(new double[0][])).ratio().orElseThrow();
  }

  /** In equal groups the limit is (F/F(chance) − 1)/n. */
  @Test
  void equalGroupsInClosedForm() {
    List<double[]> groups = reference.rows("/data/dyestuff", 6);
    VarianceRatio test = test(groups);
    assertRelative(test.upperTail(), of(groups).chance(), 1e-12, "F test");
    // quantiles of F with 5 and 24 degrees of freedom by SciPy 1.17.1
    double f = test.ratio();
    Evidence.own(
        GroupRatio.class,
        "upper 95 % limit, dyestuff",
        "closed form of equal groups, F of SciPy",
        (f / 0.22088937047268112 - 1) / 5,
        of(groups).bound(0.95).getAsDouble(),
        1e-9);
    Evidence.own(
        GroupRatio.class,
        "lower 95 % limit, dyestuff",
        "closed form of equal groups, F of SciPy",
        (f / 2.6206541478628878 - 1) / 5,
        of(groups).bound(0.05).getAsDouble(),
        1e-9);
  }

  @RepeatedTest(20)
  void shiftScaleAndOrder(RepetitionInfo repetition) {
    SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
    List<double[]> groups = new ArrayList<>();
    for (int i = 0; i < 2 + random.nextInt(6); i++) {
      double effect = 2 * Simulation.normal(random);
      double[] group = Simulation.normal(random, 1 + random.nextInt(5));
      groups.add(Arrays.stream(group).map(v -> v + effect).toArray());
    }
    groups.add(Simulation.normal(random, 3));
    GroupRatio before = of(groups);
    List<double[]> turned = new ArrayList<>();
    for (double[] group : groups) {
      double[] back = new double[group.length];
      for (int i = 0; i < back.length; i++) {
        back[i] = 3 * group[back.length - 1 - i] - 11;
      }
      turned.add(0, back);
    }
    GroupRatio after = of(turned);
    assertRelative(before.chance(), after.chance(), 1e-10, "chance");
    assertRelative(9 * before.varianceWithin(), after.varianceWithin(), 1e-12, "within");
    assertRelative(test(groups).upperTail(), before.chance(), 1e-10, "F test");
    double least = 0;
    for (double chance : new double[] {0.01, 0.05, 0.3, 0.5, 0.8, 0.95, 0.99}) {
      double bound = before.bound(chance).getAsDouble();
      assertEquals(bound, after.bound(chance).getAsDouble(), 1e-8 * bound + 1e-9);
      assertTrue(bound >= least, "limits grow with the chance");
      least = bound;
    }
  }

  /** Any sizes from exactly equal means to a ratio beyond all bounds. */
  @Test
  void zeroAndBeyondAllBounds() {
    GroupRatio equal = GroupRatio.of(new double[] {1, 3, 0, 4}, new int[] {5, 5, 9, 9});
    assertEquals(1, equal.chance(), 0.0);
    assertEquals(OptionalDouble.of(0), equal.bound(0.999999));
    GroupRatio far = GroupRatio.of(new double[] {0, 1e-9, 1e9, 1e9 + 1e-6}, new int[] {1, 1, 2, 2});
    assertEquals(OptionalDouble.empty(), far.bound(0.05));
    // F just at its quantile: the smallest ratio that is told from zero is 1e-12
    double[] values = {-0.1, 0.1, 0.1, 0.5, 0.1, 0.1, -0.1};
    assertEquals(
        OptionalDouble.of(0), GroupRatio.of(values, new int[] {1, 2, 3, 3, 3, 3, 5}).bound(0.5));
  }

  /** One-sided 95 % limits of the ratio. */
  @ParameterizedTest
  @ValueSource(ints = {3, 6, 12})
  void limitsHoldTheRatio(int count) {
    for (boolean unequal : new boolean[] {false, true}) {
      for (double truth : new double[] {0.04, 1, 9}) {
        SplittableRandom random = new SplittableRandom(count * 100L + (long) (10 * truth));
        int trials = Coverage.trials(4000, 40_000);
        int lower = 0;
        int upper = 0;
        for (int i = 0; i < trials; i++) {
          List<double[]> groups = new ArrayList<>();
          for (int g = 0; g < count; g++) {
            double effect = Math.sqrt(truth) * Simulation.normal(random);
            double[] group = Simulation.normal(random, unequal ? 1 + 3 * g % 7 : 4);
            groups.add(Arrays.stream(group).map(v -> v + effect).toArray());
          }
          GroupRatio ratio = of(groups);
          lower += ratio.bound(0.05).getAsDouble() <= truth ? 1 : 0;
          upper += ratio.bound(0.95).getAsDouble() >= truth ? 1 : 0;
        }
        String size = count + " groups of " + (unequal ? "1 to 7" : "4") + ", ratio " + truth;
        Coverage.check(GroupRatio.class, "lower limit", size, 0.95, lower, trials, 0.95, 0.95);
        Coverage.check(GroupRatio.class, "upper limit", size, 0.95, upper, trials, 0.95, 0.95);
      }
    }
  }
}
