package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.sample.Summary;

class MeanTestTest {
  private static final Class<?> SUBJECT = MeanTest.class;

  @Test
  void handbookConfidenceLimitsOfAMean() {
    Reference nist = Reference.read("nist-1.3.5.2-mean-confidence-limits");
    Summary summary = Summary.of(nist.numbers("/data/y", 195));
    MeanTest mean = MeanTest.oneSample(summary, 0);
    nist.check(SUBJECT, "mean", "/expected/mean", mean.difference());
    nist.check(SUBJECT, "standard error", "/expected/se", mean.standardError());
    double[] alphas = nist.numbers("/expected/alpha", 8);
    for (int i = 0; i < alphas.length; i++) {
      Interval interval = mean.interval(1 - alphas[i]);
      String row = "/expected/t_halfwidth_lower_upper/" + i;
      String what = " limit, alpha " + alphas[i];
      nist.check(SUBJECT, "lower" + what, row + "/2", interval.lower());
      nist.check(SUBJECT, "upper" + what, row + "/3", interval.upper());
    }
    MeanTest five = MeanTest.oneSample(summary, nist.number("/data/mu0"));
    nist.check(SUBJECT, "t against 5", "/expected/t_test_mu0_5", five.statistic());
    assertEquals(nist.at("/expected/df").asInt(), five.degreesOfFreedom());
  }

  @Test
  void handbookTwoSamples() {
    Reference nist = Reference.read("nist-1.3.5.3-two-sample-t");
    Summary a = Summary.of(nist.numbers("/data/sample1", 249));
    Summary b = Summary.of(nist.numbers("/data/sample2", 79));
    MeanTest pooled = MeanTest.pooled(a, b);
    nist.check(SUBJECT, "pooled t", "/expected/T", pooled.statistic());
    Interval interval = pooled.interval(0.95);
    nist.check(SUBJECT, "pooled lower", "/expected/ci_95_difference/0", interval.lower());
    nist.check(SUBJECT, "pooled upper", "/expected/ci_95_difference/1", interval.upper());
    assertEquals(326, pooled.degreesOfFreedom());
    MeanTest welch = MeanTest.welch(a, b);
    Recalculated.check(nist, "Welch t", "/own/welch_T", welch.statistic());
    Recalculated.check(nist, "Welch degrees", "/own/welch_df", welch.degreesOfFreedom());
  }

  @Test
  void handbookWaferCounts() {
    Reference nist = Reference.read("nist-7.2.2-one-sample-t");
    MeanTest test = MeanTest.oneSample(Summary.of(nist.numbers("/data/y", 10)), 50);
    nist.check(SUBJECT, "t of wafer counts", "/expected/t", test.statistic());
    Recalculated.check(nist, "chance of wafer counts", "/own/p", test.chance());
    assertEquals(9, test.degreesOfFreedom());
  }

  /** The handbook multiplies by the root of n - 1; the ordinary t is in the crosscheck. */
  @Test
  void handbookConfigurations() {
    Reference nist = Reference.read("nist-2.4.5.5-configuration-differences");
    var rows = nist.rows("/data/rows", 29);
    for (int run = 0; run < 2; run++) {
      int column = 3 + run;
      double[] differences = rows.stream().mapToDouble(r -> r[column]).toArray();
      MeanTest test = MeanTest.paired(differences, new double[29]);
      String of = "/" + run;
      nist.check(SUBJECT, "mean, run " + run, "/expected/avg" + of, test.difference());
      Recalculated.check(nist, "t, run " + run, "/own/t_with_sqrt(n)" + of, test.statistic());
      assertTrue(test.chance() < 0.05);
    }
  }

  @Test
  void sleepOfTenPatients() {
    Reference sleep = Reference.read("student-sleep-1908");
    double[] first = sleep.numbers("/data/first", 10);
    double[] second = sleep.numbers("/data/second", 10);
    Summary a = Summary.of(first);
    Summary b = Summary.of(second);
    printed(sleep, "welch", MeanTest.welch(a, b));
    printed(sleep, "pooled", MeanTest.pooled(a, b));
    printed(sleep, "paired", MeanTest.paired(first, second));
  }

  private static void printed(Reference reference, String name, MeanTest test) {
    check(reference, name, test, 0.95);
  }

