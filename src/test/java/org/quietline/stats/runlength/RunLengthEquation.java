package org.quietline.stats.runlength;

import java.util.Arrays;
import java.util.TreeSet;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Sum;

/**
 * The integral equation of {@link RunLength} solved at Gauss–Legendre points of panels.
 *
 * <p>Limits of single values cut the integral off inside a panel; the rest of that panel is then
 * integrated on its own, with the run length interpolated from the panel's points. Panels meet
 * where the cut reaches an end of the limits, for the run length has a bend there.
 */
final class RunLengthEquation {
  private static final int POINTS = 12;
  private static final double LONGEST_PANEL = 2.5;
  private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(POINTS);
  private static final double[] INTERPOLATION = interpolationWeights();

  private final double reach;
  private final double weight;
  private final double shift;
  private final double[] edges;
  private final double[] solution;

  RunLengthEquation(double width, double weight, double weightedWidth, double shift) {
    this.reach = weight * width;
    this.weight = weight;
    this.shift = shift;
    this.edges = edges(weightedWidth * Math.sqrt(weight / (2 - weight)));
    int size = (edges.length - 1) * POINTS;
    double[][] system = new double[size][];
    for (int i = 0; i < size; i++) {
      double[] row = row(point(i / POINTS, i % POINTS));
      for (int j = 0; j < size; j++) {
        row[j] = (i == j ? 1 : 0) - row[j];
      }
      system[i] = row;
    }
    double[] ones = new double[size];
    Arrays.fill(ones, 1);
    this.solution =
        new LUDecomposition(new Array2DRowRealMatrix(system, false))
            .getSolver()
            .solve(new ArrayRealVector(ones, false))
            .toArray();
  }

  /** The run length from the centre. */
  double atCentre() {
    return 1 + Sum.ofProducts(row(0), solution);
  }

  private double[] edges(double limit) {
    TreeSet<Double> bends = new TreeSet<>();
    bends.add(-limit);
    bends.add(limit);
    double first = (limit - reach) / (1 - weight);
    for (double bend :
        new double[] {first, (first - reach) / (1 - weight), (first + reach) / (1 - weight)}) {
      if (Math.abs(bend) < limit) {
        bends.add(bend);
        bends.add(-bend);
      }
    }
    TreeSet<Double> all = new TreeSet<>(bends);
    double from = -limit;
    for (double to : bends.tailSet(from, false)) {
      int parts = (int) Math.ceil((to - from) / (LONGEST_PANEL * weight));
      for (int i = 1; i < parts; i++) {
        all.add(from + (to - from) * i / parts);
      }
      from = to;
    }
    return all.stream().mapToDouble(e -> e).toArray();
  }

  private double point(int panel, int j) {
    return middle(edges[panel], edges[panel + 1])
        + half(edges[panel], edges[panel + 1]) * RULE.getPoint(j);
  }

  /** The weights of the run lengths at all points in the integral for a mean that stands at z. */
  private double[] row(double z) {
    double[] row = new double[(edges.length - 1) * POINTS];
    double kept = (1 - weight) * z;
    for (int panel = 0; panel < edges.length - 1; panel++) {
      double from = Math.max(edges[panel], kept - reach);
      double to = Math.min(edges[panel + 1], kept + reach);
      if (from == edges[panel] && to == edges[panel + 1]) {
        addWhole(row, panel, kept);
      } else if (from < to) {
        addPart(row, panel, kept, from, to);
      }
    }
    return row;
  }

  private void addWhole(double[] row, int panel, double kept) {
    double half = half(edges[panel], edges[panel + 1]);
    for (int j = 0; j < POINTS; j++) {
      row[panel * POINTS + j] = half * RULE.getWeight(j) * kernel(point(panel, j), kept);
    }
  }

  private void addPart(double[] row, int panel, double kept, double from, double to) {
    for (int q = 0; q < POINTS; q++) {
      double y = middle(from, to) + half(from, to) * RULE.getPoint(q);
      double mass = half(from, to) * RULE.getWeight(q) * kernel(y, kept);
      double local =
          (y - middle(edges[panel], edges[panel + 1])) / half(edges[panel], edges[panel + 1]);
      double[] basis = interpolation(local);
      for (int j = 0; j < POINTS; j++) {
        row[panel * POINTS + j] += mass * basis[j];
      }
    }
  }

  private double kernel(double y, double kept) {
    return Normal.density((y - kept) / weight - shift) / weight;
  }

  /** Lagrange's basis at a place of the panel from −1 to 1, in barycentric form. */
  private static double[] interpolation(double local) {
    double[] basis = new double[POINTS];
    double total = 0;
    for (int j = 0; j < POINTS; j++) {
      double distance = local - RULE.getPoint(j);
      if (distance == 0) {
        Arrays.fill(basis, 0);
        basis[j] = 1;
        return basis;
      }
      basis[j] = INTERPOLATION[j] / distance;
      total += basis[j];
    }
    for (int j = 0; j < POINTS; j++) {
      basis[j] /= total;
    }
    return basis;
  }

  private static double[] interpolationWeights() {
    double[] weights = new double[POINTS];
    for (int j = 0; j < POINTS; j++) {
      weights[j] = 1;
      for (int k = 0; k < POINTS; k++) {
        if (k != j) {
          weights[j] /= RULE.getPoint(j) - RULE.getPoint(k);
        }
      }
    }
    return weights;
  }

  private static double middle(double from, double to) {
    return (from + to) / 2;
  }

  private static double half(double from, double to) {
    return (to - from) / 2;
  }
}
