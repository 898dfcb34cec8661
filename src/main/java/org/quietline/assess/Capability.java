package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What the process is capable of against the method's limits, from product results. Source: ISO
 * 22514-2 (performance index of observed spread); bound by the noncentral t distribution.
 *
 * @param batches the product results used, in time order
 * @param leftOut product results left out: censored or without a number
 * @param censoredBeyond those of them whose bound proves them beyond a limit
 * @param lowerLimit the lower limit, if any
 * @param upperLimit the upper limit, if any
 * @param mean their mean
 * @param deviation their sample deviation
 * @param beyond how many are beyond a limit, the proven ones among those left out included
 * @param normal whether the Anderson–Darling test finds nothing against the normal shape at 1 %
 * @param normalChance the chance of a shape at least so far from normal
 * @param index the performance index Ppk and what follows from it; refused for a shape that is not
 *     normal
 * @param measurementShare the share of the observed variance that is measurement, if known
 */
public record Capability(
    List<Batch> batches,
    int leftOut,
    int censoredBeyond,
    OptionalDouble lowerLimit,
    OptionalDouble upperLimit,
    double mean,
    double deviation,
    int beyond,
    boolean normal,
    double normalChance,
    Answer<Index> index,
    Answer<Double> measurementShare) {
  /** Copies the list. */
  public Capability {
    batches = List.copyOf(batches);
  }

  /**
   * A performance index with its bound.
   *
   * @param ppk the index of the nearer limit
   * @param lower95 its one-sided 95 % lower bound
   * @param expectedBeyondPerMillion batches a million expected beyond the limits, by the normal
   *     tail
   * @param atMostBeyondPerMillion the same at the lower bound of the index: with 95 % confidence no
   *     more
   */
  public record Index(
      double ppk, double lower95, double expectedBeyondPerMillion, double atMostBeyondPerMillion) {}

  /**
   * One product result.
   *
   * @param at when
   * @param sample the sample
   * @param value the result
   */
  public record Batch(LocalDateTime at, String sample, double value) {}
}
