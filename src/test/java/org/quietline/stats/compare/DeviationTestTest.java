package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import org.junit.jupiter.api.Test;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.sample.Summary;

class DeviationTestTest {
  private static final Class<?> SUBJECT = DeviationTest.class;

  @Test
  void handbookGears() {
    Reference nist = Reference.read("nist-1.3.5.8-chisquare-sd");
    double deviation = Summary.of(nist.numbers("/data/y", 100)).deviation();
    DeviationTest test = new DeviationTest(deviation, 99, nist.number("/data/sigma0"));
    nist.check(SUBJECT, "statistic", "/expected/T", test.statistic());
    Interval interval = test.interval(0.95);
    nist.check(SUBJECT, "lower", "/expected/ci_sd_95/0", interval.lower());
    nist.check(SUBJECT, "upper", "/expected/ci_sd_95/1", interval.upper());
    assertTrue(test.chanceBelow() < 1e-90);
    assertEquals(1, test.chanceAbove());
  }

  @Test
  void outsideLibrary() {
    Reference reference = Reference.read("deviation-tests");
    var rows = reference.rows("/expected/rows", 5);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      DeviationTest test = new DeviationTest(row[0], (int) row[1], row[2]);
      String at = "/expected/rows/" + i + "/";
      String of = " of " + row[0] + " with " + (int) row[1];
      reference.check(SUBJECT, "statistic" + of, at + 3, test.statistic());
      reference.check(SUBJECT, "chance above" + of, at + 4, test.chanceAbove());
      reference.check(SUBJECT, "chance below" + of, at + 5, test.chanceBelow());
      reference.check(SUBJECT, "lower" + of, at + 6, test.interval(0.95).lower());
      reference.check(SUBJECT, "upper" + of, at + 7, test.interval(0.95).upper());
      reference.check(SUBJECT, "upper bound" + of, at + 8, test.upperBound(0.95));
      assertRelative(2 * Math.min(row[4], row[5]), test.chance(), 1e-11, "two-sided");
    }
  }

  @Test
  void theIntervalEndsWhereTheTestTurns() {
    Interval interval = new DeviationTest(2, 6, 1).interval(0.9);
    assertRelative(0.05, new DeviationTest(2, 6, interval.lower()).chanceAbove(), 1e-11, "lower");
    assertRelative(0.05, new DeviationTest(2, 6, interval.upper()).chanceBelow(), 1e-11, "upper");
  }

  @Test
  void noSpread() {
    DeviationTest none = new DeviationTest(0, 4, 1);
    assertEquals(0, none.chance());
    assertEquals(1, none.chanceAbove());
    assertEquals(new Interval(0, 0), none.interval(0.95));
    assertEquals(0, none.upperBound(0.95));
  }

  @Test
  void theMedianIsTwoSidedOne() {
    double s = Math.sqrt(0.4549364231195728);
    assertEquals(1, new DeviationTest(s, 1, 1).chance(), 1e-9);
  }

  /** With two degrees of freedom the tail of χ² is exp(−x/2); no level is refused or NaN. */
  @Test
  void levelsNearNothingAndOne() {
    double nearOne = Math.nextDown(1.0);
    double tail = (1 - nearOne) / 2;
    Interval wide = new DeviationTest(1, 2, 1).interval(nearOne);
    assertEquals(Math.sqrt(1 / -Math.log(tail)), wide.lower(), 1e-13);
    for (double level : new double[] {nearOne, 1e-15, 1e-17}) {
      for (int df : new int[] {1, 2, 7, 1000}) {
        Interval interval = new DeviationTest(1, df, 1).interval(level);
        assertTrue(interval.lower() > 0 && Double.isFinite(interval.upper()), "df " + df);
        assertTrue(new DeviationTest(1, df, 1).upperBound(level) > 0, "df " + df);
        assertTrue(new VarianceRatio(1.5, df, df + 1).interval(level).lower() > 0, "df " + df);
      }
    }
    // exceeded with 1e-17: −2·ln 1e-17
    var bartlett = new EqualVariances(EqualVariances.Form.BARTLETT, 1, 3, 9);
    assertEquals(-2 * Math.log(1e-17), bartlett.criticalValue(1e-17), 1e-11);
  }
}
