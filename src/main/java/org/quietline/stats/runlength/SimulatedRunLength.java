package org.quietline.stats.runlength;

import java.util.Arrays;
import java.util.function.LongToDoubleFunction;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/** The run length from runs that were followed to their signal. */
final class SimulatedRunLength implements RunLengthDistribution {
  private static final long MOST_VALUES = 500_000_000L;

  private final long[] lengths;
  private final double average;
  private final double deviation;

  private SimulatedRunLength(long[] sorted) {
    this.lengths = sorted;
    Sum sum = new Sum();
    for (long length : sorted) {
      sum.add((double) length);
    }
    this.average = sum.value() / sorted.length;
    Sum squares = new Sum();
    for (long length : sorted) {
      squares.addProduct(length - average, length - average);
    }
    this.deviation = Math.sqrt(squares.value() / (sorted.length - 1));
  }

  /**
   * Follows runs.
   *
   * @param chart the chart
   * @param mean the mean of each value by its number
   * @param quiet how many values around {@code quietMean} come before, none of which signals; sets
   *     begin after them
   * @param quietMean the mean of those
   * @param trials how many runs
   * @param seed the seed of the random values
   * @return their lengths
   */
  static SimulatedRunLength of(
      Chart chart, LongToDoubleFunction mean, int quiet, double quietMean, int trials, long seed) {
    Normals normals = new Normals(seed);
    long[] lengths = new long[trials];
    long budget = MOST_VALUES;
    for (int trial = 0; trial < trials; trial++) {
      Follower follower = settled(chart, quiet, quietMean, normals);
      long n = 0;
      do {
        n++;
        if (budget-- == 0) {
          throw new IllegalArgumentException(
              "too long for a simulation: " + chart + " after " + MOST_VALUES + " values");
        }
      } while (!follower.signals(mean.applyAsDouble(n) + normals.next()));
      lengths[trial] = n;
    }
    Arrays.sort(lengths);
    return new SimulatedRunLength(lengths);
  }

  /** Enough for a chart whose runs are as long as the settling itself. */
  private static final long MOST_SETTLING = 1_000_000;

  private static Follower settled(Chart chart, int quiet, double mean, Normals normals) {
    Follower follower = Follower.of(chart, -quiet);
    int since = 0;
    long budget = MOST_SETTLING;
    while (since < quiet) {
      since++;
      if (budget-- == 0) {
        throw new IllegalArgumentException(
            "signals too often to settle: " + chart + " in " + MOST_SETTLING + " values");
      }
      if (follower.signals(mean + normals.next())) {
        follower = Follower.of(chart, -quiet);
        since = 0;
      }
    }
    return follower;
  }

  @Override
  public double average() {
    return average;
  }

  @Override
  public double standardDeviation() {
    return deviation;
  }

  @Override
  public double quantile(double chance) {
    Require.share(chance, "chance");
    return lengths[(int) Math.ceil(chance * lengths.length) - 1];
  }

  @Override
  public double chanceWithin(long values) {
    if (values < 0) {
      throw new IllegalArgumentException("values must not be below zero, is " + values);
    }
    int low = 0;
    int high = lengths.length;
    while (low < high) {
      int middle = (low + high) / 2;
      if (lengths[middle] <= values) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return (double) low / lengths.length;
  }

  @Override
  public RunLengthDistribution inSets(int set) {
    Require.atLeast(set, 1, "set");
    return new SimulatedRunLength(
        Arrays.stream(lengths).map(length -> (length - 1) / set + 1).toArray());
  }

  @Override
  public Way way() {
    return new Way.Simulated(lengths.length, deviation / Math.sqrt(lengths.length));
  }
}
