package org.quietline.stats.control;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.quietline.stats.distribution.ChartConstants;
import org.quietline.stats.distribution.ChiSquare;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.distribution.NormalRange;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * Centre and deviation of subgroups, and the limits of the charts of their means, ranges and
 * deviations.
 *
 * <p>The deviation is that within subgroups. Where means of subgroups differ more than that for
 * reasons that are part of the work, the limits of means are too narrow: chart the means as single
 * values with {@link ControlLimits} instead. Limits take centre and deviation as the true ones, so
 * with few subgroups false alarms are more than nominal; {@code degreesOfFreedom} says how well the
 * deviation is known. Subgroups may differ in size: limits are asked for by size, and with equal
 * sizes they are the customary {@code X̿ ± A2·R̄}, {@code D3·R̄}, {@code D4·R̄}, {@code X̿ ±
 * A3·s̄}, {@code B3·s̄}, {@code B4·s̄} with constants computed to about 1e-12, so that they differ
 * from tables in about the fourth digit. Source: ISO 7870-2:2013; Burr (1969), J. Qual. Technol. 1,
 * 163–167 (unequal sizes).
 *
 * @param basis what the deviation comes from
 * @param centre the mean of all values, in their unit
 * @param deviation the deviation of single values within subgroups, unbiased for normal values,
 *     zero or more
 * @param degreesOfFreedom those of the deviation: Σ(n − 1) for the pooled one, otherwise those of a
 *     sample deviation with the same relative variance (Patnaik (1950), Biometrika 37, 78–87)
 */
