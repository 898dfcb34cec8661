package org.quietline.stats.model;

/**
 * Columns made orthogonal one after the other, and a further column laid on them.
 *
 * <p>The modified process without roots: {@code X = Q·U}, U unit upper triangular, {@code Q′WQ = D}
 * diagonal, the last column treated as one more column of X, which makes the process as stable as
 * Householder's. Carried in two doubles, so that a condition of 1e10 still leaves all digits of a
 * double. Source: Björck, Solving linear least squares problems by Gram–Schmidt orthogonalization,
 * BIT 7 (1967) 1–21.
 */
final class GramSchmidt {
  /** The least share of a column that those before it must leave unexplained. */
  private static final double LEAST_SHARE = 1e-15;

  private final Twofold[] squares;
  private final Twofold[][] upper;
  private final Twofold[] steps;
  private final Twofold[] rest;

  /**
   * Takes ownership of the arrays.
   *
   * @param columns the columns of X, which become those of Q
   * @param last the column y, which becomes the residual
   * @param weights the weight of each row
   */
  GramSchmidt(Twofold[][] columns, Twofold[] last, double[] weights) {
    int p = columns.length;
    squares = new Twofold[p];
    upper = new Twofold[p][p];
    steps = new Twofold[p];
    rest = last;
    double[] sizes = new double[p];
    for (int k = 0; k < p; k++) {
      sizes[k] = inner(weighted(columns[k], weights), columns[k]).value();
    }
    for (int k = 0; k < p; k++) {
      Twofold[] weighted = weighted(columns[k], weights);
      squares[k] = inner(weighted, columns[k]);
      if (!(squares[k].value() > LEAST_SHARE * LEAST_SHARE * sizes[k])) {
        throw new IllegalArgumentException(
            "term "
                + (k + 1)
                + " of "
                + p
                + " is a combination of the terms before it, to 15 digits");
      }
      for (int j = k + 1; j < p; j++) {
        upper[k][j] = takeOut(columns[k], weighted, squares[k], columns[j]);
      }
      steps[k] = takeOut(columns[k], weighted, squares[k], rest);
    }
  }

  private static Twofold[] weighted(Twofold[] column, double[] weights) {
    Twofold[] weighted = new Twofold[column.length];
    for (int i = 0; i < column.length; i++) {
      weighted[i] = column[i].times(weights[i]);
    }
    return weighted;
  }

  static Twofold inner(Twofold[] a, Twofold[] b) {
    Twofold sum = Twofold.ZERO;
    for (int i = 0; i < a.length; i++) {
      sum = sum.plus(a[i].times(b[i]));
    }
    return sum;
  }

  /** Takes the part along a column out of another, in place, and returns its multiple. */
  private static Twofold takeOut(
      Twofold[] column, Twofold[] weighted, Twofold square, Twofold[] other) {
    Twofold multiple = inner(weighted, other).over(square);
    for (int i = 0; i < other.length; i++) {
      other[i] = other[i].minus(column[i].times(multiple));
    }
    return multiple;
  }

  /** What the columns leave of the last column. */
  Twofold[] residuals() {
    return rest;
  }

  /** The sum of squares that column k adds to those before it. */
  Twofold squareOf(int k) {
    return steps[k].square().times(squares[k]);
  }

  /** The multiples of the columns of X, from {@code U·b = steps}. */
  Twofold[] coefficients() {
    int p = steps.length;
    Twofold[] solution = new Twofold[p];
    for (int k = p - 1; k >= 0; k--) {
      Twofold value = steps[k];
      for (int j = k + 1; j < p; j++) {
        value = value.minus(upper[k][j].times(solution[j]));
      }
      solution[k] = value;
    }
    return solution;
  }

  /** {@code a′(X′WX)⁻¹b}, from {@code U′f = a} and {@code U′g = b} as {@code Σ f·g/D}. */
  Twofold form(Twofold[] a, Twofold[] b) {
    Twofold[] f = forward(a);
    Twofold[] g = forward(b);
    Twofold sum = Twofold.ZERO;
    for (int k = 0; k < f.length; k++) {
      sum = sum.plus(f[k].times(g[k]).over(squares[k]));
    }
    return sum;
  }

  private Twofold[] forward(Twofold[] right) {
    Twofold[] solution = right.clone();
    for (int k = 0; k < solution.length; k++) {
      for (int j = 0; j < k; j++) {
        solution[k] = solution[k].minus(upper[j][k].times(solution[j]));
      }
    }
    return solution;
  }
}
