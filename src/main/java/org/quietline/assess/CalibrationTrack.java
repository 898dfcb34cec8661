package org.quietline.assess;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.quietline.bench.Calibration;
import org.quietline.stats.control.ControlLimits;

/**
 * One number of each calibration in time order, with the limits that the calibrations before it
 * predict. A mark beyond its limits is shown and is no signal of its own: slope, offset and
 * responses of one calibration move together.
 *
 * @param of what is followed
 * @param calibrator the assigned value of the calibrator, for responses
 * @param marks the calibrations
 */
public record CalibrationTrack(Of of, Optional<BigDecimal> calibrator, List<Mark> marks) {
  /** Copies the list. */
  public CalibrationTrack {
    marks = List.copyOf(marks);
  }

  /** What is followed. */
  public enum Of {
    /** The slope: what changes it is proportional. */
    SLOPE,
    /** The offset: what changes it adds. */
    OFFSET,
    /** The response of one calibrator. */
    RESPONSE
  }

  /**
   * One calibration's number.
   *
   * @param calibration the calibration
   * @param value the number, in units of response, for the slope by unit of the method
   * @param limits the limits that the calibrations before it predict: Student's t, 99.73 % and 95 %
   * @param provisional whether they rest on fewer than 15 calibrations
   */
  public record Mark(
      Calibration calibration, double value, Answer<ControlLimits> limits, boolean provisional) {
    /**
     * Whether the number is beyond its action limits.
     *
     * @return false also where there are none
     */
    public boolean isBeyond() {
      return limits
          .value()
          .filter(l -> value < l.lowerAction() || value > l.upperAction())
          .isPresent();
    }
  }
}
