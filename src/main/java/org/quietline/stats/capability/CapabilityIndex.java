package org.quietline.stats.capability;

import java.util.OptionalDouble;
import org.quietline.stats.Interval;
import org.quietline.stats.numeric.Require;

/**
 * How far a normal population in control stays from its limits, in units of three deviations
 * within: Cpk, or for one limit CpkU or CpkL.
 *
 * <p>{@code (U − mean)/(3s)} for an upper limit, {@code (mean − L)/(3s)} for a lower one, the
 * smaller of the two for both, with s a deviation within groups. Negative when the mean is beyond
 * the limit. It means something only where groups differ by no more than their scatter within; else
 * take {@link PerformanceIndex}. Source: ISO 22514-2:2017; Kotz and Lovelace (1998), chapter 2.
 *
 * @param n how many values the mean comes from, at least 1
 * @param mean their mean
 * @param within the deviation within, above zero, with its own degrees of freedom
 * @param lower the lower limit, if any
 * @param upper the upper limit, if any
 */
public record CapabilityIndex(
    int n, double mean, WithinDeviation within, OptionalDouble lower, OptionalDouble upper) {

  /**
   * Checks the limits.
   *
   * @param n how many values the mean comes from
   * @param mean their mean
   * @param within the deviation within
   * @param lower the lower limit, if any
   * @param upper the upper limit, if any
   * @throws IllegalArgumentException if n is below 1, there is no limit, a number is not finite,
   *     the limits are not in order, or the deviation is zero
   */
  public CapabilityIndex {
    margin(n, mean, within, lower, upper);
  }

  /**
   * The index.
   *
   * @return the index of the nearer limit
   */
  public double index() {
    return margin().nearer() / 3;
  }

  /**
   * The one-sided lower confidence bound of the true index, by the noncentral t with the degrees of
   * freedom of the deviation within: {@code P(T(ν, 3√n·bound) ≥ 3√n·index) = 1 − level}. Exact for
   * one limit and a pooled deviation, conservative for two limits as {@link
   * PerformanceIndex#lowerBound}.
   *
   * @param level the confidence level, between 0 and 1
   * @return the bound
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public double lowerBound(double level) {
    return margin().lowerIndexBound(level);
  }

  /**
   * The equal-tailed confidence interval of the true index, as exact as {@link #lowerBound}.
   *
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval interval(double level) {
    return margin().indexInterval(level);
  }

  /**
   * The confidence interval of the share of the population beyond the limits; see {@link
   * PerformanceIndex#shareBeyondInterval}.
   *
   * @param level the confidence level, between 0 and 1
   * @return the interval of the share, from 0 to 1
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval shareBeyondInterval(double level) {
    return margin().shareBeyondInterval(level);
  }

  /**
   * What the population could do were it in the middle between its limits: Cp.
   *
   * @return the index of the spread alone
   * @throws IllegalArgumentException if there is only one limit: one limit has no middle
   */
  public SpreadIndex spread() {
    if (lower.isEmpty() || upper.isEmpty()) {
      throw new IllegalArgumentException("an index of the spread needs two limits, has one");
    }
    return new SpreadIndex(
        lower.getAsDouble(), upper.getAsDouble(), within.deviation(), within.degreesOfFreedom());
  }

  private Margin margin() {
    return margin(n, mean, within, lower, upper);
  }

  private static Margin margin(
      int n, double mean, WithinDeviation within, OptionalDouble lower, OptionalDouble upper) {
    Require.atLeast(n, 1, "n");
    return new Margin(n, mean, within.deviation(), within.degreesOfFreedom(), lower, upper);
  }
}
