package org.quietline.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.FileRead;
import org.quietline.bench.Accounting.SetAside;

/** Keeps the count of what becomes of each row. */
final class Tally {
  private final List<FileRead> files = new ArrayList<>();
  private final List<SetAside> aside = new ArrayList<>();
  private long takenIn;
  private long metBefore;
  private long rowsOfFile;

  void takeIn() {
    takenIn++;
    rowsOfFile++;
  }

  void meetAgain() {
    metBefore++;
    rowsOfFile++;
  }

  /** Sets one row, or a stretch that counts as several, aside. */
  void setAside(String file, long line, Unusable why, long rows) {
    add(
        file,
        line,
        why,
        rows,
        rows == 1 ? "The row was set aside." : "These " + rows + " rows were set aside.");
  }

  /** Sets a whole file aside, with all its rows. */
  void setFileAside(String file, long line, Unusable why, long rows) {
    String end =
        rows == 0
            ? "It holds no rows."
            : rows == 1 ? "Its one row was set aside." : "All " + rows + " rows were set aside.";
    add(file, line, why, rows, end);
  }

  /** Remarks on a file without any row being lost by it. */
  void remark(String file, long line, String field, String text, String sentences) {
    aside.add(new SetAside(file, line, field, Excerpt.of(text), sentences, 0));
  }

  private void add(String file, long line, Unusable why, long rows, String end) {
    aside.add(
        new SetAside(
            file, line, why.field(), Excerpt.of(why.text()), why.sentence() + " " + end, rows));
    rowsOfFile += rows;
  }

  void endFile(String file, String sha256) {
    files.add(new FileRead(file, sha256, rowsOfFile));
    rowsOfFile = 0;
  }

  Accounting accounting(List<SetAside> settingsAside) {
    return new Accounting(
        files.stream().sorted(Comparator.comparing(FileRead::file)).toList(),
        aside,
        settingsAside,
        takenIn,
        metBefore);
  }
}
