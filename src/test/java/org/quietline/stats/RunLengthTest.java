package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RunLengthTest {

  /** Table from memory, recalculated in its file. */
  @Test
  void publishedIndividualsTable() {
    Reference table = Reference.read("arl-shewhart-3sigma");
    double[] shifts = table.numbers("/data/shifts_in_sigma", 16);
    double[] lengths = table.numbers("/expected/ARL", 16);
    for (int i = 0; i < 16; i++) {
      double half = i == 0 ? 0.05 : 0.005;
      assertEquals(lengths[i], RunLength.individuals(3, shifts[i]), half, "shift " + shifts[i]);
    }
  }

  /** Table from memory; the file's own recalculation has three decimals. */
  @ParameterizedTest
  @CsvSource({
    "L3.054_lam0.40, 0.40, 3.054",
    "L2.998_lam0.25, 0.25, 2.998",
    "L2.962_lam0.20, 0.20, 2.962",
    "L2.814_lam0.10, 0.10, 2.814",
    "L2.615_lam0.05, 0.05, 2.615"
  })
  void publishedWeightedMeanTables(String key, double weight, double width) {
    Reference table = Reference.read("arl-ewma-lucas-saccucci-1990");
    double[] shifts = table.numbers("/data/shifts_in_sigma", 10);
    double[] printed = table.numbers("/expected/" + key, 10);
    double[] own = table.numbers("/crosscheck/own/" + key, 10);
    for (int i = 0; i < 10; i++) {
      double actual = RunLength.weightedMean(weight, width, shifts[i]);
      String what = key + " at " + shifts[i];
      assertEquals(own[i], actual, 0.00051, what);
      // three recalled figures are off by up to one unit of their last digit
      assertEquals(printed[i], actual, printed[i] >= 100 ? 0.51 : 0.1, what);
    }
  }

  @Test
  void aloneAndTogetherAgreeWithAMarkovChain() {
    Reference table = Reference.read("practitioner-run-lengths");
    for (double[] row : table.rows("/expected/rows", 42)) {
      double actual =
          row[0] == 0
              ? RunLength.weightedMean(row[1], row[2], row[3])
              : RunLength.both(row[0], row[1], row[2], row[3]);
      String what = row[0] + ", " + row[1] + ", " + row[2] + " at " + row[3];
      assertRelative(row[4], actual, table.tolerance(), what);
      assertEquals(row[5], actual, row[5] == 500 || row[5] == 421 ? 0.5 : 0.051, what);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "3, 0.4, 3, 1",
    "2.5, 0.2, 2.7, 0.5",
    "2, 0.7, 2.2, 0",
    "1.2, 0.9, 1.5, 0.3",
    "3.5, 0.1, 2.5, 0.7"
  })
  void bothAgreesWithSimulation(double width, double weight, double weightedWidth, double shift) {
    SplittableRandom random = new SplittableRandom(61);
    int trials = 20000;
    double limit = weightedWidth * Math.sqrt(weight / (2 - weight));
    double[] lengths = new double[trials];
    for (int i = 0; i < trials; i++) {
      double mean = 0;
      double x;
      do {
        x = shift + Simulation.normal(random);
        mean = weight * x + (1 - weight) * mean;
        lengths[i]++;
      } while (Math.abs(x) <= width && Math.abs(mean) <= limit);
    }
    Summary seen = Summary.of(lengths);
    double error = seen.deviation() / Math.sqrt(trials);
    double actual = RunLength.both(width, weight, weightedWidth, shift);
    assertEquals(seen.mean(), actual, 4 * error);
  }

  @Test
  void wideLimitsOfEitherLeaveTheOther() {
    double weighted = RunLength.weightedMean(0.4, 3, 0);
    assertRelative(weighted, RunLength.both(6, 0.4, 3, 0), 1e-5, "weighted");
    double individuals = RunLength.individuals(3, 0);
    assertRelative(individuals, RunLength.both(3, 0.9, 6, 0), 1e-3, "individuals");
    assertTrue(RunLength.both(3, 0.4, 3, 0) < Math.min(weighted, individuals));
  }

  @Test
  void weightOneIsTheIndividualsChart() {
    assertEquals(RunLength.individuals(2.5, 0.4), RunLength.weightedMean(1, 2.5, 0.4));
    assertEquals(RunLength.individuals(2, 0.4), RunLength.both(2, 1, 2.5, 0.4));
    assertRelative(
        RunLength.individuals(3, 0), RunLength.weightedMean(0.9999, 3, 0), 1e-3, "near one");
  }

  @Test
  void signOfTheShiftDoesNotMatterAndAHugeShiftIsSeenAtOnce() {
    assertRelative(RunLength.both(3, 0.4, 3, 0.8), RunLength.both(3, 0.4, 3, -0.8), 1e-12, "sign");
    assertRelative(RunLength.individuals(3, 0.8), RunLength.individuals(3, -0.8), 1e-15, "sign");
    assertEquals(1, RunLength.both(3, 0.4, 3, 50), 1e-12);
    assertEquals(1, RunLength.weightedMean(0.4, 3, 50), 1e-12);
  }
}
