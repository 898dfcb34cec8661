package org.quietline.stats.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Simulation;

/** Held to decimal arithmetic of 80 digits; 31 digits must agree. */
class TwofoldTest {
  private static final MathContext EXACT = new MathContext(80);
  private static final BigDecimal ROUNDING = new BigDecimal("1e-31");
  private final SplittableRandom random = new SplittableRandom(91);

  private static BigDecimal exact(Twofold value) {
    return new BigDecimal(value.high()).add(new BigDecimal(value.low()));
  }

  private static void assertClose(BigDecimal expected, Twofold got, BigDecimal scale) {
    BigDecimal error = exact(got).subtract(expected).abs();
    assertTrue(
        error.compareTo(scale.abs().multiply(ROUNDING)) <= 0, () -> got + " is off by " + error);
    assertEquals(got.high(), got.high() + got.low(), "the high part is the whole, rounded");
  }

  private Twofold any() {
    double size = Math.exp(5 * Simulation.normal(random));
    return Twofold.of(size * Simulation.normal(random))
        .plus(Twofold.of(size * 1e-17 * Simulation.normal(random)));
  }

  @Test
  void sumsProductsAndQuotients() {
    for (int i = 0; i < 2000; i++) {
      Twofold a = any();
      Twofold b = any();
      BigDecimal x = exact(a);
      BigDecimal y = exact(b);
      assertClose(x.add(y), a.plus(b), x.abs().add(y.abs()));
      assertClose(x.subtract(y), a.minus(b), x.abs().add(y.abs()));
      assertClose(x.multiply(y), a.times(b), x.multiply(y));
      assertClose(x.multiply(x), a.square(), x.multiply(x));
      assertClose(x.divide(y, EXACT), a.over(b), x.divide(y, EXACT));
    }
  }

  /** What nearly cancels keeps all that the two parts hold. */
  @Test
  void nearlyEqualNumbersLoseNothing() {
    for (int i = 0; i < 2000; i++) {
      Twofold a = any();
      Twofold b = new Twofold(-a.high(), -a.low() * (1 + 1e-8 * random.nextDouble()));
      BigDecimal left = exact(a).add(exact(b));
      assertClose(left, a.plus(b), left);
    }
  }

  @Test
  void wholeNumbersAreExact() {
    assertEquals(new Twofold(7, 0), Twofold.of(21).over(Twofold.of(3)));
    assertEquals(Twofold.ONE, Twofold.of(0.1).over(Twofold.of(0.1)));
    assertEquals(Twofold.ZERO, Twofold.ONE.minus(Twofold.ONE));
    assertEquals(0x1p53 + 2, new Twofold(0x1p53, 2).value());
  }
}
