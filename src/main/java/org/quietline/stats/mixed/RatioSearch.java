package org.quietline.stats.mixed;

import java.util.ArrayList;
import java.util.List;

/**
 * The ratios that make a likelihood as large as possible, the boundary included.
 *
 * <p>The deviance (minus twice the log likelihood, the residual variance profiled out) is looked at
 * on a coarse grid; from each of its low places Newton's method with exact derivatives goes down,
 * damped where the surface is not convex, each coordinate stopping at its boundary; the lowest end
 * counts. Source: Nocedal and Wright, Numerical Optimization (2006), 3.4 and 16.7.
 */
final class RatioSearch {
  private static final int MOST_STEPS = 200;
  private static final double CLOSE = 1e-8;

  private final Blocks blocks;
  private final RatioScale scale;
  private final Likelihood likelihood;

  private RatioSearch(Blocks blocks, RatioScale scale, Likelihood likelihood) {
    this.blocks = blocks;
    this.scale = scale;
    this.likelihood = likelihood;
  }

  static GivenRatios best(Blocks blocks, RatioScale scale, Likelihood likelihood) {
    RatioSearch search = new RatioSearch(blocks, scale, likelihood);
    double[] best = new double[scale.size()];
    double lowest = Double.POSITIVE_INFINITY;
    for (double[] start : search.lowPlaces()) {
      double[] end = search.descend(start);
      double value = search.deviance(end);
      if (value < lowest) {
        lowest = value;
        best = end;
      }
    }
    return GivenRatios.of(blocks, scale.ratios(scale.settled(best)));
  }

  private double deviance(double[] x) {
    return -2 * GivenRatios.of(blocks, scale.ratios(x)).logLikelihood(likelihood);
  }

  /** The points of the grid of starts that are not above their neighbours. */
  private List<double[]> lowPlaces() {
    int size = scale.size();
    int[] stride = new int[size + 1];
    stride[0] = 1;
    for (int c = 0; c < size; c++) {
      stride[c + 1] = stride[c] * scale.starts(c).length;
    }
    double[] values = new double[stride[size]];
    for (int i = 0; i < values.length; i++) {
      values[i] = deviance(point(i, stride));
    }
    List<double[]> low = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      boolean lowest = true;
      for (int c = 0; c < size; c++) {
        int place = i % stride[c + 1] / stride[c];
        lowest &= place == 0 || values[i] <= values[i - stride[c]];
        lowest &= place + 1 == scale.starts(c).length || values[i] <= values[i + stride[c]];
      }
      if (lowest) {
        low.add(point(i, stride));
      }
    }
    return low;
  }

  private double[] point(int index, int[] stride) {
    double[] x = new double[scale.size()];
    for (int c = 0; c < x.length; c++) {
      x[c] = scale.starts(c)[index % stride[c + 1] / stride[c]];
    }
    return x;
  }

  private double[] descend(double[] start) {
    double[] x = start;
    double value = deviance(x);
    for (int i = 0; i < MOST_STEPS; i++) {
      Slope slope = slope(x);
      boolean[] held = held(x, slope.gradient);
      double[] step = newtonStep(slope, held);
      double[] next = moved(x, step, 1);
      if (distance(x, next) < CLOSE) {
        return next;
      }
      double share = 1;
      double nextValue = deviance(next);
      while (!(nextValue
              <= value + 1e-4 * descent(slope.gradient, x, next) + 1e-13 * Math.abs(value))
          && share > 1e-12) {
        share /= 2;
        next = moved(x, step, share);
        nextValue = deviance(next);
      }
      x = next;
      value = nextValue;
    }
    return x;
  }

  private Slope slope(double[] x) {
    Traces traces = new Traces(GivenRatios.of(blocks, scale.ratios(x)));
    double[] byRatio = traces.gradient(likelihood);
    double[][] curvature = traces.curvature(likelihood);
    double[][] slopes = scale.slopes(x);
    double[][] second = scale.bends(x, byRatio);
    int size = scale.size();
    double[] gradient = new double[size];
    for (int i = 0; i < size; i++) {
      for (int k = 0; k < byRatio.length; k++) {
        gradient[i] += slopes[k][i] * byRatio[k];
        for (int j = 0; j < size; j++) {
          for (int l = 0; l < byRatio.length; l++) {
            second[i][j] += slopes[k][i] * curvature[k][l] * slopes[l][j];
          }
        }
      }
    }
    return new Slope(gradient, second);
  }

  /** Coordinates at their boundary that would leave it. */
  private boolean[] held(double[] x, double[] gradient) {
    boolean[] held = new boolean[x.length];
    for (int c = 0; c < x.length; c++) {
      held[c] = x[c] <= scale.least(c) && gradient[c] >= 0;
    }
    return held;
  }

  /** Newton's step in the free coordinates, steeper where the surface is not convex. */
  private static double[] newtonStep(Slope slope, boolean[] held) {
    int n = held.length;
    double size = 0;
    for (int c = 0; c < n; c++) {
      size = Math.max(size, Math.abs(slope.second[c][c]));
    }
    double damping = 0;
    for (int i = 0; i < MOST_STEPS; i++) {
      double[][] matrix = new double[n][n];
      double[] right = new double[n];
      for (int c = 0; c < n; c++) {
        for (int d = 0; d < n; d++) {
          matrix[c][d] = held[c] || held[d] ? 0 : slope.second[c][d];
        }
        matrix[c][c] = held[c] ? 1 : matrix[c][c] + damping;
        right[c] = held[c] ? 0 : -slope.gradient[c];
      }
      SymmetricFactor factor = SymmetricFactor.inPlace(matrix);
      if (factor.isDefinite(0)) {
        return factor.solve(right);
      }
      damping = damping == 0 ? 1e-3 * size + 1e-12 : 4 * damping;
    }
    return new double[n];
  }

  /** A step cut where a coordinate would pass its boundary, and at five units. */
  private double[] moved(double[] x, double[] step, double share) {
    double[] next = new double[x.length];
    for (int c = 0; c < x.length; c++) {
      double move = Math.max(-5, Math.min(5, share * step[c]));
      next[c] = Math.max(scale.least(c), x[c] + move);
    }
    return next;
  }

  private static double descent(double[] gradient, double[] x, double[] next) {
    double sum = 0;
    for (int c = 0; c < x.length; c++) {
      sum += gradient[c] * (next[c] - x[c]);
    }
    return Math.min(0, sum);
  }

  private static double distance(double[] x, double[] next) {
    double most = 0;
    for (int c = 0; c < x.length; c++) {
      most = Math.max(most, Math.abs(next[c] - x[c]) / (1 + Math.abs(x[c])));
    }
    return most;
  }

  private static final class Slope {
    private final double[] gradient;
    private final double[][] second;

    private Slope(double[] gradient, double[][] second) {
      this.gradient = gradient;
      this.second = second;
    }
  }
}
