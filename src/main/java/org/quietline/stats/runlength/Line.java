package org.quietline.stats.runlength;

import java.util.Arrays;
import java.util.TreeSet;
import org.quietline.stats.distribution.Normal;

/**
 * A stretch of the number line with Gauss–Legendre points in panels, on which a smooth function is
 * known by its values at the points.
 *
 * <p>A panel that is wholly integrated over uses Gauss's weights; of a panel that is cut, the part
 * is integrated on its own with the function interpolated from the panel's points. Panels should
 * meet where the function has a bend. With the normal density as the other factor both are right to
 * about 1e-12 for panels of at most 2.5 of its deviations.
 */
final class Line {
  private static final double LONGEST_PANEL = 2.5;
  private static final double FAR = 14;
  private static final GaussRule FEW = new GaussRule(4);
  private static final GaussRule SOME = new GaussRule(6);
  private static final GaussRule MORE = new GaussRule(8);
  private static final GaussRule MOST = new GaussRule(12);

  private final double scale;
  private final double[] edges;
  private final GaussRule[] rules;
  private final int[] first;
  private final double[] nodes;

  /**
   * Lays out panels.
   *
   * @param scale the deviation of the normal densities that will be integrated
   * @param edges the ends and the bends, ascending
   */
  Line(double scale, double... edges) {
    this.scale = scale;
    this.edges = panels(edges, LONGEST_PANEL * scale);
    int count = this.edges.length - 1;
    this.rules = new GaussRule[count];
    this.first = new int[count + 1];
    for (int panel = 0; panel < count; panel++) {
      rules[panel] = rule(length(panel) / scale);
      first[panel + 1] = first[panel] + rules[panel].size();
    }
    this.nodes = new double[first[count]];
    for (int panel = 0; panel < count; panel++) {
      for (int j = 0; j < rules[panel].size(); j++) {
        nodes[first[panel] + j] = middle(panel) + length(panel) / 2 * rules[panel].point(j);
      }
    }
  }

  /**
   * The ends of a stretch and those of the given bends that lie within it.
   *
   * @param from the lower end
   * @param to the upper end
   * @param bends places, in any order
   * @return the edges, ascending
   */
  static double[] edges(double from, double to, double... bends) {
    double least = 1e-9 * (to - from);
    TreeSet<Double> all = new TreeSet<>();
    all.add(from);
    all.add(to);
    for (double bend : bends) {
      if (bend > from
          && bend < to
          && bend - all.floor(bend) > least
          && all.ceiling(bend) - bend > least) {
        all.add(bend);
      }
    }
    return all.stream().mapToDouble(e -> e).toArray();
  }

  int size() {
    return nodes.length;
  }

  double node(int i) {
    return nodes[i];
  }

  /**
   * Adds to a row the weights of the values at the points in the integral of the function times a
   * normal density, from one place to another.
   *
   * @param row where the weights are added
   * @param offset the place of the first point in the row
   * @param from the lower end of the integral; what lies outside the line is left out
   * @param to the upper end of the integral
   * @param location the mean of the normal density
   */
  void add(double[] row, int offset, double from, double to, double location) {
    add(row, offset, from, to, location, FAR);
  }

  /**
   * The same without what lies beyond another distance from the mean.
   *
   * @param far the distance, in deviations of the density
   */
  void add(double[] row, int offset, double from, double to, double location, double far) {
    double low = Math.max(from, location - far * scale);
    double high = Math.min(to, location + far * scale);
    for (int panel = 0; panel < rules.length; panel++) {
      double start = Math.max(edges[panel], low);
      double end = Math.min(edges[panel + 1], high);
      if (start < end) {
        if (from <= edges[panel] && to >= edges[panel + 1]) {
          addWhole(row, offset + first[panel], panel, location);
        } else {
          addPart(row, offset + first[panel], panel, start, end, location);
        }
      }
    }
  }

