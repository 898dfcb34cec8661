package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.runlength.BaselineRunLength;

class SignalChanceTest {
  private final Reference reference = Reference.read("signal-chance");

  private static SignalChance of(JsonNode row) {
    int n = row.get(1).intValue();
    return row.get(0).asText().equals("sample")
        ? SignalChance.fromSampleDeviation(n)
        : SignalChance.fromMovingRange(n);
  }

  private void check(String what, String pointer, double got) {
    reference.check(SignalChance.class, what, pointer, got);
  }

  @Test
  void singleValuesAndWeightedMeans() {
    JsonNode rows = reference.at("/expected/rows");
    assertEquals(64, rows.size());
    for (int i = 0; i < rows.size(); i++) {
      JsonNode row = rows.get(i);
      SignalChance chance = of(row);
      double width = row.get(2).doubleValue();
      double weight = row.get(3).doubleValue();
      int since = row.get(4).intValue();
      String words = "width " + width + ", weight " + weight + ", since " + since + ", " + chance;
      String at = "/expected/rows/" + i;
      check("next, " + words, at + "/5", chance.ofWeightedMean(width, weight, since));
      check("own, " + words, at + "/6", chance.ofOwnWeightedMean(width, weight, since));
      if (weight == 1) {
        check("next single, " + words, at + "/5", chance.ofNextValue(width));
        check("own single, " + words, at + "/6", chance.ofOwnValue(width));
      }
    }
  }

  @Test
  void patternsAndMovingRanges() {
    JsonNode rows = reference.at("/expected/patterns");
    assertEquals(42, rows.size());
    for (int i = 0; i < rows.size(); i++) {
      JsonNode row = rows.get(i);
      RunRule.Beyond rule =
          new RunRule.Beyond(
              row.get(2).intValue(), row.get(3).intValue(), row.get(4).doubleValue());
      int since = row.get(5).intValue();
      String words = rule + ", since " + since + ", " + of(row);
      check(words, "/expected/patterns/" + i + "/6", of(row).ofPattern(rule, since));
    }
    JsonNode ranges = reference.at("/expected/ranges");
    assertEquals(16, ranges.size());
    for (int i = 0; i < ranges.size(); i++) {
      double width = ranges.get(i).get(2).doubleValue();
      String words = "moving range, width " + width + ", " + of(ranges.get(i));
      check(words, "/expected/ranges/" + i + "/3", of(ranges.get(i)).ofMovingRange(width));
    }
  }

  @Test
  void patternsWhereLimitsAreRight() {
    Reference chances = Reference.read("run-rule-chances");
    JsonNode rows = chances.at("/expected/rows");
    int found = 0;
    for (int i = 0; i < rows.size(); i++) {
      JsonNode row = rows.get(i);
      boolean run = row.get(0).asText().equals("SameSide");
      if (run || row.get(0).asText().equals("Beyond")) {
        int count = row.get(1).intValue();
        RunRule.Beyond rule =
            new RunRule.Beyond(
                count, run ? count : row.get(2).intValue(), run ? 0 : row.get(3).doubleValue());
        chances.check(
            SignalChance.class,
            "limits that are right, " + row,
            "/expected/rows/" + i + "/4",
            SignalChance.ofPatternIfRight(rule, 100));
        found++;
      }
    }
    assertTrue(found >= 5, "found " + found);
    assertEquals(0, SignalChance.ofPatternIfRight(new RunRule.Beyond(8, 8, 0), 7), 0.0);
    assertEquals(1 / 128.0, SignalChance.ofPatternIfRight(new RunRule.Beyond(8, 8, 0), 8), 1e-16);
    // of two values, both
    double p = Normal.above(2);
    assertRelative(
        2 * p * p, SignalChance.ofPatternIfRight(new RunRule.Beyond(2, 3, 2), 2), 1e-13, "two");
  }

