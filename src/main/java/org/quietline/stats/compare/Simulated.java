package org.quietline.stats.compare;

import org.quietline.stats.numeric.Require;

/**
 * A figure found by simulation. The error falls with the root of the number of trials: four times
 * as many for half the error.
 *
 * @param value the estimate
 * @param standardError its standard error, zero or more
 */
public record Simulated(double value, double standardError) {

  /**
   * Checks the ranges.
   *
   * @param value the estimate
   * @param standardError its standard error
   * @throws IllegalArgumentException if the estimate is not finite or the error is negative or not
   *     finite
   */
  public Simulated {
    Require.finite(value, "value");
    Require.notNegative(standardError, "standard error");
  }

  /** A share of trials, with the error {@code √(p(1 − p)/trials)}. */
  static Simulated share(double share, int trials) {
    return new Simulated(share, Math.sqrt(share * (1 - share) / trials));
  }
}
