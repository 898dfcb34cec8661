package org.quietline.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Days and times as a sheet writes them: by the formats the settings name for it, else after ISO
 * 8601, {@code 2026-10-14} and {@code 2026-10-14T09:12}, seconds optional, a blank in place of the
 * T allowed. A day in any other order is not guessed at.
 */
final class TimeText {
  private static final Pattern DAY = Pattern.compile("(\\d{4})-(\\d{2})-(\\d{2})");
  private static final Pattern TIME =
      Pattern.compile(DAY.pattern() + "[T ](\\d{2}):(\\d{2})(?::(\\d{2}))?");
  private static final Pattern ZONED = Pattern.compile(".*\\d(Z|[+-]\\d{2}:?\\d{2})");
  private static final Pattern FRACTION = Pattern.compile(TIME.pattern() + "[.,]\\d+");
  private static final Pattern DAY_NUMBER = Pattern.compile("\\d{5}([.,]\\d+)?");
  private static final Pattern OTHER_ORDER =
      Pattern.compile("\\d{1,4}[./-]\\d{1,2}[./-]\\d{1,4}(\\D.*)?");

  private static final int MINUTES_OF_DAY = 1440;

  private final List<TimeFormat> timeFormats;
  private final List<TimeFormat> dayFormats;
  private final @Nullable LocalTime[] minutes = new LocalTime[MINUTES_OF_DAY];
  private LocalDate lastDay = LocalDate.EPOCH;

  /** Reads by the formats given, or where none is given, after ISO 8601. */
  TimeText(List<TimeFormat> timeFormats, List<TimeFormat> dayFormats) {
    this.timeFormats = timeFormats;
    this.dayFormats = dayFormats;
  }

  LocalDateTime time(String field, String text) throws Unusable {
    return timeFormats.isEmpty()
        ? isoTime(field, text)
        : byFormats(field, text, "a time", timeFormats, f -> f.time(text));
  }

  LocalDate day(String field, String text) throws Unusable {
    return dayFormats.isEmpty()
        ? isoDay(field, text)
        : byFormats(field, text, "a day", dayFormats, f -> f.day(text));
  }

  /** A text that two formats read as two different times could mean either, so it means neither. */
  private static <T> T byFormats(
      String field,
      String text,
      String kind,
      List<TimeFormat> formats,
      Function<TimeFormat, Optional<T>> reading)
      throws Unusable {
    Map<T, TimeFormat> read = new LinkedHashMap<>();
    for (TimeFormat format : formats) {
      reading.apply(format).ifPresent(value -> read.putIfAbsent(value, format));
    }
    if (read.size() == 1) {
      return read.keySet().iterator().next();
    }
    if (read.isEmpty()) {
      throw new Unusable(
          field,
          text,
          Excerpt.quoted(text)
              + " is not "
              + kind
              + " that exists, written "
              + formats.stream().map(TimeFormat::toString).collect(Collectors.joining(" or "))
              + "; correct it, or the format in its [[sheet]].");
    }
    throw new Unusable(
        field,
        text,
        Excerpt.quoted(text)
            + " can be read as "
            + read.entrySet().stream()
                .map(e -> e.getKey() + " (" + e.getValue() + ")")
                .collect(Collectors.joining(" or as "))
            + "; leave only one of these formats in its [[sheet]].");
  }

  private LocalDateTime isoTime(String field, String text) throws Unusable {
    int length = text.length();
    if ((length == 16 || length == 19) && hasIsoMarks(text, length)) {
      int hour = two(text, 11);
      int minute = two(text, 14);
      int second = length == 19 ? two(text, 17) : 0;
      LocalDate day = dayAt(text);
      if (day != null && isIn(hour, 24) && isIn(minute, 60) && isIn(second, 60)) {
        return LocalDateTime.of(day, timeOfDay(hour, minute, second));
      }
    }
    return isoTimeOrReason(field, text);
  }

  private static boolean hasIsoMarks(String text, int length) {
    return text.charAt(4) == '-'
        && text.charAt(7) == '-'
        && (text.charAt(10) == 'T' || text.charAt(10) == ' ')
        && text.charAt(13) == ':'
        && (length == 16 || text.charAt(16) == ':');
  }

  private static boolean isIn(int number, int bound) {
    return number >= 0 && number < bound;
  }

  /** The number of two digits at a place, negative when one of them is none. */
  private static int two(String text, int at) {
    int tens = text.charAt(at) - '0';
    int ones = text.charAt(at + 1) - '0';
    return isIn(tens, 10) && isIn(ones, 10) ? 10 * tens + ones : -1;
  }

  private @Nullable LocalDate dayAt(String text) {
    int century = two(text, 0);
    int year = two(text, 2);
    int month = two(text, 5);
    int day = two(text, 8);
    if (century < 0 || year < 0 || month < 1 || month > 12 || day < 1 || day > 28) {
      return null;
    }
    int whole = 100 * century + year;
    boolean same =
        lastDay.getDayOfMonth() == day
            && lastDay.getMonthValue() == month
            && lastDay.getYear() == whole;
    lastDay = same ? lastDay : LocalDate.of(whole, month, day);
    return lastDay;
  }

  private LocalTime timeOfDay(int hour, int minute, int second) {
    if (second > 0) {
      return LocalTime.of(hour, minute, second);
    }
    LocalTime known = minutes[60 * hour + minute];
    if (known == null) {
      known = LocalTime.of(hour, minute);
      minutes[60 * hour + minute] = known;
    }
    return known;
  }

  private static LocalDateTime isoTimeOrReason(String field, String text) throws Unusable {
    Matcher m = TIME.matcher(text);
    if (!m.matches()) {
      throw new Unusable(
          field, text, Excerpt.quoted(text) + " is not a time (" + timeHint(text) + ").");
    }
    LocalDate day = existing(field, text, m);
    int hour = Integer.parseInt(m.group(4));
    int minute = Integer.parseInt(m.group(5));
    int second = m.group(6) == null ? 0 : Integer.parseInt(m.group(6));
    if (hour > 23 || minute > 59 || second > 59) {
      throw new Unusable(
          field,
          text,
          Excerpt.quoted(text) + " does not exist (a day runs from 00:00:00 to 23:59:59).");
    }
    return day.atTime(hour, minute, second);
  }

  private static LocalDate isoDay(String field, String text) throws Unusable {
    Matcher m = DAY.matcher(text);
    if (!m.matches()) {
      throw new Unusable(
          field,
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
    return existing(field, text, m);
  }

  private static LocalDate existing(String field, String text, Matcher m) throws Unusable {
    int year = Integer.parseInt(m.group(1));
    int month = Integer.parseInt(m.group(2));
    int day = Integer.parseInt(m.group(3));
    try {
      return LocalDate.of(year, month, day);
    } catch (DateTimeException e) {
      throw new Unusable(
          field, text, Excerpt.quoted(text) + " does not exist (" + reach(year, month) + ").");
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
    if (DAY_NUMBER.matcher(text).matches()) {
      return "a day number of a spreadsheet? Give the column a date format there, as in"
          + " 2026-10-14T09:12";
    }
    if (FRACTION.matcher(text).matches()) {
      return "a fraction of a second? Write whole seconds or none, as in 2026-10-14T09:12:30";
    }
    return (OTHER_ORDER.matcher(text).matches() ? "day, month and year in what order? " : "")
        + "write year, month, day and time as in 2026-10-14T09:12";
  }
}
