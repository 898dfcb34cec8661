package org.quietline.report.chart;

import java.awt.Graphics2D;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.quietline.report.Miniature;

/** The picture of a year in a corner. */
final class MiniaturePicture {
  private static final double DOT = 1.9;
  private static final double RING = 5.5;
  private static final Style.Room ROOM = new Style.Room(1, 0, 1, 0);

  private MiniaturePicture() {}

  static void draw(Miniature chart, Graphics2D g, double width, double height) {
    Layers layers = new Layers();
    layers.marks(chart.marks(), DOT);
    layers.rings(chart.rings(), RING, RING);
    XYPlot plot = Style.plot(chart.time(), chart.value(), ROOM, layers);
    chart.levels().forEach(l -> Style.level(plot, l, Layer.BACKGROUND));
    Style.draw(plot, chart.time(), chart.value(), g, width, height);
  }
}
