package org.quietline.stats.sample;

import java.util.Arrays;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * The bootstrap of any statistic of one sample, with intervals corrected for bias and for an error
 * that changes with the truth (BCa).
 *
 * <p>B samples of n values are drawn from the n values with replacement, and the statistic of each
 * taken. With G their distribution function, {@code z0 = Φ⁻¹(share of them below the statistic,
 * equal ones counted half)} and acceleration {@code a = Σ(m − s(i))³/(6·(Σ(m − s(i))²)^1.5)} of the
 * statistics s(i) without value i and their mean m, the end for a tail p is {@code G⁻¹(Φ(z0 + (z0 +
 * z(p))/(1 − a·(z0 + z(p)))))}. G⁻¹ is read at rank {@code p·(B + 1)}, between ranks in proportion.
 * The same seed gives the same interval.
 *
 * <p>It is no remedy for few values. Samples drawn again never reach beyond the values, so the
 * interval is too narrow: of a normal population the 95 % interval of the standard deviation held
 * the truth in 81, 86, 89 and 93 % at n = 8, 12, 20 and 50, that of the mean in 88, 91, 93 and 94 %
 * (simulation). Use it from about 50 values on, or say what it holds.
 *
 * <p>Special cases: where {@code a·(z0 + z(p))} is 1 or more, which takes a large acceleration and
 * an extreme level, the end is the outermost statistic drawn; no interval where all statistics
 * drawn are equal, or all lie on one side of the statistic. A statistic may be infinite, never NaN.
 * Source: Efron (1987), J. Am. Stat. Assoc. 82, 171–185; Efron and Tibshirani (1993), An
 * Introduction to the Bootstrap, chapter 14.
 */
public final class Bootstrap {
  private final double statistic;
  private final double[] drawn;
  private final double acceleration;

  private Bootstrap(double statistic, double[] drawn, double acceleration) {
    this.statistic = statistic;
    this.drawn = drawn;
    this.acceleration = acceleration;
  }

  /**
   * Draws the samples.
   *
   * @param values at least three finite numbers
   * @param statistic the statistic, of an array it may change; it must not be NaN for any sample
   *     drawn from the values nor for the values without one of them
   * @param samples how many samples to draw, at least 100; 2000 and more for 95 %
   * @param seed where the random numbers start
   * @return the bootstrap
   * @throws IllegalArgumentException if there are fewer than three values, one is NaN or infinite,
   *     there are fewer than 100 samples, or the statistic of a sample is NaN
   */
  public static Bootstrap of(
      double[] values, ToDoubleFunction<double[]> statistic, int samples, long seed) {
    Require.values(values, 3);
    Require.atLeast(samples, 100, "samples");
    int n = values.length;
    SplittableRandom random = new SplittableRandom(seed);
    double[] drawn = new double[samples];
    for (int i = 0; i < samples; i++) {
      double[] sample = new double[n];
      Arrays.setAll(sample, k -> values[random.nextInt(n)]);
      drawn[i] = of(statistic, sample);
    }
    Arrays.sort(drawn);
    return new Bootstrap(of(statistic, values.clone()), drawn, acceleration(values, statistic));
  }

  private static double of(ToDoubleFunction<double[]> statistic, double[] sample) {
    double value = statistic.applyAsDouble(sample);
    if (Double.isNaN(value)) {
      throw new IllegalArgumentException("statistic is NaN for " + Arrays.toString(sample));
    }
    return value;
  }

  /** Zero where the statistics without a value are all equal or not all finite. */
  private static double acceleration(double[] values, ToDoubleFunction<double[]> statistic) {
    int n = values.length;
    double[] without = new double[n];
    for (int i = 0; i < n; i++) {
      double[] rest = new double[n - 1];
      System.arraycopy(values, 0, rest, 0, i);
      System.arraycopy(values, i + 1, rest, i, n - 1 - i);
      without[i] = of(statistic, rest);
    }
    double mean = Arrays.stream(without).sum() / n;
    Sum squares = new Sum();
    Sum cubes = new Sum();
    for (double s : without) {
      double d = mean - s;
      squares.add(d * d);
      cubes.add(d * d * d);
    }
    double a = cubes.value() / (6 * Math.pow(squares.value(), 1.5));
    return Double.isFinite(a) ? a : 0;
  }

  /**
   * The statistic of the values.
   *
   * @return the statistic
   */
  public double statistic() {
    return statistic;
  }

  /**
   * How much the error of the statistic changes with the truth.
   *
   * @return a; zero where the statistics without one value are all equal or not all finite
   */
  public double acceleration() {
    return acceleration;
  }

  /**
   * The share of the statistics drawn that lie below that of the values, equal ones counted half:
   * one half where there is no bias.
   *
   * @return the share, from 0 to 1
   */
  public double shareBelow() {
    double below = 0;
    for (double d : drawn) {
      below += d < statistic ? 1 : d == statistic ? 0.5 : 0;
    }
    return below / drawn.length;
  }

  /**
   * The confidence interval, bias corrected and accelerated.
   *
   * @param level the confidence level, between 0 and 1
   * @return the interval; nothing where the statistics drawn are all equal or all on one side of
   *     that of the values
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Optional<Interval> interval(double level) {
    Require.share(level, "level");
    double below = shareBelow();
    boolean allEqual = drawn[0] == drawn[drawn.length - 1];
    if (allEqual || below <= 0 || below >= 1) {
      return Optional.empty();
    }
    double bias = Normal.quantile(below);
    double z = Normal.exceededWith((1 - level) / 2);
    return Optional.of(new Interval(end(bias, -z), end(bias, z)));
  }

  /** Past the pole of the correction it is the end that the correction runs to before it. */
  private static double share(double bias, double moved, double divisor) {
    if (divisor > 0) {
      return Normal.below(bias + moved / divisor);
    }
    return moved > 0 ? 1 : 0;
  }

  private double end(double bias, double z) {
    double moved = bias + z;
    double share = share(bias, moved, 1 - acceleration * moved);
    double rank = share * (drawn.length + 1) - 1;
    int low = (int) Math.max(0, Math.min(drawn.length - 1, Math.floor(rank)));
    int high = Math.min(drawn.length - 1, low + 1);
    double part = Math.max(0, Math.min(1, rank - low));
    return drawn[low] == drawn[high] || part == 0
        ? drawn[low]
        : drawn[low] + part * (drawn[high] - drawn[low]);
  }
}
