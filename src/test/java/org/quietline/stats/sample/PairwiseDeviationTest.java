package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class PairwiseDeviationTest {
  private static final Class<?> SUBJECT = PairwiseDeviation.class;

  @Test
  void smallestDifferencesInExactFractions() {
    Reference reference = Reference.read("pairwise-deviation");
    assertEquals(6, reference.at("/expected/rows").size());
    for (int i = 0; i < 6; i++) {
      double[] values =
          reference.numbers("/data/sets/" + i, reference.at("/data/sets/" + i).size());
      double got = PairwiseDeviation.of(values);
      reference.check(SUBJECT, "deviation of set " + i, "/expected/rows/" + i, got);
    }
  }

  /** So that the small-sample factors do not rest on memory. */
  @Test
  void unbiasedForNormalValuesOfAnySmallNumber() {
    SplittableRandom random = new SplittableRandom(88);
    for (int n : new int[] {2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 20, 41}) {
      double sum = 0;
      int trials = n < 12 ? 12_000 : 2000;
      for (int i = 0; i < trials; i++) {
        sum += PairwiseDeviation.of(Simulation.normal(random, n));
      }
      Evidence.own(SUBJECT, "mean of " + n, "simulation", 1, sum / trials, 0.02);
    }
  }

  @Test
  void movesWithTheValues() {
    double[] values = {3, 1, 4, 1.5, 9, 2.6, 5};
    double[] moved = Arrays.stream(values).map(v -> 7 - 2 * v).toArray();
    assertRelative(
        2 * PairwiseDeviation.of(values), PairwiseDeviation.of(moved), 1e-14, "deviation");
  }

  @Test
  void halfWildIsStillBounded() {
    assertTrue(PairwiseDeviation.of(1, 2, 3, 4, 1e9, -1e9, 1e12) < 20);
    assertEquals(0, PairwiseDeviation.of(1, 1, 1, 5, 9));
  }
}
