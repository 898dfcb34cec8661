package org.quietline.assess;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * The verdict on one method.
 *
 * @param level the gravest level of its concerns
 * @param concerns everything that stands against "steady", gravest first
 */
public record Verdict(Level level, List<Concern> concerns) {

  /** Copies the list. */
  public Verdict {
    concerns = List.copyOf(concerns);
  }

  /**
   * Weighs concerns.
   *
   * @param concerns in the order in which they should be told within one level
   * @return steady when there are none
   */
  public static Verdict of(List<Concern> concerns) {
    List<Concern> sorted =
        concerns.stream().sorted(Comparator.comparing(Concern::level).reversed()).toList();
    return new Verdict(sorted.isEmpty() ? Level.STEADY : sorted.get(0).level(), sorted);
  }

  /** How far results of the method may be relied on, mildest first. */
  public enum Level {
    /** Nothing speaks against the method under the rules stated. */
    STEADY,
    /** Go on, and do what is asked. */
    WATCH,
    /** Stop reporting results until a person has looked. */
    HOLD;

    /**
     * The word used in findings and on pages.
     *
     * @return the name in lower case
     */
    public String key() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
