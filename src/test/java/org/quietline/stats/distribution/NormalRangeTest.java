package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class NormalRangeTest {
  private static final Class<?> SUBJECT = NormalRange.class;
  private final Reference reference = Reference.read("normal-range");

  @Test
  void bothTails() {
    List<double[]> rows = reference.rows("/expected/tails", 36);
    for (int i = 0; i < rows.size(); i++) {
      double[] r = rows.get(i);
      NormalRange range = new NormalRange((int) r[0]);
      String of = r[1] + " of " + range.n();
      String at = "/expected/tails/" + i;
      reference.check(SUBJECT, "chance below " + of, at + "/2", range.below(r[1]));
      reference.check(SUBJECT, "chance above " + of, at + "/3", range.above(r[1]));
    }
  }

  @Test
  void farOut() {
    List<double[]> rows = reference.rows("/expected/far", 18);
    for (int i = 0; i < rows.size(); i++) {
      double[] r = rows.get(i);
      NormalRange range = new NormalRange((int) r[0]);
      String what = "chance above " + r[1] + " of " + range.n();
      reference.check(SUBJECT, what, "/expected/far/" + i + "/2", range.above(r[1]));
      assertRelative(r[1], range.exceededWith(r[2]), 1e-12, "back");
    }
  }

  @Test
  void meanAndDeviation() {
    List<double[]> rows = reference.rows("/expected/moments", 26);
    for (int i = 0; i < rows.size(); i++) {
      NormalRange range = new NormalRange((int) rows.get(i)[0]);
      String at = "/expected/moments/" + i;
      reference.check(SUBJECT, "mean range of " + range.n(), at + "/1", range.mean());
      reference.check(
          SUBJECT, "deviation of the range of " + range.n(), at + "/2", range.deviation());
    }
  }

  /** Closed forms for two and three values. */
  @Test
  void closedForms() {
    NormalRange two = new NormalRange(2);
    for (double w : new double[] {0, 0.01, 1, 3.5, 4.5, 9}) {
      double outside = Normal.outside(w / Math.sqrt(2));
      assertRelative(outside, two.above(w), 1e-14, "two at " + w);
      assertEquals(1 - outside, two.below(w), 1e-15, "two at " + w);
    }
    Evidence.own(SUBJECT, "mean of 2", "2/sqrt(pi)", 2 / Math.sqrt(Math.PI), two.mean(), 1e-15);
    NormalRange three = new NormalRange(3);
    Evidence.own(SUBJECT, "mean of 3", "3/sqrt(pi)", 3 / Math.sqrt(Math.PI), three.mean(), 1e-15);
    double square = 2 + 3 * Math.sqrt(3) / Math.PI - 9 / Math.PI;
    Evidence.own(
        SUBJECT, "deviation of 3", "closed form", Math.sqrt(square), three.deviation(), 1e-14);
  }

  @Test
  void quantilesAreInverseInBothTails() {
    for (int n : new int[] {2, 3, 10, 11, 40, 100}) {
      NormalRange range = new NormalRange(n);
      double before = 0;
      for (double p : new double[] {1e-6, 0.01, 0.2, 0.5, 0.6, 0.95, 0.999}) {
        double w = range.quantile(p);
        assertRelative(p, range.below(w), 1e-12, n + " below");
        assertRelative(p, range.above(range.exceededWith(p)), 1e-12, n + " above");
        assertTrue(w > before);
        before = w;
      }
      assertEquals(0, range.below(0));
      assertEquals(1, range.above(0), 1e-14);
      assertEquals(0, range.above(61));
      assertEquals(1, range.below(61));
    }
  }

  /** The two sets of panels, for few and for many values, join. */
  @Test
  void sharesAddUpOnBothSidesOfEveryJoint() {
    for (int n = 2; n <= 100; n += 7) {
      NormalRange range = new NormalRange(n);
      for (double w : new double[] {0.3, 0.79, 0.81, 2, 3.99, 4.01, 7}) {
        assertEquals(1, range.below(w) + range.above(w), 1e-13, n + " at " + w);
      }
    }
  }

  @Test
  void simulatedRanges() {
    SplittableRandom random = new SplittableRandom(72);
    NormalRange range = new NormalRange(7);
    double limit = range.exceededWith(0.2);
    int beyond = 0;
    for (int i = 0; i < 20_000; i++) {
      double[] z = Simulation.normal(random, 7);
      Arrays.sort(z);
      beyond += z[6] - z[0] > limit ? 1 : 0;
    }
    Simulation.assertShare(0.2, beyond, 20_000);
  }
}
