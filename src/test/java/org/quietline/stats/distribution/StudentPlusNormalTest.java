package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;

class StudentPlusNormalTest {
  @Test
  void tailMixedTheOtherWay() {
    Reference reference = Reference.read("student-plus-normal");
    List<double[]> rows = reference.rows("/expected/rows", 75);
    for (int i = 0; i < rows.size(); i++) {
      double[] r = rows.get(i);
      StudentPlusNormal sum = new StudentPlusNormal(r[0], r[1], r[2]);
      String what = r[0] + " T(" + r[1] + ") + " + r[2] + " Z above " + r[3];
      double got = sum.above(r[3]);
      if (i % 5 == 0) {
        reference.check(
            StudentPlusNormal.class, what, "/expected/rows/" + i + "/4", got, 1e-14 + 1e-9 * r[4]);
      }
      assertEquals(r[4], got, 1e-14 + 1e-9 * r[4], what);
      assertEquals(1 - r[4], sum.above(-r[3]), 1e-10, what + ", mirrored");
      if (r[4] > 1e-6) {
        assertRelative(r[3], sum.exceededWith(r[4]), 1e-8, what + ", back");
      }
    }
  }

  @Test
  void partsAloneAreTheirOwnDistributions() {
    assertEquals(Student.above(1.5, 4), new StudentPlusNormal(2, 4, 0).above(3));
    assertEquals(Normal.above(1.5), new StudentPlusNormal(0, 4, 2).above(3));
    assertEquals(0, new StudentPlusNormal(0, 4, 0).above(1));
    assertEquals(1, new StudentPlusNormal(0, 4, 0).above(-1));
    assertEquals(
        2 * Normal.exceededWith(0.01), new StudentPlusNormal(0, 4, 2).exceededWith(0.01), 1e-14);
  }

  /**
   * Expected: the trapezoidal rule over the arsinh of t in steps of 2.5e-4 with SciPy's logarithm
   * of the normal tail, good to 1e-11.
   */
  @Test
  void smallStudentPartsAndFarTails() {
    double[][] rows = {
      {1e-5, 1e6, 1, 1, 0.1586552539428},
      {1e-5, 19, 1, 1, 0.15865525394422},
      {1e-6, 1, 1, 1, 0.15865548463473},
      {0.1, 1e4, 1, 15, 1.124125177987e-50},
      {0.01, 50, 1, 15, 3.7144366081828e-51},
      {1e-12, 1, 1, 10, 3.2159362085723e-14},
      {0.19, 3, 1, 34, 1.9340983617097e-07},
      {0.19, 3, 1, 36, 1.6284253174419e-07},
      {0.25, 1e4, 1, 12, 1.2674701752388e-31},
      {0.3, 30, 1, 20, 6.2880786284192e-34},
      {0.05, 0.5, 1, 2, 0.075258504714649},
      {0.5, 0.5, 1, 7, 0.086362892228765},
      {1, 200, 1, 30, 7.1129356290292e-69},
      {0.199, 1e6, 1, 34, 4.1451516599936e-244},
      {0.2, 300, 1, 39, 9.8175508065086e-302},
      {3, 1e4, 1, 40, 9.542491279143e-37},
      {0.15, 4, 1, 2, 0.025206819748487},
      {0.25, 4, 1, 2, 0.029551612045638},
      {0.25, 4, 1, 5.1, 2.9113798719184e-05},
    };
    for (double[] r : rows) {
      StudentPlusNormal sum = new StudentPlusNormal(r[0], r[1], r[2]);
      String what = r[0] + " T(" + r[1] + ") + " + r[2] + " Z above " + r[3];
      assertRelative(r[4], sum.above(r[3]), 1e-10, what);
      assertEquals(1 - r[4], sum.above(-r[3]), 1e-11, what + ", mirrored");
    }
  }

  @Test
  void manyDegreesOfFreedomAreNormal() {
    StudentPlusNormal sum = new StudentPlusNormal(3, Double.POSITIVE_INFINITY, 4);
    assertEquals(Normal.above(2), sum.above(10));
    assertRelative(Normal.above(2), new StudentPlusNormal(3, 1e13, 4).above(10), 1e-12, "wide");
    assertRelative(
        Normal.above(2),
        new StudentPlusNormal(0.75, 1e13, 10).above(2 * Math.hypot(0.75, 10)),
        1e-12,
        "narrow");
  }

  @Test
  void middleIsExceededByHalf() {
    for (double small : new double[] {1e-20, 1e-4, 0.1, 1, 1e8}) {
      StudentPlusNormal sum = new StudentPlusNormal(small, 5, 1);
      assertEquals(0.5, sum.above(0), 1e-14);
      assertEquals(0, sum.exceededWith(0.5));
    }
  }
}
