package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.quietline.stats.Digits.assertRelative;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;

class QMethodTest {
  private static final Class<?> SUBJECT = QMethod.class;
  private final Reference reference = Reference.read("q-method");

  private static double[] numbers(JsonNode node) {
    return StreamSupport.stream(node.spliterator(), false).mapToDouble(Reference::number).toArray();
  }

  @Test
  void singleResultsAreThoseOfExactFractions() {
    List<double[]> rows = reference.rows("/expected/rows", 6);
    for (int i = 0; i < rows.size(); i++) {
      double[] values = numbers(reference.at("/data/sets/" + i));
      QMethod found = QMethod.of(values).orElseThrow();
      String at = "/expected/rows/" + i;
      reference.check(SUBJECT, "deviation of set " + i, at + "/0", found.deviation());
      reference.check(SUBJECT, "Hampel's mean of set " + i, at + "/1", found.mean());
      reference.check(
          HampelMean.class,
          "mean of set " + i,
          at + "/1",
          HampelMean.of(found.deviation(), values));
      assertEquals(values.length, found.groups());
    }
  }

  @Test
  void replicatesAreThoseOfExactFractions() {
    List<double[]> rows = reference.rows("/expected/groups", 3);
    for (int i = 0; i < rows.size(); i++) {
      List<double[]> groups = new ArrayList<>();
      reference.at("/data/groups/" + i).forEach(g -> groups.add(numbers(g)));
      QMethod found = QMethod.ofGroups(groups).orElseThrow();
      String at = "/expected/groups/" + i;
      reference.check(SUBJECT, "deviation between, groups " + i, at + "/0", found.deviation());
      double within = QMethod.within(groups).orElseThrow();
      reference.check(SUBJECT, "deviation within, groups " + i, at + "/1", within);
      reference.check(SUBJECT, "Hampel's mean, groups " + i, at + "/2", found.mean());
    }
  }

  /** Two values: the middle of the one step lies at 0.5, and 0.25 is half way up to it. */
  @Test
  void twoValuesByHand() {
    double expected = 0.5 * 3 / (Math.sqrt(2) * Normal.quantile(0.625));
    double got = QMethod.of(4, 7).orElseThrow().deviation();
    Evidence.own(SUBJECT, "deviation of 4 and 7", "by hand", expected, got, 1e-13);
  }

  @Test
  void equalValuesSayNothing() {
    assertEquals(Optional.empty(), QMethod.of(2, 2, 2));
    assertEquals(Optional.empty(), QMethod.within(List.of(new double[] {1, 1}, new double[] {2})));
  }

  /** Two thirds of the differences are zero: the middle of the step lies at five sixths. */
  @Test
  void oneDifferentValueIsEnough() {
    double expected = 0.75 / (5 / 6.0) / (Math.sqrt(2) * Normal.quantile(0.875));
    QMethod found = QMethod.of(2, 2, 2, 2, 2, 3).orElseThrow();
    assertRelative(expected, found.deviation(), 1e-13, "deviation");
    // five values pull by (2 - mean)/s each, the sixth by its limit of 1.5
    assertRelative(2 + 0.3 * expected, found.mean(), 1e-13, "mean");
  }

  @Test
  void movesWithTheValuesAndNotWithTheirOrder() {
    SplittableRandom random = new SplittableRandom(85);
    for (int i = 0; i < 30; i++) {
      double[] values = Simulation.normal(random, 3 + i);
      QMethod before = QMethod.of(values).orElseThrow();
      double[] moved = Arrays.stream(values).map(v -> 50 - 3 * v).sorted().toArray();
      QMethod after = QMethod.of(moved).orElseThrow();
      assertRelative(3 * before.deviation(), after.deviation(), 1e-10, "deviation");
      assertEquals(50 - 3 * before.mean(), after.mean(), 1e-9);
    }
  }

  @Test
  void wildGroupsBarelyCount() {
    double[] values = {10, 10.2, 9.9, 10.1, 9.8, 10.3, 60, 70};
    QMethod found = QMethod.of(values).orElseThrow();
    assertRelative(10.05, found.mean(), 0.01, "mean");
    assertRelative(0.25, found.deviation(), 1, "deviation");
  }

  @Test
  void estimatesTheDeviationOfNormalValues() {
    SplittableRandom random = new SplittableRandom(86);
    double between = 0;
    double within = 0;
    int trials = 1000;
    for (int i = 0; i < trials; i++) {
      List<double[]> groups = new ArrayList<>();
      for (int j = 0; j < 30; j++) {
        double shift = 0.8 * Simulation.normal(random);
        double[] pair = Simulation.normal(random, 2);
        groups.add(new double[] {shift + 0.6 * pair[0], shift + 0.6 * pair[1]});
      }
      between += QMethod.ofGroups(groups).orElseThrow().deviation() / trials;
      within += QMethod.within(groups).orElseThrow() / trials;
    }
    assertEquals(1, between, 0.03);
    assertEquals(0.6, within, 0.02);
  }

  /** A grid of a hundred thousand points, without corners. */
  @Test
  void hampelsMeanIsTheZeroNearestToTheMedian() {
    SplittableRandom random = new SplittableRandom(87);
    for (int i = 0; i < 40; i++) {
      double[] values = Simulation.normal(random, 3 + i % 9);
      values[0] += i % 2 * 7;
      double s = 0.3 + random.nextDouble();
      double found = HampelMean.of(s, values);
      double median = RobustSummary.medianOf(values);
      double nearest = Double.POSITIVE_INFINITY;
      double before = pull(median - 6, s, values);
      for (double at = median - 6; at < median + 6; at += 1e-3) {
        double here = pull(at, s, values);
        if (before * here <= 0 && Math.abs(at - median) < Math.abs(nearest - median)) {
          nearest = at;
        }
        before = here;
      }
      if (Math.abs(Math.abs(nearest - median) - Math.abs(found - median)) > 1.1e-3) {
        assertEquals(nearest, found, 1.1e-3, Arrays.toString(values) + " with " + s);
      }
      assertEquals(0, pull(found, s, values), 1e-9);
    }
  }

  private static double pull(double at, double s, double[] values) {
    double sum = 0;
    for (double v : values) {
      double q = (v - at) / s;
      double size = Math.abs(q);
      double psi = size <= 1.5 ? size : size <= 3 ? 1.5 : size <= 4.5 ? 4.5 - size : 0;
      sum += q < 0 ? -psi : psi;
    }
    return sum;
  }

  @Test
  void hampelsMeanOfTwoFarClustersIsTheMedian() {
    assertEquals(50, HampelMean.of(1, 0, 0, 100, 100));
    assertEquals(50, HampelMean.of(1, 0, 0.4, 99.6, 100), 1e-9);
    assertEquals(2, HampelMean.of(0, 1, 2, 9));
    assertEquals(4, HampelMean.of(1, 4));
    // three against two: the larger cluster holds the median and the nearest zero
    assertEquals(0.1, HampelMean.of(1, 0, 0.1, 0.2, 100, 100.1), 1e-12);
  }

  /** Normal scores of deviation 1; sorting in a tree took eight seconds. */
  @Test
  void manyValues() {
    double[] values = new double[2000];
    Arrays.setAll(values, i -> Normal.quantile((i + 0.5) / 2000));
    QMethod got =
        assertTimeoutPreemptively(Duration.ofSeconds(60), () -> QMethod.of(values).orElseThrow());
    assertEquals(1, got.deviation(), 0.002);
    assertEquals(
        "50005000 differences are more than the most, 50000000",
        assertThrows(IllegalArgumentException.class, () -> QMethod.of(new double[10_001]))
            .getMessage());
  }
}
