package org.quietline.stats.mixed;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;

/**
 * Values against time in groups, each of which has a line of its own; prepared once for many looks.
 *
 * <p>Fixed part: intercept, slope, and the coefficients of declared regressors.
 */
public final class GroupedPoints {
  private final FixedPart fixed;
  private final double[] times;
  private final double[] roots;
  private final double middle;
  private final int regressors;
  private final List<int[]> rows;
  private final List<Integer> labels;
  private final Blocks plain;

  private GroupedPoints(
      FixedPart fixed, double[] times, double[] roots, List<Integer> labels, List<int[]> rows) {
    this.fixed = fixed;
    this.times = times;
    this.roots = roots;
    this.middle = Centred.of(times).mean();
    this.regressors = fixed.columns() - 2;
    this.rows = rows;
    this.labels = labels;
    this.plain = blocks(LineSpread.CORRELATED, 0);
  }

  /**
   * Takes points.
   *
   * @param times the times or other abscissas, finite, not all equal
   * @param values as many values, finite
   * @param groups as many labels of groups, in any order
   * @param regressors columns of declared regressors, as long as the values
   * @return the points
   * @throws IllegalArgumentException if there are fewer than four points or fewer than two groups,
   *     lengths differ, a number is not usable, all times are equal, or a regressor is a
   *     combination of the others
   */
  public static GroupedPoints of(
      double[] times, double[] values, int[] groups, double[]... regressors) {
    return of(new Fewest(4, 2), equal(values), times, values, groups, regressors);
  }

  /**
   * Takes points that may be of one group only, for {@link LineOutlook}.
   *
   * @param times the times or other abscissas, finite, not all equal
   * @param values as many values, finite
   * @param groups as many labels of groups, in any order
   * @param regressors columns of declared regressors, as long as the values
   * @return the points
   * @throws IllegalArgumentException if there are fewer than three points, lengths differ, a number
   *     is not usable, all times are equal, or a regressor is a combination of the others
   */
  public static GroupedPoints ofOneOrMore(
      double[] times, double[] values, int[] groups, double[]... regressors) {
    return of(new Fewest(3, 1), equal(values), times, values, groups, regressors);
  }

  /**
   * Takes points that scatter unequally about their lines, of one group or more, for {@link
   * LineOutlook}. A residual deviation is that of a value of weight one.
   *
   * @param weights as many as values: the residual variance of a value of weight one over that of
   *     this value, above zero
   * @param times the times or other abscissas, finite, not all equal
   * @param values the values, finite
   * @param groups as many labels of groups, in any order
   * @param regressors columns of declared regressors, as long as the values
   * @return the points
   * @throws IllegalArgumentException if there are fewer than three points, lengths differ, a number
   *     is not usable, all times are equal, or a regressor is a combination of the others
   */
  public static GroupedPoints weighted(
      double[] weights, double[] times, double[] values, int[] groups, double[]... regressors) {
    if (weights.length != values.length) {
      throw new IllegalArgumentException(
          values.length + " values but " + weights.length + " weights");
    }
    double[] roots = new double[weights.length];
    for (int i = 0; i < weights.length; i++) {
      Require.positive(weights[i], "weight");
      roots[i] = Math.sqrt(weights[i]);
    }
    return of(new Fewest(3, 1), roots, times, values, groups, regressors);
  }

  private static double[] equal(double[] values) {
    double[] roots = new double[values.length];
    java.util.Arrays.fill(roots, 1);
    return roots;
  }

  /** The fewest points and groups. */
  private record Fewest(int points, int groups) {}

  private static GroupedPoints of(
      Fewest fewest,
      double[] roots,
      double[] times,
      double[] values,
      int[] groups,
      double[]... regressors) {
    if (times.length != values.length || groups.length != values.length) {
      throw new IllegalArgumentException(
          values.length
              + " values but "
              + times.length
              + " times and "
              + groups.length
              + " group labels");
    }
    Require.values(times, fewest.points());
    Require.values(values, fewest.points());
    Require.spread(times, "times");
    double[][] columns = new double[regressors.length + 1][];
    columns[0] = scaled(times, roots);
    for (int i = 0; i < regressors.length; i++) {
      columns[i + 1] = scaled(regressors[i], roots);
    }
    Map<Integer, List<Integer>> found = new LinkedHashMap<>();
    for (int i = 0; i < groups.length; i++) {
      found.computeIfAbsent(groups[i], unused -> new ArrayList<>()).add(i);
    }
    Require.atLeast(found.size(), fewest.groups(), "number of groups");
    List<int[]> rows =
        found.values().stream()
            .map(places -> places.stream().mapToInt(Integer::intValue).toArray())
            .toList();
    return new GroupedPoints(
        FixedPart.of(roots, scaled(values, roots), columns),
        times.clone(),
        roots,
        List.copyOf(found.keySet()),
        rows);
  }

  /** Each number times its root; a column of another length is left for the check of lengths. */
  private static double[] scaled(double[] column, double[] roots) {
    double[] scaled = column.clone();
    for (int i = 0; i < Math.min(scaled.length, roots.length); i++) {
      scaled[i] *= roots[i];
    }
    return scaled;
  }

  /**
   * Which regressor cannot be told from the constant, the times and those before it.
   *
   * @param times the times, finite, not all equal
   * @param regressors columns as long as the times, finite
   * @return the place of the first such regressor; nothing if all can be told apart
   * @throws IllegalArgumentException if lengths differ or a number is not usable
   */
  public static OptionalInt confounded(double[] times, double[]... regressors) {
    double[][] columns = new double[regressors.length + 1][];
    columns[0] = times;
    System.arraycopy(regressors, 0, columns, 1, regressors.length);
    int found = FixedPart.combination(columns);
    return found < 1 ? OptionalInt.empty() : OptionalInt.of(found - 1);
  }

