package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;

class RobustSummaryTest {
  private static final Reference REFERENCE = Reference.read("robust-summary");

  /** The factors for small samples, as tabled by Croux and Rousseeuw for n from 5 to 9. */
  private static final double[] TABLED = {1.206, 1.200, 1.140, 1.129, 1.107};

  @Test
  void mediansAndDeviationsAreThoseComputedElsewhere() {
    List<double[]> expected = REFERENCE.rows("/expected/rows", 5);
    JsonNode sets = REFERENCE.at("/data/sets");
    assertEquals(5, sets.size());
    for (int i = 0; i < sets.size(); i++) {
      double[] values =
          StreamSupport.stream(sets.get(i).spliterator(), false)
              .mapToDouble(Reference::number)
              .toArray();
      int n = values.length;
      RobustSummary summary = RobustSummary.of(values);
      double factor = n <= 9 ? TABLED[n - 5] : n / (n - 0.8);
      assertEquals(n, summary.n());
      String at = "/expected/rows/" + i;
      REFERENCE.check(RobustSummary.class, "median of set " + i, at + "/0", summary.median());
      if (expected.get(i)[1] == 0) {
        assertEquals(0, summary.deviation());
      } else {
        String what = "deviation of set " + i + " before the factor for small samples";
        REFERENCE.check(RobustSummary.class, what, at + "/1", summary.deviation() / factor);
      }
    }
  }

  @Test
  void multiplesAreThoseComputedElsewhere() {
    List<double[]> rows = REFERENCE.rows("/expected/multiples/rows", 15);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      double got = new RobustSummary((int) row[0], 0, 1).multiple(row[1]);
      String what = "multiple for " + (int) row[0] + " values and " + row[1];
      String at = "/expected/multiples/rows/" + i + "/2";
      REFERENCE.check(RobustSummary.class, what, at, got, 1e-11 * row[2]);
    }
  }

  /** Means over many samples, so that neither the table nor the freedom rests on memory. */
  @Test
  void deviationIsUnbiasedAndTheLimitIsNotBrokenMoreOftenThanMeant() {
    SplittableRandom random = new SplittableRandom(5);
    for (int n : new int[] {5, 6, 7, 8, 9, 12, 25, 61}) {
      double sum = 0;
      double beyond2 = 0;
      double beyond4 = 0;
      int samples = 20_000;
      for (int i = 0; i < samples; i++) {
        double[] values = new double[n];
        for (int j = 0; j < n; j++) {
          values[j] = Simulation.normal(random);
        }
        RobustSummary summary = RobustSummary.of(values);
        sum += summary.deviation();
        beyond2 += beyond(summary, 2);
        beyond4 += beyond(summary, 4);
      }
      assertEquals(1, sum / samples, 0.015, "mean deviation of " + n);
      assertTrue(beyond2 / samples <= 2 * Normal.above(2), "beyond 2 of " + n);
      assertTrue(beyond4 / samples <= 2 * Normal.above(4), "beyond 4 of " + n);
      assertTrue(beyond2 / samples >= Normal.above(2), "not far below, at 2 of " + n);
    }
  }

  /** The exact chance that one more standard normal value lies beyond the limits of a sample. */
  private static double beyond(RobustSummary summary, double normal) {
    double half = summary.multiple(normal) * summary.deviation();
    return Normal.above(half + summary.median()) + Normal.above(half - summary.median());
  }

  @Test
  void oneWildValueMovesNothingMuch() {
    RobustSummary wild = RobustSummary.of(1, 2, 3, 4, 1e9);
    assertEquals(3, wild.median());
    assertEquals(1.206 * 1.482602218505602, wild.deviation(), 1e-12);
  }

  @Test
  void mediansOfBothParities() {
    assertEquals(7, RobustSummary.medianOf(7));
    assertEquals(2, RobustSummary.medianOf(3, 1, 2));
    assertEquals(2.5, RobustSummary.medianOf(4, 1, 2, 3));
  }

  @Test
  void limitsOutOfRangeAreRefused() {
    RobustSummary summary = new RobustSummary(5, 0, 1);
    assertEquals(
        "normal must be at most 20, is 21.0",
        assertThrows(IllegalArgumentException.class, () -> summary.multiple(21)).getMessage());
    assertEquals(
        "normal must be above zero, is 0.0",
        assertThrows(IllegalArgumentException.class, () -> summary.multiple(0)).getMessage());
    assertEquals(
        "deviation must not be below zero, is -1.0",
        assertThrows(IllegalArgumentException.class, () -> new RobustSummary(5, 0, -1))
            .getMessage());
  }
}
