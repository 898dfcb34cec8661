package org.quietline.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/**
 * How numbers of one method are printed.
 *
 * <p>The rounding rule is {@link #RULE}: to the nearest printed digit, a tie to the even digit,
 * taken on the shortest decimal that stands for the double. Source: ISO 80000-1:2009, annex B, rule
 * A; ASTM E29, rounding method (both from memory). A minus is the minus sign U+2212.
 *
 * @param decimals the decimals of the method's results
 */
record Numbers(int decimals) {
  /** The rounding rule of every printed number. */
  static final RoundingMode RULE = RoundingMode.HALF_EVEN;

  /** A result, with the method's decimals. */
  String result(double value) {
    return fixed(value, decimals);
  }

  /** A limit, a mean or a distance: one decimal more than a result. */
  String fine(double value) {
    return fixed(value, decimals + 1);
  }

  /** A change with its sign, one decimal more than a result. */
  String signed(double value) {
    String text = fine(value);
    boolean zero = text.chars().noneMatch(c -> c >= '1' && c <= '9');
    return text.startsWith("−") || zero ? text : "+" + text;
  }

  /** A size without its sign, to the place where a scale has its second significant digit. */
  static String sizeLike(double value, double scale) {
    return fixed(Math.abs(value), places(scale));
  }

  /** A number with its sign, to the place where a scale has its second significant digit. */
  static String signedLike(double value, double scale) {
    String text = fixed(value, places(scale));
    boolean zero = text.chars().noneMatch(c -> c >= '1' && c <= '9');
    return text.startsWith("−") || zero ? text : "+" + text;
  }

  private static int places(double scale) {
    BigDecimal exact = BigDecimal.valueOf(Math.abs(scale));
    return exact.signum() == 0 ? 0 : Math.max(0, toTwoDigits(toTwoDigits(exact)).scale());
  }

  /** An uncertainty or a deviation: two significant digits. */
  static String uncertainty(double value) {
    BigDecimal exact = BigDecimal.valueOf(value);
    if (exact.signum() == 0) {
      return "0";
    }
    BigDecimal rounded = toTwoDigits(exact);
    return minus(toTwoDigits(rounded).toPlainString());
  }

  private static BigDecimal toTwoDigits(BigDecimal exact) {
    int exponent = exact.precision() - exact.scale() - 1;
    return exact.setScale(1 - exponent, RULE);
  }

  /** A number with so many significant digits, for a reader who recomputes. */
  static String figures(double value, int digits) {
    BigDecimal exact = BigDecimal.valueOf(value);
    int exponent = exact.precision() - exact.scale() - 1;
    return exact.signum() == 0 ? "0" : fixed(value, Math.max(0, digits - 1 - exponent));
  }

  /** A number with a fixed count of decimals. */
  static String fixed(double value, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RULE);
    return minus(rounded.signum() == 0 ? rounded.abs().toPlainString() : rounded.toPlainString());
  }

  /** A number as the bench wrote it. */
  static String written(BigDecimal value) {
    return minus(value.toPlainString());
  }

  /** A chance or a share between 0 and 1, in per cent. */
  static String percent(double share) {
    if (share > 0 && share < 0.001) {
      return "under 0.1 %";
    }
    if (share < 1 && share > 0.999) {
      return "over 99.9 %";
    }
    double percent = share * 100;
    boolean whole = percent == 0 || percent >= 9.95;
    return fixed(percent, (whole && percent < 99) || percent == 100 ? 0 : 1) + " %";
  }

  /** A count with its noun, in the singular for one. */
  static String count(long number, String one, String many) {
    return String.format(Locale.ROOT, "%d %s", number, number == 1 ? one : many);
  }

  private static String minus(String text) {
    return text.replace('-', '−');
  }
}
