package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Interval;

class StudentMixtureTest {
  private static final double[] WEIGHTS = {3, 0.5, 1.5};
  private static final double[] MEANS = {-1, 2, 0.3};
  private static final double[] SCALES = {0.5, 2, 1};

  private static double above(double x, double df) {
    TDistribution t = new TDistribution(df);
    double sum = 0;
    for (int k = 0; k < WEIGHTS.length; k++) {
      sum += WEIGHTS[k] / 5 * t.cumulativeProbability((MEANS[k] - x) / SCALES[k]);
    }
    return sum;
  }

  private static double width(Interval interval) {
    return interval.upper() - interval.lower();
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 2, 3, 5, 11, 28, 57, 400})
  void chancesAreTheWeightedSumOfThoseOfStudentsT(double df) {
    StudentMixture mixture = StudentMixture.of(WEIGHTS, MEANS, SCALES, df, 0);
    for (double x = -8; x <= 8; x += 0.5) {
      assertEquals(above(x, df), mixture.above(x), 2e-8, "above " + x);
      double beyond = above(Math.abs(x), df) + 1 - above(-Math.abs(x), df);
      assertEquals(beyond, mixture.chanceBeyond(Math.abs(x)), 4e-8, "beyond " + x);
    }
    Evidence.own(
        StudentMixture.class,
        "above 1 with " + df + " degrees of freedom",
        "weighted sum of Commons Math's t",
        above(1, df),
        mixture.above(1),
        1e-6);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 3, 28})
  void whatIsExceededIsExceededWithTheChance(double df) {
    for (double known : new double[] {0, 0.7}) {
      StudentMixture mixture = StudentMixture.of(WEIGHTS, MEANS, SCALES, df, known);
      for (double chance : new double[] {1e-4, 0.025, 0.3, 0.5, 0.8, 0.999}) {
        assertEquals(chance, mixture.above(mixture.exceededWith(chance)), 1e-12);
      }
      assertTrue(width(mixture.interval(0.8)) < width(mixture.interval(0.95)));
      for (double level : new double[] {0.5, 0.8, 0.95}) {
        double near = 2e-3 * width(mixture.interval(0.68));
        assertEquals(mixture.interval(level).upper(), mixture.sketched(level).upper(), near);
        assertEquals(mixture.interval(level).lower(), mixture.sketched(level).lower(), near);
      }
    }
  }

  /** A known normal error is added to each draw. */
  @Test
  void theKnownErrorAddsAsItIs() {
    StudentMixture mixture = StudentMixture.of(WEIGHTS, MEANS, SCALES, 4, 1.2);
    Random random = new Random(7);
    int trials = 400_000;
    int above = 0;
    for (int i = 0; i < trials; i++) {
      double pick = 5 * random.nextDouble();
      int k = pick < 3 ? 0 : pick < 3.5 ? 1 : 2;
      double squares = 0;
      for (int j = 0; j < 4; j++) {
        double z = random.nextGaussian();
        squares += z * z;
      }
      double t = random.nextGaussian() / Math.sqrt(squares / 4);
      above += MEANS[k] + SCALES[k] * t + 1.2 * random.nextGaussian() > 1.5 ? 1 : 0;
    }
    double error = Math.sqrt(0.25 / trials);
    assertEquals(above / (double) trials, mixture.above(1.5), 4 * error);
  }

  @Test
  void oneComponentIsStudentsTItself() {
    StudentMixture one =
        StudentMixture.of(new double[] {2}, new double[] {1}, new double[] {3}, 5, 0);
    TDistribution t = new TDistribution(5);
    assertEquals(1 + 3 * t.inverseCumulativeProbability(0.975), one.exceededWith(0.025), 1e-9);
    assertEquals(1, one.mean(), 0);
    assertEquals(5, one.degreesOfFreedom(), 0);
  }

  @Test
  void weightsScaleAndOrderDoNotMatter() {
    StudentMixture first = StudentMixture.of(WEIGHTS, MEANS, SCALES, 6, 0.1);
    StudentMixture second =
        StudentMixture.of(
            new double[] {0.3, 0.6, 0.1},
            new double[] {0.3, -1, 2},
            new double[] {1, 0.5, 2},
            6,
            0.1);
    for (double x = -4; x < 5; x++) {
      assertEquals(first.above(x), second.above(x), 1e-14);
    }
    assertEquals(first.mean(), second.mean(), 1e-15);
  }

  @Test
  void wrongWordsOfACallerAreNamed() {
    double[] one = {1};
    double[] none = {0};
    assertThrows(
        IllegalArgumentException.class, () -> StudentMixture.of(one, new double[2], one, 3, 0));
    assertThrows(IllegalArgumentException.class, () -> StudentMixture.of(none, one, one, 3, 0));
    assertThrows(IllegalArgumentException.class, () -> StudentMixture.of(one, one, one, 0, 0));
    assertThrows(IllegalArgumentException.class, () -> StudentMixture.of(one, one, one, 3, -1));
    StudentMixture mixture = StudentMixture.of(one, one, one, 3, 0);
    assertThrows(IllegalArgumentException.class, () -> mixture.above(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> mixture.chanceBeyond(-1));
    assertThrows(IllegalArgumentException.class, () -> mixture.exceededWith(0));
    assertThrows(IllegalArgumentException.class, () -> mixture.interval(1));
  }
}