  /** A pattern of one is a single value; a very long baseline is as good as known limits. */
  @Test
  void edges() {
    SignalChance chance = SignalChance.fromSampleDeviation(9);
    assertRelative(
        chance.ofNextValue(3), chance.ofPattern(new RunRule.Beyond(1, 1, 3), 1), 1e-9, "one");
    SignalChance known = SignalChance.fromSampleDeviation(1_000_000);
    assertRelative(Normal.outside(3), known.ofNextValue(3), 1e-4, "known");
    assertRelative(Normal.outside(3), known.ofOwnValue(3), 1e-4, "known, own");
    RunRule.Beyond run = new RunRule.Beyond(8, 8, 0);
    assertRelative(1 / 128.0, known.ofPattern(run, 8), 1e-4, "run");
    // of n values none is farther than (n - 1)/sqrt(n) sample deviations from their mean
    assertEquals(0, SignalChance.fromSampleDeviation(10).ofOwnValue(2.8461), 0.0);
    assertTrue(SignalChance.fromSampleDeviation(10).ofOwnValue(2.8460) > 0);
    assertEquals(1, SignalChance.fromSampleDeviation(5).ofNextValue(1e-300), 1e-12);
    assertEquals(0, SignalChance.fromSampleDeviation(3).ofOwnWeightedMean(3, 1e-9, 3), 0.0);
  }

  @Test
  void aWeightOfOneForgetsEverything() {
    for (SignalChance chance :
        new SignalChance[] {SignalChance.fromMovingRange(3), SignalChance.fromSampleDeviation(7)}) {
      assertEquals(chance.ofNextValue(2.5), chance.ofWeightedMean(2.5, 1, 6), 1e-15);
      assertEquals(chance.ofOwnValue(2.5), chance.ofOwnWeightedMean(2.5, 1, 6), 1e-15);
      assertEquals(chance.ofNextValue(2.5), chance.ofWeightedMean(2.5, 0.3, 1), 1e-15);
    }
  }

  /** The exact chance over all baselines, by integration over the whole distribution. */
  @ParameterizedTest
  @ValueSource(ints = {5, 8, 20, 60, 200})
  void sampleDeviationsAreExact(int n) {
    for (double width : new double[] {2, 3, 4}) {
      Evidence.own(
          SignalChance.class,
          "next value, n = " + n + ", width " + width,
          "BaselineRunLength, by integration over baselines",
          BaselineRunLength.fromSampleDeviation(n, width, 0).chancePerValue(),
          SignalChance.fromSampleDeviation(n).ofNextValue(width),
          2e-7);
    }
  }

  /** By how much of itself the chance for three moving-range deviations is too large. */
  @ParameterizedTest
  @CsvSource({"15, 0.055", "20, 0.041", "30, 0.025", "60, 0.009"})
  void movingRangesAreNearlyExact(int n, double stated) {
    double exact = BaselineRunLength.fromMovingRange(n, 3, 0).chancePerValue();
    double got = SignalChance.fromMovingRange(n).ofNextValue(3);
    assertEquals(stated, got / exact - 1, 0.0006);
    Evidence.own(
        SignalChance.class,
        "next value, moving ranges, n = " + n,
        "BaselineRunLength, exact distribution of the mean moving range",
        exact,
        got,
        0.06);
  }

  private static double[] limits(boolean moving, double[] values) {
    ControlLimits limits =
        moving ? ControlLimits.fromMovingRange(values) : ControlLimits.fromSampleDeviation(values);
    return new double[] {limits.centre(), limits.deviation()};
  }

