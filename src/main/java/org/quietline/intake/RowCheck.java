package org.quietline.intake;

import java.util.Set;

/** What must hold of a row before its fields are looked at one by one. */
final class RowCheck {
  /** The field of an entry that is about a row as a whole. */
  static final String WHOLE_ROW = "row";

  private static final int LONGEST_CELL = 4000;

  /** The columns in which a person may write as long as they like. */
  private static final Set<String> FREE_TEXT = Set.of("remark", "cause", "action");

  private final Header header;
  private final String encoding;

  /** Makes a check of the rows under a header, in a file of an encoding. */
  RowCheck(Header header, String encoding) {
    this.header = header;
    this.encoding = encoding;
  }

  void check(Cells row) throws Unusable {
    checkShape(row);
    if (row.isOdd() || row.raw().length() > LONGEST_CELL) {
      for (int i = 0; i < header.size(); i++) {
        String field = header.fieldAt(i);
        checkCell(field.isEmpty() ? "column " + (i + 1) : field, row.get(i));
      }
    }
  }

  private void checkShape(Cells row) throws Unusable {
    if (header.isRepeatedBy(row)) {
      throw whole(row, "This is the header once more (two files joined?); take the line out.");
    }
    int cells = row.size();
    if (cells == header.size()) {
      return;
    }
    if (row.raw().text().indexOf('\0') >= 0) {
      throw whole(
          row,
          "The row holds NUL signs, as a file does whose writing was broken off; save the file"
              + " again.");
    }
    String counts =
        "The row has "
            + (cells == 1 ? "1 field" : cells + " fields")
            + " where "
            + (header.form().header() ? "the header" : "the first row")
            + " has "
            + header.size();
    if (cells < header.size()) {
      throw whole(
          row,
          counts
              + (row.isCutOff()
                  ? " (the file stops in this row; was the drive pulled out early?)"
                  : "")
              + "; write every field, empty ones too.");
    }
    throw whole(
        row,
        counts
            + (header.form().delimiter() == ','
                ? " (a decimal comma, or a comma in a remark?)"
                : " (the sign between fields inside a remark?)")
            + "; put such a field in quotes.");
  }

  private void checkCell(String field, String cell) throws Unusable {
    if (cell.indexOf(SheetText.UNREADABLE) >= 0 || cell.indexOf('\uFFFE') >= 0) {
      throw new Unusable(field, cell, Excerpt.quoted(cell) + notOf(encoding, header.form()));
    }
    if (cell.indexOf('\0') >= 0) {
      throw new Unusable(
          field,
          cell,
          Excerpt.quoted(cell)
              + " holds a NUL sign, as a damaged file does; write the field anew.");
    }
    if (cell.length() > LONGEST_CELL) {
      throw new Unusable(
          field,
          cell,
          "The field has "
              + cell.length()
              + " signs, more than "
              + LONGEST_CELL
              + "; is a quote missing? Shorten it.");
    }
    if (cell.indexOf('\n') >= 0 || cell.indexOf('\r') >= 0) {
      checkLines(field, cell);
    }
  }

  /** The end of a sentence about text that could not be decoded. */
  static String notOf(String encoding, SheetForm form) {
    return " is not "
        + encoding
        + "; save the file as "
        + (form.isPlain()
            ? "UTF-8."
            : encoding + ", or correct the encoding in " + form.place() + ".");
  }

  /** A quote left open in one row and closed in a later one swallows the rows between. */
  private void checkLines(String field, String cell) throws Unusable {
    if (!FREE_TEXT.contains(field)) {
      throw new Unusable(
          field,
          cell,
          Excerpt.quoted(cell)
              + " runs over a line break, which only a remark may; close the quote in its line.");
    }
    int likeRow = Math.max(2, header.size() / 2);
    if (cell.lines().skip(1).anyMatch(line -> delimiters(line) >= likeRow)) {
      throw new Unusable(
          field,
          cell,
          "A quoted field runs on over a line that looks like a row of its own; close the quote"
              + " in the row it was opened in.");
    }
  }

  private long delimiters(String line) {
    return line.chars().filter(c -> c == header.form().delimiter()).count();
  }

  private static Unusable whole(Cells row, String sentence) {
    return new Unusable(WHOLE_ROW, row.raw().firstLine(), sentence);
  }
}
