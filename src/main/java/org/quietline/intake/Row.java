package org.quietline.intake;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Supplier;
import org.quietline.bench.Origin;

/** One row of a sheet under its header, with ways to ask for what stands in a column. */
record Row(String file, Header header, Piece.Cells cells) {

  Origin origin() {
    return new Origin(file, cells.line());
  }

  /** The text in a column; empty when the sheet lacks the column or the cell is empty. */
  Optional<String> text(String column) {
    OptionalInt place = header.placeOf(column);
    return place.isEmpty()
        ? Optional.empty()
        : Optional.of(cells.cells().get(place.getAsInt())).filter(cell -> !cell.isEmpty());
  }

  String need(String column) throws Unusable {
    return text(column)
        .orElseThrow(
            () -> new Unusable(column, "", column + " is empty; every row needs it, write it."));
  }

  LocalDateTime needTime(String column) throws Unusable {
    return TimeText.time(column, need(column));
  }

  Optional<LocalDate> day(String column) throws Unusable {
    Optional<String> text = text(column);
    return text.isEmpty() ? Optional.empty() : Optional.of(TimeText.day(column, text.get()));
  }

  Optional<BigDecimal> number(String column) throws Unusable {
    Optional<String> text = text(column);
    return text.isEmpty() ? Optional.empty() : Optional.of(NumberText.number(column, text.get()));
  }

  BigDecimal needNumber(String column) throws Unusable {
    return NumberText.number(column, need(column));
  }

  /** Makes the record; what its constructor refuses is told at the column its message names. */
  <T> T build(Supplier<T> maker) throws Unusable {
    try {
      return maker.get();
    } catch (IllegalArgumentException e) {
      String message = String.valueOf(e.getMessage());
      String first = message.split(" ", 2)[0];
      boolean isColumn = header.placeOf(first).isPresent();
      throw new Unusable(
          isColumn ? first : RowCheck.WHOLE_ROW,
          isColumn ? text(first).orElse("") : cells.start(),
          message + "; mend it.");
    }
  }
}
