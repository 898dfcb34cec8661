package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds the column or the two columns that say when a sample was tested. */
final class TimeColumns {
  private static final double MOST = 0.6;

  private final List<Column> columns;
  private final Assigned assigned;

  TimeColumns(List<Column> columns, Assigned assigned) {
    this.columns = columns;
    this.assigned = assigned;
  }

  void find() {
    List<Column> days = preferred(columns.stream().filter(c -> share(c, true) >= MOST).toList());
    List<Column> clocks =
        preferred(
            columns.stream().filter(c -> share(c, false) >= MOST && share(c, true) == 0).toList());
    if (days.isEmpty()) {
      return;
    }
    List<List<Column>> choices = new ArrayList<>();
    for (Column day : days) {
      if (hasClock(day) || clocks.isEmpty()) {
        choices.add(List.of(day));
      } else {
        clocks.forEach(clock -> choices.add(List.of(day, clock)));
      }
    }
    if (choices.size() > 1) {
      assigned.ask(Field.TAKEN_AT, choices);
    } else {
      List<Column> of = choices.get(0);
      assigned.put(
          Field.TAKEN_AT,
          of,
          of.size() == 2
              ? "one holds days, the other times of day"
              : hasClock(of.get(0))
                  ? "it holds days with a time of day"
                  : "it holds days; no column holds a time of day");
    }
  }

  /** Those whose header speaks of a time; all of them where none does. */
  private static List<Column> preferred(List<Column> found) {
    List<Column> named =
        found.stream().filter(c -> HeaderWords.fields(c.name()).contains(Field.TAKEN_AT)).toList();
    return named.isEmpty() ? found : named;
  }

  private static boolean hasClock(Column column) {
    return column.filled().stream()
        .flatMap(c -> TimeShape.of(c).stream())
        .anyMatch(s -> s.hasDay() && s.hasTime());
  }

  private static double share(Column column, boolean day) {
    List<String> filled = column.filled();
    long fitting =
        filled.stream()
            .flatMap(c -> TimeShape.of(c).stream())
            .filter(s -> s.hasDay() == day)
            .count();
    return filled.isEmpty() ? 0 : (double) fitting / filled.size();
  }

  /** The shapes of the times, row by row, rows without one left out. */
  static List<TimeShape> shapes(Grid grid, List<Column> of) {
    List<TimeShape> shapes = new ArrayList<>();
    for (Grid.Cells row : grid.rows()) {
      Optional<TimeShape> first = TimeShape.of(row.at(of.get(0).place()));
      if (of.size() == 1) {
        first.filter(TimeShape::hasDay).ifPresent(shapes::add);
      } else {
        Optional<TimeShape> second = TimeShape.of(row.at(of.get(1).place()));
        if (first.isPresent() && second.isPresent() && first.get().hasDay()) {
          shapes.add(
              new TimeShape(
                  first.get().text(),
                  first.get().day(),
                  first.get().mould(),
                  second.get().time(),
                  " "));
        }
      }
    }
    return shapes;
  }
}
