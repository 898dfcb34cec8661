package org.quietline.intake.peek;

import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;

/** Text of the file as it is shown: short, and without signs that do not print. */
final class Shown {
  private static final int LONGEST = 48;

  private Shown() {}

  static String of(String text) {
    String cut = text.length() > LONGEST ? text.substring(0, LONGEST - 1) + "…" : text;
    return cut.codePoints()
        .map(c -> c == '\t' ? ' ' : c)
        .map(
            c -> Character.isISOControl(c) || Character.getType(c) == Character.FORMAT ? 0xFFFD : c)
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }

  static String quoted(String text) {
    return '"' + of(text) + '"';
  }

  /** At most so many texts, quoted, and how many more there are. */
  static String some(Collection<String> texts, int most) {
    String first = texts.stream().limit(most).map(Shown::quoted).collect(Collectors.joining(", "));
    return texts.size() > most ? first + " and " + (texts.size() - most) + " more" : first;
  }

  static String counted(long n, String what) {
    return n + " " + what + (n == 1 ? "" : "s");
  }

  /** Names in a row with a last "and". */
  static String and(List<String> names) {
    int last = names.size() - 1;
    return last < 1
        ? String.join("", names)
        : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
  }
}
