package org.quietline.assess;

import java.time.LocalDate;
import org.quietline.bench.Result;

/**
 * A result made after a date had passed.
 *
 * @param result the result
 * @param kind what was past its date
 * @param what the calibration's or reagent lot's key
 * @param lastDay the last day it might be used
 * @param daysPast how many days later the result was taken
 * @param inPeriod whether the result falls in the period under review
 */
public record OutOfDate(
    Result result, Kind kind, String what, LocalDate lastDay, long daysPast, boolean inPeriod) {

  /** What was past its date, and which rule set the date. */
  public enum Kind {
    /** The calibration's validity was over. */
    CALIBRATION_VALIDITY("calibration-validity"),
    /** The date printed on the reagent was past. */
    REAGENT_EXPIRY("reagent-expiry"),
    /** The reagent had been open longer than its shelf life under its storage. */
    REAGENT_SHELF_LIFE("reagent-shelf-life");

    private final String key;

    Kind(String key) {
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
