package org.quietline.stats.runlength;

import java.util.Optional;
import java.util.function.LongToDoubleFunction;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Require;

/**
 * How many values a chart takes until it signals.
 *
 * <p>Values are independent and normal with deviation 1 about a mean that a {@link Change} moves;
 * the chart's centre and deviation are taken as exactly right, which those from a short baseline
 * are not: {@link #given} and {@link BaselineRunLength} say what follows from that. Single values,
 * weighted means, cumulative sums and run rules are exact, each also beside single values; other
 * combinations are simulated, and so are rules that need more than 60,000 states or look at sets
 * that begin together less often than every 10,000 values.
 *
 * <p>Run lengths are numbers of values. Where rules look at sets of values, the first value after
 * the change begins a set, each value of a set counts for itself, and a signal ends the run at its
 * own value. Where what is taken together is also judged together, {@link
 * RunLengthDistribution#inSets} counts the sets, the one with the signal whole, and {@link
 * Chart#rulesEvery} looks at rules at the end of sets only. The choice is not small: in control a
 * multirule for sets of two takes 85 sets where rules of successive values are looked at after each
 * value, and 103 where at the end of sets. Source: Brook and Evans (1972), Biometrika 59, 539–549;
 * Crowder (1987), Technometrics 29, 401–407; Champ and Woodall (1987), Technometrics 29, 393–399;
 * Lucas and Saccucci (1990), Technometrics 32, 1–12; Fu and Chang (2002), J. Appl. Probab. 39,
 * 1–18.
 */
public final class RunLength {
  private static final double WIDEST = 6;
  private static final int TRIALS = 100_000;
  private static final long SEED = 20_300_101;
  private static final int QUIET = 200;
  private static final double LONGEST_SIMULATED = 5000;

  private RunLength() {}

  /** Where a chart stands when the change begins; it begins with a set where there are sets. */
  public enum Start {
    /** It has just begun: weighted mean at the centre, sums at zero or their head start. */
    FRESH,
    /** It has run long without change and without a signal (the steady state). */
    SETTLED
  }

  /**
   * The run length of a chart that begins with the change: exact where it can be, otherwise from
   * 100,000 simulated runs with a fixed seed.
   *
   * @param chart the chart
   * @param change what the mean does from the first value on
   * @return the distribution of the run length
   * @throws IllegalArgumentException if a simulation would be needed and too long
   */
  public static RunLengthDistribution of(Chart chart, Change change) {
    return of(chart, change, Start.FRESH);
  }

  /**
   * The run length of a chart counted from the change.
   *
   * @param chart the chart
   * @param change what the mean does from the first value on
   * @param start where the chart stands at that time; in a simulation it is settled after 200
   *     values without a signal
   * @return the distribution of the run length
   * @throws IllegalArgumentException if a simulation would be needed and too long, the chart
   *     signals too often to settle
   */
  public static RunLengthDistribution of(Chart chart, Change change, Start start) {
    return of(chart, change, start, 0);
  }

  /**
   * The run length of a chart whose centre and deviation come from a baseline and are off.
   *
   * @param chart the chart in deviations as the baseline gave them
   * @param change what the mean does from the first value on, in true deviations from the true mean
   * @param centreError how far the chart's centre lies above the true mean, in true deviations, at
   *     most 100 either way
   * @param deviationRatio the chart's deviation over the true one, above zero
   * @return the distribution of the run length, given that baseline
   * @throws IllegalArgumentException if an argument is outside its range or NaN, or takes the chart
   *     out of its range
   */
  public static RunLengthDistribution given(
      Chart chart, Change change, double centreError, double deviationRatio) {
    Require.positive(deviationRatio, "deviation ratio");
    if (!(Math.abs(centreError) <= 100)) {
      throw new IllegalArgumentException(
          "centre error must be from -100 to 100, is " + centreError);
    }
    return of(chart.widened(deviationRatio), change, Start.FRESH, centreError);
  }

