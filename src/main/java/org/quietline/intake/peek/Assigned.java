package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Which columns hold which field, as far as it is known, and between which columns it is open. */
final class Assigned {
  private final Map<Field, List<Column>> columns = new EnumMap<>(Field.class);
  private final Map<Field, String> why = new EnumMap<>(Field.class);
  private final Map<Field, List<List<Column>>> open = new EnumMap<>(Field.class);
  private final List<Column> spare = new ArrayList<>();
  private final Map<Column, String> ignored = new LinkedHashMap<>();

  void put(Field field, List<Column> of, String reason) {
    columns.put(field, List.copyOf(of));
    why.put(field, reason);
  }

  /** Leaves it to the user which of several choices holds a field. */
  void ask(Field field, List<List<Column>> choices) {
    open.put(field, choices);
  }

  void ignore(Column column, String reason) {
    ignored.put(column, reason);
  }

  /** Keeps a column that nothing is known about for a question. */
  void spare(Column column) {
    spare.add(column);
  }

  List<Column> spare() {
    return spare;
  }

  Optional<Column> one(Field field) {
    List<Column> of = all(field);
    return of.size() == 1 ? Optional.of(of.get(0)) : Optional.empty();
  }

  List<Column> all(Field field) {
    return columns.getOrDefault(field, List.of());
  }

  boolean has(Field field) {
    return columns.containsKey(field) || open.containsKey(field);
  }

  String why(Field field) {
    return why.getOrDefault(field, "");
  }

  Map<Field, List<List<Column>>> open() {
    return open;
  }

  Map<Column, String> ignored() {
    return ignored;
  }

  boolean isFree(Column column) {
    return !ignored.containsKey(column)
        && columns.values().stream().noneMatch(of -> of.contains(column))
        && open.values().stream().noneMatch(o -> o.stream().anyMatch(of -> of.contains(column)));
  }

  List<Column> free(List<Column> all) {
    List<Column> free = new ArrayList<>(all);
    free.removeIf(column -> !isFree(column));
    return free;
  }
}
