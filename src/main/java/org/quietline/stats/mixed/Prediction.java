package org.quietline.stats.mixed;

/**
 * The best linear unbiased estimate of a target at given ratios, and its mean squared error per
 * unit of the residual variance.
 *
 * <p>With c the covariance of target and data and v the variance of its random part, weights {@code
 * w = Pc + H⁻¹XΦx}, estimate {@code w'y}, error {@code v − c'H⁻¹c + d'Φd} where {@code d = x −
 * X'H⁻¹c}. Source: Henderson, Biometrics 31 (1975) 423–447.
 */
final class Prediction {
  private static final double FEWEST = 2;

  private final GivenRatios given;
  private final Target target;
  private final double[][] phi;

  /** {@code K·c} in the target's group. */
  private final double[] solved;

  /** {@code Φd}. */
  private final double[] phiD;

  private final double value;
  private final double squaredError;

  Prediction(GivenRatios given, Target target) {
    this.given = given;
    this.target = target;
    this.phi = given.coefficientCovariance();
    Blocks blocks = given.blocks();
    int p = target.row().length;
    double[] d = target.row().clone();
    double random = target.own()[blocks.components()];
    for (int k = 0; k < blocks.components(); k++) {
      random += given.ratio(k) * target.own()[k];
    }
    double sum = 0;
    for (int c = 0; c < p; c++) {
      sum += d[c] * (blocks.fixed().fitted(c) + given.coefficients()[c]);
    }
    if (target.block() < 0) {
      this.solved = new double[0];
    } else {
      double[] c = covariance();
      this.solved = given.solve(target.block(), c);
      double[] left = given.left(target.block());
      for (int i = 0; i < c.length; i++) {
        random -= c[i] * solved[i];
        sum += left[i] * solved[i];
        for (int j = 0; j < p; j++) {
          d[j] -= blocks.data(target.block())[i][j] * solved[i];
        }
      }
    }
    this.value = sum;
    this.phiD = times(phi, d);
    for (int j = 0; j < p; j++) {
      random += d[j] * phiD[j];
    }
    this.squaredError = random;
  }

  private double[] covariance() {
    double[][] shared = target.shared();
    double[] c = new double[shared[0].length];
    for (int k = 0; k < shared.length; k++) {
      for (int i = 0; i < c.length; i++) {
        c[i] += given.ratio(k) * shared[k][i];
      }
    }
    return c;
  }

  double value() {
    return value;
  }

  /** The mean squared error if the ratios are known, per unit of the residual variance. */
  double squaredError() {
    return squaredError;
  }

  /**
   * The estimate with what not knowing the components adds to its error.
   *
   * <p>The error grows by {@code 2·ΣΣ Wkl·hk'Phl} with {@code hk = ck − Ak·w}, W the covariance of
   * the components: once for the estimate's own variation, once because the error at estimated
   * components is too small by as much. For fixed coefficients this is the adjusted covariance of
   * Kenward and Roger (1997). Degrees of freedom are {@code 2·M²/(g'Wg)}, g being the derivative of
   * the unadjusted error M, which for one combination of fixed coefficients are those of Kenward
   * and Roger. For a target with a random part they are taken as at least 2 (1 with two groups):
   * where its spread is estimated as zero the formula goes to zero and the interval to infinity,
   * while with 2 it covers about what it says from six groups on and less with fewer, see {@link
   * VarianceComponents#newValue}. Source: Kenward and Roger, Biometrics 53 (1997) 983–997; Harville
   * and Jeske, J. Am. Stat. Assoc. 87 (1992) 724–731.
   *
   * @param covariance of the components, residual last, for a residual variance of one
   * @param residualVariance the residual variance
   */
  StudentEstimate judged(double[][] covariance, double residualVariance) {
    int all = covariance.length;
    double[][][] h = new double[all][][];
    double[][] crossed = new double[all][];
    double[][] weights = weights();
    for (int k = 0; k < all; k++) {
      h[k] = differences(k, weights);
      crossed[k] = crossed(h[k], k == all - 1);
    }
    double[] gradient = gradient(weights);
    double added = 0;
    double spread = 0;
    for (int k = 0; k < all; k++) {
      for (int l = 0; l < all; l++) {
        boolean residual = k == all - 1 && l == all - 1;
        added += covariance[k][l] * product(h[k], h[l], crossed[k], crossed[l], residual);
        spread += covariance[k][l] * gradient[k] * gradient[l];
      }
    }
    double df = 2 * squaredError * squaredError / spread;
    double fewest = Math.min(FEWEST, given.blocks().size() - 1.0);
    return new StudentEstimate(
        value,
        Math.sqrt(residualVariance * (squaredError + 2 * Math.max(0, added))),
        target.isRandom() ? Math.max(fewest, df) : df);
  }

