package org.quietline.stats.capability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Simulation;
import org.quietline.stats.capability.Conformance.Population;
import org.quietline.stats.distribution.Normal;

class GuardCostTest {
  private static final Population PROCESS = new Population(0.182, 0.0185);
  private static final Conformance LIMIT = Conformance.atMost(0.240, 0.010);

  /** The practitioner's global risks, DEC-1: .00028 and .0023 at the limit, .00002 and .0233. */
  @Test
  void theRisksOfThePractitioner() {
    GuardCost cost = new GuardCost(LIMIT, PROCESS, 1000, 10);
    assertEquals(0.00028, cost.risks(0).consumers(), 5e-6);
    assertEquals(0.0023, cost.risks(0).producers(), 5e-5);
    assertEquals(0.00002, cost.risks(0.240 - 0.22355).consumers(), 5e-6);
    assertEquals(0.0233, cost.risks(0.240 - 0.22355).producers(), 5e-5);
    assertEquals(
        1000 * cost.risks(0).consumers() + 10 * cost.risks(0).producers(), cost.cost(0), 1e-12);
  }

  /**
   * By hand: the true value, given a result y, is normal about {@code w·y + (1 − w)·m} with
   * variance {@code w·u²}, {@code w = s²/(s² + u²)}; releasing is cheaper where it conforms with a
   * chance above bad/(bad + rework).
   */
  @ParameterizedTest
  @CsvSource({"1000, 10", "100, 10", "10, 10", "1, 10", "50000, 1"})
  void theCheapestDistanceIsThatOfTheEvenChance(double bad, double rework) {
    double u = 0.010;
    double w = 0.0185 * 0.0185 / (0.0185 * 0.0185 + u * u);
    double z = Normal.quantile(bad / (bad + rework));
    double edge = (0.240 - z * Math.sqrt(w) * u - (1 - w) * 0.182) / w;
    GuardCost cost = new GuardCost(LIMIT, PROCESS, bad, rework);
    assertEquals(0.240 - edge, cost.cheapest(), 2e-3 * u);
    Evidence.own(
        GuardCost.class,
        "cheapest guard band, costs " + bad + " and " + rework,
        "even chance given result and process, by hand",
        1 + (0.240 - edge) / u,
        1 + cost.cheapest() / u,
        2e-3);
  }

  @Test
  void betweenTwoLimitsTheCheapestOfManyIsFound() {
    GuardCost cost = new GuardCost(Conformance.between(490, 510, 4), new Population(498, 5), 30, 7);
    double best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (double guard = -20; guard <= 20; guard += 0.01) {
      if (cost.cost(guard) < least) {
        least = cost.cost(guard);
        best = guard;
      }
    }
    assertEquals(best, cost.cheapest(), 0.02);
    // where guard bands meet nothing is accepted: no bad one goes, all good ones are held
    assertEquals(0, cost.risks(12).consumers(), 1e-12);
    double good = Normal.below((510 - 498) / 5.0) - Normal.below((490 - 498) / 5.0);
    assertEquals(good, cost.risks(12).producers(), 1e-9);
  }

  /** Many batches drawn, measured and decided. */
  @Test
  void drawnBatchesCostWhatIsSaid() {
    SplittableRandom random = new SplittableRandom(12);
    GuardCost cost = new GuardCost(LIMIT, new Population(0.215, 0.0185), 100, 10);
    double sum = 0;
    int n = 400_000;
    for (int i = 0; i < n; i++) {
      double value = 0.215 + 0.0185 * Simulation.normal(random);
      boolean released = value + 0.010 * Simulation.normal(random) <= 0.240 - 0.008;
      sum += released && value > 0.240 ? 100 : !released && value <= 0.240 ? 10 : 0;
    }
    double expected = cost.cost(0.008);
    assertTrue(Math.abs(sum / n - expected) < 0.03 * expected, sum / n + " for " + expected);
  }

  @Test
  void costsMustBeAboveZero() {
    assertThrows(IllegalArgumentException.class, () -> new GuardCost(LIMIT, PROCESS, 0, 1));
    assertThrows(IllegalArgumentException.class, () -> new GuardCost(LIMIT, PROCESS, 1, -1));
  }
}
