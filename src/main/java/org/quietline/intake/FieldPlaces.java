package org.quietline.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Finds the columns from which each field of a sheet is read. */
final class FieldPlaces {
  private final List<String> written;
  private final List<String> names;
  private final Layout layout;
  private final SheetForm form;
  private final Map<String, Source> sources = new TreeMap<>();
  private final List<Column> missing = new ArrayList<>();
  private final boolean[] taken;

  FieldPlaces(List<String> cells, Layout layout, SheetForm form) {
    this.written = cells;
    this.names = cells.stream().map(FieldPlaces::plain).toList();
    this.layout = layout;
    this.form = form;
    this.taken = new boolean[cells.size()];
  }

  Map<String, Source> sources() throws Unusable {
    for (Map.Entry<String, List<Column>> entry : form.columns().entrySet()) {
      described(entry.getKey(), entry.getValue());
    }
    if (!missing.isEmpty()) {
      throw problem(lacks());
    }
    if (form.header()) {
      byOwnName();
    }
    for (String field : form.defaults().keySet()) {
      if (layout.isKnown(field)) {
        sources.computeIfAbsent(field, f -> source(f, new int[0]));
      }
    }
    return sources;
  }

  private void described(String field, List<Column> columns) throws Unusable {
    if (field.equals(SheetForm.READINGS) && !layout.numbered().isEmpty()) {
      for (int i = 0; i < columns.size(); i++) {
        String reading = Layout.numberedName(layout.numbered().get(0), i + 1);
        put(reading, new int[] {place(columns.get(i))});
      }
      return;
    }
    String own = field.equals(SheetForm.READINGS) ? "reading" : field;
    if (layout.isKnown(own)) {
      int[] places = new int[columns.size()];
      for (int i = 0; i < places.length; i++) {
        places[i] = place(columns.get(i));
      }
      put(own, places);
    }
  }

  private void put(String field, int[] places) {
    if (Arrays.stream(places).allMatch(p -> p >= 0)) {
      sources.put(field, source(field, places));
      Arrays.stream(places).forEach(p -> taken[p] = true);
    }
  }

  private Source source(String field, int[] places) {
    boolean isReading =
        field.equals("reading") || layout.pattern(field).filter("reading_#"::equals).isPresent();
    Map<String, String> meanings =
        form.values()
            .getOrDefault(
                field,
                isReading ? form.values().getOrDefault(SheetForm.READINGS, Map.of()) : Map.of());
    return new Source(places, meanings, form.defaults().getOrDefault(field, ""));
  }

  private int place(Column column) throws Unusable {
    int found = -1;
    for (int i = 0; i < names.size(); i++) {
      if (column.isAt(i, names.get(i))) {
        if (found >= 0) {
          throw problem(
              "The column " + column + " is there twice; name it by its number in " + form.place());
        }
        found = i;
      }
    }
    if (found < 0) {
      missing.add(column);
    }
    return found;
  }

  private String lacks() {
    List<String> lacking = missing.stream().map(Column::toString).distinct().toList();
    return "The sheet lacks "
        + (lacking.size() == 1 ? "the column " : "the columns ")
        + Excerpt.list(lacking)
        + " named in "
        + form.place()
        + "; it has "
        + (form.header()
            ? Excerpt.of(Excerpt.list(written))
            : names.size() + (names.size() == 1 ? " column" : " columns"));
  }

  private void byOwnName() throws Unusable {
    for (int i = 0; i < names.size(); i++) {
      String name = names.get(i);
      int place = i;
      boolean free = !taken[i] && form.ignored().stream().noneMatch(c -> c.isAt(place, name));
      if (!free || !layout.isKnown(name) || isDescribed(name)) {
        continue;
      }
      if (sources.containsKey(name)) {
        throw problem("The column " + name + " is there twice; keep one of the two");
      }
      sources.put(name, source(name, new int[] {i}));
    }
  }

  private boolean isDescribed(String field) {
    return form.columns().containsKey(field)
        || (form.columns().containsKey(SheetForm.READINGS)
            && (field.equals("reading") || layout.pattern(field).isPresent()));
  }

  private Unusable problem(String sentence) {
    return problem(names, form, sentence);
  }

  /** What is wrong with a header, with the header itself. */
  static Unusable problem(List<String> names, SheetForm form, String sentence) {
    String found = Excerpt.of(String.join(",", names));
    String end = form.header() ? ". The header is " + Excerpt.quoted(found) + "." : ".";
    return new Unusable(Header.FIELD, found, sentence + end);
  }

  /** A name as it counts: without regard to case and to blanks around it. */
  static String plain(String cell) {
    return Excerpt.strip(cell).toLowerCase(Locale.ROOT);
  }
}
