package org.quietline.report.chart;

import java.awt.Graphics2D;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.quietline.report.DotChart;

/** The picture of dots against level lines. */
final class DotPicture {
  private static final double BOTTOM = 13;
  private static final double TOP = 4;
  private static final double DOT = 3;
  private static final double RING = 8;

  private DotPicture() {}

  static void draw(DotChart chart, Graphics2D g, double width, double height) {
    Layers layers = new Layers();
    layers.marks(chart.marks(), DOT);
    layers.rings(chart.rings(), RING, RING);
    Style.Room room =
        new Style.Room(TOP, Words.leftRoom(chart.up()), BOTTOM, Words.rightRoom(chart.levels()));
    XYPlot plot = Style.plot(chart.along(), chart.up(), room, layers);
    chart.levels().forEach(l -> Style.level(plot, l, Layer.BACKGROUND));
    Frame frame = Style.draw(plot, chart.along(), chart.up(), g, width, height);
    Words words = new Words(g, frame);
    words.along();
    words.up();
    words.levels(chart.levels());
  }
}
