package org.quietline.intake;

import java.util.Arrays;
import java.util.List;

/** One row, cut into cells without blanks at their ends. */
final class Cells implements Piece {
  private final long line;
  private final String[] cells;
  private final boolean odd;
  private final boolean cutOff;
  private final RawRow raw;

  /**
   * Makes a row.
   *
   * @param line the line on which it begins
   * @param cells the cells; the array is handed over
   * @param odd whether it holds a line break, or a sign that no text holds
   * @param cutOff whether the file stops in this row without an end of line
   * @param raw the row as it stands in the file
   */
  Cells(long line, String[] cells, boolean odd, boolean cutOff, RawRow raw) {
    this.line = line;
    this.cells = cells;
    this.odd = odd;
    this.cutOff = cutOff;
    this.raw = raw;
  }

  @Override
  public long line() {
    return line;
  }

  int size() {
    return cells.length;
  }

  String get(int place) {
    return cells[place];
  }

  List<String> list() {
    return List.copyOf(Arrays.asList(cells));
  }

  boolean isOdd() {
    return odd;
  }

  boolean isCutOff() {
    return cutOff;
  }

  /** The row as it stands in the file. Ask before the next row is read. */
  RawRow raw() {
    return raw;
  }

  /** The same row with a raw text of its own, to keep beyond the next row. */
  Cells kept() {
    return new Cells(line, cells, odd, cutOff, raw.kept());
  }
}
