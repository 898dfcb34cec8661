package org.quietline.stats.compare;

import org.quietline.stats.distribution.ChiSquare;
import org.quietline.stats.numeric.Require;

/**
 * The tails of the Poisson distribution.
 *
 * <p>{@code P(X ≥ k)} is the chance that χ² with 2k degrees of freedom is below twice the mean;
 * accurate to about 1e-12 relative. Source: DLMF 8.4.10; Garwood (1936), Biometrika 28, 437–442.
 */
public final class PoissonTail {
  private PoissonTail() {}

  /**
   * The chance of at least so many.
   *
   * @param k how many; at or below 0 the chance is 1
   * @param mean how many are expected, zero or more
   * @return the chance
   * @throws IllegalArgumentException if the mean is negative or not finite
   */
  public static double atLeast(int k, double mean) {
    Require.notNegative(mean, "mean");
    return k <= 0 ? 1 : ChiSquare.below(2 * mean, 2.0 * k);
  }

  /**
   * The chance of at most so many.
   *
   * @param k how many; below 0 the chance is 0
   * @param mean how many are expected, zero or more
   * @return the chance
   * @throws IllegalArgumentException if the mean is negative or not finite
   */
  public static double atMost(int k, double mean) {
    Require.notNegative(mean, "mean");
    return k < 0 ? 0 : ChiSquare.above(2 * mean, 2.0 * k + 2);
  }
}
