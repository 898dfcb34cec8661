package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.numeric.Roots;

class NormalShapeTest {
  private static final Class<?> SUBJECT = NormalShape.class;

  @Test
  void practitionersControlResults() {
    Reference reference = Reference.read("practitioner-individuals");
    NormalShape found = NormalShape.of(reference.numbers("/data/values", 20));
    reference.check(SUBJECT, "A2", "/expected/andersonDarling", found.statistic());
    reference.check(SUBJECT, "A2 adjusted", "/expected/adjusted", found.adjusted());
    reference.check(SUBJECT, "chance", "/expected/chance", found.chance());
    reference.check(SUBJECT, "A2, printed", "/printed/andersonDarling", found.statistic(), 5.01e-6);
    reference.check(
        SUBJECT, "A2 adjusted, printed", "/printed/adjusted", found.adjusted(), 5.01e-6);
    reference.check(SUBJECT, "chance, printed", "/printed/chance", found.chance(), 5.01e-5);
  }

  /** 0.752 is retrieved text; the other three were typed from memory. */
  @Test
  void publishedCriticalValues() {
    Reference table = Reference.read("anderson-darling-normal-critical-values");
    assertEquals(4, table.at("/expected").size());
    for (double level : new double[] {0.10, 0.05, 0.025, 0.01}) {
      String key = level == 0.1 ? "0.10" : String.valueOf(level);
      double chance = NormalShape.chance(table.number("/expected/" + key));
      assertEquals(level, chance, 0.03 * level, key);
    }
  }

  /** The critical values seen from the other side: what the formula gives at each chance. */
  @Test
  void formulaReachesThePublishedCriticalValues() {
    Reference table = Reference.read("anderson-darling-normal-critical-values");
    for (String key : new String[] {"0.10", "0.05", "0.025", "0.01"}) {
      double level = Double.parseDouble(key);
      double critical = Roots.between(a -> NormalShape.chance(a) - level, 0.6, 2);
      table.check(SUBJECT, "critical value of " + key, "/expected/" + key, critical, 0.005);
    }
  }

  /** From seeded samples of normal values, at the sizes of the file's own simulation. */
  @ParameterizedTest
  @ValueSource(ints = {8, 12, 20, 50})
  void chanceIsThatOfSimulatedSamples(int n) {
    SplittableRandom random = new SplittableRandom(53);
    int trials = 6000;
    double[] adjusted = new double[trials];
    for (int i = 0; i < trials; i++) {
      adjusted[i] = NormalShape.of(Simulation.normal(random, n)).adjusted();
    }
    Arrays.sort(adjusted);
    for (double level : new double[] {0.5, 0.25, 0.1, 0.05}) {
      double chance = NormalShape.chance(adjusted[(int) ((1 - level) * trials)]);
      double error = 4 * Math.sqrt(level * (1 - level) / trials) / level;
      String what = "chance at the simulated " + level + " point of " + n;
      Evidence.own(SUBJECT, what, "seeded simulation", level, chance, error + 0.03);
    }
  }

  @Test
  void piecesOfTheFormulaMeet() {
    for (double joint : new double[] {0.2, 0.34, 0.6}) {
      assertEquals(NormalShape.chance(joint - 1e-9), NormalShape.chance(joint), 0.006);
    }
    assertTrue(NormalShape.chance(10) < 1e-22);
    assertEquals(NormalShape.chance(10), NormalShape.chance(1000));
    assertTrue(NormalShape.chance(0) > 0.9999 && NormalShape.chance(0) <= 1);
  }

  @Test
  void rejectsNormalValuesAsOftenAsItSays() {
    SplittableRandom random = new SplittableRandom(51);
    for (int n : new int[] {8, 20, 60}) {
      int trials = 4000;
      int rejected = 0;
      for (int i = 0; i < trials; i++) {
        rejected += NormalShape.of(Simulation.normal(random, n)).chance() < 0.05 ? 1 : 0;
      }
      Simulation.assertShare(0.05, rejected, trials);
    }
  }

  @Test
  void oneGrossValueAmongManyIsNotNormalAndStaysFinite() {
    double[] values = new double[3000];
    for (int i = 0; i < values.length; i++) {
      values[i] = i % 2;
    }
    values[7] = 1e9;
    NormalShape found = NormalShape.of(values);
    assertTrue(found.statistic() > 100);
    assertTrue(found.chance() < 1e-20);
  }

  @Test
  void exponentialValuesAreFoundOut() {
    SplittableRandom random = new SplittableRandom(52);
    double[] values = new double[80];
    for (int i = 0; i < values.length; i++) {
      values[i] = -Math.log(1 - random.nextDouble());
    }
    assertTrue(NormalShape.of(values).chance() < 0.001);
  }
}
