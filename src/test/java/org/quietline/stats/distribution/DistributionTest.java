package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import java.util.List;
import org.apache.commons.math3.special.Gamma;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;

/** Normal, Student's t and chi-square against mpmath at 40 digits. */
class DistributionTest {
  private final Reference reference = Reference.read("quantiles");

  @Test
  void normalQuantiles() {
    List<double[]> rows = reference.rows("/expected/normal", 10);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      String at = "/expected/normal/" + i + "/1";
      double allowed = reference.tolerance() * Math.max(1, Math.abs(row[1]));
      double got = Normal.quantile(row[0]);
      reference.check(Normal.class, "quantile of " + row[0], at, got, allowed);
      assertEquals(row[0], Normal.below(row[1]), 1e-15, "below " + row[1]);
    }
  }

  @Test
  void studentQuantilesAndTails() {
    List<double[]> rows = reference.rows("/expected/student", 78);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      String what = "t exceeded with 1 - " + row[1] + ", df " + row[0];
      // 1 - p is rounded in a double: its error over the density is part of the allowance
      double allowance = reference.tolerance() + 2e-16 / (1 - row[1]);
      double got = Student.exceededWith(1 - row[1], row[0]);
      if (i % 4 == 2) {
        String at = "/expected/student/" + i + "/2";
        reference.check(Student.class, what, at, got, allowance * row[2]);
      }
      assertRelative(row[2], got, allowance, what);
      assertRelative(1 - row[1], Student.above(row[2], row[0]), 1e-11 + allowance, what);
      assertEquals(row[1], Student.above(-row[2], row[0]), 1e-13, what);
    }
  }

  @Test
  void normalFarOut() {
    for (double chance : new double[] {1e-10, 1e-20, 1e-100, 1e-300}) {
      assertRelative(chance, Normal.above(Normal.exceededWith(chance)), 1e-11, "" + chance);
    }
    // computed with mpmath 1.3.0: findroot of log(ncdf(-z)) + 20 log(10)
    assertRelative(9.26234008979841, Normal.exceededWith(1e-20), 1e-14, "1e-20");
    assertEquals(Normal.exceededWith(1e-300), Normal.exceededWith(0));
  }

  @Test
  void studentWithInfiniteDegreesOfFreedomIsNormal() {
    assertEquals(Normal.above(1.3), Student.above(1.3, Double.POSITIVE_INFINITY));
    assertEquals(
        Normal.exceededWith(0.01), Student.exceededWith(0.01, Double.POSITIVE_INFINITY), 1e-15);
    assertEquals(0, Student.above(Double.POSITIVE_INFINITY, 1e6));
    assertEquals(0, Student.above(1e200, 3));
    assertEquals(1, Student.above(-1e200, 3));
    assertEquals(0.5, Student.above(0, 4));
    assertEquals(0, Student.exceededWith(0.5, 4), 1e-15);
  }

  @Test
  void studentFarOut() {
    // Cauchy: the chance above t is 1/(pi t) far out; two degrees of freedom: 1/(2 t^2)
    assertRelative(1e20 / Math.PI, Student.exceededWith(1e-20, 1), 1e-12, "Cauchy");
    assertRelative(Math.sqrt(0.5e12), Student.exceededWith(1e-12, 2), 1e-11, "two");
    assertRelative(1e100 / Math.PI, Student.exceededWith(1e-300, 1), 1e-12, "at the end");
    assertRelative(1e-60, Student.above(Student.exceededWith(1e-60, 40), 40), 1e-11, "back");
  }

  @Test
  void studentJoinsTheNormalSmoothly() {
    for (double t : new double[] {0.1, 1, 2, 3, 6}) {
      assertRelative(Student.above(t, 1e4), Student.above(t, 1e4 + 1e-9), 1e-11, "at " + t);
      assertRelative(Normal.above(t), Student.above(t, 1e15), 1e-11, "at " + t);
    }
  }

  @Test
  void chiSquareQuantiles() {
    List<double[]> rows = reference.rows("/expected/chiSquare", 63);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      double got = ChiSquare.quantile(row[1], row[0]);
      String what = "quantile of " + row[1] + ", df " + row[0];
      if (i % 4 == 0) {
        // above one half 1 - p is rounded, as above
        double allowed = 1e-11 * row[2];
        reference.check(ChiSquare.class, what, "/expected/chiSquare/" + i + "/2", got, allowed);
      }
      assertRelative(row[2], got, 1e-11, what);
      assertEquals(1 - row[1], ChiSquare.above(row[2], row[0]), 1e-12, "above " + row[2]);
    }
  }

  @Test
  void logarithmOfTheNormalTailIsFiniteFarOut() {
    // asymptotic values computed with mpmath 1.3.0: log(ncdf(-x))
    assertRelative(-804.608442013754, Normal.logBelow(-40), 1e-14, "-40");
    assertRelative(-5005.52420869421, Normal.logBelow(-100), 1e-14, "-100");
    assertRelative(Math.log(Normal.below(-36.9)), Normal.logBelow(-36.9), 1e-15, "-36.9");
    assertEquals(-Normal.above(9), Normal.logBelow(9), 1e-30);
  }

  @Test
  void chiSquareFarOut() {
    for (int df : new int[] {1, 2, 7, 400}) {
      for (double chance : new double[] {1e-12, 1e-6, 0.4999, 0.5001}) {
        double x = ChiSquare.quantile(chance, df);
        double below = Gamma.regularizedGammaP(df / 2.0, x / 2);
        assertRelative(chance, below, 1e-11, df + " at " + chance);
      }
    }
    // two degrees of freedom are exponential: x = -2 ln(1 - p)
    assertRelative(-2 * Math.log1p(-1e-9), ChiSquare.quantile(1e-9, 2), 1e-12, "exponential");
    assertRelative(-2 * Math.log(0.125), ChiSquare.quantile(0.875, 2), 1e-13, "exponential");
    // one degree of freedom is the square of a normal number
    double z = Normal.quantile(0.5 + 5e-7);
    assertRelative(z * z, ChiSquare.quantile(1e-6, 1), 1e-9, "square");
  }
}
