package org.quietline.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Which column of a sheet stands where, and from which columns each field is read. */
final class Header {
  static final String FIELD = "header";

  private final List<String> names;
  private final Layout layout;
  private final SheetForm form;
  private final Map<String, Source> sources;
  private final Source[] bySlot;
  private final Source[] byNumber;
  private final List<String> numberedNames;
  private final int numbered;
  private final TimeText times;

  private Header(List<String> names, Layout layout, SheetForm form, Map<String, Source> sources) {
    this.names = names;
    this.layout = layout;
    this.form = form;
    this.sources = sources;
    this.bySlot = layout.names().stream().map(this::source).toArray(Source[]::new);
    this.numbered = count();
    this.numberedNames =
        IntStream.rangeClosed(1, numbered)
            .mapToObj(i -> Layout.numberedName(layout.numbered().get(0), i))
            .toList();
    this.byNumber = numberedNames.stream().map(this::source).toArray(Source[]::new);
    this.times = new TimeText(form.timeFormats(), form.dateFormats());
  }

  /** Makes sense of the cells of a header line, or says why there is none to be made. */
  static Header of(List<String> cells, Layout layout, SheetForm form) throws Unusable {
    List<String> names = cells.stream().map(FieldPlaces::plain).toList();
    Header header = new Header(names, layout, form, new FieldPlaces(cells, layout, form).sources());
    header.checkNumbers();
    header.needRequired();
    return header;
  }

  /** The header of a sheet that has none: its columns are named by their numbers. */
  static Header ofNumbers(int columns, Layout layout, SheetForm form) throws Unusable {
    return of(IntStream.rangeClosed(1, columns).mapToObj(Integer::toString).toList(), layout, form);
  }

  int size() {
    return names.size();
  }

  SheetForm form() {
    return form;
  }

  TimeText times() {
    return times;
  }

  /** How many columns of the numbered kind there are. */
  int numbered() {
    return numbered;
  }

  /** Where a field comes from. */
  Source source(String field) {
    return sources.getOrDefault(field, Source.NOTHING);
  }

  /** Where the field of a place in {@link Layout#names()} comes from. */
  Source source(int slot) {
    return bySlot[slot];
  }

  /** Where a field of the first numbered kind comes from, counted from 1. */
  Source numbered(int number) {
    return byNumber[number - 1];
  }

  /** The name of a field of the first numbered kind, counted from 1. */
  String numberedName(int number) {
    return numberedNames.get(number - 1);
  }

  /** The field that is read from a column, or the column's own name. */
  String fieldAt(int place) {
    return form.isPlain()
        ? names.get(place)
        : sources.entrySet().stream()
            .filter(s -> s.getValue().reads(place))
            .map(Map.Entry::getKey)
            .findFirst()
            .orElse(names.get(place));
  }

  /** The columns that are not read, each with a sentence about it. */
  Map<String, String> unread() throws Unusable {
    Map<String, String> unread = new LinkedHashMap<>();
    for (int i = 0; i < names.size(); i++) {
      int place = i;
      String name = names.get(i);
      boolean read = sources.values().stream().anyMatch(s -> s.reads(place));
      boolean ignored = form.ignored().stream().anyMatch(c -> c.isAt(place, name));
      if (!read && !ignored) {
        if (form.header()) {
          checkNotVital(name);
        }
        unread.put(name, whyUnread(name));
      }
    }
    String unnamed = unread.remove("");
    if (unnamed != null) {
      unread.put("", unnamed);
    }
    return unread;
  }

  /** Whether a row is this header once more. */
  boolean isRepeatedBy(Cells cells) {
    if (!form.header() || cells.size() != names.size()) {
      return false;
    }
    for (int i = 0; i < names.size(); i++) {
      if (!cells.get(i).equalsIgnoreCase(names.get(i))) {
        return false;
      }
    }
    return true;
  }

  private int count() {
    if (layout.numbered().isEmpty()) {
      return 0;
    }
    int count = 0;
    while (sources.containsKey(Layout.numberedName(layout.numbered().get(0), count + 1))) {
      count++;
    }
    return count;
  }

  private void checkNumbers() throws Unusable {
    for (String name : sources.keySet()) {
      if (layout.pattern(name).isPresent() && Layout.numberOf(name) > numbered) {
        String missing = Layout.numberedName(layout.numbered().get(0), numbered + 1);
        throw problem("The header has " + name + " but lacks " + missing + "; number them from 1");
      }
    }
  }

  private void needRequired() throws Unusable {
    List<String> missing = needed().filter(name -> source(name).isNothing()).toList();
    if (missing.isEmpty()) {
      return;
    }
    if (names.stream().anyMatch(name -> name.indexOf('\0') >= 0)) {
      throw problem(
          "The header holds NUL signs, as UTF-16 without a byte-order mark does; save the file as"
              + " UTF-8, or name its encoding in a [[sheet]]");
    }
    throw problem(
        form.isPlain()
            ? "The header lacks "
                + Excerpt.list(missing)
                + (looksCutElsewhere() ? " (this sheet is cut at commas)" : "")
                + "; name the columns as the plain sheet does, or describe the file in a [[sheet]]"
                + " (peek proposes one)"
            : "The sheet says nothing of "
                + Excerpt.list(missing)
                + "; name a column for it, or a default, in "
                + form.place());
  }

  /** Where one row is one reading, something must tell which rows are one result. */
  private Stream<String> needed() {
    return Stream.concat(
        layout.required().stream(), form.rowPerReading() ? Stream.of("result") : Stream.of());
  }

  private boolean looksCutElsewhere() {
    return names.size() == 1 && (names.get(0).contains(";") || names.get(0).contains("\t"));
  }

  private void checkNotVital(String name) throws Unusable {
    Optional<String> vital = NearestName.within(1, name, absent(true));
    if (!name.isEmpty() && vital.isPresent()) {
      throw problem(
          "The column "
              + Excerpt.quoted(name)
              + " is not known (did you mean "
              + vital.get()
              + "?); rename it"
              + (form.isPlain() ? "" : ", or name it in columns or ignore of " + form.place()));
    }
  }

  private String whyUnread(String name) {
    if (name.isEmpty()) {
      return "A column without a name is not read; name it or take it out.";
    }
    if (!form.isPlain()) {
      return "The column "
          + Excerpt.quoted(name)
          + " is not named in "
          + form.place()
          + ", and nothing in it was read.";
    }
    return "The column "
        + Excerpt.quoted(name)
        + " is not one of this sheet"
        + NearestName.of(name, absent(false))
            .map(near -> " (did you mean " + near + "?)")
            .orElse("")
        + ", and nothing in it was read.";
  }

  /** Columns the header does not have but could; only the vital ones, or all. */
  private List<String> absent(boolean vitalOnly) {
    List<String> absent = new ArrayList<>();
    for (String name : layout.optional()) {
      if (!vitalOnly || layout.vital().contains(name)) {
        absent.add(name);
      }
    }
    if (!form.columns().containsKey(SheetForm.READINGS)) {
      for (String pattern : layout.numbered()) {
        for (int i = 1; i <= 9; i++) {
          absent.add(Layout.numberedName(pattern, i));
        }
      }
    }
    absent.removeIf(name -> !source(name).isNothing());
    return absent;
  }

  private Unusable problem(String sentence) {
    return FieldPlaces.problem(names, form, sentence);
  }
}
