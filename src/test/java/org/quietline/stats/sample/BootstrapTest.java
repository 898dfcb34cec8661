package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;

class BootstrapTest {
  private static final Class<?> SUBJECT = Bootstrap.class;
  private static final double[] SOME = {4.1, 5.6, 3.2, 9.9, 6.0, 5.1, 4.4, 7.0, 3.9, 6.6};

  private static double deviation(double[] values) {
    return Summary.of(values).deviation();
  }

  /** The ends vary by chance with a deviation of about 0.4 % of the width at 100 000 samples. */
  @Test
  void agreesWithTheCompleteBootstrap() {
    Reference file = Reference.read("bootstrap-complete");
    List<ToDoubleFunction<double[]>> statistics =
        List.of(Summary::meanOf, BootstrapTest::deviation, Summary::meanOf);
    int[] sizes = {5, 6, 7};
    for (int i = 0; i < 3; i++) {
      String at = "/expected/cases/" + i + "/";
      String name = file.at(at + "name").asText() + ": ";
      double[] x = file.numbers(at + "values", sizes[i]);
      Bootstrap got = Bootstrap.of(x, statistics.get(i), 100_000, 12);
      file.check(SUBJECT, name + "statistic", at + "statistic", got.statistic());
      file.check(SUBJECT, name + "acceleration", at + "acceleration", got.acceleration());
      file.check(SUBJECT, name + "share below", at + "shareBelow", got.shareBelow(), 0.007);
      Interval interval = got.interval(0.95).orElseThrow();
      double chance = 0.025 * (file.number(at + "upper95") - file.number(at + "lower95"));
      file.check(SUBJECT, name + "lower end", at + "lower95", interval.lower(), chance);
      file.check(SUBJECT, name + "upper end", at + "upper95", interval.upper(), chance);
    }
  }

  @Test
  void sameSeedSameInterval() {
    Optional<Interval> first = Bootstrap.of(SOME, Summary::meanOf, 500, 3).interval(0.9);
    assertEquals(first, Bootstrap.of(SOME, Summary::meanOf, 500, 3).interval(0.9));
    assertNotEquals(first, Bootstrap.of(SOME, Summary::meanOf, 500, 4).interval(0.9));
  }

  /** A growing function of the statistic has the same function of the interval. */
  @Test
  void followsScaleShiftAndAnyGrowingFunction() {
    Bootstrap mean = Bootstrap.of(SOME, Summary::meanOf, 999, 3);
    Interval one = mean.interval(0.9).orElseThrow();
    double[] moved = Arrays.stream(SOME).map(v -> 2 * v + 8).toArray();
    Interval other = Bootstrap.of(moved, Summary::meanOf, 999, 3).interval(0.9).orElseThrow();
    assertRelative(2 * one.lower() + 8, other.lower(), 1e-13, "lower");
    assertRelative(2 * one.upper() + 8, other.upper(), 1e-13, "upper");
    double[] mirrored = Arrays.stream(SOME).map(v -> -v).toArray();
    Interval turned = Bootstrap.of(mirrored, Summary::meanOf, 999, 3).interval(0.9).orElseThrow();
    assertRelative(-one.upper(), turned.lower(), 1e-12, "mirrored");
  }

  @Test
  void higherLevelIsWider() {
    Bootstrap mean = Bootstrap.of(SOME, Summary::meanOf, 2000, 3);
    Interval narrow = mean.interval(0.8).orElseThrow();
    Interval wide = mean.interval(0.99).orElseThrow();
    assertTrue(wide.lower() < narrow.lower() && narrow.upper() < wide.upper());
    assertTrue(narrow.contains(mean.statistic()));
  }

  @Test
  void noIntervalWithoutSpreadOrOnOneSide() {
    assertEquals(
        Optional.empty(),
        Bootstrap.of(new double[] {2, 2, 2}, Summary::meanOf, 100, 1).interval(0.95));
    Bootstrap same = Bootstrap.of(SOME, v -> 7, 100, 1);
    assertEquals(Optional.empty(), same.interval(0.95));
    assertEquals(0, same.acceleration());
    assertEquals(0.5, same.shareBelow());
    Bootstrap beyond = Bootstrap.of(SOME, v -> Arrays.equals(v, SOME) ? 99 : v[0], 100, 1);
    assertEquals(1, beyond.shareBelow());
    assertEquals(Optional.empty(), beyond.interval(0.95));
    Bootstrap under = Bootstrap.of(SOME, v -> Arrays.equals(v, SOME) ? -99 : v[0], 100, 1);
    assertEquals(0, under.shareBelow());
    assertEquals(Optional.empty(), under.interval(0.95));
  }

  @Test
  void endMayBeInfinite() {
    double[] three = {3, 1, 2};
    Bootstrap got =
        Bootstrap.of(three, v -> deviation(v) == 0 ? Double.POSITIVE_INFINITY : v[0], 1000, 5);
    Interval interval = got.interval(0.95).orElseThrow();
    assertEquals(Double.POSITIVE_INFINITY, interval.upper());
    assertEquals(1, interval.lower());
  }

  /** Past the pole of the correction the end is the outermost sample, not one of the other side. */
  @Test
  void extremeLevelEndsAtTheOutermostSample() {
    double[] values = new double[60];
    Arrays.setAll(values, i -> i == 0 ? 1000 : i / 1000.0);
    Bootstrap means = Bootstrap.of(values, Summary::meanOf, 1000, 1);
    Interval wide = means.interval(1 - 1e-9).orElseThrow();
    Interval narrow = means.interval(0.9).orElseThrow();
    assertTrue(wide.lower() <= narrow.lower() && narrow.upper() <= wide.upper());
    // 1000 is in a sample a whole number of times
    double times = wide.upper() * 60 / 1000;
    assertEquals(Math.rint(times), times, 0.01);
    assertTrue(times > 3.5);
  }
}
