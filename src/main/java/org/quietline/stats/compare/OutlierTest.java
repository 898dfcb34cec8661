package org.quietline.stats.compare;

import java.util.List;
import org.quietline.stats.numeric.Require;

/**
 * A test of values that lie apart from the others.
 *
 * <p>All are for normal values, and say how rare so remote a value is among values of one
 * population. None says what is wrong, nor that it is: a rare value may be the best one. Where
 * readings are coarse, ties make all of them call outliers too often; where all other values are
 * equal, or equal but for a 1e-12th of the largest of them, they refuse.
 */
public sealed interface OutlierTest permits Cochran, Dixon, Grubbs, GrubbsPair, TietjenMoore {

  /** What a chance is. */
  enum Certainty {
    /** The chance itself. */
    EXACT,
    /** A bound that the true chance does not exceed. */
    AT_MOST,
    /** An estimate by simulation, with a standard error. */
    SIMULATED
  }

  /**
   * Where the suspected values stand among those given.
   *
   * @return places from 0 on, ascending
   */
  List<Integer> places();

  /**
   * The statistic.
   *
   * @return the statistic, in the form of the test
   */
  double statistic();

  /**
   * The chance of a statistic at least so remote if all values are of one normal population.
   *
   * @return the chance, from 0 to 1
   */
  double chance();

  /**
   * What the chance is.
   *
   * @return whether it is exact, a bound or simulated
   */
  Certainty certainty();

  /**
   * Whether the values are outliers at a level.
   *
   * @param alpha the chance of finding so in a sample without any, between 0 and 1
   * @return true where the chance is not above it
   * @throws IllegalArgumentException if alpha is not between 0 and 1
   */
  default boolean significantAt(double alpha) {
    Require.share(alpha, "alpha");
    return chance() <= alpha;
  }
}
