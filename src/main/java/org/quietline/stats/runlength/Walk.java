package org.quietline.stats.runlength;

/**
 * A chart on its way, value by value, as long as it has given no signal.
 *
 * <p>Values are independent and normal with deviation 1. The walk knows the chances of where the
 * chart stands, given that nothing has signalled yet.
 */
interface Walk {
  /**
   * Takes one value more.
   *
   * @param mean the mean of the value
   * @return the chance that it gives the signal
   */
  double step(double mean);

  /**
   * Where the chart stands, given no signal yet.
   *
   * @return weights that sum to one; some may be a little below zero, as they stand for a density
   */
  double[] standing();

  /**
   * After how many values the chart treats a value as it treats the first: more than one where its
   * rules look at sets.
   *
   * @return the number of values, at least 1
   */
  default int cycle() {
    return 1;
  }
}
