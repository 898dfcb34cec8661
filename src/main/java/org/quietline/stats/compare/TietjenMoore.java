package org.quietline.stats.compare;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;

/**
 * Tietjen and Moore's test of exactly so many outliers.
 *
 * <p>{@code E = SS(without them)/SS(all)}, sums of squared deviations from the own mean; small
 * where they lie apart. At either end the values farthest from the mean of all are taken out, else
 * the largest or smallest. The number must be right beforehand: one too many takes in a good value,
 * one too few is blind to those that hide each other; {@link ExtremeStudentizedDeviates} needs a
 * largest number only.
 *
 * <p>The chance has no formula; it is simulated from a random source that is given, so that the
 * same seed gives the same chance: {@code (below + 1)/(trials + 1)} with the standard error {@code
 * √(p(1 − p)/trials)}. For two values at one end {@link GrubbsPair} is exact. Unchanged by shift,
 * scale and order. Source: Tietjen and Moore (1972), Technometrics 14, 583–597; NIST/SEMATECH
 * e-Handbook 1.3.5.17.2.
 *
 * @param suspect which end was suspected
 * @param n how many values, at least 3
 * @param places where the outliers stand, from 0 on, ascending
 * @param statistic E, from 0 to 1
 * @param chance the simulated chance of at most E
 * @param trials how many samples were simulated, at least 100
 */
public record TietjenMoore(
    Suspect suspect, int n, List<Integer> places, double statistic, double chance, int trials)
    implements OutlierTest {
  private static final int LEAST_TRIALS = 100;

  /** Fewer order statistics on one side say nothing about the error of the one at it. */
  private static final int LEAST_BEYOND = 10;

  /**
   * Checks the ranges.
   *
   * @param suspect which end was suspected
   * @param n how many values
   * @param places where the outliers stand
   * @param statistic E
   * @param chance the simulated chance of at most E
   * @param trials how many samples were simulated
   * @throws IllegalArgumentException if a figure is outside its range or NaN, or there is no
   *     outlier or more than n − 2
   */
  public TietjenMoore {
    places = List.copyOf(places);
    requireSize(places.size(), n, trials);
    if (!(statistic >= 0 && statistic <= 1)) {
      throw new IllegalArgumentException("statistic must be from 0 to 1, is " + statistic);
    }
    Chances.require(chance);
  }

  /**
   * Tests values.
   *
   * @param suspect which end is suspected
   * @param outliers how many, from 1 to n − 2
   * @param trials how many samples to simulate, at least 100
   * @param random where they come from
   * @param values at least three finite numbers, in any order
   * @return the test
   * @throws IllegalArgumentException if an argument is outside its range, a value is no usable
   *     number, or all but the suspected are equal
   */
  public static TietjenMoore of(
      Suspect suspect, int outliers, int trials, RandomGenerator random, double... values) {
    Require.values(values, 3);
    int n = values.length;
    requireSize(outliers, n, trials);
    int[] order = order(suspect, values);
    double[] sorted = Arrays.stream(order).mapToDouble(i -> values[i]).toArray();
    double[] others = Arrays.copyOf(sorted, n - outliers);
    Remoteness.requireScatter(others, "other values");
    double statistic = Centred.of(others).sumOfSquares() / Centred.of(sorted).sumOfSquares();
    int below = 0;
    for (double simulated : simulate(suspect, outliers, n, trials, random)) {
      below += simulated <= statistic ? 1 : 0;
    }
    List<Integer> places = Arrays.stream(order).skip((long) n - outliers).sorted().boxed().toList();
    double chance = (below + 1.0) / (trials + 1.0);
    return new TietjenMoore(suspect, n, places, Math.min(1, statistic), chance, trials);
  }

  /**
   * The ratio E that is undercut with a given chance.
   *
   * @param suspect which end is suspected
   * @param outliers how many, from 1 to n − 2
   * @param n how many values, at least 3
   * @param alpha the chance, between 0 and 1
   * @param trials how many samples to simulate, at least 100 and so many that ten are expected on
   *     each side of the critical value: 10/α
   * @param random where they come from
   * @return the critical value with its standard error, from the order statistics about it
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static Simulated criticalValue(
      Suspect suspect, int outliers, int n, double alpha, int trials, RandomGenerator random) {
    requireSize(outliers, n, trials);
    Require.share(alpha, "alpha");
    double rarer = Math.min(alpha, 1 - alpha) * trials;
    if (!(rarer >= LEAST_BEYOND * (1 - Require.ROUNDING))) {
      throw new IllegalArgumentException(
          "trials must leave at least "
              + LEAST_BEYOND
              + " on each side of the critical value, leave "
              + rarer);
    }
    double[] simulated = simulate(suspect, outliers, n, trials, random);
    Arrays.sort(simulated);
    double at = alpha * trials;
    double spread = Math.sqrt(at * (1 - alpha));
    double apart = ranked(simulated, at + spread) - ranked(simulated, at - spread);
    return new Simulated(ranked(simulated, at), apart / 2);
  }

  /**
   * The standard error of the chance.
   *
   * @return the standard error
   */
  public double standardError() {
    return Simulated.share(chance, trials).standardError();
  }

  @Override
  public Certainty certainty() {
    return Certainty.SIMULATED;
  }

  private static void requireSize(int outliers, int n, int trials) {
    if (outliers < 1 || outliers > n - 2) {
      throw new IllegalArgumentException(
          "outliers must be from 1 to " + (n - 2) + ", is " + outliers);
    }
    Require.atLeast(trials, LEAST_TRIALS, "trials");
  }

  /** The places of the values, the least suspected first. */
  private static int[] order(Suspect suspect, double[] values) {
    double mean = Centred.of(values).mean();
    return IntStream.range(0, values.length)
        .boxed()
        .sorted(Comparator.comparingDouble(i -> Remoteness.away(suspect, values[i] - mean)))
        .mapToInt(Integer::intValue)
        .toArray();
  }

  private static double[] simulate(
      Suspect suspect, int outliers, int n, int trials, RandomGenerator random) {
    double[] ratios = new double[trials];
    double[] values = new double[n];
    for (int i = 0; i < trials; i++) {
      double sum = 0;
      for (int j = 0; j < n; j++) {
        values[j] = random.nextGaussian();
        sum += values[j];
      }
      for (int j = 0; j < n; j++) {
        values[j] -= sum / n;
      }
      ratios[i] = ratio(suspect, outliers, values);
    }
    return ratios;
  }

  private static double ratio(Suspect suspect, int outliers, double[] deviations) {
    double[] away = Arrays.stream(deviations).map(d -> Remoteness.away(suspect, d)).toArray();
    Arrays.sort(away);
    int kept = deviations.length - outliers;
    double limit = away[kept];
    double all = 0;
    double sum = 0;
    double squares = 0;
    for (double d : deviations) {
      all += d * d;
      if (Remoteness.away(suspect, d) < limit) {
        sum += d;
        squares += d * d;
      }
    }
    return (squares - sum * sum / kept) / all;
  }

  private static double ranked(double[] sorted, double rank) {
    int i = (int) Math.round(rank) - 1;
    return sorted[Math.max(0, Math.min(sorted.length - 1, i))];
  }
}
