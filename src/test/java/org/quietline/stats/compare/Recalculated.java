package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.quietline.stats.Reference;

/**
 * Figures that a file's crosscheck gives beside the published ones. They are asserted, and kept off
 * the evidence table, where they would pass for published.
 */
final class Recalculated {
  private Recalculated() {}

  /** Within half a unit of the last digit given. */
  static void check(Reference reference, String what, String pointer, double got) {
    double unit = reference.at("/crosscheck" + pointer).decimalValue().ulp().doubleValue();
    double expected = reference.number("/crosscheck" + pointer);
    assertEquals(expected, got, 0.5000001 * unit + 1e-13 * Math.abs(expected), what);
  }
}
