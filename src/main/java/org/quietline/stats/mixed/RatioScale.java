package org.quietline.stats.mixed;

import java.util.Arrays;

/** Coordinates in which the likelihood is searched, and the ratios they stand for. */
interface RatioScale {
  /** A relative deviation below this is none. */
  double SETTLED = 1e-6;

  /** How many coordinates there are. */
  int size();

  /** The least that a coordinate may be; zero is the boundary. */
  double least(int coordinate);

  /** Where a search may start along a coordinate, ascending. */
  double[] starts(int coordinate);

  /** A point with what is zero but for the search's tolerance at zero. */
  default double[] settled(double[] x) {
    return x;
  }

  /** A point well inside, where every effect matters. */
  double[] typical();

  double[] ratios(double[] x);

  /** By how much each ratio (first index) changes with each coordinate. */
  double[][] slopes(double[] x);

  /** The second derivatives of the ratios, weighted and added up over the ratios. */
  double[][] bends(double[] x, double[] weights);

  /**
   * Ratios that vary freely and are not below zero: {@code x = log(1 + θ·s)}, s being the mean
   * number of values that share an effect. The deviance is smooth at zero and close to a sum of
   * exponentials far from it.
   */
  static RatioScale free(Blocks blocks) {
    double[] sizes = sizes(blocks);
    return new RatioScale() {
      @Override
      public int size() {
        return sizes.length;
      }

      @Override
      public double least(int coordinate) {
        return 0;
      }

      @Override
      public double[] starts(int coordinate) {
        return new double[] {0, 0.3, 1, 2.5, 5, 9};
      }

      @Override
      public double[] typical() {
        return ones(sizes.length);
      }

      @Override
      public double[] ratios(double[] x) {
        double[] ratios = new double[sizes.length];
        Arrays.setAll(ratios, k -> Math.expm1(x[k]) / sizes[k]);
        return ratios;
      }

      @Override
      public double[][] slopes(double[] x) {
        return bends(x, ones(sizes.length));
      }

      @Override
      public double[][] bends(double[] x, double[] weights) {
        double[][] bends = new double[sizes.length][sizes.length];
        for (int k = 0; k < sizes.length; k++) {
          bends[k][k] = weights[k] * Math.exp(x[k]) / sizes[k];
        }
        return bends;
      }
    };
  }

  /**
   * The three ratios of a covariance matrix of two effects (first variance, second variance,
   * covariance) by its Cholesky factor, of which no sign matters, so that no matrix outside the
   * cone is met. On the cone's boundary a diagonal entry is zero; there the deviance is flat in it
   * whether or not it is least, so the search must be free to pass through.
   */
  static RatioScale matrix(Blocks blocks) {
    double first = 1 / Math.sqrt(sizes(blocks)[0]);
    double second = 1 / Math.sqrt(sizes(blocks)[1]);
    return new RatioScale() {
      @Override
      public int size() {
        return 3;
      }

      @Override
      public double least(int coordinate) {
        return Double.NEGATIVE_INFINITY;
      }

      @Override
      public double[] starts(int coordinate) {
        return coordinate == 1 ? new double[] {-3, -0.4, 0.4, 3} : new double[] {0.2, 1, 4};
      }

      @Override
      public double[] settled(double[] x) {
        double height = Math.abs(x[0]) < SETTLED ? 0 : x[0];
        double shared = height == 0 && Math.abs(x[1]) < SETTLED ? 0 : x[1];
        return new double[] {height, shared, Math.abs(x[2]) < SETTLED ? 0 : x[2]};
      }

      @Override
      public double[] typical() {
        return new double[] {1, 0, 1};
      }

      @Override
      public double[] ratios(double[] x) {
        return new double[] {
          first * first * x[0] * x[0],
          second * second * (x[1] * x[1] + x[2] * x[2]),
          first * second * x[0] * x[1]
        };
      }

      @Override
      public double[][] slopes(double[] x) {
        double both = first * second;
        return new double[][] {
          {2 * first * first * x[0], 0, 0},
          {0, 2 * second * second * x[1], 2 * second * second * x[2]},
          {both * x[1], both * x[0], 0}
        };
      }

      @Override
      public double[][] bends(double[] x, double[] weights) {
        double both = first * second * weights[2];
        double square = 2 * second * second * weights[1];
        return new double[][] {
          {2 * first * first * weights[0], both, 0}, {both, square, 0}, {0, 0, square}
        };
      }
    };
  }

  private static double[] sizes(Blocks blocks) {
    double[] sizes = new double[blocks.components()];
    int rows = 0;
    for (int b = 0; b < blocks.size(); b++) {
      rows += blocks.data(b).length;
      for (int k = 0; k < sizes.length; k++) {
        double[][] shape = blocks.shape(b, k);
        for (int i = 0; i < shape.length; i++) {
          sizes[k] += shape[i][i];
        }
      }
    }
    for (int k = 0; k < sizes.length; k++) {
      sizes[k] /= rows;
    }
    return sizes;
  }

  private static double[] ones(int n) {
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    return ones;
  }
}
