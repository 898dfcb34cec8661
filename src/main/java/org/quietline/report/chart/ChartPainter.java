package org.quietline.report.chart;

import java.awt.Graphics2D;
import org.quietline.report.Chart;
import org.quietline.report.ControlChart;
import org.quietline.report.CurveChart;
import org.quietline.report.DotChart;
import org.quietline.report.DriftChart;
import org.quietline.report.Miniature;

/** Draws charts. */
public final class ChartPainter {
  private ChartPainter() {}

  /**
   * Draws a chart with its upper left corner at the origin.
   *
   * @param chart the chart as data
   * @param g where to draw, one unit a point
   * @param width in points
   * @param height in points
   */
  public static void draw(Chart chart, Graphics2D g, double width, double height) {
    if (chart instanceof ControlChart control) {
      ControlPicture.draw(control, g, width, height);
    } else if (chart instanceof DriftChart drift) {
      DriftPicture.draw(drift, g, width, height);
    } else if (chart instanceof DotChart dots) {
      DotPicture.draw(dots, g, width, height);
    } else if (chart instanceof CurveChart curve) {
      CurvePicture.draw(curve, g, width, height);
    } else if (chart instanceof Miniature miniature) {
      MiniaturePicture.draw(miniature, g, width, height);
    }
  }
}
