package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Simulation.assertShare;
import static org.quietline.stats.Simulation.normal;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.assess.ReportedValue.Path;
import org.quietline.bench.Method;
import org.quietline.bench.RepeatPolicy;
import org.quietline.bench.Result.Pair;
import org.quietline.stats.distribution.StudentizedRange;

/** Normal readings in control, by simulation with fixed seeds: how often the rule asks for more. */
class ReportedValuesSimulationTest {
  private static final LocalDateTime BEGIN = LocalDateTime.of(2026, 1, 5, 9, 0);

  private static Method method(RepeatPolicy policy) {
    TestBench bench = new TestBench();
    bench.repeatPolicy = policy;
    return bench.bench().settings().methods().get(0);
  }

  private final Method oneMore = method(RepeatPolicy.ONE_MORE);
  private final Method twoMore = method(RepeatPolicy.TWO_MORE);

  private static double[] readings(SplittableRandom random, int n) {
    return IntStream.range(0, n).mapToDouble(i -> 100 + normal(random)).toArray();
  }

  private static PriorPairs before(SplittableRandom random, int pairs) {
    PriorPairs before = new PriorPairs();
    before.moveTo(BEGIN);
    for (int i = 0; i < pairs; i++) {
      double[] pair = readings(random, 2);
      before.add(new Pair(pair[0], pair[1]));
    }
    before.moveTo(BEGIN.plusDays(1));
    return before;
  }

  private ReportedValue value(Method method, PriorPairs before, double[] readings, int taken) {
    List<BigDecimal> numbers =
        IntStream.range(0, taken).mapToObj(i -> BigDecimal.valueOf(readings[i])).toList();
    return RepeatRule.value(method, before, numbers);
  }

  @ParameterizedTest
  @ValueSource(ints = {8, 12, 20})
  void one_pair_in_twenty_asks_for_another_reading_with_few_pairs_behind(int pairs) {
    SplittableRandom random = new SplittableRandom(20261126 + pairs);
    int asked = 0;
    int trials = 20_000;
    for (int i = 0; i < trials; i++) {
      asked += value(oneMore, before(random, pairs), readings(random, 2), 2).wantsReading() ? 1 : 0;
    }
    assertShare(0.05, asked, trials);
  }

  @Test
  void the_factor_of_a_known_deviation_would_ask_for_more_than_one_in_twenty_of_eight() {
    SplittableRandom random = new SplittableRandom(8);
    int asked = 0;
    for (int i = 0; i < 20_000; i++) {
      ReportedValue found = value(oneMore, before(random, 8), readings(random, 2), 2);
      double known = 2.7718 * found.comparisons().get(0).deviation();
      asked += found.comparisons().get(0).range() > known ? 1 : 0;
    }
    // Student's t with 8 degrees of freedom beyond 1.96 either way
    assertShare(0.0856, asked, 20_000);
  }

  @Test
  void one_in_twenty_asks_with_a_settled_deviation() {
    SplittableRandom random = new SplittableRandom(400);
    int asked = 0;
    for (int bench = 0; bench < 100; bench++) {
      PriorPairs before = before(random, 400);
      for (int i = 0; i < 200; i++) {
        asked += value(oneMore, before, readings(random, 2), 2).wantsReading() ? 1 : 0;
      }
    }
    // a bench's own limit moves its share, so that the trials are a little less than independent
    assertEquals(0.05, asked / 20_000.0, 0.008);
  }

  /** Pairs judged one after the other, each then behind the next: the binomial chances hold. */
  @Test
  void pairs_beyond_limits_from_the_pairs_before_them_are_independent() {
    SplittableRandom random = new SplittableRandom(20);
    int trials = 10_000;
    int[] atLeast = new int[6];
    for (int trial = 0; trial < trials; trial++) {
      PriorPairs before = before(random, 8);
      int beyond = 0;
      for (int i = 0; i < 20; i++) {
        double[] pair = readings(random, 2);
        beyond += value(oneMore, before, pair, 2).disagrees() ? 1 : 0;
        before.add(new Pair(pair[0], pair[1]));
        before.moveTo(BEGIN.plusDays(2 + i));
      }
      for (int k = 0; k <= Math.min(5, beyond); k++) {
        atLeast[k]++;
      }
    }
    double[] binomial = {1, 0.6415, 0.2642, 0.0755, 0.0159, 0.0026};
    for (int k = 1; k <= 5; k++) {
      assertShare(binomial[k], atLeast[k], trials);
    }
  }

