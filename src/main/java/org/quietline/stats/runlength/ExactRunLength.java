package org.quietline.stats.runlength;

import java.util.Arrays;
import java.util.function.LongToDoubleFunction;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * The run length from the chances of a {@link Walk}, value by value.
 *
 * <p>Under a constant mean the chance of a signal settles to a constant, or to a cycle where a rule
 * forces values to take turns; from there on the tail is geometric and summed in closed form. The
 * chance of no signal is kept as a logarithm, so that averages far beyond 1e16 keep their digits.
 */
final class ExactRunLength implements RunLengthDistribution {
  /** Rules that force values to take turns do so every second, third or fourth value. */
  private static final int TURNS = 12;

  private static final double SETTLED = 1e-12;
  private static final double SAME_CHANCE = 1e-11;
  private static final int LONGEST_RULE = 2000;
  private static final double GONE = -60;

  /**
   * A drift so far from the centre, with so small a chance of a signal, gives none any more where
   * the chance still falls.
   */
  private static final double OUT_OF_SIGHT = 12;

  private static final double NEVER = 1e-18;
  private static final double STILL_FADING = 1e-6;
  private static final int MOST_VALUES = 4_000_000;

  /** The logarithm of the chance of no signal within so many values. */
  private final double[] logQuiet;

  /**
   * What the logarithm changes by over one more cycle at the end; not a number when none is left.
   */
  private final double perCycle;

  private final int cycle;
  private final double average;
  private final double deviation;

  private ExactRunLength(double[] logQuiet, double perCycle, int cycle) {
    this.logQuiet = logQuiet;
    this.cycle = cycle;
    this.perCycle = perCycle;
    int known = logQuiet.length - 1;
    Sum first = new Sum();
    Sum second = new Sum();
    for (int n = 0; n < known; n++) {
      first.add(Math.exp(logQuiet[n]));
      second.addProduct(2.0 * n + 1, Math.exp(logQuiet[n]));
    }
    if (perCycle == 0) {
      this.average = Double.POSITIVE_INFINITY;
      this.deviation = Double.POSITIVE_INFINITY;
      return;
    }
    if (perCycle < 0) {
      double ending = -Math.expm1(perCycle);
      double more = 2.0 * cycle * Math.exp(perCycle) / ending;
      for (int j = 0; j < cycle; j++) {
        double quiet = Math.exp(logQuiet(known + j)) / ending;
        first.add(quiet);
        second.addProduct(2.0 * (known + j) + 1 + more, quiet);
      }
    }
    this.average = first.value();
    double variance = second.value() - average * average;
    this.deviation = variance < Double.MAX_VALUE ? Math.sqrt(Math.max(0, variance)) : average;
  }

  /**
   * Follows a chart to the end, or to where its chances no longer change.
   *
   * @param walk the chart, at its start
   * @param mean the mean of each value by its number
   * @param constant whether it is the same for all
   * @return the run length
   */
  static ExactRunLength of(Walk walk, LongToDoubleFunction mean, boolean constant) {
    double[] logQuiet = new double[64];
    int cycle = cycle(walk);
    Calm calm = new Calm(cycle);
    int n = 0;
    boolean settled = false;
    while (n < MOST_VALUES && !settled) {
      n++;
      if (n == logQuiet.length) {
        logQuiet = Arrays.copyOf(logQuiet, 2 * n);
      }
      double place = mean.applyAsDouble(n);
      double signal = walk.step(place);
      logQuiet[n] = logQuiet[n - 1] + Math.log1p(-signal);
      if (logQuiet[n] < GONE) {
        return new ExactRunLength(Arrays.copyOf(logQuiet, n + 1), Double.NaN, cycle);
      }
      if (constant) {
        settled = calm.reached(n, signal, walk);
      } else if (Math.abs(place) > OUT_OF_SIGHT && signal < NEVER) {
        settled = calm.reached(n, 1, walk);
      }
    }
    double perCycle = logQuiet[n] - logQuiet[n - cycle];
    double cycleBefore = n < 2 * cycle ? 0 : logQuiet[n - cycle] - logQuiet[n - 2 * cycle];
    boolean fading = !constant && perCycle > (1 - STILL_FADING) * cycleBefore;
    return new ExactRunLength(Arrays.copyOf(logQuiet, n + 1), fading ? 0 : perCycle, cycle);
  }

