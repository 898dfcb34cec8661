package org.quietline.stats.capability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.capability.PercentileIndex.Known;
import org.quietline.stats.capability.PercentileIndex.Shape;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.sample.Summary;

class PercentileIndexTest {
  private static final Class<?> SUBJECT = PercentileIndex.class;
  private static final OptionalDouble NONE = OptionalDouble.empty();
  private final Reference file = Reference.read("percentile-index");

  private OptionalDouble limit(String name) {
    return OptionalDouble.of(file.number("/data/" + name));
  }

  private void points(String shape, Known got) {
    String at = "/expected/" + shape + "/";
    file.check(SUBJECT, shape + ": low point", at + "low", got.lowPoint());
    file.check(SUBJECT, shape + ": median", at + "median", got.median());
    file.check(SUBJECT, shape + ": high point", at + "high", got.highPoint());
  }

  @Test
  void lognormal() {
    double[] values = file.numbers("/data/skewed", 16);
    Known above = (Known) PercentileIndex.of(values, Shape.LOGNORMAL, NONE, limit("upper"));
    points("lognormal", above);
    String at = "/expected/lognormal/";
    file.check(SUBJECT, "lognormal: upper", at + "upperIndex", above.index());
    Known below = (Known) PercentileIndex.of(values, Shape.LOGNORMAL, limit("lower"), NONE);
    file.check(SUBJECT, "lognormal: lower", at + "lowerIndex", below.index());
    Known both =
        (Known) PercentileIndex.of(values, Shape.LOGNORMAL, limit("lower"), limit("upper"));
    assertEquals(Math.min(above.index(), below.index()), both.index());
    // the plain power of these values is -1 to 0.5, of which 0.5 comes first
    assertTrue(PercentileIndex.of(values, Shape.POWER, NONE, limit("upper")) instanceof Known);
  }

  @Test
  void power() {
    double[] values = file.numbers("/data/left", 60);
    Known got = (Known) PercentileIndex.of(values, Shape.POWER, limit("leftLower"), NONE);
    points("power", got);
    file.check(SUBJECT, "power: lower", "/expected/power/lowerIndex", got.index());
  }

  @Test
  void plainPowerIsTaken() {
    double[] values =
        IntStream.range(0, 30).mapToDouble(i -> 50 + Normal.quantile((i + 0.5) / 30)).toArray();
    Known got = (Known) PercentileIndex.of(values, Shape.POWER, NONE, OptionalDouble.of(60));
    PerformanceIndex normal = PerformanceIndex.upper(Summary.of(values), 60);
    assertRelative(normal.index(), got.index(), 1e-9, "index of the values as they are");
  }

  @Test
  void empirical() {
    double[] values = file.numbers("/data/gammaValues", 3000);
    Known got = (Known) PercentileIndex.of(values, Shape.EMPIRICAL, NONE, limit("gammaUpper"));
    points("empirical", got);
    file.check(SUBJECT, "empirical: upper", "/expected/empirical/upperIndex", got.index());
  }

  @Test
  void tooFewToKnowTheFarPoints() {
    double[] values = IntStream.range(0, 2217).mapToDouble(i -> i).toArray();
    assertEquals(
        new PercentileIndex.TooFew(2217, 2218),
        PercentileIndex.of(values, Shape.EMPIRICAL, NONE, OptionalDouble.of(5000)));
    // 2218 is the first number of which one value lies beyond with 95 %
    assertTrue(Math.pow(1 - Normal.above(3), 2218) <= 0.05);
    assertTrue(Math.pow(1 - Normal.above(3), 2217) > 0.05);
    assertEquals(
        Optional.empty(),
        PercentileIndex.interval(
            values, Shape.EMPIRICAL, NONE, OptionalDouble.of(5000), 0.95, 100, 1));
  }

  @Test
  void equalValuesHaveNoSpread() {
    double[] values = new double[3000];
    values[0] = 1;
    assertEquals(
        new PercentileIndex.NoSpread(0),
        PercentileIndex.of(values, Shape.EMPIRICAL, NONE, OptionalDouble.of(2)));
  }

  /** The power is below −1 and three deviations reach past its bound. */
  @Test
  void boundedPowerHasNoHighPoint() {
    assertEquals(
        new PercentileIndex.NoHighPoint(),
        PercentileIndex.of(heavy(), Shape.POWER, NONE, OptionalDouble.of(1e6)));
    Known below = (Known) PercentileIndex.of(heavy(), Shape.POWER, OptionalDouble.of(0.01), NONE);
    assertEquals(Double.POSITIVE_INFINITY, below.highPoint());
  }

