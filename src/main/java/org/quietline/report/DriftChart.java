package org.quietline.report;

import java.util.List;

/**
 * The deviations since a calibration, and where they are heading.
 *
 * @param days the axis of days since the calibration
 * @param deviation the axis of deviations
 * @param levels zero and the allowance on both sides
 * @param marks the deviations
 * @param fan the line with its intervals; empty when no line can be given
 * @param uprights today, the last safe day, the end of validity
 * @param earlier the deviations of each earlier window, drawn as thin lines
 */
public record DriftChart(
    Axis days,
    Axis deviation,
    List<Level> levels,
    List<Mark> marks,
    List<Slice> fan,
    List<Upright> uprights,
    List<List<Spot>> earlier)
    implements Chart {
  /**
   * Copies the lists.
   *
   * @param days the axis of days since the calibration
   * @param deviation the axis of deviations
   * @param levels zero and the allowance on both sides
   * @param marks the deviations
   * @param fan the line
   * @param uprights today
   * @param earlier the deviations of each earlier window
   */
  public DriftChart {
    levels = List.copyOf(levels);
    marks = List.copyOf(marks);
    fan = List.copyOf(fan);
    uprights = List.copyOf(uprights);
    earlier = earlier.stream().map(List::copyOf).toList();
  }

  /**
   * The fan on one day.
   *
   * @param day days since the calibration
   * @param middle the line
   * @param half the 50 % interval
   * @param most the 80 % interval
   * @param nearlyAll the 95 % interval
   */
  public record Slice(double day, double middle, Ends half, Ends most, Ends nearlyAll) {}

  /**
   * The two ends of an interval.
   *
   * @param lower the lower end
   * @param upper the upper end
   */
  public record Ends(double lower, double upper) {}
}
