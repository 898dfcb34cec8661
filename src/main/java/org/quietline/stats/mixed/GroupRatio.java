package org.quietline.stats.mixed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.quietline.stats.distribution.FisherF;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;
import org.quietline.stats.numeric.Sum;
import org.quietline.stats.sample.Summary;

/**
 * How far groups of any sizes differ, as the ratio ρ of the variance between them to that within.
 *
 * <p>With weights {@code w(i) = n(i)/(1 + ρ·n(i))}, group means m(i) and their weighted mean m, the
 * statistic {@code Σ w(i)·(m(i) − m)²/(a − 1)/s²} is that of F with a − 1 and N − a degrees of
 * freedom at the true ρ, exactly for normal values, and falls as ρ grows. Limits of ρ are where it
 * meets quantiles of F. Source: Wald (1940), Ann. Math. Statist. 11, 96–100; Searle, Casella and
 * McCulloch, Variance Components (1992), section 3.6.
 */
public final class GroupRatio {
  private static final double SMALLEST = 1e-12;
  private static final double LARGEST = 1e12;

  private final List<double[]> groups;
  private final double[] means;
  private final double within;
  private final int freedomWithin;

  private GroupRatio(List<double[]> groups) {
    this.groups = groups;
    this.means = groups.stream().mapToDouble(Summary::meanOf).toArray();
    Sum squares = new Sum();
    int n = 0;
    for (int i = 0; i < means.length; i++) {
      for (double value : groups.get(i)) {
        squares.addProduct(value - means[i], value - means[i]);
      }
      n += groups.get(i).length;
    }
    this.freedomWithin = n - means.length;
    Require.atLeast(freedomWithin, 1, "degrees of freedom within groups");
    this.within = squares.value() / freedomWithin;
    Require.positive(within, "variance within groups");
  }

  /**
   * Groups of values.
   *
   * @param values finite numbers
   * @param labels the group of each value, any labels; at least two groups
   * @return the ratio
   * @throws IllegalArgumentException if lengths differ, a value is not finite, there are fewer than
   *     two groups, or the values do not scatter within groups
   */
  public static GroupRatio of(double[] values, int[] labels) {
    Require.values(values, 2);
    if (values.length != labels.length) {
      throw new IllegalArgumentException(
          values.length + " values but " + labels.length + " labels");
    }
    Map<Integer, List<Double>> byLabel = new LinkedHashMap<>();
    for (int i = 0; i < values.length; i++) {
      byLabel.computeIfAbsent(labels[i], k -> new ArrayList<>()).add(values[i]);
    }
    Require.atLeast(byLabel.size(), 2, "number of groups");
    return new GroupRatio(
        byLabel.values().stream()
            .map(g -> g.stream().mapToDouble(Double::doubleValue).toArray())
            .toList());
  }

  /**
   * How many groups there are.
   *
   * @return at least 2
   */
  public int count() {
    return means.length;
  }

  /**
   * The pooled variance within groups.
   *
   * @return in the square of the values' unit
   */
  public double varianceWithin() {
    return within;
  }

  /**
   * The chance of means at least so far apart if groups did not differ: the F test of one-way
   * analysis of variance.
   *
   * @return the chance
   */
  public double chance() {
    return FisherF.above(statistic(0), means.length - 1, freedomWithin);
  }

  /**
   * The ratio that is exceeded with a given confidence, or undershot: the place where the statistic
   * meets the quantile of F that is exceeded with that chance. A chance of 0.95 gives the upper 95
   * % bound, 0.05 the lower.
   *
   * @param exceeded the chance of a larger F, between 0 and 1
   * @return the ratio, zero where it is below 1e-12; empty where it is above 1e12
   * @throws IllegalArgumentException if the chance is not between 0 and 1
   */
  public OptionalDouble bound(double exceeded) {
    Require.share(exceeded, "chance");
    double wanted = FisherF.exceededWith(exceeded, means.length - 1, freedomWithin);
    if (statistic(SMALLEST) <= wanted) {
      return OptionalDouble.of(0);
    }
    if (statistic(LARGEST) >= wanted) {
      return OptionalDouble.empty();
    }
    double log =
        Roots.between(l -> statistic(Math.exp(l)) - wanted, Math.log(SMALLEST), Math.log(LARGEST));
    return OptionalDouble.of(Math.exp(log));
  }

  private double statistic(double ratio) {
    double[] weights =
        groups.stream().mapToDouble(g -> g.length / (1 + ratio * g.length)).toArray();
    Sum weighted = new Sum();
    for (int i = 0; i < means.length; i++) {
      weighted.addProduct(weights[i], means[i]);
    }
    double centre = weighted.value() / Arrays.stream(weights).sum();
    Sum squares = new Sum();
    for (int i = 0; i < means.length; i++) {
      squares.addProduct(weights[i] * (means[i] - centre), means[i] - centre);
    }
    return squares.value() / (means.length - 1) / within;
  }
}
