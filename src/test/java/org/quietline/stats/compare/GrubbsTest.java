package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;

class GrubbsTest {
  private static final Class<?> SUBJECT = Grubbs.class;

  @Test
  void handbookUranium() {
    Reference nist = Reference.read("nist-1.3.5.17.1-grubbs");
    Grubbs test = Grubbs.of(Suspect.LARGEST, nist.numbers("/data/y", 8));
    nist.check(SUBJECT, "G", "/expected/G", test.statistic());
    Recalculated.check(nist, "chance", "/own/p_one_sided", test.chance());
    double critical = Grubbs.criticalValue(Suspect.LARGEST, 8, 0.05);
    nist.check(SUBJECT, "5 % value, one end", "/expected/critical_one_sided_0.05", critical);
    double own = Grubbs.criticalValue(Suspect.EITHER, 8, 0.05);
    Recalculated.check(nist, "5 % value, either end", "/own/crit_two_sided_0.05", own);
    assertEquals(List.of(7), test.places());
    assertEquals(OutlierTest.Certainty.EXACT, test.certainty());
    assertTrue(test.significantAt(0.01));
  }

  /** Two printed values are misprints by the file's own calculation, which these are held to. */
  @Test
  void publishedCriticalValues() {
    Reference table = Reference.read("grubbs-critical-values");
    Set<String> misprints = Set.of("7/0", "15/1");
    double[] alphas = table.numbers("/data/alpha", 2);
    for (int n = 3; n <= 15; n++) {
      for (int i = 0; i < alphas.length; i++) {
        double got = Grubbs.criticalValue(Suspect.EITHER, n, alphas[i]);
        double oneEnd = Grubbs.criticalValue(Suspect.LARGEST, n, alphas[i]);
        String at = n + "/" + i;
        String what = alphas[i] + " value of " + n;
        String own = "/own_two_sided/" + at;
        if (misprints.contains(at)) {
          Recalculated.check(table, what + ", either end", own, got);
        } else {
          // printed 2.126 and 2.549 are cut and rounded up: one unit of the last digit
          table.check(SUBJECT, what + ", either end", "/expected/" + at, got, 0.00101);
        }
        Recalculated.check(table, what + ", one end", "/own_one_sided/" + at, oneEnd);
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Suspect.class)
  void outsideLibrary(Suspect suspect) {
    Reference reference = Reference.read("grubbs-tests");
    Grubbs test = Grubbs.of(suspect, reference.numbers("/data/values", 10));
    reference.check(SUBJECT, "G, " + suspect, "/expected/statistic/" + suspect, test.statistic());
    reference.check(SUBJECT, "chance, " + suspect, "/expected/chance/" + suspect, test.chance());
    assertEquals(suspect == Suspect.SMALLEST ? 9 : 6, test.place());
  }

  @ParameterizedTest
  @EnumSource(Suspect.class)
  void theTestTurnsAtTheCriticalValue(Suspect suspect) {
    double[] values = {1.3, 2, 2.2, 2.3, 2.7, 4.6};
    Grubbs test = Grubbs.of(suspect, values);
    double critical = Grubbs.criticalValue(suspect, 6, test.chance());
    assertRelative(test.statistic(), critical, 1e-12, "critical");
    assertTrue(test.significantAt(test.chance() * 1.0001));
    assertFalse(test.significantAt(test.chance() * 0.9999));
  }

  @Test
  void exactOnlyWhereNoTwoCanBeSoFarOut() {
    Grubbs either = new Grubbs(Suspect.EITHER, 15, 0, Math.sqrt(7) + 1e-9, 0.04);
    assertEquals(OutlierTest.Certainty.EXACT, either.certainty());
    Grubbs less = new Grubbs(Suspect.EITHER, 15, 0, Math.sqrt(7) - 1e-9, 0.04);
    assertEquals(OutlierTest.Certainty.AT_MOST, less.certainty());
    double oneEnd = Math.sqrt(14.0 * 13 / 30);
    Grubbs one = new Grubbs(Suspect.LARGEST, 15, 0, oneEnd + 1e-9, 0.04);
    assertEquals(OutlierTest.Certainty.EXACT, one.certainty());
    Grubbs lower = new Grubbs(Suspect.SMALLEST, 15, 0, oneEnd - 1e-9, 0.04);
    assertEquals(OutlierTest.Certainty.AT_MOST, lower.certainty());
  }

  /** How far the bound is from the truth at one end, by the recursion. */
  @Test
  void theBoundIsClose() {
    for (int n : new int[] {15, 30, 60}) {
      double critical = Grubbs.criticalValue(Suspect.LARGEST, n, 0.05);
      double exact = LargestDeviation.of(n).above(critical * Math.sqrt(n) / (n - 1));
      assertTrue(exact <= 0.05 + 1e-7 && exact > 0.0497, n + ": " + exact);
    }
  }

  /** Three values: the sample is a point on a circle, and G the cosine of its angle. */
  @Test
  void threeValuesHaveAFormula() {
    double[] values = {1, 1.1, 2};
    Grubbs test = Grubbs.of(Suspect.EITHER, values);
    double w = test.statistic() * Math.sqrt(3) / 2;
    double expected = 6 / Math.PI * Math.acos(w);
    Evidence.own(SUBJECT, "three values", "closed form", expected, test.chance(), 1e-10);
  }

  @Test
  void aWildValueCostsNoDigits() {
    Grubbs test = Grubbs.of(Suspect.EITHER, 1, 2, 3, 1e9);
    double t = (1e9 - 2) / Math.sqrt(4 / 3.0);
    double expected = 8 * (0.5 - t / Math.sqrt(2 + t * t) / 2);
    assertEquals(0, expected, 1e-15);
    double limit = 8 * 0.5 / (t * t);
    assertRelative(limit, test.chance(), 1e-9, "chance");
    assertEquals(3, test.place());
  }

  @Test
  void smallChancesNeverExceedOne() {
    assertEquals(1, Grubbs.of(Suspect.EITHER, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10).chance());
  }
}
