package org.quietline.stats.sample;

import java.util.Arrays;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * Hampel's mean: values count fully up to 1.5 deviations from it, with a constant pull up to 3,
 * with a pull that fades from 3 to 4.5, and not at all beyond.
 *
 * <p>It solves {@code Σ ψ((x − x*)/s) = 0} with {@code ψ(q) = q} up to 1.5, 1.5 up to 3, {@code 4.5
 * − q} up to 4.5 and 0 beyond, odd in q. The sum is piecewise linear in x* with corners at the
 * values and 1.5, 3 and 4.5 deviations to their sides, so that its zeros are found exactly. Of
 * several zeros the one nearest to the median is taken; where two are equally near, or a whole
 * stretch around the median is zero, the median itself. A deviation of zero gives the median.
 * Source: ISO 13528:2015, C.5.3.3 (from memory); Hampel et al. (1986), Robust Statistics, 2.6.
 */
public final class HampelMean {
  private static final double FIRST = 1.5;
  private static final double SECOND = 3;
  private static final double THIRD = 4.5;

  /** A sum or a distance, in deviations, that is rounding and nothing else. */
  private static final double NOTHING = 1e-11;

  private HampelMean() {}

  /**
   * The mean.
   *
   * @param deviation the deviation s of the bulk of the values, zero or more
   * @param values at least one finite number, each at most 1e150 in size, in any order
   * @return the mean, in the unit of the values
   * @throws IllegalArgumentException if there is no value, one is NaN, infinite or larger, or the
   *     deviation is negative or not finite
   */
  public static double of(double deviation, double... values) {
    Require.notNegative(deviation, "deviation");
    double median = RobustSummary.medianOf(values);
    if (deviation == 0) {
      return median;
    }
    double[] corners =
        Arrays.stream(values)
            .flatMap(
                v ->
                    Arrays.stream(new double[] {-THIRD, -SECOND, -FIRST, FIRST, SECOND, THIRD})
                        .map(step -> v + step * deviation))
            .sorted()
            .toArray();
    double[] sums = Arrays.stream(corners).map(at -> pull(at, deviation, values)).toArray();
    double above = Double.POSITIVE_INFINITY;
    double below = Double.NEGATIVE_INFINITY;
    for (int i = 1; i < corners.length; i++) {
      if (sums[i - 1] * sums[i] > 0) {
        continue;
      }
      double width = corners[i] - corners[i - 1];
      boolean flat = sums[i - 1] == sums[i];
      double share =
          flat ? (median - corners[i - 1]) / width : sums[i - 1] / (sums[i - 1] - sums[i]);
      double zero =
          corners[i - 1] + width * Math.max(0, Math.min(1, flat && width == 0 ? 0 : share));
      above = zero >= median ? Math.min(above, zero) : above;
      below = zero <= median ? Math.max(below, zero) : below;
    }
    return nearer(below, median, above, deviation);
  }

  private static double nearer(double below, double median, double above, double deviation) {
    double difference = (above - median) - (median - below);
    if (Math.abs(difference) <= NOTHING * deviation) {
      return median;
    }
    return difference > 0 ? below : above;
  }

  private static double pull(double at, double deviation, double[] values) {
    Sum sum = new Sum();
    for (double v : values) {
      sum.add(psi((v - at) / deviation));
    }
    return Math.abs(sum.value()) < NOTHING ? 0 : sum.value();
  }

  private static double psi(double q) {
    double size = Math.abs(q);
    double pull = Math.max(0, Math.min(Math.min(size, FIRST), THIRD - size));
    return Math.copySign(pull, q);
  }
}
