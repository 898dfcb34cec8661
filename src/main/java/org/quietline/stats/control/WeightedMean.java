package org.quietline.stats.control;

import java.util.ArrayList;
import java.util.List;
import org.quietline.stats.Interval;
import org.quietline.stats.numeric.Require;

/**
 * The exponentially weighted moving average chart.
 *
 * <p>{@code z(t) = λ·x(t) + (1 − λ)·z(t−1)} with z = centre before the first value and after each
 * restart; limits {@code centre ± L·σ·√(λ/(2 − λ)·(1 − (1 − λ)^(2t)))} with t counted from the last
 * restart. The variance is exact for independent values of deviation σ from the first value on; no
 * values give no points, a deviation of zero limits without width. Source: Roberts (1959),
 * Technometrics 1, 239–250; Lucas and Saccucci (1990), Technometrics 32, 1–12; ISO 7870-6:2016.
 *
 * @param centre where the mean starts
 * @param deviation the deviation σ of single values, zero or more
 * @param weight the weight λ of the newest value, above 0 and at most 1
 * @param width the half-width L of the limits in deviations of the mean, above 0
 * @param slips what a value far from the mean does to it
 */
public record WeightedMean(
    double centre, double deviation, double weight, double width, Slips slips) {

  /** How far from the mean a value may be to count in full where slips are held. */
  private static final double HELD_AT = 3;

  /**
   * Checks the ranges.
   *
   * @param centre where the mean starts
   * @param deviation the deviation σ of single values
   * @param weight the weight λ of the newest value
   * @param width the half-width L of the limits in deviations of the mean
   * @param slips what a value far from the mean does to it
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
   * The chart in which every value counts in full.
   *
   * @param centre where the mean starts
   * @param deviation the deviation σ of single values, zero or more
   * @param weight the weight λ of the newest value, above 0 and at most 1
   * @param width the half-width L of the limits in deviations of the mean, above 0
   * @throws IllegalArgumentException if a figure is outside its range or NaN
   */
  public WeightedMean(double centre, double deviation, double weight, double width) {
    this(centre, deviation, weight, width, Slips.COUNT_IN_FULL);
  }

  /** What a value far from the mean does to it. */
  public enum Slips {
    /** It counts in full. */
    COUNT_IN_FULL,
    /**
     * It counts as three deviations σ from the mean before it, and is marked, so that one slip does
     * not raise the mean for long, while a lasting shift still does. The limits stay those of the
     * plain chart; of normal values in control one in 370 (λ near 0) to one in 137 (λ = 0.4) is
     * held, and the deviation of the mean is below the stated one by less than 0.6 % up to λ = 0.4.
     * Source: Gelper, Fried and Croux (2010), J. Forecasting 29, 285–300, Huber's ψ on the
     * innovations.
     */
    HELD
  }

  /**
   * The same chart with slips held.
   *
   * @return the chart
   */
  public WeightedMean holdingSlips() {
    return new WeightedMean(centre, deviation, weight, width, Slips.HELD);
  }

  /**
   * The mean after one value.
   *
   * @param mean the weighted mean
   * @param lower its lower limit
   * @param upper its upper limit
   * @param held whether the value was held at three deviations from the mean before it
   */
  public record Point(double mean, double lower, double upper, boolean held) {
    /**
     * A point whose value counted in full.
     *
     * @param mean the weighted mean
     * @param lower its lower limit
     * @param upper its upper limit
     */
    public Point(double mean, double lower, double upper) {
      this(mean, lower, upper, false);
    }

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
    sameLength(values, restarts.length, "restart marks");
    List<Point> points = new ArrayList<>(values.length);
    double offset = 0;
    int since = 0;
    for (int i = 0; i < values.length; i++) {
      if (restarts[i]) {
        offset = 0;
        since = 0;
      }
      since++;
      double innovation = (values[i] - centre) - offset;
      double counted = counted(innovation);
      offset += weight * counted;
      double half = halfWidth() * Math.sqrt(grown(since));
      points.add(point(offset, half, counted != innovation));
    }
    return List.copyOf(points);
  }

  /**
   * Follows values of which those since one start share an error, as the results of one calibration
   * do. The limits hold the shared error, too: {@code ± L·√(σ²·λ/(2 − λ)·(1 − (1 − λ)^(2t)) + τ²·(1
   * − (1 − λ)^t)²)}, exact for independent values and a shared error that is independent from one
   * start to the next. A shared error of zero gives {@link #trace(double[], boolean[])}.
   *
   * @param values finite numbers, possibly none
   * @param restarts for each value, whether the mean starts anew at the centre before it
   * @param shared the deviation τ of the shared error, zero or more
   * @return the mean and its limits after each value
   * @throws IllegalArgumentException if a value is NaN or infinite, the lengths differ or the
   *     shared deviation is negative
   */
  public List<Point> trace(double[] values, boolean[] restarts, double shared) {
    Require.notNegative(shared, "shared deviation");
    List<Point> points = new ArrayList<>(values.length);
    int since = 0;
    for (Point point : trace(values, restarts)) {
      since = restarts[points.size()] ? 1 : since + 1;
      double reached = -Math.expm1(since * Math.log1p(-weight));
      double half = Math.hypot(halfWidth() * Math.sqrt(grown(since)), width * shared * reached);
      points.add(new Point(point.mean(), centre - half, centre + half, point.held()));
    }
    return List.copyOf(points);
  }

  /**
   * Follows values that are unevenly spaced in time: the mean forgets by time, not by the number of
   * values. A value after a gap g, in units of the usual spacing, has weight {@code λ(g) = 1 − (1 −
   * λ)^g}; the share of the variance follows {@code v = (1 − λ(g))²·v + λ(g)²} from zero at each
   * restart, and limits are {@code centre ± L·σ·√v}, exact for independent values. Gaps of 1 give
   * {@link #trace(double[], boolean[])}. Source: Wright (1986), Management Science 32, 499–510, for
   * the weights.
   *
   * @param values finite numbers, possibly none
   * @param gaps for each value the time since the one before it, or for the first after a start
   *     since the start, in units of the usual spacing, above zero
   * @param restarts for each value, whether the mean starts anew at the centre before it
   * @return the mean and its limits after each value
   * @throws IllegalArgumentException if a value is NaN or infinite, a gap is not above zero or the
   *     lengths differ
   */
  public List<Point> trace(double[] values, double[] gaps, boolean[] restarts) {
    Require.values(values, 0);
    sameLength(values, restarts.length, "restart marks");
    sameLength(values, gaps.length, "gaps");
    List<Point> points = new ArrayList<>(values.length);
    double offset = 0;
    double variance = 0;
    for (int i = 0; i < values.length; i++) {
      Require.positive(gaps[i], "gap");
      if (restarts[i]) {
        offset = 0;
        variance = 0;
      }
      double now = -Math.expm1(gaps[i] * Math.log1p(-weight));
      double innovation = (values[i] - centre) - offset;
      double counted = counted(innovation);
      offset += now * counted;
      variance = (1 - now) * (1 - now) * variance + now * now;
      points.add(point(offset, width * deviation * Math.sqrt(variance), counted != innovation));
    }
    return List.copyOf(points);
  }

  private static void sameLength(double[] values, int length, String what) {
    if (values.length != length) {
      throw new IllegalArgumentException(values.length + " values but " + length + " " + what);
    }
  }

  private Point point(double offset, double half, boolean held) {
    return new Point(centre + offset, centre - half, centre + half, held);
  }

  private double counted(double innovation) {
    double most = HELD_AT * deviation;
    return slips == Slips.HELD ? Math.max(-most, Math.min(most, innovation)) : innovation;
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
