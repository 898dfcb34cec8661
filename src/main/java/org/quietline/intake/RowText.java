package org.quietline.intake;

import java.util.Collection;
import java.util.Optional;
import java.util.stream.Collectors;

/** Parts of records as text, the same for equal parts only. */
final class RowText {
  private RowText() {}

  static String of(Optional<?> value) {
    return value.map(Object::toString).orElse("");
  }

  static String of(Collection<?> values) {
    return values.stream().map(Object::toString).collect(Collectors.joining(" "));
  }
}
