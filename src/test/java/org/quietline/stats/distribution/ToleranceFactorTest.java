package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.sample.Summary;

class ToleranceFactorTest {
  private static final Class<?> SUBJECT = ToleranceFactor.class;
  private final Reference computed = Reference.read("tolerance-factors");

  @Test
  void twoSidedAgreesWithTheOtherOrderOfIntegration() {
    List<double[]> rows = computed.rows("/expected/twoSided", 28);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      double actual = ToleranceFactor.twoSided((int) row[0], row[1], row[2]);
      computed.check(
          SUBJECT, "two-sided of " + list(row), "/expected/twoSided/" + i + "/3", actual);
    }
  }

  @Test
  void oneSidedAgreesWithSciPy() {
    List<double[]> rows = computed.rows("/expected/oneSided", 21);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      double actual = ToleranceFactor.oneSided((int) row[0], row[1], row[2]);
      computed.check(
          SUBJECT, "one-sided of " + list(row), "/expected/oneSided/" + i + "/3", actual);
    }
  }

  private static String list(double[] row) {
    return (int) row[0] + ", " + row[1] + ", " + row[2];
  }

  @Test
  void publishedTwoSidedTableAllCells() {
    Reference table = Reference.read("tolerance-factors-two-sided-95");
    JsonNode printed = table.at("/expected/K");
    assertEquals(14, printed.size());
    List<Double> contents = List.of(0.9, 0.95, 0.99);
    for (double n : table.numbers("/data/n", 14)) {
      String key = String.valueOf((int) n);
      for (int i = 0; i < contents.size(); i++) {
        double actual = ToleranceFactor.twoSided((int) n, contents.get(i), 0.95);
        String what = "two-sided of " + key + ", " + contents.get(i) + ", 0.95";
        table.check(SUBJECT, what, "/expected/K/" + key + "/" + i, actual, 0.00501);
        double own = table.at("/crosscheck/own_exact/" + key).get(i).doubleValue();
        assertEquals(own, actual, 0.000501, key);
      }
    }
  }

  /** 0.50 for 15 values is a misprint of 0.55. */
  @Test
  void publishedConfidenceFactorsOfTheMeanButTheMisprint() {
    Reference table = Reference.read("tolerance-factors-two-sided-95");
    for (double n : table.numbers("/data/n", 14)) {
      double actual = Student.exceededWith(0.025, n - 1) / Math.sqrt(n);
      String at = "/expected/t_over_sqrt_n/" + (int) n;
      if (n == 15) {
        assertEquals(0.5, table.number(at), "the misprint");
        assertEquals(0.554, actual, 0.0005);
      } else {
        table.check(Student.class, "t(0.975)/sqrt(n) for " + (int) n, at, actual, 0.00501);
      }
    }
  }

  /**
   * The handbook's own factors but Howe's and Natrella's approximations, which are not made here.
   */
  @Test
  void handbookExample() {
    Reference nist = Reference.read("nist-7.2.6.3-tolerance-intervals");
    nist.check(
        SUBJECT,
        "one-sided of 43, 0.9, 0.99",
        "/expected/k1_noncentral_t",
        ToleranceFactor.oneSided(43, 0.9, 0.99));
    nist.check(
        SUBJECT,
        "one-sided of 6, 0.9, 0.99",
        "/expected/N6_k1_noncentral_t",
        ToleranceFactor.oneSided(6, 0.9, 0.99));
    nist.check(
        SUBJECT,
        "two-sided of 43, 0.9, 0.99, exact",
        "/crosscheck/own/k2_exact_by_double_integral",
        ToleranceFactor.twoSided(43, 0.9, 0.99));
    double delta = Math.sqrt(43) * Normal.quantile(0.9);
    nist.check(Normal.class, "noncentrality for 43, 0.9", "/expected/delta", delta);
    nist.check(
        SUBJECT,
        "noncentral t exceeded with 1 %",
        "/expected/t_quantile",
        Math.sqrt(43) * ToleranceFactor.oneSided(43, 0.9, 0.99));
    nist.check(
        ChiSquare.class,
        "1 % point with 42",
        "/expected/chi2_0.01_42",
        ChiSquare.quantile(0.01, 42));
    double howe =
        Normal.quantile(0.95) * Math.sqrt(42 * (1 + 1 / 43.0) / ChiSquare.quantile(0.01, 42));
    nist.check(ChiSquare.class, "Howe's factor of 43, 0.9, 0.99", "/expected/k2_howe", howe);
  }

  @Test
  void holdsItsContentAsOftenAsItSays() {
    SplittableRandom random = new SplittableRandom(31);
    int trials = 4000;
    int held = 0;
    double k = ToleranceFactor.twoSided(8, 0.9, 0.8);
    for (int i = 0; i < trials; i++) {
      Summary s = Summary.of(Simulation.normal(random, 8));
      double inside =
          Normal.below(s.mean() + k * s.deviation()) - Normal.below(s.mean() - k * s.deviation());
      held += inside >= 0.9 ? 1 : 0;
    }
    Simulation.assertShare(0.8, held, trials);
  }

  @Test
  void contentBelowOneHalfMayAskForLessThanTheMean() {
    double k = ToleranceFactor.oneSided(20, 0.2, 0.9);
    assertTrue(k < 0, () -> "k is " + k);
    double mirrored = -ToleranceFactor.oneSided(20, 0.8, 0.1);
    assertEquals(mirrored, k, 1e-10);
  }
}
