package org.quietline.stats.mixed;

import org.quietline.stats.numeric.Require;

/**
 * An estimated variance, or sum of components, with effective degrees of freedom {@code ν = 2·v² /
 * var(v)}. Source: Satterthwaite, Biometrics Bulletin 2 (1946) 110–114; JCGM 100:2008, G.4.
 *
 * @param variance the estimate, in the square of the values' unit, zero or more
 * @param degreesOfFreedom the effective degrees of freedom, not necessarily whole; zero where the
 *     estimate is zero
 */
public record VarianceEstimate(double variance, double degreesOfFreedom) {
  /**
   * Checks the ranges; NaN fails.
   *
   * @param variance the estimate
   * @param degreesOfFreedom the effective degrees of freedom
   * @throws IllegalArgumentException if one is negative or not finite
   */
  public VarianceEstimate {
    Require.notNegative(variance, "variance");
    Require.notNegative(degreesOfFreedom, "degrees of freedom");
  }

  /**
   * The root of the variance.
   *
   * @return the standard deviation, in the unit of the values
   */
  public double deviation() {
    return Math.sqrt(variance);
  }
}
