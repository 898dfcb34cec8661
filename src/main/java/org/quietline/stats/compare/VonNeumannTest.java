package org.quietline.stats.compare;

import org.apache.commons.math3.complex.Complex;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;
import org.quietline.stats.sample.SerialDependence;

/**
 * Von Neumann's ratio of squared successive differences to squared deviations, tested against
 * independence.
 *
 * <p>{@code ratio = Σ (x(i) − x(i−1))² / Σ (x − mean)²}. Near 2 for independent values, small under
 * drift, large under alternation. For independent normal values the ratio is one of two quadratic
 * forms: it is at most q when {@code Σ (λ(j) − q)·z(j)² ≤ 0}, with {@code λ(j) = 4·sin²(πj/2n)}, j
 * from 1 to n − 1, and z standard normal. The chance of that is computed by inversion to about
 * 1e-11 relative, for any n; time grows with n. The distribution is symmetric about 2, and the
 * ratio is always within {@code 2 ± 2·cos(π/n)}. Published tables mostly divide the sums by n − 1
 * and n: their ratio is {@code n/(n − 1)} times this one. Unchanged by a shift or a scale. Source:
 * von Neumann (1941), Ann. Math. Statist. 12, 367–395; Hart (1942), Ann. Math. Statist. 13, 207–214
 * (table); Imhof (1961), Biometrika 48, 419–426 (inversion).
 *
 * @param n how many values, at least 3
 * @param ratio the ratio, from 0 to 4
 */
public record VonNeumannTest(int n, double ratio) {

  /**
   * Checks the ranges.
   *
   * @param n how many values
   * @param ratio the ratio
   * @throws IllegalArgumentException if n is below 3 or the ratio is not from 0 to 4
   */
  public VonNeumannTest {
    Require.atLeast(n, 3, "n");
    if (!(ratio >= 0 && ratio <= 4)) {
      throw new IllegalArgumentException("ratio must be from 0 to 4, is " + ratio);
    }
  }

  /**
   * Tests values.
   *
   * @param values at least three finite numbers in time order, not all equal
   * @return the test
   * @throws IllegalArgumentException if there are fewer than three, all are equal, or one is no
   *     usable number
   */
  public static VonNeumannTest of(double... values) {
    double ratio = SerialDependence.of(values).vonNeumannRatio();
    return new VonNeumannTest(values.length, Math.min(4, ratio));
  }

  /**
   * The chance of a ratio at most so small for independent values; small where neighbours are
   * alike, as under drift.
   *
   * @return the one-sided chance
   */
  public double chanceBelow() {
    return above(4 - ratio, n);
  }

  /**
   * The chance of a ratio at least so large for independent values; small where values alternate.
   *
   * @return the one-sided chance
   */
  public double chanceAbove() {
    return above(ratio, n);
  }

  /**
   * Twice the smaller of the two one-sided chances.
   *
   * @return the two-sided chance, at most 1
   */
  public double chance() {
    return Math.min(1, 2 * above(2 + Math.abs(ratio - 2), n));
  }

  /**
   * The ratio that independent values fall below with a given chance; 4 less it is the one they
   * exceed with that chance.
   *
   * @param n how many values, at least 3
   * @param chance the chance, between 0 and 1
   * @return the critical ratio
   * @throws IllegalArgumentException if n is below 3 or the chance is not between 0 and 1
   */
  public static double criticalValue(int n, double chance) {
    Require.atLeast(n, 3, "n");
    Require.share(chance, "chance");
    double deviation = 2 * Math.sqrt((n - 2.0) / (n - 1.0) / (n + 1.0));
    double start = 2 + Normal.quantile(chance) * deviation;
    return Roots.of(q -> above(4 - q, n) - chance, start, deviation / 4);
  }

  /** The chance of a ratio above q. */
  private static double above(double q, int n) {
    double[] weights = new double[n - 1];
    double largest = -1;
    double smallest = 1;
    for (int j = 1; j < n; j++) {
      double sine = Math.sin(Math.PI * j / (2.0 * n));
      weights[j - 1] = 4 * sine * sine - q;
      largest = Math.max(largest, weights[j - 1]);
      smallest = Math.min(smallest, weights[j - 1]);
    }
    if (largest <= 0) {
      return 0;
    }
    return smallest >= 0 ? 1 : TransformTail.above(s -> logTransform(weights, s), 0, 0.5 / largest);
  }

  /** {@code −½ Σ ln(1 − 2·w·s)}. */
  private static Complex logTransform(double[] weights, Complex s) {
    double size = 0;
    double angle = 0;
    for (double w : weights) {
      double re = 1 - 2 * w * s.getReal();
      double im = -2 * w * s.getImaginary();
      size += Math.log(Math.hypot(re, im));
      angle += Math.atan2(im, re);
    }
    return new Complex(-0.5 * size, -0.5 * angle);
  }
}
