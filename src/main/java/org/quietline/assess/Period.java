package org.quietline.assess;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;

/**
 * The days under review.
 *
 * @param from the first day, included
 * @param to the last day, included
 */
public record Period(LocalDate from, LocalDate to) {
  /** Checks the order. */
  public Period {
    if (to.isBefore(from)) {
      throw new IllegalArgumentException("the period ends on " + to + ", before it starts " + from);
    }
  }

  /**
   * A whole month.
   *
   * @param month the month
   * @return its first to its last day
   */
  public static Period of(YearMonth month) {
    return new Period(month.atDay(1), month.atEndOfMonth());
  }

  /**
   * Whether a moment falls inside.
   *
   * @param moment local time of the bench
   * @return true from the first day's start to the last day's end
   */
  public boolean contains(LocalDateTime moment) {
    LocalDate day = moment.toLocalDate();
    return !day.isBefore(from) && !day.isAfter(to);
  }
}
