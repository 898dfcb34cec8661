package org.quietline.stats.capability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Coverage;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.sample.CensoredNormal;
import org.quietline.stats.sample.CensoredSample;
import org.quietline.stats.sample.CensoredSample.Shape;
import org.quietline.stats.sample.Summary;

class CensoredIndexTest {
  private static final Class<?> SUBJECT = CensoredIndex.class;

  private static List<Double> numbers(JsonNode array) {
    List<Double> numbers = new ArrayList<>();
    array.forEach(v -> numbers.add(v.asDouble()));
    return numbers;
  }

  private static CensoredIndex index(CensoredSample sample, Shape shape, double limit) {
    CensoredNormal fit = assertInstanceOf(CensoredNormal.class, sample.fit(shape));
    return new CensoredIndex(fit, sample.n(), limit);
  }

  /** Likelihood and profile by SciPy. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5})
  void indexAndShareOfFittedPopulations(int place) {
    Reference file = Reference.read("censored-index");
    String at = "/expected/cases/" + place + "/";
    CensoredSample sample =
        new CensoredSample(
            numbers(file.at(at + "exact")), numbers(file.at(at + "below")), List.of());
    CensoredIndex found =
        index(sample, Shape.valueOf(file.at(at + "shape").asText()), file.number(at + "limit"));
    file.check(SUBJECT, "index " + place, at + "index", found.index());
    file.check(SUBJECT, "share " + place, at + "shareBeyond", found.shareBeyond());
    file.check(SUBJECT, "bound " + place, at + "lowerBound95", found.lowerBound(0.95));
    Interval share = found.shareBeyondInterval(0.95);
    file.check(SUBJECT, "share, least " + place, at + "beyondLower95", share.lower());
    file.check(SUBJECT, "share, most " + place, at + "beyondUpper95", share.upper());
  }

  /** The performance index itself, with its exact bounds. */
  @Test
  void withoutBoundsItIsThePerformanceIndex() {
    SplittableRandom random = new SplittableRandom(5);
    for (int n : new int[] {12, 24, 60}) {
      double[] values = Simulation.normal(random, n);
      PerformanceIndex exact = PerformanceIndex.upper(Summary.of(values), 3);
      CensoredIndex found = index(CensoredSample.of(values), Shape.NORMAL, 3);
      assertEquals(exact.index(), found.index(), 1e-9);
      assertEquals(exact.lowerBound(0.95), found.lowerBound(0.95), 1e-7);
      Interval share = exact.shareBeyondInterval(0.95);
      assertEquals(share.lower(), found.shareBeyondInterval(0.95).lower(), 1e-6 * share.lower());
      assertEquals(share.upper(), found.shareBeyondInterval(0.95).upper(), 1e-6 * share.upper());
    }
  }

  @Test
  void whatHasNoMeaningIsRefused() {
    CensoredSample sample = CensoredSample.of(1, 2, 3, 4);
    assertThrows(IllegalArgumentException.class, () -> index(sample, Shape.LOGNORMAL, 0));
    assertThrows(
        IllegalArgumentException.class, () -> index(sample, Shape.NORMAL, 5).lowerBound(1));
  }

  /** Populations whose lower part is only known to lie below a bound; the limit is 3.3 above. */
  @ParameterizedTest
  @CsvSource({"12, 0", "12, 0.25", "12, 0.4", "24, 0.25", "24, 0.4", "40, 0.25"})
  void boundsHoldTheTruth(int n, double below) {
    int trials = Coverage.trials(100, 6000);
    SplittableRandom random = new SplittableRandom(900 + n + Math.round(100 * below));
    double bound = below == 0 ? Double.NEGATIVE_INFINITY : Normal.quantile(below);
    int lower = 0;
    int share = 0;
    int told = 0;
    for (int i = 0; i < trials; i++) {
      List<Double> exact = new ArrayList<>();
      List<Double> bounds = new ArrayList<>();
      for (double value : Simulation.normal(random, n)) {
        (value < bound ? bounds : exact).add(value < bound ? bound : value);
      }
      if (exact.size() >= n / 2) {
        CensoredIndex found =
            index(new CensoredSample(exact, bounds, List.of()), Shape.NORMAL, 3.3);
        told++;
        lower += found.lowerBound(0.95) <= 1.1 ? 1 : 0;
        share += found.shareBeyondInterval(0.95).contains(Normal.above(3.3)) ? 1 : 0;
      }
    }
    String size = "n = " + n + ", " + Math.round(100 * below) + " % bounds";
    Coverage.check(SUBJECT, "index with bounds, bound", size, 0.95, lower, told, 0.94, 0.96);
    Coverage.check(SUBJECT, "share beyond with bounds", size, 0.95, share, told, 0.94, 0.96);
  }
}
