package org.quietline.stats.capability;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.sample.BoxCox;
import org.quietline.stats.sample.Summary;

/**
 * The middle of a population and the points that as many values lie beyond as beyond three
 * deviations of a normal one; zero and infinity where the shape has none.
 */
record FarPoints(double low, double median, double high) {
  private static final double DEVIATIONS = 3;

  static FarPoints of(double[] values, PercentileIndex.Shape shape) {
    return switch (shape) {
      case EMPIRICAL -> empirical(values);
      case LOGNORMAL -> ofPower(values, 0);
      case POWER -> allEqual(values) ? ofPower(values, 1) : ofPower(values, power(values));
    };
  }

  private static boolean allEqual(double[] values) {
    return Arrays.stream(values).distinct().count() == 1;
  }

  private static double power(double[] values) {
    BoxCox found = BoxCox.of(values);
    return found.plainPower(0.95).orElse(found.power());
  }

  /** In shares of the value with the largest power, so that no power is above one. */
  private static FarPoints ofPower(double[] values, double power) {
    double base =
        power > 0 ? Arrays.stream(values).max().orElse(1) : Arrays.stream(values).min().orElse(1);
    Summary s =
        Summary.of(Arrays.stream(values).map(v -> BoxCox.transformed(v, base, power)).toArray());
    double far = DEVIATIONS * s.deviation();
    return new FarPoints(
        BoxCox.original(s.mean() - far, base, power).orElse(0),
        // the mean of shares to a power, of which the largest is one
        BoxCox.original(s.mean(), base, power).orElse(base),
        BoxCox.original(s.mean() + far, base, power).orElse(Double.POSITIVE_INFINITY));
  }

  /**
   * Quantiles at rank {@code p·(n + 1/3) + 1/3}, nearly unbiased for the median of the quantile.
   */
  private static FarPoints empirical(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    double tail = Normal.above(DEVIATIONS);
    return new FarPoints(quantile(sorted, tail), quantile(sorted, 0.5), quantile(sorted, 1 - tail));
  }

  private static double quantile(double[] sorted, double share) {
    double rank = share * (sorted.length + 1 / 3.0) + 1 / 3.0;
    int whole = (int) Math.min(sorted.length - 1, Math.max(1, Math.floor(rank)));
    double part = Math.max(0, Math.min(1, rank - whole));
    return sorted[whole - 1] + part * (sorted[whole] - sorted[whole - 1]);
  }

  /** The index of the nearer limit; infinite where a far point is the median. */
  double index(OptionalDouble lower, OptionalDouble upper) {
    double below =
        lower.isPresent()
            ? ratio(median - lower.getAsDouble(), median - low)
            : Double.POSITIVE_INFINITY;
    double above =
        upper.isPresent()
            ? ratio(upper.getAsDouble() - median, high - median)
            : Double.POSITIVE_INFINITY;
    return Math.min(below, above);
  }

  private static double ratio(double room, double reach) {
    return room == 0 ? 0 : room / reach;
  }
}
