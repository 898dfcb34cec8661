package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * A slow second opinion on lines of windows that differ by chance: whole covariance matrices, and
 * the ratios of the spread of heights and slopes to the scatter averaged over on a plain grid of
 * midpoints of {@code (2/π)·arctan ρ}, where the prior of the first is flat and that of the second
 * grows from nothing in proportion.
 */
final class SlowLines {
  private static final int STEPS = 40;

  private final List<Node> nodes = new ArrayList<>();
  private final double[] days;
  private final int[] windows;
  private final int degreesOfFreedom;

  /** One pair of ratios: what it counts for and the lines it gives. */
  private record Node(
      double log,
      double heights,
      double slopes,
      RealMatrix inverse,
      RealMatrix design,
      RealMatrix information,
      RealVector coefficients,
      RealVector rest,
      double variance) {}

  /**
   * Lines.
   *
   * @param span the days that lines are looked at over
   * @param columns what else may move results, one number a result each
   */
  SlowLines(double[] days, double[] values, int[] windows, double span, double[]... columns) {
    this.days = days.clone();
    this.windows = windows.clone();
    int n = days.length;
    RealMatrix design = new Array2DRowRealMatrix(n, 2 + columns.length);
    for (int i = 0; i < n; i++) {
      design.setEntry(i, 0, 1);
      design.setEntry(i, 1, days[i]);
      for (int k = 0; k < columns.length; k++) {
        design.setEntry(i, 2 + k, columns[k][i]);
      }
    }
    degreesOfFreedom = n - 2 - columns.length;
    for (int i = 0; i < STEPS; i++) {
      for (int j = 0; j < STEPS; j++) {
        double ofSlopes = (j + 0.5) / STEPS;
        double heights = Math.tan(Math.PI / 2 * (i + 0.5) / STEPS);
        double slopes = Math.tan(Math.PI / 2 * ofSlopes) / (span / 2);
        nodes.add(node(design, new ArrayRealVector(values), heights, slopes, 2 * ofSlopes));
      }
    }
  }

  private Node node(
      RealMatrix design, RealVector values, double heights, double slopes, double prior) {
    int n = days.length;
    RealMatrix covariance = new Array2DRowRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double same =
            windows[i] == windows[j] ? heights * heights + slopes * slopes * days[i] * days[j] : 0;
        covariance.setEntry(i, j, same + (i == j ? 1 : 0));
      }
    }
    CholeskyDecomposition whole = factor(covariance);
    RealMatrix inverse = whole.getSolver().getInverse();
    CholeskyDecomposition fixed = factor(design.transpose().multiply(inverse).multiply(design));
    RealMatrix information = fixed.getSolver().getInverse();
    RealVector coefficients =
        information.operate(design.transpose().operate(inverse.operate(values)));
    RealVector rest = values.subtract(design.operate(coefficients));
    double squares = rest.dotProduct(inverse.operate(rest));
    double log =
        -0.5 * Math.log(whole.getDeterminant())
            - 0.5 * Math.log(fixed.getDeterminant())
            - degreesOfFreedom / 2.0 * Math.log(squares)
            + Math.log(prior);
    return new Node(
        log,
        heights,
        slopes,
        inverse,
        design,
        information,
        coefficients,
        rest,
        squares / degreesOfFreedom);
  }

  private static CholeskyDecomposition factor(RealMatrix matrix) {
    return new CholeskyDecomposition(matrix.add(matrix.transpose()).scalarMultiply(0.5));
  }

  /** The root of the mean residual variance. */
  double residualDeviation() {
    return Math.sqrt(mean(Node::variance));
  }

  int degreesOfFreedom() {
    return degreesOfFreedom;
  }

  /** A further result of a window, all columns at zero. */
  Known valueOf(int window, double day) {
    RealVector row = row();
    row.setEntry(0, 1);
    row.setEntry(1, day);
    return new Known(row, window, 1, day, 1);
  }

  /** The slope of a window. */
  Known slopeOf(int window) {
    RealVector row = row();
    row.setEntry(1, 1);
    return new Known(row, window, 0, 1, 0);
  }

  /** What a column does for one unit of it. */
  Known column(int index) {
    RealVector row = row();
    row.setEntry(2 + index, 1);
    return new Known(row, -1, 0, 0, 0);
  }

  private RealVector row() {
    return new ArrayRealVector(nodes.get(0).design().getColumnDimension());
  }

  private double mean(ToDoubleFunction<Node> of) {
    double highest = nodes.stream().mapToDouble(Node::log).max().orElseThrow();
    double sum = 0;
    double weights = 0;
    for (Node node : nodes) {
      double weight = Math.exp(node.log() - highest);
      if (weight > 1e-12) {
        sum += weight * of.applyAsDouble(node);
        weights += weight;
      }
    }
    return sum / weights;
  }

  /** A sum of coefficients and of a window's own height and slope, as it is known. */
  final class Known {
    private final RealVector row;
    private final int window;
    private final double ofHeight;
    private final double ofSlope;
    private final double scatter;

    private Known(RealVector row, int window, double ofHeight, double ofSlope, double scatter) {
      this.row = row;
      this.window = window;
      this.ofHeight = ofHeight;
      this.ofSlope = ofSlope;
      this.scatter = scatter;
    }

    double mean() {
      return SlowLines.this.mean(this::middle);
    }

    double chanceBelow(double x) {
      TDistribution student = new TDistribution(degreesOfFreedom);
      return SlowLines.this.mean(
          n -> student.cumulativeProbability((x - middle(n)) / Math.sqrt(variance(n))));
    }

    /** The value with a chance below it, looked for within so far from the middle. */
    double quantile(double chance, double reach) {
      UnivariateFunction off = x -> chanceBelow(x) - chance;
      return new BrentSolver(1e-9).solve(100, off, mean() - reach, mean() + reach);
    }

    /** With the ratios of the window's own height and slope to each result. */
    private RealVector shared(Node node) {
      RealVector shared = new ArrayRealVector(days.length);
      for (int i = 0; i < days.length; i++) {
        if (windows[i] == window) {
          shared.setEntry(
              i,
              node.heights() * node.heights() * ofHeight
                  + node.slopes() * node.slopes() * ofSlope * days[i]);
        }
      }
      return shared;
    }

    private double middle(Node node) {
      return row.dotProduct(node.coefficients())
          + shared(node).dotProduct(node.inverse().operate(node.rest()));
    }

    private double variance(Node node) {
      RealVector shared = shared(node);
      RealVector told = node.inverse().operate(shared);
      boolean own = window >= 0;
      double before =
          own ? Math.pow(node.heights() * ofHeight, 2) + Math.pow(node.slopes() * ofSlope, 2) : 0;
      RealVector left = row.subtract(node.design().transpose().operate(told));
      double unscaled =
          before
              - shared.dotProduct(told)
              + left.dotProduct(node.information().operate(left))
              + scatter;
      return node.variance() * unscaled;
    }
  }
}
