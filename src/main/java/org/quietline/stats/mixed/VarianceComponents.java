package org.quietline.stats.mixed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.quietline.stats.numeric.Require;

/**
 * Components of variance of nested groups of any sizes, by restricted maximum likelihood.
 *
 * <p>Model: value = constant (and coefficients of declared regressors) + an effect of each group in
 * each of one to three nested levels + a residual; effects and residuals are independent and
 * normal. Largest is {@code ℓ = −½·[ln|V| + ln|X'V⁻¹X| + (y − Xβ)'V⁻¹(y − Xβ) + (n − p)·ln 2π]}
 * with β by generalised least squares. A component of exactly zero is a legal answer. In balanced
 * data with positive estimates the components are those of the analysis of variance. Ratios agree
 * with the exact optimum to about 1e-9 relative. Source: Patterson and Thompson, Biometrika 58
 * (1971) 545–554; Searle, Casella and McCulloch, Variance Components (1992), chapter 6.
 *
 * <p>Intervals of components come from exact pivots, see {@link PivotalComponents}; those of
 * coefficients and means from Student's t with the standard error and degrees of freedom of Kenward
 * and Roger (1997). The information about the components keeps those estimated as zero, so that an
 * estimate on the boundary does not pretend that the component is known to be absent. In
 * simulations 95 % intervals of the mean held 94.5 to 98 % with 6 and 12 groups and 96 to 100 %
 * with 3.
 */
public final class VarianceComponents {
  private final NestedGroups groups;
  private final FixedPart fixed;
  private final MixedFit fit;
  private final StagePivots pivots;

  private VarianceComponents(
      NestedGroups groups, FixedPart fixed, MixedFit fit, StagePivots pivots) {
    this.groups = groups;
    this.fixed = fixed;
    this.fit = fit;
    this.pivots = pivots;
  }

  /**
   * Fits.
   *
   * @param values the values, finite
   * @param groups their groups
   * @param regressors columns of declared regressors beside the constant, as long as the values
   * @return the components
   * @throws IllegalArgumentException if lengths differ, a number is not usable, a regressor is a
   *     combination of the others, a level adds no groups to the one outside it, no innermost group
   *     has two values, or the values do not scatter within the innermost groups
   */
  public static VarianceComponents fit(
      double[] values, NestedGroups groups, double[]... regressors) {
    Require.values(values, 2);
    if (values.length != groups.size()) {
      throw new IllegalArgumentException(values.length + " values but labels of " + groups.size());
    }
    FixedPart fixed = FixedPart.of(values, regressors);
    StagePivots pivots = StagePivots.of(fixed, groups);
    Blocks blocks = pivots.blocks();
    return new VarianceComponents(
        groups, fixed, MixedFit.of(blocks, RatioScale.free(blocks)), pivots);
  }

  /**
   * The components, the outermost level first and the residual last.
   *
   * @return the variances, in the square of the values' unit, none below zero
   */
  public List<Double> components() {
    return components(fit.given(), Likelihood.RESTRICTED);
  }

  private static List<Double> components(GivenRatios given, Likelihood likelihood) {
    double residual = given.residualVariance(likelihood);
    List<Double> components = new ArrayList<>();
    for (int k = 0; k < given.blocks().components(); k++) {
      components.add(residual * given.ratio(k));
    }
    components.add(residual);
    return List.copyOf(components);
  }

  /**
   * The large-sample covariance matrix of the components, residual last: the inverse of the
   * expected information, {@code ½·tr(P·Vi·P·Vj)} inverted, at the estimates. Few groups make it
   * rough; intervals do not use it.
   *
   * @return a copy, in the fourth power of the values' unit
   */
  public double[][] covariance() {
    return fit.covariance();
  }

  /**
   * The restricted log likelihood at its largest; to be compared between models of the same fixed
   * part only.
   *
   * @return ℓ as written above
   */
  public double logLikelihood() {
    return fit.logLikelihood();
  }

  /**
   * The same model by full maximum likelihood, for comparing fixed parts.
   *
   * @return components and log likelihood
   */
  public FullLikelihood fullLikelihood() {
    GivenRatios best = fit.byFullLikelihood();
    return FullLikelihood.of(best, components(best, Likelihood.FULL));
  }

  /**
   * A fixed coefficient with Kenward and Roger's standard error and degrees of freedom.
   *
   * @param index 0 for the constant, 1 for the first regressor, and so on
   * @return the coefficient
   * @throws IllegalArgumentException if there is no such coefficient
   */
  public StudentEstimate coefficient(int index) {
    if (index < 0 || index >= fixed.columns()) {
      throw new IllegalArgumentException(
          "coefficient must be 0 to " + (fixed.columns() - 1) + ", is " + index);
    }
    double[] row = new double[fixed.columns()];
    row[index] = 1;
    return fit.judged(Target.fixed(fixed.coordinates(row), groups.levels()));
  }

  /**
   * The predicted effects of the groups of a level, shrunk towards zero: {@code γ·Z'V⁻¹(y − Xβ)}.
   * Source: Henderson, Biometrics 31 (1975) 423–447.
   *
   * @param level from 0, the outermost
   * @return the effects, in the order of {@link NestedGroups#paths}
   * @throws IllegalArgumentException if there is no such level
   */
  public List<Double> effects(int level) {
    groups.requireLevel(level);
    List<Double> effects = new ArrayList<>();
    for (int g = 0; g < groups.count(level); g++) {
      Target target = target(new double[fixed.columns()], level, g, level);
      effects.add(new Prediction(fit.given(), target).value());
    }
    return List.copyOf(effects);
  }

