package org.quietline.stats;

import java.util.ArrayList;
import java.util.List;

/**
 * The exponentially weighted moving average chart.
 *
 * <p>{@code z(t) = λ·x(t) + (1 − λ)·z(t−1)} with z = centre before the first value and after each
 * restart; limits {@code centre ± L·σ·√(λ/(2 − λ)·(1 − (1 − λ)^(2t)))} with t counted from the last
 * restart. Source: Roberts (1959), Technometrics 1, 239–250; Lucas and Saccucci (1990),
 * Technometrics 32, 1–12; ISO 7870-6:2016.
 *
 * @param centre where the mean starts
 * @param deviation the deviation σ of single values, zero or more
 * @param weight the weight λ of the newest value, above 0 and at most 1
 * @param width the half-width L of the limits in deviations of the mean, above 0
 */
public record WeightedMean(double centre, double deviation, double weight, double width) {

  /**
   * Checks the ranges.
   *
   * @param centre where the mean starts
   * @param deviation the deviation σ of single values
   * @param weight the weight λ of the newest value
   * @param width the half-width L of the limits in deviations of the mean
   * @throws IllegalArgumentException if a figure is outside its range or NaN
   */
  public WeightedMean {
    Require.finite(centre, "centre");
    Require.notNegative(deviation, "deviation");
    Require.positive(width, "width");
    if (!(weight > 0 && weight <= 1)) {
      throw new IllegalArgumentException("weight must be above 0 and at most 1, is " + weight);
    }
  }

  /**
   * The mean after one value.
   *
   * @param mean the weighted mean
   * @param lower its lower limit
   * @param upper its upper limit
   */
  public record Point(double mean, double lower, double upper) {
    /**
     * Whether the mean is outside its limits; a mean on a limit is inside.
     *
     * @return true outside
     */
    public boolean beyond() {
      return mean < lower || mean > upper;
    }
  }

  /**
   * Follows values in time order.
   *
   * @param values finite numbers, possibly none
   * @param restarts for each value, whether the mean starts anew at the centre before it
   * @return the mean and its limits after each value
   * @throws IllegalArgumentException if a value is NaN or infinite or the lengths differ
   */
  public List<Point> trace(double[] values, boolean[] restarts) {
    Require.values(values, 0);
    if (values.length != restarts.length) {
      throw new IllegalArgumentException(
          values.length + " values but " + restarts.length + " restart marks");
    }
    List<Point> points = new ArrayList<>(values.length);
    double offset = 0;
    int since = 0;
    for (int i = 0; i < values.length; i++) {
      if (restarts[i]) {
        offset = 0;
        since = 0;
      }
      since++;
      offset += weight * ((values[i] - centre) - offset);
      double half = halfWidth() * Math.sqrt(grown(since));
      points.add(new Point(centre + offset, centre - half, centre + half));
    }
    return List.copyOf(points);
  }

  /**
   * The limits long after a start: {@code centre ± L·σ·√(λ/(2 − λ))}.
   *
   * @return the limits
   */
  public Interval steadyLimits() {
    return new Interval(centre - halfWidth(), centre + halfWidth());
  }

  private double halfWidth() {
    return width * deviation * Math.sqrt(weight / (2 - weight));
  }

  /** {@code 1 − (1 − λ)^(2t)} without loss of digits for small weights. */
  private double grown(int since) {
    return -Math.expm1(2.0 * since * Math.log1p(-weight));
  }
}
