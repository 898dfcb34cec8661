package org.quietline.stats.mixed;

import org.quietline.stats.Interval;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.numeric.Require;

/**
 * An estimate whose error, divided by its standard error, follows Student's t.
 *
 * @param value the estimate
 * @param standardError its standard error in the same unit, zero or more
 * @param degreesOfFreedom of Student's t, above zero, not necessarily whole
 */
public record StudentEstimate(double value, double standardError, double degreesOfFreedom) {
  /**
   * Checks the ranges; NaN fails.
   *
   * @param value the estimate
   * @param standardError its standard error
   * @param degreesOfFreedom of Student's t
   * @throws IllegalArgumentException if the value is not finite, the standard error is negative or
   *     not finite, or the degrees of freedom are not above zero
   */
  public StudentEstimate {
    Require.finite(value, "value");
    Require.notNegative(standardError, "standard error");
    Require.positive(degreesOfFreedom, "degrees of freedom");
  }

  /**
   * The two-sided interval {@code value ± t·standardError}.
   *
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval interval(double level) {
    Require.share(level, "level");
    double half = standardError * Student.exceededWith((1 - level) / 2, degreesOfFreedom);
    return new Interval(value - half, value + half);
  }
}
