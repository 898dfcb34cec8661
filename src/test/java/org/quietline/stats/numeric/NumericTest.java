package org.quietline.stats.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertAgree;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.SplittableRandom;
import org.apache.commons.math3.exception.NoBracketingException;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;

/** The tools against decimal arithmetic of sixty digits and against closed forms. */
class NumericTest {
  private static final MathContext EXACT = new MathContext(60);

  @Test
  void sumsThatCancelKeepTheirLastDigit() {
    SplittableRandom random = new SplittableRandom(1);
    for (int n : new int[] {3, 50, 2000}) {
      Sum sum = new Sum();
      BigDecimal exact = BigDecimal.ZERO;
      for (int i = 0; i < n; i++) {
        double a = random.nextDouble(-1, 1) * Math.pow(10, random.nextInt(12));
        double b = i % 2 == 0 ? random.nextDouble(-1, 1) : 1;
        sum.addProduct(a, b).add(-a);
        exact =
            exact.add(new BigDecimal(a).multiply(new BigDecimal(b))).subtract(new BigDecimal(a));
      }
      double expected = exact.doubleValue();
      Evidence.own(Sum.class, "cancelling sum of " + n, "BigDecimal", expected, sum.value(), 1e-15);
      BigDecimal both = new BigDecimal(sum.value()).add(new BigDecimal(sum.rest()));
      BigDecimal lost = exact.subtract(both);
      assertTrue(Math.abs(lost.doubleValue()) <= 1e-28 * 1e12 * n, "rest of " + n);
    }
  }

  @Test
  void sumsOfSquaresAndProducts() {
    double[] a = {1e8 + 1, 3, -2};
    double[] b = {1e8 - 1, -1, 0.5};
    assertEquals(1e16 - 1 - 3 - 1, Sum.ofProducts(a, b));
    assertEquals(14, Sum.ofSquares(new double[] {1, 2, -3}));
    assertEquals(0, Sum.ofSquares(new double[0]));
  }

  @Test
  void centringKeepsWhatIsBelowTheLastDigitOfTheMean() {
    double[] values = {1e15 + 1, 1e15 + 2, 1e15 + 5};
    Centred centred = Centred.of(values);
    BigDecimal mean =
        new BigDecimal(values[0])
            .add(new BigDecimal(values[1]))
            .add(new BigDecimal(values[2]))
            .divide(BigDecimal.valueOf(3), EXACT);
    assertEquals(mean.doubleValue(), centred.mean());
    BigDecimal rest = mean.subtract(new BigDecimal(centred.mean()));
    assertAgree(10, rest.doubleValue(), centred.meanRest(), "rest");
    double squares = 26 / 3.0;
    Evidence.own(
        Centred.class, "squares about 1e15", "fraction", squares, centred.sumOfSquares(), 1e-15);
    centred.deviations()[0] = 99;
    assertAgree(15, -5 / 3.0, centred.deviations()[0], "a copy");
  }

  @Test
  void quadratureIsExactForPolynomialsOfDegree47() {
    double got = Quadrature.integrate(x -> 48 * Math.pow(x, 47), 0, 1);
    Evidence.own(Quadrature.class, "48 x^47 from 0 to 1", "closed form", 1, got, 1e-14);
    double two = Quadrature.integrate(Math::exp, -3, -1, 2);
    Evidence.own(
        Quadrature.class,
        "exp on two panels",
        "closed form",
        Math.exp(2) - Math.exp(-3),
        two,
        1e-15);
    assertEquals(0, Quadrature.integrate(Math::exp, 1, 1));
  }

  @Test
  void rootsFarFromTheirStart() {
    double near = Roots.of(x -> Math.exp(x) - 2, 0, 0.1);
    Evidence.own(Roots.class, "exp(x) = 2", "closed form", Math.log(2), near, 1e-13);
    assertEquals(1000, Roots.of(x -> x - 1000, 0, 0.001), 1e-9);
    assertEquals(-1000, Roots.of(x -> 1e-100 * (x + 1000), 0, 1), 1e-9);
    assertEquals(Math.sqrt(2), Roots.between(x -> x * x - 2, 0, 2), 1e-13);
    assertThrows(NoBracketingException.class, () -> Roots.between(x -> x * x + 1, 0, 2));
  }
}
