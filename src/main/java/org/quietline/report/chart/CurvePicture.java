package org.quietline.report.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.plot.XYPlot;
import org.quietline.report.Colour;
import org.quietline.report.CurveChart;

/** The picture of a curve with named places. */
final class CurvePicture {
  private static final double BOTTOM = 13;

  private CurvePicture() {}

  static void draw(CurveChart chart, Graphics2D g, double width, double height) {
    Layers layers = new Layers();
    layers.line(chart.curve(), Colour.INK, Style.STRONG);
    double left = Words.leftRoom(chart.up());
    double right = Words.rightRoom(List.of());
    Frame guess =
        new Frame(
            new Rectangle2D.Double(left, 0, width - left - right, height),
            chart.along(),
            chart.up());
    int rows = Places.rows(chart.uprights(), guess, width);
    Style.Room room = new Style.Room(rows * Words.LINE + Words.OVER, left, BOTTOM, right);
    XYPlot plot = Style.plot(chart.along(), chart.up(), room, layers);
    Frame frame = Style.draw(plot, chart.along(), chart.up(), g, width, height);
    Words words = new Words(g, frame);
    words.uprights(chart.uprights(), width);
    words.along();
    words.up();
  }
}
