package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Whether each row is one reading: rows of one result share what a column holds, and agree in
 * sample and method.
 */
final class LongForm {
  private static final double MOST = 0.6;
  private static final int MOST_READINGS = 10;

  private final Grid grid;
  private final List<Column> columns;
  private final Assigned assigned;

  LongForm(Grid grid, List<Column> columns, Assigned assigned) {
    this.grid = grid;
    this.columns = columns;
    this.assigned = assigned;
  }

  /** Looks for the column that names the result, and for the one that counts its readings. */
  void find() {
    if (assigned.all(Field.READINGS).size() != 1) {
      return;
    }
    for (Column result : columns) {
      if (!groups(result) || assigned.all(Field.READINGS).contains(result)) {
        continue;
      }
      Optional<Column> counter =
          columns.stream().filter(c -> !c.equals(result) && counts(c, result)).findFirst();
      boolean named = HeaderWords.fields(result.name()).contains(Field.RESULT);
      if (assigned.isFree(result) && (named || counter.isPresent())) {
        assigned.put(
            Field.RESULT,
            List.of(result),
            "most of what it holds stands in several rows of one sample"
                + counter.map(c -> ", and " + c.shown() + " counts them from 1").orElse(""));
        counter
            .filter(assigned::isFree)
            .ifPresent(
                c ->
                    assigned.put(
                        Field.READING_NUMBER, List.of(c), "it counts from 1 within each result"));
        return;
      }
    }
  }

  private Map<String, List<Grid.Cells>> rowsBy(Column column) {
    Map<String, List<Grid.Cells>> rows = new LinkedHashMap<>();
    for (Grid.Cells row : grid.rows()) {
      String text = row.at(column.place());
      if (!text.isEmpty()) {
        rows.computeIfAbsent(text, t -> new ArrayList<>()).add(row);
      }
    }
    return rows;
  }

  private boolean groups(Column column) {
    Map<String, List<Grid.Cells>> rows = rowsBy(column);
    long several = rows.values().stream().filter(r -> r.size() > 1).count();
    return !rows.isEmpty()
        && several >= MOST * rows.size()
        && rows.values().stream().allMatch(r -> r.size() <= MOST_READINGS)
        && rows.values().stream().filter(this::agree).count() >= MOST * rows.size()
        && rows.size() >= 2;
  }

  private boolean agree(List<Grid.Cells> rows) {
    return List.of(Field.SAMPLE, Field.METHOD).stream()
        .flatMap(f -> assigned.one(f).stream())
        .allMatch(c -> rows.stream().map(r -> r.at(c.place())).distinct().count() == 1);
  }

  private boolean counts(Column column, Column result) {
    List<List<String>> counters =
        rowsBy(result).values().stream()
            .map(rows -> rows.stream().map(r -> r.at(column.place())).toList())
            .toList();
    long fromOne = counters.stream().filter(LongForm::isOneToN).count();
    return column.isWhole()
        && fromOne >= MOST * counters.size()
        && counters.stream().allMatch(c -> c.stream().distinct().count() == c.size());
  }

  private static boolean isOneToN(List<String> numbers) {
    for (int i = 1; i <= numbers.size(); i++) {
      if (!numbers.contains(Integer.toString(i))) {
        return false;
      }
    }
    return true;
  }
}
