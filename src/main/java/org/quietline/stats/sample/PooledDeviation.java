package org.quietline.stats.sample;

import java.util.List;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.ChiSquare;
import org.quietline.stats.distribution.FisherF;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * One deviation from several samples of the same spread and any means.
 *
 * <p>{@code s² = Σ ν(i)·s(i)² / Σ ν(i)} with {@code ν(i) = k(i) − 1} for k(i) replicates. Groups of
 * one value say nothing and add nothing. For pairs it is {@link DuplicateDeviation}. Source: ISO
 * 5725-2:2019, 7.4; NIST/SEMATECH e-Handbook, 2.4.4.1.
 *
 * @param degreesOfFreedom the degrees of freedom ν, above zero
 * @param deviation the pooled deviation s, zero or more
 */
public record PooledDeviation(double degreesOfFreedom, double deviation) {

  /**
   * Checks the ranges.
   *
   * @param degreesOfFreedom the degrees of freedom
   * @param deviation the pooled deviation
   * @throws IllegalArgumentException if the degrees of freedom are not above zero or the deviation
   *     is negative or not finite
   */
  public PooledDeviation {
    Require.positive(degreesOfFreedom, "degrees of freedom");
    Require.notNegative(deviation, "deviation");
  }

  /**
   * Pools groups of replicates.
   *
   * @param groups groups of at least one finite number each, at least one of two or more
   * @return the pooled deviation
   * @throws IllegalArgumentException if no group has two values, one is empty, or a value is NaN,
   *     infinite or above 1e150 in size
   */
  public static PooledDeviation ofGroups(List<double[]> groups) {
    Sum squares = new Sum();
    int freedom = 0;
    for (double[] group : groups) {
      Require.values(group, 1);
      squares.add(Centred.of(group).sumOfSquares());
      freedom += group.length - 1;
    }
    Require.atLeast(freedom, 1, "degrees of freedom");
    return new PooledDeviation(freedom, Math.sqrt(squares.value() / freedom));
  }

  /**
   * Pools deviations that are known with their degrees of freedom.
   *
   * @param deviations at least one, each zero or more
   * @param degreesOfFreedom of each, above zero
   * @return the pooled deviation
   * @throws IllegalArgumentException if there is none, the numbers differ, or a figure is out of
   *     range
   */
  public static PooledDeviation ofDeviations(double[] deviations, double[] degreesOfFreedom) {
    Require.values(deviations, 1);
    if (deviations.length != degreesOfFreedom.length) {
      throw new IllegalArgumentException(
          deviations.length + " deviations but " + degreesOfFreedom.length + " degrees of freedom");
    }
    Sum squares = new Sum();
    Sum freedom = new Sum();
    for (int i = 0; i < deviations.length; i++) {
      Require.notNegative(deviations[i], "deviation");
      Require.positive(degreesOfFreedom[i], "degrees of freedom");
      squares.addProduct(degreesOfFreedom[i], deviations[i] * deviations[i]);
      freedom.add(degreesOfFreedom[i]);
    }
    return new PooledDeviation(freedom.value(), Math.sqrt(squares.value() / freedom.value()));
  }

  /**
   * The equal-tailed confidence interval of the true deviation, {@code s·√(ν/χ²)}. Zero deviation
   * gives an interval of zeros.
   *
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval interval(double level) {
    Require.share(level, "level");
    double tail = (1 - level) / 2;
    return new Interval(
        deviation * Math.sqrt(degreesOfFreedom / ChiSquare.exceededWith(tail, degreesOfFreedom)),
        deviation * Math.sqrt(degreesOfFreedom / ChiSquare.quantile(tail, degreesOfFreedom)));
  }

  /**
   * The upper confidence bound of the true deviation, {@code s·√(ν/χ²)} with the whole chance on
   * one side.
   *
   * @param level the confidence level, between 0 and 1
   * @return the bound
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public double upperBound(double level) {
    Require.share(level, "level");
    return deviation
        * Math.sqrt(degreesOfFreedom / ChiSquare.quantile(1 - level, degreesOfFreedom));
  }

  /**
   * The limit that the deviation of a new sample of the same spread exceeds with a given chance,
   * {@code s·√F}. Source: NIST/SEMATECH e-Handbook, 2.3.5.1.
   *
   * @param newDegreesOfFreedom of the new deviation, above zero
   * @param falseAlarm the chance, between 0 and 1
   * @return the limit
   * @throws IllegalArgumentException if an argument is out of range
   */
  public double upperLimitOfNext(double newDegreesOfFreedom, double falseAlarm) {
    Require.positive(newDegreesOfFreedom, "new degrees of freedom");
    return deviation
        * Math.sqrt(FisherF.exceededWith(falseAlarm, newDegreesOfFreedom, degreesOfFreedom));
  }
}
