package org.quietline.stats.numeric;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Where a monotone function is zero. */
public final class Roots {
  /** So that a function of small values, such as a far tail, is not taken for zero everywhere. */
  private static final double SMALLEST = 1e-300;

  private static final double ROUNDING = 1e-12;

  private Roots() {}

  /**
   * The zero near a start, found by widening a bracket from it and then by Brent's method.
   *
   * @param function a monotone function with a zero
   * @param start where to begin
   * @param width the half-width of the first bracket, above zero
   * @return the zero
   */
  public static double of(DoubleUnaryOperator function, double start, double width) {
    double low = start - width;
    double high = start + width;
    double reach = width;
    while (sameSide(function.applyAsDouble(low), function.applyAsDouble(high))) {
      reach *= 2;
      low -= reach;
      high += reach;
    }
    return between(function, low, high);
  }

  /** By their signs: the product of two small numbers may be zero. */
  private static boolean sameSide(double a, double b) {
    return (a > 0 && b > 0) || (a < 0 && b < 0);
  }

  /**
   * The zero between two ends where the function has different signs, to about 1e-14. An end where
   * the function is zero but for rounding, a 1e-12th of its size at the other end, is the zero.
   *
   * @param function the function
   * @param low the lower end
   * @param high the upper end
   * @return the zero
   * @throws org.apache.commons.math3.exception.NoBracketingException if the signs at the ends are
   *     the same
   */
  public static double between(DoubleUnaryOperator function, double low, double high) {
    double atLow = function.applyAsDouble(low);
    double atHigh = function.applyAsDouble(high);
    if (sameSide(atLow, atHigh) && Math.abs(atLow) <= ROUNDING * Math.abs(atHigh)) {
      return low;
    }
    if (sameSide(atLow, atHigh) && Math.abs(atHigh) <= ROUNDING * Math.abs(atLow)) {
      return high;
    }
    return new BrentSolver(1e-14, 1e-14, SMALLEST).solve(1000, function::applyAsDouble, low, high);
  }
}
