package org.quietline.intake;

/** What the reading of a sheet meets next. */
sealed interface Piece permits Cells, Piece.Damaged {
  /** The line on which it begins. */
  long line();

  /**
   * A line that cannot be cut into fields, nor together with those that follow.
   *
   * @param line the line
   * @param raw the line as it stands in the file, or as much of it as is kept
   * @param sentence what is wrong and what would mend it
   */
  record Damaged(long line, String raw, String sentence) implements Piece {}
}
