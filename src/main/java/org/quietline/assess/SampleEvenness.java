package org.quietline.assess;

import org.quietline.bench.Material;
import org.quietline.bench.ReplicateKind;
import org.quietline.stats.Interval;

/**
 * Whether the readings of real samples lie further apart than those of the control material, made
 * on the same instrument by the same people over the same time, at levels alike. If they do,
 * samples are uneven where second readings are of a fresh portion, and settle or cloud where the
 * same vial is read again. Source: the comparison of pairs on samples and on a control of ISO
 * 7870-2 practice (from memory); the F test of ISO 2854:1976.
 *
 * @param instrument the instrument's key
 * @param material the control material
 * @param kind what the second reading repeats
 * @param comparison the two deviations
 * @param rate whether it was asked, and whether samples differ
 */
public record SampleEvenness(
    String instrument,
    Material material,
    ReplicateKind kind,
    Answer<Comparison> comparison,
    NoticeRate rate) {

  /**
   * Two deviations of a reading.
   *
   * @param productPairs how many product pairs, all at levels within a factor of √2 of the
   *     control's
   * @param productDeviation their repeatability deviation
   * @param controlPairs how many control pairs
   * @param controlDeviation their repeatability deviation
   * @param ratio the product deviation over the control's
   * @param interval its 95 % interval
   * @param chance the chance of a ratio at least so large if both are equally precise (one-sided F
   *     test)
   * @param uneven whether that chance is below 1 %
   * @param between what samples add to the deviation of a reading, {@code √(sP² − sC²)}, zero where
   *     they add nothing
   */
  public record Comparison(
      int productPairs,
      double productDeviation,
      int controlPairs,
      double controlDeviation,
      double ratio,
      Interval interval,
      double chance,
      boolean uneven,
      double between) {}
}
