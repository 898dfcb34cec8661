package org.quietline.intake;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.quietline.bench.Reading;

/**
 * Numbers as a sheet writes them: digits with at most one decimal mark and a sign, nothing else.
 * What is written otherwise is never guessed at, but the reason says what it looks like.
 */
final class NumberText {
  private static final Pattern DECIMAL_COMMA = Pattern.compile("[<>+-]?\\s*\\d*,\\d+");
  private static final Pattern THOUSANDS =
      Pattern.compile("[<>+-]?\\s*\\d{1,3}([,' \\u00A0\\u202F\\u2019]\\d{3})+(\\.\\d*)?");
  private static final Pattern POINTS_AND_COMMA =
      Pattern.compile("[<>+-]?\\s*\\d{1,3}(\\.\\d{3})+,\\d+");
  private static final Pattern EXPONENT = Pattern.compile("[<>+-]?\\s*\\d+(\\.\\d*)?[eE][+-]?\\d+");
  private static final Pattern WITH_LETTER_O =
      Pattern.compile("(?=.*[Oo])(?=.*\\d)[<>+-]?\\s*[0-9Oo.,]*");
  private static final Pattern WITH_LETTER_L =
      Pattern.compile("(?=.*[lI])(?=.*\\d)[<>+-]?\\s*[0-9OolI.,]*");
  private static final Pattern WITH_UNIT = Pattern.compile("[<>+-]?\\s*[0-9.]*\\d\\s*[a-zA-Zµ].*");
  private static final Pattern BOUND_OR_EQUAL = Pattern.compile("(<=|>=|≤|≥|=<|=>).*");
  private static final Pattern TWO_POINTS = Pattern.compile("[<>+-]?\\s*[0-9]*\\.[0-9]*\\.[0-9.]*");
  private static final Pattern CURLY_QUOTES =
      Pattern.compile("[\\u2018-\\u201F\\u00AB\\u00BB'].*\\d.*[\\u2018-\\u201F\\u00AB\\u00BB']");
  private static final Pattern OTHER_DIGITS = Pattern.compile("\\D*\\p{Nd}\\D*");
  private static final Pattern DASHES = Pattern.compile("[\\u2010-\\u2015\\u2212].*\\d.*");
  private static final Pattern NOT_FINITE =
      Pattern.compile("(?i)[+-]?(nan|inf|infinity|#n/?a|#div/0!|#value!|#ref!|#num!|∞)");
  private static final Pattern DIGIT = Pattern.compile("\\d");
  private static final Pattern DECIMAL_POINT = Pattern.compile("[<>+-]?\\s*\\d*\\.\\d+");
  private static final int KEPT_DIGITS = 4096;
  private static final @Nullable Reading[][] KEPT = new Reading[5][KEPT_DIGITS];
  private static final int LONGEST = 40;
  private static final int MOST_SHORT_DIGITS = 18;

  private NumberText() {}

  static Reading reading(String field, String text, Decimal decimal) throws Unusable {
    Reading plain = plain(text, decimal);
    if (plain != null) {
      return plain;
    }
    return parse(text, decimal)
        .orElseThrow(
            () -> new Unusable(field, text, why(text, decimal, ", or <0.010, or nothing")));
  }

  static BigDecimal number(String field, String text, Decimal decimal) throws Unusable {
    Optional<Reading> reading = parse(text, decimal);
    if (reading.isPresent() && reading.get() instanceof Reading.Measured measured) {
      return measured.value();
    }
    if (reading.isPresent()) {
      throw new Unusable(
          field,
          text,
          Excerpt.quoted(text) + " is a bound where this column takes a plain number.");
    }
    throw new Unusable(field, text, why(text, decimal, ""));
  }

  /** Reads what nearly all cells are, digits with at most one mark; null when it is not that. */
  private static @Nullable Reading plain(String text, Decimal decimal) {
    int length = text.length();
    if (length == 0 || length > MOST_SHORT_DIGITS) {
      return null;
    }
    long digits = 0;
    int mark = -1;
    for (int i = 0; i < length; i++) {
      char c = text.charAt(i);
      if (c >= '0' && c <= '9') {
        digits = 10 * digits + (c - '0');
      } else if (mark < 0 && decimal.isMark(c)) {
        mark = i;
      } else {
        return null;
      }
    }
    if (mark >= 0 && length == 1) {
      return null;
    }
    return measured(digits, mark < 0 ? 0 : length - 1 - mark);
  }

  /** Readings of few digits are the same again and again, and one of each is kept. */
  private static Reading measured(long digits, int decimals) {
    if (digits >= KEPT_DIGITS || decimals >= KEPT.length) {
      return new Reading.Measured(BigDecimal.valueOf(digits, decimals));
    }
    Reading kept = KEPT[decimals][(int) digits];
    if (kept == null) {
      kept = new Reading.Measured(BigDecimal.valueOf(digits, decimals));
      KEPT[decimals][(int) digits] = kept;
    }
    return kept;
  }

  private static Optional<Reading> parse(String text, Decimal decimal) {
    if (decimal == Decimal.POINT) {
      return Reading.parse(text);
    }
    boolean foreign = decimal == Decimal.COMMA && text.indexOf('.') >= 0;
    return foreign ? Optional.empty() : Reading.parse(text.replace(',', '.'));
  }

  private static String why(String text, Decimal decimal, String also) {
    return Excerpt.quoted(text) + " is not a number (" + hint(text, decimal, also) + ").";
  }

  /** What the text looks like. The order matters: the narrower look comes first. */
  private static String hint(String text, Decimal decimal, String also) {
    if (decimal == Decimal.COMMA && DECIMAL_POINT.matcher(text).matches()) {
      return "a decimal point? This sheet writes a decimal comma";
    }
    if (decimal != Decimal.POINT && text.indexOf(',') != text.lastIndexOf(',')) {
      return "two decimal marks";
    }
    for (Look look : LOOKS) {
      if (look.shape.matcher(text).matches()) {
        return look.hint;
      }
    }
    if (text.indexOf('%') >= 0) {
      return "a percent sign? The unit belongs in the column unit";
    }
    if (!DIGIT.matcher(text).find()) {
      return "a word where a number belongs? Leave it empty where nothing was read";
    }
    return text.length() > LONGEST
        ? "it is longer than " + LONGEST + " signs"
        : (decimal == Decimal.COMMA
            ? "write one like 0,180" + also.replace('.', ',')
            : "write one like 0.180" + also);
  }

  private record Look(Pattern shape, String hint) {}

  private static final List<Look> LOOKS =
      List.of(
          new Look(NOT_FINITE, "not a value at all; leave it empty where nothing was read"),
          new Look(
              THOUSANDS,
              "a thousands mark or a decimal comma? Write no thousands mark, and a decimal point"),
          new Look(POINTS_AND_COMMA, "thousands marks and a decimal comma? Write only a point"),
          new Look(DECIMAL_COMMA, "a decimal comma? This sheet writes a decimal point"),
          new Look(TWO_POINTS, "two decimal points"),
          new Look(EXPONENT, "an exponent? Write the number out"),
          new Look(WITH_LETTER_O, "a letter O where a zero belongs?"),
          new Look(WITH_LETTER_L, "a letter l or I where a one belongs?"),
          new Look(BOUND_OR_EQUAL, "below a bound is written <0.010, above it >2.5"),
          new Look(CURLY_QUOTES, "quotes around the number? Take them out"),
          new Look(OTHER_DIGITS, "digits of another script? Write 0 to 9"),
          new Look(DASHES, "a dash where a minus sign - belongs?"),
          new Look(WITH_UNIT, "a unit after the number? It belongs in the column unit"));
}
