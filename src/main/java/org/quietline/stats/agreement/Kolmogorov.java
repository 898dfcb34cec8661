package org.quietline.stats.agreement;

/**
 * The tail of Kolmogorov's distribution, that of the largest distance from zero of a Brownian
 * bridge: {@code P(K > t) = 2·Σ (−1)^(k−1)·exp(−2k²t²)}, and below t = 1 one minus {@code √(2π)/t·Σ
 * exp(−(2k−1)²π²/(8t²))}. About 1e-15. Source: Kolmogorov (1933); Smirnov (1948), Ann. Math.
 * Statist. 19, 279–281.
 */
final class Kolmogorov {
  private static final int TERMS = 6;

  private Kolmogorov() {}

  /** The chance of exceeding t, zero or more. */
  static double above(double t) {
    double sum = 0;
    for (int k = TERMS; k >= 1; k--) {
      double odd = (2 * k - 1) * Math.PI / t;
      sum +=
          t < 1 ? Math.exp(-odd * odd / 8) : (k % 2 == 0 ? -2 : 2) * Math.exp(-2 * k * k * t * t);
    }
    return t < 1 ? 1 - (t == 0 ? 0 : Math.sqrt(2 * Math.PI) / t * sum) : sum;
  }
}
