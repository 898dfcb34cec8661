package org.quietline.intake;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Reads one {@code [[sheet]]} of {@code bench.toml}. Every key that cannot be used is reported, not
 * only the first, and then the whole sheet is set aside: half a description would misread a file.
 */
final class SheetEntry {
  private static final List<String> ENCODINGS =
      List.of("UTF-8", "UTF-16", "UTF-16LE", "UTF-16BE", "windows-1252", "ISO-8859-1");
  private static final List<String> LAYOUTS = List.of("row-per-result", "row-per-reading");
  private static final List<String> LONG_FORM_ONLY = List.of("result", "reading_number");
  private static final String TABLE = "it must be a table such as { sample = \"Vial\" }";

  private final Entry entry;
  private final SettingsNotes notes;
  private final Set<String> fields;
  private final Predicate<String> isNumbered;
  private boolean broken;

  /**
   * Makes a reader.
   *
   * @param entry the table
   * @param notes hears what cannot be used
   * @param fields the fields the sheet may have
   * @param isNumbered whether a name is one of the numbered fields it may have
   */
  SheetEntry(Entry entry, SettingsNotes notes, Set<String> fields, Predicate<String> isNumbered) {
    this.entry = entry;
    this.notes = notes;
    this.fields = fields;
    this.isNumbered = isNumbered;
  }

  /** The form the entry describes; empty when a part of it cannot be used. */
  Optional<SheetForm> read() {
    char delimiter = or(',', this::delimiter);
    Decimal decimal = or(Decimal.POINT, this::decimal);
    Optional<Charset> encoding = or(Optional.empty(), this::encoding);
    boolean header = or(true, () -> entry.flag("header").orElse(true));
    int skip = or(0, this::skipLines);
    List<TimeFormat> times = or(List.of(), () -> formats("time-format", true));
    List<TimeFormat> dates = or(List.of(), () -> formats("date-format", false));
    boolean rowPerReading = or(false, this::rowPerReading);
    Map<String, List<Column>> columns = or(Map.of(), () -> columns(rowPerReading, header));
    Map<String, Map<String, String>> values = or(Map.of(), this::values);
    Map<String, String> defaults = or(Map.of(), this::defaults);
    Set<Column> ignored = or(Set.of(), () -> ignored(columns));
    entry.noteUnknownKeys();
    String place = "the [[sheet]] in bench.toml, line " + entry.line();
    return broken
        ? Optional.empty()
        : Optional.of(
            new SheetForm(
                Optional.of(place),
                delimiter,
                decimal,
                encoding,
                header,
                skip,
                times,
                dates,
                rowPerReading,
                columns,
                values,
                defaults,
                ignored));
  }

  /** Reads one key. */
  private interface Part<T> {
    T read() throws Unusable;
  }

  private <T> T or(T usual, Part<T> part) {
    try {
      return part.read();
    } catch (Unusable e) {
      broken = true;
      notes.add(
          entry.pathOf(e.field()), e.field(), e.text(), e.sentence() + " The sheet was set aside.");
      return usual;
    }
  }

  private char delimiter() throws Unusable {
    Optional<JsonNode> value = entry.at("delimiter");
    if (value.isEmpty()) {
      return ',';
    }
    String text = value.get().isTextual() ? value.get().textValue() : "";
    boolean usable =
        text.length() == 1
            && !Character.isLetterOrDigit(text.charAt(0))
            && "\"\r\n".indexOf(text.charAt(0)) < 0;
    if (!usable) {
      throw entry.wrong("delimiter", "it must be one sign such as \";\" or \"\\t\"");
    }
    return text.charAt(0);
  }

  private Decimal decimal() throws Unusable {
    Optional<String> word = entry.text("decimal");
    return word.isEmpty()
        ? Decimal.POINT
        : Decimal.parse(word.get())
            .orElseThrow(() -> entry.wrong("decimal", "it must be \".\" or \",\" or \"either\""));
  }

