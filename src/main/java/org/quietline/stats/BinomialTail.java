package org.quietline.stats;

import org.apache.commons.math3.special.Beta;

/**
 * The upper tail of the binomial distribution.
 *
 * <p>{@code P(X ≥ k) = I(p; k, n − k + 1)}, accurate to about 1e-12 relative. Source: DLMF 8.17.5.
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
    return k > n ? 0 : Math.min(1, Beta.regularizedBeta(p, k, n - k + 1.0));
  }
}
