package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;

class CriticalRangeTest {
  /** The standard cuts to one decimal; 3.858 is printed 3.9 and 4.554 is printed 4.6. */
  @Test
  void publishedFactors() {
    Reference table = Reference.read("iso-5725-6-critical-range");
    assertEquals(29, table.at("/expected").size());
    for (int n = 2; n <= 30; n++) {
      double got = CriticalRange.factor(n);
      table.check(
          CriticalRange.class, "factor of " + n + " readings", "/expected/" + n, got, 0.0501);
      assertEquals(table.number("/crosscheck/own/" + n), got, 0.000005);
    }
  }

  @Test
  void twoReadingsAreThoseOfPairs() {
    double known = Math.sqrt(2) * Normal.exceededWith(0.025);
    assertEquals(known, CriticalRange.factor(2), 1e-13);
    assertEquals(
        PairRangeLimits.factor(0.01, 12), CriticalRange.factor(2, 0.01, 12), 1e-9, "estimated");
  }

  @Test
  void anEstimateAsksForMore() {
    assertTrue(CriticalRange.factor(4, 0.05, 10) > CriticalRange.factor(4, 0.05));
    assertTrue(CriticalRange.factor(4, 0.05) > CriticalRange.factor(4, 0.1));
  }
}
