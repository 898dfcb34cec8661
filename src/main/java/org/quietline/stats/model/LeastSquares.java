package org.quietline.stats.model;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.quietline.stats.Interval;
import org.quietline.stats.compare.VarianceRatio;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * A model that is linear in its coefficients, fitted by ordinary or weighted least squares.
 *
 * <p>With the matrix X of {@link Terms} and weights W, {@code b = (X′WX)⁻¹X′Wy}, {@code s² = Σ
 * w·r²/(n − p)} for n values and p coefficients, {@code cov(b) = s²·(X′WX)⁻¹}. A value of weight w
 * is taken to have the variance {@code σ²/w}: weights are relative, and s is the deviation of a
 * value of weight 1. Intervals take the errors as normal and independent and the predictors as free
 * of error, and are then exact. Source: Draper and Smith (1998), Applied Regression Analysis,
 * chapters 5 and 9; ISO 11095:1996.
 *
 * <p>Orthogonal columns in two doubles ({@code GramSchmidt}), powers and predictors scaled by
 * powers of two: all NIST StRD linear sets agree to at least 13 digits, the polynomial of degree 10
 * included. Terms of which one is a combination of those before it, to 15 digits, are refused.
 * Residuals below 1e-24 of the largest y are rounding and count as zero; a perfect fit has zero
 * deviation, intervals of no width, and no ratio of variances.
 */
public final class LeastSquares {
  private static final double ROUNDING = 0x1p-80;

  private final Terms terms;
  private final double[][] points;
  private final double[] weights;
  private final int[] xExponents;
  private final int yExponent;
  private final int weightExponent;
  private final GramSchmidt columns;
  private final Twofold[] coefficients;
  private final double[] residuals;

  /** The residual variance of the scaled y and weights. */
  private final double scaledVariance;

  private LeastSquares(Terms terms, double[][] points, double[] y, double[] weights) {
    this.terms = terms;
    this.points = points;
    this.weights = weights;
    int n = y.length;
    xExponents = new int[terms.predictors()];
    Arrays.setAll(xExponents, j -> exponent(Arrays.stream(points).mapToDouble(x -> x[j])));
    yExponent = exponent(Arrays.stream(y));
    weightExponent = exponent(Arrays.stream(weights)) & ~1;
    Twofold[][] x = new Twofold[terms.count()][n];
    Twofold[] last = new Twofold[n];
    double[] scaledWeights = new double[n];
    for (int i = 0; i < n; i++) {
      Twofold[] row = terms.row(points[i], xExponents);
      for (int k = 0; k < row.length; k++) {
        x[k][i] = row[k];
      }
      last[i] = Twofold.of(Math.scalb(y[i], -yExponent));
      scaledWeights[i] = Math.scalb(weights[i], -weightExponent);
    }
    columns = new GramSchmidt(x, last, scaledWeights);
    coefficients = columns.coefficients();
    residuals = withoutRounding(columns.residuals());
    Sum squares = new Sum();
    for (int i = 0; i < n; i++) {
      squares.addProduct(scaledWeights[i] * residuals[i], residuals[i]);
    }
    scaledVariance = squares.value() / (n - terms.count());
  }

  private static int exponent(DoubleStream values) {
    double largest = values.map(Math::abs).max().orElse(0);
    return largest == 0 ? 0 : Math.getExponent(largest);
  }

  private static double[] withoutRounding(Twofold[] residuals) {
    double[] rounded = Arrays.stream(residuals).mapToDouble(Twofold::value).toArray();
    boolean perfect = Arrays.stream(rounded).allMatch(r -> Math.abs(r) <= ROUNDING);
    return perfect ? new double[rounded.length] : rounded;
  }

  /**
   * Fits a model with all values of the same weight.
   *
   * @param terms the terms
   * @param points the predictors of each value, each as many as the terms want, each number at most
   *     1e150 in size
   * @param y as many finite numbers, at least one more than there are coefficients
   * @return the fit
   * @throws IllegalArgumentException if there are too few values, the lengths differ, a number is
   *     NaN, infinite or larger, or one term is a combination of others
   */
  public static LeastSquares fit(Terms terms, double[][] points, double[] y) {
    double[] weights = new double[y.length];
    Arrays.fill(weights, 1);
    return weighted(terms, points, y, weights);
  }

  /**
   * The same for one predictor.
   *
   * @param terms terms of one predictor
   * @param x its values
   * @param y as many finite numbers, at least one more than there are coefficients
   * @return the fit
   * @throws IllegalArgumentException as above
   */
  public static LeastSquares fit(Terms terms, double[] x, double[] y) {
    return fit(terms, pointsOf(x), y);
  }

