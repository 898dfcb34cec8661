package org.quietline.bench;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * One number off the instrument, one replicate, or what stands in its place. A censored reading is
 * a case of its own and is never averaged as a number.
 */
public sealed interface Reading {

  /**
   * Multiplies by a unit's factor.
   *
   * @param factor the exact factor
   * @return the same kind of reading in the other unit
   */
  Reading times(BigDecimal factor);

  /**
   * A plain number.
   *
   * @param value as written, with its digits
   */
  record Measured(BigDecimal value) implements Reading {
    @Override
    public Reading times(BigDecimal factor) {
      return new Measured(value.multiply(factor));
    }

    @Override
    public String toString() {
      return value.toPlainString();
    }
  }

  /**
   * Below what can be measured, {@code <0.010}.
   *
   * @param bound the bound as written
   */
  record Below(BigDecimal bound) implements Reading {
    @Override
    public Reading times(BigDecimal factor) {
      return new Below(bound.multiply(factor));
    }

    @Override
    public String toString() {
      return "<" + bound.toPlainString();
    }
  }

  /**
   * Above what can be measured, {@code >2.5}.
   *
   * @param bound the bound as written
   */
  record Above(BigDecimal bound) implements Reading {
    @Override
    public Reading times(BigDecimal factor) {
      return new Above(bound.multiply(factor));
    }

    @Override
    public String toString() {
      return ">" + bound.toPlainString();
    }
  }

  /** Nothing was written down. */
  record Missing() implements Reading {
    @Override
    public Reading times(BigDecimal factor) {
      return this;
    }

    @Override
    public String toString() {
      return "";
    }
  }

  /**
   * Reads what {@link Object#toString()} of a reading writes. A decimal point, no exponent, no
   * thousands mark.
   *
   * @param text the text, blank for a missing reading
   * @return empty when the text is no reading
   */
  static Optional<Reading> parse(String text) {
    String t = text.strip();
    if (t.isEmpty()) {
      return Optional.of(new Missing());
    }
    char first = t.charAt(0);
    boolean censored = first == '<' || first == '>';
    String digits = censored ? t.substring(1).strip() : t;
    if (!isPlainNumber(digits)) {
      return Optional.empty();
    }
    BigDecimal number = new BigDecimal(digits);
    if (!censored) {
      return Optional.of(new Measured(number));
    }
    return Optional.of(first == '<' ? new Below(number) : new Above(number));
  }

  private static boolean isPlainNumber(String digits) {
    int start = digits.startsWith("-") || digits.startsWith("+") ? 1 : 0;
    boolean seenDigit = false;
    boolean seenPoint = false;
    for (int i = start; i < digits.length(); i++) {
      char c = digits.charAt(i);
      if (c >= '0' && c <= '9') {
        seenDigit = true;
      } else if (c == '.' && !seenPoint) {
        seenPoint = true;
      } else {
        return false;
      }
    }
    return seenDigit && digits.length() <= 40;
  }
}
