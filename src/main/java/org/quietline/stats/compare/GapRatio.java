package org.quietline.stats.compare;

import org.apache.commons.math3.special.Gamma;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Quadrature;

/**
 * The distribution of Dixon's ratio {@code (x(1 + gap) − x(1))/(x(n − leftOut) − x(1))} of n sorted
 * normal values.
 *
 * <p>Given the smallest value at x and that at the other end at y, the {@code m = n − leftOut − 2}
 * between are independent and normal within; the ratio exceeds r when fewer than {@code gap} of
 * them are below {@code x + r·(y − x)}. Integrated over x and y by Gauss and Legendre's rule.
 *
 * @param gap to which neighbour the gap is taken, 1 or 2
 * @param leftOut how many values at the other end are left out
 * @param n how many values
 */
record GapRatio(int gap, int leftOut, int n) {
  private static final double[] SMALLEST = {-7.5, -2.5, 0, 6};
  private static final double[] RANGES = {0, 2, 4.5, 11};

  /** Beyond this square of the distance the two densities together are below 1e-20. */
  private static final double FAR = 90;

  /** The chance of a ratio above r. */
  double above(double r) {
    int between = n - leftOut - 2;
    double ways =
        Math.exp(
            Gamma.logGamma(n + 1.0)
                - Gamma.logGamma(between + 1.0)
                - Gamma.logGamma(leftOut + 1.0));
    double sum =
        Quadrature.integrate(
            x -> {
              double start = Normal.below(x);
              return Normal.density(x)
                  * Quadrature.integrate(v -> inner(x, start, v, r, between), RANGES);
            },
            SMALLEST);
    return Math.min(1, ways * sum);
  }

  private double inner(double x, double start, double range, double r, int between) {
    double y = x + range;
    if (x * x + y * y > FAR) {
      return 0;
    }
    double end = Normal.below(y);
    double split = Normal.below(x + r * range);
    double beyond = end - split;
    double chance = power(beyond, between);
    if (gap == 2) {
      chance += between * (split - start) * power(beyond, between - 1);
    }
    return chance * Normal.density(y) * power(1 - end, leftOut);
  }

  private static double power(double base, int exponent) {
    double result = 1;
    double square = base;
    for (int e = exponent; e > 0; e >>= 1) {
      result *= (e & 1) == 1 ? square : 1;
      square *= square;
    }
    return result;
  }
}
