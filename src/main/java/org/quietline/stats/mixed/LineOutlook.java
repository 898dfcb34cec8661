package org.quietline.stats.mixed;

import java.util.List;
import org.quietline.stats.distribution.StudentMixture;
import org.quietline.stats.numeric.Require;

/**
 * What points say about straight lines of groups when it is not known how much the lines differ:
 * every height and slope averaged over the spread of the lines, in place of one estimate of it.
 *
 * <p>Model: {@code value = μ + a + (β + b)·t + regressors + e}, with a, b and e normal, a and b of
 * each group, with deviations τa, τb and σ. Priors: flat on μ, β, coefficients and ln σ;
 * half-Cauchy of scale 1 on {@code ρa = τa/σ}, density {@code 2/π/(1 + ρ²)}; on {@code ρb =
 * τb·h/σ}, h being half the span that lines are looked at over, density {@code (8/π²)·arctan(ρ)/(1
 * + ρ²)}, which has the same shape far out and is nothing at zero. Given the ratios, everything is
 * Student's t with n − p degrees of freedom (see {@link LinesGivenRatios}); the ratios are averaged
 * over by a product of Gauss–Legendre rules of 20 points in {@code (2/π)·arctan ρ}, laid over that
 * part of the unit square in which the density is above {@code e^-16} of its largest. Chances are
 * good to about 1e-5 and mostly to 1e-7.
 *
 * <p>With one group nothing tells the spread, and the group's line is the ordinary straight line; a
 * new group's line cannot be said then. A prior that holds slopes for alike as readily as for
 * different makes intervals too narrow where they differ a little: with a half-Cauchy on both
 * ratios some kinds of bench lay at 91 % for 95 % in simulations; with this one see the table of
 * simulated outlooks. Sources: Gelman, Bayesian Analysis 1 (2006) 515–533, for the half-Cauchy;
 * Chung and others, Psychometrika 78 (2013) 685–709, for priors that vanish at zero (both from
 * memory); Box and Tiao, Bayesian Inference in Statistical Analysis (1973), chapters 5 and 7.
 */
public final class LineOutlook {
  private final GroupedPoints points;
  private final RatioGrid.Averaged averaged;
  private final List<RatioNode> nodes;
  private final int degreesOfFreedom;
  private final double middle;
  private final double leastVariance;
  private final double shared;

  private LineOutlook(
      GroupedPoints points,
      RatioGrid.Averaged averaged,
      int degreesOfFreedom,
      double middle,
      double leastVariance,
      double shared) {
    this.points = points;
    this.averaged = averaged;
    this.nodes = averaged.nodes();
    this.degreesOfFreedom = degreesOfFreedom;
    this.middle = middle;
    this.leastVariance = leastVariance;
    this.shared = shared;
  }

  /**
   * Averages over the spread of lines.
   *
   * @param points values against time in one or more groups, see {@link GroupedPoints#ofOneOrMore}
   * @param span the span of time that lines are looked at over, above zero
   * @param leastDeviation the least that a residual deviation is taken for, such as that of
   *     rounding, zero or more
   * @return the outlook
   * @throws IllegalArgumentException if the span is not above zero, the least deviation negative or
   *     not finite, there are no more values than coefficients, or the values do not scatter and no
   *     least deviation is given
   */
  public static LineOutlook of(GroupedPoints points, double span, double leastDeviation) {
    Require.positive(span, "span");
    Require.notNegative(leastDeviation, "least deviation");
    double least = leastDeviation * leastDeviation;
    int df = points.plainBlocks().degreesOfFreedom();
    Require.atLeast(df, 1, "values less coefficients");
    RatioGrid.Averaged averaged =
        points.groups().size() == 1
            ? RatioGrid.ofOneGroup(points, least)
            : new RatioGrid(points, span / 2, least).averaged();
    return new LineOutlook(points, averaged, df, span / 2, least, 0);
  }

  /**
   * The same with a standard uncertainty that all values share, such as that of a common reference.
   *
   * @param u the standard uncertainty, in the values' unit, zero or more
   * @return the outlook with it in place of any given before; slopes do not change
   * @throws IllegalArgumentException if it is negative or not finite
   */
  public LineOutlook withSharedUncertainty(double u) {
    Require.notNegative(u, "shared uncertainty");
    return new LineOutlook(points, averaged, degreesOfFreedom, middle, leastVariance, u);
  }

