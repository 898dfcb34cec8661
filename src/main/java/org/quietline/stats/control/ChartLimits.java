package org.quietline.stats.control;

import org.quietline.stats.numeric.Require;

/**
 * The centre line and two limits of a chart.
 *
 * @param lower the lower limit
 * @param centre the centre line; that of a skewed statistic lies outside limits that are very
 *     narrow
 * @param upper the upper limit, not below the lower one
 */
public record ChartLimits(double lower, double centre, double upper) {
  /**
   * Checks the order; NaN and infinities fail.
   *
   * @param lower the lower limit
   * @param centre the centre line
   * @param upper the upper limit
   * @throws IllegalArgumentException if one is not finite or the upper limit is below the lower
   */
  public ChartLimits {
    Require.finite(lower, "lower limit");
    Require.finite(centre, "centre");
    Require.finite(upper, "upper limit");
    if (lower > upper) {
      throw new IllegalArgumentException("limits out of order: " + lower + ", " + upper);
    }
  }

  /**
   * Whether a value is outside the limits; a value on a limit is inside.
   *
   * @param value the value
   * @return true outside
   */
  public boolean beyond(double value) {
    return value < lower || value > upper;
  }
}
