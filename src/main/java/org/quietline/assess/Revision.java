package org.quietline.assess;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A change of a stream's limits, made or proposed, and what the old and the new results say to it.
 *
 * <p>Deviations are compared first, by F; means then, by Student's t, Welch's where the deviations
 * differ. Source: ASTM D6299 practice (from memory).
 *
 * @param from the first day of the new results
 * @param to the last day of the new results
 * @param approvedBy who approved it; empty for a proposal or where nobody is named
 * @param reason why; empty for a proposal or where none is given
 * @param old the results behind the old limits
 * @param fresh the new results
 * @param ratio the larger variance over the smaller
 * @param ratioChance the two-sided chance of variances so far apart
 * @param t the difference of the means over its standard error
 * @param tChance the two-sided chance of means so far apart
 * @param advice what practice makes of that
 */
public record Revision(
    LocalDate from,
    LocalDate to,
    Optional<String> approvedBy,
    Optional<String> reason,
    Block old,
    Block fresh,
    double ratio,
    double ratioChance,
    double t,
    double tChance,
    Advice advice) {

  /**
   * Results in one heap.
   *
   * @param results how many
   * @param mean their mean
   * @param deviation their sample deviation
   */
  public record Block(int results, double mean, double deviation) {}

  /** What to do with the limits. */
  public enum Advice {
    /** Nothing differs: limits from old and new results together are better than either. */
    POOL("pool"),
    /** The scatter has become smaller: limits from the new results, if that is accepted. */
    REPLACE("replace"),
    /** The scatter has grown: keep the old limits and look for the cause. */
    KEEP_SCATTER_GREW("keep-scatter-grew"),
    /** The mean has moved: keep the old limits until the cause is known. */
    KEEP_MEAN_MOVED("keep-mean-moved");

    private final String key;

    Advice(String key) {
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
}
