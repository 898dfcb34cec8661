package org.quietline.stats.distribution;

/**
 * The two pieces that gamma and beta densities are made of without losing digits to large
 * logarithms that cancel: what Stirling's formula leaves out, and the deviance of a mean. Source:
 * Loader (2000), Fast and Accurate Computation of Binomial Probabilities.
 */
final class Stirling {
  /** Coefficients of the series in 1/z, of DLMF 5.11.1. */
  private static final double[] SERIES = {
    1 / 12.0, -1 / 360.0, 1 / 1260.0, -1 / 1680.0, 1 / 1188.0, -691 / 360360.0, 1 / 156.0,
  };

  private static final double LARGE = 10;

  private Stirling() {}

  /** {@code ln Γ(z + 1) − (z + ½)·ln z + z − ½·ln 2π} for z above zero, to 1e-16 absolute. */
  static double rest(double z) {
    double shifted = 0;
    double at = z;
    while (at < LARGE) {
      shifted += (at + 0.5) * Math.log1p(1 / at) - 1;
      at++;
    }
    double square = 1 / (at * at);
    double sum = 0;
    for (int i = SERIES.length - 1; i >= 0; i--) {
      sum = sum * square + SERIES[i];
    }
    return shifted + sum / at;
  }

  /** {@code x·ln(x/mean) + mean − x} for x and mean above zero, without cancellation. */
  static double deviance(double x, double mean) {
    double difference = x - mean;
    if (Math.abs(difference) >= 0.1 * (x + mean)) {
      return x * Math.log(x / mean) - difference;
    }
    double v = difference / (x + mean);
    double sum = difference * v;
    double term = 2 * x * v;
    for (int j = 3; ; j += 2) {
      term *= v * v;
      double next = sum + term / j;
      if (next == sum) {
        return sum;
      }
      sum = next;
    }
  }
}