  private static int cycle(Walk walk) {
    return (int) Places.leastCommonMultiple(TURNS, walk.cycle());
  }

  /**
   * Lets a chart run without change and without a signal until it has forgotten its start and all
   * its sets begin.
   *
   * @param walk the chart, at its start
   * @param mean the mean of all values
   */
  static void settle(Walk walk, double mean) {
    Calm calm = new Calm(cycle(walk));
    int n = 0;
    do {
      n++;
    } while (!calm.reached(n, walk.step(mean), walk) && n < MOST_VALUES);
  }

  /**
   * Tells when neither the places where a chart can stand nor the chance of a signal change any
   * more from one cycle to the next. A chance of zero must last for 2000 values: a rule may only
   * not have had the values it spans.
   */
  private static final class Calm {
    private final int cycle;
    private double[] before = {};
    private double signalBefore = Double.NaN;

    Calm(int cycle) {
      this.cycle = cycle;
    }

    boolean reached(int n, double signal, Walk walk) {
      if (n % cycle != 0) {
        return false;
      }
      double[] now = walk.standing();
      boolean same =
          difference(before, now) < SETTLED
              && Math.abs(signal - signalBefore) <= SAME_CHANCE * signal
              && (signal > 0 || n >= LONGEST_RULE);
      before = now;
      signalBefore = signal;
      return same;
    }

    private static double difference(double[] before, double[] now) {
      if (before.length != now.length) {
        return Double.POSITIVE_INFINITY;
      }
      double total = 0;
      for (int i = 0; i < now.length; i++) {
        total += Math.abs(now[i] - before[i]);
      }
      return total;
    }
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
    double wanted = Math.log1p(-chance);
    int known = logQuiet.length - 1;
    if (wanted >= logQuiet[known]) {
      int low = 0;
      int high = known;
      while (high - low > 1) {
        int middle = (low + high) / 2;
        if (logQuiet[middle] <= wanted) {
          high = middle;
        } else {
          low = middle;
        }
      }
      return high;
    }
    if (perCycle == 0) {
      return Double.POSITIVE_INFINITY;
    }
    double cycles = Math.floor((wanted - logQuiet[known]) / perCycle);
    double rest = wanted - cycles * perCycle;
    int more = 0;
    while (more < cycle && logQuiet(known + more) > rest) {
      more++;
    }
    return known + cycles * cycle + more;
  }

  @Override
  public double chanceWithin(long values) {
    if (values < 0) {
      throw new IllegalArgumentException("values must not be below zero, is " + values);
    }
    return 0.0 - Math.expm1(logQuiet(values));
  }

  private double logQuiet(long n) {
    int known = logQuiet.length - 1;
    if (n <= known) {
      return logQuiet[(int) n];
    }
    if (Double.isNaN(perCycle)) {
      return Double.NEGATIVE_INFINITY;
    }
    long cycles = (n - known + cycle - 1) / cycle;
    return logQuiet[(int) (n - cycles * cycle)] + cycles * perCycle;
  }

  @Override
  public RunLengthDistribution inSets(int set) {
    Require.atLeast(set, 1, "set");
    long together = Places.leastCommonMultiple(cycle, set);
    int newCycle = (int) (together / set);
    long last = logQuiet.length - 1L + (Double.isNaN(perCycle) ? 0 : together);
    double[] quiet = new double[(int) ((last - 1) / set) + 2];
    for (int m = 0; m < quiet.length; m++) {
      quiet[m] = logQuiet((long) m * set);
    }
    return new ExactRunLength(quiet, perCycle * ((double) together / cycle), newCycle);
  }

  @Override
  public Way way() {
    return new Way.Exact();
  }
}
