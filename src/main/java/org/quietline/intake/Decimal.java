package org.quietline.intake;

import java.util.Arrays;
import java.util.Optional;

/** Which sign a sheet writes between whole and fraction. */
enum Decimal {
  POINT("."),
  COMMA(","),
  EITHER("either");

  private final String word;

  Decimal(String word) {
    this.word = word;
  }

  /** The word for it in the settings. */
  String word() {
    return word;
  }

  static Optional<Decimal> parse(String word) {
    return Arrays.stream(values()).filter(d -> d.word.equals(word)).findFirst();
  }

  /** Whether a sign is a decimal mark here. */
  boolean isMark(char c) {
    return (c == '.' && this != COMMA) || (c == ',' && this != POINT);
  }
}
