package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertAgree;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class SerialDependenceTest {
  @Test
  void practitionersAlternatingResults() {
    Reference reference = Reference.read("practitioner-individuals");
    SerialDependence found = SerialDependence.of(reference.numbers("/data/values", 20));
    Class<?> subject = SerialDependence.class;
    reference.check(subject, "lag-1 autocorrelation", "/expected/lag1", found.lag1());
    reference.check(
        subject, "von Neumann's ratio", "/expected/vonNeumannRatio", found.vonNeumannRatio());
    reference.check(subject, "lag 1, printed", "/printed/lag1", found.lag1(), 5.01e-5);
    reference.check(
        subject, "ratio, printed", "/printed/vonNeumannRatio", found.vonNeumannRatio(), 5.01e-5);
    double deviations =
        reference.number("/expected/movingRangeDeviation")
            / reference.number("/expected/deviation");
    assertAgree(12, deviations, found.deviationRatio(), "deviations");
  }

  @Test
  void threeValuesByHand() {
    // deviations -1, 0, 1; steps 1, 1; mean moving range 1; deviation 1
    SerialDependence found = SerialDependence.of(4, 5, 6);
    assertEquals(0, found.lag1());
    assertEquals(1, found.vonNeumannRatio());
    assertEquals(Math.sqrt(Math.PI) / 2, found.deviationRatio(), 1e-15);
  }

  @Test
  void independentValuesGiveTwoAndOne() {
    SerialDependence found = SerialDependence.of(Simulation.normal(new SplittableRandom(3), 20000));
    assertEquals(0, found.lag1(), 4 / Math.sqrt(20000));
    assertEquals(2, found.vonNeumannRatio(), 8 / Math.sqrt(20000));
    assertEquals(1, found.deviationRatio(), 4 / Math.sqrt(20000));
  }
}
