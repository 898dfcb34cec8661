package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class ToleranceFactorTest {
  private final Reference computed = Reference.read("tolerance-factors");

  @Test
  void twoSidedAgreesWithTheOtherOrderOfIntegration() {
    for (double[] row : computed.rows("/expected/twoSided", 28)) {
      double actual = ToleranceFactor.twoSided((int) row[0], row[1], row[2]);
      assertRelative(row[3], actual, computed.tolerance(), row[0] + ", " + row[1] + ", " + row[2]);
    }
  }

  @Test
  void oneSidedAgreesWithSciPy() {
    for (double[] row : computed.rows("/expected/oneSided", 21)) {
      double actual = ToleranceFactor.oneSided((int) row[0], row[1], row[2]);
      assertRelative(row[3], actual, computed.tolerance(), row[0] + ", " + row[1] + ", " + row[2]);
    }
  }

  @Test
  void publishedTwoSidedTable() {
    Reference table = Reference.read("tolerance-factors-two-sided-95");
    JsonNode printed = table.at("/expected/K");
    assertEquals(14, printed.size());
    List<Double> contents = List.of(0.9, 0.95, 0.99);
    for (double n : table.numbers("/data/n", 14)) {
      String key = String.valueOf((int) n);
      for (int i = 0; i < contents.size(); i++) {
        double actual = ToleranceFactor.twoSided((int) n, contents.get(i), 0.95);
        assertEquals(printed.get(key).get(i).doubleValue(), actual, 0.00501, key);
        double own = table.at("/crosscheck/own_exact/" + key).get(i).doubleValue();
        assertEquals(own, actual, 0.000501, key);
      }
    }
  }

  @Test
  void publishedConfidenceFactorsOfTheMeanButTheMisprint() {
    Reference table = Reference.read("tolerance-factors-two-sided-95");
    for (double n : table.numbers("/data/n", 14)) {
      double actual = Student.exceededWith(0.025, n - 1) / Math.sqrt(n);
      double printed = table.number("/expected/t_over_sqrt_n/" + (int) n);
      if (n == 15) {
        assertEquals(0.554, actual, 0.0005);
      } else {
        assertEquals(printed, actual, 0.00501, "n = " + n);
      }
    }
  }

  @Test
  void handbookExample() {
    Reference nist = Reference.read("nist-7.2.6.3-tolerance-intervals");
    assertEquals(
        nist.number("/expected/k1_noncentral_t"), ToleranceFactor.oneSided(43, 0.9, 0.99), 0.00051);
    assertEquals(
        nist.number("/expected/N6_k1_noncentral_t"),
        ToleranceFactor.oneSided(6, 0.9, 0.99),
        0.000051);
    assertEquals(
        nist.number("/crosscheck/own/k2_exact_by_double_integral"),
        ToleranceFactor.twoSided(43, 0.9, 0.99),
        0.000051);
    double delta = Math.sqrt(43) * Normal.quantile(0.9);
    assertEquals(nist.number("/expected/delta"), delta, 0.000051);
    assertEquals(0.99, NoncentralT.cdf(nist.number("/expected/t_quantile"), 42, delta), 0.000001);
    assertEquals(nist.number("/expected/chi2_0.01_42"), ChiSquare.quantile(0.01, 42), 0.00501);
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
