package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;

class FisherFTest {
  private static final double INFINITE = Double.POSITIVE_INFINITY;
  private final Reference reference = Reference.read("fisher-f");

  @Test
  void bothTailsForFractionalDegreesOfFreedom() {
    List<double[]> rows = reference.rows("/expected/tails", 432);
    for (int i = 0; i < rows.size(); i++) {
      double[] r = rows.get(i);
      boolean lower = r[3] == 1;
      double got = lower ? FisherF.below(r[0], r[1], r[2]) : FisherF.above(r[0], r[1], r[2]);
      String side = lower ? "chance below " : "chance above ";
      String what = side + r[0] + " with " + r[1] + " and " + r[2];
      if (i % 20 == 0) {
        reference.check(FisherF.class, what, "/expected/tails/" + i + "/4", got);
      }
      assertRelative(r[4], got, reference.tolerance(), what);
      double other = lower ? FisherF.above(r[0], r[1], r[2]) : FisherF.below(r[0], r[1], r[2]);
      assertEquals(1 - r[4], other, 1e-13, what + ", the other tail");
    }
  }

  @Test
  void quantilesFromBothEnds() {
    List<double[]> rows = reference.rows("/expected/quantiles", 36);
    for (int i = 0; i < rows.size(); i++) {
      double[] r = rows.get(i);
      double low = FisherF.quantile(r[0], r[1], r[2]);
      double high = FisherF.exceededWith(r[0], r[1], r[2]);
      String with = r[0] + " with " + r[1] + " and " + r[2];
      if (i % 4 == 2) {
        String at = "/expected/quantiles/" + i;
        reference.check(FisherF.class, "quantile of " + with, at + "/3", low);
        reference.check(FisherF.class, "exceeded with " + with, at + "/4", high);
      }
      assertRelative(r[3], low, reference.tolerance(), "quantile of " + with);
      assertRelative(r[4], high, reference.tolerance(), "exceeded with " + with);
      assertRelative(r[4], FisherF.quantile(1 - r[0], r[1], r[2]), 1e-14 / r[0], "other side");
    }
  }

  @Test
  void publishedTable() {
    Reference table = Reference.read("f-table-5pct");
    assertEquals(10, table.at("/expected").size());
    table
        .at("/expected")
        .fieldNames()
        .forEachRemaining(
            key -> {
              String[] df = key.split(",", 2);
              double first = Double.parseDouble(df[0]);
              double second = Double.parseDouble(df[1]);
              double got = FisherF.exceededWith(0.05, first, second);
              table.check(FisherF.class, "5 % point of " + key, "/expected/" + key, got);
            });
  }

  @Test
  void limitsWithoutEndAreChiSquares() {
    assertRelative(ChiSquare.above(6, 3), FisherF.above(2, 3, INFINITE), 1e-15, "below the line");
    assertRelative(ChiSquare.below(1.5, 3), FisherF.above(2, INFINITE, 3), 1e-15, "above the line");
    assertRelative(FisherF.above(2, 3, 1e12), FisherF.above(2, 3, INFINITE), 1e-11, "continuous");
    assertRelative(FisherF.above(2, 1e12, 3), FisherF.above(2, INFINITE, 3), 1e-11, "continuous");
    double high = FisherF.exceededWith(0.05, 3, INFINITE);
    assertRelative(ChiSquare.exceededWith(0.05, 3) / 3, high, 1e-15, "quantile");
    double low = FisherF.quantile(0.05, INFINITE, 3);
    assertRelative(0.05, FisherF.below(low, INFINITE, 3), 1e-13, "back");
    assertEquals(1, FisherF.exceededWith(0.3, INFINITE, INFINITE));
    assertEquals(1, FisherF.above(0.99, INFINITE, INFINITE));
    assertEquals(0, FisherF.above(1, INFINITE, INFINITE));
    assertEquals(1, FisherF.above(0, INFINITE, 3));
  }

  @Test
  void endsAreZeroAndOne() {
    assertEquals(1, FisherF.above(0, 2.5, 3));
    assertEquals(0, FisherF.below(0, 2.5, 3));
    assertEquals(0, FisherF.above(INFINITE, 2.5, 3));
    assertEquals(1, FisherF.below(INFINITE, 2.5, 3));
  }

  /** F with one degree of freedom above the line is the square of Student's t. */
  @Test
  void squareOfStudent() {
    for (double df : new double[] {1, 3.5, 20, 1000}) {
      double t = Student.exceededWith(0.01, df);
      assertRelative(t * t, FisherF.exceededWith(0.02, 1, df), 1e-13, "with " + df);
    }
  }

  @Test
  void fallsWithTheRatio() {
    double before = 1.1;
    for (double x = 0; x < 20; x += 0.13) {
      double tail = FisherF.above(x, 3.3, 4.7);
      assertTrue(tail < before, "at " + x);
      before = tail;
    }
  }
}
