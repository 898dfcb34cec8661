package org.quietline.stats.runlength;

import java.util.Arrays;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.sample.MovingRange;
import org.quietline.stats.sample.Summary;

/**
 * How many values a small bench's chart takes to see a shift: its limits come from a short
 * baseline, and it starts anew every so many values, as at each calibration.
 *
 * <p>From simulated benches with a fixed seed. For each, n normal values make the centre and the
 * deviation; the chart then runs for a number of values spread evenly from 0 to one less than a
 * stretch, starting anew after a false signal; then every value is shifted, and the chart goes on
 * starting anew at the end of each stretch. Shifts are in true deviations of single values. Source:
 * the rules of {@link Chart}; {@link RunLength} gives the same without baseline and restarts
 * exactly.
 */
public final class ShiftDelay {
  /** A run is given up after so many values, as if the shift were never seen. */
  private static final int LONGEST = 500;

  /** A bench is followed for about so many values where false signals are counted. */
  private static final int FEWEST_FOLLOWED = 60;

  private final int[] lengths;

  private ShiftDelay(int[] sorted) {
    this.lengths = sorted;
  }

  /** Where centre and deviation of a chart come from. */
  public sealed interface Baseline {
    /** Both are exactly right. */
    record Right() implements Baseline {}

    /**
     * Mean and sample deviation of n values.
     *
     * @param n how many, at least 2
     */
    record SampleDeviation(int n) implements Baseline {
      /**
       * Checks the number.
       *
       * @param n how many
       * @throws IllegalArgumentException if it is below 2
       */
      public SampleDeviation {
        Require.atLeast(n, 2, "n");
      }
    }

    /**
     * Mean of n values and their mean moving range over d2.
     *
     * @param n how many, at least 2
     */
    record OfMovingRange(int n) implements Baseline {
      /**
       * Checks the number.
       *
       * @param n how many
       * @throws IllegalArgumentException if it is below 2
       */
      public OfMovingRange {
        Require.atLeast(n, 2, "n");
      }
    }
  }

  /**
   * Follows benches from the shift to the signal.
   *
   * @param chart the chart in deviations as the baseline gives them
   * @param baseline where its centre and deviation come from
   * @param between how many values lie from one start to the next, at least 1
   * @param shift the shift in true deviations, at most 100 in size
   * @param benches how many benches, at least 100
   * @param seed the seed of the random values
   * @return the delays
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public static ShiftDelay simulate(
      Chart chart, Baseline baseline, int between, double shift, int benches, long seed) {
    Require.atLeast(between, 1, "between");
    Require.atLeast(benches, 100, "benches");
    double size = new Change.Shift(shift).size();
    Normals normals = new Normals(seed);
    int[] lengths = new int[benches];
    for (int bench = 0; bench < benches; bench++) {
      Bench one = new Bench(chart, baseline, normals);
      lengths[bench] = one.delay(between, bench % between, size);
    }
    Arrays.sort(lengths);
    return new ShiftDelay(lengths);
  }

  /**
   * How many false signals a value costs, on average over benches: without a shift, from a start to
   * the end of its stretch, starting anew after each signal.
   *
   * @param chart the chart in deviations as the baseline gives them
   * @param baseline where its centre and deviation come from
   * @param between how many values lie from one start to the next, at least 1; more than 500 count
   *     as 500
   * @param benches how many benches, at least 100
   * @param seed the seed of the random values
   * @return signals for each value
   * @throws IllegalArgumentException if a number is outside its range
   */
  public static double falseSignalsPerValue(
      Chart chart, Baseline baseline, int between, int benches, long seed) {
    Require.atLeast(between, 1, "between");
    Require.atLeast(benches, 100, "benches");
    Normals normals = new Normals(seed);
    int stretch = Math.min(between, LONGEST);
    int stretches = Math.max(1, FEWEST_FOLLOWED / stretch);
    long signals = 0;
    for (int bench = 0; bench < benches; bench++) {
      Bench one = new Bench(chart, baseline, normals);
      for (int i = 0; i < stretches; i++) {
        signals += one.falseSignals(stretch);
      }
    }
    return (double) signals / ((double) benches * stretches * stretch);
  }

  /** One simulated bench. */
  private static final class Bench {
    private final Chart chart;
    private final Normals normals;
    private final double centre;
    private final double deviation;

    Bench(Chart chart, Baseline baseline, Normals normals) {
      this.chart = chart;
      this.normals = normals;
      if (baseline instanceof Baseline.SampleDeviation sample) {
        Summary summary = Summary.of(draw(sample.n()));
        this.centre = summary.mean();
        this.deviation = summary.deviation();
      } else if (baseline instanceof Baseline.OfMovingRange ranges) {
        double[] values = draw(ranges.n());
        this.centre = Summary.meanOf(values);
        this.deviation = MovingRange.deviation(MovingRange.mean(values));
      } else {
        this.centre = 0;
        this.deviation = 1;
      }
    }

    private double[] draw(int n) {
      double[] values = new double[n];
      for (int i = 0; i < n; i++) {
        values[i] = normals.next();
      }
      return values;
    }

    private boolean signals(Follower follower, double mean) {
      return follower.signals((normals.next() + mean - centre) / deviation);
    }

    /** A chart that has taken so many values; after a false signal it started anew. */
    private Follower after(int values) {
      Follower follower = Follower.of(chart, 0);
      for (int taken = 0; taken < values; taken++) {
        if (signals(follower, 0)) {
          follower = Follower.of(chart, 0);
        }
      }
      return follower;
    }

    int falseSignals(int values) {
      Follower follower = Follower.of(chart, 0);
      int signals = 0;
      for (int taken = 0; taken < values; taken++) {
        if (signals(follower, 0)) {
          signals++;
          follower = Follower.of(chart, 0);
        }
      }
      return signals;
    }

    int delay(int between, int already, double shift) {
      Follower follower = after(already);
      int inStretch = already;
      for (int n = 1; n <= LONGEST; n++) {
        if (inStretch == between) {
          follower = Follower.of(chart, 0);
          inStretch = 0;
        }
        inStretch++;
        if (signals(follower, shift)) {
          return n;
        }
      }
      return Integer.MAX_VALUE;
    }
  }

  /**
   * How many benches were followed.
   *
   * @return benches
   */
  public int benches() {
    return lengths.length;
  }

  /**
   * The share of benches that have seen the shift within so many values; its standard error is
   * {@code √(p(1 − p)/benches)}.
   *
   * @param values how many, from 0 to 500
   * @return the share
   * @throws IllegalArgumentException if the number is outside its range
   */
  public double chanceWithin(int values) {
    if (values < 0 || values > LONGEST) {
      throw new IllegalArgumentException("values must be from 0 to 500, is " + values);
    }
    int seen = 0;
    while (seen < lengths.length && lengths[seen] <= values) {
      seen++;
    }
    return (double) seen / lengths.length;
  }

  /**
   * The number of values within which a share of benches has seen the shift.
   *
   * @param share the share, between 0 and 1
   * @return a whole number of values, at least 1; infinite where it is above 500
   * @throws IllegalArgumentException if the share is not between 0 and 1
   */
  public double quantile(double share) {
    Require.share(share, "share");
    // a share of whole benches is that many of them, however its product is rounded
    int seen = (int) Math.ceil(share * lengths.length * (1 - 1e-12));
    int length = lengths[seen - 1];
    return length == Integer.MAX_VALUE ? Double.POSITIVE_INFINITY : length;
  }
}
