package org.quietline.stats.numeric;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/** Gauss–Legendre quadrature on one panel or on a row of panels. */
public final class Quadrature {
  private static final int POINTS = 24;
  private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(POINTS);

  private Quadrature() {}

  /**
   * The integral over panels that meet at ascending edges.
   *
   * @param function a function that is smooth within each panel
   * @param edges the ascending edges, at least two
   * @return the integral
   */
  public static double integrate(DoubleUnaryOperator function, double... edges) {
    Sum sum = new Sum();
    for (int i = 1; i < edges.length; i++) {
      double half = (edges[i] - edges[i - 1]) / 2;
      double middle = (edges[i] + edges[i - 1]) / 2;
      for (int j = 0; j < POINTS && half > 0; j++) {
        double value = function.applyAsDouble(middle + half * RULE.getPoint(j));
        sum.addProduct(half * RULE.getWeight(j), value);
      }
    }
    return sum.value();
  }
}
