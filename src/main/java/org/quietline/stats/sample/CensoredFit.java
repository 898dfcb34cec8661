package org.quietline.stats.sample;

import org.quietline.stats.numeric.Require;

/** A population fitted to a {@link CensoredSample}, or why none can be. */
public sealed interface CensoredFit permits CensoredNormal, CensoredFit.NotDetermined {

  /**
   * Fewer than two different values are known, so that the likelihood has no highest point or the
   * deviation rests on the limits alone.
   *
   * @param exact how many values are known
   * @param distinct how many different ones, 0 or 1; two are needed
   * @param censored how many values are known only by a limit
   */
  record NotDetermined(int exact, int distinct, int censored) implements CensoredFit {
    /**
     * Checks the counts.
     *
     * @param exact how many values are known
     * @param distinct how many different ones
     * @param censored how many values are known only by a limit
     * @throws IllegalArgumentException if a count is negative or there are two different values
     */
    public NotDetermined {
      Require.atLeast(exact, 0, "exact");
      Require.atLeast(distinct, 0, "distinct");
      Require.atLeast(censored, 0, "censored");
      if (distinct > 1) {
        throw new IllegalArgumentException("distinct must be at most 1, is " + distinct);
      }
    }
  }
}
