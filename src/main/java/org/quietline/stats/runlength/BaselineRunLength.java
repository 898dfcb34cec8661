package org.quietline.stats.runlength;

import java.util.function.DoubleUnaryOperator;
import org.quietline.stats.distribution.ChiSquare;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.distribution.ToleranceFactor;
import org.quietline.stats.numeric.Quadrature;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;

/**
 * What a chart of single values does whose limits {@code mean ± K·deviation} come from a baseline
 * of n independent normal values: each baseline gives another chance of a signal, and so another
 * average run length.
 *
 * <p>Given a baseline whose mean is off by ζ and whose deviation is w times the true one, the
 * chance per value is {@code p = P(|x + shift − ζ| > K·w)}. Over baselines ζ is normal with
 * variance 1/n and independent of w; {@code (n − 1)·w²} is chi-square for the sample deviation, and
 * the distribution for the mean moving range is computed, not approximated. Chances are exact to
 * about 1e-7. Source: Quesenberry (1993), J. Qual. Technol. 25, 237–247; Chen (1997), Statistica
 * Sinica 7, 789–798; Jardim, Chakraborti and Epprecht (2020), J. Qual. Technol. 52, 198–217.
 */
public final class BaselineRunLength {
  private static final double ACTION = 3;
  private static final double FARTHEST = 37;
  private static final double REACH = 8.5;
  private static final double LONGEST = 1e289;
  private static final double SHORTEST = 1e-12;

  /** Wide enough that rounding cannot hide the change of sign. */
  private static final double MARGIN = 1e-6;

  private static final int PANELS = 2;
  private static final double ROOM = 1.05;

  private final int n;
  private final double multiplier;
  private final double shift;
  private final DeviationRatio ratio;
  private final boolean sample;

  private BaselineRunLength(
      int n, double multiplier, double shift, DeviationRatio ratio, boolean sample) {
    this.n = n;
    this.multiplier = multiplier;
    this.shift = shift;
    this.ratio = ratio;
    this.sample = sample;
  }

  /** The average run length over all baselines and all values, where it can be said. */
  public sealed interface Average {
    /**
     * A finite average.
     *
     * @param value the average
     */
    record Finite(double value) implements Average {}

    /** No finite average: charts with very wide limits weigh too much, however rare they are. */
    record Infinite() implements Average {}

    /** It would hang on baselines that are too rare for their chances to be known. */
    record NotKnown() implements Average {}
  }

  /**
   * Limits from the sample deviation, uncorrected; three deviations over c4 are the width {@code
   * 3/c4}.
   *
   * @param n how many values the baseline has, from 5 to 1000
   * @param width how many deviations the limits are from the mean, above 0 and at most 10
   * @param shift the shift of the mean after the baseline, in true deviations, at most 10 in size
   * @return the chart over all baselines
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static BaselineRunLength fromSampleDeviation(int n, double width, double shift) {
    check(n, 1000, shift);
    return new BaselineRunLength(
        n, new Chart.Individuals(width).width(), shift, DeviationRatio.ofSample(n), true);
  }

  /**
   * Limits from the mean moving range over d2.
   *
   * @param n how many values the baseline has, from 5 to 200
   * @param width how many deviations the limits are from the mean, above 0 and at most 10
   * @param shift the shift of the mean after the baseline, in true deviations, at most 10 in size
   * @return the chart over all baselines
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static BaselineRunLength fromMovingRange(int n, double width, double shift) {
    check(n, 200, shift);
    return new BaselineRunLength(
        n, new Chart.Individuals(width).width(), shift, new MovingRangeRatio(n), false);
  }

  /**
   * Prediction limits: {@code K = t(Φ(3), n − 1)·√(1 + 1/n)}, which the next value leaves with 0.27
   * % over all baselines.
   *
   * @param n how many values the baseline has, from 5 to 1000
   * @param shift the shift of the mean after the baseline, in true deviations, at most 10 in size
   * @return the chart over all baselines
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static BaselineRunLength prediction(int n, double shift) {
    check(n, 1000, shift);
    double width = Math.sqrt(1 + 1.0 / n) * Student.exceededWith(Normal.above(ACTION), n - 1);
    return new BaselineRunLength(n, width, shift, DeviationRatio.ofSample(n), true);
  }

  /**
   * Guaranteed limits: K is the exact two-sided tolerance factor, so that a given share of
   * baselines gives at most 0.27 % false signals.
   *
   * @param n how many values the baseline has, from 5 to 1000
   * @param confidence that share, between 0 and 1
   * @param shift the shift of the mean after the baseline, in true deviations, at most 10 in size
   * @return the chart over all baselines
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static BaselineRunLength guaranteed(int n, double confidence, double shift) {
    check(n, 1000, shift);
    double width = ToleranceFactor.twoSidedLeaving(n, Normal.outside(ACTION), confidence);
    return new BaselineRunLength(n, width, shift, DeviationRatio.ofSample(n), true);
  }

  /**
   * How many deviations the limits are from the mean.
   *
   * @return K
   */
  public double multiplier() {
    return multiplier;
  }

