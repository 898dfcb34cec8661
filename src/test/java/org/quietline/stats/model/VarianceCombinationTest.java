package org.quietline.stats.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertAgree;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.compare.VarianceRatio;
import org.quietline.stats.distribution.ChiSquare;
import org.quietline.stats.distribution.FisherF;
import org.quietline.stats.model.VarianceCombination.Part;

class VarianceCombinationTest {
  @Test
  void modifiedLargeSampleIntervals() {
    Reference reference = Reference.read("variance-intervals");
    assertEquals(12, reference.at("/data/cases").size());
    for (int i = 0; i < 12; i++) {
      String place = "/data/cases/" + i;
      JsonNode given = reference.at(place);
      List<Part> parts = new ArrayList<>();
      for (double[] part : reference.rows(place + "/parts", given.get("parts").size())) {
        parts.add(new Part(part[0], part[1], (int) part[2]));
      }
      VarianceCombination sum = new VarianceCombination(parts);
      String what = given.get("what").asText() + ": ";
      Interval interval = sum.interval(given.get("level").asDouble());
      check(reference, what + "estimate", place + "/raw", sum.raw());
      check(reference, what + "lower end", place + "/lower", interval.lower());
      check(reference, what + "upper end", place + "/upper", interval.upper());
      if (given.get("df").isNull()) {
        assertEquals(OptionalDouble.empty(), sum.degreesOfFreedom());
      } else {
        check(
            reference,
            what + "degrees of freedom",
            place + "/df",
            sum.degreesOfFreedom().orElseThrow());
      }
    }
  }

  private static void check(Reference reference, String what, String pointer, double got) {
    reference.check(VarianceCombination.class, what, pointer, got);
  }

  private static VarianceCombination of(Part... parts) {
    return new VarianceCombination(List.of(parts));
  }

  @Test
  void oneMeanSquareHasTheChiSquareInterval() {
    VarianceCombination one = of(new Part(0.5, 8, 7));
    Interval interval = one.interval(0.9);
    assertAgree(14, 4 * 7 / ChiSquare.quantile(0.95, 7), interval.lower(), "lower");
    assertAgree(14, 4 * 7 / ChiSquare.quantile(0.05, 7), interval.upper(), "upper");
    assertAgree(14, interval.upper(), Math.pow(one.deviationUpperBound(0.95), 2), "bound");
    assertAgree(14, Math.sqrt(interval.upper()), one.deviationInterval(0.9).upper(), "root");
    assertAgree(14, Math.sqrt(interval.lower()), one.deviationInterval(0.9).lower(), "root");
    assertAgree(15, 7, one.degreesOfFreedom().orElseThrow(), "degrees of freedom");
    assertEquals(2, one.deviation());
  }

  /** The lower end of a difference is zero exactly where the F test is at its limit. */
  @Test
  void theLowerEndOfADifferenceTurnsWithTheTestOfTheRatio() {
    for (int[] df : new int[][] {{2, 8}, {4, 9}, {11, 12}, {5, 60}}) {
      double ratio = FisherF.exceededWith(0.025, df[0], df[1]);
      assertEquals(
          0.025, VarianceRatio.of(Math.sqrt(ratio), df[0], 1, df[1]).upperTail(), 1e-13, "tail");
      Part below = new Part(-1, 3, df[1]);
      assertEquals(0, of(new Part(1, 3 * ratio * 0.999, df[0]), below).interval(0.95).lower());
      double above = of(new Part(1, 3 * ratio * 1.001, df[0]), below).interval(0.95).lower();
      assertTrue(above > 0 && above < 0.01 * ratio, "lower end " + above);
    }
  }

  /** The upper end is zero where the ratio is so small that even equality is rejected. */
  @Test
  void theUpperEndOfADifferenceTurnsWithTheOtherTail() {
    double ratio = 1 / FisherF.exceededWith(0.025, 9, 4);
    Part below = new Part(-1, 3, 9);
    assertEquals(0, of(new Part(1, 3 * ratio * 0.999, 4), below).interval(0.95).upper());
    assertTrue(of(new Part(1, 3 * ratio * 1.001, 4), below).interval(0.95).upper() > 0);
  }

  @Test
  void theOrderOfPartsDoesNotMatterAndTheScaleCarriesOver() {
    Part a = new Part(0.5, 7, 3);
    Part b = new Part(0.25, 5, 6);
    Part c = new Part(-0.3, 1.5, 9);
    Interval one = of(a, b, c).interval(0.95);
    Interval other = of(c, b, a).interval(0.95);
    assertAgree(14, one.lower(), other.lower(), "lower");
    assertAgree(14, one.upper(), other.upper(), "upper");
    Interval scaled =
        of(new Part(0.5, 70, 3), new Part(0.25, 50, 6), new Part(-0.3, 15, 9)).interval(0.95);
    assertAgree(13, 10 * one.lower(), scaled.lower(), "lower");
    assertAgree(13, 10 * one.upper(), scaled.upper(), "upper");
  }

  @Test
  void higherLevelsGiveWiderIntervals() {
    VarianceCombination sum = of(new Part(0.5, 7, 3), new Part(0.25, 5, 6), new Part(-0.3, 1.5, 9));
    Interval before = sum.interval(0.5);
    for (double level : new double[] {0.8, 0.9, 0.95, 0.99}) {
      Interval now = sum.interval(level);
      assertTrue(now.lower() <= before.lower() && now.upper() > before.upper(), "at " + level);
      assertTrue(now.contains(sum.variance()));
      before = now;
    }
  }

  @Test
  void zeroMeanSquares() {
    VarianceCombination zero = of(new Part(1, 0, 3), new Part(-1, 2, 5));
    assertEquals(0, zero.variance());
    assertTrue(zero.isNegative());
    assertEquals(new Interval(0, 0), zero.interval(0.95));
    assertEquals(2.5, of(new Part(0.5, 5, 3), new Part(-1, 0, 5)).variance());
  }
}
