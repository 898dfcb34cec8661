package org.quietline.report;

import java.util.List;

/**
 * Product results against the limits they must keep.
 *
 * @param time the axis of days
 * @param value the axis of results
 * @param levels the limits and the mean
 * @param marks the batches
 * @param rings rings around those beyond a limit
 */
public record BatchChart(
    Axis time, Axis value, List<Level> levels, List<Mark> marks, List<ControlChart.Ring> rings)
    implements Chart {
  /**
   * Copies the lists.
   *
   * @param time the axis of days
   * @param value the axis of results
   * @param levels the limits and the mean
   * @param marks the batches
   * @param rings rings around those beyond a limit
   */
  public BatchChart {
    levels = List.copyOf(levels);
    marks = List.copyOf(marks);
    rings = List.copyOf(rings);
  }
}
