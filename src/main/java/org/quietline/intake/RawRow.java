package org.quietline.intake;

/**
 * A row as it stands in the file, between its first character and the end of its last line. It
 * looks into the characters that are being read, so it holds only until the next row is asked for.
 */
final class RawRow {
  /** How many characters of a row are kept. */
  static final int LENGTH = 4000;

  private final char[] chars;
  private final int from;
  private final int to;

  RawRow(char[] chars, int from, int to) {
    this.chars = chars;
    this.from = from;
    this.to = to;
  }

  /** A row of which the text is known. */
  static RawRow of(String text) {
    return new RawRow(text.toCharArray(), 0, text.length());
  }

  /** The same row, as much of it as is kept, in a text of its own. */
  RawRow kept() {
    return of(text());
  }

  int length() {
    return to - from;
  }

  /** As much of it as is kept. */
  String text() {
    return new String(chars, from, Math.min(to - from, LENGTH));
  }

  /** Its first line, as much of it as is kept. */
  String firstLine() {
    int end = from;
    while (end < to && end - from < LENGTH && !isLineEnd(chars[end])) {
      end++;
    }
    return new String(chars, from, end - from);
  }

  /** How many ends of lines it holds: LF, CR or both together. */
  long lineEnds() {
    long count = 0;
    for (int i = from; i < to; i++) {
      boolean crlf = chars[i] == '\n' && i > from && chars[i - 1] == '\r';
      count += isLineEnd(chars[i]) && !crlf ? 1 : 0;
    }
    return count;
  }

  static boolean isLineEnd(char c) {
    return c == '\n' || c == '\r';
  }
}
