package org.quietline.assess;

import java.util.List;
import java.util.Optional;
import org.quietline.stats.Interval;

/**
 * A pattern that a story is consistent with. It is never a cause: a pattern can look like another
 * one, and the check would tell.
 *
 * @param pattern the pattern
 * @param subject the person, material, reagent lots or calibrations it is about, comma between
 *     several; absent for a pattern that names none
 * @param results the control results that it says are off, in time order
 * @param estimate how far off they are under this pattern
 * @param share its share of the relative likelihood among the patterns compared, from 0 to 1
 * @param check the check that would tell
 */
public record Hint(
    Pattern pattern,
    Optional<String> subject,
    List<ControlPlace> results,
    Estimate estimate,
    double share,
    DecidingCheck check) {
  /** Copies the list. */
  public Hint {
    results = List.copyOf(results);
  }

  /** What a story may look like. Where two fit equally well the first named stands first. */
  public enum Pattern {
    /** From some moment on all levels are off by the same amount. */
    ADDITIVE(DecidingCheck.READ_THE_BLANK_AND_A_LOW_LEVEL),
    /** From some moment on all levels are off by the same share. */
    PROPORTIONAL(DecidingCheck.READ_A_HIGH_LEVEL),
    /** The results made with one reagent lot, or those until a calibration took the lot up. */
    LOT_STEP(DecidingCheck.RUN_OLD_AND_NEW_LOT_SIDE_BY_SIDE),
    /** Grows with the days since calibration. */
    CALIBRATION_DRIFT(DecidingCheck.READ_A_CALIBRATOR_AGAIN),
    /** The results under one calibration. */
    CALIBRATION_STEP(DecidingCheck.CALIBRATE_AGAIN_AND_READ_THE_CONTROL),
    /** Grows with the days since the reagent was opened. */
    REAGENT_AGE(DecidingCheck.READ_THE_CONTROL_WITH_FRESH_REAGENT),
    /** One control material, by a step or growing: it ages, or its value was set wrong. */
    ONE_MATERIAL(DecidingCheck.READ_A_FRESH_PORTION_OF_THE_MATERIAL),
    /** The results of one person. */
    ONE_PERSON(DecidingCheck.LET_ANOTHER_PERSON_RUN_THE_SAME_SAMPLE),
    /** One result: a slip or a bubble. */
    ONE_RESULT(DecidingCheck.READ_ONE_NEW_CONTROL),
    /** The results of one sitting. */
    ONE_SESSION(DecidingCheck.READ_A_CONTROL_IN_ANOTHER_SESSION);

    private final DecidingCheck check;

    Pattern(DecidingCheck check) {
      this.check = check;
    }

    /**
     * The check that would tell.
     *
     * @return the check
     */
    public DecidingCheck check() {
      return check;
    }

    /** Whether the error grows from day to day. */
    boolean grows() {
      return this == CALIBRATION_DRIFT || this == REAGENT_AGE;
    }
  }

  /** What would tell whether a pattern is the right one. */
  public enum DecidingCheck {
    /** An amount shows most in the blank and at low levels. */
    READ_THE_BLANK_AND_A_LOW_LEVEL,
    /** A share shows most at high levels. */
    READ_A_HIGH_LEVEL,
    /** The same control with both lots in one sitting. */
    RUN_OLD_AND_NEW_LOT_SIDE_BY_SIDE,
    /** A calibrator read as a sample, against what it was at the calibration. */
    READ_A_CALIBRATOR_AGAIN,
    /** A new calibration, and the control before and after it. */
    CALIBRATE_AGAIN_AND_READ_THE_CONTROL,
    /** The control with reagent opened today. */
    READ_THE_CONTROL_WITH_FRESH_REAGENT,
    /** A portion of the material that was not opened before, or another material. */
    READ_A_FRESH_PORTION_OF_THE_MATERIAL,
    /** The same sample by two people in one sitting. */
    LET_ANOTHER_PERSON_RUN_THE_SAME_SAMPLE,
    /** The control in another sitting. */
    READ_A_CONTROL_IN_ANOTHER_SESSION,
    /** One new control; both results stay. */
    READ_ONE_NEW_CONTROL
  }

  /** What an estimate is of. */
  public enum Per {
    /** An amount in the method's unit. */
    AMOUNT,
    /** A share of the level. */
    SHARE,
    /** An amount in the method's unit a day. */
    AMOUNT_A_DAY,
    /** A share of the level a day. */
    SHARE_A_DAY
  }

  /**
   * How far off results are, beside a mean for each stream and with components of variance for
   * calibrations and sittings where the results show them; of the results that the pattern does not
   * touch, not of the centre. The interval takes the pattern and its beginning as known; in seeded
   * simulations 95 % intervals of the right pattern held 88 to 95 %.
   *
   * @param value the estimate, with its sign
   * @param interval95 its 95 % interval if the pattern is right and began where it fits best
   * @param per what it is of
   */
  public record Estimate(double value, Interval interval95, Per per) {}
}
