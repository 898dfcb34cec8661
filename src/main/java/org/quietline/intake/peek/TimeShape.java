package org.quietline.intake.peek;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How one text writes a day, a time of day, or both, before anybody knows which number is the day.
 *
 * @param text the day as written
 * @param day the three parts of the day, as written; empty where there is none
 * @param mould the day with its parts left out, the same for texts that one format can read
 * @param time the format of the time of day, empty where there is none
 * @param link what stands between day and time
 */
record TimeShape(String text, List<String> day, String mould, String time, String link) {
  private static final Pattern NUMERIC =
      Pattern.compile("(\\d{4}|\\d{1,2})([./-])(\\d{1,2})\\2(\\d{4}|\\d{1,2})");
  private static final Pattern NAMED =
      Pattern.compile("(\\d{1,2})([ .-]{1,2})(\\p{L}{3,9})([ .-]{1,2})(\\d{4}|\\d{2})");
  private static final Pattern NAME_FIRST =
      Pattern.compile("(\\p{L}{3,9})( )(\\d{1,2})(,? )(\\d{4})");
  private static final Pattern TIME =
      Pattern.compile("(\\d{1,2}):(\\d{2})(:(\\d{2}))?(?:( ?)([AaPp][Mm]))?");
  private static final Pattern BOTH =
      Pattern.compile("(.*\\d)(T|, | {1,2})(\\d{1,2}:\\d{2}(?::\\d{2})?(?: ?[AaPp][Mm])?)");
  private static final List<String> MONTHS =
      List.of(
          "january",
          "february",
          "march",
          "april",
          "may",
          "june",
          "july",
          "august",
          "september",
          "october",
          "november",
          "december");
  private static final int LONGEST = 40;

  static boolean isTime(String text) {
    return of(text).isPresent();
  }

  /** The shape of a text; empty when it is no day and no time of day. */
  static Optional<TimeShape> of(String text) {
    if (text.length() > LONGEST) {
      return Optional.empty();
    }
    Optional<String> clock = clock(text);
    if (clock.isPresent()) {
      return Optional.of(new TimeShape("", List.of(), "", clock.get(), ""));
    }
    Matcher both = BOTH.matcher(text);
    if (!both.matches()) {
      return dayOf(text).filter(shape -> !shape.orders().isEmpty());
    }
    return dayOf(both.group(1))
        .flatMap(
            d ->
                clock(both.group(3))
                    .map(time -> new TimeShape(d.text, d.day, d.mould, time, both.group(2))))
        .filter(shape -> !shape.orders().isEmpty());
  }

  private static Optional<String> clock(String text) {
    Matcher m = TIME.matcher(text);
    if (!m.matches()) {
      return Optional.empty();
    }
    int hour = Integer.parseInt(m.group(1));
    boolean half = m.group(6) != null;
    if (hour > (half ? 12 : 23) || (half && hour == 0) || Integer.parseInt(m.group(2)) > 59) {
      return Optional.empty();
    }
    String hours = (half ? "h" : "H").repeat(m.group(1).length());
    return Optional.of(
        hours + ":mm" + (m.group(3) == null ? "" : ":ss") + (half ? m.group(5) + "a" : ""));
  }

  private static Optional<TimeShape> dayOf(String text) {
    Matcher n = NUMERIC.matcher(text);
    if (n.matches()) {
      boolean front = n.group(1).length() == 4;
      String mould =
          (front ? "YYYY" : "#")
              + n.group(2)
              + "#"
              + n.group(2)
              + (n.group(4).length() == 4 ? "YYYY" : "#");
      return front && n.group(4).length() == 4
          ? Optional.empty()
          : Optional.of(
              new TimeShape(text, List.of(n.group(1), n.group(3), n.group(4)), mould, "", ""));
    }
    Matcher d = NAMED.matcher(text);
    if (d.matches() && month(d.group(3)) > 0) {
      String mould =
          "#"
              + d.group(2)
              + name(d.group(3))
              + d.group(4)
              + (d.group(5).length() == 4 ? "YYYY" : "YY");
      return Optional.of(
          new TimeShape(text, List.of(d.group(1), d.group(3), d.group(5)), mould, "", ""));
    }
    Matcher f = NAME_FIRST.matcher(text);
    if (f.matches() && month(f.group(1)) > 0) {
      return Optional.of(
          new TimeShape(
              text,
              List.of(f.group(1), f.group(3), f.group(5)),
              name(f.group(1)) + " #" + f.group(4) + "YYYY",
              "",
              ""));
    }
    return Optional.empty();
  }

  private static String name(String month) {
    return month.length() == 3 ? "MMM" : "MMMM";
  }

  private static int month(String name) {
    String lower = name.toLowerCase(Locale.ROOT);
    for (int i = 0; i < MONTHS.size(); i++) {
      if (MONTHS.get(i).equals(lower) || MONTHS.get(i).substring(0, 3).equals(lower)) {
        return i + 1;
      }
    }
    return 0;
  }

  boolean hasDay() {
    return !day.isEmpty();
  }

  boolean hasTime() {
    return !time.isEmpty();
  }

  boolean hasShortYear() {
    return hasDay() && !mould.contains("YYYY");
  }

  /** The orders of day, month and year in which this day exists. */
  List<DayOrder> orders() {
    List<DayOrder> orders = new ArrayList<>();
    for (DayOrder order : DayOrder.values()) {
      if (order.fits(mould) && day(order).isPresent()) {
        orders.add(order);
      }
    }
    return orders;
  }

  /** The day this text means in an order, if there is such a day. */
  Optional<LocalDate> day(DayOrder order) {
    try {
      String year = day.get(order.year());
      String month = day.get(order.month());
      return Optional.of(
          LocalDate.of(
              Integer.parseInt(year) + (year.length() == 4 ? 0 : 2000),
              Character.isDigit(month.charAt(0)) ? Integer.parseInt(month) : month(month),
              Integer.parseInt(day.get(order.day()))));
    } catch (DateTimeException | NumberFormatException e) {
      return Optional.empty();
    }
  }
}