  private Optional<Charset> encoding() throws Unusable {
    Optional<String> word = entry.text("encoding");
    if (word.isEmpty()) {
      return Optional.empty();
    }
    return ENCODINGS.stream()
        .filter(word.get()::equalsIgnoreCase)
        .findFirst()
        .map(name -> Optional.of(charset(name)))
        .orElseThrow(() -> entry.wrong("encoding", "it must be one of " + Excerpt.list(ENCODINGS)));
  }

  /** UTF-16 without a mark is big-endian (RFC 2781, 4.3). */
  private static Charset charset(String name) {
    return name.equals("UTF-16") ? StandardCharsets.UTF_16BE : Charset.forName(name);
  }

  private int skipLines() throws Unusable {
    int lines = entry.whole("skip-lines").orElse(0);
    if (lines < 0) {
      throw entry.wrong("skip-lines", "it must be 0 or more");
    }
    return lines;
  }

  private List<TimeFormat> formats(String key, boolean withTime) throws Unusable {
    List<TimeFormat> formats = new ArrayList<>();
    Optional<JsonNode> value = entry.at(key);
    boolean one = value.isPresent() && value.get().isTextual();
    List<String> patterns =
        one ? List.of(value.get().textValue()) : entry.words(key).orElse(List.of());
    if (value.isPresent() && patterns.isEmpty()) {
      throw entry.wrong(key, "it must name at least one format");
    }
    for (String pattern : patterns) {
      formats.add(TimeFormat.of(key, pattern, withTime));
    }
    return formats;
  }

  private boolean rowPerReading() throws Unusable {
    String word = entry.text("layout").orElse(LAYOUTS.get(0));
    if (!LAYOUTS.contains(word)) {
      throw entry.wrong("layout", "it must be " + String.join(" or ", LAYOUTS));
    }
    boolean rowPerReading = word.equals(LAYOUTS.get(1));
    if (rowPerReading && !fields.contains(SheetForm.READINGS)) {
      throw entry.wrong("layout", "only results come as one row a reading");
    }
    return rowPerReading;
  }

  private Map<String, List<Column>> columns(boolean rowPerReading, boolean header) throws Unusable {
    Map<String, List<Column>> columns = new LinkedHashMap<>();
    each(
        "columns",
        (field, value) -> {
          List<Column> named = columnsAt("columns." + field, value);
          checkColumns(field, value, named, rowPerReading);
          if (!header && named.stream().anyMatch(c -> c.number() == 0)) {
            throw wrong(
                "columns",
                field,
                value,
                "without a header a column is named by its number, as in 3");
          }
          columns.put(field, named);
        });
    return columns;
  }

  private void checkColumns(String field, JsonNode value, List<Column> named, boolean rowPerReading)
      throws Unusable {
    boolean readings = field.equals(SheetForm.READINGS);
    boolean moment = field.endsWith("_at");
    if (named.isEmpty() || (named.size() > (moment ? 2 : 1) && (!readings || rowPerReading))) {
      throw wrong(
          "columns", field, value, moment ? "it takes one column or two" : "it takes one column");
    }
    if (!rowPerReading && LONG_FORM_ONLY.contains(field)) {
      throw wrong("columns", field, value, "it is read only with layout = \"row-per-reading\"");
    }
    if (field.startsWith("reading_") && isNumbered.test(field)) {
      boolean twice = rowPerReading || entry.at("columns").get().has(SheetForm.READINGS);
      if (twice) {
        throw wrong("columns", field, value, "the readings stand in columns.readings");
      }
    }
  }

  private List<Column> columnsAt(String key, JsonNode value) throws Unusable {
    List<Column> columns = new ArrayList<>();
    for (JsonNode item : value.isArray() ? value : List.of(value)) {
      boolean name = item.isTextual() && !Excerpt.strip(item.textValue()).isEmpty();
      if (!name && !(item.canConvertToInt() && item.isIntegralNumber() && item.intValue() > 0)) {
        throw new Unusable(
            key,
            show(value),
            key
                + " is "
                + show(value)
                + "; a column is named as in \"Vial\", or by its number from 1.");
      }
      columns.add(name ? Column.named(item.textValue()) : Column.numbered(item.intValue()));
    }
    return columns;
  }

