package org.quietline.stats;

import org.apache.commons.math3.special.Erf;

/**
 * The standard normal distribution, accurate to about 1e-14 relative in both tails.
 *
 * <p>Quantiles come from the inverse error function and are polished by Newton's method on the
 * logarithm of the tail.
 */
final class Normal {
  private static final double ROOT2 = Math.sqrt(2);
  private static final double LOG_ROOT_TWO_PI = 0.5 * Math.log(2 * Math.PI);

  private static final double SMALLEST = 1e-300;

  private Normal() {}

  static double density(double z) {
    return Math.exp(-0.5 * z * z - LOG_ROOT_TWO_PI);
  }

  static double below(double z) {
    return above(-z);
  }

  static double above(double z) {
    return 0.5 * Erf.erfc(z / ROOT2);
  }

  /** The chance of being farther from zero than a width. */
  static double outside(double width) {
    return Erf.erfc(width / ROOT2);
  }

  /** The logarithm of {@link #below}, finite however far in the tail. */
  static double logBelow(double z) {
    if (z > 0) {
      return Math.log1p(-above(z));
    }
    if (z > -37) {
      return Math.log(below(z));
    }
    double w = 1 / (z * z);
    return -0.5 * z * z
        - LOG_ROOT_TWO_PI
        - Math.log(-z)
        + Math.log1p(-w * (1 - 3 * w * (1 - 5 * w * (1 - 7 * w * (1 - 9 * w)))));
  }

  /** The value that is exceeded with a given chance of at least 1e-300. */
  static double exceededWith(double chance) {
    if (chance > 0.5) {
      return -exceededWith(1 - chance);
    }
    double p = Math.max(chance, SMALLEST);
    double square = -2 * Math.log(p);
    double z =
        p < 1e-9 ? Math.sqrt(square - Math.log(2 * Math.PI * square)) : ROOT2 * Erf.erfcInv(2 * p);
    for (int i = 0; i < 4; i++) {
      double tail = above(z);
      z += tail / density(z) * Math.log(tail / p);
    }
    return z;
  }

  /** The value with a given chance of falling below it. */
  static double quantile(double chance) {
    return -exceededWith(chance);
  }
}
