package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import org.quietline.bench.Acid;
import org.quietline.bench.Result;
import org.quietline.stats.Interval;

/**
 * Acid numbers of one instrument held against free fatty acids of the same samples: {@code q = AN −
 * f·FFA}. The two methods do not answer to the same species (mineral acid counts in an acid number
 * only), so where q lies is taken from the bench's own records and zero is not expected (common
 * practice). Source of the check: ISO/IEC 17025:2017, 7.7.1 h, correlation of results for different
 * characteristics of an item.
 *
 * @param instrument the instrument of the acid number
 * @param otherMethod the key of the method of the free fatty acid
 * @param factor f, the acid number that one unit of the free fatty acid makes
 * @param basis the acid that f takes the free fatty acid as
 * @param basisStated whether the unit names it; otherwise it is oleic acid by custom
 * @param pairs the samples measured by both, in the order in which the second result was there
 * @param unmatched acid numbers of products without a free fatty acid in time
 * @param centre where q lies
 * @param signals pairs beyond their limits, if the bench uses the rule, in time order
 * @param rate how many pairs of the period were judged, and how many were beyond
 */
public record AcidityAgreement(
    String instrument,
    String otherMethod,
    double factor,
    Acid basis,
    boolean basisStated,
    List<Pair> pairs,
    int unmatched,
    Answer<Centre> centre,
    List<Signal> signals,
    NoticeRate rate) {
  /** Copies the lists. */
  public AcidityAgreement {
    pairs = List.copyOf(pairs);
    signals = List.copyOf(signals);
  }

  /**
   * One sample measured by both methods.
   *
   * @param acidNumber the result of the acid number
   * @param freeFattyAcid the result of the free fatty acid
   * @param at when the later of the two was taken
   * @param residual q, in mg KOH/g
   * @param level the mean of the acid number and f times the free fatty acid, in mg KOH/g
   * @param takenOut whether an action took it out of what later ones are judged by
   * @param limits what the pairs before it predict
   */
  public record Pair(
      Result acidNumber,
      Result freeFattyAcid,
      LocalDateTime at,
      double residual,
      double level,
      boolean takenOut,
      Answer<Limits> limits) {
    /**
     * Whether the residual is beyond its limits.
     *
     * @return false also where there are none
     */
    public boolean isBeyond() {
      return limits.value().filter(l -> !l.action().contains(residual)).isPresent();
    }
  }

  /**
   * The limits of a residual: Student's t from the residuals before it, 99.73 %.
   *
   * @param centre where the residual is expected, in mg KOH/g
   * @param action the limits, in mg KOH/g
   * @param relative whether the levels so far differ by a factor of 3 or more, so that residuals
   *     were compared as shares of their level
   * @param provisional whether fewer than 15 pairs were before it
   */
  public record Limits(double centre, Interval action, boolean relative, boolean provisional) {}

  /**
   * Where the residuals lie.
   *
   * @param mean their mean, in mg KOH/g
   * @param interval its 95 % interval, by Student's t
   * @param pairs of how many
   */
  public record Centre(double mean, Interval interval, int pairs) {}
}
