package org.quietline.stats.sample;

import java.util.Arrays;
import java.util.Optional;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;

/**
 * Mean and deviation of the bulk of values by Algorithm A: values farther than 1.5 deviations from
 * the mean are drawn in to that distance, mean and deviation are computed again, until they stay.
 *
 * <p>Start: {@code x* = median}, {@code s* = 1.4826·median |x − x*|}. Round: {@code δ = 1.5 s*},
 * each value is limited to {@code x* ± δ}, {@code x*} is the mean of what that gives and {@code s*
 * = c·√(Σ(x − x*)²/(n − 1))}. The constant c makes s* estimate the standard deviation of normal
 * values; it is 1.134 in the standard and 1.133393… exactly, a difference of 0.05 % in c and about
 * 0.1 % in s*; see {@link Constants}. Where more than half of the values are equal, so that the
 * start would be zero, the sample deviation starts. Rounds go on until no figure moves by more than
 * 1e-13 of s*, not until the third digit stays, so that the answer does not depend on the start.
 * They run on differences from the median, so that an offset of all values costs no digits. Source:
 * ISO 13528:2015, C.3.1 (from memory); Huber (1964), Ann. Math. Statist. 35, 73–101, proposal 2.
 *
 * @param n how many values, at least 3
 * @param mean the robust mean x*, in their unit
 * @param deviation the robust deviation s*, in their unit, above zero
 * @param drawnIn how many values were limited in the last round
 * @param rounds how many rounds it took
 */
public record AlgorithmA(int n, double mean, double deviation, int drawnIn, int rounds) {
  private static final double LIMIT = 1.5;
  private static final int MOST_ROUNDS = 10_000;
  private static final double SETTLED = 1e-13;

  /** A deviation below this share of the first one is on its way to zero. */
  private static final double COLLAPSED = 1e-9;

  /** The factor of the robust standard error. Source: ISO 13528:2015, 7.7.3 (from memory). */
  private static final double ERROR_FACTOR = 1.25;

  /** With which constants it is run. */
  public enum Constants {
    /** To the last digit. */
    EXACT,
    /** 1.483 and 1.134, as the standard prints them. */
    AS_PRINTED;

    double start() {
      return this == EXACT ? 1 / Normal.exceededWith(0.25) : 1.483;
    }

    /** One over the root of the variance of a normal value limited to 1.5 on either side. */
    double correction() {
      if (this == AS_PRINTED) {
        return 1.134;
      }
      double tail = 2 * Normal.above(LIMIT);
      double inside = 1 - tail - 2 * LIMIT * Normal.density(LIMIT);
      return 1 / Math.sqrt(inside + LIMIT * LIMIT * tail);
    }
  }

  /**
   * Checks the ranges.
   *
   * @param n how many values
   * @param mean the robust mean
   * @param deviation the robust deviation
   * @param drawnIn how many values were limited in the last round
   * @param rounds how many rounds it took
   * @throws IllegalArgumentException if n is below 3, a count is negative, the mean is not finite
   *     or the deviation is not above zero
   */
  public AlgorithmA {
    Require.atLeast(n, 3, "n");
    Require.finite(mean, "mean");
    Require.positive(deviation, "deviation");
    Require.atLeast(drawnIn, 0, "drawn in");
    Require.atLeast(rounds, 1, "rounds");
  }

  /**
   * Runs the algorithm with exact constants.
   *
   * @param values at least three finite numbers, each at most 1e150 in size, in any order
   * @return the estimates, or nothing where so many values are equal (about two thirds) that the
   *     deviation runs to zero, or where 10 000 rounds do not settle
   * @throws IllegalArgumentException if there are fewer than three or one is NaN, infinite or
   *     larger
   */
  public static Optional<AlgorithmA> of(double... values) {
    return of(Constants.EXACT, values);
  }

  /**
   * Runs the algorithm.
   *
   * @param constants with which constants
   * @param values at least three finite numbers, each at most 1e150 in size, in any order
   * @return the estimates, or nothing where they cannot be given, as in {@link #of(double...)}
   * @throws IllegalArgumentException if there are fewer than three or one is NaN, infinite or
   *     larger
   */
  public static Optional<AlgorithmA> of(Constants constants, double... values) {
    Require.values(values, 3);
    double median = RobustSummary.medianOf(values);
    double[] away = Arrays.stream(values).map(v -> v - median).toArray();
    double[] halves = Arrays.stream(away).map(v -> Math.abs(v / 2)).toArray();
    double first = constants.start() * RobustSummary.medianOf(halves) * 2;
    first = first > 0 ? first : deviation(Centred.of(away));
    double mean = 0;
    double deviation = first;
    double correction = constants.correction();
    for (int round = 1; round <= MOST_ROUNDS && deviation > COLLAPSED * first; round++) {
      double low = mean - LIMIT * deviation;
      double high = mean + LIMIT * deviation;
      Centred next =
          Centred.of(Arrays.stream(away).map(v -> Math.min(high, Math.max(low, v))).toArray());
      double moved = Math.abs(next.mean() - mean);
      double changed = Math.abs(correction * deviation(next) - deviation);
      mean = next.mean();
      deviation = correction * deviation(next);
      if (Math.max(moved, changed) <= SETTLED * deviation && deviation > 0) {
        int drawnIn = (int) Arrays.stream(away).filter(v -> v < low || v > high).count();
        return Optional.of(new AlgorithmA(values.length, median + mean, deviation, drawnIn, round));
      }
    }
    return Optional.empty();
  }

  private static double deviation(Centred values) {
    return Math.sqrt(values.sumOfSquares() / (values.deviations().length - 1));
  }

  /**
   * The standard error of the robust mean, {@code 1.25/√n} deviations. Source: ISO 13528:2015,
   * 7.7.3 (from memory); a quarter more than for a plain mean of normal values, of which Algorithm
   * A needs a few percent, and the median a quarter.
   *
   * @return the standard error, in the unit of the values
   */
  public double standardError() {
    return ERROR_FACTOR * deviation / Math.sqrt(n);
  }
}
