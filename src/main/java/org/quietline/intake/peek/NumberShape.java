package org.quietline.intake.peek;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the writing of a number says about its decimal mark. */
enum NumberShape {
  /** No number. */
  NONE,
  /** Digits only. */
  WHOLE,
  /** A decimal point that can be nothing else. */
  POINT,
  /** A decimal comma that can be nothing else. */
  COMMA,
  /** A point before exactly three digits, as a thousands mark stands. */
  POINT_OR_THOUSANDS,
  /** A comma before exactly three digits, as a thousands mark stands. */
  COMMA_OR_THOUSANDS;

  private static final Pattern NUMBER = Pattern.compile("[<>]?\\s*[+-]?(\\d*)(?:([.,])(\\d+))?");

  static NumberShape of(String text) {
    Matcher m = NUMBER.matcher(text);
    if (text.length() > 40 || !m.matches() || (m.group(1).isEmpty() && m.group(2) == null)) {
      return NONE;
    }
    if (m.group(2) == null) {
      return WHOLE;
    }
    boolean comma = m.group(2).equals(",");
    String whole = m.group(1);
    boolean thousands = m.group(3).length() == 3 && whole.matches("[1-9]\\d{0,2}");
    if (thousands) {
      return comma ? COMMA_OR_THOUSANDS : POINT_OR_THOUSANDS;
    }
    return comma ? COMMA : POINT;
  }

  boolean isNumber() {
    return this != NONE;
  }

  boolean hasMark() {
    return this != NONE && this != WHOLE;
  }
}
