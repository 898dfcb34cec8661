package org.quietline.stats.sample;

import java.math.BigDecimal;
import java.util.List;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;

/**
 * The number, mean and sample deviation of values.
 *
 * <p>{@code deviation = sqrt(Σ(x − mean)²/(n − 1))}, in two passes with sums carried in two
 * doubles, so that a large offset costs no digits: the results are those of the given doubles to
 * about the last digit. Digits that a double cannot hold are lost before: readings near 10 000 000
 * with one decimal and a scatter of 0.1 leave about eight digits of the deviation, unless they are
 * given as decimals to {@link #ofDecimals}. Values all equal give a deviation of exactly zero; so
 * do spreads below 1e-150, whose squares a double cannot hold. Source: ISO 3534-1:2006, 1.15 and
 * 1.17; summation after Ogita, Rump and Oishi (2005).
 *
 * @param n how many values, at least 2
 * @param mean their mean, in their unit
 * @param deviation their sample deviation with n − 1 degrees of freedom, in their unit
 */
public record Summary(int n, double mean, double deviation) {

  /**
   * Checks the ranges.
   *
   * @param n how many values
   * @param mean their mean
   * @param deviation their sample deviation with n − 1 degrees of freedom
   * @throws IllegalArgumentException if n is below 2, the mean is not finite or the deviation is
   *     negative or not finite
   */
  public Summary {
    Require.atLeast(n, 2, "n");
    Require.finite(mean, "mean");
    Require.notNegative(deviation, "deviation");
  }

  /**
   * Summarises values.
   *
   * @param values at least two finite numbers, each at most 1e150 in size
   * @return the summary
   * @throws IllegalArgumentException if there are fewer than two or one is NaN, infinite or larger
   */
  public static Summary of(double... values) {
    Require.values(values, 2);
    Centred centred = Centred.of(values);
    return new Summary(
        values.length, centred.mean(), Math.sqrt(centred.sumOfSquares() / (values.length - 1)));
  }

  /**
   * Summarises values that are kept with their digits. The first one is taken off all in decimal
   * arithmetic, so that the deviation has its last digit however large the offset.
   *
   * @param values at least two numbers, each at most 1e150 in size
   * @return the summary
   * @throws IllegalArgumentException if there are fewer than two or one is larger
   */
  public static Summary ofDecimals(List<BigDecimal> values) {
    double[] rounded = values.stream().mapToDouble(BigDecimal::doubleValue).toArray();
    Require.values(rounded, 2);
    BigDecimal first = values.get(0);
    double[] shifted = values.stream().mapToDouble(v -> v.subtract(first).doubleValue()).toArray();
    Summary about = of(shifted);
    double mean = first.add(new BigDecimal(about.mean())).doubleValue();
    return new Summary(values.size(), mean, about.deviation());
  }

  /**
   * The mean of values.
   *
   * @param values at least one finite number, each at most 1e150 in size
   * @return the mean
   * @throws IllegalArgumentException if there is none or one is NaN, infinite or larger
   */
  public static double meanOf(double... values) {
    Require.values(values, 1);
    return Centred.of(values).mean();
  }
}
