package org.quietline.stats;

/**
 * A mean against a reference value.
 *
 * <p>{@code difference = mean − reference}, {@code u = √(s²/n + u(ref)²)}, with effective degrees
 * of freedom {@code u⁴/((s²/n)²/(n − 1))}: the reference's own uncertainty is taken as known.
 * Without spread the degrees of freedom are infinite, and without any uncertainty at all they are n
 * − 1. Source: JCGM 100:2008, G.4.1 (Welch and Satterthwaite); ASTM D6299.
 *
 * @param difference the mean less the reference
 * @param standardUncertainty the standard uncertainty of the difference, zero or more
 * @param degreesOfFreedom effective degrees of freedom, at least 1, possibly infinite
 */
public record Bias(double difference, double standardUncertainty, double degreesOfFreedom) {

  /**
   * Checks the ranges.
   *
   * @param difference the mean less the reference
   * @param standardUncertainty the standard uncertainty of the difference
   * @param degreesOfFreedom effective degrees of freedom
   * @throws IllegalArgumentException if the difference is not finite, the uncertainty is negative
   *     or not finite, or the degrees of freedom are below 1
   */
  public Bias {
    Require.finite(difference, "difference");
    Require.notNegative(standardUncertainty, "standard uncertainty");
    if (!(degreesOfFreedom >= 1)) {
      throw new IllegalArgumentException(
          "degrees of freedom must be at least 1, is " + degreesOfFreedom);
    }
  }

  /**
   * Compares a mean with a reference value.
   *
   * @param values the values' summary
   * @param reference the reference value, in the values' unit
   * @param standardUncertainty the standard uncertainty of the reference value, zero or more
   * @return the bias
   * @throws IllegalArgumentException if the reference is not finite or its uncertainty is negative
   *     or not finite
   */
  public static Bias of(Summary values, double reference, double standardUncertainty) {
    Require.finite(reference, "reference");
    Require.notNegative(standardUncertainty, "standard uncertainty");
    double meanVariance = values.deviation() * values.deviation() / values.n();
    double variance = meanVariance + standardUncertainty * standardUncertainty;
    int df = values.n() - 1;
    return new Bias(
        values.mean() - reference,
        Math.sqrt(variance),
        Welch.effective(meanVariance, df, variance));
  }

  /**
   * How many standard uncertainties the mean is from the reference, {@code |difference|/u}. Without
   * any uncertainty it is zero for no difference and infinite otherwise.
   *
   * @return the t statistic
   */
  public double statistic() {
    return difference == 0 ? 0 : Math.abs(difference) / standardUncertainty;
  }

  /**
   * Whether the two-sided t test finds the difference significant.
   *
   * @param alpha the chance of finding so where there is no bias, between 0 and 1
   * @return true if significant
   * @throws IllegalArgumentException if alpha is not between 0 and 1
   */
  public boolean significantAt(double alpha) {
    Require.share(alpha, "alpha");
    return statistic() > Student.exceededWith(alpha / 2, degreesOfFreedom);
  }
}
