package org.quietline.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.Conversion;
import org.quietline.bench.Accounting.Copies;
import org.quietline.bench.Accounting.FileRead;
import org.quietline.bench.Accounting.InConflict;
import org.quietline.bench.Accounting.NumberAside;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.bench.Origin;

/** Keeps the count of what becomes of each row. */
final class Tally {
  private final List<FileRead> files = new ArrayList<>();
  private final List<SetAside> aside = new ArrayList<>();
  private final List<InConflict> conflicts = new ArrayList<>();
  private final List<Copies> copies = new ArrayList<>();
  private final List<Conversion> conversions = new ArrayList<>();
  private final List<NumberAside> numbersAside = new ArrayList<>();

  /** So many rows set aside are named one by one in each file; the others are counted together. */
  static final int MOST_NAMED = 10_000;

  private long takenIn;
  private long metBefore;
  private long rowsOfFile;
  private int namedOfFile;
  private long rowsNotNamed;
  private long firstNotNamed;

  void takeIn(long rows) {
    takenIn += rows;
    rowsOfFile += rows;
  }

  void meetAgain(Origin copy, Origin first, long rows) {
    metBefore += rows;
    rowsOfFile += rows;
    int last = copies.size() - 1;
    if (last >= 0 && follows(copies.get(last), copy, first)) {
      Copies run = copies.get(last);
      copies.set(last, new Copies(run.copy(), run.first(), run.rows() + rows));
    } else {
      copies.add(new Copies(copy, first, rows));
    }
  }

  private static boolean follows(Copies run, Origin copy, Origin first) {
    return run.copy().file().equals(copy.file())
        && run.first().file().equals(first.file())
        && run.copy().line() + run.rows() == copy.line()
        && run.first().line() + run.rows() == first.line();
  }

  /** Counts a row that stands against one taken in. */
  void conflict(InConflict conflict) {
    conflicts.add(conflict);
    rowsOfFile += conflict.rows();
  }

  /** Counts the results whose readings were written in another unit. */
  void converted(List<Conversion> made) {
    conversions.addAll(made);
  }

  /** Keeps the running numbers of results that were set aside. */
  void numbersAside(List<NumberAside> numbers) {
    numbersAside.addAll(numbers);
  }

  /** Sets one row, or a stretch that counts as several, aside. */
  void setAside(String file, long line, Unusable why, long rows, String raw) {
    add(
        file,
        line,
        why,
        rows,
        rows == 1 ? "The row was set aside." : "These " + rows + " rows were set aside.",
        raw);
  }

  /** Sets a whole file aside, with all its rows. */
  void setFileAside(String file, long line, Unusable why, long rows) {
    String end =
        rows == 0
            ? "It holds no rows."
            : rows == 1 ? "Its one row was set aside." : "All " + rows + " rows were set aside.";
    add(file, line, why, rows, end, "");
  }

  /** Remarks on a file without any row being lost by it. */
  void remark(String file, long line, String field, String text, String sentences) {
    aside.add(new SetAside(file, line, field, Excerpt.of(text), sentences, 0));
  }

  private void add(String file, long line, Unusable why, long rows, String end, String raw) {
    rowsOfFile += rows;
    if (++namedOfFile > MOST_NAMED) {
      firstNotNamed = rowsNotNamed == 0 ? line : firstNotNamed;
      rowsNotNamed += rows;
      return;
    }
    aside.add(
        new SetAside(
            file,
            line,
            why.field(),
            Excerpt.of(why.text()),
            why.sentence() + " " + end,
            rows,
            raw));
  }

  void endFile(String file, String sha256, boolean changed) {
    if (rowsNotNamed > 0) {
      aside.add(
          new SetAside(
              file,
              firstNotNamed,
              RowCheck.WHOLE_ROW,
              "",
              "From this line on "
                  + rowsNotNamed
                  + " more rows of the file cannot be used; mend what is named before them and run"
                  + " again. These "
                  + rowsNotNamed
                  + " rows were set aside.",
              rowsNotNamed));
    }
    namedOfFile = 0;
    rowsNotNamed = 0;
    files.add(new FileRead(file, sha256, rowsOfFile, changed));
    rowsOfFile = 0;
  }

  Accounting accounting(List<SetAside> settingsAside) {
    return new Accounting(
        files.stream().sorted(Comparator.comparing(FileRead::file)).toList(),
        aside,
        settingsAside,
        conflicts,
        copies,
        conversions,
        takenIn,
        metBefore,
        numbersAside);
  }
}
