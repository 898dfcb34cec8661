package org.quietline.stats.control;

import org.quietline.stats.distribution.Normal;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.distribution.ToleranceFactor;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.sample.MovingRange;
import org.quietline.stats.sample.Summary;

/**
 * Centre, warning and action limits of an individuals chart.
 *
 * <p>The centre is the mean of the values. All four ways need at least two finite values; the mean
 * moving range and its upper limit {@code D4 × mean moving range} are the same in all. Values
 * without any spread give limits equal to the centre, which nothing should be judged by. Order
 * matters only to {@link #fromMovingRange} and to the moving range itself. Source: ISO 7870-2:2013;
 * exact {@code d2 = 2/√π} and {@code D4 = 1 + 3·√(π/2 − 1)} in place of the rounded 1.128 and
 * 3.267, so that limits differ from tables in about the fourth digit.
 *
 * @param basis how they were computed
 * @param centre the centre line
 * @param deviation the deviation behind the limits: the mean moving range over d2, otherwise the
 *     sample deviation
 * @param lowerAction the lower action limit
 * @param lowerWarning the lower warning limit
 * @param upperWarning the upper warning limit
 * @param upperAction the upper action limit
 * @param meanMovingRange the mean moving range of the values
 * @param movingRangeUpper the upper limit of the moving range
 */
