package org.quietline.stats.capability;

import java.util.List;
import org.apache.commons.math3.special.Gamma;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;
import org.quietline.stats.numeric.Sum;
import org.quietline.stats.sample.MovingRange;

/**
 * A deviation within groups, or from one value to the next, with its own degrees of freedom.
 *
 * @param deviation the deviation, zero or more
 * @param degreesOfFreedom its degrees of freedom, finite and at least 1
 */
public record WithinDeviation(double deviation, double degreesOfFreedom) {
  /** Variance of a range of two standard normal values, {@code 2 − 4/π}. */
  private static final double RANGE_VARIANCE = 2 - 4 / Math.PI;

  /** Covariance of two ranges that share a value, {@code (4/π)(√3/2 + π/12 − 1)}. */
  private static final double RANGE_COVARIANCE =
      4 / Math.PI * (Math.sqrt(3) / 2 + Math.PI / 12 - 1);

  /**
   * Checks the ranges.
   *
   * @param deviation the deviation
   * @param degreesOfFreedom its degrees of freedom
   * @throws IllegalArgumentException if the deviation is negative or not finite or the degrees of
   *     freedom are below 1 or not finite
   */
  public WithinDeviation {
    Require.notNegative(deviation, "deviation");
    if (!(degreesOfFreedom >= 1 && Double.isFinite(degreesOfFreedom))) {
      throw new IllegalArgumentException(
          "degrees of freedom must be at least 1 and finite, is " + degreesOfFreedom);
    }
  }

  /**
   * The pooled deviation of groups about their own means, {@code √(ΣΣ(x − x̄(i))²/Σ(n(i) − 1))},
   * with {@code Σ(n(i) − 1)} degrees of freedom. Groups of one value say nothing and are allowed.
   * Source: ISO 22514-2:2017; ISO 7870-2:2013.
   *
   * @param groups at least one group of two values or more, all finite
   * @return the deviation
   * @throws IllegalArgumentException if no group has two values, one has none, or a value is NaN or
   *     infinite
   */
  public static WithinDeviation pooled(List<double[]> groups) {
    Sum squares = new Sum();
    int df = 0;
    for (double[] group : groups) {
      Require.values(group, 1);
      squares.add(Centred.of(group).sumOfSquares());
      df += group.length - 1;
    }
    Require.atLeast(df, 1, "degrees of freedom within groups");
    return new WithinDeviation(Math.sqrt(squares.value() / df), df);
  }

  /**
   * The deviation from the mean moving range of two, {@code MR/d2}, with effective degrees of
   * freedom: those at which a deviation by chi-square varies as much, in relation to its mean, as
   * the mean moving range of independent normal values does, {@code c4(ν)^−2 − 1 = (π/4)·(m·v + 2(m
   * − 1)·c)/m²} with {@code m = n − 1}, {@code v = 2 − 4/π} and {@code c = (4/π)(√3/2 + π/12 − 1)}.
   * About 0.61·(n − 1) + 0.3 of them. Bounds made of it are approximate: the 95 % interval of Cpk
   * for one limit held the truth in 94.0, 94.3, 94.7 and 94.8 % at n = 5, 8, 12 and 20, the lower
   * bound alone in 97.3, 96.8, 96.6 and 96.2 %, the interval of Cp in 93.4, 94.1, 94.6 and 94.7 %
   * (simulation). Source: Patnaik (1950), Biometrika 37, 78–87 (the method); the covariance follows
   * from Nabeya (1951), Ann. Inst. Stat. Math. 3, 2–6.
   *
   * @param values at least three finite numbers in time order
   * @return the deviation
   * @throws IllegalArgumentException if there are fewer than three or one is NaN or infinite
   */
  public static WithinDeviation fromMovingRange(double... values) {
    Require.values(values, 3);
    double deviation = MovingRange.deviation(MovingRange.mean(values));
    return new WithinDeviation(deviation, freedomOfMovingRange(values.length));
  }

  /**
   * The effective degrees of freedom of a mean moving range of two, as in {@link #fromMovingRange}.
   *
   * @param n how many values it comes from, at least 3
   * @return the degrees of freedom, about {@code 0.61·(n − 1) + 0.3}
   * @throws IllegalArgumentException if n is below 3
   */
  public static double freedomOfMovingRange(int n) {
    Require.atLeast(n, 3, "n");
    double m = n - 1.0;
    double variation =
        Math.PI / 4 * (m * RANGE_VARIANCE + 2 * (m - 1) * RANGE_COVARIANCE) / (m * m);
    double c4 = 1 / Math.sqrt(1 + variation);
    double logStart = Math.log(Math.max(1, 0.6 * m));
    return Math.exp(Roots.of(logDf -> c4(Math.exp(logDf)) - c4, logStart, 0.3));
  }

  /** The mean of a deviation over the true one, {@code √(2/ν)·Γ((ν + 1)/2)/Γ(ν/2)}. */
  private static double c4(double df) {
    return Math.sqrt(2 / df) * Math.exp(Gamma.logGamma((df + 1) / 2) - Gamma.logGamma(df / 2));
  }
}
