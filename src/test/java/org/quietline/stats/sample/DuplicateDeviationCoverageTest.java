package org.quietline.stats.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Coverage;
import org.quietline.stats.Simulation;

/** How often the interval of a repeatability deviation holds the truth. */
class DuplicateDeviationCoverageTest {
  private static final double TRUE = 0.3;

  @ParameterizedTest
  @ValueSource(ints = {5, 8, 12, 20})
  void normalReadings(int pairs) {
    int trials = Coverage.trials(3000, 100_000);
    SplittableRandom random = new SplittableRandom(200 + pairs);
    int held = 0;
    for (int i = 0; i < trials; i++) {
      double[] differences = new double[pairs];
      for (int j = 0; j < pairs; j++) {
        differences[j] = TRUE * Math.sqrt(2) * Simulation.normal(random);
      }
      held += DuplicateDeviation.of(differences).interval(0.95).contains(TRUE) ? 1 : 0;
    }
    Coverage.check(
        DuplicateDeviation.class,
        "repeatability deviation, normal readings",
        pairs + " pairs",
        0.95,
        held,
        trials,
        0.945,
        0.955);
  }

  /** Groups of two to four replicates with means of their own. */
  @ParameterizedTest
  @ValueSource(ints = {5, 8, 12, 20})
  void unequalGroups(int groups) {
    int trials = Coverage.trials(2000, 50_000);
    SplittableRandom random = new SplittableRandom(300 + groups);
    int held = 0;
    for (int i = 0; i < trials; i++) {
      List<double[]> all = new ArrayList<>();
      for (int j = 0; j < groups; j++) {
        double mean = 10 * random.nextDouble();
        double[] group = Simulation.normal(random, 2 + j % 3);
        for (int k = 0; k < group.length; k++) {
          group[k] = mean + TRUE * group[k];
        }
        all.add(group);
      }
      held += PooledDeviation.ofGroups(all).interval(0.95).contains(TRUE) ? 1 : 0;
    }
    Coverage.check(
        PooledDeviation.class,
        "pooled deviation, 2 to 4 replicates",
        groups + " groups",
        0.95,
        held,
        trials,
        0.945,
        0.955);
  }

  /**
   * Readings to a step of the true deviation: the rounding widens s, and the interval goes with it.
   */
  @ParameterizedTest
  @ValueSource(ints = {5, 8, 12, 20})
  void coarseReadings(int pairs) {
    int trials = Coverage.trials(3000, 100_000);
    SplittableRandom random = new SplittableRandom(400 + pairs);
    int held = 0;
    for (int i = 0; i < trials; i++) {
      double[] differences = new double[pairs];
      for (int j = 0; j < pairs; j++) {
        double level = random.nextDouble();
        double a = TRUE * Math.rint(level + Simulation.normal(random));
        differences[j] = a - TRUE * Math.rint(level + Simulation.normal(random));
      }
      held += DuplicateDeviation.of(differences).interval(0.95).contains(TRUE) ? 1 : 0;
    }
    Coverage.check(
        DuplicateDeviation.class,
        "repeatability deviation, readings to a step of one deviation",
        pairs + " pairs",
        0.95,
        held,
        trials,
        0.93,
        0.96);
  }
}
