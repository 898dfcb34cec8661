package org.quietline.stats.compare;

import org.quietline.stats.Interval;
import org.quietline.stats.distribution.ChiSquare;
import org.quietline.stats.numeric.Require;

/**
 * So many events in so much time or so many pieces, and what that says about their true rate.
 *
 * <p>Garwood's exact interval for a Poisson count: {@code χ²(α/2; 2k)/2} to {@code χ²(1 − α/2; 2k +
 * 2)/2}, over the exposure. It never holds the truth less often than it says, and more often where
 * few are expected (a 95 % interval in 98.7 % where the mean is 3, in 95.7 % where it is 12). No
 * event gives a lower end of zero. Accurate to about 1e-12 relative. Source: Garwood (1936),
 * Biometrika 28, 437–442.
 *
 * @param count how many events, zero or more, below a thousand million
 * @param exposure in how much, above zero; the rate is per its unit
 */
public record ObservedCount(int count, double exposure) {
  private static final int MOST = 1_000_000_000;

  /**
   * Checks the ranges.
   *
   * @param count how many events
   * @param exposure in how much
   * @throws IllegalArgumentException if the count is negative or too large, or the exposure is not
   *     above zero
   */
  public ObservedCount {
    Require.atLeast(count, 0, "count");
    if (count >= MOST) {
      throw new IllegalArgumentException("count must be below " + MOST + ", is " + count);
    }
    Require.positive(exposure, "exposure");
  }

  /**
   * The rate seen.
   *
   * @return {@code count/exposure}
   */
  public double rate() {
    return count / exposure;
  }

  /**
   * The exact two-sided interval of the true rate.
   *
   * @param level the least confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval exactInterval(double level) {
    Require.share(level, "level");
    double tail = (1 - level) / 2;
    double high = ChiSquare.exceededWith(tail, 2 * count + 2);
    return new Interval(count == 0 ? 0 : rate(ChiSquare.quantile(tail, 2 * count)), rate(high));
  }

  /**
   * The exact one-sided lower bound of the true rate.
   *
   * @param level the least confidence level, between 0 and 1
   * @return the bound, zero for no event
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public double lowerBound(double level) {
    Require.share(level, "level");
    return count == 0 ? 0 : rate(ChiSquare.exceededWith(level, 2 * count));
  }

  /**
   * The exact one-sided upper bound of the true rate; for no event at 95 % about {@code
   * 3/exposure}.
   *
   * @param level the least confidence level, between 0 and 1
   * @return the bound
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public double upperBound(double level) {
    Require.share(level, "level");
    return rate(ChiSquare.quantile(level, 2 * count + 2));
  }

  private double rate(double chiSquare) {
    return chiSquare / 2 / exposure;
  }
}
