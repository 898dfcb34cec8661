package org.quietline.stats.sample;

import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * How values in time order depend on the ones just before them.
 *
 * <p>With deviations d from the mean: lag-1 autocorrelation {@code Σ d(i)·d(i−1) / Σ d²}; von
 * Neumann's ratio {@code Σ (x(i) − x(i−1))² / Σ d²}, near 2 for independent values, small under
 * drift, large under alternation; and the deviation by moving ranges over the sample deviation,
 * near 1 for independent values. All are unchanged by a shift or a positive scale. Source: von
 * Neumann (1941), Ann. Math. Statist. 12, 367–395; ISO 7870-1:2019; the autocorrelation is the one
 * NIST certifies in its reference data sets.
 *
 * @param lag1 the lag-1 autocorrelation, between −1 and 1
 * @param vonNeumannRatio the ratio of squared successive differences to squared deviations
 * @param deviationRatio the mean moving range over d2, divided by the sample deviation
 */
public record SerialDependence(double lag1, double vonNeumannRatio, double deviationRatio) {

  /**
   * Checks that the figures are finite.
   *
   * @param lag1 the lag-1 autocorrelation
   * @param vonNeumannRatio the ratio of squared successive differences to squared deviations
   * @param deviationRatio the mean moving range over d2
   * @throws IllegalArgumentException if one is not
   */
  public SerialDependence {
    Require.finite(lag1, "lag1");
    Require.notNegative(vonNeumannRatio, "vonNeumannRatio");
    Require.notNegative(deviationRatio, "deviationRatio");
  }

  /**
   * Measures the dependence.
   *
   * @param values at least three finite numbers in time order, not all equal
   * @return the dependence
   * @throws IllegalArgumentException if there are fewer than three, all are equal, or one is NaN or
   *     infinite
   */
  public static SerialDependence of(double... values) {
    Require.values(values, 3);
    Require.spread(values, "values");
    Centred centred = Centred.of(values);
    double[] d = centred.deviations();
    Sum products = new Sum();
    Sum steps = new Sum();
    for (int i = 1; i < d.length; i++) {
      products.addProduct(d[i], d[i - 1]);
      double step = values[i] - values[i - 1];
      steps.addProduct(step, step);
    }
    double squares = centred.sumOfSquares();
    double deviation = Math.sqrt(squares / (d.length - 1));
    return new SerialDependence(
        products.value() / squares,
        steps.value() / squares,
        MovingRange.deviation(MovingRange.mean(values)) / deviation);
  }
}
