package org.quietline.assess;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.quietline.bench.Action;
import org.quietline.bench.Check;
import org.quietline.bench.QuestionId;
import org.quietline.bench.Result;

/**
 * A result made after a date had passed.
 *
 * @param result the result
 * @param kind what was past its date, and which rule governs
 * @param what the calibration's or reagent lot's key
 * @param lastDay the last day it might be used
 * @param otherDay the later day that the other rule sets, where both rules set one
 * @param daysPast how many days later the result was taken
 * @param inPeriod whether the result falls in the period under review
 * @param answer the action that answers why, if any
 */
public record OutOfDate(
    Result result,
    Kind kind,
    String what,
    LocalDate lastDay,
    Optional<LocalDate> otherDay,
    long daysPast,
    boolean inPeriod,
    Optional<Action> answer)
    implements Contradiction {

  /**
   * A result that nobody has answered for, past the only date there is.
   *
   * @param result the result
   * @param kind what was past its date
   * @param what the calibration's or reagent lot's key
   * @param lastDay the last day it might be used
   * @param daysPast how many days later the result was taken
   * @param inPeriod whether the result falls in the period under review
   */
  public OutOfDate(
      Result result, Kind kind, String what, LocalDate lastDay, long daysPast, boolean inPeriod) {
    this(result, kind, what, lastDay, Optional.empty(), daysPast, inPeriod, Optional.empty());
  }

  @Override
  public Asked asked() {
    return new Asked(
        QuestionId.of(result, kind.check()),
        Optional.of(result.method()),
        result.takenAt(),
        List.of(result.origin()),
        inPeriod,
        answer);
  }

  /** What was past its date, and which rule set the date. */
  public enum Kind {
    /** The calibration's validity was over. */
    CALIBRATION_VALIDITY("calibration-validity", Check.RESULT_AFTER_VALIDITY),
    /** The date printed on the reagent was past. */
    REAGENT_EXPIRY("reagent-expiry", Check.REAGENT_PAST_DATE),
    /** The reagent had been open longer than its shelf life under its storage. */
    REAGENT_SHELF_LIFE("reagent-shelf-life", Check.REAGENT_PAST_DATE),
    /** Warmth had used up the shelf life of the opened reagent. */
    REAGENT_WARMTH("reagent-warmth", Check.REAGENT_PAST_DATE),
    /** The reagent had been frozen, or stood in a refrigerator below 0 °C. */
    REAGENT_FROZEN("reagent-frozen", Check.REAGENT_PAST_DATE);

    private final String key;
    private final Check check;

    Kind(String key, Check check) {
      this.key = key;
      this.check = check;
    }

    /**
     * The word used in findings.
     *
     * @return the word
     */
    public String key() {
      return key;
    }

    /**
     * The check that asks about it.
     *
     * @return the check
     */
    public Check check() {
      return check;
    }
  }
}
