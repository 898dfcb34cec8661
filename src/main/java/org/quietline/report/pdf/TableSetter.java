package org.quietline.report.pdf;

import java.util.ArrayList;
import java.util.List;
import org.quietline.report.Block;
import org.quietline.report.Colour;
import org.quietline.report.pdf.Setter.Look;

/** Sets tables: rows between hairlines, the head repeated on each new sheet. */
final class TableSetter {
  private static final double GUTTER = 10;
  private static final double ABOVE = 4;
  private static final double BELOW = 1;
  private static final double CLOSE = 2;
  private static final double AFTER = 3;

  /** A table without rules of so many rows is kept on one sheet. */
  private static final int TOGETHER = 12;

  private final Setter setter;
  private final double width;

  TableSetter(Setter setter, double width) {
    this.setter = setter;
    this.width = width;
  }

  List<Piece> pieces(Block.Table table) {
    List<Piece> pieces = new ArrayList<>();
    boolean headed = table.columns().stream().anyMatch(c -> !c.head().isEmpty());
    List<String> heads = table.columns().stream().map(Block.Column::head).toList();
    Piece head = row(table, heads, true, Colour.GREY);
    if (headed) {
      pieces.add(head.staying());
    }
    int left = table.rows().size();
    for (Block.Row row : table.rows()) {
      Piece piece = row(table, row.cells(), false, row.colour());
      left--;
      boolean together = !table.ruled() && left > 0 && table.rows().size() <= TOGETHER;
      piece = together ? piece.staying() : piece;
      pieces.add(headed ? piece.under(head) : piece);
    }
    if (pieces.isEmpty()) {
      return pieces;
    }
    Piece first = pieces.get(0);
    pieces.set(0, new Piece(first.items(), first.height(), 4, first.stays(), first.head()));
    Piece end = pieces.get(pieces.size() - 1);
    pieces.set(
        pieces.size() - 1,
        new Piece(end.items(), end.height() + AFTER, end.gap(), end.stays(), end.head()));
    return pieces;
  }

  private Piece row(Block.Table table, List<String> cells, boolean head, Colour colour) {
    List<Item> items = new ArrayList<>();
    double x = 0;
    double height = 0;
    for (int i = 0; i < cells.size(); i++) {
      Block.Column column = table.columns().get(i);
      boolean last = i == cells.size() - 1;
      double full = column.share() * width;
      double room = last ? full : full - GUTTER;
      Look look = look(table, column, head, colour, i);
      double top = table.ruled() ? ABOVE + (Setter.BODY - look.size()) * 0.8 : CLOSE;
      String cell = cells.get(i);
      if (!cell.isBlank()) {
        items.addAll(
            column.right()
                ? setter.rightText(cell, look, x + room, top, room)
                : setter.text(cell, look, x, top, room));
        height = Math.max(height, top + setter.height(cell, look, room));
      }
      x += full;
    }
    if (!table.ruled()) {
      return Piece.of(items, height, 0);
    }
    items.add(Typesetter.hairline(height + BELOW, width));
    return Piece.of(items, height + BELOW, 0);
  }

  private static Look look(
      Block.Table table, Block.Column column, boolean head, Colour colour, int index) {
    if (head) {
      return new Look(Face.REGULAR, Setter.SMALL, Colour.GREY, Role.TABLE_HEAD);
    }
    if (!table.ruled()) {
      Colour words = index == 0 ? colour : Colour.GREY;
      return new Look(Face.of(column.strong()), Setter.SMALL, words, Role.TABLE_CELL);
    }
    if (column.strong()) {
      return new Look(Face.BOLD, Setter.BODY, colour, Role.TABLE_CELL);
    }
    boolean first = index == 0 || column.right();
    return first
        ? new Look(Face.REGULAR, Setter.BODY, Colour.INK, Role.TABLE_CELL)
        : new Look(Face.REGULAR, Setter.SMALL, Colour.GREY, Role.TABLE_CELL);
  }
}
