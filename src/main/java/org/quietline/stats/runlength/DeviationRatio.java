package org.quietline.stats.runlength;

import org.quietline.stats.distribution.ChiSquare;

/** How an estimated deviation of n normal values spreads about the true one, as their ratio. */
interface DeviationRatio {
  /**
   * The chance that the estimate is below a multiple of the true deviation.
   *
   * @param ratio the multiple, zero or more
   * @return the chance
   */
  double below(double ratio);

  /**
   * The sample deviation: {@code (n − 1)·ratio²} is chi-square with n − 1 degrees of freedom.
   *
   * @param n how many values
   * @return its distribution
   */
  static DeviationRatio ofSample(int n) {
    return ratio -> ChiSquare.below((n - 1) * ratio * ratio, n - 1);
  }
}
