package org.quietline.intake;

import java.util.List;

/** What the reading of a sheet meets next. */
sealed interface Piece {
  /** The line on which it begins. */
  long line();

  /**
   * One row, cut into cells.
   *
   * @param line the line on which it begins
   * @param lines how many lines it takes that are not empty
   * @param start how that line begins
   * @param raw the row as it stands in the file, or as much of it as is kept
   * @param cells the cells without blanks at their ends
   * @param cutOff whether the file stops in this row without an end of line
   */
  record Cells(long line, long lines, String start, String raw, List<String> cells, boolean cutOff)
      implements Piece {}

  /**
   * A stretch that cannot be cut into rows.
   *
   * @param line the line on which it begins
   * @param lines how many lines it takes that are not empty
   * @param start how that line begins
   * @param raw the row as it stands in the file, or as much of it as is kept
   * @param sentence what is wrong and what would mend it
   */
  record Damaged(long line, long lines, String start, String raw, String sentence)
      implements Piece {}
}
