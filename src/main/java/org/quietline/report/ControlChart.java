package org.quietline.report;

import java.util.List;
import java.util.Optional;

/**
 * A control stream as a chart.
 *
 * @param time the axis of days
 * @param value the axis of results
 * @param strips the calibrations, in order
 * @param levels centre, warning and action limits; empty without limits
 * @param marks the results, in time order
 * @param runs the results joined by a thin line
 * @param weightedMean the weighted mean, one list for each unbroken stretch
 * @param rings rings around results that broke a rule
 * @param baseline where the limits come from, if that falls into the chart
 */
public record ControlChart(
    Axis time,
    Axis value,
    List<Strip> strips,
    List<Level> levels,
    List<Mark> marks,
    List<Spot> runs,
    List<List<Spot>> weightedMean,
    List<Ring> rings,
    Optional<Span> baseline)
    implements Chart {
  /**
   * Copies the lists.
   *
   * @param time the axis of days
   * @param value the axis of results
   * @param strips the calibrations
   * @param levels centre
   * @param marks the results
   * @param runs the results joined by a thin line
   * @param weightedMean the weighted mean
   * @param rings rings around results
   * @param baseline where the limits come from
   */
  public ControlChart {
    strips = List.copyOf(strips);
    levels = List.copyOf(levels);
    marks = List.copyOf(marks);
    runs = List.copyOf(runs);
    weightedMean = weightedMean.stream().map(List::copyOf).toList();
    rings = List.copyOf(rings);
  }

  /**
   * The time of one calibration.
   *
   * @param from its start
   * @param to its end
   * @param label its key
   * @param tinted whether it is tinted, as every second one is
   */
  public record Strip(double from, double to, String label, boolean tinted) {}

  /**
   * A ring around a result that broke a rule.
   *
   * @param x along
   * @param y up
   * @param open whether no cause is recorded
   * @param letter its letter, empty for the later results of the same episode
   */
  public record Ring(double x, double y, boolean open, String letter) {}

  /**
   * A stretch of time.
   *
   * @param from its start
   * @param to its end
   * @param label its words
   */
  public record Span(double from, double to, String label) {}
}
