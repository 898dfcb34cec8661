package org.quietline.stats.mixed;

import java.util.List;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * The fixed part of a model: a constant and further columns, made orthonormal, and the values less
 * their least-squares fit on it.
 *
 * <p>With {@code X = Q·R}, restricted likelihood and predictors do not change when X is replaced by
 * Q and the values by what is left of them; offsets of values and columns then cost no digits.
 * Modified Gram–Schmidt, twice, with sums in two doubles. Source: Björck, Numerical Methods for
 * Least Squares Problems (1996), 2.4.
 */
final class FixedPart {
  /** A column that keeps less of its length than this is a combination of those before it. */
  private static final double NOTHING_LEFT = 1e-10;

  private final double[][] basis;
  private final double[][] upper;
  private final double[] fitted;
  private final double[] rest;

  private FixedPart(double[][] basis, double[][] upper, double[] fitted, double[] rest) {
    this.basis = basis;
    this.upper = upper;
    this.fitted = fitted;
    this.rest = rest;
  }

  /** A constant and columns as given. */
  static FixedPart of(double[] values, double[]... columns) {
    return of(ones(values.length), values, columns);
  }

  /** A first column in the constant's place, such as the roots of weights, and columns as given. */
  static FixedPart of(double[] first, double[] values, double[][] columns) {
    double[][] basis = new double[columns.length + 1][];
    double[][] upper = new double[columns.length + 1][columns.length + 1];
    for (double[] column : columns) {
      if (column.length != values.length) {
        throw new IllegalArgumentException(
            values.length
                + " values but "
                + column.length
                + " in regressor "
                + (List.of(columns).indexOf(column) + 1));
      }
    }
    int combination = orthonormal(first, columns, basis, upper);
    if (combination >= 0) {
      throw new IllegalArgumentException(
          "regressor "
              + (combination + 1)
              + " is a combination of the constant and those before it");
    }
    return new FixedPart(basis, upper, new double[basis.length], values.clone()).fit();
  }

  /** The first column that is a combination of a constant and those before it, or -1. */
  static int combination(double[]... columns) {
    int width = columns.length + 1;
    double[] constant = ones(columns[0].length);
    return orthonormal(constant, columns, new double[width][], new double[width][width]);
  }

  /** Fills an orthonormal basis and returns the first column that adds nothing to it, or -1. */
  private static int orthonormal(
      double[] first, double[][] columns, double[][] basis, double[][] upper) {
    upper[0][0] = Math.sqrt(Sum.ofSquares(first));
    basis[0] = scaled(first, 1 / upper[0][0]);
    for (int c = 0; c < columns.length; c++) {
      Require.values(columns[c], 1);
      double[] left = columns[c].clone();
      double size = Math.sqrt(Sum.ofSquares(left));
      for (int pass = 0; pass < 2; pass++) {
        for (int b = 0; b <= c; b++) {
          upper[b][c + 1] += remove(basis[b], left);
        }
      }
      double length = Math.sqrt(Sum.ofSquares(left));
      if (!(length > NOTHING_LEFT * size)) {
        return c;
      }
      upper[c + 1][c + 1] = length;
      basis[c + 1] = scaled(left, 1 / length);
    }
    return -1;
  }

  /** The values and those columns that are left where each group's mean is taken out. */
  FixedPart within(int[] group, int groups) {
    double[][] kept = new double[basis.length][];
    int count = 0;
    for (double[] column : basis) {
      double[] left = column.clone();
      for (int pass = 0; pass < 2; pass++) {
        centre(left, group, groups);
        for (int b = 0; b < count; b++) {
          remove(kept[b], left);
        }
      }
      double length = Math.sqrt(Sum.ofSquares(left));
      if (length > NOTHING_LEFT) {
        kept[count++] = scaled(left, 1 / length);
      }
    }
    double[][] columns = java.util.Arrays.copyOf(kept, count);
    double[] centred = rest.clone();
    centre(centred, group, groups);
    return new FixedPart(columns, new double[0][], new double[count], centred).fit();
  }

  private FixedPart fit() {
    for (int pass = 0; pass < 2; pass++) {
      for (int b = 0; b < basis.length; b++) {
        fitted[b] += remove(basis[b], rest);
      }
    }
    return this;
  }

  /** Takes out what a unit vector explains and returns its coefficient. */
  private static double remove(double[] unit, double[] left) {
    double part = Sum.ofProducts(unit, left);
    for (int i = 0; i < left.length; i++) {
      left[i] = new Sum().add(left[i]).addProduct(-part, unit[i]).value();
    }
    return part;
  }

  private static void centre(double[] left, int[] group, int groups) {
    double[] sum = new double[groups];
    int[] count = new int[groups];
    for (int i = 0; i < left.length; i++) {
      sum[group[i]] += left[i];
      count[group[i]]++;
    }
    for (int i = 0; i < left.length; i++) {
      left[i] -= sum[group[i]] / count[group[i]];
    }
  }

  private static double[] ones(int n) {
    double[] column = new double[n];
    java.util.Arrays.fill(column, 1);
    return column;
  }

  private static double[] scaled(double[] column, double factor) {
    double[] result = column.clone();
    for (int i = 0; i < result.length; i++) {
      result[i] *= factor;
    }
    return result;
  }

  int observations() {
    return rest.length;
  }

  int columns() {
    return basis.length;
  }

  /** The entry of an orthonormal column; after the last column comes the rest of the values. */
  double entry(int column, int row) {
    return column < basis.length ? basis[column][row] : rest[row];
  }

  /** The coefficient of an orthonormal column in the least-squares fit. */
  double fitted(int column) {
    return fitted[column];
  }

  /** What is left of the values, squared and summed. */
  double restSquares() {
    return Sum.ofSquares(rest);
  }

  /** The logarithm of the determinant of {@code X'X}. */
  double logDeterminant() {
    double sum = 0;
    for (int c = 0; c < upper.length; c++) {
      sum += Math.log(upper[c][c]);
    }
    return 2 * sum;
  }

  /** A row of the design in the coordinates of the orthonormal columns. */
  double[] coordinates(double... row) {
    double[] x = row.clone();
    for (int i = 0; i < x.length; i++) {
      Sum sum = new Sum().add(x[i]);
      for (int k = 0; k < i; k++) {
        sum.addProduct(-upper[k][i], x[k]);
      }
      x[i] = sum.value() / upper[i][i];
    }
    return x;
  }
}
