package org.quietline.report.pdf;

import java.util.regex.Pattern;

/** Words that belong on one line: a number and its unit, a day and its month, {@code n = 5}. */
final class Bonds {
  private static final char BOND = '\u00A0';
  private static final Pattern TOGETHER =
      Pattern.compile(
          "(?<=\\d) (?=%)|(?<=%) (?=mass)|(?<=\\bn) (?== \\d)|(?<=\\bn =) (?=\\d)"
              + "|(?<=\\b\\d{1,2}) (?=[JFMASOND][a-z]{2,8}\\b)"
              + "|(?<=\\b\\d{1,6}) (?=(?:day|result|reading|pair)s?\\b)");

  private Bonds() {}

  /** The text with unbreakable spaces where words belong together. */
  static String of(String text) {
    return TOGETHER.matcher(text).replaceAll(String.valueOf(BOND));
  }

  /** The text with plain spaces again, so that it can be searched for. */
  static String loosened(String text) {
    return text.replace(BOND, ' ');
  }
}
