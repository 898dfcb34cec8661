package org.quietline.stats.mixed;

/**
 * The traces and quadratic forms that derivatives of the likelihoods and the information about the
 * variance components are made of, at given ratios.
 *
 * <p>Index {@code k} runs over the components and ends with the residual, whose matrix A is the
 * identity. Written for a residual variance of one. Source: Searle, Casella and McCulloch (1992),
 * 6.6 and appendix M.7; Kenward and Roger, Biometrics 53 (1997) 983–997.
 */
final class Traces {
  private final GivenRatios given;
  private final int components;
  private final double[][] phi;

  /** {@code X'H⁻¹AkH⁻¹X}. */
  private final double[][][] m;

  /** {@code tr(H⁻¹Ak)} and {@code tr(H⁻¹AkH⁻¹Al)}. */
  private final double[] plain;

  private final double[][] plainPairs;

  /** The same with P in the place of H⁻¹. */
  private final double[] restricted;

  private final double[][] restrictedPairs;

  /** {@code y'PAkPy} and {@code y'PAkPAlPy}, without the residual. */
  private final double[] squares;

  private final double[][] squarePairs;

  /** {@code X'H⁻¹AkPy}. */
  private final double[][] score;

  Traces(GivenRatios given) {
    this.given = given;
    Blocks blocks = given.blocks();
    this.components = blocks.components();
    int p = blocks.fixed().columns();
    this.phi = given.coefficientCovariance();
    int all = components + 1;
    this.m = new double[all][p][p];
    this.plain = new double[all];
    this.plainPairs = new double[all][all];
    this.restricted = new double[all];
    this.restrictedPairs = new double[all][all];
    this.squares = new double[components];
    this.squarePairs = new double[components][components];
    this.score = new double[components][p];
    for (int b = 0; b < blocks.size(); b++) {
      addBlock(b, p);
    }
    addUnseen(p);
    finish(p);
  }

  private void addBlock(int block, int p) {
    double[][] inverse = given.inverse(block);
    int r = inverse.length;
    double[][] data = given.blocks().data(block);
    double[] left = given.left(block);
    // a row for each basis vector: K·X, and K·(what is left) in the last column
    double[][] u = new double[r][p + 1];
    for (int i = 0; i < r; i++) {
      for (int j = 0; j < r; j++) {
        for (int c = 0; c < p; c++) {
          u[i][c] += inverse[i][j] * data[j][c];
        }
        u[i][p] += inverse[i][j] * left[j];
      }
    }
    double[][][] ka = new double[components + 1][][];
    double[][][] au = new double[components + 1][][];
    double[][][] kau = new double[components + 1][][];
    for (int k = 0; k <= components; k++) {
      boolean identity = k == components;
      ka[k] = identity ? inverse : Blocks.product(inverse, given.blocks().shape(block, k));
      au[k] = identity ? u : Blocks.product(given.blocks().shape(block, k), u);
      kau[k] = Blocks.product(inverse, au[k]);
    }
    for (int k = 0; k <= components; k++) {
      addSingle(k, p, u, ka[k], au[k]);
      for (int l = 0; l <= k; l++) {
        double pairs = trace(ka[k], ka[l]);
        plainPairs[k][l] += pairs;
        restrictedPairs[k][l] += pairs - 2 * traceWithPhi(au[k], kau[l], p);
        for (int i = 0; i < r && k < components; i++) {
          squarePairs[k][l] += au[k][i][p] * kau[l][i][p];
        }
      }
    }
  }

  private void addSingle(int k, int p, double[][] u, double[][] ka, double[][] au) {
    for (int i = 0; i < u.length; i++) {
      plain[k] += ka[i][i];
      for (int c = 0; c < p; c++) {
        for (int d = 0; d < p; d++) {
          m[k][c][d] += u[i][c] * au[i][d];
        }
      }
      if (k < components) {
        squares[k] += u[i][p] * au[i][p];
        for (int c = 0; c < p; c++) {
          score[k][c] += u[i][c] * au[i][p];
        }
      }
    }
  }

  /** The part that no basis sees, where H and A of the residual are the identity. */
  private void addUnseen(int p) {
    Blocks blocks = given.blocks();
    double[][] within = blocks.within();
    int k = components;
    plain[k] += blocks.unseen();
    plainPairs[k][k] += blocks.unseen();
    restrictedPairs[k][k] += blocks.unseen();
    for (int c = 0; c < p; c++) {
      for (int d = 0; d < p; d++) {
        m[k][c][d] += within[c][d];
        restrictedPairs[k][k] -= 2 * phi[c][d] * within[d][c];
      }
    }
  }

  private void finish(int p) {
    double[][][] phiM = new double[components + 1][][];
    for (int k = 0; k <= components; k++) {
      phiM[k] = Blocks.product(phi, m[k]);
      restricted[k] = plain[k];
      for (int c = 0; c < p; c++) {
        restricted[k] -= phiM[k][c][c];
      }
    }
    for (int k = 0; k <= components; k++) {
      for (int l = 0; l <= k; l++) {
        restrictedPairs[k][l] += trace(phiM[k], phiM[l]);
        restrictedPairs[l][k] = restrictedPairs[k][l];
        plainPairs[l][k] = plainPairs[k][l];
      }
    }
    for (int k = 0; k < components; k++) {
      for (int l = 0; l <= k; l++) {
        for (int c = 0; c < p; c++) {
          for (int d = 0; d < p; d++) {
            squarePairs[k][l] -= score[k][c] * phi[c][d] * score[l][d];
          }
        }
        squarePairs[l][k] = squarePairs[k][l];
      }
    }
  }

  private static double trace(double[][] a, double[][] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      for (int j = 0; j < a.length; j++) {
        sum += a[i][j] * b[j][i];
      }
    }
    return sum;
  }

  private double traceWithPhi(double[][] a, double[][] b, int p) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      for (int c = 0; c < p; c++) {
        for (int d = 0; d < p; d++) {
          sum += phi[d][c] * a[i][c] * b[i][d];
        }
      }
    }
    return sum;
  }

  /** The derivative of minus twice the profiled log likelihood by each ratio. */
  double[] gradient(Likelihood likelihood) {
    double divisor = likelihood.divisor(given.blocks());
    double[] traces = likelihood == Likelihood.RESTRICTED ? restricted : plain;
    double[] gradient = new double[components];
    for (int k = 0; k < components; k++) {
      gradient[k] = traces[k] - divisor * squares[k] / given.quadraticForm();
    }
    return gradient;
  }

  /** Its second derivatives. */
  double[][] curvature(Likelihood likelihood) {
    double divisor = likelihood.divisor(given.blocks());
    double[][] traces = likelihood == Likelihood.RESTRICTED ? restrictedPairs : plainPairs;
    double q = given.quadraticForm();
    double[][] curvature = new double[components][components];
    for (int k = 0; k < components; k++) {
      for (int l = 0; l < components; l++) {
        curvature[k][l] =
            divisor * (2 * squarePairs[k][l] / q - (squares[k] / q) * (squares[l] / q))
                - traces[k][l];
      }
    }
    return curvature;
  }

  /** Expected information about the components, residual last, for a residual variance of one. */
  double[][] information() {
    double[][] information = new double[components + 1][components + 1];
    for (int k = 0; k <= components; k++) {
      for (int l = 0; l <= components; l++) {
        information[k][l] = 0.5 * restrictedPairs[k][l];
      }
    }
    return information;
  }
}
