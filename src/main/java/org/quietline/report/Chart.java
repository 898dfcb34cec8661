package org.quietline.report;

import java.util.List;

/**
 * A chart as data: plain numbers in the units of its axes, and labels that are finished texts. It
 * has no size and no fonts; {@link org.quietline.report.chart} gives it both.
 */
public sealed interface Chart permits ControlChart, CurveChart, DotChart, DriftChart, Miniature {

  /**
   * An axis.
   *
   * @param lower its lower end
   * @param upper its upper end, above the lower one
   * @param ticks its ticks, in order
   */
  record Axis(double lower, double upper, List<Tick> ticks) {
    /**
     * Copies the list and checks the ends; NaN fails.
     *
     * @param lower its lower end
     * @param upper its upper end
     * @param ticks its ticks
     */
    public Axis {
      ticks = List.copyOf(ticks);
      if (!(lower < upper)) {
        throw new IllegalArgumentException("axis from " + lower + " to " + upper);
      }
    }

    /**
     * Whether a value can be shown.
     *
     * @param value the value
     * @return true between the ends
     */
    public boolean holds(double value) {
      return lower <= value && value <= upper;
    }
  }

  /**
   * A tick.
   *
   * @param at where
   * @param label its label
   */
  record Tick(double at, String label) {}

  /**
   * A place on a chart.
   *
   * @param x along
   * @param y up
   */
  record Spot(double x, double y) {}

  /**
   * A level line across the chart, with its name and value at the right edge.
   *
   * @param at its height
   * @param label its name and value
   * @param kind how it is drawn
   */
  record Level(double at, String label, Kind kind) {
    /** How a level line is drawn. */
    public enum Kind {
      /** A thin full line. */
      CENTRE,
      /** Dashes. */
      ACTION,
      /** Dots. */
      WARNING
    }
  }

  /**
   * One result.
   *
   * @param x along
   * @param y up; beyond the axis for {@link Shape#OFF}
   * @param shape how it is drawn
   * @param label words beside it, may be empty
   */
  record Mark(double x, double y, Shape shape, String label) {
    /** How a result is drawn. */
    public enum Shape {
      /** A full dot. */
      DOT,
      /** An open dot: judged by provisional limits, or by none. */
      OPEN,
      /** A cross: taken out by an action. */
      CROSS,
      /** A triangle at the edge: beyond the axis, its value beside it. */
      OFF
    }
  }

  /**
   * A vertical line with words over it.
   *
   * @param x where
   * @param label its words
   * @param colour its colour
   * @param full whether the line is full; otherwise it is dotted
   */
  record Upright(double x, String label, Colour colour, boolean full) {}
}
