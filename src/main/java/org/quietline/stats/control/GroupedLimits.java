package org.quietline.stats.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.mixed.NestedGroups;
import org.quietline.stats.mixed.StudentEstimate;
import org.quietline.stats.mixed.VarianceComponents;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.sample.MovingRange;

/**
 * Limits of single values that come in groups which differ, as the results of one calibration share
 * its error.
 *
 * <p>Model: value = μ + group effect (τ) + residual (σ), fitted by restricted maximum likelihood.
 * The centre is the estimate of μ, and the limits are those a value of a new group leaves with the
 * chance of three deviations, 0.27 %, by Student's t with the degrees of freedom of Kenward and
 * Roger; warning with 5 %. Few groups say little about τ, so that the limits are wide with few. By
 * simulation a value of a new group leaves the action limits, at τ/σ of 0, 0.5, 1 and 2, with 0.27,
 * 0.27, 0.29 and 0.30 % for 20 groups of 4, with 0.25, 0.27, 0.31 and 0.35 % for 10, with 0.22,
 * 0.25, 0.37 and 0.59 % for 5, and with 0.19, 0.24, 0.53 and 1.34 % for 3 groups of 5; limits from
 * the moving range of 10 groups of 4 it leaves with 0.6, 1.2, 3.2 and 10.9 %. Source: {@link
 * VarianceComponents#newValue}; Searle, Casella and McCulloch, Variance Components (1992).
 *
 * @param limits the limits; their deviation is {@code √(τ² + σ²)}
 * @param between the deviation τ between groups, zero or more
 * @param within the deviation σ within groups, above zero
 */
public record GroupedLimits(ControlLimits limits, double between, double within) {
  private static final double ACTION = 3;
  private static final double ROUNDING = 1e-20;

  /**
   * Checks the ranges.
   *
   * @param limits the limits
   * @param between the deviation between groups
   * @param within the deviation within groups
   * @throws IllegalArgumentException if a deviation is outside its range
   */
  public GroupedLimits {
    Require.notNegative(between, "deviation between groups");
    Require.positive(within, "deviation within groups");
  }

  /**
   * Limits from grouped values.
   *
   * @param values finite numbers in time order
   * @param groups the group of each value, any labels; at least two groups, one of them with two
   *     values that differ
   * @return the limits
   * @throws IllegalArgumentException if lengths differ, a value is not usable, or the groups do not
   *     tell the two deviations apart
   */
  public static GroupedLimits of(double[] values, int[] groups) {
    VarianceComponents fit = VarianceComponents.fit(values, NestedGroups.of(groups));
    double between = fit.components().get(0);
    double within = fit.components().get(1);
    StudentEstimate next = fit.newValue();
    Interval action = next.interval(1 - Normal.outside(ACTION));
    Interval warning = next.interval(0.95);
    double range = MovingRange.mean(values);
    ControlLimits limits =
        new ControlLimits(
            ControlLimits.Basis.BETWEEN_GROUPS,
            next.value(),
            Math.sqrt(between + within),
            action.lower(),
            warning.lower(),
            warning.upper(),
            action.upper(),
            range,
            MovingRange.D4 * range);
    return new GroupedLimits(limits, Math.sqrt(between), Math.sqrt(within));
  }

  /**
   * Whether values in groups can be fitted: at least two groups, and values that differ within
   * groups by more than rounding, a 1e-10th of the deviation of all.
   *
   * @param values finite numbers
   * @param groups the group of each
   * @return true when {@link #of} has an answer
   */
  public static boolean tellApart(double[] values, int[] groups) {
    if (Arrays.stream(groups).distinct().count() < 2) {
      return false;
    }
    Map<Integer, List<Double>> byGroup = new HashMap<>();
    for (int i = 0; i < values.length; i++) {
      byGroup.computeIfAbsent(groups[i], k -> new ArrayList<>()).add(values[i]);
    }
    double within =
        byGroup.values().stream()
            .mapToDouble(g -> squares(g.stream().mapToDouble(Double::doubleValue).toArray()))
            .sum();
    return within > ROUNDING * squares(values);
  }

  private static double squares(double[] values) {
    return Centred.of(values).sumOfSquares();
  }
}
