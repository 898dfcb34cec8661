package org.quietline.stats.mixed;

import org.quietline.stats.numeric.Require;

/**
 * Lines of groups when the spread of heights and slopes relative to the residual variance is given:
 * everything in closed form.
 *
 * <p>With flat priors on the coefficients and on the logarithm of the residual deviation, the
 * height of any line, given the ratios, is {@code value + √(s²·unscaledVariance)·T} with T of
 * Student's t with n − p degrees of freedom and {@code s² = q/(n − p)}; the ratios themselves have
 * density proportional to their prior times {@code exp(logMarginal)}. Source: Box and Tiao,
 * Bayesian Inference in Statistical Analysis (1973), chapters 5 and 7; Searle, Casella and
 * McCulloch (1992), 9.2.
 */
public final class LinesGivenRatios {
  private final GroupedPoints points;
  private final GivenRatios given;

  private LinesGivenRatios(GroupedPoints points, GivenRatios given) {
    this.points = points;
    this.given = given;
  }

  /**
   * Solves for given ratios. Preparation is done once for the points; this costs some twenty
   * multiplications a group.
   *
   * @param points the points
   * @param intercept variance of heights at time zero over residual variance, zero or more
   * @param slope variance of slopes over residual variance, zero or more
   * @param covariance covariance of the two over residual variance, its square at most the product
   *     of the two
   * @return the lines
   * @throws IllegalArgumentException if a ratio is negative or not finite or the covariance too
   *     large
   */
  public static LinesGivenRatios of(
      GroupedPoints points, double intercept, double slope, double covariance) {
    Require.notNegative(intercept, "ratio of intercepts");
    Require.notNegative(slope, "ratio of slopes");
    if (!(covariance * covariance <= intercept * slope * (1 + 1e-12))) {
      throw new IllegalArgumentException(
          "ratio of covariance is " + covariance + ", more than the variances allow");
    }
    return new LinesGivenRatios(
        points, GivenRatios.of(points.plainBlocks(), intercept, slope, covariance));
  }

  /**
   * Values less coefficients.
   *
   * @return n − p
   */
  public int degreesOfFreedom() {
    return given.blocks().degreesOfFreedom();
  }

  /**
   * The generalised residual sum of squares {@code q = (y − Xβ)'H⁻¹(y − Xβ)}.
   *
   * @return q, in the square of the values' unit
   */
  public double quadraticForm() {
    return given.quadraticForm();
  }

  /**
   * {@code s² = q/(n − p)}.
   *
   * @return the residual variance
   */
  public double residualVariance() {
    return given.residualVariance(Likelihood.RESTRICTED);
  }

  /**
   * {@code ln|H|}, H being the covariance matrix of the values over the residual variance.
   *
   * @return the logarithm
   */
  public double logDeterminant() {
    return given.logDeterminant();
  }

  /**
   * {@code ln|X'H⁻¹X|}.
   *
   * @return the logarithm
   */
  public double logDeterminantOfInformation() {
    return given.logDeterminantOfInformation();
  }

  /**
   * The logarithm of the likelihood of the ratios with coefficients and residual variance
   * integrated out, up to a constant: {@code −½·[ln|H| + ln|X'H⁻¹X| + (n − p)·ln q]}.
   *
   * @return the logarithm
   */
  public double logMarginal() {
    return logMarginal(0);
  }

  /** The same with a residual variance that is not taken for less than a given one. */
  double logMarginal(double leastVariance) {
    int df = degreesOfFreedom();
    double form = Math.max(quadraticForm(), df * leastVariance);
    return -0.5 * (logDeterminant() + logDeterminantOfInformation() + df * Math.log(form));
  }

  /**
   * The restricted log likelihood at the best residual variance.
   *
   * @return the log likelihood
   */
  public double logLikelihood() {
    return given.logLikelihood(Likelihood.RESTRICTED);
  }

  /**
   * A fixed coefficient.
   *
   * @param index 0 for the intercept, 1 for the slope, then the regressors
   * @return the coefficient
   * @throws IllegalArgumentException if there is no such coefficient
   */
  public Height coefficient(int index) {
    double[] row = points.fixed().coordinates(points.only(index));
    return height(Target.fixed(row, given.blocks().components()));
  }

  /**
   * The height of the average line.
   *
   * @param time when, finite
   * @param regressors where, one number for each regressor
   * @return the height
   * @throws IllegalArgumentException if a number is not finite or the regressors are not as many
   */
  public Height averageAt(double time, double... regressors) {
    double[] row = points.fixed().coordinates(points.row(time, regressors));
    return height(Target.fixed(row, given.blocks().components()));
  }

  /**
   * The height of one group's line.
   *
   * @param group the group's label
   * @param time when, finite
   * @param regressors where, one number for each regressor
   * @return the height
   * @throws IllegalArgumentException if there is no such group, a number is not finite or the
   *     regressors are not as many
   */
  public Height groupLineAt(int group, double time, double... regressors) {
    return line(points.place(group), points.row(time, regressors), 1, time);
  }

  /**
   * The slope of one group's line.
   *
   * @param group the group's label
   * @return the slope
   * @throws IllegalArgumentException if there is no such group
   */
  public Height groupSlope(int group) {
    return line(points.place(group), points.only(1), 0, 1);
  }

  /**
   * The height of the line of a group that is not among the points.
   *
   * @param time when, finite
   * @param regressors where, one number for each regressor
   * @return the height
   * @throws IllegalArgumentException if a number is not finite or the regressors are not as many
   */
  public Height newLineAt(double time, double... regressors) {
    return line(-1, points.row(time, regressors), 1, time);
  }

  private Height line(int group, double[] row, double... z) {
    return height(points.target(LineSpread.CORRELATED, 0, row, group, z));
  }

  private Height height(Target target) {
    Prediction prediction = new Prediction(given, target);
    return new Height(prediction.value(), prediction.squaredError());
  }

  /**
   * A height, or a slope, of a line.
   *
   * @param value its expected value
   * @param unscaledVariance its variance over the residual variance; for a further single value add
   *     one
   */
  public record Height(double value, double unscaledVariance) {
    /**
     * Checks the ranges; NaN fails.
     *
     * @param value its expected value
     * @param unscaledVariance its variance over the residual variance
     * @throws IllegalArgumentException if the value is not finite or the variance negative or not
     *     finite
     */
    public Height {
      Require.finite(value, "value");
      Require.notNegative(unscaledVariance, "unscaled variance");
    }
  }
}
