package org.quietline.report.pdf;

import java.util.List;

/**
 * A part of a page that is never broken. Its items are placed from its own upper left corner.
 *
 * @param items what stands in it
 * @param height its height
 * @param gap the space over it, dropped at the top of a sheet
 * @param stays whether it must stand on the same sheet as the piece after it
 * @param head what is repeated over it when it opens a new sheet: a table's head, or nothing
 */
record Piece(List<Item> items, double height, double gap, boolean stays, List<Piece> head) {
  Piece {
    items = List.copyOf(items);
    head = List.copyOf(head);
  }

  static Piece of(List<Item> items, double height, double gap) {
    return new Piece(items, height, gap, false, List.of());
  }

  Piece staying() {
    return new Piece(items, height, gap, true, head);
  }

  Piece under(Piece newHead) {
    return new Piece(items, height, gap, stays, List.of(newHead));
  }
}
