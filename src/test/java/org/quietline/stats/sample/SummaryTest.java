package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertAgree;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;

class SummaryTest {
  private static final MathContext EXACT = new MathContext(60);

  @Test
  void agreesWithDecimalArithmeticUnderAnyOffset() {
    SplittableRandom random = new SplittableRandom(11);
    for (double offset : new double[] {0, 1, -1e6, 1e10, 1e13}) {
      for (int n : new int[] {2, 3, 20, 500}) {
        double[] values = new double[n];
        for (int i = 0; i < n; i++) {
          values[i] = offset + random.nextDouble(-1, 1) * 0.1;
        }
        Summary summary = Summary.of(values);
        BigDecimal mean = mean(values);
        BigDecimal variance = BigDecimal.ZERO;
        for (double v : values) {
          variance = variance.add(new BigDecimal(v).subtract(mean, EXACT).pow(2, EXACT), EXACT);
        }
        double deviation =
            variance.divide(BigDecimal.valueOf(n - 1L), EXACT).sqrt(EXACT).doubleValue();
        assertAgree(15.3, mean.doubleValue(), summary.mean(), "mean at " + offset);
        assertAgree(15.3, mean.doubleValue(), Summary.meanOf(values), "mean alone");
        if (deviation == 0) {
          assertEquals(0, summary.deviation());
        } else {
          assertAgree(15, deviation, summary.deviation(), "deviation at " + offset + ", " + n);
        }
      }
    }
  }

  private static BigDecimal mean(double[] values) {
    BigDecimal sum = BigDecimal.ZERO;
    for (double v : values) {
      sum = sum.add(new BigDecimal(v), EXACT);
    }
    return sum.divide(BigDecimal.valueOf(values.length), EXACT);
  }

  @Test
  void equalValuesHaveNoSpread() {
    assertEquals(new Summary(3, 0.1, 0), Summary.of(0.1, 0.1, 0.1));
  }

  @Test
  void meanOfOneValueIsTheValue() {
    assertEquals(0.1, Summary.meanOf(0.1));
  }

  @Test
  void cancellingValuesKeepWhatIsLeft() {
    assertEquals(0.25, Summary.meanOf(1e16, 1, -1e16, 0));
  }

  @Test
  void practitionersControlResults() {
    Reference reference = Reference.read("practitioner-individuals");
    Summary summary = Summary.of(reference.numbers("/data/values", 20));
    reference.check(Summary.class, "mean", "/expected/mean", summary.mean());
    reference.check(Summary.class, "deviation", "/expected/deviation", summary.deviation());
    double range = MovingRange.mean(reference.numbers("/data/values", 20));
    Class<?> moving = MovingRange.class;
    reference.check(moving, "mean moving range", "/expected/meanMovingRange", range);
    reference.check(
        moving,
        "deviation by moving range",
        "/expected/movingRangeDeviation",
        MovingRange.deviation(range));
  }
}
