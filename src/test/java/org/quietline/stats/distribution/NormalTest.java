package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.numeric.Quadrature;

/** The normal distribution against 40-digit arithmetic over its whole domain. */
class NormalTest {
  private final Reference reference = Reference.read("normal-tails");

  @Test
  void upperTail() {
    List<double[]> rows = reference.rows("/expected/above", 24);
    for (int i = 0; i < rows.size(); i++) {
      double z = rows.get(i)[0];
      String what = "chance above " + z;
      reference.check(Normal.class, what, "/expected/above/" + i + "/1", Normal.above(z));
      assertEquals(Normal.above(z), Normal.below(-z));
      if (z >= 0) {
        assertEquals(2 * Normal.above(z), Normal.outside(z));
      }
    }
    assertEquals(0, Normal.above(Double.POSITIVE_INFINITY));
    assertEquals(1, Normal.above(Double.NEGATIVE_INFINITY));
    assertEquals(0, Normal.density(1e200));
  }

  @Test
  void valueExceededWithAChance() {
    List<double[]> rows = reference.rows("/expected/exceededWith", 22);
    for (int i = 0; i < rows.size(); i++) {
      double p = rows.get(i)[0];
      String at = "/expected/exceededWith/" + i + "/1";
      reference.check(Normal.class, "value exceeded with " + p, at, Normal.exceededWith(p));
      assertEquals(-Normal.exceededWith(p), Normal.quantile(p));
      double z = rows.get(i)[1];
      double rounding = 2e-16 / Normal.density(z) + 1e-15 * z;
      assertEquals(z, -Normal.exceededWith(1 - p), rounding, "mirrored " + p);
    }
    assertEquals(0, Normal.exceededWith(0.5));
  }

  @Test
  void logarithmOfTheLowerTail() {
    List<double[]> rows = reference.rows("/expected/logBelow", 14);
    for (int i = 0; i < rows.size(); i++) {
      double z = rows.get(i)[0];
      String at = "/expected/logBelow/" + i + "/1";
      reference.check(Normal.class, "logarithm of the chance below " + z, at, Normal.logBelow(z));
    }
  }

  @Test
  void betweenTwoValues() {
    List<double[]> rows = reference.rows("/expected/between", 9);
    for (int i = 0; i < rows.size(); i++) {
      double[] r = rows.get(i);
      double got = Normal.between(r[0], r[1]);
      String what = "chance between " + r[0] + " and " + r[1];
      double allowed = 5e-15 * r[2];
      reference.check(Normal.class, what, "/expected/between/" + i + "/2", got, allowed);
      assertRelative(r[2], Normal.between(-r[1], -r[0]), 5e-15, what + ", mirrored");
    }
    assertEquals(0, Normal.between(1, 1));
  }

  /** The joint of the two ways to find the chance between two values. */
  @Test
  void bothWaysAgreeWhereTheyMeet() {
    for (double low : new double[] {-3, -0.4, 0, 1, 2.5}) {
      double wide = Normal.between(low, low + 0.8);
      double narrow = Normal.between(low, low + 0.4) + Normal.between(low + 0.4, low + 0.8);
      assertRelative(narrow, wide, 2e-15, "from " + low);
    }
  }

  @Test
  void densityIsTheSlopeOfTheTail() {
    double integral = Quadrature.integrate(Normal::density, -9, -6, -3, 0, 3, 6, 9);
    Evidence.own(Normal.class, "whole of the density", "Gauss-Legendre panels", 1, integral, 1e-15);
    assertEquals(1 / Math.sqrt(2 * Math.PI), Normal.density(0), 1e-16);
  }

  /** Expected: differences of complementary error functions, mpmath with 50 digits. */
  @Test
  void betweenTwoValuesInOneTail() {
    double[][] rows = {
      {8, 8.79, 6.213482575914237e-16},
      {10, 10.79, 7.617934076425459e-24},
      {15, 15.79, 3.670947970316281e-51},
      {20, 20.79, 2.7536238520519015e-89},
      {36, 36.79, 4.1826240657959493e-284},
      {20, 20.05, 1.7443984965185033e-89},
      {20, 20.25, 2.735862119956738e-89},
      {5, 5.5, 2.6766200941330616e-07},
    };
    for (double[] r : rows) {
      assertRelative(r[2], Normal.between(r[0], r[1]), 5e-14, "from " + r[0]);
      assertRelative(r[2], Normal.between(-r[1], -r[0]), 5e-14, "to " + -r[0]);
    }
  }

  @Test
  void betweenInfinities() {
    double infinite = Double.POSITIVE_INFINITY;
    assertEquals(0.5, Normal.between(-infinite, 0), 1e-16);
    assertEquals(1, Normal.between(-infinite, infinite));
    assertEquals(Normal.above(2), Normal.between(2, infinite));
    assertEquals(Normal.below(-2), Normal.between(-infinite, -2));
    assertEquals(0, Normal.between(infinite, infinite));
  }
}
