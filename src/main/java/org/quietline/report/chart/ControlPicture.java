package org.quietline.report.chart;

import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.quietline.report.Colour;
import org.quietline.report.ControlChart;
import org.quietline.report.ControlChart.Bound;
import org.quietline.report.ControlChart.Event;
import org.quietline.report.ControlChart.Span;
import org.quietline.report.ControlChart.Strip;

/** The picture of a control stream. */
final class ControlPicture {
  private static final double BOTTOM = 13;
  private static final double DOT = 3;
  private static final double CROWDED = 120;
  private static final double SHORT_STROKE = 4;
  private static final double LONG_STROKE = 8;

  /** More results than this are not joined by a line. */
  private static final int THICKET = 150;

  /** A name may be this much wider than its strip. */
  private static final double NARROW = 1.5;

  private ControlPicture() {}

  static void draw(ControlChart chart, Graphics2D g, double width, double height) {
    double dot = chart.marks().size() > CROWDED ? DOT * 0.7 : DOT;
    Layers layers = new Layers();
    for (Bound bound : chart.bounds()) {
      switch (bound.kind()) {
        case CENTRE -> layers.line(bound.path(), Colour.GREY, Style.HAIR);
        case ACTION -> layers.line(bound.path(), Colour.INK, Style.DASHES);
        case WARNING -> layers.line(bound.path(), Colour.GREY, Style.DOTS);
      }
    }
    for (var stretch : chart.weightedMean()) {
      layers.line(stretch, Colour.PALE, Style.STRONG);
    }
    if (chart.marks().size() <= THICKET) {
      layers.line(chart.runs(), Colour.GREY, Style.HAIR);
    }
    layers.marks(chart.marks(), dot);
    layers.rings(chart.rings(), dot + 5, dot + 3);
    Style.Room room =
        new Style.Room(
            Words.LINE + 2, Words.leftRoom(chart.value()), BOTTOM, Words.rightRoom(chart.levels()));
    XYPlot plot = Style.plot(chart.time(), chart.value(), room, layers);
    chart.strips().forEach(s -> strip(plot, s));
    Frame frame = Style.draw(plot, chart.time(), chart.value(), g, width, height);
    Words words = new Words(g, frame);
    words.along();
    words.up();
    words.levels(chart.levels());
    names(chart, words, frame);
    chart.baseline().ifPresent(b -> baseline(b, g, words, frame));
    chart.events().forEach(e -> event(e, g, frame));
    words.off(chart.marks());
    words.letters(chart.rings(), chart.marks(), (dot + 5) / 2);
  }

  private static void strip(XYPlot plot, Strip strip) {
    if (strip.tinted()) {
      IntervalMarker marker = new IntervalMarker(strip.from(), strip.to());
      marker.setPaint(Style.colour(Colour.TINT));
      marker.setAlpha(1);
      marker.setOutlinePaint(null);
      marker.setOutlineStroke(null);
      plot.addDomainMarker(marker, Layer.BACKGROUND);
    }
  }

  /** The names of calibrations over their strips, the latest first, as many as have room. */
  private static void names(ControlChart chart, Words words, Frame frame) {
    double free = Double.POSITIVE_INFINITY;
    for (int i = chart.strips().size() - 1; i >= 0; i--) {
      Strip strip = chart.strips().get(i);
      double middle = (frame.px(strip.from()) + frame.px(strip.to())) / 2;
      double width = Faces.width(strip.label(), Faces.REGULAR);
      boolean fits = width <= NARROW * (frame.px(strip.to()) - frame.px(strip.from()));
      if (fits && middle + width / 2 + 4 <= free) {
        words.centred(
            strip.label(), middle, frame.area().getMinY() - 3, Colour.GREY, Faces.REGULAR);
        free = middle - width / 2;
      }
    }
    if (free == Double.POSITIVE_INFINITY && !chart.strips().isEmpty()) {
      latest(chart.strips().get(chart.strips().size() - 1), words, frame);
    }
  }

  /** The name of the latest calibration alone, ending at the right edge. */
  private static void latest(Strip strip, Words words, Frame frame) {
    double left = frame.area().getMaxX() - Faces.width(strip.label(), Faces.REGULAR);
    words.text(
        strip.label(), Math.max(0, left), frame.area().getMinY() - 3, Colour.GREY, Faces.REGULAR);
  }

  /** A stroke that hangs from the top edge. */
  private static void event(Event event, Graphics2D g, Frame frame) {
    double x = frame.px(event.x());
    double y = frame.area().getMinY();
    g.setPaint(Style.colour(Colour.INK));
    g.setStroke(Style.MARK);
    g.draw(new Line2D.Double(x, y, x, y + (event.restart() ? LONG_STROKE : SHORT_STROKE)));
  }

  /** A bracket along the foot of the plot with its word in the line. */
  private static void baseline(Span span, Graphics2D g, Words words, Frame frame) {
    double from = frame.px(span.from()) - 2;
    double to = frame.px(span.to()) + 2;
    double y = frame.area().getMaxY() - 5;
    double width = Faces.width(span.label(), Faces.REGULAR);
    g.setPaint(Style.colour(Colour.GREY));
    g.setStroke(Style.HAIR);
    g.draw(new Line2D.Double(from, y - 2, from, y + 2));
    g.draw(new Line2D.Double(to, y - 2, to, y + 2));
    if (width + 20 < to - from) {
      g.draw(new Line2D.Double(from, y, from + 7, y));
      g.draw(new Line2D.Double(from + 11 + width, y, to, y));
      words.text(span.label(), from + 9, y + 2.4, Colour.GREY, Faces.REGULAR);
    } else {
      g.draw(new Line2D.Double(from, y, to, y));
      words.text(span.label(), to + 4, y + 2.4, Colour.GREY, Faces.REGULAR);
    }
  }
}
