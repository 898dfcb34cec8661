package org.quietline.stats.distribution;

import org.quietline.stats.numeric.Require;

/**
 * The constants of charts for means, ranges and deviations of samples of n normal values, computed
 * and not read from a table.
 *
 * <p>d2 and d3 are mean and deviation of the range of n standard normal values; {@code c4 =
 * √(2/(n−1))·Γ(n/2)/Γ((n−1)/2)} is the mean of their sample deviation. All others follow from these
 * three; each lower factor is zero where the formula is negative. Published tables were made from
 * d2 and d3 rounded to four or five digits and can be one or two off in their last digit. Source:
 * ISO 7870-2:2013, annex; ASTM E2587; for d2 and d3 see {@link NormalRange}.
 *
 * @param n how many values are in a sample, from 2 to 100
 * @param d2 the mean range, in deviations
 * @param d3 the deviation of the range, in deviations
 * @param c4 the mean of the sample deviation, in deviations
 */
public record ChartConstants(int n, double d2, double d3, double c4) {

  /**
   * Checks the figures.
   *
   * @param n how many values are in a sample
   * @param d2 the mean range
   * @param d3 the deviation of the range
   * @param c4 the mean of the sample deviation
   * @throws IllegalArgumentException if n is not from 2 to 100 or a figure is not above zero
   */
  public ChartConstants {
    new NormalRange(n);
    Require.positive(d2, "d2");
    Require.positive(d3, "d3");
    Require.positive(c4, "c4");
  }

  /**
   * Computes the constants.
   *
   * @param n how many values are in a sample, from 2 to 100
   * @return the constants, to about 1e-12
   * @throws IllegalArgumentException if n is out of range
   */
  public static ChartConstants of(int n) {
    NormalRange range = new NormalRange(n);
    double a = (n - 1) / 2.0;
    double logC4 = a * Math.log1p(0.5 / a) - 0.5 + Stirling.rest(a + 0.5) - Stirling.rest(a);
    return new ChartConstants(n, range.mean(), range.deviation(), Math.exp(logC4));
  }

  /**
   * The deviation of the sample deviation.
   *
   * @return {@code c5 = √(1 − c4²)}
   */
  public double c5() {
    return Math.sqrt((1 - c4) * (1 + c4));
  }

  /**
   * Half-width of the limits of a mean by the true deviation.
   *
   * @return {@code A = 3/√n}
   */
  public double a() {
    return 3 / Math.sqrt(n);
  }

  /**
   * Half-width of the limits of a mean by the mean range.
   *
   * @return {@code A2 = 3/(d2·√n)}
   */
  public double a2() {
    return a() / d2;
  }

  /**
   * Half-width of the limits of a mean by the mean sample deviation.
   *
   * @return {@code A3 = 3/(c4·√n)}
   */
  public double a3() {
    return a() / c4;
  }

  /**
   * Lower limit of a sample deviation by the mean sample deviation.
   *
   * @return {@code B3 = 1 − 3·c5/c4}, or zero
   */
  public double b3() {
    return Math.max(0, 1 - 3 * c5() / c4);
  }

  /**
   * Upper limit of a sample deviation by the mean sample deviation.
   *
   * @return {@code B4 = 1 + 3·c5/c4}
   */
  public double b4() {
    return 1 + 3 * c5() / c4;
  }

  /**
   * Lower limit of a sample deviation by the true deviation.
   *
   * @return {@code B5 = c4 − 3·c5}, or zero
   */
  public double b5() {
    return Math.max(0, c4 - 3 * c5());
  }

  /**
   * Upper limit of a sample deviation by the true deviation.
   *
   * @return {@code B6 = c4 + 3·c5}
   */
  public double b6() {
    return c4 + 3 * c5();
  }

  /**
   * Lower limit of a range by the true deviation, D1 of the tables.
   *
   * @return {@code D1 = d2 − 3·d3}, or zero
   */
  public double limitD1() {
    return Math.max(0, d2 - 3 * d3);
  }

  /**
   * Upper limit of a range by the true deviation, D2 of the tables.
   *
   * @return {@code D2 = d2 + 3·d3}
   */
  public double limitD2() {
    return d2 + 3 * d3;
  }

  /**
   * Lower limit of a range by the mean range, D3 of the tables.
   *
   * @return {@code D3 = 1 − 3·d3/d2}, or zero
   */
  public double limitD3() {
    return Math.max(0, 1 - 3 * d3 / d2);
  }

  /**
   * Upper limit of a range by the mean range, D4 of the tables.
   *
   * @return {@code D4 = 1 + 3·d3/d2}
   */
  public double limitD4() {
    return 1 + 3 * d3 / d2;
  }

  /**
   * Half-width of the limits of a single value by the mean range.
   *
   * @return {@code E2 = 3/d2}
   */
  public double e2() {
    return 3 / d2;
  }

  /**
   * Half-width of the limits of a single value by the mean sample deviation.
   *
   * @return {@code E3 = 3/c4}
   */
  public double e3() {
    return 3 / c4;
  }
}
