package org.quietline.stats;

/**
 * Values about their own mean, the mean carried in two doubles so that a large offset costs no
 * digits.
 */
final class Centred {
  private final double mean;
  private final double meanRest;
  private final double[] deviations;

  private Centred(double mean, double meanRest, double[] deviations) {
    this.mean = mean;
    this.meanRest = meanRest;
    this.deviations = deviations;
  }

  static Centred of(double[] values) {
    Sum sum = new Sum();
    for (double v : values) {
      sum.add(v);
    }
    int n = values.length;
    double first = sum.value() / n;
    double correction = (Math.fma(-first, n, sum.value()) + sum.rest()) / n;
    double mean = first + correction;
    double rest = (first - mean) + correction;
    double[] deviations = new double[n];
    for (int i = 0; i < n; i++) {
      deviations[i] = new Sum().add(values[i]).add(-mean).add(-rest).value();
    }
    return new Centred(mean, rest, deviations);
  }

  double mean() {
    return mean;
  }

  /** The part of the mean below the last digit of {@link #mean()}. */
  double meanRest() {
    return meanRest;
  }

  /** The deviations; not a copy, for use inside this package only. */
  double[] deviations() {
    return deviations;
  }

  double sumOfSquares() {
    return Sum.ofSquares(deviations);
  }
}
