package org.quietline.stats.sample;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Require;

/**
 * The deviation between groups of results by the Q method, from the sizes of the differences
 * between results of different groups, and Hampel's mean of the group means with it.
 *
 * <p>{@code H(x)} is the share of differences of at most x, each pair of groups with the same
 * weight. {@code G} runs in straight lines through the middles of its steps, from zero at zero, and
 * {@code s* = G⁻¹(0.25 + 0.75·H(0)) / (√2·Φ⁻¹(0.625 + 0.375·H(0)))}. No outlier has to be named: up
 * to about half of the groups may be wild. One result a group gives the deviation of the results;
 * replicates give the deviation of a single result of any group (reproducibility). It needs no
 * rounds and always comes to an end; where so many differences are zero that no step is left,
 * nothing is said. The work and the room for all differences grow with the square of the number of
 * results: 2000 take about a second, 5000 several; more than 50 million differences, of 10,000
 * single results, are refused. Exact for the differences as doubles; differences that agree to 1e-9
 * of the largest are one step. Source: ISO 13528:2015, C.5.2.2 and C.5.3 (from memory); Müller and
 * Uhlig (2001), Biometrika 88, 353–366.
 *
 * @param groups how many groups, at least 2
 * @param mean Hampel's mean of the group means, in the unit of the results
 * @param deviation the robust deviation s*, in the same unit, above zero
 */
public record QMethod(int groups, double mean, double deviation) {
  private static final double SAME = 1e-9;
  private static final int MOST = 50_000_000;

  /**
   * Checks the ranges.
   *
   * @param groups how many groups
   * @param mean Hampel's mean of the group means
   * @param deviation the robust deviation
   * @throws IllegalArgumentException if there are fewer than two groups, the mean is not finite or
   *     the deviation is not above zero
   */
  public QMethod {
    Require.atLeast(groups, 2, "groups");
    Require.finite(mean, "mean");
    Require.positive(deviation, "deviation");
  }

  /**
   * Of one result a group.
   *
   * @param values at least two finite numbers, each at most 1e150 in size, in any order
   * @return the estimates, or nothing where all values are equal
   * @throws IllegalArgumentException if there are fewer than two, one is NaN, infinite or larger,
   *     or there are too many
   */
  public static Optional<QMethod> of(double... values) {
    Require.values(values, 2);
    return ofGroups(Arrays.stream(values).mapToObj(v -> new double[] {v}).toList());
  }

  /**
   * Of groups of replicates, which may differ in number.
   *
   * @param groups at least two groups of at least one finite number each
   * @return the estimates, or nothing where all values of all groups are equal
   * @throws IllegalArgumentException if there are fewer than two groups, one is empty, a value is
   *     NaN, infinite or above 1e150 in size, or there are too many
   */
  public static Optional<QMethod> ofGroups(List<double[]> groups) {
    Require.atLeast(groups.size(), 2, "groups");
    groups.forEach(g -> Require.values(g, 1));
    Steps steps = new Steps(between(groups));
    double pairs = groups.size() * (groups.size() - 1) / 2.0;
    for (int i = 1; i < groups.size(); i++) {
      for (int j = 0; j < i; j++) {
        steps.add(groups.get(i), groups.get(j), pairs);
      }
    }
    double[] means = groups.stream().mapToDouble(Summary::meanOf).toArray();
    return steps
        .deviation(0.25, 0.625)
        .map(s -> new QMethod(means.length, HampelMean.of(s, means), s));
  }

  /**
   * The deviation within groups of replicates by the same method (repeatability), from the
   * differences within each group, each group with the same weight: {@code s* = G⁻¹(0.5 + 0.5·H(0))
   * / (√2·Φ⁻¹(0.75 + 0.25·H(0)))}. Source: ISO/TS 20612:2007 (from memory), Müller and Uhlig
   * (2001).
   *
   * @param groups groups of finite numbers, at least one of at least two; single values say nothing
   * @return the deviation, above zero, or nothing where all differences are zero
   * @throws IllegalArgumentException if no group has two values, a value is NaN, infinite or above
   *     1e150 in size, or there are too many
   */
  public static Optional<Double> within(List<double[]> groups) {
    groups.forEach(g -> Require.values(g, 1));
    long several = groups.stream().filter(g -> g.length > 1).count();
    Require.atLeast((int) several, 1, "groups of two or more values");
    double within = groups.stream().mapToDouble(g -> g.length * (g.length - 1.0) / 2).sum();
    Steps steps = new Steps(within);
    for (double[] group : groups) {
      for (int i = 1; i < group.length; i++) {
        double[] one = {group[i]};
        double[] before = Arrays.copyOf(group, i);
        steps.add(one, before, several * (group.length - 1) / 2.0 * group.length / i);
      }
    }
    return steps.deviation(0.5, 0.75);
  }

  /** How many differences there are between groups. */
  private static double between(List<double[]> groups) {
    double differences = 0;
    double before = 0;
    for (double[] group : groups) {
      differences += before * group.length;
      before += group.length;
    }
    return differences;
  }

  /** The sizes of differences, each with its weight. */
  private static final class Steps {
    private final double[] sizes;
    private final double[] weights;
    private int filled;

    Steps(double differences) {
      if (differences > MOST) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT, "%.0f differences are more than the most, %d", differences, MOST));
      }
      sizes = new double[(int) differences];
      weights = new double[(int) differences];
    }

    /** All differences between two groups, with one over {@code parts} as their whole weight. */
    void add(double[] one, double[] other, double parts) {
      double weight = 1 / (parts * one.length * other.length);
      for (double a : one) {
        for (double b : other) {
          sizes[filled] = Math.abs(a - b);
          weights[filled] = weight;
          filled++;
        }
      }
    }

    Optional<Double> deviation(double share, double normal) {
      double[] ascending = sizes.clone();
      Arrays.sort(ascending);
      double near = SAME * ascending[ascending.length - 1];
      if (near == 0) {
        return Optional.empty();
      }
      double[] rises = rises(ascending);
      int first = 0;
      double zero = 0;
      while (ascending[first] <= near) {
        zero += rises[first];
        first++;
      }
      double wanted = share + (1 - share) * zero;
      double divisor = Math.sqrt(2) * Normal.quantile(normal + (1 - normal) * zero);
      return Optional.of(inverse(ascending, rises, first, zero, near, wanted) / divisor);
    }

    /** The weight of each size, all of it at one of the places where that size stands. */
    private double[] rises(double[] ascending) {
      double[] rises = new double[ascending.length];
      if (Arrays.stream(weights).allMatch(w -> w == weights[0])) {
        Arrays.fill(rises, weights[0]);
        return rises;
      }
      for (int i = 0; i < sizes.length; i++) {
        rises[Arrays.binarySearch(ascending, sizes[i])] += weights[i];
      }
      return rises;
    }

    /** Where the line through the middles of the steps has a height. */
    private static double inverse(
        double[] ascending, double[] rises, int first, double zero, double near, double wanted) {
      double at = 0;
      double height = 0;
      double reached = zero;
      int next = first;
      while (next < ascending.length) {
        double step = ascending[next];
        double rise = 0;
        while (next < ascending.length && ascending[next] <= step + near) {
          rise += rises[next];
          next++;
        }
        double middle = reached + rise / 2;
        if (middle >= wanted) {
          return at + (step - at) * (wanted - height) / (middle - height);
        }
        at = step;
        height = middle;
        reached += rise;
      }
      return at;
    }
  }
}
