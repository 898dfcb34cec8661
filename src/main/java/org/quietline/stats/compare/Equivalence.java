package org.quietline.stats.compare;

import org.quietline.stats.Interval;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.numeric.Require;

/**
 * Two one-sided tests of equivalence: is a difference shown to be within ± a margin?
 *
 * <p>The difference is shown to be above −margin with {@code t = (difference + margin)/error}, and
 * below +margin with {@code t = (margin − difference)/error}; the chance is the larger of the two.
 * At a level α that is the same as asking whether the {@code 1 − 2α} interval lies within the
 * margins. The chance of a wrong claim of equivalence is at most α, and close to it only where the
 * interval is much narrower than the margins: few values can hardly ever show equivalence. No
 * significant difference is not equivalence, and a significant one may be within the margins. Works
 * on one sample, pairs, and two samples, by the {@link MeanTest} it is given. Source: Schuirmann
 * (1987), J. Pharmacokin. Biopharm. 15, 657–680.
 *
 * @param test the difference with its error
 * @param margin the largest difference that does not matter, in its unit, above zero; chosen before
 *     the values are seen
 */
public record Equivalence(MeanTest test, double margin) {

  /** What can be said at a level. */
  public enum Verdict {
    /** The true difference is shown to be within the margins. */
    EQUIVALENT,
    /** The true difference is shown to be beyond one margin. */
    DIFFERENT,
    /** Neither is shown: more values are needed. */
    UNDECIDED
  }

  /**
   * Checks the margin.
   *
   * @param test the difference with its error
   * @param margin the largest difference that does not matter
   * @throws IllegalArgumentException if the margin is not above zero
   */
  public Equivalence {
    Require.positive(margin, "margin");
  }

  /**
   * The chance of a difference at least so high if the truth is the lower margin.
   *
   * @return the one-sided chance
   */
  public double chanceAgainstLower() {
    return Student.above(
        (test.difference() + margin) / test.standardError(), test.degreesOfFreedom());
  }

  /**
   * The chance of a difference at least so low if the truth is the upper margin.
   *
   * @return the one-sided chance
   */
  public double chanceAgainstUpper() {
    return Student.above(
        (margin - test.difference()) / test.standardError(), test.degreesOfFreedom());
  }

  /**
   * The larger of the two chances: the smallest α at which equivalence is shown.
   *
   * @return the chance
   */
  public double chance() {
    return Math.max(chanceAgainstLower(), chanceAgainstUpper());
  }

  /**
   * The interval that must lie within the margins: the {@code 1 − 2α} interval of the difference.
   *
   * @param alpha the chance of a wrong claim, between 0 and one half
   * @return the interval
   * @throws IllegalArgumentException if alpha is not between 0 and one half
   */
  public Interval interval(double alpha) {
    if (!(alpha > 0 && alpha < 0.5)) {
      throw new IllegalArgumentException("alpha must be between 0 and 0.5, is " + alpha);
    }
    return test.interval(1 - 2 * alpha);
  }

  /**
   * What can be said: equivalent where the {@code 1 − 2α} interval lies strictly within the
   * margins, different where it lies wholly beyond one, undecided else.
   *
   * @param alpha the chance of a wrong claim, between 0 and one half
   * @return the verdict
   * @throws IllegalArgumentException if alpha is not between 0 and one half
   */
  public Verdict at(double alpha) {
    Interval interval = interval(alpha);
    if (-margin < interval.lower() && interval.upper() < margin) {
      return Verdict.EQUIVALENT;
    }
    boolean beyond = interval.lower() > margin || interval.upper() < -margin;
    return beyond ? Verdict.DIFFERENT : Verdict.UNDECIDED;
  }
}
