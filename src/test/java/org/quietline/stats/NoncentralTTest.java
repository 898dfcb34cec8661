package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class NoncentralTTest {
  @Test
  void agreesWithTheIncompleteBetaSeries() {
    Reference reference = Reference.read("noncentral-t");
    for (double[] row : reference.rows("/expected/rows", 285)) {
      assertEquals(
          row[3],
          NoncentralT.cdf(row[0], (int) row[1], row[2]),
          reference.tolerance(),
          "t " + row[0] + ", df " + row[1] + ", delta " + row[2]);
    }
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
