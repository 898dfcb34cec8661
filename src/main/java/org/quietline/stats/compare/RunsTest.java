package org.quietline.stats.compare;

import org.apache.commons.math3.special.Gamma;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.sample.RobustSummary;

/**
 * How many runs values in time order make above and below their median.
 *
 * <p>Few runs speak for drift or steps, many for alternation. Given how many values are below and
 * above, all orders are equally likely for independent values, whatever their shape: {@code P(2k
 * runs) = 2·C(b−1, k−1)·C(a−1, k−1)/C(a+b, a)}, and for {@code 2k + 1} runs the two mixed products.
 * The chances are sums of these, accurate to about 1e-11 relative. They come in steps: with 5
 * values on each side the rarest result, 2 runs, has 0.8 %. The normal approximation {@code z =
 * (runs − mean)/deviation}, mean {@code 2ab/(a+b) + 1}, without correction for continuity, is the
 * one handbooks print. Values equal to the median are left out. Source: Wald and Wolfowitz (1940),
 * Ann. Math. Statist. 11, 147–162; Swed and Eisenhart (1943), Ann. Math. Statist. 14, 66–87;
 * NIST/SEMATECH e-Handbook 1.3.5.13.
 *
 * @param below how many values are below, at least 1
 * @param above how many are above, at least 1
 * @param runs how many runs they make, from 2 to what is possible
 */
public record RunsTest(int below, int above, int runs) {

  /**
   * Checks the ranges.
   *
   * @param below how many values are below
   * @param above how many are above
   * @param runs how many runs they make
   * @throws IllegalArgumentException if a side has no value, or so many runs are not possible
   */
  public RunsTest {
    Require.atLeast(below, 1, "below");
    Require.atLeast(above, 1, "above");
    if (runs < 2 || runs > most(below, above)) {
      throw new IllegalArgumentException(
          "runs must be from 2 to " + most(below, above) + ", is " + runs);
    }
  }

  /**
   * Counts runs about the median.
   *
   * @param values at least two finite numbers in time order, not all equal
   * @return the test
   * @throws IllegalArgumentException if there are fewer, one is no usable number, or none lies
   *     above or none below the median
   */
  public static RunsTest aboutMedian(double... values) {
    Require.values(values, 2);
    double median = RobustSummary.medianOf(values);
    boolean[] high = new boolean[values.length];
    int n = 0;
    int above = 0;
    int runs = 0;
    for (double v : values) {
      if (v != median) {
        high[n] = v > median;
        above += high[n] ? 1 : 0;
        runs += n == 0 || high[n] != high[n - 1] ? 1 : 0;
        n++;
      }
    }
    return new RunsTest(n - above, above, runs);
  }

  /**
   * How many runs are expected of independent values.
   *
   * @return the mean
   */
  public double expected() {
    return 2.0 * below * above / (below + above) + 1;
  }

  /**
   * The runs less the mean, in deviations {@code √(2ab(2ab − a − b)/((a + b)²(a + b − 1)))}.
   *
   * @return z; zero where only one number of runs is possible
   */
  public double statistic() {
    double n = (double) below + above;
    double twice = 2.0 * below * above;
    double variance = twice * (twice - n) / (n * n * (n - 1));
    return variance == 0 ? 0 : (runs - expected()) / Math.sqrt(variance);
  }

  /**
   * The two-sided chance by the normal approximation.
   *
   * @return the chance
   */
  public double normalChance() {
    return Normal.outside(Math.abs(statistic()));
  }

  /**
   * The exact chance of at most so many runs.
   *
   * @return the one-sided chance; small under drift
   */
  public double chanceBelow() {
    return sum(2, runs);
  }

  /**
   * The exact chance of at least so many runs.
   *
   * @return the one-sided chance; small under alternation
   */
  public double chanceAbove() {
    return sum(runs, most(below, above));
  }

  /**
   * Twice the smaller of the two exact chances.
   *
   * @return the two-sided chance, at most 1
   */
  public double chance() {
    return Math.min(1, 2 * Math.min(chanceBelow(), chanceAbove()));
  }

  private static int most(int below, int above) {
    return below == above ? 2 * below : 2 * Math.min(below, above) + 1;
  }

  private double sum(int from, int to) {
    double sum = 0;
    for (int r = from; r <= to; r++) {
      sum += probability(r);
    }
    return Math.min(1, sum);
  }

  private double probability(int r) {
    int k = r / 2;
    double all = logChoose(below + above, above);
    if (r % 2 == 0) {
      return 2 * Math.exp(logChoose(below - 1, k - 1) + logChoose(above - 1, k - 1) - all);
    }
    return ways(below, k, above, k - 1, all) + ways(below, k - 1, above, k, all);
  }

  private static double ways(int a, int i, int b, int j, double all) {
    return i > a - 1 || j > b - 1 ? 0 : Math.exp(logChoose(a - 1, i) + logChoose(b - 1, j) - all);
  }

  private static double logChoose(int n, int k) {
    return Gamma.logGamma(n + 1.0) - Gamma.logGamma(k + 1.0) - Gamma.logGamma(n - k + 1.0);
  }
}