  /**
   * The share of baselines whose chart has at most a given average run length.
   *
   * @param average the average run length, above 1 and at most 1e290
   * @return the share
   * @throws IllegalArgumentException if the average is outside its range or NaN
   */
  public double shareUpTo(double average) {
    if (!(average > 1 && average <= 1e290)) {
      throw new IllegalArgumentException(
          "average must be above 1 and at most 1e290, is " + average);
    }
    double chance = 1 / average;
    return Math.min(1, overMeans(off -> ratio.below(halfWidth(off, chance) / multiplier)));
  }

  /**
   * The average run length that a given share of baselines stays at or below.
   *
   * @param share the share, between 0 and 1
   * @return the average run length; infinite beyond 1e289, and 1 within 1e-12 of it
   * @throws IllegalArgumentException if the share is not between 0 and 1
   */
  public double averageQuantile(double share) {
    Require.share(share, "share");
    if (shareUpTo(LONGEST) < share) {
      return Double.POSITIVE_INFINITY;
    }
    if (shareUpTo(1 + SHORTEST) > share) {
      return 1;
    }
    double log =
        Roots.between(
            l -> shareUpTo(1 + Math.exp(l)) - share, Math.log(SHORTEST), Math.log(LONGEST));
    return 1 + Math.exp(log);
  }

  /**
   * The chance that a value signals, over all baselines: for a shift of zero the share of false
   * signals in the long run of many charts.
   *
   * @return the chance
   */
  public double chancePerValue() {
    return chanceWithin(1);
  }

  /**
   * The chance that the signal comes within so many values, over all baselines.
   *
   * @param values how many, from 1 to 1 000 000
   * @return the chance
   * @throws IllegalArgumentException if the number is outside its range
   */
  public double chanceWithin(int values) {
    Require.atLeast(values, 1, "values");
    if (values > 1_000_000) {
      throw new IllegalArgumentException("values must be at most 1000000, is " + values);
    }
    double chance =
        overLimits(
            x -> ratio.below(x / multiplier),
            (x, off) ->
                values
                    * Math.exp((values - 1) * Math.log1p(-Math.min(outside(x, off), 1 - 1e-16)))
                    * slope(x, off));
    return Math.min(1, chance);
  }

  /**
   * The average run length over all baselines and values, {@code E(1/p)}. With the sample deviation
   * it is finite only where n − 1 exceeds K².
   *
   * @return the average, where it can be said
   */
  public Average average() {
    if (!sample) {
      return new Average.NotKnown();
    }
    double room = (n - 1) / (multiplier * multiplier);
    if (room <= 1) {
      return new Average.Infinite();
    }
    if (room < ROOM) {
      return new Average.NotKnown();
    }
    double beyondOne =
        overLimits(
            x -> ChiSquare.above((n - 1) * (x / multiplier) * (x / multiplier), n - 1),
            (x, off) -> slope(x, off) / outside(x, off) / outside(x, off));
    return new Average.Finite(1 + beyondOne);
  }

  private interface OfLimit {
    double at(double halfWidth, double off);
  }

  /** Integrates over the half-width of the limits in true deviations, and over their centre. */
  private double overLimits(DoubleUnaryOperator chance, OfLimit inner) {
    double[] edges = new double[38];
    for (int i = 0; i < edges.length; i++) {
      edges[i] = FARTHEST * i / (edges.length - 1);
    }
    return Quadrature.integrate(
        x -> {
          double outer = chance.applyAsDouble(x);
          return outer == 0 ? 0 : outer * overMeans(off -> inner.at(x, off));
        },
        edges);
  }

  /** The mean over the error of the baseline's mean. */
  private double overMeans(DoubleUnaryOperator function) {
    double[] edges = new double[PANELS + 1];
    for (int i = 0; i <= PANELS; i++) {
      edges[i] = REACH * (2.0 * i / PANELS - 1);
    }
    double root = Math.sqrt(n);
    return Quadrature.integrate(
        z -> Normal.density(z) * function.applyAsDouble(Math.abs(shift - z / root)), edges);
  }

  private static double outside(double halfWidth, double off) {
    return Normal.above(halfWidth - off) + Normal.above(halfWidth + off);
  }

  private static double slope(double halfWidth, double off) {
    return Normal.density(halfWidth - off) + Normal.density(halfWidth + off);
  }

  /** The half-width of limits whose centre is off that are left with a given chance. */
  private static double halfWidth(double off, double chance) {
    double narrow = Normal.exceededWith(chance / 2);
    if (off == 0) {
      return narrow;
    }
    return Roots.between(
        r -> Math.log(outside(r, off) / chance), narrow - MARGIN, narrow + off + MARGIN);
  }

  private static void check(int n, int most, double shift) {
    Require.atLeast(n, 5, "n");
    if (n > most) {
      throw new IllegalArgumentException("n must be at most " + most + ", is " + n);
    }
    if (!(Math.abs(shift) <= 10)) {
      throw new IllegalArgumentException("shift must be from -10 to 10, is " + shift);
    }
  }
}
