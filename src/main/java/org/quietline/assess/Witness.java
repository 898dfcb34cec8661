package org.quietline.assess;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.quietline.stats.sample.RobustSummary;

/**
 * What lets expect a number, on the scale of logarithms.
 *
 * @param source what it is
 * @param results how many results or pairs its deviation comes from
 * @param expected the logarithm expected
 * @param deviation the deviation of sound numbers about it
 * @param beyond how far a sound number may lie from it
 * @param doubtful how far it lies where two must be doubtful at once
 * @param within how near a mended number must come
 * @param other the result it rests on, if it is one
 */
record Witness(
    Slip.Source source,
    int results,
    double expected,
    double deviation,
    double beyond,
    double doubtful,
    double within,
    Optional<Logged> other) {
  /** A sound number lies beyond as rarely as a normal one beyond so many deviations. */
  private static final double WILD = 4;

  /** Two sound numbers both lie beyond three deviations more rarely than one beyond four. */
  private static final double DOUBTFUL = 3;

  /** A mended number lies within as often as a normal one within so many deviations. */
  private static final double FITTING = 3;

  private static final Map<Integer, Multiples> MULTIPLES = new ConcurrentHashMap<>();

  /** A witness from a spread about an expectation; the rounding keeps it above zero. */
  static Witness of(
      Slip.Source source,
      double expected,
      RobustSummary spread,
      double digit,
      Optional<Logged> other) {
    double deviation = Math.hypot(spread.deviation(), digit / Math.sqrt(12));
    Multiples multiples = MULTIPLES.computeIfAbsent(spread.n(), n -> Multiples.of(spread));
    return new Witness(
        source,
        spread.n(),
        expected,
        deviation,
        deviation * multiples.wild(),
        deviation * multiples.doubtful(),
        deviation * multiples.fitting(),
        other);
  }

  /** How many deviations a sound number may lie away; they depend on the number of values only. */
  private record Multiples(double wild, double doubtful, double fitting) {
    static Multiples of(RobustSummary spread) {
      return new Multiples(
          spread.multiple(WILD), spread.multiple(DOUBTFUL), spread.multiple(FITTING));
    }
  }

  double apart(double log) {
    return Math.abs(log - expected) / deviation;
  }

  boolean accuses(double log) {
    return Math.abs(log - expected) > beyond;
  }

  /** Whether a number is odd enough to count together with another one. */
  boolean doubts(double log) {
    return Math.abs(log - expected) > doubtful;
  }

  boolean fits(double log) {
    return Math.abs(log - expected) <= within;
  }

  /** Whether it would notice a shift of this size. */
  boolean notices(double shift) {
    return beyond < Math.abs(shift);
  }

  Slip.Distance distanceOf(double log) {
    return new Slip.Distance(
        source,
        results,
        Math.exp(expected),
        apart(log),
        beyond / deviation,
        other.map(Logged::result));
  }
}
