package org.quietline.intake;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.quietline.bench.Reading;

/**
 * Numbers as a sheet writes them: digits with at most one decimal point and a sign, nothing else.
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
  private static final Pattern DASHES = Pattern.compile("[\\u2010-\\u2015\\u2212].*\\d.*");
  private static final Pattern NOT_FINITE =
      Pattern.compile("(?i)[+-]?(nan|inf|infinity|#n/?a|#div/0!|#value!|#ref!|#num!|∞)");
  private static final Pattern DIGIT = Pattern.compile("\\d");
  private static final int LONGEST = 40;

  private NumberText() {}

  static Reading reading(String column, String text) throws Unusable {
    return Reading.parse(text)
        .orElseThrow(() -> new Unusable(column, text, why(text, ", or <0.010, or nothing")));
  }

  static BigDecimal number(String column, String text) throws Unusable {
    Optional<Reading> reading = Reading.parse(text);
    if (reading.isPresent() && reading.get() instanceof Reading.Measured measured) {
      return measured.value();
    }
    if (reading.isPresent()) {
      throw new Unusable(
          column,
          text,
          Excerpt.quoted(text) + " is a bound where this column takes a plain number.");
    }
    throw new Unusable(column, text, why(text, ""));
  }

  private static String why(String text, String also) {
    return Excerpt.quoted(text) + " is not a number (" + hint(text, also) + ").";
  }

  /** What the text looks like. The order matters: the narrower look comes first. */
  private static String hint(String text, String also) {
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
        : "write one like 0.180" + also;
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
          new Look(DASHES, "a dash where a minus sign - belongs?"),
          new Look(WITH_UNIT, "a unit after the number? It belongs in the column unit"));
}
