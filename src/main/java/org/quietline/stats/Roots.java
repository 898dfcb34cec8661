package org.quietline.stats;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Where a monotone function is zero. */
final class Roots {
  private Roots() {}

  /** The zero near a start, found by widening a bracket from it and then by Brent's method. */
  static double of(DoubleUnaryOperator function, double start, double width) {
    double low = start - width;
    double high = start + width;
    double reach = width;
    while (function.applyAsDouble(low) * function.applyAsDouble(high) > 0) {
      reach *= 2;
      low -= reach;
      high += reach;
    }
    return between(function, low, high);
  }

  /** The zero between two ends where the function has different signs. */
  static double between(DoubleUnaryOperator function, double low, double high) {
    return new BrentSolver(1e-14, 1e-14, 1e-15).solve(1000, function::applyAsDouble, low, high);
  }
}
