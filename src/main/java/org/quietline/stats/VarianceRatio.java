package org.quietline.stats;

import org.apache.commons.math3.special.Beta;

/**
 * Two variances compared by the F test.
 *
 * <p>{@code ratio = (a/b)²}; the upper tail is {@code I(dfB/(dfB + dfA·ratio); dfB/2, dfA/2)} of
 * the regularised incomplete beta function. Source: NIST/SEMATECH e-Handbook 1.3.5.9; DLMF 8.17.
 *
 * @param ratio the first variance over the second
 * @param upperTail the chance of at least this ratio if the true variances are equal
 */
public record VarianceRatio(double ratio, double upperTail) {

  /**
   * Checks the ranges.
   *
   * @param ratio the first variance over the second
   * @param upperTail the chance of at least this ratio if the true variances are equal
   * @throws IllegalArgumentException if the ratio is negative or the tail is not between 0 and 1
   */
  public VarianceRatio {
    Require.notNegative(ratio, "ratio");
    if (!(upperTail >= 0 && upperTail <= 1)) {
      throw new IllegalArgumentException("upper tail must be between 0 and 1, is " + upperTail);
    }
  }

  /**
   * Compares two deviations.
   *
   * @param deviationA the first deviation, zero or more
   * @param dfA its degrees of freedom, at least 1
   * @param deviationB the second deviation, above zero, in the same unit
   * @param dfB its degrees of freedom, at least 1
   * @return the ratio of the variances and its one-sided tail; a two-sided test doubles the smaller
   *     of the two tails
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static VarianceRatio of(double deviationA, int dfA, double deviationB, int dfB) {
    Require.notNegative(deviationA, "first deviation");
    Require.positive(deviationB, "second deviation");
    Require.atLeast(dfA, 1, "first degrees of freedom");
    Require.atLeast(dfB, 1, "second degrees of freedom");
    double quotient = deviationA / deviationB;
    double ratio = quotient * quotient;
    double weighted = dfA * ratio;
    double tail = Beta.regularizedBeta(dfB / (dfB + weighted), dfB / 2.0, dfA / 2.0);
    return new VarianceRatio(ratio, Math.min(1, tail));
  }
}
