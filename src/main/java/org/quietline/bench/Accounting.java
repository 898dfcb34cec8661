package org.quietline.bench;

import java.util.List;

/**
 * What became of every row that was read: nothing vanishes, the counts add up.
 *
 * @param files the files read, in name order
 * @param aside the rows set aside, in the order they were met
 * @param settingsAside what {@code bench.toml} says that could not be used
 * @param takenIn rows taken in
 * @param metBefore rows that were an exact copy of one already taken in
 */
public record Accounting(
    List<FileRead> files,
    List<SetAside> aside,
    List<SetAside> settingsAside,
    long takenIn,
    long metBefore) {

  /** Checks that rows read = taken in + met before + set aside. */
  public Accounting {
    files = List.copyOf(files);
    aside = List.copyOf(aside);
    settingsAside = List.copyOf(settingsAside);
    long read = files.stream().mapToLong(FileRead::rows).sum();
    long away = aside.stream().mapToLong(SetAside::rows).sum();
    if (read != takenIn + metBefore + away) {
      throw new IllegalArgumentException(
          String.format(
              "%d rows read, but %d taken in, %d met before and %d set aside",
              read, takenIn, metBefore, away));
    }
  }

  /**
   * How many rows were set aside.
   *
   * @return rows; one entry of {@link #aside()} can stand for all rows of a file
   */
  public long rowsAside() {
    return aside.stream().mapToLong(SetAside::rows).sum();
  }

  /**
   * Files of which not one row could be used, empty ones included.
   *
   * @return their names
   */
  public List<String> unreadFiles() {
    return files.stream()
        .filter(f -> rowsAside(f.file()) == f.rows() && isNamedAside(f.file()))
        .map(FileRead::file)
        .toList();
  }

  private long rowsAside(String file) {
    return aside.stream().filter(a -> a.file().equals(file)).mapToLong(SetAside::rows).sum();
  }

  private boolean isNamedAside(String file) {
    return aside.stream().anyMatch(a -> a.file().equals(file));
  }

  /**
   * How many rows were read from all files.
   *
   * @return rows, headers and empty lines not counted
   */
  public long rows() {
    return takenIn + metBefore + rowsAside();
  }

  /**
   * One file that was read.
   *
   * @param file its name relative to the bench folder
   * @param sha256 the SHA-256 of its bytes in hexadecimal
   * @param rows how many rows it holds
   */
  public record FileRead(String file, String sha256, long rows) {}

  /**
   * One row, or one entry of the settings, that could not be used.
   *
   * @param file the file relative to the bench folder
   * @param line the line, counted from 1
   * @param field the column or key in question, or the whole row
   * @param text the text found there
   * @param reason why it was set aside and what would mend it, a sentence
   * @param rows how many rows it stands for: 1, or all rows of a file that cannot be used
   */
  public record SetAside(
      String file, long line, String field, String text, String reason, long rows) {
    @Override
    public String toString() {
      return file + ", line " + line + ", " + field + ": " + reason;
    }
  }
}
