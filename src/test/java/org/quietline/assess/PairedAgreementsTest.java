package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.quietline.assess.PairedAgreement.Line;
import org.quietline.assess.PairedAgreement.Point;

class PairedAgreementsTest {
  private static final double[] X = {
    .112, .145, .160, .178, .191, .205, .214, .228, .240, .262, .281, .305
  };
  private static final double[] Y = {
    .118, .149, .158, .187, .196, .204, .223, .231, .252, .266, .292, .310
  };

  private static List<Point> points(int n) {
    return IntStream.range(0, n).mapToObj(i -> new Point(Y[i], X[i])).toList();
  }

  /** The pairs of the practitioner (MC-1), computed there by a general statistics program. */
  @Test
  void thePairsOfThePractitioner() {
    PairedAgreement agreement = PairedAgreements.of(points(12)).value().orElseThrow();
    assertEquals(-0.003084, agreement.limits().lower(), 5e-7);
    assertEquals(0.013917, agreement.limits().upper(), 5e-7);
    Line deming = agreement.deming().value().orElseThrow();
    assertEquals(1.0245483, deming.slope(), 5e-8);
    assertEquals(0.00025948, deming.intercept(), 5e-9);
    Line medians = agreement.passingBablok().value().orElseThrow();
    assertEquals(1.0246149, medians.slope(), 5e-8);
    assertEquals(0.974138, medians.ofSlope().lower(), 5e-7);
    assertEquals(1.073529, medians.ofSlope().upper(), 5e-7);
    assertEquals(0.00036469, medians.intercept(), 5e-9);
    // the slope of the differences along the mean of both
    double middle = (agreement.trend().orElseThrow().lower() + agreement.trend().get().upper()) / 2;
    assertEquals(0.0242199, middle, 5e-8);
  }

  @Test
  void fewSamplesGetNoLimitsAndNoLines() {
    assertEquals(Optional.of("needs 6 samples, has 5"), PairedAgreements.of(points(5)).why());
    PairedAgreement some = PairedAgreements.of(points(9)).value().orElseThrow();
    assertEquals(Optional.of("needs 10 samples, has 9"), some.deming().why());
    assertEquals(Optional.of("needs 10 samples, has 9"), some.passingBablok().why());
  }

  /** Twelve samples of one level, to which two ways add what they will. */
  @Test
  void samplesOfOneLevelTellNothingOfLevels() {
    List<Point> points =
        IntStream.range(0, 12).mapToObj(i -> new Point(0.2 + 0.001 * i, 0.2 - 0.001 * i)).toList();
    assertTrue(PairedAgreements.of(points).value().orElseThrow().trend().isEmpty());
  }

  @Test
  void aThousandSamplesAreMoreThanPairsOfThemCanBeCompared() {
    List<Point> points = new java.util.ArrayList<>();
    for (int i = 0; i < 90; i++) {
      points.addAll(points(12));
    }
    Collections.shuffle(points, new java.util.Random(1));
    PairedAgreement agreement = PairedAgreements.of(points).value().orElseThrow();
    assertEquals(Optional.of("there are more than 1000 samples"), agreement.passingBablok().why());
    assertEquals(1.0245483, agreement.deming().value().orElseThrow().slope(), 5e-8);
  }
}
