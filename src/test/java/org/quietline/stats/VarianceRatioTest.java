package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import org.junit.jupiter.api.Test;

class VarianceRatioTest {
  @Test
  void practitionersTwoPeriods() {
    Reference reference = Reference.read("practitioner-variance-ratio");
    double[] deviations = reference.numbers("/data/deviations", 2);
    VarianceRatio found = VarianceRatio.of(deviations[0], 19, deviations[1], 19);
    assertRelative(reference.number("/expected/ratio"), found.ratio(), 1e-14, "ratio");
    assertRelative(reference.number("/expected/upperTail"), found.upperTail(), 1e-11, "upper tail");
    for (double[] row : reference.rows("/expected/rows", 24)) {
      double tail = VarianceRatio.of(Math.sqrt(row[2]), (int) row[0], 1, (int) row[1]).upperTail();
      assertRelative(row[3], tail, reference.tolerance(), row[0] + ", " + row[1] + ", " + row[2]);
    }
  }

  /** The page prints 1.123037 where its data give 1.123038. */
  @Test
  void handbookCeramicBatches() {
    Reference nist = Reference.read("nist-1.3.5.9-f-test");
    Summary first = Summary.of(nist.numbers("/data/batch1", 240));
    Summary second = Summary.of(nist.numbers("/data/batch2", 240));
    double[] sds = nist.numbers("/expected/sds", 2);
    assertEquals(sds[0], first.deviation(), 0.000005);
    assertEquals(sds[1], second.deviation(), 0.000005);
    VarianceRatio found = VarianceRatio.of(first.deviation(), 239, second.deviation(), 239);
    assertEquals(nist.number("/expected/F"), found.ratio(), 0.0000011);
    assertEquals(nist.number("/crosscheck/own/F"), found.ratio(), 0.00000051);
    double[] critical = nist.numbers("/expected/critical", 2);
    assertEquals(0.975, VarianceRatio.of(Math.sqrt(critical[0]), 239, 1, 239).upperTail(), 0.0001);
    assertEquals(0.025, VarianceRatio.of(Math.sqrt(critical[1]), 239, 1, 239).upperTail(), 0.0001);
  }

  @Test
  void handbookCheckStandardCriticalValue() {
    double f =
        Reference.read("nist-2.6.2-check-standard-resistivity").number("/expected/F_0.95_5_125");
    assertEquals(0.05, VarianceRatio.of(Math.sqrt(f), 5, 1, 125).upperTail(), 0.0000001);
  }

  @Test
  void noSpreadAboveIsNothingUnusual() {
    assertEquals(new VarianceRatio(0, 1), VarianceRatio.of(0, 4, 1, 5));
    assertEquals(0.5, VarianceRatio.of(2, 7, 2, 7).upperTail(), 1e-14);
  }
}
