package org.quietline.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.util.Optional;
import java.util.function.LongConsumer;
import org.quietline.bench.Accounting.InConflict;
import org.quietline.intake.Gathered.Outcome;

/** Reads sheets row by row: each row is taken in, met before, or set aside. */
final class SheetReading {
  private final Tally tally;
  private final OwnSheets ownSheets;
  private final LongConsumer progress;

  SheetReading(Tally tally, OwnSheets ownSheets, LongConsumer progress) {
    this.tally = tally;
    this.ownSheets = ownSheets;
    this.progress = progress;
  }

  /**
   * Reads one sheet to its end.
   *
   * @return true when its header could be used
   */
  <T> boolean read(SheetFile file, Gathered<T> into) {
    if (!Files.isRegularFile(file.path())) {
      tally.remark(file.name(), 1, "file", file.name(), "It is not a file; nothing was read.");
      return false;
    }
    try (InputStream stream = Files.newInputStream(file.path());
        SheetText text = new SheetText(stream, progress)) {
      boolean usable = new OneSheet<>(file.name(), text, into).read();
      tally.endFile(file.name(), text.sha256());
      return usable;
    } catch (IOException e) {
      tally.remark(
          file.name(),
          1,
          "file",
          file.name(),
          "The file could not be opened; see that you may read it. Nothing was read.");
      return false;
    }
  }

  private final class OneSheet<T> {
    private final String file;
    private final SheetText text;
    private final SheetRows rows;
    private final Gathered<T> into;

    OneSheet(String file, SheetText text, Gathered<T> into) throws IOException {
      this.file = file;
      this.text = text;
      this.rows = new SheetRows(text);
      this.into = into;
    }

    boolean read() {
      Optional<Piece> first = rows.next();
      if (first.isEmpty()) {
        tally.remark(file, 1, "file", "", "The file is empty; nothing was read.");
        return false;
      }
      try {
        Header header = header(first.get());
        header
            .unread()
            .forEach(
                (column, why) ->
                    tally.remark(file, first.get().line(), nameOf(column), column, why));
        rowsUnder(header);
        return true;
      } catch (Unusable e) {
        tally.setFileAside(file, first.get().line(), e, countRows(first.get()));
        return false;
      }
    }

    private Header header(Piece first) throws Unusable {
      Optional<Unusable> own = ownSheets.against(file);
      if (own.isPresent()) {
        throw own.get();
      }
      if (text.isUtf16()) {
        throw new Unusable(
            Header.FIELD, "", "The file is written in UTF-16; save it as CSV in UTF-8.");
      }
      if (first instanceof Piece.Damaged damaged) {
        throw new Unusable(Header.FIELD, damaged.start(), damaged.sentence());
      }
      Piece.Cells cells = (Piece.Cells) first;
      if (cells.cells().stream().anyMatch(c -> c.indexOf(SheetText.UNREADABLE) >= 0)) {
        throw new Unusable(
            Header.FIELD, cells.start(), "The header is not UTF-8; save the file as UTF-8.");
      }
      return Header.of(cells.cells(), into.kind().layout());
    }

    private void rowsUnder(Header header) {
      for (Optional<Piece> next = rows.next(); next.isPresent(); next = rows.next()) {
        if (next.get() instanceof Piece.Damaged damaged) {
          Unusable why = new Unusable(RowCheck.WHOLE_ROW, damaged.start(), damaged.sentence());
          tally.setAside(file, damaged.line(), why, damaged.lines(), damaged.raw());
        } else if (next.get() instanceof Piece.Cells cells) {
          oneRow(header, cells);
        }
      }
    }

    private void oneRow(Header header, Piece.Cells cells) {
      try {
        RowCheck.check(header, cells);
      } catch (Unusable e) {
        tally.setAside(file, cells.line(), e, cells.lines(), cells.raw());
        return;
      }
      Row row = new Row(file, header, cells);
      try {
        count(row, into.add(into.kind().make(row)));
      } catch (Unusable e) {
        into.kind().refused(row, e.sentence());
        tally.setAside(file, cells.line(), e, 1, cells.raw());
      }
    }

    private void count(Row row, Outcome<T> outcome) {
      if (outcome instanceof Outcome.Copy<T> copy) {
        tally.meetAgain(row.origin(), into.kind().originOf(copy.first()));
      } else if (outcome instanceof Outcome.Against<T> against) {
        tally.conflict(
            new InConflict(
                row.origin(),
                into.kind().originOf(against.first()),
                against.part(),
                Excerpt.of(against.firstText()),
                Excerpt.of(against.text()),
                into.kind().conflictId(against.first()),
                1,
                row.cells().raw()));
      } else {
        tally.takeIn();
      }
    }

    /** Counts what is left; a damaged header took the rows behind it along. */
    private long countRows(Piece first) {
      long count = first instanceof Piece.Damaged damaged ? damaged.lines() - 1 : 0;
      for (Optional<Piece> next = rows.next(); next.isPresent(); next = rows.next()) {
        count += next.get() instanceof Piece.Damaged damaged ? damaged.lines() : 1;
      }
      return count;
    }

    private static String nameOf(String column) {
      return column.isEmpty() ? Header.FIELD : column;
    }
  }
}
