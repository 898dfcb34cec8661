package org.quietline.stats.control;

import org.apache.commons.math3.special.Gamma;
import org.quietline.stats.numeric.Roots;

/**
 * What the mean of a sample deviation says about its scatter, also between whole degrees of
 * freedom. Source: ISO 7870-2:2013, annex.
 */
final class DeviationScatter {
  private static final double MANY = 100;

  private DeviationScatter() {}

  /** The mean c4 of a sample deviation with so many degrees of freedom, above zero. */
  static double mean(double freedom) {
    if (freedom > MANY) {
      double e = 1 / freedom;
      return 1
          - e * (1 / 4.0 - e * (1 / 32.0 + e * (5 / 128.0 - e * (21 / 2048.0 + e * 399 / 8192))));
    }
    return Math.sqrt(2 / freedom)
        * Math.exp(Gamma.logGamma((freedom + 1) / 2) - Gamma.logGamma(freedom / 2));
  }

  /**
   * The relative variance {@code (1 − c4²)/c4²} of a sample deviation made unbiased.
   *
   * <p>Above 100 degrees of freedom the difference loses digits; the series in 1/ν, that of the
   * quotient of gamma functions (DLMF 5.11.13), is exact to 1e-13 there.
   */
  static double relativeVariance(double freedom) {
    if (freedom > MANY) {
      double e = 1 / freedom;
      return e
          * (1 / 2.0
              + e
                  * (1 / 8.0
                      - e * (1 / 16.0 + e * (5 / 128.0 - e * (23 / 256.0 + e * 53 / 1024)))));
    }
    double c4 = mean(freedom);
    return (1 - c4 * c4) / (c4 * c4);
  }

  /** The degrees of freedom of a sample deviation with the same relative variance. */
  static double freedomOf(double variance) {
    double start = Math.log(1 / (2 * variance));
    return Math.exp(
        Roots.of(log -> Math.log(relativeVariance(Math.exp(log)) / variance), start, 0.5));
  }
}