  /**
   * Fits a model with a weight for each value.
   *
   * @param terms the terms
   * @param points the predictors of each value, each as many as the terms want, each number at most
   *     1e150 in size
   * @param y as many finite numbers, at least one more than there are coefficients
   * @param weights as many numbers above zero, each the inverse of the value's variance up to a
   *     factor that all share
   * @return the fit
   * @throws IllegalArgumentException if there are too few values, the lengths differ, a number is
   *     NaN, infinite or larger, a weight is not above zero, or one term is a combination of others
   */
  public static LeastSquares weighted(
      Terms terms, double[][] points, double[] y, double[] weights) {
    if (points.length != y.length) {
      throw new IllegalArgumentException(points.length + " points but " + y.length + " values");
    }
    if (weights.length != y.length) {
      throw new IllegalArgumentException(weights.length + " weights but " + y.length + " values");
    }
    Require.values(y, terms.count() + 1);
    Require.values(weights, 1);
    double[][] copy = new double[points.length][];
    for (int i = 0; i < points.length; i++) {
      terms.check(points[i]);
      Require.positive(weights[i], "weight");
      copy[i] = points[i].clone();
    }
    return new LeastSquares(terms, copy, y, weights.clone());
  }

  /**
   * The same for one predictor.
   *
   * @param terms terms of one predictor
   * @param x its values
   * @param y as many finite numbers, at least one more than there are coefficients
   * @param weights as many numbers above zero
   * @return the fit
   * @throws IllegalArgumentException as above
   */
  public static LeastSquares weighted(Terms terms, double[] x, double[] y, double[] weights) {
    return weighted(terms, pointsOf(x), y, weights);
  }

  private static double[][] pointsOf(double[] x) {
    return Arrays.stream(x).mapToObj(v -> new double[] {v}).toArray(double[][]::new);
  }

  /**
   * The terms of the model.
   *
   * @return the terms
   */
  public Terms terms() {
    return terms;
  }

  /**
   * How many values were fitted.
   *
   * @return the number n
   */
  public int n() {
    return residuals.length;
  }

  /**
   * A coefficient.
   *
   * @param k its place, from 0, in the order of {@link Terms}
   * @return the coefficient
   * @throws IllegalArgumentException if there is no such coefficient
   */
  public double coefficient(int k) {
    return Math.scalb(coefficients[place(k)].value(), yExponent - termExponent(k));
  }

  /**
   * The covariance of two coefficients.
   *
   * @param j the place of one, from 0
   * @param k the place of the other, or the same for the variance
   * @return the covariance
   * @throws IllegalArgumentException if there is no such coefficient
   */
  public double covariance(int j, int k) {
    double form = columns.form(unit(place(j)), unit(place(k))).value();
    return Math.scalb(scaledVariance * form, 2 * yExponent - termExponent(j) - termExponent(k));
  }

  /**
   * The standard error of a coefficient.
   *
   * @param k its place, from 0
   * @return the standard error
   * @throws IllegalArgumentException if there is no such coefficient
   */
  public double standardError(int k) {
    Twofold[] unit = unit(place(k));
    double scaled = Math.sqrt(scaledVariance * columns.form(unit, unit).value());
    return Math.scalb(scaled, yExponent - termExponent(k));
  }

  /**
   * The confidence interval of a coefficient by Student's t with n − p degrees of freedom.
   *
   * @param k its place, from 0
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if there is no such coefficient or the level is not between 0
   *     and 1
   */
  public Interval coefficientInterval(int k, double level) {
    return around(coefficient(k), standardError(k), level);
  }

  /**
   * The degrees of freedom of the residual deviation.
   *
   * @return n − p
   */
  public int degreesOfFreedom() {
    return residuals.length - terms.count();
  }

  /**
   * The deviation of a value of weight 1 about the model.
   *
   * @return the residual deviation s, zero for a perfect fit
   */
  public double residualDeviation() {
    return Math.scalb(Math.sqrt(scaledVariance), yExponent + weightExponent / 2);
  }

  /**
   * The weighted sum of the squared residuals.
   *
   * @return the sum
   */
  public double residualSquares() {
    return Math.scalb(scaledVariance * degreesOfFreedom(), 2 * yExponent + weightExponent);
  }

  /**
   * The sum of squares that the model explains: about the weighted mean of y with an intercept,
   * about zero without.
   *
   * @return the sum
   */
  public double explainedSquares() {
    return Math.scalb(scaledExplained(), 2 * yExponent + weightExponent);
  }

