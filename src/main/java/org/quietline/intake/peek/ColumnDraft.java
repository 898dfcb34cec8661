package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Drafts which column holds which field, and which are not read. */
final class ColumnDraft {
  private final Draft draft;
  private final Assigned assigned;

  ColumnDraft(Draft draft, Assigned assigned) {
    this.draft = draft;
    this.assigned = assigned;
  }

  void write() {
    if (assigned.has(Field.RESULT)) {
      draft.line("layout", Toml.text("row-per-reading"));
      draft.found("layout", "one row a reading", assigned.why(Field.RESULT));
    } else {
      draft.found("layout", "one row a result", "no column groups the rows");
    }
    for (Field field : Field.values()) {
      List<Column> of = assigned.all(field);
      if (!of.isEmpty()) {
        if (!isPlain(field, of)) {
          draft.line("columns." + field.key(), value(of));
        }
        draft.found(field.key(), names(of), assigned.why(field));
      }
    }
    assigned.open().forEach(this::ask);
    ignore();
  }

  private void ask(Field field, List<List<Column>> choices) {
    List<String> lines = new ArrayList<>();
    choices.forEach(of -> lines.add("columns." + field.key() + " = " + value(of)));
    if (choices.size() == 1) {
      lines.add("columns.reagent_lot = " + value(choices.get(0)));
      draft.ask("Is " + names(choices.get(0)) + " the sample or the reagent lot?", lines);
      return;
    }
    List<String> names = choices.stream().map(ColumnDraft::names).toList();
    draft.ask("Which column is " + field.key() + ": " + String.join("; ", names) + "?", lines);
  }

  private void ignore() {
    Map<Column, String> ignored = assigned.ignored();
    if (!ignored.isEmpty()) {
      draft.line("ignore", Toml.list(ignored.keySet().stream().map(Column::toml).toList()));
      ignored.forEach((column, why) -> draft.found("not read", column.shown(), why));
    }
  }

  /** Whether the reader finds the columns by itself, because they have the plain sheet's names. */
  private static boolean isPlain(Field field, List<Column> of) {
    for (int i = 0; i < of.size(); i++) {
      String plain = field == Field.READINGS ? "reading_" + (i + 1) : field.key();
      if (!of.get(i).name().equalsIgnoreCase(plain)) {
        return false;
      }
    }
    return field == Field.READINGS || of.size() == 1;
  }

  private static String value(List<Column> of) {
    return Toml.oneOrList(of.stream().map(Column::toml).toList());
  }

  private static String names(List<Column> of) {
    return Shown.and(of.stream().map(Column::shown).toList());
  }

  /** The unit that stands in brackets behind the readings' names, if it is one and the same. */
  static Optional<String> unitOf(List<Column> readings) {
    List<Optional<String>> units =
        readings.stream().map(c -> HeaderWords.unit(c.name())).distinct().toList();
    return units.size() == 1 ? units.get(0) : Optional.empty();
  }
}
