package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.List;

/**
 * One line of the text, before it is cut.
 *
 * @param number counted from 1
 * @param text without its end
 */
record Line(int number, String text) {
  /** The lines of a text, which end with LF, CR or both. */
  static List<Line> of(String text) {
    List<Line> lines = new ArrayList<>();
    text.lines().forEach(line -> lines.add(new Line(lines.size() + 1, line)));
    return lines;
  }

  /** How the lines end, in words. */
  static String ends(String text) {
    int both = 0;
    int feeds = 0;
    int returns = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '\r' && i + 1 < text.length() && text.charAt(i + 1) == '\n') {
        both++;
        i++;
      } else {
        feeds += c == '\n' ? 1 : 0;
        returns += c == '\r' ? 1 : 0;
      }
    }
    List<String> kinds = new ArrayList<>();
    if (both > 0) {
      kinds.add("CR LF (" + both + ")");
    }
    if (feeds > 0) {
      kinds.add("LF (" + feeds + ")");
    }
    if (returns > 0) {
      kinds.add("CR (" + returns + ")");
    }
    return kinds.isEmpty() ? "none" : String.join(", ", kinds);
  }

  /** The cells between a delimiter, quotes taken off, without blanks at their ends. */
  List<String> cut(char delimiter) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (quoted) {
        if (c == '"' && i + 1 < text.length() && text.charAt(i + 1) == '"') {
          cell.append('"');
          i++;
        } else if (c == '"') {
          quoted = false;
        } else {
          cell.append(c);
        }
      } else if (c == '"' && cell.toString().isBlank()) {
        quoted = true;
        cell.setLength(0);
      } else if (c == delimiter) {
        cells.add(stripped(cell.toString()));
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(stripped(cell.toString()));
    return cells;
  }

  static String stripped(String text) {
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

  private static boolean isBlank(char c) {
    return Character.isWhitespace(c) || Character.isSpaceChar(c) || c == '\uFEFF';
  }
}
