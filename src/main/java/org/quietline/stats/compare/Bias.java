package org.quietline.stats.compare;

import org.quietline.stats.Interval;
import org.quietline.stats.distribution.StudentPlusNormal;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.sample.Summary;

/**
 * A mean against a reference value that is uncertain itself.
 *
 * <p>{@code difference = mean − reference}, {@code u = √(s²/n + u(ref)²)}. The reference's
 * uncertainty is taken as known, so the error of the difference is {@code (s/√n)·T + u(ref)·Z}, T
 * of Student's t with n − 1 degrees of freedom and Z normal; chance and interval are those of this
 * sum. For an exact reference that is the t test. Else the chance of a false finding is at most the
 * one asked for, and below it where both errors are alike: 2.5 % of 5 % at n = 3, 3.5 % at 5, 4.6 %
 * at 20. The effective degrees of freedom {@code (n − 1)·u⁴/(s²/n)²} are for print only: with them
 * a 5 % test found bias where there is none in 7.8 % of samples of 3, and 12.7 % of 2. Without
 * spread they are infinite, and without any uncertainty at all they are n − 1. Source: JCGM
 * 100:2008, G.3 and G.4.1; JCGM 101:2008, 6.4.9; ASTM D6299.
 *
 * @param difference the mean less the reference
 * @param meanError the standard error of the mean {@code s/√n}, zero or more
 * @param meanDegreesOfFreedom n − 1, at least 1
 * @param referenceUncertainty the standard uncertainty of the reference, zero or more
 */
public record Bias(
    double difference, double meanError, int meanDegreesOfFreedom, double referenceUncertainty) {

  /**
   * Checks the ranges.
   *
   * @param difference the mean less the reference
   * @param meanError the standard error of the mean
   * @param meanDegreesOfFreedom its degrees of freedom
   * @param referenceUncertainty the standard uncertainty of the reference
   * @throws IllegalArgumentException if the difference is not finite, an uncertainty is negative or
   *     not finite, or the degrees of freedom are below 1
   */
  public Bias {
    Require.finite(difference, "difference");
    Require.notNegative(meanError, "standard error of the mean");
    Require.atLeast(meanDegreesOfFreedom, 1, "degrees of freedom");
    Require.notNegative(referenceUncertainty, "standard uncertainty");
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
    return new Bias(
        values.mean() - reference,
        values.deviation() / Math.sqrt(values.n()),
        values.n() - 1,
        standardUncertainty);
  }

  /**
   * The standard uncertainty of the difference.
   *
   * @return u
   */
  public double standardUncertainty() {
    return Math.hypot(meanError, referenceUncertainty);
  }

  /**
   * The effective degrees of freedom of u, {@code (n − 1)·u⁴/(s²/n)²}, for print only.
   *
   * @return n − 1 or more, infinite where the values have no spread but the reference is uncertain
   */
  public double degreesOfFreedom() {
    return Welch.effective(
        meanError * meanError,
        meanDegreesOfFreedom,
        meanError * meanError + referenceUncertainty * referenceUncertainty);
  }

  /**
   * How many standard uncertainties the mean is from the reference, {@code |difference|/u}. Without
   * any uncertainty it is zero for no difference and infinite otherwise.
   *
   * @return the statistic
   */
  public double statistic() {
    return difference == 0 ? 0 : Math.abs(difference) / standardUncertainty();
  }

  /**
   * The two-sided chance of so large a difference where there is no bias. Without any uncertainty
   * it is one for no difference and zero otherwise.
   *
   * @return the chance
   */
  public double chance() {
    return difference == 0 ? 1 : 2 * error().above(Math.abs(difference));
  }

  /**
   * The two-sided interval of the true bias.
   *
   * @param level the confidence level, between 0 and 1
   * @return the interval, without any uncertainty the difference alone
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval interval(double level) {
    Require.share(level, "level");
    double half = error().exceededWith((1 - level) / 2);
    return new Interval(difference - half, difference + half);
  }

  /**
   * Whether the two-sided test finds the difference significant.
   *
   * @param alpha the largest chance of finding so where there is no bias, between 0 and 1
   * @return true if significant
   * @throws IllegalArgumentException if alpha is not between 0 and 1
   */
  public boolean significantAt(double alpha) {
    Require.share(alpha, "alpha");
    return chance() < alpha;
  }

  private StudentPlusNormal error() {
    return new StudentPlusNormal(meanError, meanDegreesOfFreedom, referenceUncertainty);
  }
}
