package org.quietline.assess;

import java.util.Optional;
import org.quietline.stats.Interval;

/**
 * Something other than the calibration that could move a control, and what the records say to it:
 * its effect, estimated beside the line of the window in use.
 *
 * @param kind what it is
 * @param subject the key of the person, material or lot that differs, if it is one
 * @param effect what it does, or why that cannot be told
 */
public record Explanation(Kind kind, Optional<String> subject, Answer<Effect> effect) {
  /** What could move a control beside the calibration. */
  public enum Kind {
    /** The reagent grew older since it was opened. */
    REAGENT_AGE,
    /** The control material changed since its first result, whatever the calibration. */
    MATERIAL_AGE,
    /** Another control material, which moves otherwise. */
    SECOND_MATERIAL,
    /** Somebody else ran the control. */
    PERSON,
    /** The temperature at the bench. */
    TEMPERATURE
  }

  /**
   * An effect beside the drift.
   *
   * @param size by how much it moves a result: for a day of age, a degree, or one person or
   *     material against the others
   * @param interval95 its 95 % interval
   * @param slopeBeside the drift a day that is left to the calibration when it is allowed for
   * @param slopeBeside95 its 95 % interval
   * @param results how many results it rests on
   */
  public record Effect(
      double size, Interval interval95, double slopeBeside, Interval slopeBeside95, int results) {
    /**
     * Whether the records show it: zero is outside the interval.
     *
     * @return true if shown
     */
    public boolean isShown() {
      return !interval95.contains(0);
    }
  }
}
