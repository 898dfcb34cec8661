package org.quietline.stats.sample;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;

/**
 * A normal or lognormal population fitted to a {@link CensoredSample} by maximum likelihood.
 *
 * <p>Location μ and scale σ are those of the values, or of their natural logarithms for a lognormal
 * population. They maximise {@code Σ ln(φ((x − μ)/σ)/σ) + Σ ln Φ((L − μ)/σ) + Σ ln Φ((μ − U)/σ)},
 * which has one highest point wherever two different values are known; it is found to about 1e-12.
 * Without censored values μ is the mean and σ the deviation with divisor n: as always with maximum
 * likelihood, σ is too small on average by about {@code 1 − 3/(4n)}.
 *
 * <p>Intervals hold the values of a parameter whose profile log-likelihood, the highest that the
 * other parameter allows, lies within {@code n/2·ln(1 + t²/(n − 1))} of the top, t being Student's
 * quantile with n − 1 degrees of freedom and n counting censored values too. Without censored
 * values that makes the interval of the location exactly Student's; the customary {@code χ²/2} is
 * its limit for many values and held 92 to 94 % at n from 8 to 20. In simulation with 0, 25 and 50
 * % censored the 95 % intervals held the location in 94.8 to 95.9 %, the scale in 94.3 to 95.4 %
 * and the 95 % quantile in 94.4 to 95.8 % at n = 8, 12 and 20, but for the location of eight values
 * half of which are censored: 97.7 %.
 *
 * <p>Source: Cohen (1959), Technometrics 1, 217–237; Helsel (2012), chapter 6; profile likelihood:
 * Meeker and Escobar (1995), Am. Stat. 49, 48–53.
 */
public final class CensoredNormal implements CensoredFit {
  private final CensoredSample.Shape shape;
  private final CensoredLikelihood likelihood;
  private final CensoredLikelihood.Place best;
  private final int known;
  private final int values;
  private final double centre;
  private final double unit;
  private final double height;
  private final CensoredLikelihood.Slopes curvature;

  CensoredNormal(CensoredSample.Shape shape, double[] exact, double[] below, double[] above) {
    this.shape = shape;
    this.known = exact.length;
    this.values = exact.length + below.length + above.length;
    Centred centred = Centred.of(exact);
    this.centre = centred.mean();
    this.unit = Math.sqrt(centred.sumOfSquares() / exact.length);
    this.likelihood = new CensoredLikelihood(inUnits(exact), inUnits(below), inUnits(above));
    this.best = likelihood.highest(new CensoredLikelihood.Place(0, 1));
    this.height = likelihood.at(best);
    this.curvature = likelihood.slopes(best);
  }

  private double[] inUnits(double[] values) {
    return Arrays.stream(values).map(v -> (v - centre) / unit).toArray();
  }

  /**
   * The shape of the population.
   *
   * @return normal or lognormal
   */
  public CensoredSample.Shape shape() {
    return shape;
  }

  /**
   * The location.
   *
   * @return μ, the mean of the values or of their logarithms
   */
  public double location() {
    return centre + unit * best.eta() / best.theta();
  }

  /**
   * The scale.
   *
   * @return σ, the standard deviation of the values or of their logarithms
   */
  public double scale() {
    return unit / best.theta();
  }

  /**
   * The mean of the population in the unit of the values.
   *
   * @return μ, or {@code exp(μ + σ²/2)} for a lognormal population
   */
  public double mean() {
    double scale = scale();
    return shape == CensoredSample.Shape.NORMAL
        ? location()
        : Math.exp(location() + scale * scale / 2);
  }

  /**
   * The standard deviation of the population in the unit of the values.
   *
   * @return σ, or {@code mean·√(exp(σ²) − 1)} for a lognormal population
   */
  public double deviation() {
    double scale = scale();
    return shape == CensoredSample.Shape.NORMAL
        ? scale
        : mean() * Math.sqrt(Math.expm1(scale * scale));
  }

  /**
   * The value with a share of the population below it.
   *
   * @param share the share, between 0 and 1
   * @return the value, in the unit of the values
   * @throws IllegalArgumentException if the share is not between 0 and 1
   */
  public double quantile(double share) {
    Require.share(share, "share");
    return outward(location() + Normal.quantile(share) * scale());
  }

  /**
   * The standard error of the location, from the observed information.
   *
   * @return the error, in the unit of the location
   */
  public double locationError() {
    return Math.sqrt(covariance()[0]);
  }

