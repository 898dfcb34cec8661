package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class WeightedAverageTest {
  private static final Class<?> SUBJECT = WeightedAverage.class;

  @Test
  void exactFractions() {
    Reference reference = Reference.read("weighted-average");
    assertEquals(4, reference.at("/data/cases").size());
    for (int i = 0; i < 4; i++) {
      String data = "/data/cases/" + i;
      int n = reference.at(data + "/values").size();
      WeightedAverage found =
          WeightedAverage.of(
              reference.numbers(data + "/values", n),
              reference.numbers(data + "/uncertainties", n));
      String at = "/expected/rows/" + i;
      String of = " of case " + i;
      reference.check(SUBJECT, "mean" + of, at + "/0", found.mean());
      reference.check(SUBJECT, "internal error" + of, at + "/1", found.internalError());
      // the rounding of 1000000.21 to a double is 1e-8 of its distance to the mean
      double loss = i == 1 ? 1e-8 : 1e-12;
      double chi = reference.number(at + "/2");
      reference.check(SUBJECT, "chi-square" + of, at + "/2", found.chiSquare(), loss * chi);
      reference.check(SUBJECT, "Birge's ratio" + of, at + "/3", found.birgeRatio(), loss * 3);
      double external = reference.number(at + "/4");
      reference.check(
          SUBJECT, "external error" + of, at + "/4", found.externalError(), loss * external);
      reference.check(SUBJECT, "chance" + of, at + "/5", found.chance(), 10 * loss);
      assertEquals(n - 1, found.degreesOfFreedom());
    }
  }

  @Test
  void equalUncertaintiesGiveThePlainMeanAndItsTwoErrors() {
    double[] values = {4, 6, 11};
    WeightedAverage found = WeightedAverage.of(values, new double[] {2, 2, 2});
    Summary plain = Summary.of(values);
    assertRelative(plain.mean(), found.mean(), 1e-15, "mean");
    assertRelative(2 / Math.sqrt(3), found.internalError(), 1e-15, "internal");
    assertRelative(plain.deviation() / Math.sqrt(3), found.externalError(), 1e-14, "external");
    assertEquals(found.externalError(), found.largerError());
    WeightedAverage close = WeightedAverage.of(values, new double[] {20, 20, 20});
    assertEquals(close.internalError(), close.largerError());
  }

  @Test
  void movesWithTheValues() {
    SplittableRandom random = new SplittableRandom(89);
    for (int i = 0; i < 30; i++) {
      double[] values = Simulation.normal(random, 2 + i);
      double[] errors = random.doubles(values.length, 0.1, 3).toArray();
      WeightedAverage before = WeightedAverage.of(values, errors);
      WeightedAverage after =
          WeightedAverage.of(
              Arrays.stream(values).map(v -> 5 - 2 * v).toArray(),
              Arrays.stream(errors).map(u -> 2 * u).toArray());
      assertEquals(5 - 2 * before.mean(), after.mean(), 1e-12);
      assertRelative(2 * before.internalError(), after.internalError(), 1e-13, "internal");
      assertRelative(before.chiSquare(), after.chiSquare(), 1e-11, "chi-square");
    }
  }

  /** With right uncertainties the chance is evenly spread. */
  @Test
  void disagreementIsFoundAsOftenAsItSays() {
    SplittableRandom random = new SplittableRandom(90);
    int trials = 8000;
    int apart = 0;
    double[] errors = {0.5, 1, 2, 1, 0.7};
    for (int i = 0; i < trials; i++) {
      double[] values = Simulation.normal(random, 5);
      for (int j = 0; j < 5; j++) {
        values[j] *= errors[j];
      }
      apart += WeightedAverage.of(values, errors).chance() < 0.1 ? 1 : 0;
    }
    Simulation.assertShare(0.1, apart, trials);
  }

  /** Symmetric values have the mean zero; and equal values have their own. */
  @Test
  void endsOfTheRanges() {
    WeightedAverage equal =
        WeightedAverage.of(new double[] {1e150, 1e150}, new double[] {1e-100, 1e100});
    assertEquals(1e150, equal.mean());
    assertRelative(1e-100, equal.internalError(), 1e-15, "error");
    WeightedAverage far =
        WeightedAverage.of(new double[] {1e150, -1e150}, new double[] {1e100, 1e100});
    assertEquals(0, far.mean());
    assertRelative(2e100, far.chiSquare(), 1e-14, "chi-square");
    WeightedAverage fine =
        WeightedAverage.of(new double[] {1e120, -1e120}, new double[] {1e-30, 1e-30});
    assertEquals(0, fine.mean());
    assertEquals(
        "values differ by so many uncertainties that chi-square is no usable number",
        assertThrows(
                IllegalArgumentException.class,
                () ->
                    WeightedAverage.of(new double[] {1e150, -1e150}, new double[] {1e-100, 1e-100}))
            .getMessage());
  }
}
