package org.quietline.stats.compare;

import org.quietline.stats.Interval;
import org.quietline.stats.distribution.ChiSquare;
import org.quietline.stats.numeric.Require;

/**
 * A sample deviation against a given one, with the interval of the true deviation.
 *
 * <p>{@code χ² = ν·s²/σ²} with ν degrees of freedom; the interval of the true deviation is {@code
 * s·√(ν/χ²(upper))} to {@code s·√(ν/χ²(lower))}. Exact for normal values; for heavier tails than
 * normal both claim too much, at every sample size. A deviation of zero is the least likely below
 * and no surprise above; its interval is zero to zero, which rounded readings do not justify.
 * Accurate to about 1e-12 relative. Source: ISO 2854:1976, tables E and F (clauses from memory);
 * NIST/SEMATECH e-Handbook 1.3.5.8.
 *
 * @param deviation the sample deviation s, zero or more
 * @param degreesOfFreedom ν, at least 1
 * @param against the deviation σ that it is tested against, in the same unit, above zero
 */
public record DeviationTest(double deviation, int degreesOfFreedom, double against) {

  /**
   * Checks the ranges.
   *
   * @param deviation the sample deviation
   * @param degreesOfFreedom ν
   * @param against the deviation that it is tested against
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public DeviationTest {
    Require.notNegative(deviation, "deviation");
    Require.atLeast(degreesOfFreedom, 1, "degrees of freedom");
    Require.positive(against, "deviation to test against");
  }

  /**
   * The statistic.
   *
   * @return χ²
   */
  public double statistic() {
    double quotient = deviation / against;
    return degreesOfFreedom * quotient * quotient;
  }

  /**
   * The chance of a sample deviation at least so large if σ is true.
   *
   * @return the chance
   */
  public double chanceAbove() {
    return ChiSquare.above(statistic(), degreesOfFreedom);
  }

  /**
   * The chance of a sample deviation at most so large if σ is true.
   *
   * @return the chance
   */
  public double chanceBelow() {
    return ChiSquare.below(statistic(), degreesOfFreedom);
  }

  /**
   * Twice the smaller of the two one-sided chances.
   *
   * @return the two-sided chance, at most 1
   */
  public double chance() {
    return Math.min(1, 2 * Math.min(chanceAbove(), chanceBelow()));
  }

  /**
   * The two-sided confidence interval of the true deviation, with equal chances on both sides.
   *
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval interval(double level) {
    Require.share(level, "level");
    double tail = (1 - level) / 2;
    double low = bound(ChiSquare.exceededWith(tail, degreesOfFreedom));
    double high = bound(ChiSquare.quantile(tail, degreesOfFreedom));
    // at a level of nearly nothing both are the median, and rounding may turn them about
    return new Interval(Math.min(low, high), high);
  }

  /**
   * The one-sided upper confidence bound of the true deviation.
   *
   * @param level the confidence level, between 0 and 1
   * @return the bound
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public double upperBound(double level) {
    Require.share(level, "level");
    return bound(ChiSquare.exceededWith(level, degreesOfFreedom));
  }

  private double bound(double chiSquare) {
    return deviation * Math.sqrt(degreesOfFreedom / chiSquare);
  }
}
