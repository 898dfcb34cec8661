package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.ChiSquare;

class DuplicateDeviationTest {
  private static final Class<?> SUBJECT = DuplicateDeviation.class;
  private final Reference reference = Reference.read("practitioner-duplicates");
  private final DuplicateDeviation found =
      DuplicateDeviation.of(
          reference.rows("/data/pairs", 10).stream().mapToDouble(p -> p[0] - p[1]).toArray());

  @Test
  void practitionersTenPairs() {
    assertEquals(10, found.pairs());
    assertEquals(10, found.degreesOfFreedom());
    check("deviation", found.deviation());
    check("repeatabilityLimit", found.repeatabilityLimit());
    check("lower95", found.interval(0.95).lower());
    check("upper95", found.interval(0.95).upper());
    check("rangeLimit1", found.rangeLimit(0.01));
  }

  private void check(String name, double actual) {
    reference.check(SUBJECT, name + " of ten pairs", "/expected/" + name, actual);
  }

  /** The printed sum of squares is off; the deviation is the note's own recalculation. */
  @Test
  void publishedHomogeneityPairs() {
    Reference pairs = Reference.read("duplicates-cochran-homogeneity-example");
    double[] a = pairs.numbers("/data/A", 10);
    double[] b = pairs.numbers("/data/B", 10);
    double[] d = pairs.numbers("/expected/D", 10);
    double[] differences = new double[10];
    for (int i = 0; i < 10; i++) {
      differences[i] = a[i] - b[i];
      assertEquals(d[i], differences[i], 0.01001);
    }
    String at = "/crosscheck/own/s_duplicates=sqrt(sum D^2~12n)";
    double own = pairs.number(at);
    pairs.check(SUBJECT, "homogeneity pairs", at, DuplicateDeviation.of(d).deviation());
    // one printed difference is rounded from unrounded data: -0.05 for 4.88 - 4.94
    assertEquals(own, DuplicateDeviation.of(differences).deviation(), 0.001);
  }

  /** Answers of the handbook's page; a deviation with 99 degrees of freedom. */
  @Test
  void handbookIntervalOfADeviation() {
    Reference gear = Reference.read("nist-1.3.5.8-chisquare-sd");
    double deviation = Summary.of(gear.numbers("/data/y", 100)).deviation();
    gear.check(Summary.class, "deviation of gears", "/expected/sd", deviation, 0.0000501);
    gear.check(Summary.class, "deviation, more digits", "/crosscheck/own/sd", deviation);
    Interval interval = new DuplicateDeviation(99, deviation).interval(0.95);
    gear.check(SUBJECT, "lower end", "/expected/ci_sd_95/0", interval.lower(), 0.0000501);
    gear.check(SUBJECT, "upper end", "/expected/ci_sd_95/1", interval.upper(), 0.0000501);
    Class<?> distribution = ChiSquare.class;
    gear.check(
        distribution, "2.5 % point, 99", "/expected/lower_crit", ChiSquare.quantile(0.025, 99));
    gear.check(
        distribution, "97.5 % point, 99", "/expected/upper_crit", ChiSquare.quantile(0.975, 99));
  }

  @Test
  void equalPairsGiveZeros() {
    DuplicateDeviation none = DuplicateDeviation.of(0, 0, 0);
    assertEquals(0, none.deviation());
    assertEquals(new Interval(0, 0), none.interval(0.95));
    assertEquals(0, none.repeatabilityLimit());
    assertEquals(0, none.rangeLimit(0.01));
  }

  @Test
  void onePairHasTheLimitOfOneDegreeOfFreedom() {
    // t with one degree of freedom: tan(pi (p - 1/2))
    double t = Math.tan(Math.PI * (0.995 - 0.5));
    assertRelative(t * 3, DuplicateDeviation.of(-3).rangeLimit(0.01), 1e-12, "Cauchy");
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 3, 10, 40})
  void aNewPairExceedsTheRangeLimitAsOftenAsItSays(int pairs) {
    SplittableRandom random = new SplittableRandom(pairs);
    int trials = 8000;
    int beyond = 0;
    for (int i = 0; i < trials; i++) {
      double limit = DuplicateDeviation.of(Simulation.normal(random, pairs)).rangeLimit(0.05);
      beyond += Math.abs(Simulation.normal(random)) > limit ? 1 : 0;
    }
    Simulation.assertShare(0.05, beyond, trials);
  }
}
