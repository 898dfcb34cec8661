package org.quietline.stats.runlength;

import java.util.Arrays;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/** A Gauss–Legendre rule from −1 to 1, and Lagrange's interpolation from its points. */
final class GaussRule {
  private final double[] points;
  private final double[] weights;
  private final double[] barycentric;

  GaussRule(int size) {
    GaussIntegrator gauss = new GaussIntegratorFactory().legendre(size);
    points = new double[size];
    weights = new double[size];
    barycentric = new double[size];
    for (int j = 0; j < size; j++) {
      points[j] = gauss.getPoint(j);
      weights[j] = gauss.getWeight(j);
    }
    for (int j = 0; j < size; j++) {
      barycentric[j] = 1;
      for (int other = 0; other < size; other++) {
        if (other != j) {
          barycentric[j] /= points[j] - points[other];
        }
      }
    }
  }

  int size() {
    return points.length;
  }

  double point(int j) {
    return points[j];
  }

  double weight(int j) {
    return weights[j];
  }

  /**
   * The weights of the values at the points in the value at another place, in barycentric form.
   *
   * @param local the place, from −1 to 1
   * @param basis where the weights are put
   */
  void interpolate(double local, double[] basis) {
    double total = 0;
    for (int j = 0; j < points.length; j++) {
      double distance = local - points[j];
      if (distance == 0) {
        Arrays.fill(basis, 0);
        basis[j] = 1;
        return;
      }
      basis[j] = barycentric[j] / distance;
      total += basis[j];
    }
    for (int j = 0; j < points.length; j++) {
      basis[j] /= total;
    }
  }

  /**
   * The weights of the values at the points in the integral from −1 to each of the points.
   *
   * @return a row for each point
   */
  double[][] runningIntegrals() {
    double[][] running = new double[points.length][points.length];
    double[] basis = new double[points.length];
    for (int i = 0; i < points.length; i++) {
      double half = (points[i] + 1) / 2;
      for (int q = 0; q < points.length; q++) {
        interpolate(half * (points[q] + 1) - 1, basis);
        for (int j = 0; j < points.length; j++) {
          running[i][j] += half * weights[q] * basis[j];
        }
      }
    }
    return running;
  }
}
