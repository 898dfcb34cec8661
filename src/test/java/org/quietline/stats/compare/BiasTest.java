package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.sample.Summary;

class BiasTest {
  private final Reference practitioner = Reference.read("practitioner-individuals");
  private final Summary summary = Summary.of(practitioner.numbers("/data/values", 20));
  private final double reference = practitioner.number("/data/reference");

  @Test
  void referenceTakenAsExactIsFoundBiased() {
    Bias plain = Bias.of(summary, reference, 0);
    practitioner.check(Bias.class, "t", "/expected/biasStatisticPlain", plain.statistic());
    assertEquals(19, plain.degreesOfFreedom());
    double critical = practitioner.number("/expected/biasCritical");
    assertRelative(critical, Student.exceededWith(0.025, 19), 1e-12, "critical");
    assertTrue(plain.significantAt(0.05));
    assertFalse(plain.significantAt(0.01));
  }

  @Test
  void uncertaintyOfTheReferenceChangesTheVerdict() {
    Bias honest = Bias.of(summary, reference, practitioner.number("/data/referenceUncertainty"));
    practitioner.check(
        Bias.class, "t, reference uncertain", "/expected/biasStatistic", honest.statistic());
    practitioner.check(
        Bias.class,
        "effective degrees of freedom",
        "/expected/biasDegreesOfFreedom",
        honest.degreesOfFreedom());
    assertFalse(honest.significantAt(0.05));
    assertEquals(summary.mean() - reference, honest.difference());
  }

  @Test
  void valuesWithoutSpreadLeaveTheReferencesUncertainty() {
    Bias bias = Bias.of(Summary.of(5, 5, 5), 4, 0.5);
    assertEquals(new Bias(1, 0, 2, 0.5), bias);
    assertEquals(2, bias.statistic());
    assertEquals(0.04550026, bias.chance(), 1e-8);
    assertTrue(bias.significantAt(0.05));
    assertFalse(bias.significantAt(0.04));
  }

  @Test
  void withoutAnyUncertaintyAnyDifferenceCounts() {
    Bias none = Bias.of(Summary.of(5, 5, 5), 5, 0);
    assertEquals(new Bias(0, 0, 2, 0), none);
    assertEquals(0, none.statistic());
    assertFalse(none.significantAt(0.05));
    assertEquals(new Interval(0, 0), none.interval(0.95));
    Bias some = Bias.of(Summary.of(5, 5, 5), 5.5, 0);
    assertEquals(Double.POSITIVE_INFINITY, some.statistic());
    assertTrue(some.significantAt(0.001));
  }

  @Test
  void findsBiasWhereThereIsNoneOneTimeInTwenty() {
    SplittableRandom random = new SplittableRandom(71);
    int trials = 6000;
    int found = 0;
    for (int i = 0; i < trials; i++) {
      Summary s = Summary.of(Simulation.normal(random, 6));
      found += Bias.of(s, 0, 0).significantAt(0.05) ? 1 : 0;
    }
    Simulation.assertShare(0.05, found, trials);
  }

  @Test
  void chanceAndIntervalByIntegration() {
    Reference reference = Reference.read("bias-uncertain-reference");
    var rows = reference.rows("/expected/rows", 5);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      Bias bias = Bias.of(new Summary((int) row[0], row[1], row[2]), 0, row[3]);
      String of = " of " + row[1] + " in " + (int) row[0];
      String at = "/expected/rows/" + i + "/";
      reference.check(Bias.class, "chance" + of, at + 4, bias.chance());
      double half = bias.interval(0.95).upper() - row[1];
      reference.check(Bias.class, "half-width" + of, at + 5, half, 1e-9);
      assertEquals(2 * row[1], bias.interval(0.95).lower() + bias.interval(0.95).upper(), 1e-12);
    }
  }

  @Test
  void anExactReferenceIsTheTTest() {
    Summary s = Summary.of(1.2, 1.5, 1.1, 1.9);
    MeanTest test = MeanTest.oneSample(s, 1);
    Bias bias = Bias.of(s, 1, 0);
    assertEquals(test.chance(), bias.chance(), 1e-14);
    assertEquals(test.interval(0.9).upper(), bias.interval(0.9).upper(), 1e-14);
    assertEquals(3, bias.degreesOfFreedom());
  }
}
