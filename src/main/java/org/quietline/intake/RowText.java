package org.quietline.intake;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.Optional;
import java.util.stream.Collectors;

/** Parts of records as they are shown to a person. */
final class RowText {
  private RowText() {}

  static String of(Object value) {
    if (value instanceof Optional<?> optional) {
      return optional.map(RowText::of).orElse("");
    }
    if (value instanceof Collection<?> values) {
      return values.stream().map(RowText::of).collect(Collectors.joining(" "));
    }
    return value instanceof BigDecimal number ? number.toPlainString() : value.toString();
  }
}
