package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;

class TietjenMooreTest {
  private static final Class<?> SUBJECT = TietjenMoore.class;
  private static final int TRIALS = 20_000;

  private final Reference nist = Reference.read("nist-1.3.5.17.2-tietjen-moore");
  private final double[] venus = nist.numbers("/data/y", 15);

  private TietjenMoore of(Suspect suspect, int outliers, double... values) {
    return TietjenMoore.of(suspect, outliers, TRIALS, new SplittableRandom(5), values);
  }

  @Test
  void handbookVenus() {
    TietjenMoore test = of(Suspect.EITHER, 2, venus);
    nist.check(SUBJECT, "E of two", "/expected/E_k", test.statistic());
    var critical =
        TietjenMoore.criticalValue(Suspect.EITHER, 2, 15, 0.05, TRIALS, new SplittableRandom(1));
    // simulated in the handbook from 10 000 samples: four standard errors of both
    String at = "/expected/critical_5pct_simulated";
    nist.check(
        Simulated.class,
        "5 % value, Tietjen and Moore",
        at,
        critical.value(),
        4 * 1.8 * critical.standardError());
    assertEquals(List.of(0, 14), test.places());
    assertTrue(test.significantAt(0.05));
    assertTrue(test.chance() > 0.02, "chance " + test.chance());
    assertEquals(OutlierTest.Certainty.SIMULATED, test.certainty());
    double p = test.chance();
    assertEquals(Math.sqrt(p * (1 - p) / TRIALS), test.standardError(), 1e-15);
  }

  @Test
  void simulatedOutside() {
    Reference reference = Reference.read("tietjen-moore-simulated");
    for (int i = 0; i < 14; i += 2) {
      String at = "/expected/rows/" + i + "/";
      int n = reference.at(at + 0).asInt();
      int k = reference.at(at + 1).asInt();
      Suspect suspect = Suspect.valueOf(reference.at(at + 2).asText());
      var got = TietjenMoore.criticalValue(suspect, k, n, 0.05, TRIALS, new SplittableRandom(n));
      double error = Math.hypot(got.standardError(), reference.number(at + 5));
      String what = "5 % value of " + k + " in " + n + ", " + suspect;
      reference.check(SUBJECT, what, at + 4, got.value(), 4 * error);
    }
  }

  @Test
  void oneAndTwoAtOneEndAreGrubbs() {
    TietjenMoore one = of(Suspect.LARGEST, 1, venus);
    Grubbs grubbs = Grubbs.of(Suspect.LARGEST, venus);
    double expected = 1 - Math.pow(grubbs.statistic(), 2) * 15 / (14.0 * 14);
    assertRelative(expected, one.statistic(), 1e-12, "one");
    double exact = LargestDeviation.of(15).above(grubbs.statistic() * Math.sqrt(15) / 14);
    assertEquals(exact, one.chance(), 4 * one.standardError());
    GrubbsPair pair = GrubbsPair.of(Suspect.SMALLEST, venus);
    TietjenMoore two = of(Suspect.SMALLEST, 2, venus);
    assertRelative(pair.statistic(), two.statistic(), 1e-12, "two");
    assertEquals(pair.places(), two.places());
    Evidence.own(
        SUBJECT,
        "chance of two at one end",
        "exact integral of the pair's test, within four standard errors",
        pair.chance(),
        two.chance(),
        4 * two.standardError() / pair.chance());
    var critical =
        TietjenMoore.criticalValue(Suspect.SMALLEST, 2, 9, 0.1, TRIALS, new SplittableRandom(2));
    double pairValue = GrubbsPair.criticalValue(Suspect.SMALLEST, 9, 0.1);
    assertEquals(pairValue, critical.value(), 4 * critical.standardError());
    // the order statistics about a quantile, by the asymptotic formula
    double slope =
        (GrubbsPair.criticalValue(Suspect.SMALLEST, 9, 0.11)
                - GrubbsPair.criticalValue(Suspect.SMALLEST, 9, 0.09))
            / 0.02;
    assertRelative(slope * Math.sqrt(0.09 / TRIALS), critical.standardError(), 0.3, "error");
  }

  @Test
  void sameSeedSameChance() {
    assertEquals(of(Suspect.EITHER, 3, venus), of(Suspect.EITHER, 3, venus));
    double[] moved = Arrays.stream(venus).map(v -> 7 - 2 * v).toArray();
    TietjenMoore turned = of(Suspect.EITHER, 3, moved);
    assertRelative(of(Suspect.EITHER, 3, venus).statistic(), turned.statistic(), 1e-12, "moved");
  }

  /** Nothing in a hundred samples is as remote: one in a hundred and one, never zero. */
  @Test
  void aSimulatedChanceIsNeverZero() {
    double[] values = {1, 2, 3, 4, 5, 1000};
    TietjenMoore test = TietjenMoore.of(Suspect.LARGEST, 1, 100, new SplittableRandom(1), values);
    assertEquals(1 / 101.0, test.chance());
  }
}
