package org.quietline.assess;

import java.util.List;
import java.util.Optional;
import org.quietline.bench.ReplicateKind;
import org.quietline.bench.Result;
import org.quietline.stats.Interval;

/**
 * The pairs of readings of real samples on one instrument, each judged by the pairs before it at
 * its own level. Sources: ISO 5725-2:2019, 7.5, for precision by level; ISO 7870-2:2013 and Hahn
 * and Meeker (1991), Statistical Intervals, chapter 4, for limits by chance.
 *
 * @param instrument the instrument's key
 * @param kind what the second reading repeats
 * @param pairs how many pairs up to now
 * @param scale how the deviation of a reading follows the level, from all pairs up to now
 * @param judged the pairs of the period that had enough before them, oldest first
 * @param beyondWarning how many of these are beyond their 95 % limit
 * @param chanceOfSoManyWarnings the chance of at least so many if each is with 5 %
 * @param chanceOfSoManyActions the chance of at least as many beyond the 99.73 % limit as {@code
 *     rate} observed
 * @param resolution whether the readings are fine enough for their differences
 * @param zeros the share of pairs that do not differ, from 0 to 1
 * @param order whether first and second readings differ
 * @param orderByPerson the same by person, for those with enough pairs, in the order of their signs
 * @param rate how many pairs of the period were judged, and how many were beyond their 99.73 %
 *     limit
 * @param orderRate how often it was asked if the order tells, and how often it did
 */
public record PairFindings(
    String instrument,
    ReplicateKind kind,
    int pairs,
    Answer<Scale> scale,
    List<Judged> judged,
    int beyondWarning,
    double chanceOfSoManyWarnings,
    double chanceOfSoManyActions,
    Resolution resolution,
    double zeros,
    Answer<OrderEffect> order,
    List<PersonOrder> orderByPerson,
    NoticeRate rate,
    NoticeRate orderRate) {
  /** Copies the lists. */
  public PairFindings {
    judged = List.copyOf(judged);
    orderByPerson = List.copyOf(orderByPerson);
  }

  /** How fine the steps of the readings are beside their scatter. */
  public enum Resolution {
    /** Nothing speaks against the deviation. */
    FINE,
    /** More than a quarter of the pairs do not differ, or fewer than five sizes occur. */
    COARSE,
    /** Fewer than five pairs cannot tell. */
    TOO_FEW_PAIRS
  }

  /** How the deviation of a reading depends on the level. */
  public enum Form {
    /** The same at each level. */
    CONSTANT,
    /** Proportional to the level. */
    PROPORTIONAL,
    /** A constant and a proportional part, added as squares. */
    QUADRATURE
  }

  /**
   * How the deviation of a reading depends on the level: {@code s² = constant² +
   * (proportional·level)²}.
   *
   * @param form which parts there are
   * @param constant the constant part, in the method's unit
   * @param proportional the proportional part
   * @param pairs from how many pairs
   * @param whyConstant why no other form was tried, where none was
   * @param atLimit the deviation at the product limit
   */
  public record Scale(
      Form form,
      double constant,
      double proportional,
      int pairs,
      Optional<String> whyConstant,
      Answer<AtLimit> atLimit) {}

  /**
   * The deviation of a reading at the product limit.
   *
   * @param limit the limit, in the method's unit
   * @param deviation the deviation there
   * @param interval its 95 % interval, the choice of the form counted
   */
  public record AtLimit(double limit, double deviation, Interval interval) {}

  /**
   * One pair of the period.
   *
   * @param result the result
   * @param level the mean of the pair
   * @param statistic {@code |first − second|/(√2·s(level))} with s from the pairs before it
   * @param warning what it exceeds with 5 % by chance
   * @param action what it exceeds with 0.27 % by chance
   * @param provisional whether fewer than 15 pairs were before it
   */
  public record Judged(
      Result result,
      double level,
      double statistic,
      double warning,
      double action,
      boolean provisional) {
    /**
     * Whether the pair is beyond the action limit.
     *
     * @return true beyond
     */
    public boolean isBeyond() {
      return statistic > action;
    }
  }

  /**
   * The mean of first reading less second. Other than zero it speaks of settling, carry-over or
   * timing.
   *
   * @param pairs of how many pairs
   * @param mean in the method's unit
   * @param interval its 95 % interval, by Student's t
   * @param chance the chance of a mean at least so far from zero if the order tells nothing; by
   *     person times the number of people asked about (Bonferroni), at most 1
   * @param tells whether that chance is below 1 %
   */
  public record OrderEffect(
      int pairs, double mean, Interval interval, double chance, boolean tells) {}

  /**
   * The order effect of one person.
   *
   * @param person the sign in the operator column
   * @param effect the effect
   */
  public record PersonOrder(String person, OrderEffect effect) {}
}
