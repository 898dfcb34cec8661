package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import org.junit.jupiter.api.Test;

class BinomialTailTest {
  @Test
  void agreesWithExactFractions() {
    Reference reference = Reference.read("binomial-tail");
    for (double[] row : reference.rows("/expected/rows", 37)) {
      double actual = BinomialTail.atLeast((int) row[0], (int) row[1], row[2]);
      assertRelative(row[3], actual, 1e-11, row[0] + " of " + row[1] + " at " + row[2]);
    }
  }

  @Test
  void endsAreCertain() {
    assertEquals(1, BinomialTail.atLeast(0, 5, 0.2));
    assertEquals(1, BinomialTail.atLeast(-1, 5, 0));
    assertEquals(0, BinomialTail.atLeast(6, 5, 1));
    assertEquals(0, BinomialTail.atLeast(1, 0, 0.5));
    assertEquals(0, BinomialTail.atLeast(1, 5, 0));
    assertEquals(1, BinomialTail.atLeast(5, 5, 1));
    assertEquals(1 - Math.pow(0.95, 20), BinomialTail.atLeast(1, 20, 0.05), 1e-14);
  }
}
