package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;

class ChiSquareTest {
  private final Reference reference = Reference.read("chi-square-tails");

  @Test
  void bothTailsForFractionalDegreesOfFreedom() {
    List<double[]> rows = reference.rows("/expected/tails", 251);
    for (int i = 0; i < rows.size(); i++) {
      double[] r = rows.get(i);
      boolean lower = r[2] == 1;
      double got = lower ? ChiSquare.below(r[0], r[1]) : ChiSquare.above(r[0], r[1]);
      String what = (lower ? "chance below " : "chance above ") + r[0] + " with " + r[1];
      if (i % 12 == 0) {
        reference.check(ChiSquare.class, what, "/expected/tails/" + i + "/3", got);
      }
      assertRelative(r[3], got, reference.tolerance(), what);
      double other = lower ? ChiSquare.above(r[0], r[1]) : ChiSquare.below(r[0], r[1]);
      assertEquals(1 - r[3], other, 1e-13, what + ", the other tail");
    }
  }

  @Test
  void quantilesFromBothEnds() {
    List<double[]> rows = reference.rows("/expected/quantiles", 40);
    for (int i = 0; i < rows.size(); i++) {
      double[] r = rows.get(i);
      double low = ChiSquare.quantile(r[0], r[1]);
      double high = ChiSquare.exceededWith(r[0], r[1]);
      String with = r[0] + " with " + r[1];
      if (i % 4 == 1) {
        String at = "/expected/quantiles/" + i;
        reference.check(ChiSquare.class, "quantile of " + with, at + "/2", low);
        reference.check(ChiSquare.class, "exceeded with " + with, at + "/3", high);
      }
      assertRelative(r[2], low, reference.tolerance(), "quantile of " + with);
      assertRelative(r[3], high, reference.tolerance(), "exceeded with " + with);
      assertRelative(r[2], ChiSquare.exceededWith(1 - r[0], r[1]), 2e-15 / r[0], "from the other");
      assertRelative(r[3], ChiSquare.quantile(1 - r[0], r[1]), 2e-15 / r[0], "from the other");
    }
  }

  @Test
  void endsAreZeroAndOne() {
    for (double df : new double[] {0.4, 1, 2, 2.5, 30}) {
      assertEquals(0, ChiSquare.below(0, df));
      assertEquals(1, ChiSquare.above(0, df));
      assertEquals(1, ChiSquare.below(Double.POSITIVE_INFINITY, df));
      assertEquals(0, ChiSquare.above(Double.POSITIVE_INFINITY, df));
      assertEquals(0, ChiSquare.above(1e8, df));
    }
  }

  @Test
  void moreDegreesOfFreedomMoveItUp() {
    double before = 0;
    for (double df = 0.1; df < 60; df += 0.37) {
      double x = ChiSquare.quantile(0.3, df);
      assertTrue(x > before, "with " + df);
      assertRelative(0.3, ChiSquare.below(x, df), 1e-13, "back, with " + df);
      before = x;
    }
  }

  /** Expected: the density integrated over the tail, mpmath with 50 digits. */
  @Test
  void manyDegreesOfFreedom() {
    assertRelative(0.5000001880631945, ChiSquare.below(1e12, 1e12), 1e-14, "1e12 below");
    assertRelative(0.4999998119368055, ChiSquare.above(1e12, 1e12), 1e-14, "1e12 above");
    assertRelative(0.5000000188063195, ChiSquare.below(1e14, 1e14), 1e-14, "1e14 below");
    assertRelative(0.5000108578335982, ChiSquare.below(3e8, 3e8), 1e-14, "3e8 below");
    double[][] above = {
      {1e9 + 3e5, 1e9, 9.896084115728977e-12},
      {1e9 + 9e5, 1e9, 2.536380517701169e-90},
      {1e12 + 1e7, 1e12, 7.688578856497886e-13},
    };
    for (double[] r : above) {
      assertRelative(r[2], ChiSquare.above(r[0], r[1]), 1e-12, "above with " + r[1]);
      assertRelative(r[0], ChiSquare.exceededWith(r[2], r[1]), 1e-14, "back with " + r[1]);
    }
    assertRelative(9.807539596597986e-12, ChiSquare.below(1e9 - 3e5, 1e9), 1e-12, "below");
    assertRelative(2.684477955621669e-60, ChiSquare.below(3e8 - 4e5, 3e8), 1e-12, "below");
    assertEquals(0, ChiSquare.below(0, 1e12));
    assertEquals(1, ChiSquare.above(1, 1e12));
  }

  /** Both ways of calculating it meet where one takes over; expected as above. */
  @Test
  void expansionJoinsTheSeries() {
    assertRelative(1.8139865661130645e-138, ChiSquare.below(2e8 - 5e5, 2e8), 1e-12, "series");
    double next = 2e8 + 1;
    assertRelative(1.8139894144643547e-138, ChiSquare.below(next - 5e5, next), 1e-12, "Temme");
  }
}
