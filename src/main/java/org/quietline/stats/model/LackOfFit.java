package org.quietline.stats.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.quietline.stats.compare.VarianceRatio;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * Whether a model has the right shape: the residual squares split into those of replicates about
 * their own mean, which no model can lower, and those of these means about the model.
 *
 * <p>For normal errors the ratio of the two mean squares has the F distribution where the shape is
 * right. Squares are taken from the residuals, so nothing cancels. Source: Draper and Smith (1998),
 * chapter 2; ISO 11095:1996, 6; NIST/SEMATECH e-Handbook 4.4.4.6.
 *
 * @param lackSquares the squares of the means about the model, zero or more
 * @param lackDegrees their degrees of freedom, at least 1: different points less coefficients
 * @param pureSquares the squares of the replicates about their means, zero or more
 * @param pureDegrees their degrees of freedom, at least 1: values less different points
 */
public record LackOfFit(double lackSquares, int lackDegrees, double pureSquares, int pureDegrees) {

  /**
   * Checks the ranges.
   *
   * @param lackSquares the squares of the means about the model
   * @param lackDegrees their degrees of freedom
   * @param pureSquares the squares of the replicates about their means
   * @param pureDegrees their degrees of freedom
   * @throws IllegalArgumentException if a number is outside its range or NaN
   */
  public LackOfFit {
    Require.notNegative(lackSquares, "squares of lack of fit");
    Require.atLeast(lackDegrees, 1, "degrees of freedom of lack of fit");
    Require.notNegative(pureSquares, "squares of replicates");
    Require.atLeast(pureDegrees, 1, "degrees of freedom of replicates");
  }

  static Optional<LackOfFit> of(
      double[][] points, double[] weights, double[] residuals, int coefficients) {
    Map<List<Double>, List<Integer>> groups = new LinkedHashMap<>();
    for (int i = 0; i < points.length; i++) {
      List<Double> point = Arrays.stream(points[i]).map(x -> x + 0.0).boxed().toList();
      groups.computeIfAbsent(point, key -> new ArrayList<>()).add(i);
    }
    int lackDegrees = groups.size() - coefficients;
    int pureDegrees = points.length - groups.size();
    if (lackDegrees < 1 || pureDegrees < 1) {
      return Optional.empty();
    }
    Sum lack = new Sum();
    Sum pure = new Sum();
    for (List<Integer> group : groups.values()) {
      double weight = group.stream().mapToDouble(i -> weights[i]).sum();
      Sum weighted = new Sum();
      group.forEach(i -> weighted.addProduct(weights[i], residuals[i]));
      double mean = weighted.value() / weight;
      lack.addProduct(weight * mean, mean);
      for (int i : group) {
        double off = residuals[i] - mean;
        pure.addProduct(weights[i] * off, off);
      }
    }
    return Optional.of(new LackOfFit(lack.value(), lackDegrees, pure.value(), pureDegrees));
  }

  /**
   * The deviation of replicates of weight 1 about their mean.
   *
   * @return the pooled deviation
   */
  public double pureDeviation() {
    return Math.sqrt(pureSquares / pureDegrees);
  }

  /**
   * The F test of the shape.
   *
   * @return the ratio of the mean squares and its upper tail, small where the shape is wrong; empty
   *     where all replicates are equal
   */
  public Optional<VarianceRatio> ratio() {
    return pureSquares == 0
        ? Optional.empty()
        : Optional.of(
            VarianceRatio.of(
                Math.sqrt(lackSquares / lackDegrees), lackDegrees, pureDeviation(), pureDegrees));
  }
}