  /**
   * Weighted means, patterns and ranges of new values by simulation; for moving ranges within the 6
   * % by which their chance is about.
   */
  @ParameterizedTest
  @CsvSource({"10, false", "20, false", "20, true"})
  void newValuesBySimulation(int n, boolean moving) {
    SplittableRandom random = new SplittableRandom(20261103 + n);
    int trials = 150_000;
    int[] seen = new int[5];
    RunRule.Beyond two = new RunRule.Beyond(2, 3, 2);
    RunRule.Beyond eight = new RunRule.Beyond(8, 8, 0);
    for (int i = 0; i < trials; i++) {
      double[] base = limits(moving, Simulation.normal(random, n));
      double[] next = Simulation.normal(random, 8);
      var trace = new WeightedMean(base[0], base[1], 0.4, 3).trace(next, new boolean[8]);
      seen[0] += trace.get(1).beyond() ? 1 : 0;
      seen[1] += trace.get(7).beyond() ? 1 : 0;
      double[] u = Arrays.stream(next).map(v -> (v - base[0]) / base[1]).toArray();
      seen[2] += RunPattern.of(two, new double[] {u[5], u[6], u[7]}).isEmpty() ? 0 : 1;
      seen[3] += RunPattern.of(eight, u).isEmpty() ? 0 : 1;
      seen[4] += Math.abs(u[7] - u[6]) > 3.686 ? 1 : 0;
    }
    SignalChance chance =
        moving ? SignalChance.fromMovingRange(n) : SignalChance.fromSampleDeviation(n);
    near(moving, chance.ofWeightedMean(3, 0.4, 2), seen[0], trials);
    near(moving, chance.ofWeightedMean(3, 0.4, 8), seen[1], trials);
    near(moving, chance.ofPattern(two, 3), seen[2], trials);
    near(moving, chance.ofPattern(eight, 8), seen[3], trials);
    near(moving, chance.ofMovingRange(3.686), seen[4], trials);
  }

  private static void near(boolean about, double expected, int seen, int trials) {
    if (!about) {
      Simulation.assertShare(expected, seen, trials);
      return;
    }
    double share = (double) seen / trials;
    double error = 4 * Math.sqrt(share / trials);
    assertEquals(expected, share, 0.06 * expected + error);
  }

  /** Values of the baseline itself: exact for sample deviations, about for moving ranges. */
  @ParameterizedTest
  @CsvSource({"10, false", "20, false", "20, true", "15, true", "30, true", "60, true"})
  void ownValuesBySimulation(int n, boolean moving) {
    SplittableRandom random = new SplittableRandom(20261104 + n);
    int trials = 120_000;
    long single = 0;
    int[] seen = new int[2];
    for (int i = 0; i < trials; i++) {
      double[] values = Simulation.normal(random, n);
      double[] base = limits(moving, values);
      for (double v : values) {
        single += Math.abs(v - base[0]) > (moving ? 3 : 2.5) * base[1] ? 1 : 0;
      }
      boolean[] restarts = new boolean[n];
      restarts[4] = true;
      var trace = new WeightedMean(base[0], base[1], 0.4, moving ? 3 : 2.5).trace(values, restarts);
      seen[0] += trace.get(5).beyond() ? 1 : 0;
      seen[1] += trace.get(n - 1).beyond() ? 1 : 0;
    }
    SignalChance chance =
        moving ? SignalChance.fromMovingRange(n) : SignalChance.fromSampleDeviation(n);
    if (moving) {
      // the shares that the javadoc states
      double[] share = {
        single / (double) n / trials, shareOf(seen[0], trials), shareOf(seen[1], trials)
      };
      assertEquals(0.0027, chance.ofOwnValue(3), 1e-6);
      assertTrue(share[0] > 0.00238 && share[0] < 0.00270, "single " + share[0]);
      assertTrue(share[1] > 0.0027 && share[1] < 0.0037, "after two " + share[1]);
      assertTrue(share[2] > 0.0028 && share[2] < 0.0049, "after many " + share[2]);
      return;
    }
    double error = Math.sqrt(chance.ofOwnValue(2.5) / n / trials);
    assertEquals(chance.ofOwnValue(2.5), (double) single / n / trials, 4 * error);
    Simulation.assertShare(chance.ofOwnWeightedMean(2.5, 0.4, 2), seen[0], trials);
    Simulation.assertShare(chance.ofOwnWeightedMean(2.5, 0.4, n - 4), seen[1], trials);
  }

  private static double shareOf(int seen, int trials) {
    return (double) seen / trials;
  }
}
