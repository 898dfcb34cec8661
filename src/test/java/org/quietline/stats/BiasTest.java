package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class BiasTest {
  private final Reference practitioner = Reference.read("practitioner-individuals");
  private final Summary summary = Summary.of(practitioner.numbers("/data/values", 20));
  private final double reference = practitioner.number("/data/reference");

  @Test
  void referenceTakenAsExactIsFoundBiased() {
    Bias plain = Bias.of(summary, reference, 0);
    assertRelative(
        practitioner.number("/expected/biasStatisticPlain"), plain.statistic(), 1e-11, "t");
    assertEquals(19, plain.degreesOfFreedom());
    double critical = practitioner.number("/expected/biasCritical");
    assertRelative(critical, Student.exceededWith(0.025, 19), 1e-12, "critical");
    assertTrue(plain.significantAt(0.05));
    assertFalse(plain.significantAt(0.01));
  }

  @Test
  void uncertaintyOfTheReferenceChangesTheVerdict() {
    Bias honest = Bias.of(summary, reference, practitioner.number("/data/referenceUncertainty"));
    assertRelative(practitioner.number("/expected/biasStatistic"), honest.statistic(), 1e-11, "t");
    assertRelative(
        practitioner.number("/expected/biasDegreesOfFreedom"),
        honest.degreesOfFreedom(),
        1e-11,
        "degrees of freedom");
    assertFalse(honest.significantAt(0.05));
    assertEquals(summary.mean() - reference, honest.difference());
  }

  @Test
  void valuesWithoutSpreadLeaveTheReferencesUncertainty() {
    Bias bias = Bias.of(Summary.of(5, 5, 5), 4, 0.5);
    assertEquals(new Bias(1, 0.5, Double.POSITIVE_INFINITY), bias);
    assertEquals(2, bias.statistic());
    assertTrue(bias.significantAt(0.05));
    assertFalse(bias.significantAt(0.04));
  }

  @Test
  void withoutAnyUncertaintyAnyDifferenceCounts() {
    Bias none = Bias.of(Summary.of(5, 5, 5), 5, 0);
    assertEquals(new Bias(0, 0, 2), none);
    assertEquals(0, none.statistic());
    assertFalse(none.significantAt(0.05));
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
}
