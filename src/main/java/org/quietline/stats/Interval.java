package org.quietline.stats;

/**
 * The two ends of an interval.
 *
 * @param lower the lower end
 * @param upper the upper end, not below the lower one
 */
public record Interval(double lower, double upper) {
  /**
   * Checks the order; NaN fails.
   *
   * @param lower the lower end
   * @param upper the upper end
   * @throws IllegalArgumentException if an end is NaN or they are not in order
   */
  public Interval {
    if (!(lower <= upper)) {
      throw new IllegalArgumentException("interval from " + lower + " to " + upper);
    }
  }

  /**
   * Whether a value lies inside, ends included.
   *
   * @param value the value
   * @return true inside
   */
  public boolean contains(double value) {
    return lower <= value && value <= upper;
  }
}
