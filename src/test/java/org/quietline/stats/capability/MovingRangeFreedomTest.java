package org.quietline.stats.capability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.sample.MovingRange;

class MovingRangeFreedomTest {
  @Test
  void recomputed() {
    Reference reference = Reference.read("moving-range-freedom");
    int at = 0;
    for (double[] row : reference.rows("/expected/rows", 11)) {
      int n = (int) row[0];
      double freedom = WithinDeviation.freedomOfMovingRange(n);
      reference.check(
          WithinDeviation.class,
          "degrees of freedom of the mean moving range of " + n,
          "/expected/rows/" + at + "/1",
          freedom);
      assertEquals(0.61 * (n - 1) + 0.3, freedom, 0.01 * freedom + 0.09, "about, n = " + n);
      at++;
    }
  }

  @Test
  void theSameAsOfValues() {
    assertEquals(
        WithinDeviation.fromMovingRange(1, 4, 2, 6, 5).degreesOfFreedom(),
        WithinDeviation.freedomOfMovingRange(5),
        0.0);
  }

  /** The squared deviation over its mean, {@code c4(ν)^−2 − 1}, about 1/(2ν). */
  @Test
  void scatterBySimulation() {
    SplittableRandom random = new SplittableRandom(20261106);
    int trials = 200_000;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < trials; i++) {
      double s = MovingRange.deviation(MovingRange.mean(Simulation.normal(random, 12)));
      sum += s;
      squares += s * s;
    }
    double relative = squares / trials / Math.pow(sum / trials, 2) - 1;
    double freedom = WithinDeviation.freedomOfMovingRange(12);
    // c4^-2 − 1 = 1/(2ν) + 1/(8ν²) − 1/(16ν³) + …
    double expected = 1 / (2 * freedom) + 1 / (8 * freedom * freedom) - Math.pow(freedom, -3) / 16;
    Evidence.own(
        WithinDeviation.class,
        "relative variance of the mean moving range of 12",
        "simulation of 200 000 baselines",
        relative,
        expected,
        0.02);
  }

  @Test
  void needsThreeValues() {
    assertEquals(
        "n must be at least 3, is 2",
        assertThrows(IllegalArgumentException.class, () -> WithinDeviation.freedomOfMovingRange(2))
            .getMessage());
  }
}
