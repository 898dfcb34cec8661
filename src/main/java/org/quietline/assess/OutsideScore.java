package org.quietline.assess;

/**
 * A difference from an outside laboratory in units of what it may be. Source: ISO 13528:2022,
 * clause 9, from memory.
 *
 * @param difference the difference
 * @param zeta the difference over both standard uncertainties; from −2 to 2 nothing speaks against
 *     them
 * @param round the score of a proficiency round; from −2 to 2 there is no reason to ask, beyond 3
 *     there is
 */
public record OutsideScore(OutsideDifference difference, Answer<Double> zeta, Answer<Round> round) {

  /**
   * The difference over the expanded uncertainties at a factor of two.
   *
   * @return the E-n number: half of zeta; from −1 to 1 nothing speaks against the uncertainties
   */
  public Answer<Double> en() {
    return zeta.map(z -> z / 2);
  }

  /**
   * A score by the deviation for assessment that a proficiency round states.
   *
   * @param score the difference over that deviation
   * @param primed whether the assigned value's uncertainty is counted, as it must be above 0.3
   *     deviations: z′ instead of z
   */
  public record Round(double score, boolean primed) {}
}
