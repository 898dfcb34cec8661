package org.quietline.stats.distribution;

import org.quietline.stats.numeric.Require;

/**
 * The incomplete beta function by its continued fraction, on the side where that converges, with
 * the front factor in Loader's form. Source: Didonato and Morris (1992), ACM Trans. Math. Softw.
 * 18, 360–373, equation 9.
 */
public final class IncompleteBeta {
  private static final int MOST_TERMS = 1_000_000;
  private static final double TINY = 1e-300;

  private IncompleteBeta() {}

  /** {@code x^a·y^b/B(a, b)}, with y = 1 − x given by itself so that it keeps its digits. */
  static double front(double a, double b, double x, double y) {
    if (x == 0 || y == 0) {
      return 0;
    }
    double n = a + b;
    double rest = Stirling.rest(n) - Stirling.rest(a) - Stirling.rest(b);
    double deviance = Stirling.deviance(a, n * x) + Stirling.deviance(b, n * y);
    return Math.sqrt(a / n * b / (2 * Math.PI)) * Math.exp(rest - deviance);
  }

  /**
   * The regularised incomplete beta function {@code I(x; a, b)}: the chance that a beta variable
   * falls below x. About 1e-13 relative where it is the smaller of the two tails, for a and b up to
   * 1e6; where it is the larger one, to the last digits.
   *
   * <p>Zero at x = 0, one at y = 0.
   *
   * @param a the first shape, above zero
   * @param b the second shape, above zero
   * @param x the value, from 0 to 1
   * @param y the rest {@code 1 − x}, given by itself so that it keeps its digits where it is small
   * @return the chance
   * @throws IllegalArgumentException if a shape is not above zero or not finite, x or y is not from
   *     0 to 1, or they do not add up to one
   */
  public static double below(double a, double b, double x, double y) {
    Require.positive(a, "first shape");
    Require.positive(b, "second shape");
    if (!(x >= 0 && y >= 0 && Math.abs(x + y - 1) < 1e-15)) {
      throw new IllegalArgumentException(
          "x and y must be from 0 to 1 and add up to one, are " + x + " and " + y);
    }
    return x <= (a + 1) / (a + b + 2) ? direct(a, b, x, y) : 1 - direct(b, a, y, x);
  }

  private static double direct(double a, double b, double x, double y) {
    double front = front(a, b, x, y);
    return front == 0 ? 0 : front / fraction(a, b, x, y);
  }

  /**
   * The fraction whose terms use x and y, so that a y far below one keeps its digits; by the method
   * of Lentz, as given by Thompson and Barnett (1986).
   */
  private static double fraction(double a, double b, double x, double y) {
    double value = denominator(0, a, b, x, y);
    double c = value;
    double d = 0;
    for (int m = 1; m < MOST_TERMS; m++) {
      double base = a + 2.0 * m - 1;
      double over = (a + m - 1) / base * ((a + b + m - 1) / base) * m * (b - m) * x * x;
      double under = denominator(m, a, b, x, y);
      d = 1 / away(under + over * d);
      c = away(under + over / c);
      double ratio = c * d;
      value *= ratio;
      if (Math.abs(ratio - 1) < 2e-16) {
        break;
      }
    }
    return value;
  }

  private static double denominator(int m, double a, double b, double x, double y) {
    double first = m == 0 ? 0 : m + m * (b - m) * x / (a + 2.0 * m - 1);
    return first + (a + m) * (a * y - b * x + 1 + m * (1 + y)) / (a + 2.0 * m + 1);
  }

  private static double away(double from) {
    return Math.abs(from) < TINY ? TINY : from;
  }
}