  private Map<String, Map<String, String>> values() throws Unusable {
    Map<String, Map<String, String>> values = new LinkedHashMap<>();
    each("values", (field, value) -> values.put(field, meanings(field, value)));
    return values;
  }

  private static Map<String, String> meanings(String field, JsonNode value) throws Unusable {
    if (!value.isObject()) {
      throw wrong(
          "values",
          field,
          value,
          "it must be a table such as { \"TEXT IN FILE\" = \"text of the bench\" }");
    }
    Map<String, String> meanings = new LinkedHashMap<>();
    for (Map.Entry<String, JsonNode> meaning : value.properties()) {
      if (!meaning.getValue().isTextual()) {
        String name = field + "." + meaning.getKey();
        throw wrong("values", name, meaning.getValue(), "it must be text in quotes");
      }
      meanings.put(Excerpt.strip(meaning.getKey()), Excerpt.strip(meaning.getValue().textValue()));
    }
    return meanings;
  }

  private Map<String, String> defaults() throws Unusable {
    Map<String, String> defaults = new LinkedHashMap<>();
    each(
        "defaults",
        (field, value) -> {
          if (isReading(field)) {
            throw wrong("defaults", field, value, "what is measured has no default");
          }
          if (!value.isTextual()) {
            throw wrong("defaults", field, value, "it must be text in quotes");
          }
          defaults.put(field, Excerpt.strip(value.textValue()));
        });
    return defaults;
  }

  private static boolean isReading(String field) {
    return field.equals(SheetForm.READINGS)
        || field.startsWith("reading_")
        || List.of("value", "result").contains(field);
  }

  private Set<Column> ignored(Map<String, List<Column>> columns) throws Unusable {
    Optional<JsonNode> value = entry.at("ignore");
    if (value.isEmpty()) {
      return Set.of();
    }
    if (!value.get().isArray()) {
      throw entry.wrong("ignore", "it must be a list of columns, such as [\"Average\", 7]");
    }
    Set<Column> ignored = new LinkedHashSet<>(columnsAt("ignore", value.get()));
    for (Map.Entry<String, List<Column>> read : columns.entrySet()) {
      for (Column column : read.getValue()) {
        boolean both =
            ignored.stream().anyMatch(c -> c.toString().equalsIgnoreCase(column.toString()));
        if (both) {
          throw entry.wrong(
              "ignore",
              "the column "
                  + column
                  + " is read as "
                  + read.getKey()
                  + "; name it in one of the two only");
        }
      }
    }
    return ignored;
  }

  /** Takes in one field of a table. */
  private interface Field {
    void take(String field, JsonNode value) throws Unusable;
  }

  /** Goes through a table field by field; each that cannot be used is reported by itself. */
  private void each(String key, Field taker) throws Unusable {
    Optional<JsonNode> table = entry.at(key);
    if (table.isPresent() && !table.get().isObject()) {
      throw entry.wrong(key, TABLE);
    }
    if (table.isPresent()) {
      for (Map.Entry<String, JsonNode> property : table.get().properties()) {
        or(
            "",
            () -> {
              checkField(key, property.getKey());
              taker.take(property.getKey(), property.getValue());
              return "";
            });
      }
    }
  }

  private void checkField(String key, String field) throws Unusable {
    if (!fields.contains(field) && !isNumbered.test(field)) {
      throw new Unusable(
          key + "." + field,
          field,
          Excerpt.quoted(field)
              + " is no field of this sheet"
              + NearestName.hint(field.toLowerCase(Locale.ROOT), fields)
              + ".");
    }
  }

  private static Unusable wrong(String key, String field, JsonNode value, String wanted) {
    String name = key + "." + field;
    return new Unusable(name, show(value), name + " is " + show(value) + "; " + wanted + ".");
  }

  private static String show(JsonNode value) {
    return value.isTextual() ? Excerpt.quoted(value.textValue()) : Excerpt.of(value.toString());
  }
}
