package org.quietline.stats.control;

import org.apache.commons.math3.special.Gamma;
import org.quietline.stats.numeric.Require;

/**
 * Limits of counts of events in units of one size, the c chart: {@code mean ± 3·√mean}, the lower
 * not below zero.
 *
 * <p>They take the counts as Poisson and the mean as the true one. Counts are whole and skewed, so
 * the chance of a false alarm is not that of a normal value: {@link #falseAlarm} gives it. Source:
 * ISO 7870-2:2013, attribute charts; NIST/SEMATECH e-Handbook, section 6.3.3.1.
 *
 * @param mean the mean count in a unit, zero or more
 */
public record CountLimits(double mean) {
  private static final double WIDTH = 3;

  /**
   * Checks the mean.
   *
   * @param mean the mean count
   * @throws IllegalArgumentException if it is negative or not finite
   */
  public CountLimits {
    Require.notNegative(mean, "mean count");
  }

  /**
   * From counts.
   *
   * @param counts at least one, each zero or more
   * @return the limits
   * @throws IllegalArgumentException if there is none or one is negative
   */
  public static CountLimits of(int... counts) {
    Require.atLeast(counts.length, 1, "number of counts");
    long sum = 0;
    for (int count : counts) {
      Require.atLeast(count, 0, "count");
      sum += count;
    }
    return new CountLimits((double) sum / counts.length);
  }

  /**
   * The limits of a count.
   *
   * @return the limits
   */
  public ChartLimits limits() {
    double half = WIDTH * Math.sqrt(mean);
    return new ChartLimits(Math.max(0, mean - half), mean, mean + half);
  }

  /**
   * The chance that a Poisson count with this mean is outside the limits.
   *
   * @return the chance, 0 for a mean of zero
   */
  public double falseAlarm() {
    if (mean == 0) {
      return 0;
    }
    ChartLimits limits = limits();
    double above = Gamma.regularizedGammaP(Math.floor(limits.upper()) + 1, mean);
    double least = Math.ceil(limits.lower());
    return above + (least > 0 ? Gamma.regularizedGammaQ(least, mean) : 0);
  }
}
