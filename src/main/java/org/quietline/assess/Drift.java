package org.quietline.assess;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.bench.Calibration;
import org.quietline.stats.Interval;

/**
 * Whether the calibration in use on one instrument is drifting, and how long it stays safe.
 *
 * @param instrument the instrument's key
 * @param calibration the calibration in use, if the bench recorded one
 * @param expires the last day of its validity, if the method has one
 * @param windows calibrations of this instrument and method so far
 * @param deviations this window's control results against their reference
 * @param referenceUncertainty the standard uncertainty of the reference, counted into the line's
 *     height; where none is stated the chances leave it out, and the answer says so
 * @param allowance the allowance in the method's unit, if set
 * @param line the straight line through the deviations
 * @param chanceBeyondNow the chance that the deviation is beyond the allowance now
 * @param chanceBeyondAtExpiry the chance that the deviation is beyond the allowance at expiry
 * @param lastSafeDay the latest day to which the chance of being beyond the allowance stays at or
 *     below 5 %; it may be past
 * @param decision what to do
 */
public record Drift(
    String instrument,
    Optional<Calibration> calibration,
    Optional<LocalDate> expires,
    int windows,
    List<Deviation> deviations,
    Answer<Double> referenceUncertainty,
    OptionalDouble allowance,
    Answer<Line> line,
    Answer<Double> chanceBeyondNow,
    Answer<Double> chanceBeyondAtExpiry,
    Answer<LocalDate> lastSafeDay,
    Decision decision) {
  /** Copies the list. */
  public Drift {
    deviations = List.copyOf(deviations);
  }

  /**
   * One control result against its reference.
   *
   * @param at when it was taken
   * @param day days since the calibration
   * @param deviation the result less its reference
   * @param assigned whether the reference is an assigned value; otherwise the baseline's centre
   * @param material the material's key
   */
  public record Deviation(
      LocalDateTime at, double day, double deviation, boolean assigned, String material) {}

  /**
   * A least-squares straight line of the deviations against days since the calibration.
   *
   * @param slopePerDay change a day
   * @param slope the 95 % interval of the slope
   * @param slopeIsReal whether that interval leaves out zero
   * @param biasNow the line's value now
   * @param now its 95 % interval
   * @param biasAtExpiry the line's value on the last day of validity
   * @param atExpiry its 95 % interval
   * @param largestHidden the largest change over the validity that the data leave possible
   * @param fan the line and its intervals from day 0 to the last day of validity, day by day or in
   *     at most 61 steps
   */
  public record Line(
      double slopePerDay,
      Interval slope,
      boolean slopeIsReal,
      double biasNow,
      Interval now,
      double biasAtExpiry,
      Interval atExpiry,
      double largestHidden,
      List<FanDay> fan) {
    /** Copies the list. */
    public Line {
      fan = List.copyOf(fan);
    }
  }

  /**
   * The line on one day.
   *
   * @param day days since the calibration
   * @param middle the line's value
   * @param half its 50 % interval
   * @param most its 80 % interval
   * @param nearlyAll its 95 % interval
   * @param chanceBeyond the chance of being beyond the allowance, if one is set
   */
  public record FanDay(
      double day,
      double middle,
      Interval half,
      Interval most,
      Interval nearlyAll,
      OptionalDouble chanceBeyond) {}

  /** What to do about a calibration. */
  public enum Decision {
    /** It lasts to its date. */
    KEEP("keep"),
    /** Recalibrate by the last safe day. */
    RECALIBRATE_BY("recalibrate-by"),
    /** Its last safe day is past. */
    RECALIBRATE_NOW("recalibrate-now"),
    /** Its validity is over. */
    EXPIRED("expired"),
    /** The data cannot say. */
    CANNOT_SAY("cannot-say");

    private final String key;

    Decision(String key) {
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
