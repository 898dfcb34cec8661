package org.quietline.stats.distribution;

import org.quietline.stats.numeric.Require;

/**
 * Centre and upper limits of a chart of ranges of pairs, with the chance of a false alarm that each
 * limit really has for normal readings.
 *
 * <p>The range of a pair is {@code √2·σ} times the size of a normal number, with mean {@code
 * 2σ/√π}. Limits by multiples of its deviation are customary and look as rare as those of a normal
 * chart, which they are not: 4.5 % beyond the warning limit and 0.92 % beyond the action limit, not
 * 5 % and 0.27 %. There is no lower limit; a pair cannot agree too well. Values of zero deviation
 * give limits of zero. Source: ISO 7870-2:2013; exact constants for two in place of 1.128, 2.833
 * and 3.686; Hahn and Meeker (1991), Statistical Intervals, chapter 4, for the prediction form.
 *
 * @param form how the limits were made
 * @param degreesOfFreedom of the deviation they rest on, infinity where it is taken as known
 * @param centre the mean range to expect
 * @param warning the warning limit
 * @param action the action limit
 * @param warningChance the chance that a pair of the same population lies beyond the warning limit
 * @param actionChance the same of the action limit
 */
public record PairRangeLimits(
    Form form,
    double degreesOfFreedom,
    double centre,
    double warning,
    double action,
    double warningChance,
    double actionChance) {

  /** How limits of ranges are made. */
  public enum Form {
    /** The mean range and two or three deviations of the range. */
    DEVIATIONS,
    /** Quantiles for a known deviation, {@code √2·Φ⁻¹}. */
    CHANCES,
    /** Quantiles that count the uncertainty of an estimated deviation, {@code √2·t}. */
    PREDICTION
  }

  private static final double ROOT2 = Math.sqrt(2);

  /** Mean range of two standard normal values. */
  private static final double D2 = 2 / Math.sqrt(Math.PI);

  /** Its deviation. */
  private static final double D3 = Math.sqrt(2 - 4 / Math.PI);

  private static final double WARNING_CHANCE = 0.05;
  private static final double ACTION_CHANCE = Normal.outside(3);

  /**
   * Checks the order.
   *
   * @param form how the limits were made
   * @param degreesOfFreedom of the deviation they rest on
   * @param centre the mean range to expect
   * @param warning the warning limit
   * @param action the action limit
   * @param warningChance the chance of lying beyond the warning limit
   * @param actionChance the chance of lying beyond the action limit
   * @throws IllegalArgumentException if the degrees of freedom are below 1, a figure is negative or
   *     not finite, the limits are not in ascending order or a chance is not between 0 and 1
   */
  public PairRangeLimits {
    if (!(degreesOfFreedom >= 1)) {
      throw new IllegalArgumentException(
          "degrees of freedom must be at least 1, is " + degreesOfFreedom);
    }
    Require.notNegative(centre, "centre");
    Require.finite(action, "action");
    Require.share(warningChance, "warning chance");
    Require.share(actionChance, "action chance");
    if (!(centre <= warning && warning <= action)) {
      throw new IllegalArgumentException(
          "limits out of order: " + centre + ", " + warning + ", " + action);
    }
  }

  /**
   * Customary limits for a known deviation: {@code (d2 + 2·d3)·σ = 2.833σ} and {@code (d2 + 3·d3)·σ
   * = 3.686σ}.
   *
   * @param deviation the deviation σ of a reading, zero or more
   * @return the limits
   * @throws IllegalArgumentException if the deviation is negative or not finite
   */
  public static PairRangeLimits byDeviations(double deviation) {
    Require.notNegative(deviation, "deviation");
    double warning = D2 + 2 * D3;
    double action = D2 + 3 * D3;
    return new PairRangeLimits(
        Form.DEVIATIONS,
        Double.POSITIVE_INFINITY,
        D2 * deviation,
        warning * deviation,
        action * deviation,
        Normal.outside(warning / ROOT2),
        Normal.outside(action / ROOT2));
  }

  /**
   * Limits for a known deviation that are left with the chances of a normal chart: 5 %, {@code
   * 2.772σ}, and 0.27 %, {@code 3√2·σ = 4.243σ}.
   *
   * @param deviation the deviation σ of a reading, zero or more
   * @return the limits
   * @throws IllegalArgumentException if the deviation is negative or not finite
   */
  public static PairRangeLimits byChances(double deviation) {
    return estimated(Form.CHANCES, deviation, Double.POSITIVE_INFINITY);
  }

  /**
   * Limits from an estimated deviation that a new pair leaves with the same chances, 5 % and 0.27
   * %, whatever the degrees of freedom: {@code √2·t·s}.
   *
   * @param deviation the estimate s of the deviation of a reading, zero or more
   * @param degreesOfFreedom of the estimate, at least 1; m for m pairs
   * @return the limits
   * @throws IllegalArgumentException if the deviation is negative or not finite or the degrees of
   *     freedom are below 1
   */
  public static PairRangeLimits prediction(double deviation, double degreesOfFreedom) {
    return estimated(Form.PREDICTION, deviation, degreesOfFreedom);
  }

  private static PairRangeLimits estimated(Form form, double deviation, double df) {
    Require.notNegative(deviation, "deviation");
    return new PairRangeLimits(
        form,
        df,
        D2 * deviation,
        factor(WARNING_CHANCE, df) * deviation,
        factor(ACTION_CHANCE, df) * deviation,
        WARNING_CHANCE,
        ACTION_CHANCE);
  }

  /**
   * The range that a new pair exceeds with a given chance, in deviations of a reading: {@code
   * √2·t(1 − α/2, ν)}; 3.643 for 1 % and a known deviation.
   *
   * @param falseAlarm the chance α, between 0 and 1
   * @param degreesOfFreedom of the deviation, at least 1, infinity where it is known
   * @return the factor
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static double factor(double falseAlarm, double degreesOfFreedom) {
    Require.share(falseAlarm, "false alarm");
    if (!(degreesOfFreedom >= 1)) {
      throw new IllegalArgumentException(
          "degrees of freedom must be at least 1, is " + degreesOfFreedom);
    }
    return ROOT2 * Student.exceededWith(falseAlarm / 2, degreesOfFreedom);
  }
}
