package org.quietline.stats.control;

import org.apache.commons.math3.special.Gamma;
import org.quietline.stats.capability.WithinDeviation;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.numeric.Quadrature;
import org.quietline.stats.numeric.Require;

/**
 * How often a value in control leaves limits {@code mean ± K·deviation} that come from a baseline
 * of n independent normal values, on average over baselines.
 *
 * <p>The next value lies from the baseline's mean with variance {@code σ²(1 + 1/n)}, and the
 * baseline's deviation is {@code c·σ·√(χ²(ν)/ν)}: so the chance is {@code 2·P(T(ν) > c·K/√(1 +
 * 1/n))}. For the sample deviation ν = n − 1 and c = 1, exactly. For the mean moving range over d2
 * the degrees of freedom are the effective ones, and {@code c = 1/c4(ν)} makes the mean right: of
 * three deviations the chance comes out too large by 5.5, 4.1, 2.5 and 0.9 % of itself at n = 15,
 * 20, 30 and 60 (against the exact distribution of the mean moving range). The chance of one
 * baseline differs from this average, mostly below it. Source: Quesenberry (1993), J. Qual.
 * Technol. 25, 237–247; Patnaik (1950), Biometrika 37, 78–87.
 *
 * @param n how many values the baseline has
 * @param degreesOfFreedom those of its deviation, above 1
 * @param correction the factor c, at least 1
 */
public record SignalChance(int n, double degreesOfFreedom, double correction) {
  /** Beyond this many of its deviations nothing of a normal error is left. */
  private static final double REACH = 8.5;

  /** The density of the logarithm of a deviation is below e^−FAR of its largest at the ends. */
  private static final double FAR = 36;

  private static final int PANELS = 4;

  /**
   * Checks the ranges.
   *
   * @param n how many values the baseline has
   * @param degreesOfFreedom those of its deviation
   * @param correction the factor c
   * @throws IllegalArgumentException if n is below 3, the degrees of freedom are not above 1 or the
   *     correction is below 1
   */
  public SignalChance {
    Require.atLeast(n, 3, "n");
    if (!(degreesOfFreedom > 1)) {
      throw new IllegalArgumentException(
          "degrees of freedom must be above 1, is " + degreesOfFreedom);
    }
    if (!(correction >= 1)) {
      throw new IllegalArgumentException("correction must be at least 1, is " + correction);
    }
  }

  /**
   * Limits from the sample deviation, uncorrected.
   *
   * @param n how many values the baseline has, at least 3
   * @return the chance
   * @throws IllegalArgumentException if n is below 3
   */
  public static SignalChance fromSampleDeviation(int n) {
    Require.atLeast(n, 3, "n");
    return new SignalChance(n, n - 1.0, 1);
  }

  /**
   * Limits from the mean moving range over d2.
   *
   * @param n how many values the baseline has, at least 3
   * @return the chance
   * @throws IllegalArgumentException if n is below 3
   */
  public static SignalChance fromMovingRange(int n) {
    Require.atLeast(n, 3, "n");
    double freedom = WithinDeviation.freedomOfMovingRange(n);
    return new SignalChance(n, freedom, 1 / DeviationScatter.mean(freedom));
  }

  /**
   * The chance that the next single value leaves the limits on either side.
   *
   * @param width K, how many of the baseline's deviations the limits are from its mean, above zero
   * @return the chance
   * @throws IllegalArgumentException if the width is not above zero
   */
  public double ofNextValue(double width) {
    return beyond(width, 1, 1);
  }

  /**
   * The chance that an exponentially weighted mean is outside limits of {@code ± L·deviation·√(λ/(2
   * − λ)·(1 − (1 − λ)^(2t)))} at a value, whatever it was before.
   *
   * <p>The mean started at the baseline's mean, which is off by an error that t values carry into
   * it with weight {@code 1 − (1 − λ)^t}.
   *
   * @param width L, above zero
   * @param weight λ, above 0 and at most 1
   * @param since how many values t it holds since its start, at least 1
   * @return the chance
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public double ofWeightedMean(double width, double weight, int since) {
    double kept = kept(weight, since);
    double variance = weight / (2 - weight) * (1 - kept * kept);
    return beyond(width, variance, 1 - kept);
  }

  /**
   * The same for one of the values that make the baseline. With the sample deviation, of n − 1
   * degrees of freedom, it is exact: such a value lies at most {@code (n − 1)/√n} deviations from
   * the mean. With moving ranges a value far out makes two of the ranges large, and the chance is
   * about that of limits that are right, which is given: by simulation three deviations are left by
   * 0.243, 0.249, 0.259 and 0.265 % of their own values at n = 15, 20, 30 and 60, where 0.270 % is
   * given. Source: Thompson (1935), Ann. Math. Statist. 6, 214–219.
   *
   * @param width K, above zero
   * @return the chance
   * @throws IllegalArgumentException if the width is not above zero
   */
  public double ofOwnValue(double width) {
    return ownBeyond(width, 1, 1);
  }

