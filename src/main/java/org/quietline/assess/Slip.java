package org.quietline.assess;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.quietline.bench.Action;
import org.quietline.bench.Check;
import org.quietline.bench.Matter;
import org.quietline.bench.QuestionId;
import org.quietline.bench.Result;

/**
 * A number that looks like a slip of the pen: a question with what it may be and why it is asked,
 * never a correction.
 *
 * @param id the question's id
 * @param result the result it is about; of two, the earlier
 * @param partner the other result, if two are concerned
 * @param candidates what it may be, the likeliest first, at least one
 * @param evidence why it is asked
 * @param inPeriod whether one of its results falls in the period under review
 * @param excluded whether an action took the result out of statistics
 * @param closing the action that answers it, if any
 */
public record Slip(
    QuestionId id,
    Result result,
    Optional<Result> partner,
    List<Candidate> candidates,
    Evidence evidence,
    boolean inPeriod,
    boolean excluded,
    Optional<Action> closing) {
  /** Copies the list. */
  public Slip {
    candidates = List.copyOf(candidates);
    if (candidates.isEmpty()) {
      throw new IllegalArgumentException("a question without a candidate: " + id);
    }
  }

  /**
   * Whether nobody has answered it.
   *
   * @return false when an action names it and a cause, or took the result out
   */
  public boolean open() {
    return closing.isEmpty() && !excluded;
  }

  /**
   * Whether an action is about this question.
   *
   * @param matter what the action names
   * @return true when it names this id
   */
  public boolean isNamedBy(Matter matter) {
    return matter.equals(id);
  }

  /** What may have happened. */
  public enum What {
    /** The decimal point stands in a wrong place. */
    POWER_OF_TEN(Check.SLIP_IN_VALUE),
    /** An acid number was typed where a free fatty acid belongs. */
    ACID_NUMBER_FOR_FATTY_ACID(Check.SLIP_IN_VALUE),
    /** A free fatty acid was typed where an acid number belongs. */
    FATTY_ACID_FOR_ACID_NUMBER(Check.SLIP_IN_VALUE),
    /** Twice the volume of sample was taken, or a factor of two was applied once too often. */
    DOUBLE_VOLUME(Check.SLIP_IN_VALUE),
    /** Half the volume of sample was taken, or a factor of two was left out. */
    HALF_VOLUME(Check.SLIP_IN_VALUE),
    /** A reading changed places with one of the partner. */
    READINGS_EXCHANGED(Check.SWAPPED_READINGS),
    /** The whole result changed places with the partner. */
    SAMPLES_EXCHANGED(Check.SWAPPED_SAMPLES),
    /** The readings are those of the partner, copied. */
    COPIED(Check.COPIED_DOWN);

    private final Check check;

    What(Check check) {
      this.check = check;
    }

    /**
     * The check that asks.
     *
     * @return the check
     */
    public Check check() {
      return check;
    }

    /**
     * The word used in findings.
     *
     * @return the name in lower case with hyphens
     */
    public String key() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /**
   * What may have happened, and the number that would then have been meant.
   *
   * @param what what may have happened
   * @param reading which reading it is about, counted from 1; absent for the whole result
   * @param partnerReading the partner's reading it was exchanged with, counted from 1
   * @param factor by what the written number is too large; below 1 when it is too small; 1 where
   *     this has no meaning
   * @param value the reading or result that would have been meant, in the method's unit, if the
   *     records show it
   */
  public record Candidate(
      What what,
      OptionalInt reading,
      OptionalInt partnerReading,
      double factor,
      OptionalDouble value) {}

  /** Why a question is asked. */
  public sealed interface Evidence {}

  /**
   * The number lies far from what something else lets expect. Distances are taken on logarithms, in
   * deviations of numbers that do hold; the limit is what a sound number passes as rarely as a
   * normal one passes four deviations.
   *
   * @param source what lets expect it
   * @param results how many results or pairs show how far sound numbers lie
   * @param expected the number expected, in the method's unit
   * @param apart how many deviations the written number lies from it
   * @param limit how many deviations a sound number may lie from it
   * @param other the result it was held against, if it was one
   */
  public record Distance(
      Source source,
      int results,
      double expected,
      double apart,
      double limit,
      Optional<Result> other)
      implements Evidence {}

  /**
   * All readings are those of the row before.
   *
   * @param chance the chance that a sound result repeats them
   */
  public record Coincidence(double chance) implements Evidence {}

  /** What lets expect a number, the sharpest first. */
  public enum Source {
    /** The other reading of the same result. */
    OTHER_READING,
    /** Other results of the same sample by the same method. */
    SAME_SAMPLE,
    /** The acid number or free fatty acid of the same sample. */
    RELATED_METHOD,
    /** The other results of the control material. */
    MATERIAL,
    /** Samples of the same role whose ids begin with the same letters. */
    SAME_KIND,
    /** Samples of the same role whose kind is too rare to be compared by itself. */
    SAME_ROLE;

    /**
     * The word used in findings.
     *
     * @return the name in lower case with hyphens
     */
    public String key() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }
}
