package org.quietline.bench;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * What became of every row that was read: nothing vanishes, the counts add up.
 *
 * @param files the files read, in name order
 * @param aside the rows set aside, in the order they were met
 * @param settingsAside what {@code bench.toml} says that could not be used
 * @param conflicts rows that stand against one taken in, in the order they were met
 * @param copies where the rows met before stand, and what they repeat
 * @param conversions the conversions of units that were made
 * @param takenIn rows taken in
 * @param metBefore rows that were an exact copy of one already taken in
 * @param numbersAside the running numbers of results whose rows were set aside: they are not
 *     missing
 */
public record Accounting(
    List<FileRead> files,
    List<SetAside> aside,
    List<SetAside> settingsAside,
    List<InConflict> conflicts,
    List<Copies> copies,
    List<Conversion> conversions,
    long takenIn,
    long metBefore,
    List<NumberAside> numbersAside) {

  /** Checks that rows read = taken in + met before + set aside + in conflict. */
  public Accounting {
    files = List.copyOf(files);
    aside = List.copyOf(aside);
    settingsAside = List.copyOf(settingsAside);
    conflicts = List.copyOf(conflicts);
    copies = List.copyOf(copies);
    conversions = List.copyOf(conversions);
    numbersAside = List.copyOf(numbersAside);
    long read = files.stream().mapToLong(FileRead::rows).sum();
    long away = aside.stream().mapToLong(SetAside::rows).sum();
    long against = conflicts.stream().mapToLong(InConflict::rows).sum();
    if (read != takenIn + metBefore + away + against) {
      throw new IllegalArgumentException(
          String.format(
              "%d rows read, but %d taken in, %d met before, %d set aside and %d in conflict",
              read, takenIn, metBefore, away, against));
    }
  }

  /**
   * An accounting without conflicts, copies, conversions or numbers aside.
   *
   * @param files the files read, in name order
   * @param aside the rows set aside
   * @param settingsAside what {@code bench.toml} says that could not be used
   * @param takenIn rows taken in
   * @param metBefore rows that were an exact copy of one already taken in
   */
  public Accounting(
      List<FileRead> files,
      List<SetAside> aside,
      List<SetAside> settingsAside,
      long takenIn,
      long metBefore) {
    this(
        files,
        aside,
        settingsAside,
        List.of(),
        List.of(),
        List.of(),
        takenIn,
        metBefore,
        List.of());
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

  /**
   * Files that somebody changed while they were read, so that what was read of them may be neither
   * the old content nor the new one.
   *
   * @return their names
   */
  public List<String> changedFiles() {
    return files.stream().filter(FileRead::changed).map(FileRead::file).toList();
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
    return takenIn + metBefore + rowsAside() + rowsInConflict();
  }

  /**
   * How many rows stand against one taken in.
   *
   * @return rows
   */
  public long rowsInConflict() {
    return conflicts.stream().mapToLong(InConflict::rows).sum();
  }

  /**
   * One file that was read.
   *
   * @param file its name relative to the bench folder
   * @param sha256 the SHA-256 of its bytes in hexadecimal
   * @param rows how many rows it holds
   * @param changed whether it changed while it was read
   */
  public record FileRead(String file, String sha256, long rows, boolean changed) {
    /**
     * A file that stayed as it was while it was read.
     *
     * @param file its name relative to the bench folder
     * @param sha256 the SHA-256 of its bytes in hexadecimal
     * @param rows how many rows it holds
     */
    public FileRead(String file, String sha256, long rows) {
      this(file, sha256, rows, false);
    }
  }

  /**
   * The running number of a result whose row was set aside.
   *
   * @param instrument the instrument as the row names it
   * @param sequence the number as the row writes it
   */
  public record NumberAside(String instrument, String sequence) {}

  /**
   * One row, or one entry of the settings, that could not be used.
   *
   * @param file the file relative to the bench folder
   * @param line the line, counted from 1
   * @param field the column or key in question, or the whole row
   * @param text the text found there
   * @param reason why it was set aside and what would mend it, a sentence
   * @param rows how many rows it stands for: 1, or all rows of a file that cannot be used
   * @param raw the row as it stands in the file, or as much of it as is kept; empty where the entry
   *     is about no row
   */
  public record SetAside(
      String file, long line, String field, String text, String reason, long rows, String raw) {

    /**
     * An entry that keeps no row.
     *
     * @param file the file relative to the bench folder
     * @param line the line, counted from 1
     * @param field the column or key in question
     * @param text the text found there
     * @param reason why it was set aside and what would mend it, a sentence
     * @param rows how many rows it stands for
     */
    public SetAside(String file, long line, String field, String text, String reason, long rows) {
      this(file, line, field, text, reason, rows, "");
    }

    @Override
    public String toString() {
      return file + ", line " + line + ", " + field + ": " + reason;
    }
  }

  /**
   * One row that says something else about a record taken in before. The first one stays until a
   * person decides.
   *
   * @param origin where it stands; of a result read from several rows, the first of them
   * @param first where the record stands that was taken in
   * @param field the part in which the two differ first
   * @param firstText what the first one has there
   * @param text what this one has there
   * @param id the id by which an action settles it; empty where only mending the sheet does
   * @param rows how many rows it stands for
   * @param raw the row as it stands in the file
   */
  public record InConflict(
      Origin origin,
      Origin first,
      String field,
      String firstText,
      String text,
      Optional<QuestionId> id,
      long rows,
      String raw) {
    @Override
    public String toString() {
      return origin
          + ", "
          + field
          + ": the same row stands in "
          + first
          + " with other content: "
          + field
          + " is "
          + shown(firstText)
          + " there and "
          + shown(text)
          + " here. The first one stays"
          + (id.isPresent()
              ? " until actions.csv names the row that holds."
              : "; correct the wrong one.");
    }

    private static String shown(String text) {
      return text.isEmpty() ? "empty" : '"' + text + '"';
    }
  }

  /**
   * A run of rows that were met before: consecutive rows of one file that repeat consecutive rows.
   *
   * @param copy where the run begins
   * @param first where the rows begin that it repeats
   * @param rows how many rows it has, at least 1
   */
  public record Copies(Origin copy, Origin first, long rows) {}

  /**
   * Readings that were converted from the unit they were written in.
   *
   * @param method the method's key
   * @param from the unit they were written in
   * @param to the method's unit
   * @param factor what they were multiplied by, to 16 digits where it does not end
   * @param results how many results
   */
  public record Conversion(String method, Unit from, Unit to, BigDecimal factor, long results) {}
}
