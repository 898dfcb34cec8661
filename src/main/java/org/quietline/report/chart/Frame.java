package org.quietline.report.chart;

import java.awt.geom.Rectangle2D;
import org.quietline.report.Chart.Axis;

/**
 * Where the data of a drawn plot stand.
 *
 * @param area the plot's area in points
 * @param x the axis along
 * @param y the axis up
 */
record Frame(Rectangle2D area, Axis x, Axis y) {

  double px(double value) {
    return area.getX() + area.getWidth() * (value - x.lower()) / (x.upper() - x.lower());
  }

  double py(double value) {
    return area.getMaxY() - area.getHeight() * (value - y.lower()) / (y.upper() - y.lower());
  }
}
