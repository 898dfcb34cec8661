package org.quietline.assess;

import java.util.List;
import org.quietline.bench.Result;
import org.quietline.stats.Interval;

/**
 * Retained samples measured again in another session on the same instrument. Only the first retest
 * of a sample counts: later ones share its first result, and their differences would not be
 * independent. Source: ISO/IEC 17025:2017, 7.7.1 g, retesting of retained items; ISO 5725-3:2023
 * for the deviation between sessions.
 *
 * @param instrument the instrument's key
 * @param retests the samples, in the order of their retests
 * @param unmatched retests without an earlier product result of the sample on this instrument
 * @param sameSession retests in the session of the first result, which repeat no session
 * @param repeated further retests of a sample
 * @param notNumbers retests that are censored, or that an action took out
 * @param all every sample
 * @param sameCalibration those under the calibration of the first result
 * @param otherCalibration those under another one
 * @param samePerson those of the person of the first result
 * @param otherPerson those of another one
 * @param rate whether it was asked if retests moved, and whether they did
 */
public record RetestFindings(
    String instrument,
    List<Retested> retests,
    int unmatched,
    int sameSession,
    int repeated,
    int notNumbers,
    Answer<Move> all,
    Answer<Move> sameCalibration,
    Answer<Move> otherCalibration,
    Answer<Move> samePerson,
    Answer<Move> otherPerson,
    NoticeRate rate) {
  /** Copies the list. */
  public RetestFindings {
    retests = List.copyOf(retests);
  }

  /**
   * One sample.
   *
   * @param first its first product result
   * @param again the retest
   * @param difference the retest less the first, in the method's unit
   * @param days between the two
   * @param calibration whether both were made under one calibration
   * @param person whether one person made both
   */
  public record Retested(
      Result first, Result again, double difference, double days, Same calibration, Same person) {}

  /** Whether two results share something. */
  public enum Same {
    /** They do. */
    YES,
    /** They do not. */
    NO,
    /** It is not recorded for both. */
    UNKNOWN
  }

  /**
   * How retests differ from first results.
   *
   * @param samples how many
   * @param mean the mean difference, retest less first, in the method's unit
   * @param interval its 95 % interval, by Student's t
   * @param chance the chance of a mean at least so far from zero if nothing moves
   * @param moved whether that chance is below 1 %
   * @param between the deviation of one result between sessions
   */
  public record Move(
      int samples,
      double mean,
      Interval interval,
      double chance,
      boolean moved,
      Answer<Between> between) {}

  /**
   * The deviation of one result between sessions, {@code s/√2} with the deviation s of the
   * differences about their mean.
   *
   * @param deviation in the method's unit
   * @param degreesOfFreedom one less than there are samples
   * @param interval its 95 % interval
   */
  public record Between(double deviation, int degreesOfFreedom, Interval interval) {}
}
