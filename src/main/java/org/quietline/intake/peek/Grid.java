package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The file cut into lines before the header, header, and rows.
 *
 * @param delimiter the sign between two columns
 * @param width how many columns
 * @param before the lines before the header, or before the first row
 * @param header the header's cells; empty where there is none
 * @param rows the rows that have the width and are not the header once more
 * @param repeats the lines on which the header stands once more
 * @param uneven the lines that have another number of fields
 */
record Grid(
    char delimiter,
    int width,
    List<Line> before,
    Optional<List<String>> header,
    List<Cells> rows,
    List<Integer> repeats,
    List<Integer> uneven) {

  /** One row. */
  record Cells(int line, List<String> texts) {
    String at(int place) {
      return texts.get(place - 1);
    }
  }

  static Grid of(List<Line> lines, char delimiter, int width) {
    List<Line> before = new ArrayList<>();
    List<Cells> rows = new ArrayList<>();
    List<Integer> uneven = new ArrayList<>();
    for (Line line : lines) {
      List<String> cells = line.cut(delimiter);
      long filled = cells.stream().filter(c -> !c.isEmpty()).count();
      boolean fits = cells.size() == width;
      if (rows.isEmpty() && (!fits || filled * 2 < width)) {
        before.add(line);
      } else if (filled > 0 && fits) {
        rows.add(new Cells(line.number(), cells));
      } else if (filled > 0) {
        uneven.add(line.number());
      }
    }
    return headed(delimiter, width, before, rows, uneven);
  }

  private static Grid headed(
      char delimiter, int width, List<Line> before, List<Cells> rows, List<Integer> uneven) {
    if (rows.isEmpty() || !looksLikeHeader(rows)) {
      return new Grid(delimiter, width, before, Optional.empty(), rows, List.of(), uneven);
    }
    List<String> header = rows.get(0).texts();
    List<Cells> under = new ArrayList<>();
    List<Integer> repeats = new ArrayList<>();
    for (Cells row : rows.subList(1, rows.size())) {
      if (lower(row.texts()).equals(lower(header))) {
        repeats.add(row.line());
      } else {
        under.add(row);
      }
    }
    return new Grid(delimiter, width, before, Optional.of(header), under, repeats, uneven);
  }

  private static List<String> lower(List<String> texts) {
    return texts.stream().map(t -> t.toLowerCase(Locale.ROOT)).toList();
  }

  /** A header holds words only; where the rows hold words only too, its words must be known. */
  private static boolean looksLikeHeader(List<Cells> rows) {
    List<String> first = rows.get(0).texts();
    if (first.stream().anyMatch(Grid::isDatum)) {
      return false;
    }
    boolean dataBelow =
        rows.stream().skip(1).limit(200).anyMatch(r -> r.texts().stream().anyMatch(Grid::isDatum));
    return dataBelow || first.stream().anyMatch(HeaderWords::isKnown);
  }

  private static boolean isDatum(String cell) {
    return NumberShape.of(cell).isNumber() || TimeShape.isTime(cell);
  }

  /** The columns, in order. */
  List<Column> columns() {
    List<Column> columns = new ArrayList<>();
    for (int place = 1; place <= width; place++) {
      int at = place;
      String name = header.map(h -> h.get(at - 1)).orElse("");
      long same = header.map(h -> h.stream().filter(name::equalsIgnoreCase).count()).orElse(1L);
      List<String> cells = rows.stream().map(r -> r.at(at)).toList();
      columns.add(new Column(place, name, !name.isEmpty() && same == 1, cells));
    }
    return columns;
  }
}
