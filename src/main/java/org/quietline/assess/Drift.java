package org.quietline.assess;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.bench.Calibration;
import org.quietline.bench.DriftForm;
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
 * @param line this window's line, known from its own results and from earlier windows
 * @param chanceBeyondNow the chance that the deviation is beyond the allowance now
 * @param chanceBeyondAtExpiry the chance that the deviation is beyond the allowance at expiry
 * @param lastSafeDay the latest day to which the chance of being beyond the allowance stays at or
 *     below the safe chance, 5 % unless set otherwise; it may be past
 * @param decision what to do
 * @param earlier the windows before, oldest first
 * @param pool what the line rests on
 * @param settling what would let a decision be taken that cannot be taken now
 * @param count whether the validity is right, by counting the windows before
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
    Decision decision,
    List<EarlierWindow> earlier,
    Answer<Pool> pool,
    Answer<Settling> settling,
    Answer<WindowCount> count) {
  /** Copies the lists. */
  public Drift {
    deviations = List.copyOf(deviations);
    earlier = List.copyOf(earlier);
  }

  /**
   * A calibration judged without earlier windows.
   *
   * @param instrument the instrument's key
   * @param calibration the calibration in use, if the bench recorded one
   * @param expires the last day of its validity, if the method has one
   * @param windows calibrations of this instrument and method so far
   * @param deviations this window's control results against their reference
   * @param referenceUncertainty the standard uncertainty of the reference
   * @param allowance the allowance in the method's unit, if set
   * @param line this window's line
   * @param chanceBeyondNow the chance that the deviation is beyond the allowance now
   * @param chanceBeyondAtExpiry the chance that the deviation is beyond the allowance at expiry
   * @param lastSafeDay the last safe day
   * @param decision what to do
   */
  public Drift(
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
    this(
        instrument,
        calibration,
        expires,
        windows,
        deviations,
        referenceUncertainty,
        allowance,
        line,
        chanceBeyondNow,
        chanceBeyondAtExpiry,
        lastSafeDay,
        decision,
        List.of(),
        Answer.cannotSay("no earlier window was looked at"),
        Answer.cannotSay("no earlier window was looked at"),
        Answer.cannotSay("no earlier window was looked at"));
  }

  /**
   * One control result against its reference.
   *
   * @param at when it was taken
   * @param day days since the calibration
   * @param deviation the result less its reference, in the method's unit; where drift is taken as a
   *     share of the level, brought to the level of the material that the line speaks of
   * @param assigned whether the reference is an assigned value; otherwise the baseline's centre
   * @param material the material's key
   * @param lot the reagent lot it was made with, if recorded
   * @param scatter how widely such a result scatters about its line, over one at the line's level
   * @param used whether the line rests on it
   */
  public record Deviation(
      LocalDateTime at,
      double day,
      double deviation,
      boolean assigned,
      String material,
      Optional<String> lot,
      double scatter,
      boolean used) {

    /**
     * A result of no known lot that the line rests on.
     *
     * @param at when it was taken
     * @param day days since the calibration
     * @param deviation the result less its reference
     * @param assigned whether the reference is an assigned value
     * @param material the material's key
     */
    public Deviation(
        LocalDateTime at, double day, double deviation, boolean assigned, String material) {
      this(at, day, deviation, assigned, material, Optional.empty(), 1, true);
    }
  }

  /**
   * A window before the one in use.
   *
   * @param calibration its calibration
   * @param deviations its control results against their reference
   */
  public record EarlierWindow(Calibration calibration, List<Deviation> deviations) {
    /**
     * Copies the list.
     *
     * @param calibration its calibration
     * @param deviations its control results
     */
    public EarlierWindow {
      deviations = List.copyOf(deviations);
    }
  }

  /**
   * The line of the window in use, its heights averaged over how much windows may differ.
   *
   * @param slopePerDay change a day
   * @param slope the 95 % interval of the slope
   * @param slopeIsReal whether that interval leaves out zero
   * @param biasNow the line's value now
   * @param now its 95 % interval
   * @param biasAtExpiry the line's value on the last day of validity
   * @param atExpiry its 95 % interval
   * @param largestHidden the largest change over the validity that the data leave possible
   * @param fan the line and its intervals from day 0 to the last day of validity, in at most 13
   *     steps
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
   * The line on one day, its intervals to about a thousandth of a deviation: for drawing.
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

  /**
   * What a line rests on, and the two other questions it must not be mixed up with.
   *
   * @param material the key of the material the line speaks of
   * @param results how many control results it rests on, of all windows
   * @param windows how many windows they are of
   * @param degreesOfFreedom results less coefficients
   * @param residualDeviation the scatter of a result about its window's line
   * @param form whether drift adds an amount or takes a share of the level
   * @param formFrom why that form
   * @param chanceOfShare the chance that drift takes a share, where results at two levels say
   * @param safeChance the chance of being beyond the allowance that a safe day may carry
   * @param followedTo the longest that any window was followed, in days since its calibration
   * @param extended whether the last day of validity lies beyond that: the line is only extended
   * @param average where the average window stands on the last day of validity
   * @param next where the next window will stand then, before its first check
   * @param effects what a change of material or lot within the windows did, each estimated with the
   *     line
   * @param confounded keys of materials and lots that changed together with something else, so that
   *     their results are left out
   * @param leftOut results left out because their window was mostly run with another lot
   * @param uncheckedLot a lot in use since the last control result, whose step nobody measured
   */
  public record Pool(
      String material,
      int results,
      int windows,
      int degreesOfFreedom,
      double residualDeviation,
      DriftForm form,
      FormFrom formFrom,
      OptionalDouble chanceOfShare,
      double safeChance,
      double followedTo,
      boolean extended,
      Ahead average,
      Answer<Ahead> next,
      List<Effect> effects,
      List<String> confounded,
      int leftOut,
      Optional<String> uncheckedLot) {
    /** Copies the lists. */
    public Pool {
      effects = List.copyOf(effects);
      confounded = List.copyOf(confounded);
    }
  }

  /** Why drift is taken to act so. */
  public enum FormFrom {
    /** The settings say so. */
    SETTING("setting"),
    /** Results at two levels leave it likely with at least 95 %. */
    DATA("data"),
    /** Results at two levels leave both likely; the more careful of the two is taken. */
    UNDECIDED("undecided"),
    /** A reference is zero or below, where shares mean nothing. */
    NO_SHARES("no-shares"),
    /** There is one level only, where the two are the same. */
    ONE_LEVEL("one-level");

    private final String key;

    FormFrom(String key) {
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
   * Where a line stands on the last day of validity.
   *
   * @param bias the middle
   * @param interval95 the 95 % interval
   * @param chanceBeyond the chance of being beyond the allowance, if one is set
   */
  public record Ahead(double bias, Interval interval95, OptionalDouble chanceBeyond) {}

  /**
   * What results of another material or lot differ by.
   *
   * @param of what changed
   * @param key the key of the other material or lot
   * @param against the key of the one the line speaks of; empty for a lot that was not recorded
   * @param difference the difference
   * @param interval95 its 95 % interval
   */
  public record Effect(Of of, String key, String against, double difference, Interval interval95) {
    /** What changed. */
    public enum Of {
      /** The control material. */
      MATERIAL,
      /** The reagent lot. */
      LOT
    }
  }

  /**
   * How many further control tests would let a decision be taken, if they lie where they are
   * expected.
   *
   * @param days when to run them
   * @param chanceThen the chance of being beyond the allowance at expiry that would be left
   */
  public record Settling(List<LocalDate> days, double chanceThen) {
    /** Copies the list. */
    public Settling {
      days = List.copyOf(days);
    }
  }

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
