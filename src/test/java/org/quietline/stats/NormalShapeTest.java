package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class NormalShapeTest {
  @Test
  void practitionersControlResults() {
    Reference reference = Reference.read("practitioner-individuals");
    NormalShape found = NormalShape.of(reference.numbers("/data/values", 20));
    assertRelative(reference.number("/expected/andersonDarling"), found.statistic(), 1e-11, "A2");
    assertRelative(reference.number("/expected/adjusted"), found.adjusted(), 1e-11, "A2*");
    assertRelative(reference.number("/expected/chance"), found.chance(), 1e-11, "p");
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
