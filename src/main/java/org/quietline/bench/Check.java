package org.quietline.bench;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * A way in which records can be wrong that shows only when they are held against each other. A
 * check asks, it never corrects, and each can be switched off with a reason.
 */
public enum Check {
  /** The same row stands twice with different content. */
  ROWS_IN_CONFLICT(Kind.CONFLICT),
  /** A result or reading is a power of ten, a factor of two or a molar factor off. */
  SLIP_IN_VALUE(Kind.SLIP),
  /** Two results of a session look as if a reading of each had changed places. */
  SWAPPED_READINGS(Kind.SLIP),
  /** Two results of a session look as if their samples had changed places. */
  SWAPPED_SAMPLES(Kind.SLIP),
  /** A result has the very readings of the one before it. */
  COPIED_DOWN(Kind.SLIP),
  /** A result names a calibration that was made after it. */
  RESULT_BEFORE_CALIBRATION(Kind.CONTRADICTION),
  /** A result is older than the first calibration of its method and instrument. */
  BEFORE_FIRST_CALIBRATION(Kind.CONTRADICTION),
  /** A result was made after its calibration's validity. */
  RESULT_AFTER_VALIDITY(Kind.CONTRADICTION),
  /** A result was made with a reagent past its date. */
  REAGENT_PAST_DATE(Kind.CONTRADICTION),
  /** A reagent lot was opened before it was received. */
  LOT_OPENED_BEFORE_RECEIVED(Kind.CONTRADICTION),
  /** A reagent lot was opened after the date printed on it. */
  LOT_OPENED_AFTER_EXPIRY(Kind.CONTRADICTION),
  /** A result was made with a lot that was not yet received. */
  LOT_USED_BEFORE_RECEIVED(Kind.CONTRADICTION),
  /** A result was made with a lot that was not yet opened. */
  LOT_USED_BEFORE_OPENED(Kind.CONTRADICTION),
  /** A result names a lot that the bench did not record. */
  LOT_NOT_RECORDED(Kind.CONTRADICTION),
  /** One calibration id stands for two calibrations. */
  CALIBRATION_ID_TWICE(Kind.CONTRADICTION),
  /** Sequence numbers of an instrument are missing. */
  SEQUENCE_GAP(Kind.CONTRADICTION),
  /** A sequence number of an instrument stands on two results. */
  SEQUENCE_REPEATED(Kind.CONTRADICTION),
  /** A time lies far from those of the rows around it. */
  TIME_OUT_OF_STEP(Kind.CONTRADICTION),
  /** A time lies far after everything else the bench recorded. */
  TIME_IN_FUTURE(Kind.CONTRADICTION),
  /** A local time that the clocks left out when they were put forward. */
  TIME_DOES_NOT_EXIST(Kind.CONTRADICTION),
  /** A part of a sample was found larger than the whole. */
  PART_EXCEEDS_WHOLE(Kind.CONTRADICTION),
  /** A result was made by somebody who is not among the people of the bench. */
  PERSON_NOT_LISTED(Kind.CONTRADICTION),
  /** A result was made by somebody who may not test, or not yet. */
  PERSON_NOT_ENTITLED(Kind.CONTRADICTION),
  /** An action was recorded before the result it is about. */
  ACTION_BEFORE_RESULT(Kind.CONTRADICTION);

  /** What sort of question a check asks. */
  public enum Kind {
    /** Two rows claim to be the same one. */
    CONFLICT,
    /** A number looks like a slip of the pen. */
    SLIP,
    /** Two records cannot both be right. */
    CONTRADICTION
  }

  private final Kind kind;

  Check(Kind kind) {
    this.kind = kind;
  }

  /**
   * What sort of question it asks.
   *
   * @return the sort
   */
  public Kind kind() {
    return kind;
  }

  /**
   * The word used in settings, ids and findings.
   *
   * @return the name in lower case with hyphens
   */
  public String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * Finds a check by its word.
   *
   * @param text the word
   * @return empty when there is no such check
   */
  public static Optional<Check> parse(String text) {
    return Arrays.stream(values()).filter(c -> c.key().equals(text)).findFirst();
  }
}
