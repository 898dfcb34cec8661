package org.quietline.report;

import java.util.List;

/**
 * A year of a control stream in a corner: dots and limits only.
 *
 * @param time the axis of days, without ticks
 * @param value the axis of results, without ticks
 * @param levels centre and action limits
 * @param marks the results
 * @param rings rings around open signals
 */
public record Miniature(
    Axis time, Axis value, List<Level> levels, List<Mark> marks, List<ControlChart.Ring> rings)
    implements Chart {
  /**
   * Copies the lists.
   *
   * @param time the axis of days
   * @param value the axis of results
   * @param levels centre and action limits
   * @param marks the results
   * @param rings rings around open signals
   */
  public Miniature {
    levels = List.copyOf(levels);
    marks = List.copyOf(marks);
    rings = List.copyOf(rings);
  }
}
