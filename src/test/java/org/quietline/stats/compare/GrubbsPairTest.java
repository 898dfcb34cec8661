package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class GrubbsPairTest {
  private static final Class<?> SUBJECT = GrubbsPair.class;

  /** The published values for 1 and 5 %, either end; n = 15 prints 0.2530 for 0.25311. */
  @ParameterizedTest
  @ValueSource(ints = {4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 40})
  void publishedCriticalValues(int n) {
    Reference table = Reference.read("grubbs-pair-iso-5725-2");
    double[] chances = table.numbers("/data/chances", 2);
    for (int i = 0; i < chances.length; i++) {
      double got = GrubbsPair.criticalValue(Suspect.EITHER, n, chances[i]);
      String what = chances[i] + " value of " + n;
      table.check(SUBJECT, what, "/expected/" + n + "/" + i, got, 0.00015);
    }
  }

  @Test
  void simulatedOutside() {
    Reference reference = Reference.read("grubbs-pair-simulated");
    var rows = reference.rows("/expected/rows", 14);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      double got = chance((int) row[0], row[1]);
      String what = "chance of at most " + row[1] + " of " + (int) row[0];
      reference.check(SUBJECT, what, "/expected/rows/" + i + "/2", got, 4 * row[3]);
    }
  }

  /** The chance of a ratio at one end, by a sample that has it. */
  private static double chance(int n, double ratio) {
    double[] values = new double[n];
    for (int i = 2; i < n; i++) {
      values[i] = i % 2 == 0 ? 1 : -1;
    }
    if (n % 2 == 1) {
      values[n - 1] = 0;
    }
    double inner = n % 2 == 0 ? n - 2 : n - 3;
    double between = inner * (1 / ratio - 1);
    double away = Math.sqrt(between * n / (2.0 * (n - 2)));
    values[0] = away;
    values[1] = away;
    GrubbsPair test = GrubbsPair.of(Suspect.LARGEST, values);
    assertRelative(ratio, test.statistic(), 1e-12, "ratio");
    assertEquals(List.of(0, 1), test.places());
    assertEquals(OutlierTest.Certainty.EXACT, test.certainty());
    return test.chance();
  }

  /**
   * Four values: the sample is a point of a sphere, and for a small ratio the region a narrow band
   * along the great circle where the lower two are equal.
   */
  @Test
  void fourValuesInTheLimit() {
    double band = 6 * 2 * Math.atan(Math.sqrt(2)) / (2 * Math.PI);
    double c = 1e-8;
    double root = GrubbsPair.criticalValue(Suspect.LARGEST, 4, band * Math.sqrt(c));
    Evidence.own(SUBJECT, "four values, small ratio", "area on a sphere", c, root, 2e-4);
  }

  /** The same band, of which a ratio as small as its first double keeps all digits. */
  @Test
  void nearlyEqualOthers() {
    double band = 6 * 2 * Math.atan(Math.sqrt(2)) / (2 * Math.PI);
    for (double gap : new double[] {1e-6, 1e-7, 1e-9}) {
      GrubbsPair test = GrubbsPair.of(Suspect.LARGEST, 0, gap, 1, 2);
      assertRelative(gap * gap / 2 / 2.75, test.statistic(), 3e-6, "ratio");
      assertRelative(band * Math.sqrt(test.statistic()), test.chance(), 3e-7, "gap " + gap);
    }
  }

  /** The chance of a small ratio is that of n − 3 dimensions: it grows with its power (n − 3)/2. */
  @ParameterizedTest
  @ValueSource(ints = {5, 6, 8})
  void smallRatiosScale(int n) {
    double one = chance(n, 1e-8) / Math.pow(1e-8, (n - 3) / 2.0);
    double less = chance(n, 1e-12) / Math.pow(1e-12, (n - 3) / 2.0);
    assertRelative(one, less, 1e-3, "per power");
  }

  @ParameterizedTest
  @ValueSource(ints = {4, 6, 12, 25})
  void simulatedHere(int n) {
    SplittableRandom random = new SplittableRandom(n);
    double critical = GrubbsPair.criticalValue(Suspect.LARGEST, n, 0.1);
    int trials = 10_000;
    int low = 0;
    int high = 0;
    for (int i = 0; i < trials; i++) {
      double[] x = Simulation.normal(random, n);
      Arrays.sort(x);
      high += ratio(x, 0, n - 2) <= critical ? 1 : 0;
      low += ratio(x, 2, n) <= critical ? 1 : 0;
    }
    Simulation.assertShare(0.1, low, trials);
    Simulation.assertShare(0.1, high, trials);
  }

  private static double ratio(double[] sorted, int from, int to) {
    return squares(sorted, from, to) / squares(sorted, 0, sorted.length);
  }

  private static double squares(double[] values, int from, int to) {
    double mean = 0;
    for (int i = from; i < to; i++) {
      mean += values[i] / (to - from);
    }
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += (values[i] - mean) * (values[i] - mean);
    }
    return sum;
  }

  /** A pair that hides itself from the test of one. */
  @Test
  void findsWhatHides() {
    double[] values = {5.1, 5.0, 5.2, 7.9, 5.1, 4.9, 8.0, 5.0};
    assertFalse(Grubbs.of(Suspect.EITHER, values).significantAt(0.05));
    GrubbsPair pair = GrubbsPair.of(Suspect.EITHER, values);
    assertTrue(pair.significantAt(0.01));
    assertEquals(List.of(3, 6), pair.places());
    assertEquals(OutlierTest.Certainty.AT_MOST, pair.certainty());
    GrubbsPair high = GrubbsPair.of(Suspect.LARGEST, values);
    assertRelative(2 * high.chance(), pair.chance(), 1e-12, "both ends");
    assertEquals(high.statistic(), pair.statistic());
    double[] turned = Arrays.stream(values).map(v -> -3 * v).toArray();
    GrubbsPair low = GrubbsPair.of(Suspect.SMALLEST, turned);
    assertEquals(List.of(3, 6), low.places());
    assertRelative(high.statistic(), low.statistic(), 1e-13, "turned");
    assertRelative(high.statistic(), GrubbsPair.of(Suspect.EITHER, turned).statistic(), 1e-13, "");
    assertFalse(GrubbsPair.of(Suspect.SMALLEST, values).significantAt(0.5));
  }

  @Test
  void distributionOfTheLargestSumsUp() {
    for (int n : new int[] {3, 4, 5, 8, 20, 30}) {
      Evidence.own(
          LargestDeviation.class,
          "whole distribution of " + n,
          "is one",
          1,
          LargestDeviation.of(n).total(),
          1e-7);
    }
    assertEquals(1, LargestDeviation.of(59).total(), 2e-6);
    double most = GrubbsPair.criticalValue(Suspect.LARGEST, 60, 0.05);
    assertTrue(most > GrubbsPair.criticalValue(Suspect.LARGEST, 59, 0.05));
  }

  @Test
  void largestOfFourSimulated() {
    SplittableRandom random = new SplittableRandom(4);
    LargestDeviation four = LargestDeviation.of(4);
    LargestDeviation nine = LargestDeviation.of(9);
    int trials = 20_000;
    int overFour = 0;
    int overNine = 0;
    for (int i = 0; i < trials; i++) {
      overFour += largest(Simulation.normal(random, 4)) > 0.7 ? 1 : 0;
      overNine += largest(Simulation.normal(random, 9)) > 0.55 ? 1 : 0;
    }
    Simulation.assertShare(four.above(0.7), overFour, trials);
    Simulation.assertShare(nine.above(0.55), overNine, trials);
    assertEquals(1, four.above(1.0 / 3));
    assertEquals(1, four.above(-1));
    assertEquals(0, four.above(1));
    assertTrue(four.above(0.34) < 1);
  }

  private static double largest(double[] x) {
    double mean = Arrays.stream(x).average().orElseThrow();
    double max = Arrays.stream(x).max().orElseThrow();
    int n = x.length;
    return (max - mean) / Math.sqrt(squares(x, 0, n) * (n - 1) / n);
  }
}
