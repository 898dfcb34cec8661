package org.quietline.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Days and times as a sheet writes them, after ISO 8601: {@code 2026-10-14} and {@code
 * 2026-10-14T09:12}, seconds optional, a blank in place of the T allowed. A day in any other order
 * is not guessed at.
 */
final class TimeText {
  private static final Pattern DAY = Pattern.compile("(\\d{4})-(\\d{2})-(\\d{2})");
  private static final Pattern TIME =
      Pattern.compile(DAY.pattern() + "[T ](\\d{2}):(\\d{2})(?::(\\d{2}))?");
  private static final Pattern ZONED = Pattern.compile(".*\\d(Z|[+-]\\d{2}:?\\d{2})");
  private static final Pattern FRACTION = Pattern.compile(TIME.pattern() + "[.,]\\d+");
  private static final Pattern OTHER_ORDER =
      Pattern.compile("\\d{1,4}[./-]\\d{1,2}[./-]\\d{1,4}(\\D.*)?");

  private TimeText() {}

  static LocalDateTime time(String column, String text) throws Unusable {
    Matcher m = TIME.matcher(text);
    if (!m.matches()) {
      throw new Unusable(
          column, text, Excerpt.quoted(text) + " is not a time (" + timeHint(text) + ").");
    }
    LocalDate day = existing(column, text, m);
    int hour = Integer.parseInt(m.group(4));
    int minute = Integer.parseInt(m.group(5));
    int second = m.group(6) == null ? 0 : Integer.parseInt(m.group(6));
    if (hour > 23 || minute > 59 || second > 59) {
      throw new Unusable(
          column,
          text,
          Excerpt.quoted(text) + " does not exist (a day runs from 00:00:00 to 23:59:59).");
    }
    return day.atTime(hour, minute, second);
  }

  static LocalDate day(String column, String text) throws Unusable {
    Matcher m = DAY.matcher(text);
    if (!m.matches()) {
      throw new Unusable(
          column,
          text,
          Excerpt.quoted(text)
              + " is not a day ("
              + (TIME.matcher(text).matches()
                  ? "a time of day too many? "
                  : OTHER_ORDER.matcher(text).matches()
                      ? "day, month and year in what order? "
                      : "")
              + "write year, month, day as in 2026-10-14).");
    }
    return existing(column, text, m);
  }

  private static LocalDate existing(String column, String text, Matcher m) throws Unusable {
    int year = Integer.parseInt(m.group(1));
    int month = Integer.parseInt(m.group(2));
    int day = Integer.parseInt(m.group(3));
    try {
      return LocalDate.of(year, month, day);
    } catch (DateTimeException e) {
      throw new Unusable(
          column, text, Excerpt.quoted(text) + " does not exist (" + reach(year, month) + ").");
    }
  }

  private static String reach(int year, int month) {
    if (month < 1 || month > 12) {
      return "months run from 01 to 12";
    }
    YearMonth of = YearMonth.of(year, month);
    return of.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH)
        + " "
        + year
        + " has "
        + of.lengthOfMonth()
        + " days";
  }

  private static String timeHint(String text) {
    if (DAY.matcher(text).matches()) {
      return "the time of day is missing; write it as in 2026-10-14T09:12";
    }
    if (ZONED.matcher(text).matches() && text.indexOf(':') >= 0) {
      return "a zone or offset? Write the bench's local time as in 2026-10-14T09:12";
    }
    if (FRACTION.matcher(text).matches()) {
      return "a fraction of a second? Write whole seconds or none, as in 2026-10-14T09:12:30";
    }
    return (OTHER_ORDER.matcher(text).matches() ? "day, month and year in what order? " : "")
        + "write year, month, day and time as in 2026-10-14T09:12";
  }
}
