package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class VonNeumannTestTest {
  private static final Class<?> SUBJECT = VonNeumannTest.class;

  @Test
  void agreesWithImhofsIntegral() {
    Reference reference = Reference.read("von-neumann-ratio");
    var rows = reference.rows("/expected/rows", 10);
    for (int i = 0; i < rows.size(); i++) {
      VonNeumannTest test = new VonNeumannTest((int) rows.get(i)[0], rows.get(i)[1]);
      String what = "chance below " + test.ratio() + " of " + test.n();
      reference.check(SUBJECT, what, "/expected/rows/" + i + "/2", test.chanceBelow());
    }
    var critical = reference.rows("/expected/critical", 4);
    for (int i = 0; i < critical.size(); i++) {
      double[] row = critical.get(i);
      double got = VonNeumannTest.criticalValue((int) row[0], row[1]);
      String what = "critical value of " + (int) row[0] + " at " + row[1];
      reference.check(SUBJECT, what, "/expected/critical/" + i + "/2", got);
    }
  }

  /** Held to two units of the last digit, the table's own error; n = 8 to twenty. */
  @ParameterizedTest
  @ValueSource(ints = {4, 5, 6, 7, 8, 9, 10, 11, 12, 15, 20})
  void hartsTable(int n) {
    Reference hart = Reference.read("von-neumann-hart-1942");
    double[] chances = hart.numbers("/data/chances", 2);
    double allowed = n == 8 ? 0.0020 : 0.0002;
    for (int i = 0; i < chances.length; i++) {
      String what = chances[i] + " point of " + n;
      double got = VonNeumannTest.criticalValue(n, chances[i]);
      hart.check(SUBJECT, what, "/expected/" + n + "/" + i, got, allowed);
    }
  }

  /** For three values the ratio is {@code 1 + 2·sin²} of an angle that is uniform. */
  @ParameterizedTest
  @ValueSource(doubles = {1.0001, 1.3, 2, 2.9, 2.9999})
  void threeValuesHaveAFormula(double q) {
    double expected = 2 / Math.PI * Math.asin(Math.sqrt((q - 1) / 2));
    double got = new VonNeumannTest(3, q).chanceBelow();
    Evidence.own(SUBJECT, "three values, ratio " + q, "closed form", expected, got, 1e-11);
  }

  @ParameterizedTest
  @ValueSource(ints = {4, 7, 20})
  void simulatedRatios(int n) {
    SplittableRandom random = new SplittableRandom(n);
    double limit = VonNeumannTest.criticalValue(n, 0.1);
    int trials = 20_000;
    int below = 0;
    int above = 0;
    for (int i = 0; i < trials; i++) {
      double ratio = VonNeumannTest.of(Simulation.normal(random, n)).ratio();
      below += ratio < limit ? 1 : 0;
      above += ratio > 4 - limit ? 1 : 0;
    }
    Simulation.assertShare(0.1, below, trials);
    Simulation.assertShare(0.1, above, trials);
  }

  @Test
  void symmetricAboutTwo() {
    assertEquals(0.5, new VonNeumannTest(9, 2).chanceAbove(), 1e-13);
    assertEquals(1, new VonNeumannTest(9, 2).chance(), 1e-13);
    VonNeumannTest low = new VonNeumannTest(9, 1.1);
    VonNeumannTest high = new VonNeumannTest(9, 2.9);
    assertRelative(low.chanceBelow(), high.chanceAbove(), 1e-12, "tails");
    assertRelative(2 * low.chanceBelow(), high.chance(), 1e-12, "two-sided");
    assertEquals(1, low.chanceBelow() + low.chanceAbove(), 1e-13);
  }

  @Test
  void beyondWhatIsPossible() {
    double end = 2 - 2 * Math.cos(Math.PI / 5);
    assertEquals(0, new VonNeumannTest(5, end - 1e-9).chanceBelow());
    assertEquals(1, new VonNeumannTest(5, end - 1e-9).chanceAbove());
    assertTrue(new VonNeumannTest(5, end + 1e-6).chanceBelow() > 0);
    assertEquals(0, new VonNeumannTest(5, 4).chanceAbove());
    assertEquals(1, new VonNeumannTest(5, 4).chanceBelow());
  }

  @Test
  void manyValuesAreNearlyNormal() {
    int n = 1000;
    double deviation = 2 * Math.sqrt((n - 2.0) / (n - 1.0) / (n + 1.0));
    assertEquals(2 - 1.6448536 * deviation, VonNeumannTest.criticalValue(n, 0.05), 2e-4);
  }

  /** Near its least value the chance goes as the power (n − 2)/2 of the distance. */
  @ParameterizedTest
  @ValueSource(ints = {4, 9, 15})
  void farTailsKeepTheirDigits(int n) {
    double end = 2 - 2 * Math.cos(Math.PI / n);
    double near = new VonNeumannTest(n, end + 1e-6).chanceBelow();
    double twice = new VonNeumannTest(n, end + 2e-6).chanceBelow();
    assertTrue(near > 0 && near < 1e-5);
    assertRelative(Math.pow(2, (n - 2) / 2.0), twice / near, 1e-4, "power");
  }
}
