package org.quietline.bench;

import java.time.LocalDateTime;
import java.util.Optional;

/**
 * The cause found for a signal or the answer to a question, and what was done. Source of the word:
 * ISO/IEC 17025:2017, 8.7, corrective action.
 *
 * @param recordedAt when it was written down, in the bench's local time
 * @param matter the signal or question it answers
 * @param cause the cause, or that none was found; absent leaves the signal open
 * @param action what was done, if given
 * @param excludeResult whether the result leaves baselines and statistics; only with a cause
 * @param useRow of rows in conflict, the one that holds, if this action chooses
 * @param decidedBy who decided, if given
 * @param remark a remark, if given
 * @param origin where it was read from
 */
public record Action(
    LocalDateTime recordedAt,
    Matter matter,
    Optional<String> cause,
    Optional<String> action,
    boolean excludeResult,
    Optional<Origin> useRow,
    Optional<String> decidedBy,
    Optional<String> remark,
    Origin origin) {
  /** Checks that only an action with a cause takes a result out. */
  public Action {
    if (excludeResult && cause.isEmpty()) {
      throw new IllegalArgumentException("exclude_result is yes, but no cause is given");
    }
  }

  /**
   * Whether this action takes a result out of baselines and statistics.
   *
   * @param result a result
   * @return true when the signal was on that result, or the slip in that sample's result, and the
   *     action excludes it and was not recorded before it
   */
  public boolean excludes(Result result) {
    return excludeResult && matter.excludes(result) && !recordedAt.isBefore(result.takenAt());
  }
}
