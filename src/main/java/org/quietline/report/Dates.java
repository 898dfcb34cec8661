package org.quietline.report;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import org.quietline.assess.Period;

/** Dates as words, written so that no one mistakes day for month. */
final class Dates {
  private static final DateTimeFormatter FULL =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT =
      DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
  private static final DateTimeFormatter MONTH =
      DateTimeFormatter.ofPattern("MMMM uuuu", Locale.ENGLISH);
  private static final double SECONDS_A_DAY = 86_400;

  private Dates() {}

  /** "14 October 2026". */
  static String full(LocalDate day) {
    return FULL.format(day);
  }

  /** "14 October 2026". */
  static String full(LocalDateTime moment) {
    return full(moment.toLocalDate());
  }

  /** "14 Oct 2026, 09:12". */
  static String minute(LocalDateTime moment) {
    return MINUTE.format(moment);
  }

  /** "14 Oct". */
  static String brief(LocalDate day) {
    return SHORT.format(day);
  }

  /** "October 2026" for a whole month, otherwise both ends. */
  static String period(Period period) {
    YearMonth month = YearMonth.from(period.from());
    if (period.equals(Period.of(month))) {
      return MONTH.format(month);
    }
    return full(period.from()) + " to " + full(period.to());
  }

  /** "14 October 2026", "14 to 16 October 2026", or both ends in full. */
  static String span(LocalDate from, LocalDate to) {
    if (from.equals(to)) {
      return full(from);
    }
    boolean oneMonth = YearMonth.from(from).equals(YearMonth.from(to));
    return (oneMonth ? String.valueOf(from.getDayOfMonth()) : full(from)) + " to " + full(to);
  }

  /** "14 Oct to 3 November 2026", or both years where they differ. */
  static String stretch(LocalDate from, LocalDate to) {
    return (from.getYear() == to.getYear() ? brief(from) : full(from)) + " to " + full(to);
  }

  /** Whole days from one day to another. */
  static long days(LocalDate from, LocalDate to) {
    return ChronoUnit.DAYS.between(from, to);
  }

  /** A moment on the axis of days, counted from 1970-01-01. */
  static double onAxis(LocalDateTime moment) {
    return moment.toLocalDate().toEpochDay() + moment.toLocalTime().toSecondOfDay() / SECONDS_A_DAY;
  }
}
