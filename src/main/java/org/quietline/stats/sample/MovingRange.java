package org.quietline.stats.sample;

import org.quietline.stats.numeric.Sum;

/**
 * The moving range of two successive values.
 *
 * <p>For two normal values with deviation 1 the range has mean {@code d2 = 2/√π} and deviation
 * {@code d3 = √(2 − 4/π)}; the upper limit of the chart is {@code D4 = 1 + 3·d3/d2} times the mean
 * range. Source: ISO 7870-2:2013; exact constants for n = 2 instead of the rounded 1.128 and 3.267.
 */
public final class MovingRange {
  /** Mean range of two standard normal values, {@code 2/√π}. */
  public static final double D2 = 2 / Math.sqrt(Math.PI);

  /** Upper limit of a range of two over the mean range, {@code 1 + 3·√(π/2 − 1)}. */
  public static final double D4 = 1 + 3 * Math.sqrt(Math.PI / 2 - 1);

  private MovingRange() {}

  /**
   * The mean range of successive values.
   *
   * @param values at least two
   * @return the mean of the sizes of their successive differences
   */
  public static double mean(double[] values) {
    Sum sum = new Sum();
    for (int i = 1; i < values.length; i++) {
      sum.add(Math.abs(values[i] - values[i - 1]));
    }
    return sum.value() / (values.length - 1);
  }

  /**
   * The deviation that a mean range stands for.
   *
   * @param meanRange the mean range of two
   * @return {@code meanRange/d2}
   */
  public static double deviation(double meanRange) {
    return meanRange / D2;
  }
}
