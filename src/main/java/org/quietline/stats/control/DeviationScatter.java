package org.quietline.stats.control;

import org.apache.commons.math3.special.Gamma;
import org.quietline.stats.numeric.Roots;

/**
 * What the mean of a sample deviation says about its scatter, also between whole degrees of
 * freedom. Source: ISO 7870-2:2013, annex.
 */
final class DeviationScatter {
  private DeviationScatter() {}

  /** The mean c4 of a sample deviation with so many degrees of freedom, above zero. */
  static double mean(double freedom) {
    return Math.sqrt(2 / freedom)
        * Math.exp(Gamma.logGamma((freedom + 1) / 2) - Gamma.logGamma(freedom / 2));
  }

  /**
   * The relative variance {@code (1 − c4²)/c4²} of a sample deviation made unbiased.
   *
   * <p>Above 1e4 degrees of freedom the difference loses digits and the series {@code 1/(2ν)·(1 +
   * 1/(4ν))} is exact to 1e-9.
   */
  static double relativeVariance(double freedom) {
    if (freedom > 1e4) {
      return (1 + 1 / (4 * freedom)) / (2 * freedom);
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
