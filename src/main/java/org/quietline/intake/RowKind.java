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

  /** The columns of a sheet in which one row is one reading. */
  default Layout layoutOfReadings() {
    return layout();
  }

  /** Makes the record. */
  T make(Row row) throws Unusable;

  /** What the record is about: of two with the same key only one can be right. */
  Object keyOf(T made);

  /** A number that is the same for records with the same key, and for those near each other. */
  default long neighbourhoodOf(T made) {
    return 0;
  }

  /** A number that is the same for records with the same key. */
  default int keyHash(T made) {
    return keyOf(made).hashCode();
  }

  /** Whether two records have the same key. */
  default boolean isSameKey(T one, T other) {
    return keyOf(one).equals(keyOf(other));
  }

  /** Everything beside the key that two copies of one row must share. */
  List<Part<T>> parts();

  /** Where the record was read from. */
  Origin originOf(T made);

  /** The id by which an action settles rows in conflict with a record, where one can. */
  default Optional<QuestionId> conflictId(T first) {
    return Optional.empty();
  }

  /** Hears that a record was taken in. */
  default void taken(T made) {}

  /** Hears that a row was set aside. */
  default void refused(Row row, String sentence) {}

  /**
   * One part of a record.
   *
   * @param name the column, or what several columns hold together
   * @param value what it holds
   */
  record Part<T>(String name, Function<T, Object> value) {
    boolean isEqual(T one, T other) {
      return value.apply(one).equals(value.apply(other));
    }

    String text(T made) {
      return RowText.of(value.apply(made));
    }
  }
}
