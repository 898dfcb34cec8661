package org.quietline.stats.mixed;

/**
 * The factors {@code L·D·L'} of a small symmetric matrix, L with ones on its diagonal, D diagonal.
 *
 * <p>Without exchange of rows, so meant for positive definite matrices; where others are met the
 * signs of D tell. Source: Golub and Van Loan, Matrix Computations, 4th edition, 4.1.
 */
final class SymmetricFactor {
  /** L below the diagonal, D on it. */
  private final double[][] lower;

  private SymmetricFactor(double[][] lower) {
    this.lower = lower;
  }

  /** Factors a matrix, of which the lower triangle is read and overwritten. */
  static SymmetricFactor inPlace(double[][] matrix) {
    for (int i = 0; i < matrix.length; i++) {
      double[] row = matrix[i];
      for (int j = 0; j < i; j++) {
        // for now the product of L and D, of which D is divided out below
        for (int k = 0; k < j; k++) {
          row[j] -= row[k] * matrix[j][k];
        }
      }
      for (int j = 0; j < i; j++) {
        double product = row[j];
        row[j] = product / matrix[j][j];
        row[i] -= product * row[j];
      }
    }
    return new SymmetricFactor(matrix);
  }

  /** The entry of D. */
  double pivot(int i) {
    return lower[i][i];
  }

  /** How many entries of D, and so eigenvalues of the matrix, are below zero. */
  int negatives() {
    int count = 0;
    for (int i = 0; i < lower.length; i++) {
      count += lower[i][i] < 0 ? 1 : 0;
    }
    return count;
  }

  /** Whether every entry of D is above a limit. */
  boolean isDefinite(double limit) {
    for (int i = 0; i < lower.length; i++) {
      if (!(lower[i][i] > limit)) {
        return false;
      }
    }
    return true;
  }

  double logDeterminant() {
    double sum = 0;
    for (int i = 0; i < lower.length; i++) {
      sum += Math.log(lower[i][i]);
    }
    return sum;
  }

  /** Replaces the rows of a right-hand side by those of {@code L⁻¹} times it. */
  void solveLower(double[][] right) {
    for (int i = 0; i < lower.length; i++) {
      double[] row = right[i];
      for (int k = 0; k < i; k++) {
        double factor = lower[i][k];
        for (int c = 0; c < row.length; c++) {
          row[c] -= factor * right[k][c];
        }
      }
    }
  }

  /** The solution of matrix times x = right. */
  double[] solve(double[] right) {
    int n = lower.length;
    double[] x = right.clone();
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < i; k++) {
        x[i] -= lower[i][k] * x[k];
      }
    }
    for (int i = n - 1; i >= 0; i--) {
      x[i] /= lower[i][i];
      for (int k = i + 1; k < n; k++) {
        x[i] -= lower[k][i] * x[k];
      }
    }
    return x;
  }

  double[][] inverse() {
    int n = lower.length;
    double[][] inverse = new double[n][];
    for (int i = 0; i < n; i++) {
      double[] unit = new double[n];
      unit[i] = 1;
      inverse[i] = solve(unit);
    }
    return inverse;
  }
}