  /**
   * The standard error of the scale, from the observed information.
   *
   * @return the error, in the unit of the scale
   */
  public double scaleError() {
    return Math.sqrt(covariance()[2]);
  }

  /**
   * The covariance of location and scale, from the observed information.
   *
   * @return the covariance; zero without censored values
   */
  public double errorCovariance() {
    return covariance()[1];
  }

  /** Variance of the location, covariance, variance of the scale. */
  private double[] covariance() {
    double theta = best.theta();
    double m = best.eta() / theta;
    double aa = -curvature.etaEta();
    double ab = -curvature.etaTheta();
    double bb = -curvature.thetaTheta();
    // d(eta, theta)/d(m, s) at s = 1/theta: eta = m/s, theta = 1/s
    double em = theta;
    double es = -m * theta * theta;
    double ts = -theta * theta;
    double mm = em * em * aa;
    double ms = em * (es * aa + ts * ab);
    double ss = es * es * aa + 2 * es * ts * ab + ts * ts * bb;
    double scale = unit * unit / (mm * ss - ms * ms);
    return new double[] {ss * scale, -ms * scale, mm * scale};
  }

  /**
   * The log-likelihood of the fit, densities taken in the unit of the location.
   *
   * @return the log-likelihood
   */
  public double logLikelihood() {
    return height - known * Math.log(unit);
  }

  /**
   * The confidence interval of the location by the profile likelihood.
   *
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval locationInterval(double level) {
    return workingQuantileInterval(0, level);
  }

  /**
   * The confidence interval of the value with a share of the population below it, by the profile
   * likelihood.
   *
   * @param share the share, between 0 and 1
   * @param level the confidence level, between 0 and 1
   * @return the interval, in the unit of the values
   * @throws IllegalArgumentException if the share or the level is not between 0 and 1
   */
  public Interval quantileInterval(double share, double level) {
    Require.share(share, "share");
    Interval working = workingQuantileInterval(Normal.quantile(share), level);
    return new Interval(outward(working.lower()), outward(working.upper()));
  }

  /**
   * How far the log-likelihood falls from its top where a value is held to lie so many deviations
   * from the location, whatever the scale: the profile that intervals are read from.
   *
   * @param value the value, in the unit of the values; above zero for a lognormal population
   * @param z how many deviations from the location it is held to lie
   * @return the fall, zero or more but for rounding
   * @throws IllegalArgumentException if the value or z is not finite, or the value not above zero
   *     for a lognormal population
   */
  public double fall(double value, double z) {
    Require.finite(z, "z");
    Require.finite(value, "value");
    double working = value;
    if (shape == CensoredSample.Shape.LOGNORMAL) {
      Require.positive(value, "value");
      working = Math.log(value);
    }
    return height - likelihood.highestWithQuantile((working - centre) / unit, z, best.theta());
  }

  private Interval workingQuantileInterval(double z, double level) {
    double least = height - allowedFall(level);
    double middle = (best.eta() + z) / best.theta();
    double step = Math.hypot(1, z) / best.theta() / Math.sqrt(known);
    DoubleUnaryOperator excess = q -> likelihood.highestWithQuantile(q, z, best.theta()) - least;
    return new Interval(
        centre + unit * end(excess, middle, -step), centre + unit * end(excess, middle, step));
  }

  /**
   * The confidence interval of the scale by the profile likelihood.
   *
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval scaleInterval(double level) {
    double least = height - allowedFall(level);
    DoubleUnaryOperator excess =
        log -> likelihood.highestWithScale(Math.exp(-log), best.eta()) - least;
    double middle = -Math.log(best.theta());
    double step = 1 / Math.sqrt(2.0 * known);
    return new Interval(
        unit * Math.exp(end(excess, middle, -step)), unit * Math.exp(end(excess, middle, step)));
  }

  /** Half of {@code n·ln(1 + t²/(n − 1))}, Student's t in the unit of the likelihood. */
  private double allowedFall(double level) {
    Require.share(level, "level");
    double df = values - 1.0;
    double t = Student.exceededWith((1 - level) / 2, df);
    return values / 2.0 * Math.log1p(t * t / df);
  }

  private static double end(DoubleUnaryOperator excess, double middle, double step) {
    double near = middle;
    double far = middle + step;
    double reach = step;
    while (excess.applyAsDouble(far) > 0) {
      near = far;
      reach *= 2;
      far += reach;
    }
    return Roots.between(excess, Math.min(near, far), Math.max(near, far));
  }

  private double outward(double working) {
    return shape == CensoredSample.Shape.NORMAL ? working : Math.exp(working);
  }
}
