package org.quietline.stats.control;

import org.quietline.stats.Interval;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;

/**
 * What is known of a normal population, from earlier knowledge and from values, and the limits it
 * predicts for the next value.
 *
 * <p>The normal–inverse-gamma model: earlier knowledge counts like {@code weight} values for the
 * centre and like {@code degreesOfFreedom} for the deviation. With n values of mean m and sum of
 * squares S about it: {@code κ = κ₀ + n}, {@code ν = ν₀ + n}, {@code μ = (κ₀μ₀ + n·m)/κ}, {@code
 * ν·s² = ν₀s₀² + S + κ₀·n·(m − μ₀)²/κ}. The next value is {@code μ + s·√(1 + 1/κ)·T(ν)}.
 *
 * <p>Over populations drawn from the prior the limits are left with exactly the stated chance. For
 * one given population they are not: a wrong prior makes them too narrow or off the centre, and the
 * more so the more it weighs. Update by parts or at once, in any order: the result is the same.
 * Accurate to about 1e-12. Source: Gelman et al. (2013), Bayesian Data Analysis, 3rd edition,
 * section 3.3.
 *
 * @param centre the centre μ, in the unit of the values
 * @param weight as how many values the centre counts, κ, above zero
 * @param degreesOfFreedom as how many degrees of freedom the deviation counts, ν, above zero
 * @param deviation the deviation s of single values, zero or more
 */
public record PredictiveLimits(
    double centre, double weight, double degreesOfFreedom, double deviation) {
  private static final double ACTION = 3;
  private static final double WARNING = 0.05;

  /**
   * Checks the ranges.
   *
   * @param centre the centre
   * @param weight as how many values the centre counts
   * @param degreesOfFreedom as how many degrees of freedom the deviation counts
   * @param deviation the deviation of single values
   * @throws IllegalArgumentException if a figure is outside its range or NaN
   */
  public PredictiveLimits {
    Require.finite(centre, "centre");
    Require.positive(weight, "weight");
    Require.positive(degreesOfFreedom, "degrees of freedom");
    Require.notNegative(deviation, "deviation");
  }

  /**
   * Without earlier knowledge: the mean counts n values and the sample deviation n − 1 degrees of
   * freedom, and the limits are those of {@link ControlLimits#prediction}.
   *
   * @param values at least two finite numbers
   * @return the limits
   * @throws IllegalArgumentException if there are fewer than two or one is NaN or infinite
   */
  public static PredictiveLimits withoutPrior(double... values) {
    Require.values(values, 2);
    Centred centred = Centred.of(values);
    int freedom = values.length - 1;
    return new PredictiveLimits(
        centred.mean(), values.length, freedom, Math.sqrt(centred.sumOfSquares() / freedom));
  }

  /**
   * The same knowledge with new values added.
   *
   * @param values finite numbers, possibly none
   * @return the limits
   * @throws IllegalArgumentException if a value is NaN or infinite
   */
  public PredictiveLimits updatedBy(double... values) {
    Require.values(values, 0);
    int n = values.length;
    if (n == 0) {
      return this;
    }
    Centred centred = Centred.of(values);
    double off = centred.mean() - centre;
    double share = n / (weight + n);
    double freedom = degreesOfFreedom + n;
    double squares =
        degreesOfFreedom * deviation * deviation
            + centred.sumOfSquares()
            + weight * share * off * off;
    return new PredictiveLimits(
        centre + share * off, weight + n, freedom, Math.sqrt(squares / freedom));
  }

  /**
   * Limits that the next value leaves with the chance a normal value has of leaving three known
   * deviations, 0.27 %.
   *
   * @return the limits
   */
  public Interval action() {
    return about(Normal.above(ACTION));
  }

  /**
   * Limits that the next value leaves with a chance of 5 %.
   *
   * @return the limits
   */
  public Interval warning() {
    return limits(WARNING);
  }

  /**
   * Limits that the next value leaves with a given chance, half on each side.
   *
   * @param falseAlarm the chance, between 0 and 1
   * @return the limits
   * @throws IllegalArgumentException if the chance is not between 0 and 1
   */
  public Interval limits(double falseAlarm) {
    Require.share(falseAlarm, "false alarm");
    return about(falseAlarm / 2);
  }

  private Interval about(double tail) {
    double half =
        Student.exceededWith(tail, degreesOfFreedom) * deviation * Math.sqrt(1 + 1 / weight);
    return new Interval(centre - half, centre + half);
  }
}
