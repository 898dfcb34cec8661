package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.bench.Method;

/**
 * May a batch go, by one method? Source: JCGM 106:2012, clauses 7 and 8; ILAC-G8:09/2019 (from
 * memory) for the words of the rule.
 *
 * @param method the method
 * @param sample the batch's sample
 * @param instrument the instrument of its results
 * @param results the results the value is the mean of, in time order
 * @param value the mean, in the method's unit, unrounded
 * @param confidence the chance that the rule asks for
 * @param judged value and limit, or why they cannot be held against each other
 * @param held what forbids to call the batch within its limits whatever its value
 * @param lastControl when the latest control result of the latest result's calibration was taken
 *     before it; absent when there was none yet
 */
public record Release(
    Method method,
    String sample,
    String instrument,
    List<Used> results,
    OptionalDouble value,
    double confidence,
    Answer<Judged> judged,
    List<Held> held,
    Optional<LocalDateTime> lastControl) {
  /** Copies the lists. */
  public Release {
    results = List.copyOf(results);
    held = List.copyOf(held);
  }

  /** What is decided. */
  public enum Decision {
    /** Within its limits with the confidence asked for, and the method in control. */
    WITHIN("within"),
    /** Beyond a limit with that confidence. */
    BEYOND("beyond"),
    /** Neither, or the method was not in control. */
    TOO_CLOSE_TO_CALL("too-close-to-call");

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

  /**
   * The decision: what the value says, unless something holds the batch.
   *
   * @return the decision, or why there is none
   */
  public Answer<Decision> decision() {
    return judged.map(
        j ->
            j.byValue() == Decision.WITHIN && !held.isEmpty()
                ? Decision.TOO_CLOSE_TO_CALL
                : j.byValue());
  }

  /**
   * A result that the value rests on.
   *
   * @param at when it was taken
   * @param value its value
   * @param readings how many readings it rests on
   * @param calibration the calibration behind it
   * @param session a number that results of one session share
   * @param retest whether it is a retest
   * @param file the file it was read from
   * @param line the line in it
   */
  public record Used(
      LocalDateTime at,
      double value,
      int readings,
      String calibration,
      int session,
      boolean retest,
      String file,
      long line) {}

  /**
   * A value held against its limits.
   *
   * @param material the control material its uncertainty rests on
   * @param calibrations how many calibrations of it
   * @param uncertainty the standard uncertainty of the value
   * @param degreesOfFreedom of it
   * @param sharedUncertainty the part of it that more results of the same calibrations cannot
   *     shrink
   * @param chance the chance of conforming
   * @param guardBand the width of the guard band
   * @param lowerLimit the lower limit, if any
   * @param upperLimit the upper limit, if any
   * @param byValue what the value alone says
   * @param ways what more measurements would do, the cheapest first; none where the value is clear
   * @param worth the first of them that has at least an even chance to settle it, else the
   *     likeliest
   * @param breakEven the chance of conforming from which releasing costs less than holding back, if
   *     costs are set
   */
  public record Judged(
      String material,
      int calibrations,
      double uncertainty,
      double degreesOfFreedom,
      double sharedUncertainty,
      double chance,
      double guardBand,
      OptionalDouble lowerLimit,
      OptionalDouble upperLimit,
      Decision byValue,
      List<WayOut> ways,
      Optional<Way> worth,
      OptionalDouble breakEven) {
    /** Copies the list. */
    public Judged {
      ways = List.copyOf(ways);
    }
  }

  /** How a value could become clear. */
  public enum Way {
    /** One more reading of the latest result. */
    READING("one-more-reading"),
    /** A result in another session with the same calibration. */
    SESSION("another-session"),
    /** A result after a recalibration. */
    CALIBRATION("after-a-recalibration"),
    /** A result of an outside laboratory, which then decides alone. */
    OUTSIDE("outside-laboratory");

    private final String key;

    Way(String key) {
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
   * What one way out would bring.
   *
   * @param way the way
   * @param uncertainty the standard uncertainty then
   * @param within the chance that the batch would then be called within its limits
   * @param beyond the chance that it would then be called beyond one
   */
  public record WayOut(Way way, double uncertainty, double within, double beyond) {
    /**
     * The chance that the question would be settled.
     *
     * @return either way
     */
    public double settled() {
      return within + beyond;
    }
  }

  /**
   * What holds a batch.
   *
   * @param kind what is wrong
   * @param what what it is about: a signal's id, a calibration, a reagent lot
   */
  public record Held(HeldBy kind, String what) {}

  /** Why a batch is held. */
  public enum HeldBy {
    /** An open stop signal puts the result in doubt. */
    STOP_SIGNAL("stop-signal-open"),
    /** The calibration was past its validity. */
    CALIBRATION_PAST_DATE("calibration-past-date"),
    /** The reagent was past its date. */
    REAGENT_PAST_DATE("reagent-past-date"),
    /** The calibration was past its last safe day. */
    CALIBRATION_UNSAFE("calibration-past-last-safe-day"),
    /** Its readings disagree and the reading the rule asks for was not taken. */
    READINGS_DISAGREE("readings-disagree");

    private final String key;

    HeldBy(String key) {
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