  private static double[] heavy() {
    return IntStream.range(0, 60)
        .mapToDouble(i -> 1 / (2.6 + Normal.quantile((i + 0.5) / 60)))
        .toArray();
  }

  @Test
  void lowPointThatDoesNotExistIsZero() {
    double[] values = IntStream.range(0, 60).mapToDouble(i -> 0.02 + i / 10.0).toArray();
    Known got = (Known) PercentileIndex.of(values, Shape.POWER, OptionalDouble.of(0), NONE);
    assertEquals(0, got.lowPoint());
    assertEquals(1, got.index());
  }

  @Test
  void medianBeyondTheLimitIsNegative() {
    double[] values = file.numbers("/data/skewed", 16);
    Known got = (Known) PercentileIndex.of(values, Shape.LOGNORMAL, NONE, OptionalDouble.of(10));
    assertTrue(got.index() < 0);
  }

  @Test
  void bootstrapInterval() {
    double[] values = file.numbers("/data/skewed", 16);
    Interval got =
        PercentileIndex.interval(values, Shape.LOGNORMAL, NONE, limit("upper"), 0.95, 2000, 5)
            .orElseThrow();
    Known index = (Known) PercentileIndex.of(values, Shape.LOGNORMAL, NONE, limit("upper"));
    assertTrue(got.contains(index.index()));
    Interval scaled =
        PercentileIndex.interval(
                Arrays.stream(values).map(v -> 10 * v).toArray(),
                Shape.LOGNORMAL,
                NONE,
                OptionalDouble.of(600),
                0.95,
                2000,
                5)
            .orElseThrow();
    assertRelative(got.lower(), scaled.lower(), 1e-9, "scale");
    assertRelative(got.upper(), scaled.upper(), 1e-9, "scale");
    assertTrue(
        PercentileIndex.interval(
                new double[] {1, 2, 3.5, 7}, Shape.POWER, NONE, OptionalDouble.of(60), 0.9, 200, 1)
            .isPresent(),
        "samples drawn may be all equal");
  }

  /** The index is a ratio of lengths, so the unit cannot matter; 1.58295937 was found elsewhere. */
  @Test
  void unitDoesNotMatterToThePower() {
    double[] values = {
      5.1, 5.3, 5.2, 5.6, 6.9, 5.2, 5.4, 8.1, 5.5, 5.15, 5.25, 5.8, 6.1, 5.35, 5.2, 5.3, 7.2, 5.45
    };
    for (double unit : new double[] {1e-100, 1e-3, 0.2, 1, 10, 20, 1e6, 1e100}) {
      double[] scaled = Arrays.stream(values).map(v -> unit * v).toArray();
      Known got =
          (Known) PercentileIndex.of(scaled, Shape.POWER, OptionalDouble.of(unit * 4.5), NONE);
      assertEquals(1.58295937, got.index(), 5e-9, "unit " + unit);
    }
    double[] bounded = {
      9.91, 9.94, 9.92, 10.05, 10.25, 9.91, 9.94, 9.93, 9.93, 10.0, 10.11, 9.96, 9.96
    };
    for (double unit : new double[] {0.1, 0.2, 0.5, 1, 1e4}) {
      double[] scaled = Arrays.stream(bounded).map(v -> unit * v).toArray();
      assertEquals(
          new PercentileIndex.NoHighPoint(),
          PercentileIndex.of(scaled, Shape.POWER, NONE, OptionalDouble.of(unit * 10.6)));
    }
  }

  @Test
  void intervalOfAPower() {
    for (double[] values :
        new double[][] {{17, 2, 14, 8, 11}, {10.14, 9.99, 9.95, 10.15, 10.07, 9.88}}) {
      for (double unit : new double[] {1, 1e5}) {
        double[] scaled = Arrays.stream(values).map(v -> unit * v).toArray();
        OptionalDouble lower = OptionalDouble.of(unit);
        Known index = (Known) PercentileIndex.of(scaled, Shape.POWER, lower, NONE);
        Interval got =
            PercentileIndex.interval(scaled, Shape.POWER, lower, NONE, 0.9, 300, 1).orElseThrow();
        assertTrue(got.contains(index.index()));
      }
    }
    // without one of three values two are left, which fit every power
    double[] three = {1, 2, 4};
    OptionalDouble upper = OptionalDouble.of(50);
    assertTrue(PercentileIndex.of(three, Shape.POWER, NONE, upper) instanceof Known);
    assertEquals(
        Optional.empty(), PercentileIndex.interval(three, Shape.POWER, NONE, upper, 0.9, 200, 1));
  }
}
