package org.quietline.stats.model;

import java.util.Arrays;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.distribution.StudentPlusNormal;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * A straight line by ordinary or weighted least squares, {@code y = a + b·x}, with the uncertainty
 * of its slope and of its height anywhere.
 *
 * <p>With Sxx = Σ(x − x̄)², {@code b = Σ(x − x̄)(y − ȳ)/Sxx}, residual deviation {@code s = √(Σ
 * r²/(n − 2))}, {@code u(b) = s/√Sxx} and {@code u(height at x)² = s²·(1/n + (x − x̄)²/Sxx)}. Sums
 * and coefficients are carried in two doubles. With weights, every sum and mean is weighted, n in
 * the uncertainty of the height is the sum of the weights, and s is the deviation of a value of
 * weight 1. Source: ISO 11095:1996; Draper and Smith (1998), chapters 1 and 9; ISO/TS 28037:2010,
 * 6; NIST StRD linear regression.
 *
 * <p>A standard uncertainty u shared by all y, such as that of a common reference value, shifts the
 * line as a whole: it adds u² to the variance of the height and nothing to that of the slope. The
 * height is then distributed as its estimate plus {@code v·T + u·Z}, with T of Student's t with n −
 * 2 degrees of freedom and Z normal, u being taken as known; chances and intervals integrate over Z
 * and are never smaller than those without u.
 *
 * <p>A perfect fit has zero residual deviation: intervals shrink to their middle, or to the shared
 * uncertainty with the normal distribution, and {@link #chanceBeyond} is 0 or 1. A fit perfect but
 * for rounding gives a residual deviation of that rounding.
 */
public final class StraightLine {
  private final int n;
  private final double weight;
  private final Centre x;
  private final Centre y;
  private final double slope;
  private final double slopeRest;
  private final double sxx;
  private final double residual;
  private final double shared;

  private StraightLine(
      int n,
      double weight,
      Centre x,
      Centre y,
      double slope,
      double slopeRest,
      double sxx,
      double residual,
      double shared) {
    this.n = n;
    this.weight = weight;
    this.x = x;
    this.y = y;
    this.slope = slope;
    this.slopeRest = slopeRest;
    this.sxx = sxx;
    this.residual = residual;
    this.shared = shared;
  }

  /** A mean in two doubles. */
  private record Centre(double mean, double meanRest) {}

  /**
   * Fits a line.
   *
   * @param x at least three finite numbers, not all equal
   * @param y as many finite numbers
   * @return the line
   * @throws IllegalArgumentException if there are fewer than three points, the lengths differ, all
   *     x are equal, or a number is NaN or infinite
   */
  public static StraightLine fit(double[] x, double[] y) {
    check(x, y);
    Centred cx = Centred.of(x);
    Centred cy = Centred.of(y);
    double[] ones = new double[x.length];
    Arrays.fill(ones, 1);
    return through(
        new Centre(cx.mean(), cx.meanRest()),
        cx.deviations(),
        new Centre(cy.mean(), cy.meanRest()),
        cy.deviations(),
        ones);
  }

  /**
   * Fits a line with a weight for each point.
   *
   * @param x at least three finite numbers, not all equal
   * @param y as many finite numbers
   * @param weights as many numbers above zero, each the inverse of the variance of y up to a factor
   *     that all share
   * @return the line
   * @throws IllegalArgumentException if there are fewer than three points, the lengths differ, all
   *     x are equal, a number is NaN or infinite, or a weight is not above zero
   */
  public static StraightLine weighted(double[] x, double[] y, double[] weights) {
    check(x, y);
    if (weights.length != x.length) {
      throw new IllegalArgumentException(weights.length + " weights but " + x.length + " points");
    }
    Require.values(weights, 3);
    for (double w : weights) {
      Require.positive(w, "weight");
    }
    Centre cx = centre(x, weights);
    Centre cy = centre(y, weights);
    return through(cx, about(cx, x), cy, about(cy, y), weights);
  }

  private static void check(double[] x, double[] y) {
    if (x.length != y.length) {
      throw new IllegalArgumentException(x.length + " values of x but " + y.length + " of y");
    }
    Require.values(x, 3);
    Require.values(y, 3);
    Require.spread(x, "x");
  }

  private static StraightLine through(
      Centre x, double[] dx, Centre y, double[] dy, double[] weights) {
    int n = dx.length;
    double[] weighted = new double[n];
    Arrays.setAll(weighted, i -> weights[i] * dx[i]);
    double sxx = Sum.ofProducts(weighted, dx);
    double slope = Sum.ofProducts(weighted, dy) / sxx;
    double rest = Sum.ofProducts(weighted, residuals(dx, dy, slope, 0)) / sxx;
    double[] residuals = residuals(dx, dy, slope, rest);
    Arrays.setAll(weighted, i -> weights[i] * residuals[i]);
    double residual = Math.sqrt(Sum.ofProducts(weighted, residuals) / (n - 2));
    return new StraightLine(n, total(weights).value(), x, y, slope, rest, sxx, residual, 0);
  }

  private static Sum total(double[] weights) {
    Sum total = new Sum();
    for (double w : weights) {
      total.add(w);
    }
    return total;
  }

  /** The weighted mean, and by a second pass what it leaves out. */
  private static Centre centre(double[] values, double[] weights) {
    double total = total(weights).value();
    double first = Sum.ofProducts(weights, values) / total;
    double correction = Sum.ofProducts(weights, about(new Centre(first, 0), values)) / total;
    double mean = first + correction;
    return new Centre(mean, (first - mean) + correction);
  }

  private static double[] about(Centre centre, double[] values) {
    double[] deviations = new double[values.length];
    Arrays.setAll(
        deviations,
        i -> new Sum().add(values[i]).add(-centre.mean()).add(-centre.meanRest()).value());
    return deviations;
  }

  private static double[] residuals(double[] dx, double[] dy, double slope, double rest) {
    double[] residuals = new double[dx.length];
    Arrays.setAll(
        residuals,
        i -> new Sum().add(dy[i]).addProduct(-slope, dx[i]).addProduct(-rest, dx[i]).value());
    return residuals;
  }

  /**
   * The same line with a standard uncertainty that all y share, in place of any given before.
   *
   * @param u the standard uncertainty, in the unit of y, zero or more
   * @return the line with it
   * @throws IllegalArgumentException if u is negative or not finite
   */
  public StraightLine withSharedUncertainty(double u) {
    Require.notNegative(u, "shared uncertainty");
    return new StraightLine(n, weight, x, y, slope, slopeRest, sxx, residual, u);
  }

  /**
   * The height at x = 0.
   *
   * @return the intercept
   */
  public double intercept() {
    return at(0);
  }

  /**
   * The change of y for one unit of x.
   *
   * @return the slope
   */
  public double slope() {
    return slope + slopeRest;
  }

  /**
   * The covariance of intercept and slope, {@code −s²·x̄/Sxx}; a shared uncertainty adds nothing.
   *
   * @return the covariance
   */
  public double covariance() {
    return -slopeError() * slopeError() * x.mean();
  }

  /**
   * The deviation of the points about the line, of a point of weight 1 where they are weighted.
   *
   * @return the residual deviation, zero for a perfect fit
   */
  public double residualDeviation() {
    return residual;
  }

  /**
   * The degrees of freedom of the residual deviation.
   *
   * @return n − 2
   */
  public int degreesOfFreedom() {
    return n - 2;
  }

  /**
   * The standard error of the intercept, the shared uncertainty included.
   *
   * @return the standard error of the height at x = 0
   */
  public double interceptError() {
    return standardErrorAt(0);
  }

  /**
   * The standard error of the slope.
   *
   * @return {@code s/√Sxx}
   */
  public double slopeError() {
    return residual / Math.sqrt(sxx);
  }

  /**
   * The confidence interval of the slope by Student's t with n − 2 degrees of freedom.
   *
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval slopeInterval(double level) {
    return around(slope(), slopeError(), n - 2.0, level);
  }

  /**
   * The height of the line.
   *
   * @param at where, finite
   * @return the height
   * @throws IllegalArgumentException if x is not finite
   */
  public double at(double at) {
    Require.finite(at, "x");
    double step = step(at);
    double stepRest = new Sum().add(at).add(-x.mean()).add(-step).add(-x.meanRest()).value();
    return new Sum()
        .add(y.mean())
        .add(y.meanRest())
        .addProduct(slope, step)
        .addProduct(slope, stepRest)
        .addProduct(slopeRest, step)
        .value();
  }

  /**
   * The standard error of the height, the shared uncertainty included.
   *
   * @param at where, finite
   * @return the standard error
   * @throws IllegalArgumentException if x is not finite
   */
  public double standardErrorAt(double at) {
    return Math.sqrt(lineVariance(at) + shared * shared);
  }

  /**
   * The confidence interval of the height at one x; not a band for all x at once, and not an
   * interval for a further point.
   *
   * @param at where, finite
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if x is not finite or the level is not between 0 and 1
   */
  public Interval intervalAt(double at, double level) {
    Require.share(level, "level");
    double half = height(at).exceededWith((1 - level) / 2);
    return new Interval(at(at) - half, at(at) + half);
  }

  /**
   * The interval that holds one further y at a point, or the mean of several, by Student's t:
   * {@code height ± t·s·√(1/w + 1/n + (x − x̄)²/Sxx)}. A shared uncertainty is not counted: the
   * further y shares it with the line.
   *
   * @param at where, finite
   * @param newWeight the weight of the further y on the scale of those fitted, above zero; the mean
   *     of m values of weight 1 has weight m
   * @param level the chance that the interval holds it, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if x is not finite, the weight is not above zero or the level
   *     is not between 0 and 1
   */
  public Interval predictionInterval(double at, double newWeight, double level) {
    Require.positive(newWeight, "weight");
    double error = Math.sqrt(lineVariance(at) + residual * residual / newWeight);
    return around(at(at), error, n - 2.0, level);
  }

  /**
   * The chance that the true height is farther from zero than an allowance, {@code P(|height| >
   * allowance)}, under the distribution of the height about its estimate (the posterior of a flat
   * prior on the line and on the logarithm of the deviation).
   *
   * @param at where, finite
   * @param allowance the allowance, zero or more, in the unit of y
   * @return the chance
   * @throws IllegalArgumentException if x is not finite or the allowance is negative or not finite
   */
  public double chanceBeyond(double at, double allowance) {
    Require.notNegative(allowance, "allowance");
    double height = Math.abs(at(at));
    if (standardErrorAt(at) == 0) {
      return height > allowance ? 1 : 0;
    }
    StudentPlusNormal spread = height(at);
    return Math.min(1, spread.above(allowance - height) + spread.above(allowance + height));
  }

  private StudentPlusNormal height(double at) {
    return new StudentPlusNormal(Math.sqrt(lineVariance(at)), n - 2.0, shared);
  }

  private double lineVariance(double at) {
    Require.finite(at, "x");
    double step = step(at);
    return residual * residual * (1 / weight + step * step / sxx);
  }

  private double step(double at) {
    return new Sum().add(at).add(-x.mean()).add(-x.meanRest()).value();
  }

  private static Interval around(double middle, double error, double df, double level) {
    Require.share(level, "level");
    double half = error * Student.exceededWith((1 - level) / 2, df);
    return new Interval(middle - half, middle + half);
  }

  /** The weighted mean of x. */
  double meanOfX() {
    return x.mean();
  }

  /** The variance of the mean height over that of a point of weight 1: one over all weights. */
  double meanShare() {
    return 1 / weight;
  }

  double sharedUncertainty() {
    return shared;
  }
}
