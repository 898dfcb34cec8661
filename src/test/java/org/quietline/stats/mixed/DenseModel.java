package org.quietline.stats.mixed;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/** The slow second opinion: the whole covariance matrix, written as the formula is. */
final class DenseModel {
  private final RealMatrix y;
  private final RealMatrix x;
  private final RealMatrix[] parts;

  private DenseModel(RealMatrix y, RealMatrix x, RealMatrix[] parts) {
    this.y = y;
    this.x = x;
    this.parts = parts;
  }

  static DenseModel of(double[] y, double[][] x, RealMatrix... parts) {
    RealMatrix column = new Array2DRowRealMatrix(y.length, 1);
    column.setColumn(0, y);
    return new DenseModel(column, new Array2DRowRealMatrix(x), parts);
  }

  static double[][] constant(int n) {
    double[][] x = new double[n][1];
    for (double[] row : x) {
      row[0] = 1;
    }
    return x;
  }

  /** One where two values share a group of all the levels given. */
  static RealMatrix same(int[]... labels) {
    int n = labels[0].length;
    RealMatrix same = new Array2DRowRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        boolean both = true;
        for (int[] level : labels) {
          both &= level[i] == level[j];
        }
        same.setEntry(i, j, both ? 1 : 0);
      }
    }
    return same;
  }

  /** The matrix of heights, slopes or their covariance. */
  static RealMatrix lines(double[] t, int[] groups, int component) {
    RealMatrix same = same(groups);
    for (int i = 0; i < t.length; i++) {
      for (int j = 0; j < t.length; j++) {
        double factor = component == 0 ? 1 : component == 1 ? t[i] * t[j] : t[i] + t[j];
        same.multiplyEntry(i, j, factor);
      }
    }
    return same;
  }

  private RealMatrix covariance(double... components) {
    int n = y.getRowDimension();
    RealMatrix v = new Array2DRowRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      v.setEntry(i, i, components[parts.length]);
    }
    for (int k = 0; k < parts.length; k++) {
      v = v.add(parts[k].scalarMultiply(components[k]));
    }
    return v;
  }

  /** {@code V⁻¹ − V⁻¹X(X'V⁻¹X)⁻¹X'V⁻¹}. */
  RealMatrix projector(double... components) {
    RealMatrix inverse = new LUDecomposition(covariance(components)).getSolver().getInverse();
    RealMatrix vx = inverse.multiply(x);
    RealMatrix middle = new LUDecomposition(x.transpose().multiply(vx)).getSolver().getInverse();
    return inverse.subtract(vx.multiply(middle).multiply(vx.transpose()));
  }

  /** Components with the residual last. */
  double logLikelihood(double... components) {
    RealMatrix v = covariance(components);
    LUDecomposition lu = new LUDecomposition(v);
    double log = 0;
    for (int i = 0; i < v.getRowDimension(); i++) {
      log += Math.log(Math.abs(lu.getU().getEntry(i, i)));
    }
    RealMatrix inverse = lu.getSolver().getInverse();
    RealMatrix vx = inverse.multiply(x);
    LUDecomposition information = new LUDecomposition(x.transpose().multiply(vx));
    RealMatrix xvy = vx.transpose().multiply(y);
    RealMatrix explained = xvy.transpose().multiply(information.getSolver().solve(xvy));
    double q = y.transpose().multiply(inverse).multiply(y).subtract(explained).getEntry(0, 0);
    int rest = y.getRowDimension() - x.getColumnDimension();
    return -0.5 * (log + Math.log(information.getDeterminant()) + q + rest * Math.log(2 * Math.PI));
  }

  /** The derivative of the log likelihood by each component, residual last. */
  double[] score(double... components) {
    RealMatrix p = projector(components);
    RealMatrix py = p.multiply(y);
    double[] score = new double[parts.length + 1];
    for (int k = 0; k < score.length; k++) {
      RealMatrix pa = k < parts.length ? p.multiply(parts[k]) : p;
      RealMatrix ay = k < parts.length ? parts[k].multiply(py) : py;
      double square = py.transpose().multiply(ay).getEntry(0, 0);
      score[k] = -0.5 * (pa.getTrace() - square);
    }
    return score;
  }
}
