package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.sample.PairDiagnosis.Resolution;

class PairDiagnosisTest {
  private static final Class<?> SUBJECT = PairDiagnosis.class;

  @Test
  void practitionersTenPairs() {
    Reference reference = Reference.read("pair-diagnosis");
    PairDiagnosis found = PairDiagnosis.of(reference.numbers("/data/differences", 10));
    reference.check(SUBJECT, "deviation by range", "/expected/byRange", found.deviationByRange());
    reference.check(
        SUBJECT, "deviation by range, printed", "/printed/byRange", found.deviationByRange(), 5e-9);
    reference.check(
        SUBJECT, "deviation by median", "/expected/byMedian", found.deviationByMedian());
    assertEquals(10, found.pairs());
    assertEquals(0, found.zeros());
    assertEquals(7, found.distinct());
    assertEquals(Resolution.FINE, found.resolution());
  }

  @Test
  void sizesThatDifferByRoundingAreOne() {
    PairDiagnosis found = PairDiagnosis.of(.182 - .178, .204 - .2, -(.104 - .1), 0, .1 + .2 - .3);
    assertEquals(2, found.distinct());
    assertEquals(2, found.zeros());
  }

  @Test
  void coarseReadings() {
    assertEquals(Resolution.TOO_FEW_PAIRS, PairDiagnosis.of(0, 0, 0, 0).resolution());
    assertEquals(Resolution.COARSE, PairDiagnosis.of(1, 1, 2, 2, 3).resolution());
    assertEquals(Resolution.FINE, PairDiagnosis.of(1, 1.5, 2, 2.5, 3).resolution());
    assertEquals(Resolution.FINE, PairDiagnosis.of(0, 0, 1, 2, 3, 4, 5, 6).resolution());
    assertEquals(Resolution.COARSE, PairDiagnosis.of(0, 0, 0, 1, 2, 3, 4, 5, 6).resolution());
    assertEquals(1, PairDiagnosis.of(0, 0).distinct());
    assertEquals(0, PairDiagnosis.of(0).deviationByMedian());
  }

  /**
   * The share of zeros of readings of any level is the mean of 1 − |d|/step where that is positive.
   */
  @Test
  void sharesOfZerosOfRoundedReadings() {
    SplittableRandom random = new SplittableRandom(91);
    for (double step : new double[] {0.001, 0.005, 0.01}) {
      double[] differences = new double[20_000];
      for (int i = 0; i < differences.length; i++) {
        double level = random.nextDouble();
        double a = Math.rint((level + 0.004 * Simulation.normal(random)) / step);
        double b = Math.rint((level + 0.004 * Simulation.normal(random)) / step);
        differences[i] = a - b;
      }
      double spread = 0.004 * Math.sqrt(2);
      double w = step / spread;
      double inner = 2 * (Normal.density(0) - Normal.density(w)) / w;
      double expected = 1 - Normal.outside(w) - inner;
      PairDiagnosis found = PairDiagnosis.of(differences);
      Simulation.assertShare(expected, found.zeros(), found.pairs());
      assertEquals(
          step > 0.004 ? Resolution.COARSE : Resolution.FINE, found.resolution(), "" + step);
    }
  }

  @Test
  void threeEstimatesAgreeForNormalReadings() {
    double[] differences = Simulation.normal(new SplittableRandom(92), 40_000);
    double squares = DuplicateDeviation.of(differences).deviation();
    PairDiagnosis found = PairDiagnosis.of(differences);
    assertEquals(Math.sqrt(0.5), squares, 0.01);
    assertEquals(squares, found.deviationByRange(), 0.01);
    assertEquals(squares, found.deviationByMedian(), 0.02);
  }
}
