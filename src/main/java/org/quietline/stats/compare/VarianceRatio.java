package org.quietline.stats.compare;

import org.quietline.stats.Interval;
import org.quietline.stats.distribution.FisherF;
import org.quietline.stats.numeric.Require;

/**
 * Two variances compared by the F test, with the interval of the true ratio.
 *
 * <p>{@code ratio = (a/b)²}; the tails are those of F with dfA and dfB degrees of freedom, and the
 * true ratio is within {@code ratio/F(upper)} to {@code ratio/F(lower)}. Exact for normal values;
 * not robust to other shapes, where {@link EqualVariances#brownForsythe} is. Accurate to about
 * 1e-11 relative. Source: ISO 2854:1976, tables G and H (clauses from memory); NIST/SEMATECH
 * e-Handbook 1.3.5.9; DLMF 8.17.
 *
 * @param ratio the first variance over the second, zero or more
 * @param dfA the first degrees of freedom, at least 1
 * @param dfB the second degrees of freedom, at least 1
 */
public record VarianceRatio(double ratio, int dfA, int dfB) {

  /**
   * Checks the ranges.
   *
   * @param ratio the first variance over the second
   * @param dfA the first degrees of freedom
   * @param dfB the second degrees of freedom
   * @throws IllegalArgumentException if the ratio is negative or not finite, or there are fewer
   *     than 1 degrees of freedom
   */
  public VarianceRatio {
    Require.notNegative(ratio, "ratio");
    Require.atLeast(dfA, 1, "first degrees of freedom");
    Require.atLeast(dfB, 1, "second degrees of freedom");
  }

  /**
   * Compares two deviations.
   *
   * @param deviationA the first deviation, zero or more
   * @param dfA its degrees of freedom, at least 1
   * @param deviationB the second deviation, above zero, in the same unit
   * @param dfB its degrees of freedom, at least 1
   * @return the comparison
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static VarianceRatio of(double deviationA, int dfA, double deviationB, int dfB) {
    Require.notNegative(deviationA, "first deviation");
    Require.positive(deviationB, "second deviation");
    double quotient = deviationA / deviationB;
    return new VarianceRatio(quotient * quotient, dfA, dfB);
  }

  /**
   * The chance of at least this ratio if the true variances are equal.
   *
   * @return the one-sided chance
   */
  public double upperTail() {
    return FisherF.above(ratio, dfA, dfB);
  }

  /**
   * The chance of at most this ratio if the true variances are equal.
   *
   * @return the one-sided chance, zero for a ratio of zero
   */
  public double lowerTail() {
    return ratio == 0 ? 0 : FisherF.above(1 / ratio, dfB, dfA);
  }

  /**
   * Twice the smaller of the two tails.
   *
   * @return the two-sided chance, at most 1
   */
  public double chance() {
    return Math.min(1, 2 * Math.min(upperTail(), lowerTail()));
  }

  /**
   * The two-sided confidence interval of the true ratio of variances; its roots are that of the
   * ratio of deviations.
   *
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval interval(double level) {
    Require.share(level, "level");
    double tail = (1 - level) / 2;
    double low = ratio / FisherF.exceededWith(tail, dfA, dfB);
    double high = ratio * FisherF.exceededWith(tail, dfB, dfA);
    // at a level of nearly nothing both are the median, and rounding may turn them about
    return new Interval(Math.min(low, high), high);
  }
}
