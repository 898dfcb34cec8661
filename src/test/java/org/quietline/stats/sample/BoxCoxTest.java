package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;

class BoxCoxTest {
  private static final Class<?> SUBJECT = BoxCox.class;
  private static final double[] SOME = {1.2, 3.4, 2.2, 8.1, 4.4, 2.9, 13.5, 1.9};

  @Test
  void agreesWithFortyDigits() {
    Reference file = Reference.read("box-cox");
    assertEquals(6, file.at("/expected/cases").size());
    for (int i = 0; i < 6; i++) {
      String at = "/expected/cases/" + i + "/";
      String name = file.at(at + "name").asText() + ": ";
      JsonNode values = file.at(at + "values");
      double[] x = new double[values.size()];
      Arrays.setAll(x, k -> values.get(k).doubleValue());
      BoxCox got = BoxCox.of(x);
      Interval interval = got.interval(0.95);
      file.check(SUBJECT, name + "power", at + "power", got.power());
      file.check(SUBJECT, name + "lower end", at + "lower95", interval.lower());
      file.check(SUBJECT, name + "upper end", at + "upper95", interval.upper());
      for (int k = 0; k < 7; k++) {
        String row = at + "logLikelihood/" + k;
        double power = file.number(row + "/0");
        file.check(SUBJECT, name + "likelihood of " + power, row + "/1", got.logLikelihood(power));
      }
    }
  }

  @Test
  void isTheHighestPoint() {
    SplittableRandom random = new SplittableRandom(5);
    for (int trial = 0; trial < 50; trial++) {
      double spread = Math.pow(10, -3 + random.nextInt(5));
      double[] x =
          Arrays.stream(Simulation.normal(random, 3 + random.nextInt(20)))
              .map(z -> Math.exp(spread * z))
              .toArray();
      BoxCox got = BoxCox.of(x);
      double height = got.logLikelihood(got.power());
      for (double away : new double[] {1e-3, 0.1, 2}) {
        assertTrue(got.logLikelihood(got.power() + away / spread) < height);
        assertTrue(got.logLikelihood(got.power() - away / spread) < height);
      }
      Interval interval = got.interval(0.9);
      assertTrue(interval.lower() < got.power() && got.power() < interval.upper());
      assertEquals(height - 2.705543454 / 2, got.logLikelihood(interval.lower()), 1e-7);
      assertEquals(height - 2.705543454 / 2, got.logLikelihood(interval.upper()), 1e-7);
    }
  }

  @Test
  void scaleDoesNotMatterAndReciprocalTurnsTheSign() {
    BoxCox got = BoxCox.of(SOME);
    BoxCox scaled = BoxCox.of(Arrays.stream(SOME).map(v -> 1e6 * v).toArray());
    assertRelative(got.power(), scaled.power(), 1e-9, "power");
    assertRelative(got.interval(0.95).upper(), scaled.interval(0.95).upper(), 1e-9, "end");
    BoxCox turned = BoxCox.of(Arrays.stream(SOME).map(v -> 1 / v).toArray());
    assertRelative(-got.power(), turned.power(), 1e-9, "reciprocal");
    double[] cubes = Arrays.stream(SOME).map(v -> v * v * v).toArray();
    assertRelative(got.power() / 3, BoxCox.of(cubes).power(), 1e-9, "cube");
  }

  @Test
  void orderDoesNotMatter() {
    double[] reversed = IntStream.range(0, 8).mapToDouble(i -> SOME[7 - i]).toArray();
    assertRelative(BoxCox.of(SOME).power(), BoxCox.of(reversed).power(), 1e-12, "power");
  }

  @Test
  void likelihoodIsSmoothAtZeroAndFarOut() {
    BoxCox got = BoxCox.of(SOME);
    assertEquals(got.logLikelihood(0), got.logLikelihood(1e-14), 1e-11);
    double far = got.logLikelihood(300) - got.logLikelihood(200);
    double farther = got.logLikelihood(400) - got.logLikelihood(300);
    assertTrue(Double.isFinite(farther) && farther < far && far < 0);
    assertTrue(Double.isFinite(got.logLikelihood(-2000)));
  }

  /** The first of the four that is inside, the most likely or not. */
  @Test
  void plainPowers() {
    double[] even = IntStream.range(0, 25).mapToDouble(i -> 5 + i / 10.0).toArray();
    assertEquals(OptionalDouble.of(1), BoxCox.of(even).plainPower(0.95));
    double[] normal = quantiles(300);
    assertEquals(OptionalDouble.of(0.5), plain(normal, v -> v * v));
    assertEquals(OptionalDouble.of(0), plain(normal, Math::exp));
    assertEquals(OptionalDouble.of(-1), plain(normal, v -> 1 / v));
    assertEquals(OptionalDouble.empty(), plain(normal, v -> Math.pow(v, -0.25)));
  }

  private static OptionalDouble plain(double[] normal, DoubleUnaryOperator function) {
    return BoxCox.of(Arrays.stream(normal).map(function).toArray()).plainPower(0.95);
  }

  /** Values about 4 with deviation 1 that look as normal as can be. */
  private static double[] quantiles(int n) {
    double[] values = new double[n];
    Arrays.setAll(values, i -> 4 + Normal.quantile((i + 0.5) / n));
    return values;
  }

  @Test
  void transformsAndBack() {
    assertEquals(1.5, BoxCox.transformed(2, 2), 1e-15);
    assertEquals(Math.log(2), BoxCox.transformed(2, 0));
    assertEquals(0.5, BoxCox.transformed(2, -1), 1e-15);
    for (double power : new double[] {-2, -0.5, 0, 1e-12, 0.5, 1, 3}) {
      double there = BoxCox.transformed(7.3, power);
      assertRelative(7.3, BoxCox.original(there, power).orElseThrow(), 1e-13, "power " + power);
    }
    assertEquals(OptionalDouble.empty(), BoxCox.original(2, -0.5));
    assertEquals(OptionalDouble.empty(), BoxCox.original(-1, 1));
  }

  /** Values that are close: mpmath with 60 digits on differences of logarithms. */
  @Test
  void valuesThatDifferInTheirLastDigits() {
    BoxCox close = BoxCox.of(1e8 + 1, 1e8 + 2, 1e8 + 3, 1e8 + 5, 1e8 + 9);
    assertRelative(-19198907.924500804, close.power(), 1e-12, "power");
    double next = Math.nextUp(1e10);
    double power = BoxCox.of(1e10, next, 1e10).power();
    // two of three are equal: the power makes the ratio of e^(2u) to e^(−u) the flattest,
    // a number of its own over the logarithm of the step
    double step = (next - 1e10) / 1e10;
    assertRelative(BoxCox.of(1, Math.exp(0.01), 1).power() * 0.01 / step, power, 1e-12, "step");
  }

  @Test
  void transformsSharesOfABase() {
    assertEquals(1.5, BoxCox.transformed(14, 7, 2), 1e-15);
    double there = BoxCox.transformed(9.95, 10, -2000);
    assertRelative(9.95, BoxCox.original(there, 10, -2000).orElseThrow(), 1e-13, "far power");
    assertRelative(3, BoxCox.original(BoxCox.transformed(3, 7, 0), 7, 0).orElseThrow(), 1e-15, "0");
  }
}
