package org.quietline.stats.mixed;

/**
 * What the values say when the ratios θ of the variance components to the residual variance are
 * given: generalised least squares and the two likelihoods with the residual variance profiled out.
 *
 * <p>With {@code H = I + Σ θk·Zk·Zk'}, {@code Φ = (X'H⁻¹X)⁻¹} and {@code P = H⁻¹ − H⁻¹XΦX'H⁻¹} the
 * quadratic form is {@code q = y'Py}. Source: Searle, Casella and McCulloch, Variance Components
 * (1992), 6.6.
 */
final class GivenRatios {
  private final Blocks blocks;
  private final double[] ratios;
  private final SymmetricFactor[] factors;
  private final double logDeterminant;
  private final SymmetricFactor information;
  private final double[] coefficients;
  private final double quadraticForm;

  private GivenRatios(
      Blocks blocks,
      double[] ratios,
      SymmetricFactor[] factors,
      double logDeterminant,
      double[][] products) {
    int p = products.length - 1;
    this.blocks = blocks;
    this.ratios = ratios;
    this.factors = factors;
    this.logDeterminant = logDeterminant;
    double[][] left = new double[p][];
    for (int i = 0; i < p; i++) {
      left[i] = java.util.Arrays.copyOf(products[i], p);
    }
    this.information = SymmetricFactor.inPlace(left);
    double[] right = java.util.Arrays.copyOf(products[p], p);
    this.coefficients = information.solve(right);
    double explained = 0;
    for (int i = 0; i < p; i++) {
      explained += coefficients[i] * right[i];
    }
    this.quadraticForm = products[p][p] - explained;
  }

  static GivenRatios of(Blocks blocks, double... ratios) {
    int width = blocks.fixed().columns() + 1;
    SymmetricFactor[] factors = new SymmetricFactor[blocks.size()];
    double[][] products = new double[width][];
    for (int i = 0; i < width; i++) {
      products[i] = blocks.within()[i].clone();
    }
    double log = 0;
    for (int b = 0; b < factors.length; b++) {
      factors[b] = SymmetricFactor.inPlace(covariance(blocks, b, ratios));
      log += factors[b].logDeterminant();
      double[][] data = blocks.data(b);
      double[][] whitened = new double[data.length][];
      for (int i = 0; i < data.length; i++) {
        whitened[i] = data[i].clone();
      }
      factors[b].solveLower(whitened);
      for (int i = 0; i < whitened.length; i++) {
        addSquare(products, whitened[i], factors[b].pivot(i));
      }
    }
    return new GivenRatios(blocks, ratios.clone(), factors, log, products);
  }

  private static void addSquare(double[][] products, double[] row, double divisor) {
    for (int i = 0; i < row.length; i++) {
      double scaled = row[i] / divisor;
      for (int j = 0; j <= i; j++) {
        products[i][j] += scaled * row[j];
      }
    }
  }

  private static double[][] covariance(Blocks blocks, int block, double[] ratios) {
    int r = blocks.data(block).length;
    double[][] h = new double[r][r];
    for (int i = 0; i < r; i++) {
      h[i][i] = 1;
    }
    for (int k = 0; k < ratios.length; k++) {
      double[][] shape = blocks.shape(block, k);
      for (int i = 0; i < r; i++) {
        for (int j = 0; j <= i; j++) {
          h[i][j] += ratios[k] * shape[i][j];
        }
      }
    }
    return h;
  }

  /**
   * Whether the error contrasts, what is left of the values without the fixed part, have a
   * covariance matrix. Ratios below zero may be legal here though H itself is no covariance matrix:
   * its negative eigenvalues must be as many as those of {@code X'H⁻¹X}.
   */
  boolean isLegal() {
    int negatives = 0;
    for (SymmetricFactor factor : factors) {
      negatives += factor.negatives();
    }
    return negatives == information.negatives() && Double.isFinite(quadraticForm);
  }

  Blocks blocks() {
    return blocks;
  }

  double ratio(int component) {
    return ratios[component];
  }

  double[][] inverse(int block) {
    return factors[block].inverse();
  }

  /** A group's inverse covariance times a vector. */
  double[] solve(int block, double[] vector) {
    return factors[block].solve(vector);
  }

  /** Φ, in the coordinates of the orthonormal columns. */
  double[][] coefficientCovariance() {
    return information.inverse();
  }

  /** The coefficients of the orthonormal columns, on top of the least-squares fit. */
  double[] coefficients() {
    return coefficients;
  }

  double quadraticForm() {
    return quadraticForm;
  }

  /** log|H|. */
  double logDeterminant() {
    return logDeterminant;
  }

  /** log|X'H⁻¹X| in the columns as they were given. */
  double logDeterminantOfInformation() {
    return information.logDeterminant() + blocks.fixed().logDeterminant();
  }

  /** The residual variance at which the likelihood is largest. */
  double residualVariance(Likelihood likelihood) {
    return quadraticForm / likelihood.divisor(blocks);
  }

  /** The logarithm of the likelihood at that residual variance. */
  double logLikelihood(Likelihood likelihood) {
    double divisor = likelihood.divisor(blocks);
    double sum = divisor * (1 + Math.log(2 * Math.PI * quadraticForm / divisor)) + logDeterminant;
    return likelihood == Likelihood.RESTRICTED
        ? -0.5 * (sum + logDeterminantOfInformation())
        : -0.5 * sum;
  }

  /** What is left of a group's data, in its basis. */
  double[] left(int block) {
    double[][] data = blocks.data(block);
    double[] left = new double[data.length];
    for (int i = 0; i < left.length; i++) {
      left[i] = data[i][coefficients.length];
      for (int c = 0; c < coefficients.length; c++) {
        left[i] -= data[i][c] * coefficients[c];
      }
    }
    return left;
  }

  /** How fast the quadratic form changes with a ratio: {@code −y'PAPy}, never above zero. */
  double slopeOfQuadraticForm(int component) {
    double sum = 0;
    for (int b = 0; b < factors.length; b++) {
      double[] e = factors[b].solve(left(b));
      double[][] shape = blocks.shape(b, component);
      for (int i = 0; i < e.length; i++) {
        for (int j = 0; j < e.length; j++) {
          sum += e[i] * shape[i][j] * e[j];
        }
      }
    }
    return -sum;
  }
}
