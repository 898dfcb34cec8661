package org.quietline.intake;

import java.util.Collection;

/** Text of the user's files as it is kept and shown: short, and without signs that do not print. */
final class Excerpt {
  /** How many characters of a text are kept. */
  static final int LENGTH = 80;

  private Excerpt() {}

  /**
   * The first {@link #LENGTH} characters; what does not print becomes the replacement character.
   */
  static String of(String text) {
    boolean cut = text.length() > LENGTH;
    StringBuilder kept = new StringBuilder(LENGTH);
    int room = cut ? LENGTH - 1 : LENGTH;
    text.codePoints()
        .limit(room)
        .map(c -> c == '\n' || c == '\r' || c == '\t' ? ' ' : c)
        .map(c -> prints(c) ? c : 0xFFFD)
        .forEach(c -> appendWithin(room, kept, c));
    return cut ? kept.append('…').toString() : kept.toString();
  }

  static String quoted(String text) {
    return '"' + of(text) + '"';
  }

  static String list(Collection<String> names) {
    return String.join(", ", names);
  }

  /** Takes off blanks of every kind at both ends, and the signs that print as nothing. */
  static String strip(String text) {
    int from = 0;
    int to = text.length();
    while (from < to && isBlank(text.charAt(from))) {
      from++;
    }
    while (to > from && isBlank(text.charAt(to - 1))) {
      to--;
    }
    return text.substring(from, to);
  }

  /** Whether a sign leaves no mark on paper. */
  static boolean isBlank(char c) {
    return Character.isWhitespace(c) || Character.isSpaceChar(c) || c == '\u200B' || c == '\uFEFF';
  }

  private static void appendWithin(int room, StringBuilder kept, int codePoint) {
    if (kept.length() + Character.charCount(codePoint) <= room) {
      kept.appendCodePoint(codePoint);
    }
  }

  private static boolean prints(int codePoint) {
    int type = Character.getType(codePoint);
    return type != Character.CONTROL
        && type != Character.SURROGATE
        && type != Character.UNASSIGNED
        && type != Character.FORMAT;
  }
}
