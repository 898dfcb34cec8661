package org.quietline.report;

import java.util.List;

/**
 * A curve with named places along it.
 *
 * @param along the axis along
 * @param up the axis up
 * @param curve the curve, from left to right
 * @param uprights the named places
 */
public record CurveChart(Axis along, Axis up, List<Spot> curve, List<Upright> uprights)
    implements Chart {
  /**
   * Copies the lists.
   *
   * @param along the axis along
   * @param up the axis up
   * @param curve the curve
   * @param uprights the named places
   */
  public CurveChart {
    curve = List.copyOf(curve);
    uprights = List.copyOf(uprights);
  }
}
