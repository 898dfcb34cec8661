package org.quietline.intake;

import java.io.IOException;

/**
 * The characters of a sheet from the beginning of one row on. They stay until the row is done with,
 * so that a row that turns out to be none can be read again from its second line; they are held up
 * to a bound only, so that a file without ends of lines cannot fill the memory.
 */
final class RowWindow {
  /** A row of more characters than this is a damaged stretch. */
  static final int LONGEST_ROW = 1_000_000;

  private static final int CHUNK = 1 << 16;

  private final SheetText text;
  private char[] chars = new char[2 * CHUNK];
  private int start;
  private int limit;
  private long shifts;

  RowWindow(SheetText text) {
    this.text = text;
  }

  /** The array that holds the characters; another one after {@link #more()}. */
  char[] chars() {
    return chars;
  }

  /** Where the row begins. */
  int start() {
    return start;
  }

  /** Where the characters end that are known so far. */
  int limit() {
    return limit;
  }

  /** Rises whenever {@link #more()} has moved the characters to other places. */
  long shifts() {
    return shifts;
  }

  /** Lets a row begin at a place. */
  void startAt(int place) {
    start = place;
  }

  /** Whether the row already holds as much as a row may, and more. */
  boolean isTooLong() {
    return limit - start > LONGEST_ROW;
  }

  /**
   * Reads on. The row then begins at another place, if {@link #shifts()} has risen.
   *
   * @return false at the end of the text
   */
  boolean more() throws IOException {
    if (limit == chars.length) {
      makeRoom();
    }
    int n = text.read(chars, limit, chars.length - limit);
    limit += Math.max(0, n);
    return n > 0;
  }

  private void makeRoom() {
    int kept = limit - start;
    char[] into = kept > chars.length / 2 ? new char[2 * chars.length] : chars;
    System.arraycopy(chars, start, into, 0, kept);
    chars = into;
    start = 0;
    limit = kept;
    shifts++;
  }
}
