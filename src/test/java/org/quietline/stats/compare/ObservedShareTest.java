package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import org.junit.jupiter.api.Test;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;

class ObservedShareTest {
  private static final Class<?> SUBJECT = ObservedShare.class;

  @Test
  void handbookProportions() {
    Reference nist = Reference.read("nist-7.2.4-proportions");
    ObservedShare wafers = new ObservedShare(26, 200);
    nist.check(SUBJECT, "z against 0.1", "/expected/z", wafers.scoreAgainst(0.1));
    // the page takes 1.645 for the normal quantile
    double lower = wafers.scoreInterval(0.9).lower();
    nist.check(SUBJECT, "score lower", "/expected/wilson_lower", lower, 0.000006);
    Interval exact = new ObservedShare(4, 20).exactInterval(0.9);
    nist.check(SUBJECT, "exact lower", "/expected/exact_pL", exact.lower());
    // printed 0.401029 where the file's own calculation gives 0.401028
    nist.check(SUBJECT, "exact upper", "/expected/exact_pU", exact.upper(), 0.0000011);
  }

  @Test
  void outsideLibrary() {
    Reference reference = Reference.read("share-intervals");
    var rows = reference.rows("/expected/rows", 8);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      ObservedShare seen = new ObservedShare((int) row[0], (int) row[1]);
      String at = "/expected/rows/" + i + "/";
      String of = " of " + seen.count() + " in " + seen.of();
      reference.check(SUBJECT, "exact low" + of, at + 3, seen.exactInterval(row[2]).lower());
      reference.check(SUBJECT, "exact high" + of, at + 4, seen.exactInterval(row[2]).upper());
      reference.check(SUBJECT, "score low" + of, at + 5, seen.scoreInterval(row[2]).lower());
      reference.check(SUBJECT, "score high" + of, at + 6, seen.scoreInterval(row[2]).upper());
      reference.check(SUBJECT, "lower bound" + of, at + 7, seen.lowerBound(row[2]));
      reference.check(SUBJECT, "upper bound" + of, at + 8, seen.upperBound(row[2]));
    }
  }

  /** None of n: the upper bound has a formula, and is about three over n. */
  @Test
  void noneOfMany() {
    double bound = new ObservedShare(0, 300).upperBound(0.95);
    assertRelative(1 - Math.pow(0.05, 1.0 / 300), bound, 1e-12, "formula");
    assertEquals(0.01, bound, 0.0001);
    assertEquals(0, new ObservedShare(0, 300).lowerBound(0.95));
    assertEquals(1, new ObservedShare(300, 300).upperBound(0.95));
    assertEquals(new Interval(0, 1 - Math.pow(0.025, 0.5)), none(2));
    assertTrue(new ObservedShare(1, 1_000_000).exactInterval(0.95).lower() > 2e-8);
  }

  private static Interval none(int of) {
    Interval interval = new ObservedShare(0, of).exactInterval(0.95);
    double rounded = 1 - Math.pow(0.025, 1.0 / of);
    assertEquals(rounded, interval.upper(), 1e-13);
    return new Interval(interval.lower(), rounded);
  }

  @Test
  void sidesMirror() {
    Interval few = new ObservedShare(2, 9).exactInterval(0.95);
    Interval many = new ObservedShare(7, 9).exactInterval(0.95);
    assertEquals(1 - few.lower(), many.upper(), 1e-13);
    assertEquals(1 - few.upper(), many.lower(), 1e-13);
    assertEquals(new Interval(0, 1), hull(1));
  }

  private static Interval hull(int of) {
    return new Interval(
        new ObservedShare(0, of).scoreInterval(0.9).lower(),
        new ObservedShare(of, of).scoreInterval(0.9).upper());
  }
}
