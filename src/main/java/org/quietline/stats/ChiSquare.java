package org.quietline.stats;

import org.apache.commons.math3.special.Gamma;

/**
 * The chi-square distribution, with quantiles by Newton's method on the logarithm of the nearer
 * tail, accurate to about 1e-13 relative.
 */
final class ChiSquare {
  private static final int MOST_STEPS = 60;

  private ChiSquare() {}

  static double above(double x, double df) {
    return Gamma.regularizedGammaQ(df / 2, x / 2);
  }

  private static double below(double x, double df) {
    return Gamma.regularizedGammaP(df / 2, x / 2);
  }

  /** The value with a given chance of falling below it. */
  static double quantile(double chance, int df) {
    double x = start(chance, df);
    double ratio = 2;
    for (int i = 0; i < MOST_STEPS && Math.abs(ratio - 1) > 1e-15; i++) {
      double tail = chance < 0.5 ? below(x, df) : above(x, df);
      double step =
          chance < 0.5
              ? -Math.log(tail / chance) * tail / (x * density(x, df))
              : Math.log(tail / (1 - chance)) * tail / (x * density(x, df));
      ratio = chance < 0.5 ? Math.exp(step) : 1 + step;
      x *= ratio;
    }
    return x;
  }

  /** Wilson and Hilferty's approximation, and for small values the first term of the series. */
  private static double start(double chance, int df) {
    double a = df / 2.0;
    double first = 2 * Math.exp((Math.log(chance) + Gamma.logGamma(a + 1)) / a);
    double spread = 2.0 / (9 * df);
    double root = 1 - spread + Normal.quantile(chance) * Math.sqrt(spread);
    return chance < 0.5 ? Math.max(first, df * root * root * root) : df * root * root * root;
  }

  private static double density(double x, double df) {
    double a = df / 2;
    return 0.5 * Math.exp((a - 1) * Math.log(x / 2) - x / 2 - Gamma.logGamma(a));
  }
}