  private static void check(Reference reference, String name, MeanTest test, double level) {
    String at = "/expected/" + name + "/";
    reference.check(SUBJECT, name + " t", at + "statistic", test.statistic());
    reference.check(SUBJECT, name + " degrees", at + "degreesOfFreedom", test.degreesOfFreedom());
    reference.check(SUBJECT, name + " chance", at + "chance", test.chance());
    reference.check(SUBJECT, name + " lower", at + "lower", test.interval(level).lower());
    reference.check(SUBJECT, name + " upper", at + "upper", test.interval(level).upper());
  }

  @Test
  void outsideLibrary() {
    Reference reference = Reference.read("student-tests");
    double[] first = reference.numbers("/data/first", 5);
    double[] second = reference.numbers("/data/second", 8);
    Summary a = Summary.of(first);
    Summary b = Summary.of(second);
    MeanTest one = MeanTest.oneSample(a, reference.number("/data/against"));
    reference.check(SUBJECT, "one t", "/expected/one/statistic", one.statistic());
    reference.check(SUBJECT, "one chance", "/expected/one/chance", one.chance());
    Interval mean = MeanTest.oneSample(a, 0).interval(0.95);
    reference.check(SUBJECT, "one lower", "/expected/one/lower", mean.lower());
    reference.check(SUBJECT, "one upper", "/expected/one/upper", mean.upper());
    reference.check(SUBJECT, "one above", "/expected/oneAbove", one.chanceAbove());
    reference.check(SUBJECT, "one below", "/expected/oneBelow", one.chanceBelow());
    check(reference, "pooled", MeanTest.pooled(a, b), 0.99);
    MeanTest welch = MeanTest.welch(a, b);
    check(reference, "welch", welch, 0.99);
    reference.check(SUBJECT, "Welch above", "/expected/welchAbove", welch.chanceAbove());
    double[] firstFive = Arrays.copyOf(second, 5);
    check(reference, "paired", MeanTest.paired(first, firstFive), 0.9);
  }

  @Test
  void oneSampleWithoutSpreadLeavesTheOther() {
    MeanTest test = MeanTest.welch(Summary.of(1, 1, 1), Summary.of(2, 3, 4));
    assertEquals(2, test.degreesOfFreedom());
    assertRelative(Math.sqrt(1 / 3.0), test.standardError(), 1e-15, "error");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 0.9, 0.99})
  void theIntervalEndsWhereTheTestTurns(double level) {
    Summary values = Summary.of(3.1, 2.9, 3.4, 3.3);
    Interval interval = MeanTest.oneSample(values, 0).interval(level);
    for (double end : new double[] {interval.lower(), interval.upper()}) {
      assertRelative(1 - level, MeanTest.oneSample(values, end).chance(), 1e-10, "chance");
    }
  }

  @RepeatedTest(20)
  void movesWithItsValues(RepetitionInfo repetition) {
    SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
    double[] a = Simulation.normal(random, 3 + random.nextInt(9));
    double[] b = Simulation.normal(random, 3 + random.nextInt(9));
    double scale = random.nextDouble(0.1, 9);
    double shift = random.nextDouble(-9, 9);
    MeanTest before = MeanTest.welch(Summary.of(a), Summary.of(b));
    MeanTest swapped = MeanTest.welch(Summary.of(b), Summary.of(a));
    MeanTest after = MeanTest.welch(moved(a, shift, scale), moved(b, shift, scale));
    assertRelative(scale * before.difference(), after.difference(), 1e-11, "difference");
    assertRelative(before.chance(), after.chance(), 1e-9, "chance");
    assertRelative(before.chanceAbove(), swapped.chanceBelow(), 1e-9, "swapped");
    assertEquals(1, before.chanceAbove() + before.chanceBelow(), 1e-14);
    double least = Math.min(a.length, b.length) - 1.0;
    assertTrue(before.degreesOfFreedom() >= least);
    assertTrue(before.degreesOfFreedom() <= a.length + b.length - 2 + 1e-12);
    assertTrue(before.interval(0.9).lower() > before.interval(0.95).lower());
  }

  private static Summary moved(double[] values, double shift, double scale) {
    return Summary.of(Arrays.stream(values).map(v -> shift + scale * v).toArray());
  }
}