  /**
   * The same as {@link #ofWeightedMean} where the values are of the baseline itself. Exact with the
   * sample deviation; with moving ranges it is about that of limits that are right, which is given:
   * by simulation three deviations are left by 0.31 to 0.44 % of weighted means (0.4) at n = 15,
   * most long after a start, and by 0.31 to 0.32 % at n = 60, where 0.27 % is given.
   *
   * @param width L, above zero
   * @param weight λ, above 0 and at most 1
   * @param since how many values t it holds since its start, at least 1
   * @return the chance
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public double ofOwnWeightedMean(double width, double weight, int since) {
    double kept = kept(weight, since);
    return ownBeyond(width, weight / (2 - weight) * (1 - kept * kept), 1 - kept);
  }

  /**
   * The chance that a pattern of values beyond a zone ends at a value, whatever came before, and
   * whether or not it ended at the one before. A run on one side of the centre is a pattern beyond
   * a zone of zero. Computed by integration over the errors of the baseline's mean and deviation,
   * to about 1e-9.
   *
   * @param pattern the pattern, its zone in the baseline's deviations
   * @param since how many values there are since counting started, at least 1
   * @return the chance
   * @throws IllegalArgumentException if the number is below 1
   */
  public double ofPattern(RunRule.Beyond pattern, int since) {
    Require.atLeast(since, 1, "since");
    int window = Math.min(since, pattern.of());
    if (window < pattern.count()) {
      return 0;
    }
    double[] means = new double[PANELS + 1];
    double[] logs = new double[2 * PANELS + 1];
    double lowest = -FAR / degreesOfFreedom - Math.sqrt(FAR / degreesOfFreedom);
    double highest = Math.log1p(FAR / degreesOfFreedom + 2 * Math.sqrt(FAR / degreesOfFreedom)) / 2;
    // most of the density lies in the upper part
    for (int i = 0; i <= PANELS; i++) {
      means[i] = REACH * (2.0 * i / PANELS - 1);
      logs[PANELS + i] = 0.2 * lowest + (highest - 0.2 * lowest) * i / PANELS;
      logs[i] = lowest + 0.8 * -lowest * i / PANELS;
    }
    double half = degreesOfFreedom / 2;
    double atOne = Math.log(2) + half * Math.log(half) - Gamma.logGamma(half);
    return Quadrature.integrate(
        log -> {
          double zone = pattern.zone() * Math.exp(log) * correction;
          double density = Math.exp(atOne + degreesOfFreedom * log - half * Math.exp(2 * log));
          return density
              * Quadrature.integrate(
                  z -> Normal.density(z) * met(pattern.count(), window, zone, z / Math.sqrt(n)),
                  means);
        },
        logs);
  }

  /**
   * The same where centre and deviation are exactly right.
   *
   * @param pattern the pattern, its zone in true deviations
   * @param since how many values there are since counting started, at least 1
   * @return the chance
   * @throws IllegalArgumentException if the number is below 1
   */
  public static double ofPatternIfRight(RunRule.Beyond pattern, int since) {
    Require.atLeast(since, 1, "since");
    return met(pattern.count(), Math.min(since, pattern.of()), pattern.zone(), 0);
  }

  /**
   * The chance that two successive values lie farther apart than a number of the baseline's
   * deviations: {@code 2·P(T(ν) > c·K/√2)}.
   *
   * @param width K, above zero
   * @return the chance
   * @throws IllegalArgumentException if the width is not above zero
   */
  public double ofMovingRange(double width) {
    Require.positive(width, "width");
    return 2 * Student.above(correction * width / Math.sqrt(2), degreesOfFreedom);
  }

  /** The latest of a window is beyond a zone, and enough of those before it on the same side. */
  private static double met(int count, int window, double zone, double off) {
    return oneSide(count, window, Normal.above(zone + off))
        + oneSide(count, window, Normal.above(zone - off));
  }

  private static double oneSide(int count, int window, double beyond) {
    double sum = 0;
    double ways = 1;
    for (int j = 0; j < window; j++) {
      if (j >= count - 1) {
        sum += ways * Math.pow(beyond, j) * Math.pow(1 - beyond, window - 1.0 - j);
      }
      ways = ways * (window - 1 - j) / (j + 1);
    }
    return beyond * sum;
  }

  private static double kept(double weight, int since) {
    Require.atLeast(since, 1, "since");
    if (!(weight > 0 && weight <= 1)) {
      throw new IllegalArgumentException("weight must be above 0 and at most 1, is " + weight);
    }
    return Math.pow(1 - weight, since);
  }

  private double beyond(double width, double variance, double carried) {
    Require.positive(width, "width");
    double spread = Math.sqrt(1 + carried * carried / (variance * n));
    return Math.min(1, 2 * Student.above(correction * width / spread, degreesOfFreedom));
  }

  private double ownBeyond(double width, double variance, double carried) {
    Require.positive(width, "width");
    if (degreesOfFreedom != n - 1.0) {
      return Normal.outside(width);
    }
    double share = 1 - carried * carried / (variance * n);
    if (share <= 0) {
      return 0;
    }
    double u = width / Math.sqrt(share);
    double room = degreesOfFreedom - u * u;
    return room <= 0
        ? 0
        : 2 * Student.above(u * Math.sqrt((degreesOfFreedom - 1) / room), degreesOfFreedom - 1);
  }
}
