package org.quietline.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * One way to write a time or a day, after Unicode LDML (UTS 35): y M d H h m s a, text in single
 * quotes as it stands. A year of two digits is one from 2000 to 2099; names of months are English.
 */
final class TimeFormat {
  private static final String LETTERS = "yMdHhmsa";
  private static final Pattern YEAR = Pattern.compile("(?<!y)(?:yy|yyyy)(?!y)");

  private final String pattern;
  private final DateTimeFormatter formatter;

  private TimeFormat(String pattern, DateTimeFormatter formatter) {
    this.pattern = pattern;
    this.formatter = formatter;
  }

  /**
   * Makes a format of a pattern.
   *
   * @throws Unusable without a field, with the end of a sentence that says what the pattern lacks
   */
  static TimeFormat of(String key, String pattern, boolean withTime) throws Unusable {
    Set<Character> letters = lettersOf(pattern);
    for (char letter : letters) {
      if (LETTERS.indexOf(letter) < 0) {
        throw problem(key, pattern, "the letter " + letter + " is none of y M d H h m s a");
      }
      if (!withTime && "Hhmsa".indexOf(letter) >= 0) {
        throw problem(key, pattern, "a day has no time of day, only y M d");
      }
    }
    for (char needed : (withTime ? "yMdm" : "yMd").toCharArray()) {
      if (!letters.contains(needed)) {
        throw problem(key, pattern, "it lacks " + needed);
      }
    }
    if (!YEAR.matcher(pattern).find()) {
      throw problem(key, pattern, "write the year as yyyy, or as yy where it has two digits");
    }
    boolean half = letters.contains('h');
    if (withTime && half == letters.contains('H')) {
      throw problem(key, pattern, "write the hour once, H from 0 to 23 or h from 1 to 12 with a");
    }
    if (half != letters.contains('a')) {
      throw problem(key, pattern, "h from 1 to 12 and a for AM or PM go together");
    }
    return new TimeFormat(pattern, formatter(key, pattern));
  }

  private static Set<Character> lettersOf(String pattern) {
    Set<Character> letters = new TreeSet<>();
    boolean quoted = false;
    for (int i = 0; i < pattern.length(); i++) {
      char c = pattern.charAt(i);
      quoted ^= c == '\'';
      if (!quoted && ((c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'))) {
        letters.add(c);
      }
    }
    return letters;
  }

  private static DateTimeFormatter formatter(String key, String pattern) throws Unusable {
    try {
      return new DateTimeFormatterBuilder()
          .parseCaseInsensitive()
          .appendPattern(yearsWithoutEra(pattern))
          .toFormatter(Locale.ENGLISH)
          .withResolverStyle(ResolverStyle.STRICT);
    } catch (IllegalArgumentException e) {
      throw problem(key, pattern, "it is none that can be read, such as dd/MM/yyyy HH:mm");
    }
  }

  /** The pattern letter u is the year that needs no era. */
  private static String yearsWithoutEra(String pattern) {
    StringBuilder result = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < pattern.length(); i++) {
      char c = pattern.charAt(i);
      quoted ^= c == '\'';
      result.append(c == 'y' && !quoted ? 'u' : c);
    }
    return result.toString();
  }

  private static Unusable problem(String key, String pattern, String why) {
    return new Unusable(key, pattern, key + " is " + Excerpt.quoted(pattern) + "; " + why + ".");
  }

  Optional<LocalDateTime> time(String text) {
    try {
      return Optional.of(LocalDateTime.parse(text, formatter));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  Optional<LocalDate> day(String text) {
    try {
      return Optional.of(LocalDate.parse(text, formatter));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  @Override
  public String toString() {
    return pattern;
  }
}
