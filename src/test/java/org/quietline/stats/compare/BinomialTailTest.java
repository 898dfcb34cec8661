package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;

class BinomialTailTest {
  @Test
  void agreesWithExactFractions() {
    Reference reference = Reference.read("binomial-tail");
    var rows = reference.rows("/expected/rows", 37);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      double actual = BinomialTail.atLeast((int) row[0], (int) row[1], row[2]);
      String what = "at least " + (int) row[0] + " of " + (int) row[1] + " at " + row[2];
      String at = "/expected/rows/" + i + "/3";
      reference.check(BinomialTail.class, what, at, actual, 1e-11 * row[3]);
    }
  }

  @Test
  void lowerTails() {
    Reference reference = Reference.read("share-intervals");
    var rows = reference.rows("/expected/tails", 6);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      double actual = BinomialTail.atMost((int) row[0], (int) row[1], row[2]);
      String what = "at most " + (int) row[0] + " of " + (int) row[1] + " at " + row[2];
      reference.check(BinomialTail.class, what, "/expected/tails/" + i + "/3", actual);
    }
    assertEquals(0, BinomialTail.atMost(-1, 5, 0.5));
    assertEquals(1, BinomialTail.atMost(6, 5, 1));
    assertEquals(1, BinomialTail.atMost(0, 0, 0.5));
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

  /** Expected: sums of exact terms, mpmath with 40 digits. */
  @Test
  void millionTries() {
    int n = 1_000_000;
    assertRelative(0.5003989421806658, BinomialTail.atLeast(500_000, n, 0.5), 1e-12, "half");
    assertRelative(4.386199762950373e-4, BinomialTail.atLeast(101_000, n, 0.1), 1e-12, "tenth");
    assertRelative(4.993787976951218e-4, BinomialTail.atMost(1, n, 1e-5), 1e-12, "at most one");
  }
}
