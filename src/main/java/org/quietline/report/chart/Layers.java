package org.quietline.report.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.util.List;
import java.util.function.Predicate;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.quietline.report.Chart.Mark;
import org.quietline.report.Chart.Spot;
import org.quietline.report.Colour;
import org.quietline.report.ControlChart.Ring;

/** The series of a plot, the lowest first. */
final class Layers {
  private static final Stroke NO_OUTLINE = new BasicStroke(0.3f);

  private final XYSeriesCollection data = new XYSeriesCollection();
  private final XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer();

  Layers() {
    renderer.setUseFillPaint(true);
    renderer.setUseOutlinePaint(true);
    renderer.setDrawOutlines(true);
    renderer.setDrawSeriesLineAsPath(true);
  }

  XYSeriesCollection data() {
    return data;
  }

  XYLineAndShapeRenderer renderer() {
    return renderer;
  }

  /** A line through spots. */
  void line(List<Spot> spots, Colour colour, Stroke stroke) {
    int series = add(spots);
    renderer.setSeriesLinesVisible(series, true);
    renderer.setSeriesShapesVisible(series, false);
    renderer.setSeriesPaint(series, Style.colour(colour));
    renderer.setSeriesStroke(series, stroke);
  }

  /** Full dots, open dots and crosses. */
  void marks(List<Mark> marks, double diameter) {
    shapes(spots(marks, Mark.Shape.DOT), circle(diameter), Colour.INK, true, NO_OUTLINE);
    int open =
        shapes(spots(marks, Mark.Shape.OPEN), circle(diameter), Colour.INK, true, Style.MARK);
    renderer.setSeriesFillPaint(open, Color.WHITE);
    shapes(spots(marks, Mark.Shape.CROSS), cross(diameter), Colour.INK, false, Style.MARK);
  }

  /** Large rings around open signals, smaller grey ones around closed signals. */
  void rings(List<Ring> rings, double open, double closed) {
    shapes(spots(rings, Ring::open), circle(open), Colour.ACCENT, false, Style.MARK);
    shapes(spots(rings, r -> !r.open()), circle(closed), Colour.GREY, false, Style.MARK);
  }

  private int shapes(List<Spot> spots, Shape shape, Colour colour, boolean filled, Stroke stroke) {
    int series = add(spots);
    renderer.setSeriesLinesVisible(series, false);
    renderer.setSeriesShapesVisible(series, true);
    renderer.setSeriesShape(series, shape);
    renderer.setSeriesShapesFilled(series, filled);
    renderer.setSeriesFillPaint(series, Style.colour(colour));
    renderer.setSeriesOutlinePaint(series, Style.colour(colour));
    renderer.setSeriesOutlineStroke(series, stroke);
    renderer.setSeriesPaint(series, Style.colour(colour));
    return series;
  }

  private int add(List<Spot> spots) {
    XYSeries series = new XYSeries(data.getSeriesCount(), false, true);
    spots.forEach(s -> series.add(s.x(), s.y()));
    data.addSeries(series);
    return data.getSeriesCount() - 1;
  }

  private static List<Spot> spots(List<Mark> marks, Mark.Shape shape) {
    return marks.stream().filter(m -> m.shape() == shape).map(m -> new Spot(m.x(), m.y())).toList();
  }

  private static List<Spot> spots(List<Ring> rings, Predicate<Ring> which) {
    return rings.stream().filter(which).map(r -> new Spot(r.x(), r.y())).toList();
  }

  private static Shape circle(double diameter) {
    return new Ellipse2D.Double(-diameter / 2, -diameter / 2, diameter, diameter);
  }

  private static Shape cross(double diameter) {
    double arm = diameter * 0.62;
    Path2D path = new Path2D.Double();
    path.moveTo(-arm, -arm);
    path.lineTo(arm, arm);
    path.moveTo(-arm, arm);
    path.lineTo(arm, -arm);
    return path;
  }
}
