package org.quietline.intake;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.quietline.bench.Accounting.InConflict;
import org.quietline.bench.Origin;
import org.quietline.intake.Gathered.Outcome;

/** One sheet, row by row: each row is taken in, met before, in conflict, or set aside. */
final class OneSheet<T> {
  private final String file;
  private final SheetForm form;
  private final SheetText text;
  private final SheetRows rows;
  private final Gathered<T> into;
  private final Tally tally;

  OneSheet(String file, SheetForm form, SheetText text, Gathered<T> into, Tally tally) {
    this.file = file;
    this.form = form;
    this.text = text;
    this.rows = new SheetRows(text, form.delimiter());
    this.into = into;
    this.tally = tally;
  }

  /**
   * Reads the sheet to its end.
   *
   * @param against why the file cannot be read, if that is known beforehand
   * @return true when its header could be used
   */
  boolean read(Optional<Unusable> against) throws IOException {
    rows.passLines(form.skipLines());
    Piece first = rows.next();
    if (first == null) {
      tally.remark(
          file,
          1,
          "file",
          "",
          form.skipLines() == 0
              ? "The file is empty; nothing was read."
              : "No line is left behind those that skip-lines steps over in "
                  + form.place()
                  + "; nothing was read.");
      return false;
    }
    Header header;
    try {
      if (against.isPresent()) {
        throw against.get();
      }
      header = header(first);
      header
          .unread()
          .forEach((column, why) -> tally.remark(file, first.line(), nameOf(column), column, why));
    } catch (Unusable e) {
      tally.setFileAside(file, first.line(), e, countRows());
      return false;
    }
    rowsUnder(header, first);
    return true;
  }

  private Header header(Piece first) throws Unusable {
    Optional<Charset> mark = text.mark();
    if (mark.isPresent() && form.encoding().isPresent() && !agrees(mark.get())) {
      throw new Unusable(
          "encoding",
          form.encoding().get().name(),
          "The file begins with the mark of "
              + text.encoding()
              + ", but "
              + form.place()
              + " says "
              + form.encoding().get().name()
              + "; correct the encoding there.");
    }
    if (first instanceof Piece.Damaged damaged) {
      throw new Unusable(Header.FIELD, damaged.raw(), damaged.sentence());
    }
    Cells cells = (Cells) first;
    List<String> names = cells.list();
    Layout layout = form.rowPerReading() ? into.kind().layoutOfReadings() : into.kind().layout();
    if (!form.header()) {
      return Header.ofNumbers(cells.size(), layout, form);
    }
    if (names.stream().anyMatch(c -> c.indexOf(SheetText.UNREADABLE) >= 0)) {
      throw new Unusable(
          Header.FIELD,
          cells.raw().firstLine(),
          "The header" + RowCheck.notOf(text.encoding(), form));
    }
    return Header.of(names, layout, form);
  }

  private boolean agrees(Charset mark) {
    Charset named = form.encoding().orElse(mark);
    return named.equals(mark)
        || (named.equals(StandardCharsets.UTF_16BE) && mark.equals(StandardCharsets.UTF_16LE));
  }

  private void rowsUnder(Header header, Piece first) {
    RowCheck check = new RowCheck(header, text.encoding());
    LongForm<T> longForm = new LongForm<>(this, header);
    Piece next = form.header() ? rows.next() : first;
    while (next != null) {
      if (next instanceof Piece.Damaged damaged) {
        Unusable why = new Unusable(RowCheck.WHOLE_ROW, damaged.raw(), damaged.sentence());
        tally.setAside(file, damaged.line(), why, 1, damaged.raw());
      } else if (next instanceof Cells cells && passes(check, header, cells)) {
        if (form.rowPerReading()) {
          longForm.add(cells);
        } else {
          take(new Row(file, header, cells), 1, cells.raw());
        }
      }
      next = rows.next();
    }
    longForm.end();
  }

  private boolean passes(RowCheck check, Header header, Cells cells) {
    try {
      check.check(cells);
      return true;
    } catch (Unusable e) {
      RawRow raw = cells.raw();
      if (raw.lineEnds() > 0) {
        tally.setAside(file, cells.line(), e, 1, raw.firstLine());
        rows.readAgainFromSecondLine();
      } else if (e.field().equals(RowCheck.WHOLE_ROW)) {
        tally.setAside(file, cells.line(), e, 1, raw.text());
      } else {
        setAside(new Row(file, header, cells), e, 1, raw);
      }
      return false;
    }
  }

  /** Makes a record of a row, or of the rows of one result, and counts them. */
  void take(Row row, long count, RawRow raw) {
    try {
      T made = into.kind().make(row);
      count(row, made, into.add(made), count, raw);
    } catch (Unusable e) {
      setAside(row, e, count, raw);
    }
  }

  void setAside(Row row, Unusable why, long count, RawRow raw) {
    into.kind().refused(row, why.sentence());
    tally.setAside(file, row.cells().line(), why, count, raw.text());
  }

  /** Counts a row that says once more what one above it says. */
  void meetAgain(Cells copy, Cells first) {
    tally.meetAgain(new Origin(file, copy.line()), new Origin(file, first.line()), 1);
  }

  String file() {
    return file;
  }

  private void count(Row row, T made, Outcome<T> outcome, long count, RawRow raw) {
    if (outcome instanceof Outcome.Copy<T> copy) {
      tally.meetAgain(row.origin(), into.kind().originOf(copy.first()), count);
    } else if (outcome instanceof Outcome.Against<T> against) {
      tally.conflict(
          new InConflict(
              row.origin(),
              into.kind().originOf(against.first()),
              against.part(),
              Excerpt.of(against.firstText()),
              Excerpt.of(against.text()),
              into.kind().conflictId(against.first()),
              count,
              raw.text()));
    } else {
      into.kind().taken(made);
      tally.takeIn(count);
    }
  }

  /** Counts what is left, the first row with it where that is no header. */
  private long countRows() {
    long count = form.header() ? 0 : 1;
    while (rows.next() != null) {
      count++;
    }
    return count;
  }

  private static String nameOf(String column) {
    return column.isEmpty() ? Header.FIELD : column;
  }
}
