package org.quietline.report.pdf;

import java.util.ArrayList;
import java.util.List;
import org.quietline.report.Block;
import org.quietline.report.Colour;
import org.quietline.report.pdf.Item.Box;
import org.quietline.report.pdf.Item.Picture;
import org.quietline.report.pdf.Setter.Look;

/** Sets the row of one method on the first page: verdict, words, a year in a corner. */
final class MethodRowSetter {
  private static final double VERDICT = 66;
  private static final double PICTURE = 132;
  private static final double PICTURE_HEIGHT = 38;
  private static final double GUTTER = 16;
  private static final double TOP = 8;

  private final Setter setter;
  private final double width;

  MethodRowSetter(Setter setter, double width) {
    this.setter = setter;
    this.width = width;
  }

  Piece piece(Block.MethodRow row) {
    List<Item> items = new ArrayList<>();
    items.add(Typesetter.hairline(0, width));
    Look word = Typesetter.verdict(row.verdict().emphasis(), Setter.TITLE);
    Look name = new Look(Face.BOLD, Setter.LARGE, Colour.INK, Role.HEADING);
    double base = TOP + Math.max(word.size(), name.size()) * 0.8;
    items.add(setter.line(row.verdict().word(), word, 0, base - word.size() * 0.8));
    double room = width - VERDICT - PICTURE - GUTTER;
    double y = base - name.size() * 0.8;
    items.addAll(setter.text(row.name(), name, VERDICT, y, room));
    y += setter.height(row.name(), name, room) + 1;
    Look reason = new Look(Face.REGULAR, Setter.BODY, Colour.INK, Role.TEXT);
    items.addAll(setter.text(row.reason(), reason, VERDICT, y, room));
    y += setter.height(row.reason(), reason, room) + 3;
    for (Block.Paragraph line : row.calibration()) {
      Look look =
          new Look(
              Face.of(line.strong() || line.colour() == Colour.ACCENT),
              Setter.points(line.size()),
              line.colour(),
              Role.TEXT);
      items.addAll(setter.text(line.text(), look, VERDICT, y, room));
      y += setter.height(line.text(), look, room) + 0.5;
    }
    double end = Math.max(y, corner(items, row, base - name.size() * 0.8));
    end = steps(items, row, end + 3);
    return Piece.of(items, end + 2, 6);
  }

  private double corner(List<Item> items, Block.MethodRow row, double top) {
    double left = width - PICTURE;
    double y = top;
    if (row.picture().isPresent()) {
      items.add(
          new Picture(
              new Box(left, y, PICTURE, PICTURE_HEIGHT),
              row.picture().get(),
              "A year of control results in small: " + row.pictureWords()));
      y += PICTURE_HEIGHT + 3;
    }
    Look small = new Look(Face.REGULAR, Setter.SMALL, Colour.GREY, Role.CAPTION);
    items.addAll(setter.text(row.pictureWords(), small, left, y, PICTURE));
    return y + setter.height(row.pictureWords(), small, PICTURE);
  }

  private double steps(List<Item> items, Block.MethodRow row, double top) {
    double y = top;
    for (Block.Step step : row.steps()) {
      Colour colour = step.pressing() ? Colour.ACCENT : Colour.INK;
      Look by = new Look(Face.of(step.pressing()), Setter.BODY, colour, Role.TEXT);
      Look what = new Look(Face.REGULAR, Setter.BODY, Colour.INK, Role.TEXT);
      double wide = Math.min(setter.width(step.by(), by), width / 3);
      String shown = setter.shortened(step.by(), by, width / 3);
      double room = width - VERDICT - wide - GUTTER;
      items.addAll(setter.text(step.what(), what, VERDICT, y, room));
      items.add(setter.rightLine(shown, by, width, y));
      y += setter.height(step.what(), what, room) + 2;
    }
    return y;
  }
}
