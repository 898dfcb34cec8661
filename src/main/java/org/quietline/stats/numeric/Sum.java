package org.quietline.stats.numeric;

/**
 * A running sum carried in two doubles.
 *
 * <p>The result is as accurate as if computed in twice double precision and rounded once. Source:
 * Ogita, Rump and Oishi, Accurate Sum and Dot Product, SIAM J. Sci. Comput. 26 (2005) 1955–1988,
 * algorithms 4.4 and 5.3.
 */
public final class Sum {
  private double high;
  private double low;

  /** Starts at zero. */
  public Sum() {}

  /**
   * Adds a value.
   *
   * @param value the value
   * @return this sum
   */
  public Sum add(double value) {
    double next = high + value;
    double part = next - high;
    low += (high - (next - part)) + (value - part);
    high = next;
    return this;
  }

  /**
   * Adds a product, exact before the addition.
   *
   * @param a one factor
   * @param b the other
   * @return this sum
   */
  public Sum addProduct(double a, double b) {
    double product = a * b;
    add(product);
    low += Math.fma(a, b, -product);
    return this;
  }

  /**
   * The sum so far, rounded once.
   *
   * @return the sum
   */
  public double value() {
    return high + low;
  }

  /**
   * What {@link #value()} leaves out by rounding.
   *
   * @return the rest, below half a unit of the last digit
   */
  public double rest() {
    double total = high + low;
    return (high - total) + low;
  }

  /**
   * The sum of the squares.
   *
   * @param values the values
   * @return the sum, zero for none
   */
  public static double ofSquares(double[] values) {
    Sum sum = new Sum();
    for (double v : values) {
      sum.addProduct(v, v);
    }
    return sum.value();
  }

  /**
   * The sum of the products of values at the same place.
   *
   * @param a one row of factors
   * @param b the other, at least as long
   * @return the sum
   */
  public static double ofProducts(double[] a, double[] b) {
    Sum sum = new Sum();
    for (int i = 0; i < a.length; i++) {
      sum.addProduct(a[i], b[i]);
    }
    return sum.value();
  }
}
