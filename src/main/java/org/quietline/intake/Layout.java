package org.quietline.intake;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The columns a sheet may have.
 *
 * @param required columns without which no row can be read
 * @param optional columns that may be left out
 * @param vital optional columns that change what a number means, so that a header that comes close
 *     to one of them is not let pass
 * @param numbered patterns of columns that come as 1, 2, 3 and so on, with # for the number; the
 *     first of them says how many there are
 */
record Layout(
    List<String> required, List<String> optional, Set<String> vital, List<String> numbered) {
  private static final Pattern NUMBER = Pattern.compile("\\d+");

  /** Columns that do not come numbered, first those that are required. */
  List<String> names() {
    return Stream.concat(required.stream(), optional.stream()).toList();
  }

  boolean isKnown(String name) {
    return required.contains(name) || optional.contains(name) || pattern(name).isPresent();
  }

  /** The numbered pattern a name follows, if it follows one. */
  Optional<String> pattern(String name) {
    Matcher number = NUMBER.matcher(name);
    if (!number.find() || number.group().startsWith("0") || number.group().length() > 3) {
      return Optional.empty();
    }
    String pattern = name.substring(0, number.start()) + "#" + name.substring(number.end());
    return numbered.stream().filter(pattern::equals).findFirst();
  }

  static String numberedName(String pattern, int number) {
    return pattern.replace("#", Integer.toString(number));
  }

  static int numberOf(String name) {
    Matcher number = NUMBER.matcher(name);
    return number.find() ? Integer.parseInt(number.group()) : 0;
  }

  /** The header of an empty sheet, with the numbered columns so many times, and its line end. */
  String headerLine(int times) {
    Set<String> columns = new LinkedHashSet<>(required);
    for (int i = 1; i <= times; i++) {
      for (String pattern : numbered) {
        columns.add(pattern.replace("#", Integer.toString(i)));
      }
    }
    columns.addAll(optional);
    return String.join(",", columns) + "\n";
  }
}
