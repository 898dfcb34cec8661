package org.quietline.stats.mixed;

import java.util.ArrayList;
import java.util.List;

/**
 * Values that fall into independent groups, each seen in an orthonormal basis of the columns that
 * its random effects act on.
 *
 * <p>In that basis the covariance matrix of a group is {@code σ²·(I + Σ θk·Ak)}, θ being the ratios
 * of variance components to the residual variance σ²; what is orthogonal to the basis has
 * covariance {@code σ²·I} and enters by its sums of squares and products alone. No matrix is larger
 * than the number of random effects of one group.
 */
final class Blocks {
  private final FixedPart fixed;
  private final int components;
  private final List<double[][]> data = new ArrayList<>();
  private final List<double[][][]> shapes = new ArrayList<>();
  private final double[][] within;
  private int seen;

  /** No groups yet, of a number of variance components beside the residual. */
  Blocks(FixedPart fixed, int components) {
    this.fixed = fixed;
    this.components = components;
    this.within = new double[fixed.columns() + 1][fixed.columns() + 1];
  }

  /**
   * Adds a group.
   *
   * @param rows which values belong to it
   * @param basis orthonormal vectors, each as long as there are rows
   * @param shape for each component the matrix A in that basis
   */
  void add(int[] rows, double[][] basis, double[][][] shape) {
    int width = fixed.columns() + 1;
    double[][] reduced = new double[basis.length][width];
    double[] left = new double[rows.length];
    double[][] leftovers = new double[width][];
    for (int c = 0; c < width; c++) {
      for (int i = 0; i < rows.length; i++) {
        left[i] = fixed.entry(c, rows[i]);
      }
      for (int b = 0; b < basis.length; b++) {
        double part = 0;
        for (int i = 0; i < rows.length; i++) {
          part += basis[b][i] * left[i];
        }
        reduced[b][c] = part;
        for (int i = 0; i < rows.length; i++) {
          left[i] -= part * basis[b][i];
        }
      }
      leftovers[c] = left.clone();
    }
    for (int a = 0; a < width; a++) {
      for (int b = 0; b < width; b++) {
        for (int i = 0; i < rows.length; i++) {
          within[a][b] += leftovers[a][i] * leftovers[b][i];
        }
      }
    }
    if (basis.length > 0) {
      data.add(reduced);
      shapes.add(shape);
      seen += basis.length;
    }
  }

  FixedPart fixed() {
    return fixed;
  }

  int components() {
    return components;
  }

  int size() {
    return data.size();
  }

  /** For each basis vector of a group a row: the fixed columns, then the rest of the values. */
  double[][] data(int block) {
    return data.get(block);
  }

  double[][] shape(int block, int component) {
    return shapes.get(block)[component];
  }

  /** Sums of squares and products of what no basis sees, the values last. */
  double[][] within() {
    return within;
  }

  /** How many dimensions no basis sees. */
  int unseen() {
    return fixed.observations() - seen;
  }

  /** Values less fixed columns. */
  int degreesOfFreedom() {
    return fixed.observations() - fixed.columns();
  }

  /**
   * The pure residual: what neither a basis nor the fixed columns explain.
   *
   * @return degrees of freedom and sum of squares
   */
  Residual residual() {
    int p = fixed.columns();
    double[][] w = new double[p + 1][];
    for (int i = 0; i <= p; i++) {
      w[i] = within[i].clone();
    }
    int rank = 0;
    for (int pivot = largest(w, p); pivot >= 0; pivot = largest(w, p)) {
      rank++;
      double[] row = w[pivot].clone();
      for (int i = 0; i <= p; i++) {
        double factor = w[i][pivot] / row[pivot];
        for (int j = 0; j <= p; j++) {
          w[i][j] -= factor * row[j];
        }
      }
      for (int i = 0; i <= p; i++) {
        w[i][pivot] = 0;
        w[pivot][i] = 0;
      }
    }
    return new Residual(unseen() - rank, w[p][p]);
  }

  /** The largest pivot that is more than rounding, or -1. */
  private static int largest(double[][] w, int p) {
    int best = -1;
    for (int i = 0; i < p; i++) {
      if (w[i][i] > 1e-10 && (best < 0 || w[i][i] > w[best][best])) {
        best = i;
      }
    }
    return best;
  }

  static double[][] product(double[][] a, double[][] b) {
    double[][] product = new double[a.length][b.length == 0 ? 0 : b[0].length];
    for (int i = 0; i < a.length; i++) {
      for (int k = 0; k < b.length; k++) {
        double factor = a[i][k];
        for (int j = 0; j < product[i].length; j++) {
          product[i][j] += factor * b[k][j];
        }
      }
    }
    return product;
  }

  static double[][] transposed(double[][] a) {
    double[][] result = new double[a.length == 0 ? 0 : a[0].length][a.length];
    for (int i = 0; i < a.length; i++) {
      for (int j = 0; j < a[i].length; j++) {
        result[j][i] = a[i][j];
      }
    }
    return result;
  }

  /** Degrees of freedom and sum of squares of the pure residual. */
  record Residual(int degreesOfFreedom, double squares) {}
}