  private double scaledExplained() {
    Twofold sum = Twofold.ZERO;
    for (int k = terms.intercepts(); k < coefficients.length; k++) {
      sum = sum.plus(columns.squareOf(k));
    }
    return sum.value();
  }

  /**
   * The share of the squares that the model explains, R².
   *
   * @return the share, or empty where there is nothing to explain: y all equal, or all zero without
   *     an intercept
   */
  public OptionalDouble explainedShare() {
    double explained = scaledExplained();
    double whole = explained + scaledVariance * degreesOfFreedom();
    return whole > 0 ? OptionalDouble.of(explained / whole) : OptionalDouble.empty();
  }

  /**
   * The F test of all coefficients but the intercept against zero.
   *
   * @return the ratio of the explained to the residual mean square and its upper tail, or empty for
   *     a perfect fit
   */
  public Optional<VarianceRatio> explainedRatio() {
    int df = terms.count() - terms.intercepts();
    return scaledVariance == 0
        ? Optional.empty()
        : Optional.of(
            VarianceRatio.of(
                Math.sqrt(scaledExplained() / df),
                df,
                Math.sqrt(scaledVariance),
                degreesOfFreedom()));
  }

  /**
   * The residuals, observed less fitted, not weighted.
   *
   * @return a copy, in the order of the values
   */
  public double[] residuals() {
    return Arrays.stream(residuals).map(r -> Math.scalb(r, yExponent)).toArray();
  }

  /**
   * The height of the model.
   *
   * @param point the predictors
   * @return the height
   * @throws IllegalArgumentException if there are more or fewer numbers than predictors or one is
   *     NaN, infinite or larger than 1e150
   */
  public double at(double... point) {
    terms.check(point);
    Twofold height = GramSchmidt.inner(terms.row(point, xExponents), coefficients);
    return Math.scalb(height.value(), yExponent);
  }

  /**
   * The standard error of the height.
   *
   * @param point the predictors
   * @return the standard error
   * @throws IllegalArgumentException if there are more or fewer numbers than predictors or one is
   *     NaN, infinite or larger than 1e150
   */
  public double standardErrorAt(double... point) {
    return errorWith(0, point);
  }

  /**
   * The confidence interval of the height at one point; not a band for all points at once.
   *
   * @param level the confidence level, between 0 and 1
   * @param point the predictors
   * @return the interval
   * @throws IllegalArgumentException if the point does not suit or the level is not between 0 and 1
   */
  public Interval intervalAt(double level, double... point) {
    return around(at(point), standardErrorAt(point), level);
  }

  /**
   * The interval that holds one further value at a point, or the mean of several: {@code height ±
   * t·s·√(1/w + x′(X′WX)⁻¹x)}.
   *
   * @param level the chance that the interval holds it, between 0 and 1
   * @param weight the weight of the further value on the scale of those fitted, above zero; the
   *     mean of m values of weight 1 has weight m
   * @param point the predictors
   * @return the interval
   * @throws IllegalArgumentException if the point does not suit, the weight is not above zero or
   *     the level is not between 0 and 1
   */
  public Interval predictionInterval(double level, double weight, double... point) {
    Require.positive(weight, "weight");
    return around(at(point), errorWith(Math.scalb(1 / weight, weightExponent), point), level);
  }

  private double errorWith(double more, double[] point) {
    terms.check(point);
    Twofold[] row = terms.row(point, xExponents);
    double form = columns.form(row, row).value();
    return Math.scalb(Math.sqrt(scaledVariance * (more + form)), yExponent);
  }

  /**
   * Whether the model has the right shape, judged against values at the same point.
   *
   * @return the test, or empty where no two values share a point or there are no more different
   *     points than coefficients
   */
  public Optional<LackOfFit> lackOfFit() {
    return LackOfFit.of(points, weights, residuals(), terms.count());
  }

  private Interval around(double middle, double error, double level) {
    Require.share(level, "level");
    double half = error * Student.exceededWith((1 - level) / 2, degreesOfFreedom());
    return new Interval(middle - half, middle + half);
  }

  private int place(int k) {
    if (k < 0 || k >= coefficients.length) {
      throw new IllegalArgumentException(
          "no coefficient " + k + " among " + coefficients.length + ", counted from 0");
    }
    return k;
  }

  private int termExponent(int k) {
    return terms.exponents(xExponents)[k];
  }

  private Twofold[] unit(int k) {
    Twofold[] unit = new Twofold[coefficients.length];
    Arrays.fill(unit, Twofold.ZERO);
    unit[k] = Twofold.ONE;
    return unit;
  }
}
