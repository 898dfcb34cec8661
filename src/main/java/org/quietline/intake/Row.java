package org.quietline.intake;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.quietline.bench.Origin;
import org.quietline.bench.Reading;

/**
 * One row of a sheet under its header, with ways to ask for the fields.
 *
 * @param file the file
 * @param header what the columns mean
 * @param cells the cells; of a result that takes several rows, those of the first
 * @param gathered the readings of a result that takes several rows; empty where one row holds all
 */
record Row(String file, Header header, Cells cells, List<Reading> gathered) {

  /** A row that is read by itself. */
  Row(String file, Header header, Cells cells) {
    this(file, header, cells, List.of());
  }

  Origin origin() {
    return new Origin(file, cells.line());
  }

  /** The text of a field by its place in the layout; empty when the sheet says nothing of it. */
  String at(int slot) {
    return header.source(slot).of(cells);
  }

  /** The text of a field; empty when the sheet says nothing of it. */
  Optional<String> text(String field) {
    String text = header.source(field).of(cells);
    return text.isEmpty() ? Optional.empty() : Optional.of(text);
  }

  String need(String field) throws Unusable {
    return needed(field, header.source(field).of(cells));
  }

  /** A text that must not be empty. */
  static String needed(String field, String text) throws Unusable {
    if (text.isEmpty()) {
      throw new Unusable(field, "", field + " is empty; every row needs it, write it.");
    }
    return text;
  }

  LocalDateTime needTime(String field) throws Unusable {
    return header.times().time(field, need(field));
  }

  Optional<LocalDate> day(String field) throws Unusable {
    Optional<String> text = text(field);
    return text.isEmpty() ? Optional.empty() : Optional.of(header.times().day(field, text.get()));
  }

  Optional<BigDecimal> number(String field) throws Unusable {
    Optional<String> text = text(field);
    return text.isEmpty() ? Optional.empty() : Optional.of(numberOf(field, text.get()));
  }

  BigDecimal needNumber(String field) throws Unusable {
    return numberOf(field, need(field));
  }

  private BigDecimal numberOf(String field, String text) throws Unusable {
    return NumberText.number(field, text, header.form().decimal());
  }

  /** Makes the record; what its constructor refuses is told at the field its message names. */
  <T> T build(Supplier<T> maker) throws Unusable {
    try {
      return maker.get();
    } catch (IllegalArgumentException e) {
      String message = String.valueOf(e.getMessage());
      String first = message.split(" ", 2)[0];
      boolean isField = !header.source(first).isNothing();
      throw new Unusable(
          isField ? first : RowCheck.WHOLE_ROW,
          isField ? text(first).orElse("") : cells.raw().firstLine(),
          message + "; mend it.");
    }
  }
}
