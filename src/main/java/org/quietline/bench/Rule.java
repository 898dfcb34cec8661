package org.quietline.bench;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * A rule that a stream of control results can break. Sources: ISO 7870-2 (individuals), ISO 7870-6
 * (weighted mean), ISO 4259-4; the zone and run rules are those of the Western Electric handbook
 * (1956).
 */
public enum Rule {
  /** One result beyond an action limit. */
  BEYOND_ACTION_LIMIT,
  /** The exponentially weighted mean beyond its limit. */
  WEIGHTED_MEAN_BEYOND_LIMIT,
  /** The two readings of a result further apart than the baseline's pairs allow. */
  READINGS_DISAGREE,
  /** Two of three results beyond a warning limit on one side. */
  TWO_OF_THREE_BEYOND_WARNING,
  /** Four of five results beyond one deviation on one side. */
  FOUR_OF_FIVE_BEYOND_ONE_DEVIATION,
  /** Eight results in a row on one side of the centre. */
  EIGHT_ON_ONE_SIDE,
  /** Six results in a row rising, or falling. */
  SIX_RISING_OR_FALLING,
  /** The cumulative sum beyond its limit. */
  CUMULATIVE_SUM_BEYOND_LIMIT,
  /** A moving range beyond its limit. */
  MOVING_RANGE_BEYOND_LIMIT,
  /** A step from one calibration to the next. */
  CALIBRATION_STEP,
  /** The blank drifting. */
  BLANK_DRIFTING,
  /** Two methods that measure related properties disagree. */
  METHODS_DISAGREE;

  /**
   * The word used in settings, signal ids and findings.
   *
   * @return the name in lower case with hyphens
   */
  public String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * Finds a rule by its word.
   *
   * @param text the word
   * @return empty when there is no such rule
   */
  public static Optional<Rule> parse(String text) {
    return Arrays.stream(values()).filter(r -> r.key().equals(text)).findFirst();
  }
}