  /**
   * The degrees of freedom of all answers.
   *
   * @return values less coefficients
   */
  public int degreesOfFreedom() {
    return degreesOfFreedom;
  }

  /**
   * The logarithm of the density of the values with everything averaged over, up to a constant that
   * the numbers of values and coefficients settle. Outlooks of the same values in the same unit
   * that differ in their weights, or in the scale of values and columns, are compared by it; a
   * change of scale of the values by f takes {@code ln f} for each value. Source: Box and Tiao
   * (1973), 2.8.
   *
   * @return the logarithm; the shared uncertainty does not count
   */
  public double logEvidence() {
    return averaged.logEvidence() + points.logOfRoots();
  }

  /**
   * The residual deviation, averaged: the root of the mean residual variance.
   *
   * @return the deviation, in the values' unit
   */
  public double residualDeviation() {
    double sum = 0;
    for (RatioNode node : nodes) {
      sum += node.weight() * variance(node);
    }
    return Math.sqrt(sum);
  }

  /**
   * The height of one group's line.
   *
   * @param group the group's label
   * @param time when, finite
   * @param regressors where, one number for each regressor
   * @return the height with what is known of it, the shared uncertainty included
   * @throws IllegalArgumentException if there is no such group, a number is not finite or the
   *     regressors are not as many
   */
  public StudentMixture groupLineAt(int group, double time, double... regressors) {
    return mixture(lines -> lines.groupLineAt(group, time, regressors), 0, shared);
  }

  /**
   * A further value of one group, by the reference that the points share.
   *
   * @param group the group's label
   * @param time when, finite
   * @param regressors where, one number for each regressor
   * @return the value; the shared uncertainty does not count
   * @throws IllegalArgumentException if there is no such group, a number is not finite or the
   *     regressors are not as many
   */
  public StudentMixture groupValueAt(int group, double time, double... regressors) {
    return mixture(lines -> lines.groupLineAt(group, time, regressors), 1, 0);
  }

  /**
   * The slope of one group's line.
   *
   * @param group the group's label
   * @return the slope
   * @throws IllegalArgumentException if there is no such group
   */
  public StudentMixture groupSlope(int group) {
    return mixture(lines -> lines.groupSlope(group), 0, 0);
  }

  /**
   * The height of the average line.
   *
   * @param time when, finite
   * @param regressors where, one number for each regressor
   * @return the height, the shared uncertainty included
   * @throws IllegalArgumentException if a number is not finite or the regressors are not as many
   */
  public StudentMixture averageAt(double time, double... regressors) {
    return mixture(lines -> lines.averageAt(time, regressors), 0, shared);
  }

  /**
   * The slope of the average line.
   *
   * @return the slope
   */
  public StudentMixture averageSlope() {
    return mixture(lines -> lines.coefficient(1), 0, 0);
  }

  /**
   * The coefficient of a regressor.
   *
   * @param index from 0
   * @return the coefficient
   * @throws IllegalArgumentException if there is no such regressor
   */
  public StudentMixture regressor(int index) {
    Require.atLeast(index, 0, "regressor");
    return mixture(lines -> lines.coefficient(index + 2), 0, 0);
  }

  /**
   * The height of the line of a group that is not among the points.
   *
   * @param time when, finite
   * @param regressors where, one number for each regressor
   * @return the height, the shared uncertainty included
   * @throws IllegalArgumentException if there is only one group, a number is not finite or the
   *     regressors are not as many
   */
  public StudentMixture newLineAt(double time, double... regressors) {
    requireSeveral();
    return mixture(lines -> lines.newLineAt(time, regressors), 0, shared);
  }

  /**
   * A value of a group that is not among the points, by the reference that the points share.
   *
   * @param time when, finite
   * @param regressors where, one number for each regressor
   * @return the value; the shared uncertainty does not count
   * @throws IllegalArgumentException if there is only one group, a number is not finite or the
   *     regressors are not as many
   */
  public StudentMixture newValueAt(double time, double... regressors) {
    requireSeveral();
    return mixture(lines -> lines.newLineAt(time, regressors), 1, 0);
  }

