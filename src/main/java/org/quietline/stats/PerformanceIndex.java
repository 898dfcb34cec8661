package org.quietline.stats;

import java.util.OptionalDouble;

/**
 * How far a normal population stays from its limits, in units of three deviations.
 *
 * <p>{@code (U − mean)/(3s)} for an upper limit, {@code (mean − L)/(3s)} for a lower one, the
 * smaller of the two for both. Negative when the mean is beyond the limit. Source: ISO
 * 22514-2:2017; Kotz and Lovelace (1998).
 *
 * @param summary the values' number, mean and sample deviation above zero
 * @param lower the lower limit, if any
 * @param upper the upper limit, if any
 */
public record PerformanceIndex(Summary summary, OptionalDouble lower, OptionalDouble upper) {

  /**
   * Checks the limits.
   *
   * @param summary the values' number
   * @param lower the lower limit
   * @param upper the upper limit
   * @throws IllegalArgumentException if there is no limit, one is not finite, they are not in
   *     order, or the deviation is zero
   */
  public PerformanceIndex {
    if (lower.isEmpty() && upper.isEmpty()) {
      throw new IllegalArgumentException("needs a lower or an upper limit");
    }
    lower.ifPresent(v -> Require.finite(v, "lower limit"));
    upper.ifPresent(v -> Require.finite(v, "upper limit"));
    if (lower.isPresent() && upper.isPresent() && lower.getAsDouble() >= upper.getAsDouble()) {
      throw new IllegalArgumentException(
          "limits out of order: " + lower.getAsDouble() + ", " + upper.getAsDouble());
    }
    Require.positive(summary.deviation(), "deviation");
  }

  /**
   * The index against an upper limit.
   *
   * @param s the values' summary
   * @param limit the upper limit
   * @return the index
   * @throws IllegalArgumentException if the limit is not finite or the deviation is zero
   */
  public static PerformanceIndex upper(Summary s, double limit) {
    return new PerformanceIndex(s, OptionalDouble.empty(), OptionalDouble.of(limit));
  }

  /**
   * The index against a lower limit.
   *
   * @param s the values' summary
   * @param limit the lower limit
   * @return the index
   * @throws IllegalArgumentException if the limit is not finite or the deviation is zero
   */
  public static PerformanceIndex lower(Summary s, double limit) {
    return new PerformanceIndex(s, OptionalDouble.of(limit), OptionalDouble.empty());
  }

  /**
   * The index against whichever limit is nearer.
   *
   * @param s the values' summary
   * @param lower the lower limit, if any
   * @param upper the upper limit, if any
   * @return the index
   * @throws IllegalArgumentException if there is no limit, one is not finite, they are not in
   *     order, or the deviation is zero
   */
  public static PerformanceIndex nearer(Summary s, OptionalDouble lower, OptionalDouble upper) {
    return new PerformanceIndex(s, lower, upper);
  }

  /**
   * The index.
   *
   * @return the index of the nearer limit
   */
  public double index() {
    return Math.min(distanceBelow(), distanceAbove()) / 3;
  }

  /**
   * The one-sided lower confidence bound of the true index: {@code δ/(3√n)} with δ such that {@code
   * P(T(n−1, δ) ≥ 3√n·index) = 1 − level} for the noncentral t. Exact for one limit.
   *
   * <p>For two limits it is the bound of the nearer one, and conservative: the bound grows with the
   * index, so it is the smaller of the two one-limit bounds, which is above the true index of the
   * truly nearer limit no more often than that limit's own bound is. The confidence is highest for
   * a population in the middle between its limits. Source: Kotz and Lovelace (1998), chapter 2.
   *
   * @param level the confidence level, between 0 and 1
   * @return the bound
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public double lowerBound(double level) {
    Require.share(level, "level");
    int n = summary.n();
    double scale = 3 * Math.sqrt(n);
    double t = scale * index();
    double width = 1 + Math.abs(t) / Math.sqrt(n);
    return Roots.of(delta -> NoncentralT.cdf(t, n - 1, delta) - level, t, width) / scale;
  }

  /**
   * How many of a million are expected beyond the limits, taking the mean and deviation as the true
   * ones of a normal population; both sides count where there are two limits.
   *
   * @return the expected number, from 0 to 1,000,000
   */
  public double beyondPerMillion() {
    return 1e6 * (Normal.above(distanceBelow()) + Normal.above(distanceAbove()));
  }

  private double distanceBelow() {
    return lower.isPresent()
        ? (summary.mean() - lower.getAsDouble()) / summary.deviation()
        : Double.POSITIVE_INFINITY;
  }

  private double distanceAbove() {
    return upper.isPresent()
        ? (upper.getAsDouble() - summary.mean()) / summary.deviation()
        : Double.POSITIVE_INFINITY;
  }

  /**
   * The share of a normal population beyond one limit whose index is given, {@code Φ(−3·index)}.
   *
   * @param index the index of that limit, finite
   * @return the share, between 0 and 1
   * @throws IllegalArgumentException if the index is not finite
   */
  public static double shareBeyond(double index) {
    Require.finite(index, "index");
    return Normal.above(3 * index);
  }
}
