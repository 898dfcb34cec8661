package org.quietline.stats.mixed;

/**
 * What is to be estimated or predicted: a combination of the fixed coefficients plus a random part.
 */
final class Target {
  private final double[] row;
  private final int block;
  private final double[][] shared;
  private final double[] own;

  /**
   * Names the parts.
   *
   * @param row the combination, in the coordinates of the orthonormal columns
   * @param block the group that the random part is correlated with, -1 for none
   * @param shared for each component the covariance of the random part with that group's data in
   *     its basis, per unit of the component
   * @param own for each component, residual last, the variance of the random part per unit of it
   */
  Target(double[] row, int block, double[][] shared, double[] own) {
    this.row = row;
    this.block = block;
    this.shared = shared;
    this.own = own;
  }

  /** A combination of fixed coefficients alone. */
  static Target fixed(double[] row, int components) {
    return new Target(row, -1, new double[components][0], new double[components + 1]);
  }

  /** The same with an independent random part more. */
  Target plus(double[] more) {
    double[] sum = own.clone();
    for (int k = 0; k < sum.length; k++) {
      sum[k] += more[k];
    }
    return new Target(row, block, shared, sum);
  }

  /** Whether it has a random part. */
  boolean isRandom() {
    for (double part : own) {
      if (part != 0) {
        return true;
      }
    }
    return false;
  }

  double[] row() {
    return row;
  }

  int block() {
    return block;
  }

  double[][] shared() {
    return shared;
  }

  double[] own() {
    return own;
  }
}
