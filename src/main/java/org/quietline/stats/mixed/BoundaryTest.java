package org.quietline.stats.mixed;

import org.quietline.stats.distribution.ChiSquare;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Require;

/**
 * A likelihood-ratio test of a component of variance, whose absence lies on the boundary of what is
 * possible.
 *
 * <p>The statistic {@code 2·(ℓ − ℓ without)} of restricted likelihoods is referred to the mixture
 * {@code ½χ²(q) + ½χ²(q + 1)}, q being the number of covariances that go with the component; for q
 * = 0 half of the chance lies on a statistic of exactly zero, and the chance of zero or more is
 * one. With few groups more than half of it lies there, and the stated chance is too large: the
 * test is cautious. Source: Self and Liang, J. Am. Stat. Assoc. 82 (1987) 605–610; Stram and Lee,
 * Biometrics 50 (1994) 1171–1177.
 *
 * @param statistic the likelihood ratio, zero or more
 * @param chance the chance of a statistic at least as large without the component
 */
public record BoundaryTest(double statistic, double chance) {
  /**
   * Checks the ranges; NaN fails.
   *
   * @param statistic the likelihood ratio
   * @param chance the chance of one as large
   * @throws IllegalArgumentException if the statistic is negative or not finite, or the chance not
   *     from 0 to 1
   */
  public BoundaryTest {
    Require.notNegative(statistic, "statistic");
    if (!(chance >= 0 && chance <= 1)) {
      throw new IllegalArgumentException("chance is " + chance);
    }
  }

  static BoundaryTest of(double with, double without, int covariances) {
    double statistic = Math.max(0, 2 * (with - without));
    if (statistic == 0) {
      return new BoundaryTest(0, 1);
    }
    double one = Normal.above(Math.sqrt(statistic));
    return new BoundaryTest(
        statistic, covariances == 0 ? one : one + 0.5 * ChiSquare.above(statistic, 2));
  }
}