public record SubgroupLimits(
    Basis basis, double centre, double deviation, double degreesOfFreedom) {
  private static final int LARGEST = 25;
  private static final double WIDTH = 3;

  /**
   * Checks the ranges.
   *
   * @param basis what the deviation comes from
   * @param centre the mean of all values
   * @param deviation the deviation of single values within subgroups
   * @param degreesOfFreedom those of the deviation
   * @throws IllegalArgumentException if a figure is outside its range or NaN
   */
  public SubgroupLimits {
    Require.finite(centre, "centre");
    Require.notNegative(deviation, "deviation");
    Require.positive(degreesOfFreedom, "degrees of freedom");
  }

  /** What the deviation within subgroups comes from. */
  public enum Basis {
    /** Ranges over d2. */
    RANGES,
    /** Sample deviations over c4. */
    DEVIATIONS,
    /** The pooled deviation over its c4. */
    POOLED_DEVIATION
  }

  /**
   * From the ranges: the mean of {@code R/d2(n)} with weights {@code (d2/d3)²}, for equal sizes
   * {@code R̄/d2}. Loses to deviations as sizes grow; never beyond 25.
   *
   * @param subgroups at least one, each of 2 to 25 finite numbers
   * @return centre and deviation
   * @throws IllegalArgumentException if there is no subgroup, one has a size out of range, or a
   *     value is NaN or infinite
   */
  public static SubgroupLimits fromRanges(List<double[]> subgroups) {
    check(subgroups);
    Map<Integer, ChartConstants> bySize = new HashMap<>();
    for (double[] group : subgroups) {
      bySize.computeIfAbsent(group.length, SubgroupLimits::constants);
    }
    return weighted(
        Basis.RANGES,
        subgroups,
        g -> range(g) / constants(bySize, g).d2(),
        g -> {
          double ratio = constants(bySize, g).d3() / constants(bySize, g).d2();
          return ratio * ratio;
        });
  }

  /**
   * From the sample deviations: the mean of {@code s/c4(n)} with weights {@code c4²/(1 − c4²)}, for
   * equal sizes {@code s̄/c4}.
   *
   * @param subgroups at least one, each of at least 2 finite numbers
   * @return centre and deviation
   * @throws IllegalArgumentException if there is no subgroup, one is too small, or a value is NaN
   *     or infinite
   */
  public static SubgroupLimits fromDeviations(List<double[]> subgroups) {
    check(subgroups);
    return weighted(
        Basis.DEVIATIONS,
        subgroups,
        g ->
            Math.sqrt(Centred.of(g).sumOfSquares() / (g.length - 1))
                / DeviationScatter.mean(g.length - 1),
        g -> DeviationScatter.relativeVariance(g.length - 1));
  }

  /**
   * From the pooled deviation {@code s_p = √(Σ(n−1)s²/Σ(n−1))}, over the c4 of its degrees of
   * freedom: the sharpest estimate where all subgroups have one deviation.
   *
   * @param subgroups at least one, each of at least 2 finite numbers
   * @return centre and deviation
   * @throws IllegalArgumentException if there is no subgroup, one is too small, or a value is NaN
   *     or infinite
   */
  public static SubgroupLimits fromPooledDeviation(List<double[]> subgroups) {
    check(subgroups);
    Sum squares = new Sum();
    int freedom = 0;
    for (double[] group : subgroups) {
      squares.add(Centred.of(group).sumOfSquares());
      freedom += group.length - 1;
    }
    double pooled = Math.sqrt(squares.value() / freedom);
    return new SubgroupLimits(
        Basis.POOLED_DEVIATION, mean(subgroups), pooled / DeviationScatter.mean(freedom), freedom);
  }

  /**
   * Limits of the mean of n values, {@code centre ± 3·deviation/√n}.
   *
   * @param n the size of the subgroup, at least 1
   * @return the limits
   * @throws IllegalArgumentException if n is below 1
   */
  public ChartLimits ofMean(int n) {
    return aboutCentre(n, WIDTH);
  }

  /**
   * Limits that the mean of n values leaves with a given chance, half on each side.
   *
   * @param n the size of the subgroup, at least 1
   * @param falseAlarm the chance, between 0 and 1
   * @return the limits
   * @throws IllegalArgumentException if n is below 1 or the chance not between 0 and 1
   */
  public ChartLimits ofMean(int n, double falseAlarm) {
    Require.share(falseAlarm, "false alarm");
    return aboutCentre(n, Normal.exceededWith(falseAlarm / 2));
  }

  private ChartLimits aboutCentre(int n, double width) {
    Require.atLeast(n, 1, "subgroup size");
    double half = width * deviation / Math.sqrt(n);
    return new ChartLimits(centre - half, centre, centre + half);
  }

  /**
   * Limits of the range of n values, {@code (d2 ± 3·d3)·deviation}, the lower not below zero. The
   * range is skewed: with n = 2 it is above the upper limit with a chance of 0.92 %, not 0.135 %.
   *
   * @param n the size of the subgroup, 2 to 25
   * @return the limits, with the mean range as centre
   * @throws IllegalArgumentException if n is out of range
   */
  public ChartLimits ofRange(int n) {
    ChartConstants constants = constants(n);
    return scaled(constants.d2(), constants.d3());
  }

  /**
   * Limits that the range of n values leaves with a given chance, half on each side.
   *
   * @param n the size of the subgroup, 2 to 25
   * @param falseAlarm the chance, between 0 and 1
   * @return the limits, with the mean range as centre
   * @throws IllegalArgumentException if n is out of range or the chance not between 0 and 1
   */
  public ChartLimits ofRange(int n, double falseAlarm) {
    Require.share(falseAlarm, "false alarm");
    double mean = constants(n).d2();
    NormalRange range = new NormalRange(n);
    return new ChartLimits(
        range.quantile(falseAlarm / 2) * deviation,
        mean * deviation,
        range.exceededWith(falseAlarm / 2) * deviation);
  }

  /**
   * Limits of the sample deviation of n values, {@code (c4 ± 3·√(1 − c4²))·deviation}, the lower
   * not below zero.
   *
   * @param n the size of the subgroup, at least 2
   * @return the limits, with the mean sample deviation as centre
   * @throws IllegalArgumentException if n is below 2
   */
  public ChartLimits ofDeviation(int n) {
    Require.atLeast(n, 2, "subgroup size");
    double mean = DeviationScatter.mean(n - 1);
    return scaled(mean, mean * Math.sqrt(DeviationScatter.relativeVariance(n - 1)));
  }

  /**
   * Limits that the sample deviation of n values leaves with a given chance, half on each side:
   * {@code deviation·√(χ²(n − 1)/(n − 1))} at the two quantiles.
   *
   * @param n the size of the subgroup, at least 2
   * @param falseAlarm the chance, between 0 and 1
   * @return the limits, with the mean sample deviation as centre
   * @throws IllegalArgumentException if n is below 2 or the chance not between 0 and 1
   */
  public ChartLimits ofDeviation(int n, double falseAlarm) {
    Require.share(falseAlarm, "false alarm");
    Require.atLeast(n, 2, "subgroup size");
    int freedom = n - 1;
    return new ChartLimits(
        deviation * Math.sqrt(ChiSquare.quantile(falseAlarm / 2, freedom) / freedom),
        deviation * DeviationScatter.mean(freedom),
        deviation * Math.sqrt(ChiSquare.exceededWith(falseAlarm / 2, freedom) / freedom));
  }

  private ChartLimits scaled(double mean, double spread) {
    return new ChartLimits(
        Math.max(0, mean - WIDTH * spread) * deviation,
        mean * deviation,
        (mean + WIDTH * spread) * deviation);
  }

  /** Unbiased estimates weighted by one over their relative variances. */
  private static SubgroupLimits weighted(
      Basis basis,
      List<double[]> subgroups,
      ToDoubleFunction<double[]> estimate,
      ToDoubleFunction<double[]> relativeVariance) {
    Sum weights = new Sum();
    Sum weighted = new Sum();
    for (double[] group : subgroups) {
      double weight = 1 / relativeVariance.applyAsDouble(group);
      weights.add(weight);
      weighted.addProduct(weight, estimate.applyAsDouble(group));
    }
    return new SubgroupLimits(
        basis,
        mean(subgroups),
        weighted.value() / weights.value(),
        DeviationScatter.freedomOf(1 / weights.value()));
  }

  private static ChartConstants constants(Map<Integer, ChartConstants> bySize, double[] group) {
    return Objects.requireNonNull(bySize.get(group.length));
  }

  private static ChartConstants constants(int n) {
    Require.atLeast(n, 2, "subgroup size");
    if (n > LARGEST) {
      throw new IllegalArgumentException("subgroup size must be at most 25, is " + n);
    }
    return ChartConstants.of(n);
  }

  private static double mean(List<double[]> subgroups) {
    return Centred.of(subgroups.stream().flatMapToDouble(Arrays::stream).toArray()).mean();
  }

  private static double range(double[] group) {
    return Arrays.stream(group).max().orElseThrow() - Arrays.stream(group).min().orElseThrow();
  }

  private static void check(List<double[]> subgroups) {
    Require.atLeast(subgroups.size(), 1, "number of subgroups");
    for (double[] group : subgroups) {
      Require.values(group, 2);
    }
  }
}
