package org.quietline.intake;

import java.io.IOException;
import org.jspecify.annotations.Nullable;

/**
 * Cuts a sheet into rows, one at a time (RFC 4180, with a delimiter of choice and with blanks
 * around quoted fields allowed). Lines that are empty or hold only delimiters are stepped over.
 * Where a quote goes wrong, the line in which it was opened is a damaged one, and reading goes on
 * with the next line.
 */
final class SheetRows {
  private static final String CLOSE_QUOTES =
      " in the middle of a field; write a quote inside a field twice, and close every quote at the"
          + " end of its field.";

  private final RowWindow window;
  private final FieldCutter cutter;
  private long line = 1;
  private int startOfRow;
  private long lineOfRow;
  private boolean again;
  private boolean afterReturn;
  private boolean ended;

  SheetRows(SheetText text, char delimiter) {
    this.window = new RowWindow(text);
    this.cutter = new FieldCutter(window, delimiter);
  }

  /** Steps over so many lines, whatever they hold. */
  void passLines(int lines) throws IOException {
    for (int i = 0; i < lines && !ended; i++) {
      passLine();
    }
  }

  /** The next row or damaged line; null at the end. */
  @Nullable Piece next() {
    try {
      if (again) {
        goBack();
      }
      while (!ended) {
        stepOverLineFeed();
        FieldCutter.Outcome outcome = cutter.cut();
        if (outcome != FieldCutter.Outcome.CUT) {
          return damaged(outcome);
        }
        Cells cells = row();
        if (!cutter.isBlank()) {
          return cells;
        }
      }
      return null;
    } catch (IOException e) {
      ended = true;
      String raw = new RawRow(window.chars(), window.start(), window.limit()).firstLine();
      return new Piece.Damaged(
          line,
          raw,
          "The file could not be read further than this; see that the drive is sound and save"
              + " the file again.");
    }
  }

  private Cells row() {
    RawRow raw = new RawRow(window.chars(), window.start(), cutter.end());
    Cells cells = cutter.cells(line, raw);
    startOfRow = window.start();
    lineOfRow = line;
    line += cutter.isOdd() ? raw.lineEnds() : 0;
    stepOverLineEnd(cutter.end());
    return cells;
  }

  /**
   * Lets the next row be the one that begins in the second line of the row just read: its quotes
   * hold together what was never one row.
   */
  void readAgainFromSecondLine() {
    again = true;
    cutter.wasInVain(cutter.passed());
  }

  private void goBack() throws IOException {
    again = false;
    ended = false;
    afterReturn = false;
    window.startAt(startOfRow);
    line = lineOfRow;
    passLine();
  }

  private Piece damaged(FieldCutter.Outcome outcome) throws IOException {
    long at = line;
    cutter.wasInVain(cutter.passed());
    String sentence =
        switch (outcome) {
          case QUOTE_ENDS_EARLY -> quoteEndsEarly();
          case QUOTE_NEVER_ENDS ->
              "A quote is opened here and never closed; close it or take it out.";
          case QUOTE_TOO_LONG ->
              "A quote is opened here and not closed in the lines that follow; close it or take it"
                  + " out.";
          case TOO_MANY_FIELDS ->
              "The line has more than 20,000 fields, as no row has and a damaged"
                  + " file may; save the file again.";
          default ->
              "The line is longer than 1,000,000 characters, as no row is and a damaged file"
                  + " may be; save the file again.";
        };
    return new Piece.Damaged(at, passLine(), sentence);
  }

  private String quoteEndsEarly() {
    long last = line + new RawRow(window.chars(), window.start(), cutter.end()).lineEnds();
    return "A quote "
        + (last > line ? "that is opened here ends in line " + last : "ends")
        + CLOSE_QUOTES;
  }

  /** Steps over one line and returns as much of it as is kept. */
  private String passLine() throws IOException {
    stepOverLineFeed();
    StringBuilder raw = new StringBuilder();
    boolean inside = true;
    while (inside) {
      int at = window.start();
      while (at < window.limit() && !RawRow.isLineEnd(window.chars()[at])) {
        at++;
      }
      int kept = Math.min(at - window.start(), RawRow.LENGTH - raw.length());
      raw.append(window.chars(), window.start(), kept);
      boolean found = at < window.limit();
      window.startAt(at);
      inside = !found && window.more();
    }
    stepOverLineEnd(window.start());
    return raw.toString();
  }

  /** A line feed behind a return is stepped over only when the next line is asked for. */
  private void stepOverLineEnd(int end) {
    window.startAt(end);
    if (end == window.limit()) {
      ended = true;
      return;
    }
    afterReturn = window.chars()[end] == '\r';
    window.startAt(end + 1);
    line++;
  }

  private void stepOverLineFeed() throws IOException {
    boolean known = window.start() < window.limit();
    if (afterReturn && (known || window.more()) && window.chars()[window.start()] == '\n') {
      window.startAt(window.start() + 1);
    }
    afterReturn = false;
  }
}
