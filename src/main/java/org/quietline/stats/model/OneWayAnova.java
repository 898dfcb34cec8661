package org.quietline.stats.model;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.stats.Interval;
import org.quietline.stats.compare.VarianceRatio;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * One-way analysis of variance: whether groups differ more in their means than values do within
 * them.
 *
 * <p>With group means mᵢ of nᵢ values and the mean of all M, {@code between = Σ nᵢ(mᵢ − M)²},
 * {@code within = ΣΣ(x − mᵢ)²}, and their mean squares have the F distribution where normal groups
 * with one variance share one mean. Means are carried in two doubles: the result is that of the
 * given numbers to 13 digits or more. A double holds about 16 digits, so values that share many
 * leading digits have lost their last ones before any calculation; {@link #ofDecimals} takes them
 * as written, and all NIST StRD sets agree to 13 digits. Source: Scheffé (1959), The Analysis of
 * Variance, chapter 3; NIST/SEMATECH e-Handbook 1.3.5.4.
 *
 * @param groups the groups, at least two
 * @param betweenSquares the squares of the means about the mean of all, zero or more
 * @param withinSquares the squares of the values about the mean of their group, zero or more
 */
public record OneWayAnova(List<Group> groups, double betweenSquares, double withinSquares) {

  /**
   * One group.
   *
   * @param n how many values, at least 1
   * @param mean their mean
   */
  public record Group(int n, double mean) {
    /**
     * Checks the ranges.
     *
     * @param n how many values
     * @param mean their mean
     * @throws IllegalArgumentException if there is no value or the mean is not finite
     */
    public Group {
      Require.atLeast(n, 1, "n");
      Require.finite(mean, "mean");
    }
  }

  /**
   * Checks the ranges and copies the groups.
   *
   * @param groups the groups
   * @param betweenSquares the squares of the means
   * @param withinSquares the squares of the values
   * @throws IllegalArgumentException if there are fewer than two groups, no group has two values,
   *     or a sum is negative or not finite
   */
  public OneWayAnova {
    groups = List.copyOf(groups);
    Require.atLeast(groups.size(), 2, "number of groups");
    Require.atLeast(count(groups) - groups.size(), 1, "degrees of freedom within groups");
    Require.notNegative(betweenSquares, "squares between groups");
    Require.notNegative(withinSquares, "squares within groups");
  }

  /**
   * Analyses values.
   *
   * @param groups at least two groups of at least one finite number each, one group of two or more
   * @return the analysis
   * @throws IllegalArgumentException if there are too few groups or values, or a number is NaN,
   *     infinite or above 1e150 in size
   */
  public static OneWayAnova of(double[]... groups) {
    return of(groups, BigDecimal.ZERO);
  }

  /**
   * Analyses values as they are written, without a loss by their conversion to doubles: the first
   * value is taken off all before it.
   *
   * @param groups at least two groups of at least one number each, one group of two or more
   * @return the analysis
   * @throws IllegalArgumentException if there are too few groups or values, or a difference is
   *     above 1e150 in size
   */
  public static OneWayAnova ofDecimals(List<List<BigDecimal>> groups) {
    BigDecimal first = groups.stream().flatMap(List::stream).findFirst().orElse(BigDecimal.ZERO);
    double[][] less =
        groups.stream()
            .map(g -> g.stream().mapToDouble(v -> v.subtract(first).doubleValue()).toArray())
            .toArray(double[][]::new);
    return of(less, first);
  }

  private static OneWayAnova of(double[][] groups, BigDecimal offset) {
    Require.atLeast(groups.length, 2, "number of groups");
    Arrays.stream(groups).forEach(group -> Require.values(group, 1));
    Centred all = Centred.of(Arrays.stream(groups).flatMapToDouble(Arrays::stream).toArray());
    List<Group> means = new ArrayList<>();
    Sum between = new Sum();
    Sum within = new Sum();
    for (double[] values : groups) {
      Centred group = Centred.of(values);
      double mean = offset.add(new BigDecimal(group.mean())).doubleValue();
      means.add(new Group(values.length, mean));
      double off =
          new Sum()
              .add(group.mean())
              .add(-all.mean())
              .add(group.meanRest())
              .add(-all.meanRest())
              .value();
      between.addProduct(values.length * off, off);
      for (double deviation : group.deviations()) {
        within.addProduct(deviation, deviation);
      }
    }
    return new OneWayAnova(means, between.value(), within.value());
  }

  private static int count(List<Group> groups) {
    return groups.stream().mapToInt(Group::n).sum();
  }

  /**
   * The degrees of freedom between groups.
   *
   * @return groups less one
   */
  public int betweenDegrees() {
    return groups.size() - 1;
  }

  /**
   * The degrees of freedom within groups.
   *
   * @return values less groups
   */
  public int withinDegrees() {
    return count(groups) - groups.size();
  }

  /**
   * The mean square between groups.
   *
   * @return the squares by their degrees of freedom
   */
  public double betweenMeanSquare() {
    return betweenSquares / betweenDegrees();
  }

  /**
   * The mean square within groups, the pooled variance.
   *
   * @return the squares by their degrees of freedom
   */
  public double withinMeanSquare() {
    return withinSquares / withinDegrees();
  }

  /**
   * The deviation within groups.
   *
   * @return the root of the mean square
   */
  public double residualDeviation() {
    return Math.sqrt(withinMeanSquare());
  }

  /**
   * The share of all squares that lies between the groups.
   *
   * @return the share, or empty where all values are equal
   */
  public OptionalDouble explainedShare() {
    double whole = betweenSquares + withinSquares;
    return whole > 0 ? OptionalDouble.of(betweenSquares / whole) : OptionalDouble.empty();
  }

  /**
   * The F test of equal means.
   *
   * @return the ratio of the mean squares and its upper tail, or empty where no group has any
   *     spread
   */
  public Optional<VarianceRatio> ratio() {
    return withinSquares == 0
        ? Optional.empty()
        : Optional.of(
            VarianceRatio.of(
                Math.sqrt(betweenMeanSquare()),
                betweenDegrees(),
                residualDeviation(),
                withinDegrees()));
  }

  /**
   * The confidence interval of the mean of one group by the pooled deviation and Student's t; not
   * for all groups at once.
   *
   * @param group its place, from 0
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if there is no such group or the level is not between 0 and 1
   */
  public Interval meanInterval(int group, double level) {
    Group own = group(group);
    return around(own.mean(), 1.0 / own.n(), level);
  }

  /**
   * The confidence interval of the difference of the means of two groups, chosen before the values
   * were seen: one less the other. Not for all pairs at once.
   *
   * @param one the place of one group, from 0
   * @param other the place of the other
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if there is no such group or the level is not between 0 and 1
   */
  public Interval differenceInterval(int one, int other, double level) {
    Group a = group(one);
    Group b = group(other);
    return around(a.mean() - b.mean(), 1.0 / a.n() + 1.0 / b.n(), level);
  }

  private Interval around(double middle, double share, double level) {
    Require.share(level, "level");
    double half =
        Student.exceededWith((1 - level) / 2, withinDegrees())
            * Math.sqrt(withinMeanSquare() * share);
    return new Interval(middle - half, middle + half);
  }

  private Group group(int place) {
    if (place < 0 || place >= groups.size()) {
      throw new IllegalArgumentException(
          "no group " + place + " among " + groups.size() + ", counted from 0");
    }
    return groups.get(place);
  }
}