  /**
   * The predicted mean of a group: constant, regressors, its own effect and those of the groups
   * that hold it.
   *
   * <p>The mean of a group with a single value is judged too surely where one other group alone
   * shows the residual scatter: its 95 % interval held 85 to 88 %.
   *
   * @param level from 0, the outermost
   * @param group its place in {@link NestedGroups#paths}
   * @param regressors where, one number for each regressor
   * @return the mean with its prediction error, which counts the uncertainty of the coefficients
   *     and of the components
   * @throws IllegalArgumentException if there is no such level or group, or the regressors are not
   *     as many as in the fit
   */
  public StudentEstimate groupMean(int level, int group, double... regressors) {
    groups.requireLevel(level);
    if (group < 0 || group >= groups.count(level)) {
      throw new IllegalArgumentException(
          "group must be 0 to " + (groups.count(level) - 1) + ", is " + group);
    }
    return fit.judged(target(row(regressors), 0, group, level));
  }

  /**
   * What a single further value in a new outermost group will be.
   *
   * <p>Few groups are too few for what the 95 % interval says: by simulation it held 90 % with two
   * groups of three, 93 % with three of five.
   *
   * @param regressors where, one number for each regressor
   * @return the expected value, and as its standard error the root of all components and the
   *     uncertainty of the coefficients
   * @throws IllegalArgumentException if the regressors are not as many as in the fit
   */
  public StudentEstimate newValue(double... regressors) {
    double[] each = new double[groups.levels() + 1];
    Arrays.fill(each, 1);
    return fit.judged(Target.fixed(row(regressors), groups.levels()).plus(each));
  }

  private double[] row(double[] regressors) {
    if (regressors.length != fixed.columns() - 1) {
      throw new IllegalArgumentException(
          "needs " + (fixed.columns() - 1) + " regressors, has " + regressors.length);
    }
    double[] row = new double[fixed.columns()];
    row[0] = 1;
    for (int i = 0; i < regressors.length; i++) {
      Require.finite(regressors[i], "regressor");
      row[i + 1] = regressors[i];
    }
    return fixed.coordinates(row);
  }

  /** The effects from one level down to that of a group, and what they share with the data. */
  private Target target(double[] row, int from, int group, int level) {
    int[] member = groups.groupOf(level);
    int first = 0;
    while (member[first] != group) {
      first++;
    }
    int block = groups.groupOf(0)[first];
    List<int[]> cells = groups.cells(0).get(block);
    double[][] shared = new double[groups.levels()][cells.size()];
    double[] own = new double[groups.levels() + 1];
    for (int k = from; k <= level; k++) {
      own[k] = 1;
      int mine = groups.groupOf(k)[first];
      for (int c = 0; c < cells.size(); c++) {
        boolean inside = groups.groupOf(k)[cells.get(c)[0]] == mine;
        shared[k][c] = inside ? Math.sqrt(cells.get(c).length) : 0;
      }
    }
    return new Target(row, block, shared, own);
  }

  /**
   * The likelihood-ratio test of one level's component.
   *
   * @param level from 0, the outermost
   * @return statistic and chance
   * @throws IllegalArgumentException if there is no such level
   */
  public BoundaryTest testOf(int level) {
    groups.requireLevel(level);
    Blocks blocks = NestedBlocks.of(fixed, groups.without(level));
    GivenRatios without = RatioSearch.best(blocks, RatioScale.free(blocks), Likelihood.RESTRICTED);
    return BoundaryTest.of(fit.logLikelihood(), without.logLikelihood(Likelihood.RESTRICTED), 0);
  }

  /**
   * The sum of all components: the variance of a single value in a new outermost group (for groups,
   * sessions and readings the intermediate precision of ISO 5725-3).
   *
   * @return the sum with Satterthwaite's degrees of freedom
   */
  public VarianceEstimate total() {
    double[] weights = new double[groups.levels() + 1];
    Arrays.fill(weights, 1);
    return sum(weights);
  }

  /**
   * A weighted sum of components, such as the variance of a mean of two: {@code (1, 1, 0.5)}.
   *
   * @param weights one for each component, residual last, none below zero and one above
   * @return the sum with Satterthwaite's degrees of freedom from the expected information
   * @throws IllegalArgumentException if the weights are not as many, or negative, not finite or all
   *     zero
   */
  public VarianceEstimate sum(double... weights) {
    PivotalComponents.requireWeights(weights, groups.levels() + 1);
    double[][] covariance = fit.unitCovariance();
    double sum = 0;
    double spread = 0;
    for (int k = 0; k < weights.length; k++) {
      sum += weights[k] * (k < groups.levels() ? fit.given().ratio(k) : 1);
      for (int l = 0; l < weights.length; l++) {
        spread += weights[k] * weights[l] * covariance[k][l];
      }
    }
    return new VarianceEstimate(fit.residualVariance() * sum, 2 * sum * sum / spread);
  }

  /**
   * What the sums of squares say about the components, for intervals.
   *
   * @return the components' pivotal distribution; costs some tens of milliseconds
   */
  public PivotalComponents pivotal() {
    return new PivotalComponents(pivots.components(pivots.draws()));
  }

  /** The same with chi-squares at hand. */
  PivotalComponents pivotal(double[][] draws) {
    return new PivotalComponents(pivots.components(draws));
  }

  /** The chi-squares that {@link #pivotal} takes, but so many. */
  double[][] draws(int count, int generator) {
    return pivots.draws(count, generator);
  }
}
