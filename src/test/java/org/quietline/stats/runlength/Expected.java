package org.quietline.stats.runlength;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.quietline.stats.Reference;

/** The figures of a distribution as the computed reference files hold them. */
final class Expected {
  private static final double[] CHANCES = {0.1, 0.5, 0.9, 0.99};

  private Expected() {}

  /**
   * Holds a distribution to average, deviation, four quantiles and two chances that begin at a
   * place in a row; quantiles are whole numbers and must be equal.
   */
  static void check(
      Reference table,
      Class<?> subject,
      String row,
      int from,
      RunLengthDistribution got,
      String what) {
    table.check(subject, "average, " + what, row + "/" + from, got.average());
    within(table, row + "/" + (from + 1), got.standardDeviation(), what + ": deviation");
    for (int i = 0; i < CHANCES.length; i++) {
      double expected = table.number(row + "/" + (from + 2 + i));
      double actual = got.quantile(CHANCES[i]);
      double there = got.chanceWithin((long) Math.min(expected, actual));
      // where the chance is met to the last digits, rounding decides
      if (Math.abs(there - CHANCES[i]) > 1e-12) {
        assertEquals(expected, actual, what + ": quantile " + CHANCES[i]);
      }
    }
    within(table, row + "/" + (from + 6), got.chanceWithin(4), what + ": within 4");
    String last = row + "/" + (from + 7);
    double allowed = Math.max(table.tolerance() * table.number(last), 1e-13);
    table.check(subject, "chance within 20, " + what, last, got.chanceWithin(20), allowed);
  }

  /** Relative, but not below the rounding of a chance that was had as 1 less another. */
  private static void within(Reference table, String pointer, double got, String what) {
    double expected = table.number(pointer);
    assertEquals(expected, got, Math.max(table.tolerance() * expected, 1e-13), what);
  }
}
