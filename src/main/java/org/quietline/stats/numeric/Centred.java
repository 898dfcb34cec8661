package org.quietline.stats.numeric;

/**
 * Values about their own mean, the mean carried in two doubles so that a large offset costs no
 * digits.
 */
public final class Centred {
  private final double mean;
  private final double meanRest;
  private final double[] deviations;

  private Centred(double mean, double meanRest, double[] deviations) {
    this.mean = mean;
    this.meanRest = meanRest;
    this.deviations = deviations;
  }

  /**
   * Centres values.
   *
   * @param values at least one finite number
   * @return the values about their mean
   */
  public static Centred of(double[] values) {
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

  /**
   * The mean.
   *
   * @return the mean, rounded
   */
  public double mean() {
    return mean;
  }

  /**
   * The part of the mean below the last digit of {@link #mean()}.
   *
   * @return the rest
   */
  public double meanRest() {
    return meanRest;
  }

  /**
   * The deviations from the mean.
   *
   * @return a copy, in the order of the values
   */
  public double[] deviations() {
    return deviations.clone();
  }

  /**
   * The sum of the squared deviations.
   *
   * @return the sum
   */
  public double sumOfSquares() {
    return Sum.ofSquares(deviations);
  }
}
