package org.quietline.assess;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The value a result is reported with, and the path to it: which readings were compared, with which
 * limit, and what followed. Source: ISO 5725-6:1994, 5.2.2 and 5.2.3 (clauses from memory).
 *
 * @param value in the method's unit; empty when a reading is censored or none is a number
 * @param path how the value came about
 * @param readings how many readings are numbers
 * @param used how many of them, the first, the value rests on
 * @param asked how many the rule asks for, as the ones before agree or not
 * @param comparisons the ranges compared with a limit, in the order in which the rule does
 * @param repeatability what is known about the method's readings from before the result, or why
 *     there is no limit
 */
public record ReportedValue(
    OptionalDouble value,
    Path path,
    int readings,
    int used,
    int asked,
    List<Comparison> comparisons,
    Answer<Repeatability> repeatability) {

  /** Copies the list. */
  public ReportedValue {
    comparisons = List.copyOf(comparisons);
  }

  /** How a value came about. */
  public enum Path {
    /** Two readings agree: their mean. */
    TWO_AGREE,
    /** Two disagree, and nobody took the further reading that is asked for: their mean. */
    TWO_DISAGREE,
    /** Two disagree, three are within the critical range of three: the mean of the three. */
    THREE_AGREE,
    /** Two disagree, and so do three: the median of the three. */
    THREE_MEDIAN,
    /** Two disagree, four are within the critical range of four: the mean of the four. */
    FOUR_AGREE,
    /** Two disagree, and so do four: the median of the four. */
    FOUR_MEDIAN,
    /** The method asks for more than two readings, and they agree: their mean. */
    MANY_AGREE,
    /** The method asks for more than two readings, and they disagree: their median. */
    MANY_MEDIAN,
    /** The readings asked for agree and more were taken: the mean of those asked for. */
    MORE_THAN_ASKED,
    /** One reading, held against nothing. */
    SINGLE,
    /** No limit is known: the mean of the readings asked for; of more than those the median. */
    NO_LIMIT,
    /** A reading is only a bound: no value. */
    CENSORED,
    /** No reading is a number: no value. */
    NONE
  }

  /** Where a limit comes from. */
  public enum Basis {
    /** The pairs before it, one deviation for all levels. */
    PAIRS,
    /** The pairs before it, a deviation that depends on the level. */
    PAIRS_BY_LEVEL,
    /** The published repeatability the user typed in, taken as known. */
    PUBLISHED
  }

  /**
   * What is known about the readings of a method on one instrument and one kind of sample.
   *
   * @param basis where it comes from
   * @param pairs how many pairs there were before the result; of a precision that depends on the
   *     level, how many it was fitted to
   */
  public record Repeatability(Basis basis, int pairs) {}

  /**
   * A range held against its critical range.
   *
   * @param readings how many readings, the first
   * @param range the largest less the smallest, in the method's unit
   * @param deviation the repeatability deviation at their level
   * @param degreesOfFreedom of the deviation, whole and rounded down; empty where it is taken as
   *     known
   * @param limit the range that chance exceeds with 5 %
   */
  public record Comparison(
      int readings, double range, double deviation, OptionalInt degreesOfFreedom, double limit) {
    /**
     * Whether the readings agree.
     *
     * @return true up to the limit, the limit included
     */
    public boolean agrees() {
      return range <= limit;
    }
  }

  /**
   * Whether the readings the method asks for were compared and disagree.
   *
   * @return true when the first comparison fails
   */
  public boolean disagrees() {
    return !comparisons.isEmpty() && !comparisons.get(0).agrees();
  }

  /**
   * Whether they disagree and fewer further readings were taken than the rule asks for.
   *
   * @return true when a reading was asked for and is not there
   */
  public boolean wantsReading() {
    return disagrees() && readings < asked;
  }

  /**
   * How many readings were taken beyond those the rule asks for; kept, and not used.
   *
   * @return zero or more
   */
  public int surplus() {
    return Math.max(0, readings - asked);
  }
}
