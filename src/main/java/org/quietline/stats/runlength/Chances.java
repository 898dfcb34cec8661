package org.quietline.stats.runlength;

import org.quietline.stats.distribution.Normal;

/** The chance of a normal value with deviation 1 between two ends, exact in either tail. */
final class Chances {
  private Chances() {}

  /**
   * The chance between two ends.
   *
   * @param low the lower end, possibly infinite
   * @param high the upper end, possibly infinite
   * @param mean the mean of the value
   * @return the chance, 0 when the ends are in the wrong order
   */
  static double between(double low, double high, double mean) {
    if (!(low < high)) {
      return 0;
    }
    return low > mean
        ? Normal.above(low - mean) - Normal.above(high - mean)
        : Normal.below(high - mean) - Normal.below(low - mean);
  }
}
