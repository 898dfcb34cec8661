package org.quietline.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Cuts a sheet into rows, one at a time (RFC 4180, cut at commas). Lines that are empty or hold
 * only commas are stepped over. Where quotes go wrong, everything from the row in which that began
 * up to the end of the line in which it showed is one damaged stretch.
 */
final class SheetRows {
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180.builder().setIgnoreEmptyLines(false).setIgnoreSurroundingSpaces(true).get();

  private final SheetText text;
  private final LineLog lines;
  private CSVParser parser;
  private Iterator<CSVRecord> records;
  private long linesBefore;
  private boolean ended;

  SheetRows(SheetText text) throws IOException {
    this.text = text;
    this.lines = text.lines();
    this.parser = parserOf(text);
    this.records = parser.iterator();
  }

  private static CSVParser parserOf(SheetText text) throws IOException {
    return CSVParser.builder().setReader(text).setFormat(FORMAT).get();
  }

  /** The next row or damaged stretch; empty at the end. */
  Optional<Piece> next() {
    while (!ended) {
      long line = line() + 1;
      lines.forgetBefore(line);
      try {
        if (!records.hasNext()) {
          ended = true;
        } else {
          List<String> cells = records.next().stream().map(Excerpt::strip).toList();
          if (cells.stream().anyMatch(cell -> !cell.isEmpty())) {
            return Optional.of(row(line, cells));
          }
        }
      } catch (UncheckedIOException e) {
        return Optional.of(
            e.getCause() instanceof CSVException ? badQuote(line) : unreadable(line));
      }
    }
    return Optional.empty();
  }

  /** The line in which the parser stands. */
  private long line() {
    return linesBefore + parser.getCurrentLineNumber();
  }

  private Piece row(long line, List<String> cells) {
    long last = Math.max(line, line());
    return new Piece.Cells(
        line,
        lines.rows(line, last),
        lines.startOf(line),
        lines.startOf(line),
        cells,
        lines.isCutOff(last));
  }

  private Piece unreadable(long line) {
    ended = true;
    return stretch(
        line,
        lines.current(),
        "The file could not be read further than this; see that the drive is sound and save the"
            + " file again.");
  }

  private Piece badQuote(long line) {
    if (text.hasSaidEnd()) {
      ended = true;
      return stretch(
          line,
          lines.current(),
          "A quote is opened here and never closed, so the rest of the file cannot be told apart;"
              + " close it or take it out.");
    }
    long last = line();
    try {
      text.skipRestOfLine();
      parser = parserOf(text);
      records = parser.iterator();
      linesBefore = last;
    } catch (IOException e) {
      return unreadable(line);
    }
    return stretch(
        line,
        last,
        "A quote "
            + (last > line ? "that is opened here ends in line " + last : "ends")
            + " in the middle of a field; write a quote inside a field twice, and close every"
            + " quote at the end of its field.");
  }

  private Piece stretch(long from, long to, String sentence) {
    return new Piece.Damaged(
        from, lines.rows(from, to), lines.startOf(from), lines.startOf(from), sentence);
  }
}
