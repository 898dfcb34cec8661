package org.quietline.stats.capability;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.NoncentralT;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;

/**
 * The distance of a mean of n values from its limits in deviations, the deviation having degrees of
 * freedom of its own: {@code √n·distance} has a noncentral t distribution with noncentrality {@code
 * √n·(true distance)}.
 */
record Margin(
    int n,
    double mean,
    double deviation,
    double degreesOfFreedom,
    OptionalDouble lower,
    OptionalDouble upper) {

  Margin {
    Require.atLeast(n, 1, "n");
    Require.finite(mean, "mean");
    Limits.require(lower, upper);
    Require.positive(deviation, "deviation");
    if (!(degreesOfFreedom >= 1 && Double.isFinite(degreesOfFreedom))) {
      throw new IllegalArgumentException(
          "degrees of freedom must be at least 1 and finite, is " + degreesOfFreedom);
    }
  }

  double fromLower() {
    return lower.isPresent() ? (mean - lower.getAsDouble()) / deviation : Double.POSITIVE_INFINITY;
  }

  double fromUpper() {
    return upper.isPresent() ? (upper.getAsDouble() - mean) / deviation : Double.POSITIVE_INFINITY;
  }

  double nearer() {
    return Math.min(fromLower(), fromUpper());
  }

  /**
   * The true distance that an observed one, or a smaller, has a given chance of, told by it and by
   * what is left of one, so that the smaller of the two keeps its digits.
   */
  private double bound(double distance, double chance, double rest) {
    double root = Math.sqrt(n);
    double t = root * distance;
    double width = 1 + Math.abs(distance);
    DoubleUnaryOperator excess =
        chance > rest
            ? delta -> NoncentralT.above(t, degreesOfFreedom, delta) - rest
            : delta -> NoncentralT.cdf(t, degreesOfFreedom, delta) - chance;
    return Roots.of(excess, t, width) / root;
  }

  double lowerIndexBound(double level) {
    Require.share(level, "level");
    return bound(nearer(), level, 1 - level) / 3;
  }

  Interval indexInterval(double level) {
    Require.share(level, "level");
    double tail = (1 - level) / 2;
    return new Interval(bound(nearer(), 1 - tail, tail) / 3, bound(nearer(), tail, 1 - tail) / 3);
  }

  double shareBeyond() {
    return Normal.above(fromLower()) + Normal.above(fromUpper());
  }

  Interval shareBeyondInterval(double level) {
    Require.share(level, "level");
    boolean both = lower.isPresent() && upper.isPresent();
    double tail = (1 - level) / (both ? 4 : 2);
    Interval below = side(fromLower(), tail);
    Interval above = side(fromUpper(), tail);
    return new Interval(
        Math.max(below.lower(), above.lower()), Math.min(1, below.upper() + above.upper()));
  }

  private Interval side(double distance, double tail) {
    return Double.isInfinite(distance)
        ? new Interval(0, 0)
        : new Interval(
            Normal.above(bound(distance, tail, 1 - tail)),
            Normal.above(bound(distance, 1 - tail, tail)));
  }
}
