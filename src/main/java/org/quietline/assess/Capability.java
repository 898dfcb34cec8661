package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import java.util.OptionalDouble;
import org.quietline.stats.Interval;

/**
 * What the process is capable of against the method's limits, from product results. Source: ISO
 * 22514-2 (performance index of observed spread); bound by the noncentral t distribution.
 *
 * @param batches the product results used, in time order
 * @param leftOut product results left out: without a number, or a bound that was not used
 * @param bounds product results that are only known to lie below a bound, and used as that
 * @param censoredBeyond those of them whose bound proves them beyond a limit
 * @param lowerLimit the lower limit, if any
 * @param upperLimit the upper limit, if any
 * @param mean their mean
 * @param deviation their sample deviation; both of the fitted population where there are bounds
 * @param beyond how many are beyond a limit, the proven ones among those left out included
 * @param shape the shape that the index is told for
 * @param normalChance the chance of a shape at least so far from normal, by the Anderson–Darling
 *     test; not known where some results are only a bound
 * @param index the performance index Ppk and what follows from it; refused where an index would
 *     mislead
 * @param measurementShare the share of the observed variance that is measurement, if known
 */
public record Capability(
    List<Batch> batches,
    int leftOut,
    int bounds,
    int censoredBeyond,
    OptionalDouble lowerLimit,
    OptionalDouble upperLimit,
    double mean,
    double deviation,
    int beyond,
    Shape shape,
    OptionalDouble normalChance,
    Answer<Index> index,
    Answer<Double> measurementShare) {
  /** Copies the list. */
  public Capability {
    batches = List.copyOf(batches);
  }

  /** What product results are shaped like. */
  public enum Shape {
    /** A normal distribution: nothing speaks against it at 1 %. */
    NORMAL("normal"),
    /** Not normal, and nothing speaks against the logarithms being normal. */
    LOGNORMAL("lognormal"),
    /** Neither. */
    NEITHER("not-normal");

    private final String key;

    Shape(String key) {
      this.key = key;
    }

    /**
     * The word used in findings.
     *
     * @return the word
     */
    public String key() {
      return key;
    }
  }

  /**
   * A performance index with its bound; for a lognormal shape that of the logarithms.
   *
   * @param ppk the index of the nearer limit
   * @param lower95 its one-sided 95 % lower bound
   * @param expectedBeyondPerMillion batches a million expected beyond the limits, by the shape
   * @param atMostBeyondPerMillion the same at the lower bound of the index: with 95 % confidence no
   *     more
   * @param beyond95 the 95 % interval of the share beyond the limits, from 0 to 1
   */
  public record Index(
      double ppk,
      double lower95,
      double expectedBeyondPerMillion,
      double atMostBeyondPerMillion,
      Interval beyond95) {}

  /**
   * One product result.
   *
   * @param at when
   * @param sample the sample
   * @param value the result
   */
  public record Batch(LocalDateTime at, String sample, double value) {}
}
