package org.quietline.stats.sample;

import java.util.Arrays;
import org.quietline.stats.Interval;
import org.quietline.stats.numeric.Require;

/**
 * Quantiles of a sample by a named definition: values between two order statistics are interpolated
 * linearly, and the definitions differ in the place that an order statistic is given.
 *
 * <p>With the sorted values {@code x(1) … x(n)} and a place {@code h} from {@link Definition}, the
 * quantile is {@code x(⌊h⌋) + (h − ⌊h⌋)·(x(⌊h⌋+1) − x(⌊h⌋))}; a place before the first value gives
 * the first and one behind the last gives the last. All three definitions have the same median. One
 * value is all its quantiles. Source: Hyndman and Fan (1996), Am. Stat. 50, 361–365, types 6 to 8.
 */
public final class Quantiles {
  /** Fences lie so many interquartile ranges outside the quartiles. */
  private static final double INNER = 1.5;

  private static final double OUTER = 3;

  private final Definition definition;
  private final double[] sorted;

  /** The place of the quantile p among n sorted values. */
  public enum Definition {
    /** {@code (n + 1)·p}, the mean place; that of the NIST handbook. Type 6. */
    MEAN_PLACE,
    /** {@code (n − 1)·p + 1}, the first and last value at 0 and 1; that of spreadsheets. Type 7. */
    ENDS_INCLUDED,
    /** {@code (n + 1/3)·p + 1/3}, median-unbiased whatever the distribution. Type 8. */
    MEDIAN_UNBIASED;

    double place(int n, double p) {
      return switch (this) {
        case MEAN_PLACE -> (n + 1) * p;
        case ENDS_INCLUDED -> (n - 1) * p + 1;
        case MEDIAN_UNBIASED -> (n + 1 / 3.0) * p + 1 / 3.0;
      };
    }
  }

  private Quantiles(Definition definition, double[] sorted) {
    this.definition = definition;
    this.sorted = sorted;
  }

  /**
   * The quantiles of values.
   *
   * @param definition which definition
   * @param values at least one finite number, each at most 1e150 in size, in any order
   * @return the quantiles
   * @throws IllegalArgumentException if there is no value or one is NaN, infinite or larger
   */
  public static Quantiles of(Definition definition, double... values) {
    Require.values(values, 1);
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return new Quantiles(definition, sorted);
  }

  /**
   * A quantile.
   *
   * @param p the share of the values below it, from 0 to 1
   * @return the quantile, in the unit of the values
   * @throws IllegalArgumentException if p is NaN or not from 0 to 1
   */
  public double at(double p) {
    if (!(p >= 0 && p <= 1)) {
      throw new IllegalArgumentException("p must be from 0 to 1, is " + p);
    }
    double place = definition.place(sorted.length, p);
    int below = (int) Math.floor(place);
    if (below < 1) {
      return sorted[0];
    }
    if (below >= sorted.length) {
      return sorted[sorted.length - 1];
    }
    double low = sorted[below - 1];
    return low + (place - below) * (sorted[below] - low);
  }

  /**
   * The median, the middle value or the mean of the middle two, the same in all definitions.
   * Source: ISO 3534-1:2006, 1.13.
   *
   * @return the median
   */
  public double median() {
    return at(0.5);
  }

  /**
   * The upper quartile less the lower one.
   *
   * @return the interquartile range
   */
  public double interquartileRange() {
    return at(0.75) - at(0.25);
  }

  /**
   * The inner fences, 1.5 interquartile ranges outside the quartiles. Source: Tukey (1977),
   * Exploratory Data Analysis, chapter 2.
   *
   * @return the fences
   */
  public Interval innerFences() {
    return fences(INNER);
  }

  /**
   * The outer fences, 3 interquartile ranges outside the quartiles. Source: as for {@link
   * #innerFences}.
   *
   * @return the fences
   */
  public Interval outerFences() {
    return fences(OUTER);
  }

  private Interval fences(double ranges) {
    double away = ranges * interquartileRange();
    return new Interval(at(0.25) - away, at(0.75) + away);
  }
}
