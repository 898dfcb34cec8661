package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;

class StudentTest {
  @Test
  void upperTailForFractionalDegreesOfFreedom() {
    Reference reference = Reference.read("student-tails");
    List<double[]> rows = reference.rows("/expected/rows", 240);
    for (int i = 0; i < rows.size(); i++) {
      double[] r = rows.get(i);
      double got = Student.above(r[0], r[1]);
      String what = "chance above " + r[0] + " with " + r[1];
      if (i % 12 == 3) {
        reference.check(Student.class, what, "/expected/rows/" + i + "/2", got);
      }
      assertRelative(r[2], got, reference.tolerance(), what);
      assertEquals(1 - r[2], Student.above(-r[0], r[1]), 1e-15, what + ", mirrored");
    }
  }

  /** One and two degrees of freedom have closed forms. */
  @Test
  void closedForms() {
    for (double p : new double[] {1e-30, 1e-6, 0.01, 0.2, 0.4999}) {
      double cauchy = 1 / Math.tan(Math.PI * p);
      Evidence.own(
          Student.class,
          "exceeded with " + p + ", 1 degree of freedom",
          "closed form",
          cauchy,
          Student.exceededWith(p, 1),
          1e-12);
      double two = (1 - 2 * p) / Math.sqrt(2 * p * (1 - p));
      assertRelative(two, Student.exceededWith(p, 2), 1e-12, "two");
    }
  }

  @Test
  void quantileIsTheInverseAndFallsWithMoreDegreesOfFreedom() {
    for (double p : new double[] {1e-50, 1e-9, 0.00135, 0.025, 0.3, 0.499}) {
      double before = Double.POSITIVE_INFINITY;
      for (double df : new double[] {0.7, 1, 2.2, 5, 30, 999, 9999, 10_001, 1e6, 1e9}) {
        double t = Student.exceededWith(p, df);
        assertRelative(p, Student.above(t, df), 1e-12, p + " back with " + df);
        assertTrue(t < before, p + " with " + df);
        before = t;
      }
    }
  }
}
