package org.quietline.assess;

import java.util.Optional;

/**
 * The limits that judged one control result.
 *
 * @param origin where they come from
 * @param results how many results of the stream they rest on; none for a target before the first
 * @param from the material whose results they borrow from, if they do
 * @param centre the centre line
 * @param lowerAction the lower action limit
 * @param lowerWarning the lower warning limit
 * @param upperWarning the upper warning limit
 * @param upperAction the upper action limit
 */
public record InForce(
    Origin origin,
    int results,
    Optional<String> from,
    double centre,
    double lowerAction,
    double lowerWarning,
    double upperWarning,
    double upperAction) {

  /** Where limits come from. */
  public enum Origin {
    /** The method's allowance about the assigned value, and what results there were. */
    TARGET("target"),
    /** The scatter of another material, and what results there were. */
    OTHER_MATERIAL("other-material"),
    /** The results before this one, by Student's t. */
    EARLIER_RESULTS("earlier-results"),
    /** The first results of the stream. */
    FIRST_RESULTS("first-results"),
    /** A baseline a person chose. */
    CHOSEN("chosen");

    private final String key;

    Origin(String key) {
      this.key = key;
    }

    /**
     * The word used in findings.
     *
     * @return the word
     */
    public String key() {
      return key;
    }
  }

  /**
   * Whether they come from a baseline, of whatever size.
   *
   * @return false for what is known beforehand or from the results before
   */
  public boolean isSettled() {
    return origin == Origin.FIRST_RESULTS || origin == Origin.CHOSEN;
  }

  /**
   * How far the action limit is from the centre.
   *
   * @return half the width, in the method's unit
   */
  public double reach() {
    return (upperAction - lowerAction) / 2;
  }
}