public record ControlLimits(
    Basis basis,
    double centre,
    double deviation,
    double lowerAction,
    double lowerWarning,
    double upperWarning,
    double upperAction,
    double meanMovingRange,
    double movingRangeUpper) {

  private static final double ACTION = 3;
  private static final double WARNING = 2;

  /**
   * Checks the order of the limits.
   *
   * @param basis how they were computed
   * @param centre the centre line
   * @param deviation the deviation behind the limits
   * @param lowerAction the lower action limit
   * @param lowerWarning the lower warning limit
   * @param upperWarning the upper warning limit
   * @param upperAction the upper action limit
   * @param meanMovingRange the mean moving range of the values
   * @param movingRangeUpper the upper limit of the moving range
   * @throws IllegalArgumentException if they are not in ascending order about the centre, or a
   *     figure is negative that cannot be, or one is not finite
   */
  public ControlLimits {
    Require.finite(lowerAction, "lowerAction");
    Require.finite(upperAction, "upperAction");
    Require.notNegative(deviation, "deviation");
    Require.notNegative(meanMovingRange, "meanMovingRange");
    Require.notNegative(movingRangeUpper, "movingRangeUpper");
    if (!(lowerAction <= lowerWarning
        && lowerWarning <= centre
        && centre <= upperWarning
        && upperWarning <= upperAction)) {
      throw new IllegalArgumentException(
          "limits out of order: "
              + lowerAction
              + ", "
              + lowerWarning
              + ", "
              + centre
              + ", "
              + upperWarning
              + ", "
              + upperAction);
    }
  }

  /** How limits are computed from values. */
  public enum Basis {
    /** Centre and three times the mean moving range over d2. */
    MOVING_RANGE,
    /** Centre and three sample deviations. */
    SAMPLE_DEVIATION,
    /** Prediction limits of Student's t. */
    PREDICTION,
    /** Tolerance-interval form. */
    GUARANTEED,
    /** Prediction limits for a value of a new group, as in {@link GroupedLimits}. */
    BETWEEN_GROUPS
  }

  /**
   * Limits from the mean moving range: action {@code ± 3·MR/d2}, warning {@code ± 2·MR/d2}. They
   * leave out slow changes within the baseline. As estimates they are left by the next value more
   * often than 0.27 %: with 2.4 % for 10 values, 1.1 % for 20, 0.8 % for 30 on average (simulated).
   * Source: ISO 7870-2:2013; ISO 4259-4:2021.
   *
   * @param values at least two finite numbers in time order
   * @return the limits
   * @throws IllegalArgumentException if there are fewer than two or one is NaN or infinite
   */
  public static ControlLimits fromMovingRange(double... values) {
    Require.values(values, 2);
    double deviation = MovingRange.deviation(MovingRange.mean(values));
    return of(Basis.MOVING_RANGE, deviation, WARNING, ACTION, values);
  }

  /**
   * Limits from the sample deviation: action {@code ± 3·s}, warning {@code ± 2·s}, without a small-
   * sample correction of s. The next value leaves them with {@code 2·P(T(n−1) > 3/√(1 + 1/n))}: 2.5
   * % for 8 values, 0.86 % for 20, 0.62 % for 30. Source: ISO 7870-2:2013.
   *
   * @param values at least two finite numbers
   * @return the limits
   * @throws IllegalArgumentException if there are fewer than two or one is NaN or infinite
   */
  public static ControlLimits fromSampleDeviation(double... values) {
    double deviation = Summary.of(values).deviation();
    return of(Basis.SAMPLE_DEVIATION, deviation, WARNING, ACTION, values);
  }

  /**
   * Limits that the next value leaves with the chance a normal value has of leaving three known
   * deviations: {@code ± t(Φ(3), n−1)·s·√(1 + 1/n)}, 0.27 % in all; warning with {@code t(0.975,
   * n−1)}, 5 %. The chance is exact before the values are seen, for independent normal values.
   * Source: Hahn and Meeker (1991), Statistical Intervals, chapter 4; ISO 16269-8:2004.
   *
   * @param values at least two finite numbers
   * @return the limits
   * @throws IllegalArgumentException if there are fewer than two or one is NaN or infinite
   */
  public static ControlLimits prediction(double... values) {
    return predictionFrom(0, values);
  }

  /**
   * Prediction limits of values that are read in steps: the deviation is taken as no smaller than
   * one that the steps alone leave behind, so that a few equal values do not make limits without
   * width. Source: {@link #prediction}; the rounding deviation of a step q is q/√12.
   *
   * @param leastDeviation the smallest deviation to believe, zero or more
   * @param values at least two finite numbers
   * @return the limits
   * @throws IllegalArgumentException if there are fewer than two values, one is NaN or infinite, or
   *     the deviation is negative or not finite
   */
  public static ControlLimits predictionFrom(double leastDeviation, double... values) {
    Require.notNegative(leastDeviation, "least deviation");
    Summary summary = Summary.of(values);
    int n = summary.n();
    double spread = Math.sqrt(1 + 1.0 / n);
    double action = spread * Student.exceededWith(Normal.above(ACTION), n - 1);
    double warning = spread * Student.exceededWith(0.025, n - 1);
    double deviation = Math.max(leastDeviation, summary.deviation());
    return of(Basis.PREDICTION, deviation, warning, action, values);
  }

  /**
   * Limits that hold, with a given confidence, at least as much of the population as three known
   * deviations hold (99.73 %); warning as much as two hold (95.45 %): {@code ± k·s} with the exact
   * two-sided tolerance factor. So with that confidence this baseline's own chance of a false alarm
   * is at most 0.27 %. Source: ISO 16269-6:2014; for charts Albers and Kallenberg (2004),
   * Statistics 38, 67–79.
   *
   * @param confidence the confidence, between 0 and 1
   * @param values at least two finite numbers
   * @return the limits
   * @throws IllegalArgumentException if there are fewer than two values, one is NaN or infinite, or
   *     the confidence is not between 0 and 1
   */
  public static ControlLimits guaranteed(double confidence, double... values) {
    Require.share(confidence, "confidence");
    Summary summary = Summary.of(values);
    int n = summary.n();
    double action = ToleranceFactor.twoSidedLeaving(n, Normal.outside(ACTION), confidence);
    double warning = ToleranceFactor.twoSidedLeaving(n, Normal.outside(WARNING), confidence);
    return of(Basis.GUARANTEED, summary.deviation(), warning, action, values);
  }

  private static ControlLimits of(
      Basis basis, double deviation, double warning, double action, double[] values) {
    double centre = Summary.meanOf(values);
    double range = MovingRange.mean(values);
    return new ControlLimits(
        basis,
        centre,
        deviation,
        centre - action * deviation,
        centre - warning * deviation,
        centre + warning * deviation,
        centre + action * deviation,
        range,
        MovingRange.D4 * range);
  }
}
