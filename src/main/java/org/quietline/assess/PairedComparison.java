package org.quietline.assess;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.quietline.stats.Interval;

/**
 * Samples that were measured both ways: by two instruments, with two reagent lots, by two people,
 * or by the bench and an outside laboratory. Each difference also holds the sessions and
 * calibrations that the two results do not share. Source: two one-sided tests of Schuirmann (1987)
 * for the verdict, at 5 %.
 *
 * @param kind what differs
 * @param one the first way
 * @param other the second way
 * @param pairs how many samples
 * @param mean the mean of first less second, in the method's unit
 * @param deviation the deviation of the differences; zero with one sample
 * @param intervals the 95 % and the 90 % interval of the mean; not known from one sample or from
 *     differences that are all alike
 * @param margin the difference that does not matter, if an allowance is set
 * @param verdict what the two one-sided tests say; not known without margin or intervals
 * @param needed how many samples in all would show the two alike, if the mean and the deviation
 *     stay; empty where they never would or are not known
 * @param agreement how far single samples differ, and whether that depends on their level; asked of
 *     six samples and more
 */
public record PairedComparison(
    Kind kind,
    String one,
    String other,
    int pairs,
    double mean,
    double deviation,
    Answer<Intervals> intervals,
    OptionalDouble margin,
    Answer<Verdict> verdict,
    OptionalInt needed,
    Answer<PairedAgreement> agreement) {

  /** What the two one-sided tests say. */
  public enum Verdict {
    /** The difference is within the margin, at 5 %. */
    ALIKE,
    /** It is beyond the margin, at 5 %. */
    DIFFERENT,
    /** Neither is shown: it needs more samples. */
    UNDECIDED
  }

  /** What differs between the two results of a sample. */
  public enum Kind {
    /** The laboratory. */
    LABORATORY("laboratory"),
    /** The instrument. */
    INSTRUMENT("instrument"),
    /** The reagent lot. */
    REAGENT_LOT("reagent-lot"),
    /** The person. */
    PERSON("person");

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

  /**
   * Intervals of the mean difference by Student's t.
   *
   * @param of95 the 95 % interval
   * @param of90 the 90 % interval, which the two one-sided tests hold against the margin
   */
  public record Intervals(Interval of95, Interval of90) {}
}
