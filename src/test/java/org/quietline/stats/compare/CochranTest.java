package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;

class CochranTest {
  private static final Class<?> SUBJECT = Cochran.class;

  /** Half a unit of the third decimal, but p = 2, n = 2: printed 0.998 for 0.99846. */
  @ParameterizedTest
  @CsvSource({"cochran-critical-values-5pct, 0.05, 11", "cochran-critical-values-1pct, 0.01, 12"})
  void publishedCriticalValues(String file, double alpha, int rows) {
    Reference table = Reference.read(file);
    double[] groups = table.numbers("/data/p_rows", rows);
    int columns = table.at("/data/n_columns").size();
    // the fourth decimals of the 1 % table are up to four units off, as its file says
    double allowed = alpha == 0.01 ? 0.00035 : 0.00051;
    for (double p : groups) {
      for (int i = 0; i < columns; i++) {
        int n = table.at("/data/n_columns/" + i).asInt();
        double got = Cochran.criticalValue((int) p, n - 1, alpha);
        String at = (int) p + "/" + i;
        String what = alpha + " value of " + (int) p + " times " + n;
        table.check(SUBJECT, what, "/expected/" + at, got, allowed);
        double own = table.number("/crosscheck/own/" + at);
        assertEquals(own, got, 0.0000501, what);
      }
    }
  }

  @Test
  void outsideLibrary() {
    Reference reference = Reference.read("cochran-tests");
    var rows = reference.rows("/expected/rows", 6);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      Cochran test = new Cochran((int) row[0], (int) row[1], 0, row[2]);
      String what = "chance of " + row[2] + " of " + test.groups();
      reference.check(SUBJECT, what, "/expected/rows/" + i + "/3", test.chance());
    }
    var pairs = reference.rows("/expected/pairs", 16);
    for (int i = 0; i < pairs.size(); i++) {
      double got = Cochran.criticalValue((int) pairs.get(i)[0], 1, pairs.get(i)[1]);
      String what = pairs.get(i)[1] + " value of " + (int) pairs.get(i)[0] + " pairs";
      reference.check(SUBJECT, what, "/expected/pairs/" + i + "/2", got);
    }
  }

  /** The printed sum is off; the recalculated share is in the crosscheck. */
  @Test
  void publishedPairs() {
    Reference pairs = Reference.read("duplicates-cochran-homogeneity-example");
    Cochran test = Cochran.ofDifferences(pairs.numbers("/expected/D", 10));
    Recalculated.check(pairs, "share of ten pairs", "/own/C", test.statistic());
    double critical = Cochran.criticalValue(10, 1, 0.05);
    Recalculated.check(pairs, "5 % of ten pairs", "/own/C_crit_5pct_p10_n2", critical);
    assertEquals(List.of(2), test.places());
    assertFalse(test.significantAt(0.05));
    assertEquals(OutlierTest.Certainty.AT_MOST, test.certainty());
  }

  @Test
  void deviationsAndDifferencesAgree() {
    Cochran pairs = Cochran.ofDifferences(0.3, -0.9, 0.2);
    assertEquals(pairs, Cochran.ofDeviations(1, 0.3, 0.9, 0.2));
    assertRelative(0.81 / 0.94, pairs.statistic(), 1e-15, "share");
    assertEquals(OutlierTest.Certainty.EXACT, pairs.certainty());
    assertEquals(4, Cochran.ofDeviations(4, 1, 2).degreesOfFreedom());
    assertEquals(1, Cochran.ofDeviations(4, 1, 2).place());
    assertEquals(0, Cochran.ofDeviations(4, 3, 3, 2).place());
    assertEquals(pairs.statistic(), Cochran.ofDifferences(3e-9, -9e-9, 2e-9).statistic(), 1e-15);
  }

  /** Pairs that agree to the last digit read show its step, not that the fifth is impossible. */
  @Test
  void allButOneZeroIsRefused() {
    String message = "all other deviations are zero beside 0.01";
    refused(message, () -> Cochran.ofDifferences(0, 0, 0, 0, 0.01));
    refused(message, () -> Cochran.ofDeviations(2, 0, 0, 0.01));
    refused(message, () -> Cochran.ofDifferences(0.1 + 0.2 - 0.3, 0, -0.01));
    assertEquals(0, new Cochran(3, 2, 0, 1).chance());
    assertEquals(1, Cochran.ofDeviations(2, 3, 3, 3).chance());
  }

  private static void refused(String message, Executable call) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
  }

  /** One zero among others is a value; the share by hand. */
  @Test
  void someZerosAreNot() {
    assertRelative(0.8, Cochran.ofDifferences(0, 0.02, 0, -0.01).statistic(), 1e-14, "share");
  }

  /** Two with two degrees of freedom each: the share is uniform, and the chance 2·(1 − C). */
  @Test
  void twoOfTwoHaveAFormula() {
    Cochran test = Cochran.ofDeviations(2, 1, 3);
    Evidence.own(SUBJECT, "two of two", "closed form", 0.2, test.chance(), 1e-13);
    assertTrue(test.significantAt(0.21));
  }
}
