package org.quietline.stats.sample;

import java.util.Arrays;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.numeric.Require;

/**
 * The median of values and the deviation of their bulk, neither of which a few wild values move.
 *
 * <p>{@code deviation = c(n) · 1.482602 · median |x − median|}, the scaled median absolute
 * deviation: for normal values it estimates the standard deviation. {@code c(n)} takes away its
 * bias in small samples; it is {@code n/(n − 0.8)} above nine values and a table up to nine. At
 * least half of the values equal gives a deviation of zero. For normal values the square of the
 * deviation varies as if it had {@code 0.37 n} degrees of freedom. Source: Hampel (1974), J. Am.
 * Stat. Assoc. 69, 383–393 (deviation, efficiency of 37 %); Croux and Rousseeuw (1992), COMPSTAT,
 * 411–428 (small samples); both from memory and held to simulation.
 *
 * @param n how many values, at least 2
 * @param median their median, in their unit
 * @param deviation the deviation of their bulk, in their unit
 */
public record RobustSummary(int n, double median, double deviation) {
  /** One over the upper quartile of the normal distribution. */
  private static final double TO_NORMAL = 1.482_602_218_505_602;

  /** The share of the information that the median absolute deviation uses, of normal values. */
  private static final double EFFICIENCY = 0.37;

  private static final double[] SMALL = {
    1.196, 1.495, 1.363, 1.206, 1.200, 1.140, 1.129, 1.107,
  };

  /**
   * Checks the ranges.
   *
   * @param n how many values
   * @param median their median
   * @param deviation the deviation of their bulk
   * @throws IllegalArgumentException if n is below 2, the median is not finite or the deviation is
   *     negative or not finite
   */
  public RobustSummary {
    Require.atLeast(n, 2, "n");
    Require.finite(median, "median");
    Require.notNegative(deviation, "deviation");
  }

  /**
   * Summarises values.
   *
   * @param values at least two finite numbers, each at most 1e150 in size
   * @return the summary
   * @throws IllegalArgumentException if there are fewer than two or one is NaN, infinite or larger
   */
  public static RobustSummary of(double... values) {
    Require.values(values, 2);
    double median = medianOf(values);
    double[] away = Arrays.stream(values).map(v -> Math.abs(v - median)).toArray();
    int n = values.length;
    double small = n < SMALL.length + 2 ? SMALL[n - 2] : n / (n - 0.8);
    return new RobustSummary(n, median, small * TO_NORMAL * medianOf(away));
  }

  /**
   * The median of values: the middle one, or the mean of the middle two. Source: ISO 3534-1:2006,
   * 1.13.
   *
   * @param values at least one finite number, each at most 1e150 in size
   * @return the median
   * @throws IllegalArgumentException if there is none or one is NaN, infinite or larger
   */
  public static double medianOf(double... values) {
    Require.values(values, 1);
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int middle = sorted.length / 2;
    return sorted.length % 2 == 1
        ? sorted[middle]
        : sorted[middle - 1] + (sorted[middle] - sorted[middle - 1]) / 2;
  }

  /**
   * How many deviations from the median one more value may lie, if it is to lie beyond as rarely as
   * a normal value lies beyond a number of standard deviations, on both sides together: {@code t(p,
   * 0.37 n) · sqrt(1 + π/2n)}. The second factor is the uncertainty of the median. For normal
   * values the true chance is at or below the one asked for at every n (simulation, {@code n} from
   * 5 to 150, {@code normal} up to 4).
   *
   * @param normal the number of standard deviations, above 0 and at most 20
   * @return the multiple of the deviation; it grows without bound for few values
   * @throws IllegalArgumentException if {@code normal} is not in range
   */
  public double multiple(double normal) {
    Require.positive(normal, "normal");
    if (normal > 20) {
      throw new IllegalArgumentException("normal must be at most 20, is " + normal);
    }
    return Student.exceededWith(Normal.above(normal), EFFICIENCY * n)
        * Math.sqrt(1 + Math.PI / 2 / n);
  }
}
