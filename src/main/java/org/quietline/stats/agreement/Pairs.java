package org.quietline.stats.agreement;

import org.quietline.stats.numeric.Require;

/** Checks and cuts of two rows of numbers that belong together place by place. */
final class Pairs {
  private Pairs() {}

  /** Rows of the same length, with at least so many usable numbers. */
  static void require(double[] x, double[] y, int least) {
    if (x.length != y.length) {
      throw new IllegalArgumentException(x.length + " values of x but " + y.length + " of y");
    }
    Require.values(x, least);
    Require.values(y, least);
  }

  /** The values without the one at a place. */
  static double[] without(double[] values, int place) {
    double[] rest = new double[values.length - 1];
    System.arraycopy(values, 0, rest, 0, place);
    System.arraycopy(values, place + 1, rest, place, rest.length - place);
    return rest;
  }
}
