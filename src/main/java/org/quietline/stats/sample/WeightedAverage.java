package org.quietline.stats.sample;

import org.quietline.stats.distribution.ChiSquare;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * The mean of values with stated standard uncertainties, each weighted by one over its square, and
 * whether the values agree within them.
 *
 * <p>With {@code w = 1/u²}: {@code mean = Σwx/Σw}; internal standard error {@code 1/√Σw}, which
 * believes the uncertainties; {@code χ² = Σw(x − mean)²} with n − 1 degrees of freedom; Birge's
 * ratio {@code √(χ²/(n − 1))}; external standard error, internal times Birge's ratio, which
 * believes only their proportions. The chance is that of a larger χ² if the uncertainties are right
 * and known. One value is its own mean; χ² is then zero, with no degrees of freedom and a chance of
 * 1. Sums run in two doubles about one of the values. Source: Birge (1932), Phys. Rev. 40, 207–227;
 * JCGM 100:2008, 4.3 (from memory); Cox (2002), Metrologia 39, 589–595, procedure A.
 *
 * @param n how many values, at least 1
 * @param mean the weighted mean, in their unit
 * @param internalError the standard error by the uncertainties alone
 * @param chiSquare the sum of the squared weighted deviations
 */
public record WeightedAverage(int n, double mean, double internalError, double chiSquare) {

  /**
   * Checks the ranges.
   *
   * @param n how many values
   * @param mean the weighted mean
   * @param internalError the standard error by the uncertainties alone
   * @param chiSquare the sum of the squared weighted deviations
   * @throws IllegalArgumentException if there is no value, the mean is not finite, the error is not
   *     above zero or the sum is negative
   */
  public WeightedAverage {
    Require.atLeast(n, 1, "n");
    Require.finite(mean, "mean");
    Require.positive(internalError, "internal error");
    Require.notNegative(chiSquare, "chi-square");
  }

  /**
   * Averages values.
   *
   * @param values at least one finite number, each at most 1e150 in size
   * @param uncertainties their standard uncertainties, as many, each from 1e-100 to 1e100
   * @return the average
   * @throws IllegalArgumentException if there is no value, the numbers differ, a value is NaN,
   *     infinite or too large, an uncertainty is out of range, or values differ by more than about
   *     1e154 uncertainties
   */
  public static WeightedAverage of(double[] values, double[] uncertainties) {
    Require.values(values, 1);
    if (values.length != uncertainties.length) {
      throw new IllegalArgumentException(
          values.length + " values but " + uncertainties.length + " uncertainties");
    }
    double unit = unit(uncertainties);
    Sum weights = new Sum();
    Sum moments = new Sum();
    for (int i = 0; i < values.length; i++) {
      double u = uncertainties[i] / unit;
      weights.add(1 / (u * u));
      moments.addProduct(1 / (u * u), values[i] - values[0]);
    }
    double shift = moments.value() / weights.value();
    Sum squares = new Sum();
    for (int i = 0; i < values.length; i++) {
      double z = ((values[i] - values[0]) - shift) / uncertainties[i];
      squares.addProduct(z, z);
    }
    double error = unit / Math.sqrt(weights.value());
    if (!Double.isFinite(squares.value())) {
      throw new IllegalArgumentException(
          "values differ by so many uncertainties that chi-square is no usable number");
    }
    return new WeightedAverage(values.length, values[0] + shift, error, squares.value());
  }

  /** The power of two below the smallest uncertainty: dividing by it costs no digit. */
  private static double unit(double[] uncertainties) {
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < uncertainties.length; i++) {
      double u = uncertainties[i];
      if (!(u >= 1e-100 && u <= 1e100)) {
        throw new IllegalArgumentException("uncertainty " + (i + 1) + " is " + u);
      }
      least = Math.min(least, u);
    }
    return Math.scalb(1.0, Math.getExponent(least));
  }

  /**
   * The degrees of freedom of χ².
   *
   * @return n − 1
   */
  public int degreesOfFreedom() {
    return n - 1;
  }

  /**
   * The chance of values at least so far apart if the uncertainties are right.
   *
   * @return the chance, 1 for a single value
   */
  public double chance() {
    return n == 1 ? 1 : ChiSquare.above(chiSquare, n - 1);
  }

  /**
   * Birge's ratio, about 1 for uncertainties that are right.
   *
   * @return {@code √(χ²/(n − 1))}, 1 for a single value
   */
  public double birgeRatio() {
    return n == 1 ? 1 : Math.sqrt(chiSquare / (n - 1));
  }

  /**
   * The standard error by the scatter of the values.
   *
   * @return the internal error times Birge's ratio
   */
  public double externalError() {
    return internalError * birgeRatio();
  }

  /**
   * The larger of the two errors, the cautious choice.
   *
   * @return the larger error
   */
  public double largerError() {
    return Math.max(internalError, externalError());
  }
}
