package org.quietline.intake;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.quietline.bench.Origin;
import org.quietline.bench.QuestionId;

/**
 * One kind of row: its columns, how a record is made of it, and when two rows are about the same
 * thing.
 */
interface RowKind<T> {
  /** The columns. */
  Layout layout();

  /** Makes the record. */
  T make(Row row) throws Unusable;

  /** What the record is about: of two with the same key only one can be right. */
  Object keyOf(T made);

  /** Everything beside the key that two copies of one row must share. */
  List<Part<T>> parts();

  /** Where the record was read from. */
  Origin originOf(T made);

  /** The id by which an action settles rows in conflict with a record, where one can. */
  default Optional<QuestionId> conflictId(T first) {
    return Optional.empty();
  }

  /** Hears that a row was set aside. */
  default void refused(Row row, String sentence) {}

  /**
   * One part of a record, as text.
   *
   * @param name the column, or what several columns hold together
   * @param text how the part is shown, the same for equal parts only
   */
  record Part<T>(String name, Function<T, String> text) {}
}
