package org.quietline.intake;

import java.nio.charset.Charset;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * How the rows of a sheet are written and what its columns mean.
 *
 * @param described where the settings describe it, such as {@code the [[sheet]] in bench.toml, line
 *     28}; empty for the plain sheet
 * @param delimiter what stands between two fields
 * @param decimal what stands between whole and fraction
 * @param encoding the encoding, if one is named
 * @param header whether the first row names the columns
 * @param skipLines how many lines stand before the header or the first row
 * @param timeFormats how times are written; empty for ISO 8601
 * @param dateFormats how days are written; empty for ISO 8601
 * @param rowPerReading whether one row is one reading, not one result
 * @param columns the columns from which a field is read
 * @param values what texts of the file mean, by field
 * @param defaults what a field is where the sheet says nothing of it
 * @param ignored columns that are known and not read
 */
record SheetForm(
    Optional<String> described,
    char delimiter,
    Decimal decimal,
    Optional<Charset> encoding,
    boolean header,
    int skipLines,
    List<TimeFormat> timeFormats,
    List<TimeFormat> dateFormats,
    boolean rowPerReading,
    Map<String, List<Column>> columns,
    Map<String, Map<String, String>> values,
    Map<String, String> defaults,
    Set<Column> ignored) {
  /** The field whose columns are the readings. */
  static final String READINGS = "readings";

  /** The sheet that needs no description. */
  static final SheetForm PLAIN =
      new SheetForm(
          Optional.empty(),
          ',',
          Decimal.POINT,
          Optional.empty(),
          true,
          0,
          List.of(),
          List.of(),
          false,
          Map.of(),
          Map.of(),
          Map.of(),
          Set.of());

  SheetForm {
    timeFormats = List.copyOf(timeFormats);
    dateFormats = List.copyOf(dateFormats);
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
    values = Map.copyOf(values);
    defaults = Collections.unmodifiableMap(new LinkedHashMap<>(defaults));
    ignored = Set.copyOf(ignored);
  }

  boolean isPlain() {
    return described.isEmpty();
  }

  /** Where a person mends the description, for the end of a sentence. */
  String place() {
    return described.orElse("the plain sheet");
  }
}
