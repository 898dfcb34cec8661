package org.quietline.stats.distribution;

/**
 * Both tails of the gamma distribution: below the middle by the series of P, above it by the
 * continued fraction of Q, each with the density in Loader's form. Shapes above 1e8, for which both
 * are slow, by Temme's uniform expansion. Source: DLMF 8.7.1, 8.9.2 and 8.12.
 */
final class IncompleteGamma {
  private static final int MOST_TERMS = 1_000_000;
  private static final double TINY = 1e-300;

  /** Shapes above this need but one function of Temme's expansion. */
  private static final double LARGE = 1e8;

  /** Its coefficients, by rising powers of eta. Source: DLMF 8.12.11 and 8.12.12. */
  private static final double[] TEMME = {-1 / 3.0, 1 / 12.0, -2 / 135.0, 1 / 864.0, 1 / 2835.0};

  private IncompleteGamma() {}

  /** {@code x·f(x)} with f the density of the gamma distribution of shape a. */
  static double density(double a, double x) {
    if (x == 0 || Double.isInfinite(x)) {
      return 0;
    }
    return Math.sqrt(a / (2 * Math.PI)) * Math.exp(-Stirling.rest(a) - Stirling.deviance(a, x));
  }

  /** The chance of falling below x. */
  static double below(double a, double x) {
    if (a > LARGE) {
      double z = normal(a, x);
      return Normal.below(z) - correction(a, z);
    }
    return x < a + 1 ? series(a, x) : 1 - fraction(a, x);
  }

  /** The chance of exceeding x. */
  static double above(double a, double x) {
    if (a > LARGE) {
      double z = normal(a, x);
      return Normal.above(z) + correction(a, z);
    }
    return x < a + 1 ? 1 - series(a, x) : fraction(a, x);
  }

  /** The normal deviation whose density falls off as that of x does, {@code eta·sqrt(a)}. */
  private static double normal(double a, double x) {
    if (x == 0) {
      return Double.NEGATIVE_INFINITY;
    }
    return Math.copySign(Math.sqrt(2 * Stirling.deviance(a, x)), x - a);
  }

  private static double correction(double a, double z) {
    double density = Normal.density(z);
    if (density == 0) {
      return 0;
    }
    double root = Math.sqrt(a);
    double sum = 0;
    for (int i = TEMME.length - 1; i >= 0; i--) {
      sum = sum * z / root + TEMME[i];
    }
    return density / root * sum;
  }

  private static double series(double a, double x) {
    double term = 1;
    double sum = 1;
    for (int i = 1; i < MOST_TERMS && term > 1e-17 * sum; i++) {
      term *= x / (a + i);
      sum += term;
    }
    return density(a, x) / a * sum;
  }

  /** By the method of Lentz, as given by Thompson and Barnett (1986). */
  private static double fraction(double a, double x) {
    double front = density(a, x);
    if (front == 0) {
      return 0;
    }
    double b = x + 1 - a;
    double c = 1 / TINY;
    double d = 1 / b;
    double value = d;
    for (int i = 1; i < MOST_TERMS; i++) {
      double over = -i * (i - a);
      b += 2;
      d = 1 / away(over * d + b);
      c = away(b + over / c);
      double ratio = d * c;
      value *= ratio;
      if (Math.abs(ratio - 1) < 2e-16) {
        break;
      }
    }
    return front * value;
  }

  private static double away(double from) {
    return Math.abs(from) < TINY ? TINY : from;
  }
}
