package org.quietline.report.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.function.Function;
import org.jfree.chart.annotations.XYPolygonAnnotation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.quietline.report.Chart.Spot;
import org.quietline.report.Colour;
import org.quietline.report.DriftChart;
import org.quietline.report.DriftChart.Ends;
import org.quietline.report.DriftChart.Slice;

/** The picture of a drift. */
final class DriftPicture {
  private static final double BOTTOM = 13;
  private static final double DOT = 3.6;

  private DriftPicture() {}

  static void draw(DriftChart chart, Graphics2D g, double width, double height) {
    Layers layers = new Layers();
    chart.earlier().forEach(window -> layers.line(window, Colour.PALE, Style.HAIR));
    List<Spot> middle = chart.fan().stream().map(s -> new Spot(s.day(), s.middle())).toList();
    layers.line(middle, Colour.FORECAST, Style.STRONG);
    layers.marks(chart.marks(), DOT);
    double left = Words.leftRoom(chart.deviation());
    double right = Words.rightRoom(chart.levels());
    Frame guess =
        new Frame(
            new Rectangle2D.Double(left, 0, width - left - right, height),
            chart.days(),
            chart.deviation());
    int rows = Places.rows(chart.uprights(), guess, width);
    Style.Room room = new Style.Room(rows * Words.LINE + Words.OVER, left, BOTTOM, right);
    XYPlot plot = Style.plot(chart.days(), chart.deviation(), room, layers);
    band(layers, chart.fan(), Slice::nearlyAll, Colour.FORECAST_NEARLY_ALL);
    band(layers, chart.fan(), Slice::most, Colour.FORECAST_MOST);
    band(layers, chart.fan(), Slice::half, Colour.FORECAST_HALF);
    chart.levels().forEach(l -> Style.level(plot, l, Layer.FOREGROUND));
    Frame frame = Style.draw(plot, chart.days(), chart.deviation(), g, width, height);
    Words words = new Words(g, frame);
    words.uprights(chart.uprights(), width);
    words.along();
    words.up();
    words.levels(chart.levels());
    words.off(chart.marks());
  }

  private static void band(
      Layers layers, List<Slice> fan, Function<Slice, Ends> ends, Colour colour) {
    int n = fan.size();
    if (n < 2) {
      return;
    }
    double[] outline = new double[4 * n];
    for (int i = 0; i < n; i++) {
      Slice slice = fan.get(i);
      outline[2 * i] = slice.day();
      outline[2 * i + 1] = ends.apply(slice).upper();
      outline[4 * n - 2 - 2 * i] = slice.day();
      outline[4 * n - 1 - 2 * i] = ends.apply(slice).lower();
    }
    layers
        .renderer()
        .addAnnotation(
            new XYPolygonAnnotation(outline, null, null, Style.colour(colour)), Layer.BACKGROUND);
  }
}
