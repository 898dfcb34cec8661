package org.quietline.stats.compare;

import org.quietline.stats.distribution.IncompleteBeta;
import org.quietline.stats.numeric.Require;

/**
 * The tails of the binomial distribution.
 *
 * <p>{@code P(X ≥ k) = I(p; k, n − k + 1)}, accurate to about 1e-12 relative up to a million tries.
 * Source: DLMF 8.17.5.
 */
public final class BinomialTail {
  private BinomialTail() {}

  /**
   * The chance of at least k of n.
   *
   * @param k how many; at or below 0 the chance is 1, above n it is 0
   * @param n of how many independent tries, zero or more
   * @param p the chance of each, from 0 to 1
   * @return the chance
   * @throws IllegalArgumentException if n is negative or p is not from 0 to 1
   */
  public static double atLeast(int k, int n, double p) {
    Require.atLeast(n, 0, "n");
    if (!(p >= 0 && p <= 1)) {
      throw new IllegalArgumentException("p must be from 0 to 1, is " + p);
    }
    if (k <= 0) {
      return 1;
    }
    return k > n ? 0 : Math.min(1, IncompleteBeta.below(k, n - k + 1.0, p, 1 - p));
  }

  /**
   * The chance of at most k of n.
   *
   * @param k how many; below 0 the chance is 0, at or above n it is 1
   * @param n of how many independent tries, zero or more
   * @param p the chance of each, from 0 to 1
   * @return the chance
   * @throws IllegalArgumentException if n is negative or p is not from 0 to 1
   */
  public static double atMost(int k, int n, double p) {
    Require.atLeast(n, 0, "n");
    if (!(p >= 0 && p <= 1)) {
      throw new IllegalArgumentException("p must be from 0 to 1, is " + p);
    }
    if (k >= n) {
      return 1;
    }
    return k < 0 ? 0 : Math.min(1, IncompleteBeta.below(n - k, k + 1.0, 1 - p, p));
  }
}