  private void addWhole(double[] row, int at, int panel, double location) {
    GaussRule rule = rules[panel];
    double half = length(panel) / 2;
    for (int j = 0; j < rule.size(); j++) {
      row[at + j] += half * rule.weight(j) * density(nodes[first[panel] + j], location);
    }
  }

  private void addPart(double[] row, int at, int panel, double from, double to, double location) {
    GaussRule rule = rules[panel];
    double half = (to - from) / 2;
    double[] basis = new double[rule.size()];
    for (int q = 0; q < MOST.size(); q++) {
      double y = (from + to) / 2 + half * MOST.point(q);
      double mass = half * MOST.weight(q) * density(y, location);
      rule.interpolate((y - middle(panel)) / (length(panel) / 2), basis);
      for (int j = 0; j < basis.length; j++) {
        row[at + j] += mass * basis[j];
      }
    }
  }

  /** The lower end. */
  double low() {
    return edges[0];
  }

  /** The upper end. */
  double high() {
    return edges[edges.length - 1];
  }

  /** The first edge of a panel that is not below a place on the line. */
  double edgeFrom(double place) {
    int at = Arrays.binarySearch(edges, place);
    return edges[at >= 0 ? at : -at - 1];
  }

  /** The last edge of a panel that is not above a place on the line. */
  double edgeTo(double place) {
    int at = Arrays.binarySearch(edges, place);
    return edges[at >= 0 ? at : -at - 2];
  }

  /**
   * A part of one panel.
   *
   * @param from where it begins
   * @param to where it ends, in the same panel
   * @return the part
   */
  Part part(double from, double to) {
    int at = Arrays.binarySearch(edges, from);
    return new Part(at >= 0 ? at : -at - 2, from, to);
  }

  /** A part of a panel, kept: quadrature points at which the function is interpolated. */
  final class Part {
    private final int start;
    private final double half;
    private final double[] points = new double[MOST.size()];
    private final double[][] basis;

    private Part(int panel, double from, double to) {
      this.start = first[panel];
      this.half = (to - from) / 2;
      this.basis = new double[points.length][rules[panel].size()];
      for (int q = 0; q < points.length; q++) {
        points[q] = (from + to) / 2 + half * MOST.point(q);
        rules[panel].interpolate((points[q] - middle(panel)) / (length(panel) / 2), basis[q]);
      }
    }

    int size() {
      return points.length;
    }

    double point(int q) {
      return points[q];
    }

    /** The weights of the function at the quadrature points in the integral times a density. */
    double[] masses(double location) {
      double[] masses = new double[points.length];
      for (int q = 0; q < masses.length; q++) {
        masses[q] = half * MOST.weight(q) * density(points[q], location);
      }
      return masses;
    }

    /** Adds the weight of a quadrature point to those of the panel's points. */
    void spread(int q, double mass, double[] row, int offset) {
      for (int j = 0; j < basis[q].length; j++) {
        row[offset + start + j] += mass * basis[q][j];
      }
    }
  }

  private double density(double y, double location) {
    return Normal.density((y - location) / scale) / scale;
  }

  private double length(int panel) {
    return edges[panel + 1] - edges[panel];
  }

  private double middle(int panel) {
    return (edges[panel] + edges[panel + 1]) / 2;
  }

  private static GaussRule rule(double length) {
    if (length <= 0.2) {
      return FEW;
    }
    if (length <= 0.35) {
      return SOME;
    }
    return length <= 0.7 ? MORE : MOST;
  }

  private static double[] panels(double[] bends, double longest) {
    double[] all = {bends[0]};
    for (int i = 1; i < bends.length; i++) {
      int parts = Math.max(1, (int) Math.ceil((bends[i] - bends[i - 1]) / longest));
      int start = all.length;
      all = Arrays.copyOf(all, start + parts);
      for (int part = 1; part < parts; part++) {
        all[start + part - 1] = bends[i - 1] + (bends[i] - bends[i - 1]) * part / parts;
      }
      all[start + parts - 1] = bends[i];
    }
    return all;
  }
}