  /** The weights w of the data, in the bases of all groups. */
  private double[][] weights() {
    Blocks blocks = given.blocks();
    double[][] weights = new double[blocks.size()][];
    for (int b = 0; b < weights.length; b++) {
      weights[b] = given.solve(b, times(blocks.data(b), phiD));
      for (int i = 0; i < weights[b].length && b == target.block(); i++) {
        weights[b][i] += solved[i];
      }
    }
    return weights;
  }

  /** {@code hk} in the bases of all groups. */
  private double[][] differences(int k, double[][] weights) {
    Blocks blocks = given.blocks();
    boolean residual = k == blocks.components();
    double[][] h = new double[blocks.size()][];
    for (int b = 0; b < h.length; b++) {
      h[b] = residual ? weights[b].clone() : times(blocks.shape(b, k), weights[b]);
      for (int i = 0; i < h[b].length; i++) {
        double shared = b == target.block() && !residual ? target.shared()[k][i] : 0;
        h[b][i] = shared - h[b][i];
      }
    }
    return h;
  }

  /** {@code X'H⁻¹h}. */
  private double[] crossed(double[][] h, boolean residual) {
    Blocks blocks = given.blocks();
    double[] sum = new double[phiD.length];
    for (int b = 0; b < h.length; b++) {
      double[] kh = given.solve(b, h[b]);
      for (int i = 0; i < kh.length; i++) {
        for (int c = 0; c < sum.length; c++) {
          sum[c] += blocks.data(b)[i][c] * kh[i];
        }
      }
    }
    for (int c = 0; c < sum.length && residual; c++) {
      for (int d = 0; d < sum.length; d++) {
        sum[c] -= blocks.within()[c][d] * phiD[d];
      }
    }
    return sum;
  }

  /** {@code hk'Phl}. */
  private double product(
      double[][] hk, double[][] hl, double[] crossedK, double[] crossedL, boolean residual) {
    double sum = 0;
    for (int b = 0; b < hk.length; b++) {
      sum += dot(hk[b], given.solve(b, hl[b]));
    }
    sum -= dot(times(phi, crossedL), crossedK);
    if (residual) {
      sum += dot(times(given.blocks().within(), phiD), phiD);
    }
    return sum;
  }

  /** The derivative of the squared error by each component, {@code vk − 2ck'w + w'Akw}. */
  private double[] gradient(double[][] weights) {
    Blocks blocks = given.blocks();
    int components = blocks.components();
    double[] gradient = target.own().clone();
    for (int b = 0; b < blocks.size(); b++) {
      double[] w = weights[b];
      gradient[components] += dot(w, w);
      for (int k = 0; k < components; k++) {
        gradient[k] += dot(w, times(blocks.shape(b, k), w));
        if (b == target.block()) {
          gradient[k] -= 2 * dot(target.shared()[k], w);
        }
      }
    }
    gradient[components] += dot(times(blocks.within(), phiD), phiD);
    return gradient;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < b.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  private static double[] times(double[][] matrix, double[] vector) {
    double[] result = new double[matrix.length];
    for (int i = 0; i < matrix.length; i++) {
      for (int j = 0; j < vector.length; j++) {
        result[i] += matrix[i][j] * vector[j];
      }
    }
    return result;
  }
}
