package org.quietline.stats.capability;

import org.quietline.stats.Interval;
import org.quietline.stats.distribution.ChiSquare;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.sample.Summary;

/**
 * The width between two limits in units of six deviations, wherever the mean is: Pp of the
 * deviation of all values, Cp of one within.
 *
 * <p>{@code (U − L)/(6s)}. With {@code ν·s²/σ²} of chi-square with ν degrees of freedom its bounds
 * are {@code index·√(χ²/ν)}: exact for a normal population. One limit has no such index. Source:
 * ISO 22514-2:2017; Kotz and Lovelace (1998), chapter 2.
 *
 * @param lower the lower limit
 * @param upper the upper limit, above it
 * @param deviation the deviation s, above zero
 * @param degreesOfFreedom its degrees of freedom, finite and at least 1
 */
public record SpreadIndex(double lower, double upper, double deviation, double degreesOfFreedom) {

  /**
   * Checks the limits and the deviation.
   *
   * @param lower the lower limit
   * @param upper the upper limit
   * @param deviation the deviation s
   * @param degreesOfFreedom its degrees of freedom
   * @throws IllegalArgumentException if a limit is not finite, they are not in order, the deviation
   *     is not above zero, or the degrees of freedom are below 1 or not finite
   */
  public SpreadIndex {
    Require.finite(lower, "lower limit");
    Require.finite(upper, "upper limit");
    Limits.inOrder(lower, upper);
    Require.positive(deviation, "deviation");
    if (!(degreesOfFreedom >= 1 && Double.isFinite(degreesOfFreedom))) {
      throw new IllegalArgumentException(
          "degrees of freedom must be at least 1 and finite, is " + degreesOfFreedom);
    }
  }

  /**
   * Pp, from the deviation of all values.
   *
   * @param s the values' summary
   * @param lower the lower limit
   * @param upper the upper limit, above it
   * @return the index
   * @throws IllegalArgumentException if a limit is not finite, they are not in order, or the
   *     deviation is zero
   */
  public static SpreadIndex of(Summary s, double lower, double upper) {
    return new SpreadIndex(lower, upper, s.deviation(), s.n() - 1.0);
  }

  /**
   * The index.
   *
   * @return {@code (U − L)/(6s)}
   */
  public double index() {
    return (upper - lower) / (6 * deviation);
  }

  /**
   * The one-sided lower confidence bound of the true index.
   *
   * @param level the confidence level, between 0 and 1
   * @return {@code index·√(χ²(1 − level; ν)/ν)}
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public double lowerBound(double level) {
    Require.share(level, "level");
    return index() * Math.sqrt(ChiSquare.quantile(1 - level, degreesOfFreedom) / degreesOfFreedom);
  }

  /**
   * The equal-tailed confidence interval of the true index.
   *
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval interval(double level) {
    Require.share(level, "level");
    double tail = (1 - level) / 2;
    return new Interval(lowerBound(1 - tail), lowerBound(tail));
  }
}
