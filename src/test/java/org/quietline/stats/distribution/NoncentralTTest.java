package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;

class NoncentralTTest {
  @Test
  void agreesWithTheIncompleteBetaSeries() {
    Reference reference = Reference.read("noncentral-t");
    List<double[]> rows = reference.rows("/expected/rows", 285);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      String what = "chance below " + row[0] + ", df " + row[1] + ", delta " + row[2];
      double got = NoncentralT.cdf(row[0], (int) row[1], row[2]);
      if (i % 12 == 3) {
        reference.check(
            NoncentralT.class, what, "/expected/rows/" + i + "/3", got, reference.tolerance());
      }
      assertEquals(row[3], got, reference.tolerance(), what);
      assertEquals(
          1 - row[3], NoncentralT.above(row[0], (int) row[1], row[2]), reference.tolerance(), what);
    }
  }

  /** The far upper tail keeps its digits: without noncentrality it is Student's. */
  @Test
  void upperTailIsNotOneMinusTheRest() {
    for (int df : new int[] {3, 20, 500}) {
      for (double p : new double[] {1e-8, 1e-14, 1e-20}) {
        double t = Student.exceededWith(p, df);
        assertRelative(p, NoncentralT.above(t, df, 0), 1e-9, p + " with " + df);
      }
    }
    assertEquals(0, NoncentralT.above(Double.POSITIVE_INFINITY, 3, 1));
    assertEquals(1, NoncentralT.above(Double.NEGATIVE_INFINITY, 3, 1));
  }

  @Test
  void isStudentsWithoutNoncentrality() {
    for (int df : new int[] {1, 2, 7, 60, 1000}) {
      for (double t : new double[] {-30, -2, 0, 0.3, 4}) {
        assertEquals(Student.above(-t, df), NoncentralT.cdf(t, df, 0), 1e-13, t + ", " + df);
      }
    }
  }

  @Test
  void mirrorsInBothSigns() {
    assertEquals(1, NoncentralT.cdf(1.7, 4, 0.9) + NoncentralT.cdf(-1.7, 4, -0.9), 1e-14);
  }

  @Test
  void endsAreZeroAndOne() {
    assertEquals(1, NoncentralT.cdf(Double.POSITIVE_INFINITY, 3, 1));
    assertEquals(0, NoncentralT.cdf(Double.NEGATIVE_INFINITY, 3, 1));
    assertEquals(Normal.below(-1.5), NoncentralT.cdf(0, 3, 1.5), 1e-15);
  }
}
