package org.quietline.stats;

/**
 * A running sum carried in two doubles.
 *
 * <p>The result is as accurate as if computed in twice double precision and rounded once. Source:
 * Ogita, Rump and Oishi, Accurate Sum and Dot Product, SIAM J. Sci. Comput. 26 (2005) 1955–1988,
 * algorithms 4.4 and 5.3.
 */
final class Sum {
  private double high;
  private double low;

  Sum add(double value) {
    double next = high + value;
    double part = next - high;
    low += (high - (next - part)) + (value - part);
    high = next;
    return this;
  }

  Sum addProduct(double a, double b) {
    double product = a * b;
    add(product);
    low += Math.fma(a, b, -product);
    return this;
  }

  double value() {
    return high + low;
  }

  /** What {@link #value()} leaves out by rounding. */
  double rest() {
    double total = high + low;
    return (high - total) + low;
  }

  /** The sum of the squares. */
  static double ofSquares(double[] values) {
    Sum sum = new Sum();
    for (double v : values) {
      sum.addProduct(v, v);
    }
    return sum.value();
  }

  /** The sum of the products of values at the same place. */
  static double ofProducts(double[] a, double[] b) {
    Sum sum = new Sum();
    for (int i = 0; i < a.length; i++) {
      sum.addProduct(a[i], b[i]);
    }
    return sum.value();
  }
}
