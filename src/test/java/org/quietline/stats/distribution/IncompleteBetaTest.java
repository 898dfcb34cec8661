package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;

class IncompleteBetaTest {
  @Test
  void closedForms() {
    for (double x : new double[] {1e-9, 0.03, 0.4}) {
      own("I(" + x + "; 3, 1)", Math.pow(x, 3), IncompleteBeta.below(3, 1, x, 1 - x));
      double arc = 2 / Math.PI * Math.asin(Math.sqrt(x));
      own("I(" + x + "; 1/2, 1/2)", arc, IncompleteBeta.below(0.5, 0.5, x, 1 - x));
    }
  }

  @Test
  void ends() {
    assertEquals(0, IncompleteBeta.below(2, 3, 0, 1));
    assertEquals(1, IncompleteBeta.below(2, 3, 1, 0));
  }

  private static void own(String what, double expected, double got) {
    Evidence.own(IncompleteBeta.class, what, "closed form", expected, got, 1e-13);
  }
}
