package org.quietline.report.pdf;

import java.util.ArrayList;
import java.util.List;
import org.quietline.report.Block;
import org.quietline.report.Colour;
import org.quietline.report.pdf.Item.Rule;
import org.quietline.report.pdf.Setter.Look;

/** Sets what stands side by side at the foot of the first page: facts, and room for signatures. */
final class FactsSetter {
  private static final double GUTTER = 20;
  private static final double LINE_GAP = 21;

  private final Setter setter;
  private final double width;

  FactsSetter(Setter setter, double width) {
    this.setter = setter;
    this.width = width;
  }

  Piece facts(Block.Facts facts) {
    List<Item> items = new ArrayList<>();
    items.add(Typesetter.hairline(0, width));
    double x = 0;
    double height = 0;
    for (int i = 0; i < facts.columns().size(); i++) {
      Block.FactColumn column = facts.columns().get(i);
      double full = column.share() * width;
      boolean last = i == facts.columns().size() - 1;
      height = Math.max(height, column(items, column, x, last ? full : full - GUTTER));
      x += full;
    }
    return Piece.of(items, height, 8);
  }

  private double column(List<Item> items, Block.FactColumn column, double x, double room) {
    Look head = new Look(Face.BOLD, Setter.BODY, Colour.INK, Role.HEADING);
    items.addAll(setter.text(column.head(), head, x, 9, room));
    double y = 9 + setter.height(column.head(), head, room) + 2;
    double figures = 0;
    for (Block.Fact fact : column.facts()) {
      figures = Math.max(figures, setter.width(fact.figure(), number(fact.colour())));
    }
    double indent = figures == 0 ? 0 : figures + 6;
    for (Block.Fact fact : column.facts()) {
      Look number = number(fact.colour());
      items.add(setter.rightLine(fact.figure(), number, x + figures, y));
      Colour colour = fact.colour() == Colour.INK ? Colour.GREY : fact.colour();
      Look words = new Look(Face.REGULAR, Setter.SMALL, colour, Role.TEXT);
      double lower = (Setter.BODY - Setter.SMALL) * 0.8;
      items.addAll(setter.text(fact.words(), words, x + indent, y + lower, room - indent));
      double tall = setter.height(fact.words(), words, room - indent) + lower;
      y += Math.max(Setter.leading(Setter.BODY), tall) + 1;
    }
    return y;
  }

  private static Look number(Colour colour) {
    return new Look(Face.BOLD, Setter.BODY, colour, Role.TEXT);
  }

  Piece signatures(Block.Signatures signatures) {
    List<Item> items = new ArrayList<>();
    items.add(Typesetter.hairline(0, width));
    int n = signatures.places().size();
    double room = (width - GUTTER * (n - 1)) / Math.max(1, n);
    double height = 0;
    for (int i = 0; i < n; i++) {
      double x = i * (room + GUTTER);
      height = Math.max(height, place(items, signatures.places().get(i), x, room));
    }
    return Piece.of(items, height, 14);
  }

  private double place(List<Item> items, Block.Place place, double x, double room) {
    Look role = new Look(Face.BOLD, Setter.BODY, Colour.INK, Role.TEXT);
    Look small = new Look(Face.REGULAR, Setter.SMALL, Colour.GREY, Role.TEXT);
    items.addAll(setter.text(place.role(), role, x, 9, room));
    double y = 9 + setter.height(place.role(), role, room) + 1;
    items.addAll(setter.text(place.meaning(), small, x, y, room));
    y += setter.height(place.meaning(), small, room);
    double date = room * 0.66;
    y += LINE_GAP;
    blank(items, "name", x, y, date - 10, small);
    blank(items, "date", x + date, y, room - date, small);
    y += LINE_GAP;
    blank(items, "signature", x, y, room, small);
    return y + 3;
  }

  /** A word and a line to write on. */
  private void blank(List<Item> items, String word, double x, double y, double room, Look small) {
    items.add(setter.line(word, small, x, y - Setter.SMALL));
    double label = setter.width(word, small) + 6;
    items.add(new Rule(x + label, y, room - label, 0.5, Colour.PALE));
  }
}
