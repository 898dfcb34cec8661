package org.quietline.stats.runlength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.sample.Summary;

class RunLengthTest {

  /** Table from memory, recalculated in its file. */
  @Test
  void publishedIndividualsTable() {
    Reference table = Reference.read("arl-shewhart-3sigma");
    double[] shifts = table.numbers("/data/shifts_in_sigma", 16);
    for (int i = 0; i < 16; i++) {
      String what = "average, single values beyond 3, shift " + shifts[i];
      double actual = RunLength.individuals(3, shifts[i]);
      // printed to two decimals; zeros at the end are not in the file
      table.check(RunLength.class, what, "/expected/ARL/" + i, actual, i == 0 ? 0.05 : 0.005);
      RunLengthDistribution whole = RunLength.of(Chart.individuals(3), Change.shift(shifts[i]));
      assertRelative(actual, whole.average(), 1e-12, what);
      double chance = 1 / actual;
      assertRelative(Math.sqrt(1 - chance) / chance, whole.standardDeviation(), 1e-9, what);
      assertEquals(
          Math.ceil(Math.log(0.5) / Math.log1p(-chance)), whole.quantile(0.5), what + " median");
      assertRelative(1 - Math.pow(1 - chance, 40), whole.chanceWithin(40), 1e-12, what + " in 40");
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
      String what =
          "average, weighted mean " + weight + ", width " + width + ", shift " + shifts[i];
      assertEquals(own[i], actual, 0.00051, what);
      // three recalled figures are off by up to one unit of their last digit
      table.check(
          RunLength.class,
          what,
          "/expected/" + key + "/" + i,
          actual,
          printed[i] >= 100 ? 0.51 : 0.1);
    }
  }

  @Test
  void aloneAndTogetherAgreeWithAMarkovChain() {
    Reference table = Reference.read("practitioner-run-lengths");
    int at = 0;
    for (double[] row : table.rows("/expected/rows", 42)) {
      double actual =
          row[0] == 0
              ? RunLength.weightedMean(row[1], row[2], row[3])
              : RunLength.both(row[0], row[1], row[2], row[3]);
      String what =
          "average, single values "
              + (row[0] == 0 ? "not watched" : "beyond " + row[0])
              + ", weighted mean "
              + row[1]
              + ", width "
              + row[2]
              + ", shift "
              + row[3];
      table.check(RunLength.class, what, "/expected/rows/" + at + "/4", actual);
      assertEquals(row[5], actual, row[5] == 500 || row[5] == 421 ? 0.5 : 0.051, what);
      at++;
    }
  }

  /** The integral equation backwards in time and by elimination, not forwards and by steps. */
  @ParameterizedTest
  @CsvSource({
    "100, 0.4, 3, 1", "100, 0.05, 2.6, 0", "100, 0.02, 3, 0.2", "3, 0.4, 3, 0",
        "2.5, 0.2, 2.7, 0.5",
    "2, 0.7, 2.2, 0", "1.2, 0.9, 1.5, 0.3", "3.5, 0.1, 2.5, 0.7", "3, 0.3, 5, 0", "100, 0.3, 5.5, 0"
  })
  void agreesWithTheIntegralEquationSolved(
      double width, double weight, double weightedWidth, double shift) {
    Chart mean = Chart.weightedMean(weight, weightedWidth);
    Chart chart = width == 100 ? mean : Chart.together(Chart.individuals(width), mean);
    Evidence.own(
        RunLength.class,
        "average, " + chart + ", shift " + shift,
        "integral equation solved by elimination",
        new RunLengthEquation(width, weight, weightedWidth, shift).atCentre(),
        RunLength.of(chart, Change.shift(shift)).average(),
        1e-7);
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
        RunLength.individuals(2.5, 0.4),
        RunLength.of(Chart.weightedMean(1, 2.5, Chart.Limits.GROWING), Change.shift(0.4)).average(),
        1e-12,
        "growing");
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
