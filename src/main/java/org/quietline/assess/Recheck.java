package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.Optional;
import org.quietline.bench.Calibration;
import org.quietline.stats.Interval;

/**
 * The control on both sides of a recalibration: as found, before anything was touched, and as left.
 *
 * @param calibration the new calibration
 * @param asFound the last control result of the old window, if it is recent enough
 * @param asLeft the first control result of the new window, if it came soon enough
 * @param step as left less as found, or why it cannot be told
 */
public record Recheck(
    Calibration calibration, Optional<Side> asFound, Optional<Side> asLeft, Answer<Step> step) {
  /**
   * A control result beside a recalibration.
   *
   * @param at when it was taken
   * @param material the material's key
   * @param deviation the result less its reference, in the method's unit
   */
  public record Side(LocalDateTime at, String material, double deviation) {}

  /**
   * What the recalibration changed.
   *
   * @param change as left less as found
   * @param interval95 its 95 % interval, from the scatter of results about the lines of windows
   */
  public record Step(double change, Interval interval95) {
    /**
     * Whether the control shows the change.
     *
     * @return true if zero is outside the interval
     */
    public boolean isShown() {
      return !interval95.contains(0);
    }
  }
}