  @Test
  void a_range_of_three_or_four_is_within_its_critical_range_in_95_of_100() {
    SplittableRandom random = new SplittableRandom(34);
    int[] beyond = new int[2];
    int trials = 4000;
    for (int i = 0; i < trials; i++) {
      double scale = before(random, 10).at(100).size();
      beyond[0] += range(readings(random, 3)) > 3.877 * scale ? 1 : 0;
      beyond[1] += range(readings(random, 4)) > 4.327 * scale ? 1 : 0;
    }
    // 5 % points of the studentized range with 10 degrees of freedom: 3.877 and 4.327 in print
    assertShare(0.05, beyond[0], trials);
    assertShare(0.05, beyond[1], trials);
    PriorPairs ten = before(random, 10);
    assertEquals(
        3.877, CriticalRanges.estimated(3, 1, ten.at(100)).limit() / ten.at(100).size(), 0.0006);
    assertEquals(
        4.327, CriticalRanges.estimated(4, 1, ten.at(100)).limit() / ten.at(100).size(), 0.0006);
  }

  /** Read between the table's degrees of freedom: never too narrow, and hardly too wide. */
  @ParameterizedTest
  @ValueSource(ints = {7, 11, 17, 25, 42, 85, 200, 1000})
  void factors_between_the_table_are_those_of_the_studentized_range(int freedom) {
    for (int readings = 3; readings <= 5; readings++) {
      PriorPairs.Deviation one = new PriorPairs.Deviation(1, freedom + 0.3);
      double exact = new StudentizedRange(readings, freedom).exceededWith(0.05);
      double got = CriticalRanges.estimated(readings, 1, one).limit();
      assertTrue(got >= exact * (1 - 1e-9) && got <= exact * 1.0002, readings + ": " + got);
    }
  }

  private static double range(double[] values) {
    double least = values[0];
    double most = values[0];
    for (double value : values) {
      least = Math.min(least, value);
      most = Math.max(most, value);
    }
    return most - least;
  }

  /**
   * Every further reading is taken where it is asked for. Values are unbiased; pairs made of the
   * two closest of three make the deviation look smaller than it is.
   */
  @Test
  void values_are_unbiased_and_the_two_closest_of_three_would_flatter() {
    SplittableRandom random = new SplittableRandom(3);
    int trials = 40_000;
    double[] sums = new double[2];
    double pairs = 0;
    double closest = 0;
    int[] further = new int[2];
    PriorPairs before = before(random, 400);
    for (int i = 0; i < trials; i++) {
      double[] taken = readings(random, 4);
      double pair = taken[0] - taken[1];
      ReportedValue first = value(oneMore, before, taken, 2);
      boolean more = first.wantsReading();
      ReportedValue one = more ? value(oneMore, before, taken, 3) : first;
      ReportedValue two = more ? value(twoMore, before, taken, 4) : first;
      sums[0] += one.value().getAsDouble() - 100;
      sums[1] += two.value().getAsDouble() - 100;
      further[0] += one.path() == Path.THREE_AGREE || one.path() == Path.THREE_MEDIAN ? 1 : 0;
      further[1] += two.path() == Path.FOUR_AGREE || two.path() == Path.FOUR_MEDIAN ? 1 : 0;
      pairs += pair * pair;
      double least =
          Math.min(
              Math.abs(pair),
              Math.min(Math.abs(taken[0] - taken[2]), Math.abs(taken[1] - taken[2])));
      closest += more ? least * least : pair * pair;
    }
    double error = 1 / Math.sqrt(2.0 * trials);
    assertEquals(0, sums[0] / trials, 4 * error);
    assertEquals(0, sums[1] / trials, 4 * error);
    assertEquals(0.05, further[0] / (double) trials, 0.02);
    assertEquals(further[0], further[1]);
    assertEquals(1, Math.sqrt(pairs / (2 * trials)), 0.015);
    double flattered = Math.sqrt(closest / (2 * trials));
    assertTrue(flattered > 0.84 && flattered < 0.88, "deviation of the closest: " + flattered);
  }

  /** Levels over a factor of 20 and a deviation in proportion: one in twenty at each end. */
  @Test
  void about_one_in_twenty_asks_at_low_and_high_levels_alike() {
    SplittableRandom random = new SplittableRandom(25);
    int trials = 4000;
    int[] asked = new int[2];
    for (int trial = 0; trial < trials; trial++) {
      PriorPairs before = new PriorPairs();
      before.moveTo(BEGIN);
      for (int i = 0; i < 25; i++) {
        double level = Math.pow(20, random.nextDouble());
        before.add(new Pair(around(level, random), around(level, random)));
      }
      before.moveTo(BEGIN.plusDays(1));
      for (int end = 0; end < 2; end++) {
        double level = end == 0 ? 1 : 20;
        double[] pair = {around(level, random), around(level, random)};
        asked[end] += value(oneMore, before, pair, 2).wantsReading() ? 1 : 0;
      }
    }
    assertEquals(0.05, asked[0] / (double) trials, 0.02);
    assertEquals(0.05, asked[1] / (double) trials, 0.02);
  }

  private static double around(double level, SplittableRandom random) {
    return level * (1 + 0.02 * normal(random));
  }
}
