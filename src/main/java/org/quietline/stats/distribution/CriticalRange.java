package org.quietline.stats.distribution;

import org.quietline.stats.numeric.Require;

/**
 * Factors of the critical range: the range of n readings of one thing, made under repeatability
 * conditions, that is exceeded with a given chance, in repeatability deviations.
 *
 * <p>For a known deviation the factor is a quantile of the range of n normal values: 2.772, 3.314,
 * 3.633, 3.858 for 2 to 5 readings at 5 %. For a deviation estimated with ν degrees of freedom it
 * is one of the studentized range, larger, so that the chance stays what it says. For two readings
 * these are {@code √2·Φ⁻¹(0.975)} and {@code √2·t(0.975, ν)}. Source: ISO 5725-6:1994, 5.2.2.2,
 * table 1 (known deviation, clause from memory); {@link NormalRange} and {@link StudentizedRange}.
 */
public final class CriticalRange {
  private static final double USUAL_CHANCE = 0.05;
  private static final double ROOT2 = Math.sqrt(2);

  private CriticalRange() {}

  /**
   * The factor f(n) at 95 % for a known deviation.
   *
   * @param n how many readings, from 2 to 100
   * @return the factor
   * @throws IllegalArgumentException if n is out of range
   */
  public static double factor(int n) {
    return factor(n, USUAL_CHANCE);
  }

  /**
   * The factor for a known deviation and any chance.
   *
   * @param n how many readings, from 2 to 100
   * @param falseAlarm the chance of a larger range, between 0 and 1
   * @return the factor
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static double factor(int n, double falseAlarm) {
    return new NormalRange(n).exceededWith(falseAlarm);
  }

  /**
   * The factor for an estimated deviation.
   *
   * @param n how many readings, from 2 to 100
   * @param falseAlarm the chance of a larger range, between 0 and 1
   * @param degreesOfFreedom of the estimate, at least 1
   * @return the factor
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static double factor(int n, double falseAlarm, double degreesOfFreedom) {
    StudentizedRange range = new StudentizedRange(n, degreesOfFreedom);
    if (n > 2) {
      return range.exceededWith(falseAlarm);
    }
    Require.share(falseAlarm, "chance");
    return ROOT2 * Student.exceededWith(falseAlarm / 2, degreesOfFreedom);
  }
}
