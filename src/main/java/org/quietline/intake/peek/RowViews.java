package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;
import org.quietline.intake.TrialReading.Described;
import org.quietline.intake.TrialReading.NamedColumn;

/** Puts results beside the cells they were made of. */
final class RowViews {
  private final Grid grid;
  private final List<Column> columns;
  private final Map<String, List<NamedColumn>> named;
  private final Map<Long, Grid.Cells> rows = new HashMap<>();

  RowViews(Grid grid, Optional<Described> sheet) {
    this.grid = grid;
    this.columns = grid.columns();
    this.named = sheet.map(Described::columns).orElse(Map.of());
    grid.rows().forEach(row -> rows.put((long) row.line(), row));
  }

  List<RowView> of(List<Result> results, int most) {
    List<RowView> views = new ArrayList<>();
    for (Result result : results) {
      Grid.Cells row = rows.get(result.origin().line());
      if (row != null && views.size() < most) {
        views.add(new RowView(row.line(), parts(result, row)));
      }
    }
    return views;
  }

  private List<RowView.Part> parts(Result result, Grid.Cells row) {
    List<RowView.Part> parts = new ArrayList<>();
    add(parts, row, Field.TAKEN_AT, Optional.of(result.takenAt().toString()));
    add(parts, row, Field.METHOD, Optional.of(result.method()));
    add(parts, row, Field.INSTRUMENT, Optional.of(result.instrument()));
    add(parts, row, Field.ROLE, Optional.of(result.role().key()));
    add(parts, row, Field.SAMPLE, Optional.of(result.sample()));
    readings(parts, result, row);
    add(parts, row, Field.UNIT, Optional.of(result.writtenUnit().symbol()));
    add(parts, row, Field.CALIBRATION, result.calibration());
    add(parts, row, Field.REAGENT_LOT, result.reagentLot());
    add(parts, row, Field.OPERATOR, result.operator());
    add(parts, row, Field.REMARK, result.remark());
    add(parts, row, Field.SESSION, result.session());
    add(parts, row, Field.TEMPERATURE_C, result.temperatureC().map(Object::toString));
    add(parts, row, Field.SEQUENCE, result.sequence());
    return parts;
  }

  private void add(List<RowView.Part> parts, Grid.Cells row, Field field, Optional<String> value) {
    List<Integer> places = places(field.key());
    List<String> from = places.stream().map(row::at).filter(text -> !text.isEmpty()).toList();
    value.ifPresent(v -> parts.add(new RowView.Part(field.key(), v, from)));
  }

  private void readings(List<RowView.Part> parts, Result result, Grid.Cells row) {
    List<String> cells = readingCells(row);
    for (int i = 0; i < result.writtenReadings().size(); i++) {
      Reading reading = result.writtenReadings().get(i);
      boolean missing = reading instanceof Reading.Missing;
      parts.add(
          new RowView.Part(
              "reading_" + (i + 1),
              missing ? "none" : reading.toString(),
              i < cells.size() && !cells.get(i).isEmpty() ? List.of(cells.get(i)) : List.of()));
    }
  }

  private List<String> readingCells(Grid.Cells row) {
    List<Integer> result = places(Field.RESULT.key());
    List<Integer> places = places(Field.READINGS.key());
    if (result.isEmpty() || places.size() != 1) {
      List<Integer> all = places.isEmpty() ? plainReadings() : places;
      return all.stream().map(row::at).toList();
    }
    String id = row.at(result.get(0));
    List<Integer> counter = places(Field.READING_NUMBER.key());
    return grid.rows().stream()
        .filter(r -> r.at(result.get(0)).equals(id))
        .sorted((a, b) -> counter.isEmpty() ? 0 : order(a, b, counter.get(0)))
        .map(r -> r.at(places.get(0)))
        .toList();
  }

  private static int order(Grid.Cells a, Grid.Cells b, int place) {
    int shorter = Integer.compare(a.at(place).length(), b.at(place).length());
    return shorter != 0 ? shorter : a.at(place).compareTo(b.at(place));
  }

  private List<Integer> plainReadings() {
    return IntStream.rangeClosed(1, 9)
        .mapToObj(i -> "reading_" + i)
        .flatMap(name -> placesOfName(name).stream())
        .toList();
  }

  /** Where a field stands: in the columns the sheet names for it, or in that of its own name. */
  private List<Integer> places(String field) {
    List<NamedColumn> of = named.getOrDefault(field, List.of());
    return of.isEmpty()
        ? placesOfName(field)
        : of.stream()
            .flatMap(
                c ->
                    c.number() > 0 ? List.of(c.number()).stream() : placesOfName(c.name()).stream())
            .filter(place -> place <= grid.width())
            .toList();
  }

  private List<Integer> placesOfName(String name) {
    return columns.stream()
        .filter(c -> c.name().equalsIgnoreCase(name))
        .map(Column::place)
        .toList();
  }
}
