package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.sample.Quantiles.Definition;

class QuantilesTest {
  private static final Class<?> SUBJECT = Quantiles.class;

  @Test
  void threeDefinitionsAreNumPys() {
    Reference reference = Reference.read("quantile-definitions");
    List<double[]> rows = reference.rows("/expected/rows", 60);
    assertEquals(6, reference.at("/data/sets").size());
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      int count = reference.at("/data/sets/" + (int) row[0]).size();
      double[] values = reference.numbers("/data/sets/" + (int) row[0], count);
      for (int column = 2; column < 5; column++) {
        String name = reference.at("/expected/columns/" + column).asText();
        Definition definition = Definition.valueOf(name);
        double got = Quantiles.of(definition, values).at(row[1]);
        String at = "/expected/rows/" + i + "/" + column;
        if (i % 3 == 0) {
          String what = row[1] + " quantile of set " + (int) row[0] + ", " + definition;
          reference.check(SUBJECT, what, at, got);
        }
        assertEquals(reference.number(at), got, 1e-13 * Math.abs(got), at);
      }
    }
  }

  @Test
  void handbookFences() {
    Reference nist = Reference.read("nist-7.1.6-outlier-fences");
    Quantiles found = Quantiles.of(Definition.MEAN_PLACE, nist.numbers("/data/y", 90));
    nist.check(SUBJECT, "median", "/expected/median", found.median());
    nist.check(SUBJECT, "lower quartile", "/expected/lower_quartile", found.at(0.25));
    nist.check(SUBJECT, "upper quartile", "/expected/upper_quartile", found.at(0.75));
    nist.check(SUBJECT, "range", "/expected/interquartile_range", found.interquartileRange());
    nist.check(SUBJECT, "inner, low", "/expected/lower_inner_fence", found.innerFences().lower());
    nist.check(SUBJECT, "inner, high", "/expected/upper_inner_fence", found.innerFences().upper());
    nist.check(SUBJECT, "outer, low", "/expected/lower_outer_fence", found.outerFences().lower());
    nist.check(SUBJECT, "outer, high", "/expected/upper_outer_fence", found.outerFences().upper());
    double mild = nist.number("/expected/mild_outlier");
    assertTrue(!found.innerFences().contains(mild) && found.outerFences().contains(mild));
  }

  @Test
  void endsAreTheLeastAndTheGreatest() {
    for (Definition definition : Definition.values()) {
      Quantiles found = Quantiles.of(definition, 3, 1, 2);
      assertEquals(1, found.at(0));
      assertEquals(3, found.at(1));
      assertEquals(2, found.median());
      assertEquals(7, Quantiles.of(definition, 7).at(0.3));
    }
  }

  @Test
  void theGivenArrayIsNeitherChangedNorKept() {
    double[] values = {3, 1, 2};
    Quantiles found = Quantiles.of(Definition.ENDS_INCLUDED, values);
    assertEquals("[3.0, 1.0, 2.0]", Arrays.toString(values));
    values[0] = 100;
    assertEquals(3, found.at(1));
  }

  @ParameterizedTest
  @EnumSource
  void quantilesRiseMoveAndMirror(Definition definition) {
    SplittableRandom random = new SplittableRandom(81);
    for (int n : new int[] {1, 2, 5, 12, 31}) {
      double[] values = Simulation.normal(random, n);
      Quantiles found = Quantiles.of(definition, values);
      Quantiles moved =
          Quantiles.of(definition, Arrays.stream(values).map(v -> 3 - 2 * v).toArray());
      double before = Double.NEGATIVE_INFINITY;
      for (double p = 0; p <= 1; p += 1 / 64.0) {
        assertTrue(found.at(p) >= before);
        before = found.at(p);
        assertEquals(3 - 2 * found.at(p), moved.at(1 - p), 1e-12);
      }
      assertEquals(RobustSummary.medianOf(values), found.median(), 1e-15);
    }
  }

  /** What tells the third definition from the others: half of the samples lie to either side. */
  @Test
  void medianUnbiasedIsSo() {
    SplittableRandom random = new SplittableRandom(82);
    double upper = Normal.quantile(0.9);
    int above = 0;
    int trials = 20_000;
    for (int i = 0; i < trials; i++) {
      Quantiles found = Quantiles.of(Definition.MEDIAN_UNBIASED, Simulation.normal(random, 8));
      above += found.at(0.9) > upper ? 1 : 0;
    }
    assertEquals(0.5, (double) above / trials, 0.015);
  }
}
