package org.quietline.stats.sample;

import java.util.Arrays;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * The Anderson–Darling test of a normal shape with mean and deviation both estimated.
 *
 * <p>{@code A² = −n − (1/n)·Σ (2i − 1)·(ln p(i) + ln(1 − p(n+1−i)))} over the sorted values, {@code
 * A²* = A²·(1 + 0.75/n + 2.25/n²)}, and the chance by the four-piece formula of D'Agostino and
 * Stephens. The formula is an approximation to about 0.01 in the chance; it is not evaluated above
 * A²* = 10, where the chance is below 1e-23. Unchanged by shift, scale and order. Source:
 * D'Agostino and Stephens (1986), Goodness-of-Fit Techniques, table 4.9, case 3.
 *
 * @param statistic A²
 * @param adjusted A²*
 * @param chance the chance of a shape at least so far from normal if the values are normal
 */
public record NormalShape(double statistic, double adjusted, double chance) {

  /**
   * Checks the ranges.
   *
   * @param statistic A²
   * @param adjusted A²*
   * @param chance the chance of a shape at least so far from normal if the values are normal
   * @throws IllegalArgumentException if a figure is not finite or the chance is not from 0 to 1
   */
  public NormalShape {
    Require.finite(statistic, "statistic");
    Require.finite(adjusted, "adjusted");
    if (!(chance >= 0 && chance <= 1)) {
      throw new IllegalArgumentException("chance must be from 0 to 1, is " + chance);
    }
  }

  /**
   * Tests values.
   *
   * @param values at least eight finite numbers, not all equal, in any order
   * @return the test
   * @throws IllegalArgumentException if there are fewer than eight, all are equal, or one is NaN or
   *     infinite
   */
  public static NormalShape of(double... values) {
    Require.values(values, 8);
    Require.spread(values, "values");
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    Centred centred = Centred.of(sorted);
    int n = sorted.length;
    double deviation = Math.sqrt(centred.sumOfSquares() / (n - 1));
    double[] d = centred.deviations();
    Sum sum = new Sum();
    for (int i = 0; i < n; i++) {
      double logs = Normal.logBelow(d[i] / deviation) + Normal.logBelow(-d[n - 1 - i] / deviation);
      sum.addProduct(2 * i + 1, logs);
    }
    double statistic = -n - sum.value() / n;
    double adjusted = statistic * (1 + 0.75 / n + 2.25 / ((double) n * n));
    return new NormalShape(statistic, adjusted, chance(adjusted));
  }

  /** The chance by an adjusted statistic. */
  static double chance(double a) {
    if (a < 0.2) {
      return -Math.expm1(-13.436 + a * (101.14 - a * 223.73));
    }
    if (a < 0.34) {
      return -Math.expm1(-8.318 + a * (42.796 - a * 59.938));
    }
    if (a < 0.6) {
      return Math.exp(0.9177 - a * (4.279 + a * 1.38));
    }
    double b = Math.min(a, 10);
    return Math.exp(1.2937 - b * (5.709 - b * 0.0186));
  }
}
