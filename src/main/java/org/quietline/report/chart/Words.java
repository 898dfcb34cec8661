package org.quietline.report.chart;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.quietline.report.Chart.Axis;
import org.quietline.report.Chart.Level;
import org.quietline.report.Chart.Mark;
import org.quietline.report.Chart.Tick;
import org.quietline.report.Chart.Upright;
import org.quietline.report.Colour;
import org.quietline.report.ControlChart.Ring;

/** The words around and in a drawn plot. */
final class Words {
  /** The height of a line of words, in points. */
  static final double LINE = 9.6;

  /** The space between the plot and the words over it. */
  static final double OVER = 5;

  private static final double GAP = 5;
  private static final double RISE = 2.7;
  private static final double TICK = 2.5;

  private final Graphics2D g;
  private final Frame frame;

  Words(Graphics2D g, Frame frame) {
    this.g = g;
    this.frame = frame;
  }

  /** The room that the ticks of an upright axis need. */
  static double leftRoom(Axis axis) {
    double widest =
        axis.ticks().stream()
            .mapToDouble(t -> Faces.width(t.label(), Faces.REGULAR))
            .max()
            .orElse(0);
    return Math.max(30, widest + TICK + GAP);
  }

  /** The room that the names of levels need. */
  static double rightRoom(List<Level> levels) {
    double widest =
        levels.stream().mapToDouble(l -> Faces.width(l.label(), Faces.REGULAR)).max().orElse(0);
    return Math.max(72, widest + GAP + 1);
  }

  void text(String text, double x, double baseline, Colour colour, Font face) {
    g.setFont(face);
    g.setPaint(Style.colour(colour));
    g.drawString(Faces.printable(text), (float) x, (float) baseline);
  }

  void centred(String text, double x, double baseline, Colour colour, Font face) {
    double width = Faces.width(text, face);
    double left = frame.area().getMinX() - 8;
    double right = frame.area().getMaxX() + 8;
    double start = Math.max(left, Math.min(right - width, x - width / 2));
    text(text, start, baseline, colour, face);
  }

  /** Ticks and labels under the plot, and a hairline along its foot. */
  void along() {
    double foot = frame.area().getMaxY();
    stroke(frame.area().getMinX(), foot, frame.area().getMaxX(), foot);
    double free = Double.NEGATIVE_INFINITY;
    for (Tick tick : frame.x().ticks()) {
      double x = frame.px(tick.at());
      stroke(x, foot, x, foot + TICK);
      double half = Faces.width(tick.label(), Faces.REGULAR) / 2;
      if (x - half > free) {
        centred(tick.label(), x, foot + TICK + LINE - 1, Colour.GREY, Faces.REGULAR);
        free = x + half + 4;
      }
    }
  }

  /** Ticks and labels left of the plot. */
  void up() {
    double left = frame.area().getMinX();
    for (Tick tick : frame.y().ticks()) {
      double y = frame.py(tick.at());
      stroke(left - TICK, y, left, y);
      double width = Faces.width(tick.label(), Faces.REGULAR);
      text(tick.label(), left - TICK - 2.5 - width, y + RISE, Colour.GREY, Faces.REGULAR);
    }
  }

  private void stroke(double x1, double y1, double x2, double y2) {
    g.setPaint(Style.colour(Colour.PALE));
    g.setStroke(Style.HAIR);
    g.draw(new Line2D.Double(x1, y1, x2, y2));
  }

  /** Names and values of levels at the right edge, pushed apart where they would touch. */
  void levels(List<Level> levels) {
    List<Level> sorted = new ArrayList<>(levels);
    sorted.sort(Comparator.comparingDouble(Level::at).reversed());
    double[] at = new double[sorted.size()];
    for (int i = 0; i < at.length; i++) {
      at[i] = frame.py(sorted.get(i).at());
    }
    spread(at);
    double right = frame.area().getMaxX() + GAP;
    for (int i = 0; i < at.length; i++) {
      Level level = sorted.get(i);
      Colour colour = level.kind() == Level.Kind.WARNING ? Colour.GREY : Colour.INK;
      text(level.label(), right, at[i] + RISE, colour, Faces.REGULAR);
    }
  }

  /** Moves heights, given from top to bottom, at least one line apart, as little as needed. */
  static void spread(double[] at) {
    for (int round = 0; round < 60; round++) {
      for (int i = 1; i < at.length; i++) {
        double lack = LINE - (at[i] - at[i - 1]);
        if (lack > 1e-6) {
          at[i - 1] -= lack / 2;
          at[i] += lack / 2;
        }
      }
    }
  }

  /** The letters of rings, each where it covers the fewest results and rings. */
  void letters(List<Ring> rings, List<Mark> marks, double radius) {
    List<Rectangle2D> taken = new ArrayList<>();
    rings.forEach(r -> taken.add(around(r.x(), r.y(), radius)));
    marks.forEach(m -> taken.add(around(m.x(), m.y(), 2)));
    for (Ring ring : rings) {
      if (!ring.letter().isEmpty()) {
        double width = Faces.width(ring.letter(), Faces.BOLD);
        Rectangle2D place =
            Places.freest(frame.px(ring.x()), frame.py(ring.y()), radius, width, frame, taken);
        taken.add(place);
        Colour colour = ring.open() ? Colour.ACCENT : Colour.GREY;
        text(ring.letter(), place.getX(), place.getMaxY() - 1, colour, Faces.BOLD);
      }
    }
  }

  private Rectangle2D around(double x, double y, double radius) {
    return new Rectangle2D.Double(
        frame.px(x) - radius, frame.py(y) - radius, 2 * radius, 2 * radius);
  }

  /** Results beyond the axis: a triangle at the edge and the value beside it. */
  void off(List<Mark> marks) {
    for (Mark mark : marks) {
      if (mark.shape() == Mark.Shape.OFF) {
        boolean high = mark.y() > frame.y().upper();
        double edge = high ? frame.area().getMinY() : frame.area().getMaxY();
        double way = high ? 1 : -1;
        double x = frame.px(mark.x());
        Path2D path = new Path2D.Double();
        path.moveTo(x, edge + way);
        path.lineTo(x - 3, edge + way * 6);
        path.lineTo(x + 3, edge + way * 6);
        path.closePath();
        g.setPaint(Style.colour(Colour.INK));
        g.fill(path);
        double width = Faces.width(mark.label(), Faces.REGULAR);
        boolean fits = x + 6 + width < frame.area().getMaxX();
        double left = fits ? x + 6 : x - 6 - width;
        text(mark.label(), left, edge + way * 4 + RISE, Colour.INK, Faces.REGULAR);
      }
    }
  }

  /** Vertical lines, and their words over the plot, placed so that none touch. */
  void uprights(List<Upright> uprights, double width) {
    for (Places.Over over : Places.over(uprights, frame, width)) {
      Upright upright = over.upright();
      double x = frame.px(upright.x());
      double baseline = frame.area().getMinY() - OVER - over.row() * LINE;
      g.setPaint(Style.colour(upright.colour()));
      g.setStroke(upright.full() ? Style.MARK : Style.DOTS);
      g.draw(new Line2D.Double(x, baseline + 2.5, x, frame.area().getMaxY()));
      text(upright.label(), over.left(), baseline, upright.colour(), Faces.REGULAR);
    }
  }
}
