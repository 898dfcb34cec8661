package org.quietline.stats.distribution;

import java.util.function.DoubleUnaryOperator;

/**
 * Where the tail of a positive variable has a given chance: Newton's method on the logarithm of the
 * tail against the logarithm of the variable, kept inside a shrinking bracket. The tails of the
 * distributions here are log-concave in that scale, so that it converges from everywhere.
 */
final class TailRoot {
  private static final int MOST_STEPS = 200;

  /** After a step as small as this the next one would be below the last digit. */
  private static final double SMALL = 1e-9;

  /** Logarithms of the smallest and the largest number to look at. */
  private static final double LOWEST = -744;

  private static final double HIGHEST = 708;

  private TailRoot() {}

  /**
   * The root.
   *
   * @param rises whether the tail grows with the variable
   * @param tail the chance by the variable
   * @param weight the variable times its density
   * @param start a first guess, above zero
   */
  static double of(
      double chance,
      boolean rises,
      double start,
      DoubleUnaryOperator tail,
      DoubleUnaryOperator weight) {
    double low = LOWEST;
    double high = HIGHEST;
    double at = start > 0 && start < Double.MAX_VALUE ? start : 1;
    for (int i = 0; i < MOST_STEPS; i++) {
      double found = tail.applyAsDouble(at);
      double excess = Math.log(found / chance);
      if (rises == excess > 0) {
        high = Math.min(high, Math.log(at));
      } else {
        low = Math.max(low, Math.log(at));
      }
      double step = (rises ? -excess : excess) * found / weight.applyAsDouble(at);
      if (Math.abs(step) <= SMALL) {
        return at * Math.exp(step);
      }
      double next = Math.log(at) + step;
      at = next > low && next < high ? at * Math.exp(step) : Math.exp((low + high) / 2);
    }
    return at;
  }
}
