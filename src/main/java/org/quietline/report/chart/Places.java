package org.quietline.report.chart;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.quietline.report.Chart.Upright;

/** Free places for words in and over a plot. */
final class Places {
  private static final double HEIGHT = 7.2;
  private static final double AIR = 2;

  private Places() {}

  /** The box beside a ring that covers the least of what is taken; above wins a tie. */
  static Rectangle2D freest(
      double x, double y, double radius, double width, Frame frame, List<Rectangle2D> taken) {
    double[][] ways = {{0, -1}, {-1, -1}, {1, -1}, {-1, 0}, {1, 0}, {0, 1}, {-1, 1}, {1, 1}};
    Rectangle2D best = beside(x, y, radius, width, ways[0]);
    double least = Double.POSITIVE_INFINITY;
    for (double[] way : ways) {
      Rectangle2D box = beside(x, y, radius, width, way);
      double covered = frame.area().contains(box) ? 0 : 100;
      for (Rectangle2D other : taken) {
        Rectangle2D both = box.createIntersection(other);
        covered += both.isEmpty() ? 0 : both.getWidth() * both.getHeight();
      }
      if (covered < least) {
        least = covered;
        best = box;
      }
    }
    return best;
  }

  private static Rectangle2D beside(double x, double y, double radius, double width, double[] way) {
    double reach = way[0] != 0 && way[1] != 0 ? radius * 0.75 : radius + AIR;
    double left = x - width / 2 + way[0] * (reach + width / 2);
    double top = y - HEIGHT / 2 + way[1] * (reach + HEIGHT / 2);
    return new Rectangle2D.Double(left, top, width, HEIGHT);
  }

  /**
   * Words over a vertical line.
   *
   * @param upright the line
   * @param row the row over the plot, 0 being the lowest
   * @param left where the words start
   */
  record Over(Upright upright, int row, double left) {
    double right() {
      return left + Faces.width(upright.label(), Faces.REGULAR);
    }
  }

  /**
   * Places for words over vertical lines: over their lines in one row where they fit, else the
   * first one ends at its line, the last one starts at its line, and those between stand higher.
   */
  static List<Over> over(List<Upright> uprights, Frame frame, double width) {
    List<Upright> sorted = new ArrayList<>(uprights);
    sorted.sort(Comparator.comparingDouble(Upright::x));
    List<Over> centred = sorted.stream().map(u -> at(u, 0, 0.5, frame, width)).toList();
    if (apart(centred)) {
      return centred;
    }
    List<Over> places = new ArrayList<>();
    for (int i = 0; i < sorted.size(); i++) {
      if (i == 0) {
        places.add(at(sorted.get(i), 0, 1, frame, width));
      } else if (i == sorted.size() - 1) {
        places.add(at(sorted.get(i), 0, 0, frame, width));
      } else {
        places.add(at(sorted.get(i), i, 0.5, frame, width));
      }
    }
    return places;
  }

  /** How many rows those words take, at least one. */
  static int rows(List<Upright> uprights, Frame frame, double width) {
    return over(uprights, frame, width).stream().mapToInt(o -> o.row() + 1).max().orElse(1);
  }

  private static Over at(Upright upright, int row, double share, Frame frame, double width) {
    double wide = Faces.width(upright.label(), Faces.REGULAR);
    double left = frame.px(upright.x()) - share * wide + (share == 0.5 ? 0 : (0.5 - share) * 6);
    return new Over(upright, row, Math.max(0, Math.min(width - wide, left)));
  }

  private static boolean apart(List<Over> places) {
    for (int i = 1; i < places.size(); i++) {
      if (places.get(i - 1).right() + 8 > places.get(i).left()) {
        return false;
      }
    }
    return true;
  }
}
