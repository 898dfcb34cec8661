package org.quietline.report;

import java.util.List;

/**
 * Dots against level lines: batches against their limits, differences against the levels.
 *
 * @param along the axis of days or levels
 * @param up the axis of results or differences
 * @param levels the level lines
 * @param marks the dots
 * @param rings rings around those beyond a limit
 */
public record DotChart(
    Axis along, Axis up, List<Level> levels, List<Mark> marks, List<ControlChart.Ring> rings)
    implements Chart {
  /**
   * Copies the lists.
   *
   * @param along the axis of days or levels
   * @param up the axis of results or differences
   * @param levels the level lines
   * @param marks the dots
   * @param rings rings around those beyond a limit
   */
  public DotChart {
    levels = List.copyOf(levels);
    marks = List.copyOf(marks);
    rings = List.copyOf(rings);
  }
}
