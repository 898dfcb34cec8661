package org.quietline.intake.peek;

import java.util.List;

/** The order in which day, month and year stand. */
enum DayOrder {
  /** Day, month, year. */
  DAY_FIRST("day first", 0, 1, 2),
  /** Month, day, year. */
  MONTH_FIRST("month first", 1, 0, 2),
  /** Year, month, day. */
  YEAR_FIRST("year first", 2, 1, 0);

  private final String words;
  private final int day;
  private final int month;
  private final int year;

  DayOrder(String words, int day, int month, int year) {
    this.words = words;
    this.day = day;
    this.month = month;
    this.year = year;
  }

  String words() {
    return words;
  }

  int day() {
    return day;
  }

  int month() {
    return month;
  }

  int year() {
    return year;
  }

  /** Whether the mould leaves room for this order. */
  boolean fits(String mould) {
    if (mould.contains("MMM")) {
      return this == (mould.startsWith("MMM") ? MONTH_FIRST : DAY_FIRST);
    }
    if (mould.startsWith("YYYY")) {
      return this == YEAR_FIRST;
    }
    return !mould.endsWith("YYYY") || this != YEAR_FIRST;
  }

  /** The format after Unicode LDML of texts that share a mould. */
  String format(String mould, List<TimeShape> shapes) {
    String filled = mould;
    for (int part = 0; part < 3; part++) {
      int at = part;
      boolean one = shapes.stream().anyMatch(s -> s.day().get(at).length() == 1);
      String letters = part == year ? "yy" : part == month ? (one ? "M" : "MM") : one ? "d" : "dd";
      boolean written = part == month && mould.contains("MMM");
      boolean fourDigits = part == year && mould.contains("YYYY");
      if (!written && !fourDigits) {
        filled = filled.replaceFirst(mould.contains("YY") && part == year ? "YY" : "#", letters);
      }
    }
    return filled.replace("YYYY", "yyyy");
  }
}