  /**
   * The run length of a chart from simulated runs, whether or not it can be had exactly.
   *
   * @param chart the chart
   * @param change what the mean does from the first value on
   * @param trials how many runs, at least 2
   * @param seed the seed of the random values
   * @return the distribution of the run length, with its standard error
   * @throws IllegalArgumentException if there are too few trials or the runs are too long
   */
  public static RunLengthDistribution simulated(Chart chart, Change change, int trials, long seed) {
    Require.atLeast(trials, 2, "trials");
    return SimulatedRunLength.of(chart, change::mean, 0, 0, trials, seed);
  }

  private static RunLengthDistribution of(
      Chart chart, Change change, Start start, double centreError) {
    LongToDoubleFunction mean = n -> change.mean(n) - centreError;
    Optional<Walk> walk = Walks.of(chart);
    if (walk.isEmpty()) {
      checkShortEnough(chart, change, centreError);
      int quiet = start == Start.SETTLED ? QUIET : 0;
      return SimulatedRunLength.of(chart, mean, quiet, -centreError, TRIALS, SEED);
    }
    if (start == Start.SETTLED) {
      ExactRunLength.settle(walk.get(), -centreError);
    }
    return ExactRunLength.of(walk.get(), mean, change instanceof Change.Shift);
  }

  private static void checkShortEnough(Chart chart, Change change, double centreError) {
    if (!chart.parts().allMatch(part -> Walks.of(part).isPresent())) {
      return;
    }
    double shortest =
        chart
            .parts()
            .mapToDouble(part -> of(part, change, Start.FRESH, centreError).average())
            .min()
            .orElse(Double.POSITIVE_INFINITY);
    if (shortest > LONGEST_SIMULATED) {
      throw new IllegalArgumentException(
          "a simulation would be too long: the shortest average run length of the charts is above "
              + LONGEST_SIMULATED);
    }
  }

  /**
   * The average run length of single values against their limits, {@code 1/P(|x| > width)}.
   *
   * @param width the half-width of the limits in deviations, above 0 and at most 6
   * @param shift the shift of the mean in deviations, at most 100 in size
   * @return the average run length, at least 1
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static double individuals(double width, double shift) {
    checkWidth(width, "width");
    double size = new Change.Shift(shift).size();
    return 1 / (Normal.above(width - size) + Normal.above(width + size));
  }

  /**
   * The average run length of the weighted mean against its steady limits.
   *
   * @param weight the weight λ of the newest value, from 0.01 to 1
   * @param width the half-width L of the limits in deviations of the mean, above 0 and at most 6
   * @param shift the shift of the mean in deviations of single values, at most 100 in size
   * @return the average run length, at least 1
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static double weightedMean(double weight, double width, double shift) {
    checkWidth(width, "width");
    return weight == 1
        ? individuals(width, shift)
        : of(Chart.weightedMean(weight, width), Change.shift(shift)).average();
  }

  /**
   * The average run length of single values and their weighted mean watched together; the first
   * signal of either counts.
   *
   * @param width the half-width of the limits of single values, above 0 and at most 6
   * @param weight the weight λ of the newest value, from 0.01 to 1
   * @param weightedWidth the half-width L of the limits of the weighted mean, above 0 and at most 6
   * @param shift the shift of the mean in deviations of single values, at most 100 in size
   * @return the average run length, at least 1
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static double both(double width, double weight, double weightedWidth, double shift) {
    checkWidth(width, "width");
    checkWidth(weightedWidth, "weighted width");
    Chart mean = Chart.weightedMean(weight, weightedWidth);
    return weight == 1
        ? individuals(Math.min(width, weightedWidth), shift)
        : of(Chart.together(Chart.individuals(width), mean), Change.shift(shift)).average();
  }

  private static void checkWidth(double width, String name) {
    if (!(width > 0 && width <= WIDEST)) {
      throw new IllegalArgumentException(name + " must be above 0 and at most 6, is " + width);
    }
  }
}
