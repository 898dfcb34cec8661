package org.quietline.assess;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Whether the limits of a stream fit its baseline: moving ranges see only what differs from one
 * result to the next, so that calibrations that differ, drift or alternation make their limits
 * wrong.
 *
 * @param pattern what the baseline looks like
 * @param results how many results it has
 * @param calibrations under how many calibrations they were made
 * @param deviationRatio the deviation by moving ranges over the sample deviation; near 1 for
 *     independent results
 * @param lag1 the lag-1 autocorrelation
 * @param vonNeumann the ratio of squared successive differences to squared deviations; near 2 for
 *     independent results
 * @param chanceSoSmall the chance of a ratio at most so small for independent results
 * @param chanceSoLarge the chance of a ratio at least so large
 * @param chanceCalibrations the chance of calibrations so far apart if they did not differ; empty
 *     where it cannot be told
 * @param calibrationsLower the lower 95 % bound (one-sided) of the deviation between calibrations
 *     over that within; empty where it cannot be told
 * @param calibrationsUpper the upper 95 % bound (one-sided); empty where it cannot be told
 * @param calibrationsNeeded about how many calibrations would show that they do not differ by more
 *     than half the deviation within; only where that is what is missing
 */
public record Diagnosis(
    Pattern pattern,
    int results,
    int calibrations,
    double deviationRatio,
    double lag1,
    double vonNeumann,
    double chanceSoSmall,
    double chanceSoLarge,
    OptionalDouble chanceCalibrations,
    OptionalDouble calibrationsLower,
    OptionalDouble calibrationsUpper,
    OptionalInt calibrationsNeeded) {

  /** What a baseline looks like. */
  public enum Pattern {
    /** Results are independent, and calibrations hardly differ: the limits fit. */
    INDEPENDENT("independent"),
    /** The limits allow for calibrations that differ. */
    ALLOWED_FOR("allowed-for"),
    /** Calibrations may differ by more than half the deviation within: the data cannot say. */
    NOT_SHOWN("not-shown"),
    /** Calibrations differ: limits from moving ranges are too narrow. */
    CALIBRATIONS_DIFFER("calibrations-differ"),
    /** Neighbours are alike, as under drift or steps: limits from moving ranges are too narrow. */
    DRIFTING("drifting"),
    /** Results go up and down in turn: limits from moving ranges are too wide. */
    ALTERNATING("alternating");

    private final String key;

    Pattern(String key) {
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
   * Whether the data show that the limits do not fit.
   *
   * @return true for calibrations that differ, drift and alternation
   */
  public boolean warns() {
    return pattern == Pattern.CALIBRATIONS_DIFFER
        || pattern == Pattern.DRIFTING
        || pattern == Pattern.ALTERNATING;
  }
}
