package org.quietline.report.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleInsets;
import org.quietline.report.Chart.Axis;
import org.quietline.report.Chart.Level;
import org.quietline.report.Colour;

/** The one style of all charts. */
final class Style {
  /** The stroke of hairlines. */
  static final Stroke HAIR = new BasicStroke(0.5f);

  /** The stroke that joins results. */
  static final Stroke THIN = new BasicStroke(0.6f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);

  /** The stroke of the weighted mean and of a forecast's line. */
  static final Stroke STRONG = new BasicStroke(1.6f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);

  /** The stroke of rings, crosses and open dots. */
  static final Stroke MARK = new BasicStroke(0.9f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);

  /** The dashes of action limits and allowances. */
  static final Stroke DASHES = dashed(0.9f, 5, 3);

  /** The dots of warning limits and of days on an axis. */
  static final Stroke DOTS = dashed(0.8f, 0.8f, 2.2f);

  private Style() {}

  private static Stroke dashed(float width, float on, float off) {
    return new BasicStroke(
        width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {on, off}, 0);
  }

  static Color colour(Colour colour) {
    return new Color(colour.rgb());
  }

  /** Room around the plot for words. */
  record Room(double top, double left, double bottom, double right) {}

  /** A bare plot with room around it: no background, outline, grid, ticks or labels. */
  static XYPlot plot(Axis x, Axis y, Room room, Layers layers) {
    XYPlot plot = new XYPlot(layers.data(), axis(x), axis(y), layers.renderer());
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setDomainGridlinesVisible(false);
    plot.setRangeGridlinesVisible(false);
    plot.setInsets(RectangleInsets.ZERO_INSETS);
    plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
    AxisSpace along = new AxisSpace();
    along.setTop(room.top());
    along.setBottom(room.bottom());
    plot.setFixedDomainAxisSpace(along);
    AxisSpace up = new AxisSpace();
    up.setLeft(room.left());
    up.setRight(room.right());
    plot.setFixedRangeAxisSpace(up);
    return plot;
  }

  private static NumberAxis axis(Axis data) {
    NumberAxis axis = new NumberAxis();
    axis.setAutoRange(false);
    axis.setRange(data.lower(), data.upper());
    axis.setVisible(false);
    return axis;
  }

  static void level(XYPlot plot, Level level, Layer layer) {
    ValueMarker marker = new ValueMarker(level.at());
    switch (level.kind()) {
      case CENTRE -> line(marker, Colour.GREY, HAIR);
      case ACTION -> line(marker, Colour.INK, DASHES);
      case WARNING -> line(marker, Colour.GREY, DOTS);
    }
    plot.addRangeMarker(marker, layer);
  }

  private static void line(ValueMarker marker, Colour colour, Stroke stroke) {
    marker.setPaint(colour(colour));
    marker.setStroke(stroke);
  }

  /** Draws the plot and returns where its data stand. */
  static Frame draw(XYPlot plot, Axis x, Axis y, Graphics2D g, double width, double height) {
    JFreeChart chart = new JFreeChart(null, null, plot, false);
    chart.setBackgroundPaint(null);
    chart.setPadding(RectangleInsets.ZERO_INSETS);
    chart.setElementHinting(false);
    ChartRenderingInfo info = new ChartRenderingInfo(null);
    chart.draw(g, new Rectangle2D.Double(0, 0, width, height), null, info);
    return new Frame(info.getPlotInfo().getDataArea(), x, y);
  }
}
