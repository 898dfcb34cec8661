package org.quietline.report;

import java.util.List;
import java.util.Optional;

/**
 * A control stream as a chart.
 *
 * @param time the axis of days
 * @param value the axis of results
 * @param strips the calibrations, in order
 * @param levels the limits of the next result, named at the right edge; empty without limits
 * @param bounds the limits that judged the results, as they were then
 * @param events what happened between results, beside calibrations
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
    List<Bound> bounds,
    List<Event> events,
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
   * @param levels the limits of the next result
   * @param bounds the limits that judged the results
   * @param events what happened between results
   * @param marks the results
   * @param runs the results joined by a thin line
   * @param weightedMean the weighted mean
   * @param rings rings around results
   * @param baseline where the limits come from
   */
  public ControlChart {
    strips = List.copyOf(strips);
    levels = List.copyOf(levels);
    bounds = List.copyOf(bounds);
    events = List.copyOf(events);
    marks = List.copyOf(marks);
    runs = List.copyOf(runs);
    weightedMean = weightedMean.stream().map(List::copyOf).toList();
    rings = List.copyOf(rings);
  }

  /**
   * A limit or a centre over a stretch of results, with steps where it changed.
   *
   * @param kind how it is drawn
   * @param path its corners, in the order of time
   */
  public record Bound(Level.Kind kind, List<Spot> path) {
    /**
     * Copies the list.
     *
     * @param kind how it is drawn
     * @param path its corners
     */
    public Bound {
      path = List.copyOf(path);
    }
  }

  /**
   * Something that happened between two results, as a stroke at the top edge.
   *
   * @param x when
   * @param restart whether it started the weighted mean and run counts anew; a longer stroke
   */
  public record Event(double x, boolean restart) {}

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