  private void requireSeveral() {
    Require.atLeast(points.groups().size(), 2, "number of groups");
  }

  /**
   * One group's line, prepared for many looks, at regressors of zero.
   *
   * @param group the group's label
   * @return the line
   * @throws IllegalArgumentException if there is no such group
   */
  public GroupLine line(int group) {
    return new GroupLine(group);
  }

  /** What is known of one group's line where all regressors are zero. */
  public final class GroupLine {
    private final LineCovariance[] lines;
    private final double[] weights;

    private GroupLine(int group) {
      double[] zeros = new double[points.regressors()];
      lines =
          nodes.stream()
              .map(n -> LineCovariance.of(n.lines(), group, middle, zeros))
              .toArray(LineCovariance[]::new);
      weights = nodes.stream().mapToDouble(RatioNode::weight).toArray();
    }

    /**
     * The height of the line, as {@link #groupLineAt} gives it.
     *
     * @param time when, finite
     * @return the height, the shared uncertainty included
     * @throws IllegalArgumentException if the time is not finite
     */
    public StudentMixture at(double time) {
      return after(time);
    }

    /**
     * The mean variance of the height after further values of the group, for comparing plans.
     *
     * @param time when, finite
     * @param further times of the further values, finite
     * @return the variance at the residual variance as it is now, the shared uncertainty left out
     * @throws IllegalArgumentException if a time is not finite
     */
    public double varianceAfter(double time, double... further) {
      Require.finite(time, "time");
      double sum = 0;
      for (int k = 0; k < lines.length; k++) {
        sum += weights[k] * variance(nodes.get(k)) * lines[k].after(further).varianceAt(time);
      }
      return sum;
    }

    /**
     * What the slope would be known to be after further values of the group that lie where they are
     * expected.
     *
     * @param further times of the further values, finite
     * @return the slope then
     * @throws IllegalArgumentException if a time is not finite
     */
    public StudentMixture slopeAfter(double... further) {
      double[] means = new double[lines.length];
      double[] scales = new double[lines.length];
      for (int k = 0; k < lines.length; k++) {
        means[k] = lines[k].slope();
        scales[k] = Math.sqrt(variance(nodes.get(k)) * Math.max(0, lines[k].after(further).rise()));
      }
      return StudentMixture.of(
          weights, means, scales, degreesOfFreedom + (double) further.length, 0);
    }

    /**
     * What the height would be known to be after further values of the group that lie where they
     * are expected: the same middle, less spread. For planning.
     *
     * @param time when, finite
     * @param further times of the further values, finite
     * @return the height then
     * @throws IllegalArgumentException if a time is not finite
     */
    public StudentMixture after(double time, double... further) {
      Require.finite(time, "time");
      double[] means = new double[lines.length];
      double[] scales = new double[lines.length];
      for (int k = 0; k < lines.length; k++) {
        means[k] = lines[k].valueAt(time);
        scales[k] = Math.sqrt(variance(nodes.get(k)) * lines[k].after(further).varianceAt(time));
      }
      return StudentMixture.of(
          weights, means, scales, degreesOfFreedom + (double) further.length, shared);
    }
  }

  private interface Look {
    LinesGivenRatios.Height at(LinesGivenRatios lines);
  }

  private StudentMixture mixture(Look look, double more, double known) {
    double[] weights = new double[nodes.size()];
    double[] means = new double[weights.length];
    double[] scales = new double[weights.length];
    for (int k = 0; k < weights.length; k++) {
      RatioNode node = nodes.get(k);
      LinesGivenRatios.Height height = look.at(node.lines());
      weights[k] = node.weight();
      means[k] = height.value();
      scales[k] = Math.sqrt(variance(node) * (height.unscaledVariance() + more));
    }
    return StudentMixture.of(weights, means, scales, degreesOfFreedom, known);
  }

  private double variance(RatioNode node) {
    return Math.max(leastVariance, node.lines().residualVariance());
  }
}
