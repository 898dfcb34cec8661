package org.quietline.report.pdf;

import org.quietline.report.Chart;
import org.quietline.report.Colour;

/** Something placed on a sheet, in points from the upper left corner. */
sealed interface Item {

  /** The area it covers. */
  Box box();

  /** What it is in the text. */
  Role role();

  /** The same item elsewhere. */
  Item moved(double dx, double dy);

  /** An area. */
  record Box(double x, double y, double width, double height) {
    double right() {
      return x + width;
    }

    double bottom() {
      return y + height;
    }

    boolean overlaps(Box other) {
      double touch = 0.01;
      return x + touch < other.right()
          && other.x + touch < right()
          && y + touch < other.bottom()
          && other.y + touch < bottom();
    }
  }

  /** A line of text. Its box runs from the top of a capital to the foot of a descender. */
  record Run(
      double x,
      double baseline,
      double width,
      String text,
      Face face,
      double size,
      Colour colour,
      Role role)
      implements Item {
    @Override
    public Box box() {
      return new Box(x, baseline - 0.74 * size, width, 0.95 * size);
    }

    @Override
    public Run moved(double dx, double dy) {
      return new Run(x + dx, baseline + dy, width, text, face, size, colour, role);
    }
  }

  /** A level rule. */
  record Rule(double x, double y, double width, double weight, Colour colour) implements Item {
    @Override
    public Box box() {
      return new Box(x, y - weight / 2, width, weight);
    }

    @Override
    public Role role() {
      return Role.ARTIFACT;
    }

    @Override
    public Rule moved(double dx, double dy) {
      return new Rule(x + dx, y + dy, width, weight, colour);
    }
  }

  /** A box to tick. */
  record Tick(double x, double y, double size, Colour colour) implements Item {
    @Override
    public Box box() {
      return new Box(x, y, size, size);
    }

    @Override
    public Role role() {
      return Role.ARTIFACT;
    }

    @Override
    public Tick moved(double dx, double dy) {
      return new Tick(x + dx, y + dy, size, colour);
    }
  }

  /** A picture. */
  record Picture(Box box, Chart chart, String description) implements Item {
    @Override
    public Role role() {
      return Role.FIGURE;
    }

    @Override
    public Picture moved(double dx, double dy) {
      Box to = new Box(box.x() + dx, box.y() + dy, box.width(), box.height());
      return new Picture(to, chart, description);
    }
  }
}