  /**
   * The labels of the groups.
   *
   * @return in order of first appearance
   */
  public List<Integer> groups() {
    return labels;
  }

  /**
   * How many values there are.
   *
   * @return the number
   */
  public int size() {
    return times.length;
  }

  /**
   * What weights take from the logarithm of a density: the sum of the logarithms of their roots.
   */
  double logOfRoots() {
    double sum = 0;
    for (double root : roots) {
      sum += Math.log(root);
    }
    return sum;
  }

  /** How many regressors there are. */
  int regressors() {
    return regressors;
  }

  FixedPart fixed() {
    return fixed;
  }

  /** The place of a group among the blocks. */
  int place(int group) {
    int place = labels.indexOf(group);
    if (place < 0) {
      throw new IllegalArgumentException("there is no group " + group);
    }
    return place;
  }

  /** From where the times of the random effects count: the middle, if it does not matter. */
  double origin(LineSpread spread) {
    return spread == LineSpread.CORRELATED ? middle : 0;
  }

  /** The groups as blocks with all three components, time counted from zero. */
  Blocks plainBlocks() {
    return plain;
  }

  /** The groups as blocks, each seen through its mean and its slope. */
  Blocks blocks(LineSpread spread, double origin) {
    Blocks blocks = new Blocks(fixed, components(spread));
    for (int[] places : rows) {
      Line line = Line.of(times, roots, places, origin, spread == LineSpread.PARALLEL);
      double[][][] shapes = new double[components(spread)][][];
      for (int k = 0; k < shapes.length; k++) {
        shapes[k] =
            Blocks.product(Blocks.product(line.upper, unit(k)), Blocks.transposed(line.upper));
      }
      blocks.add(places, line.basis, shapes);
    }
    return blocks;
  }

  /** The random part {@code z'u} of a group, or of a new one for a negative group. */
  Target target(LineSpread spread, double origin, double[] row, int group, double... z) {
    int components = components(spread);
    double[][] shared = new double[components][0];
    double[] own = new double[components + 1];
    for (int k = 0; k < components; k++) {
      double[][] uz = Blocks.product(unit(k), new double[][] {{z[0]}, {z[1]}});
      own[k] = z[0] * uz[0][0] + z[1] * uz[1][0];
      if (group >= 0) {
        Line line = Line.of(times, roots, rows.get(group), origin, spread == LineSpread.PARALLEL);
        shared[k] = Blocks.transposed(Blocks.product(line.upper, uz))[0];
      }
    }
    return new Target(fixed.coordinates(row), group, shared, own);
  }

  /** A row of the fixed part. */
  double[] row(double time, double... at) {
    Require.finite(time, "time");
    if (at.length != regressors) {
      throw new IllegalArgumentException("needs " + regressors + " regressors, has " + at.length);
    }
    double[] row = new double[regressors + 2];
    row[0] = 1;
    row[1] = time;
    for (int i = 0; i < regressors; i++) {
      Require.finite(at[i], "regressor");
      row[i + 2] = at[i];
    }
    return row;
  }

  /** A row that picks one coefficient. */
  double[] only(int coefficient) {
    if (coefficient < 0 || coefficient >= fixed.columns()) {
      throw new IllegalArgumentException(
          "coefficient must be 0 to " + (fixed.columns() - 1) + ", is " + coefficient);
    }
    double[] row = new double[fixed.columns()];
    row[coefficient] = 1;
    return row;
  }

  static int components(LineSpread spread) {
    return switch (spread) {
      case PARALLEL -> 1;
      case INDEPENDENT -> 2;
      case CORRELATED -> 3;
    };
  }

  /** What a component is in the covariance matrix of height and slope. */
  private static double[][] unit(int component) {
    return switch (component) {
      case 0 -> new double[][] {{1, 0}, {0, 0}};
      case 1 -> new double[][] {{0, 0}, {0, 1}};
      default -> new double[][] {{0, 1}, {1, 0}};
    };
  }

  /** Orthonormal rows that span (1, time) over a group, and (1, time) in them. */
  private static final class Line {
    private final double[][] basis;
    private final double[][] upper;

    private Line(double[][] basis, double[][] upper) {
      this.basis = basis;
      this.upper = upper;
    }

    static Line of(double[] times, double[] roots, int[] places, double origin, boolean parallel) {
      int n = places.length;
      double[] flat = new double[n];
      double sum = 0;
      double weights = 0;
      for (int i = 0; i < n; i++) {
        flat[i] = roots[places[i]];
        weights += flat[i] * flat[i];
        sum += flat[i] * flat[i] * (times[places[i]] - times[places[0]]);
      }
      double middle = sum / weights;
      double root = Math.sqrt(weights);
      double offset = root * (times[places[0]] - origin + middle);
      double[] rising = new double[n];
      double squares = 0;
      for (int i = 0; i < n; i++) {
        rising[i] = flat[i] * (times[places[i]] - times[places[0]] - middle);
        squares += rising[i] * rising[i];
        flat[i] /= root;
      }
      double length = Math.sqrt(squares);
      if (parallel || length == 0) {
        return new Line(new double[][] {flat}, new double[][] {{root, offset}});
      }
      for (int i = 0; i < n; i++) {
        rising[i] /= length;
      }
      return new Line(new double[][] {flat, rising}, new double[][] {{root, offset}, {0, length}});
    }
  }
}
