package org.quietline.intake;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * The physical lines that went by: how each begins, and whether it holds anything. The reading of a
 * sheet asks it when quotes go wrong and the rows can no longer be told apart. Lines end with LF,
 * CR or both.
 */
final class LineLog {
  private final Deque<Line> lines = new ArrayDeque<>();
  private final StringBuilder start = new StringBuilder();
  private boolean blank = true;
  private boolean afterReturn;
  private boolean open;
  private boolean ended;
  private long number = 1;

  private record Line(long number, String start, boolean blank) {}

  void add(char c) {
    if (c == '\n' && afterReturn) {
      afterReturn = false;
      return;
    }
    afterReturn = c == '\r';
    if (c == '\n' || c == '\r') {
      close();
      return;
    }
    open = true;
    if (start.length() <= Excerpt.LENGTH) {
      start.append(c);
    }
    blank &= c == ',' || Excerpt.isBlank(c);
  }

  /** The text is over; a last line without an end of its own counts as a line. */
  void end() {
    ended = true;
    if (open) {
      lines.add(new Line(number, start.toString(), blank));
    }
  }

  private void close() {
    lines.add(new Line(number++, start.toString(), blank));
    start.setLength(0);
    blank = true;
    open = false;
  }

  /** Forgets the lines before one; they are not asked for again. */
  void forgetBefore(long line) {
    while (!lines.isEmpty() && lines.peekFirst().number() < line) {
      lines.removeFirst();
    }
  }

  /** How a remembered line begins. */
  String startOf(long line) {
    return lines.stream()
        .filter(l -> l.number() == line)
        .findFirst()
        .map(Line::start)
        .orElseGet(start::toString);
  }

  /** How many of the lines from one to another, both included, hold something; at least 1. */
  long rows(long from, long to) {
    return Math.max(
        1, lines.stream().filter(l -> l.number() >= from && l.number() <= to && !l.blank).count());
  }

  /** Whether the last character was not the end of a line. */
  boolean isInside() {
    return open && !ended;
  }

  /** The number of the line that is being written. */
  long current() {
    return number;
  }

  /** Whether a line is the last one and the text stops in it, without an end of line. */
  boolean isCutOff(long line) {
    return ended && open && line == number;
  }
}
