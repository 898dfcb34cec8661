package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.assess.Hint.Estimate;
import org.quietline.assess.Hint.Pattern;
import org.quietline.bench.Role;
import org.quietline.stats.Interval;

/**
 * The product and retest results that an open story puts in doubt: those since the last good
 * control. Source of the duty: ISO/IEC 17025:2017, 7.10.1 (from memory).
 *
 * @param since where it begins
 * @param from the moment it begins; absent for the start of the records
 * @param lastGood the last good control: the latest control result of the method on the instrument
 *     before the onset that counts, is held against limits and broke no rule
 * @param endedBy the calibration that ended the story, so that later results are not in doubt;
 *     absent when everything up to now is
 * @param assumed the error that results are corrected by
 * @param batches how many different samples the results are of
 * @param batchesAtLimit of how many of them a result has a limit inside
 * @param results the results, those nearest to a limit first
 */
public record LookBack(
    Since since,
    Optional<LocalDateTime> from,
    Optional<ControlPlace> lastGood,
    Optional<String> endedBy,
    Answer<Assumed> assumed,
    int batches,
    int batchesAtLimit,
    List<Doubted> results) {
  /** Copies the list. */
  public LookBack {
    results = List.copyOf(results);
  }

  /** Where a look-back begins. */
  public enum Since {
    /** At the last good control. */
    LAST_GOOD_CONTROL,
    /** At the calibration the story began under: there is no good control before it. */
    CALIBRATION,
    /** At the start of the records: there is no good control and no calibration. */
    START
  }

  /**
   * The error that results are corrected by: that of the leading hint, as an amount where it is not
   * clear whether it is an amount or a share of the level, and the size of the first signal's
   * material where there are no hints, or where the hint says nothing of the story's results or
   * says that they are off to the side where they are not. It is taken to act on every result, also
   * on those the leading hint does not point at, because a hint may be wrong.
   *
   * @param pattern the pattern it follows, if it is that of a hint
   * @param estimate how far off results are
   */
  public record Assumed(Optional<Pattern> pattern, Estimate estimate) {}

  /**
   * A result in doubt.
   *
   * @param at when it was taken
   * @param sample the sample's id
   * @param role product or retest
   * @param value its value; absent when a reading is censored
   * @param error by how much it is likely off, in the method's unit
   * @param corrected its value less the likely error
   * @param limitInside whether a product limit lies between the value and either end of the
   *     corrected range; never true where there is no value or no limit
   * @param margin how far the nearest limit is from the range that value and corrected range span;
   *     0 with a limit inside; absent where there is no value or no limit
   * @param pointedAt whether the leading hint says that this result is off; true where the assumed
   *     error is not that of a hint
   * @param file the file it was read from
   * @param line the line in it
   */
  public record Doubted(
      LocalDateTime at,
      String sample,
      Role role,
      OptionalDouble value,
      Answer<LikelyError> error,
      Answer<Interval> corrected,
      boolean limitInside,
      OptionalDouble margin,
      boolean pointedAt,
      String file,
      long line) {}

  /**
   * A likely error.
   *
   * @param value the estimate, with its sign
   * @param interval95 from the 95 % interval of the assumed error; the scatter of the single result
   *     is not in it
   */
  public record LikelyError(double value, Interval interval95) {}
}
