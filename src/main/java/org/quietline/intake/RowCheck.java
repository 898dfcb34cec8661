package org.quietline.intake;

import java.util.Set;

/** What must hold of a row before its columns are looked at one by one. */
final class RowCheck {
  /** The field of an entry that is about a row as a whole. */
  static final String WHOLE_ROW = "row";

  private static final int LONGEST_CELL = 4000;

  /** The columns in which a person may write as long as they like. */
  private static final Set<String> FREE_TEXT = Set.of("remark", "cause", "action");

  private RowCheck() {}

  static void check(Header header, Piece.Cells row) throws Unusable {
    checkShape(header, row);
    for (int i = 0; i < header.size(); i++) {
      checkCell(header, i, row.cells().get(i));
    }
  }

  private static void checkShape(Header header, Piece.Cells row) throws Unusable {
    if (header.isRepeatedBy(row.cells())) {
      throw whole(row, "This is the header once more (two files joined?); take the line out.");
    }
    int cells = row.cells().size();
    if (cells == header.size()) {
      return;
    }
    String counts = "The row has " + cells + " fields where the header has " + header.size();
    if (cells < header.size()) {
      throw whole(
          row,
          counts
              + (row.cutOff()
                  ? " (the file stops in this row; was the drive pulled out early?)"
                  : "")
              + "; write every field, empty ones too.");
    }
    throw whole(
        row, counts + " (a decimal comma, or a comma in a remark?); put such a field in quotes.");
  }

  private static void checkCell(Header header, int place, String cell) throws Unusable {
    String column = header.nameAt(place);
    if (cell.indexOf(SheetText.UNREADABLE) >= 0) {
      throw new Unusable(
          column, cell, Excerpt.quoted(cell) + " is not UTF-8; save the file as UTF-8.");
    }
    if (cell.indexOf('\0') >= 0) {
      throw new Unusable(
          column,
          cell,
          Excerpt.quoted(cell)
              + " holds a NUL sign, as a damaged file does; write the field anew.");
    }
    if (cell.length() > LONGEST_CELL) {
      throw new Unusable(
          column,
          cell,
          "The field has "
              + cell.length()
              + " signs, more than "
              + LONGEST_CELL
              + "; is a quote missing? Shorten it.");
    }
    if (cell.indexOf('\n') >= 0 || cell.indexOf('\r') >= 0) {
      checkLines(header, column, cell);
    }
  }

  /** A quote left open in one row and closed in a later one swallows the rows between. */
  private static void checkLines(Header header, String column, String cell) throws Unusable {
    if (!FREE_TEXT.contains(column)) {
      throw new Unusable(
          column,
          cell,
          Excerpt.quoted(cell)
              + " runs over a line break, which only a remark may; close the quote in its line.");
    }
    int likeRow = Math.max(2, header.size() / 2);
    if (cell.lines().skip(1).anyMatch(line -> commas(line) >= likeRow)) {
      throw new Unusable(
          column,
          cell,
          "A quoted field runs on over a line that looks like a row of its own; close the quote"
              + " in the row it was opened in.");
    }
  }

  private static long commas(String line) {
    return line.chars().filter(c -> c == ',').count();
  }

  private static Unusable whole(Piece.Cells row, String sentence) {
    return new Unusable(WHOLE_ROW, row.start(), sentence);
  }
}
