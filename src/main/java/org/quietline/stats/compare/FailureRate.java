package org.quietline.stats.compare;

import org.quietline.stats.distribution.ChiSquare;
import org.quietline.stats.numeric.Require;

/**
 * So many failures in so much time, and how long something stays sound with a given reliability, if
 * it fails at a constant rate.
 *
 * <p>The upper bound of the rate is {@code χ²(level; 2k + 2)/(2T)} for time that ended without
 * waiting for a failure; reliability at a time is {@code exp(−rate·time)}. Whoever looks only at
 * the end of each stretch counts a failure where it was seen, so that the rate is that of stretches
 * found failed. Source: Epstein and Sobel, J. Am. Stat. Assoc. 48 (1953) 486–502; the use for
 * intervals of calibration: ILAC-G24:2022 and NCSLI RP-1 (both from memory).
 *
 * @param failures how many, zero or more
 * @param time in all, above zero, in any unit of time
 */
public record FailureRate(int failures, double time) {
  /**
   * Checks the ranges.
   *
   * @param failures how many
   * @param time in all
   * @throws IllegalArgumentException if the failures are negative or the time is not above zero and
   *     finite
   */
  public FailureRate {
    Require.atLeast(failures, 0, "failures");
    Require.positive(time, "time");
  }

  /**
   * The exact upper bound of the rate: with a higher one so few failures are rarer than {@code 1 −
   * level}.
   *
   * @param level the confidence level, between 0 and 1
   * @return failures a unit of time
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public double upperBound(double level) {
    Require.share(level, "level");
    return ChiSquare.exceededWith(1 - level, 2.0 * failures + 2) / (2 * time);
  }

  /**
   * The lower bound of the chance to stay sound over a time.
   *
   * @param over the time, above zero
   * @param level the confidence level, between 0 and 1
   * @return the chance
   * @throws IllegalArgumentException if the time is not above zero or the level not between 0 and 1
   */
  public double reliability(double over, double level) {
    Require.positive(over, "time");
    return Math.exp(-upperBound(level) * over);
  }

  /**
   * The longest time over which a reliability is shown.
   *
   * @param reliability the chance to stay sound, between 0 and 1
   * @param level the confidence level, between 0 and 1
   * @return the time
   * @throws IllegalArgumentException if a share is not between 0 and 1
   */
  public double longest(double reliability, double level) {
    Require.share(reliability, "reliability");
    return -Math.log(reliability) / upperBound(level);
  }

  /**
   * How many tries without one failure show a reliability: the least n with {@code reliability^n ≤
   * 1 − level}.
   *
   * @param reliability the chance to stay sound, between 0 and 1
   * @param level the confidence level, between 0 and 1
   * @return the number
   * @throws IllegalArgumentException if a share is not between 0 and 1
   */
  public static int cleanTries(double reliability, double level) {
    Require.share(reliability, "reliability");
    Require.share(level, "level");
    return (int) Math.ceil(Math.log1p(-level) / Math.log(reliability) - 1e-12);
  }
}
