package org.quietline.report;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import org.quietline.report.Chart.Axis;
import org.quietline.report.Chart.Tick;

/** Axes with round ticks. */
final class Axes {
  /** The most ticks of an axis in a tall picture. */
  static final int MOST_TICKS = 6;

  /** The most ticks of an axis in a low picture. */
  static final int FEW_TICKS = 4;

  private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM", Locale.ENGLISH);
  private static final int[] DAY_STEPS = {1, 2, 7, 14};
  private static final int[] MONTH_STEPS = {1, 2, 3, 6, 12, 24, 60};

  private Axes() {}

  /** An axis that shows all values with a little room at both ends. */
  static Axis around(Collection<Double> values, int most) {
    double low = values.stream().mapToDouble(Double::doubleValue).min().orElse(0);
    double high = values.stream().mapToDouble(Double::doubleValue).max().orElse(1);
    double room = high > low ? 0.07 * (high - low) : Math.max(Math.abs(high) * 0.1, 1e-9);
    return new Axis(low - room, high + room, ticks(low - room, high + room, most));
  }

  /** An axis of whole days from a start. */
  static Axis days(double last) {
    double end = Math.max(last, 1);
    return new Axis(-0.02 * end, 1.02 * end, ticks(0, end, MOST_TICKS));
  }

  /** An axis without ticks. */
  static Axis bare(Axis axis) {
    return new Axis(axis.lower(), axis.upper(), List.of());
  }

  private static List<Tick> ticks(double low, double high, int most) {
    double step = step(high - low, most);
    int decimals = Math.max(0, (int) -Math.floor(Math.log10(step) + 1e-9));
    List<Tick> ticks = new ArrayList<>();
    for (long k = (long) Math.ceil(low / step - 1e-9); k * step <= high + step * 1e-9; k++) {
      ticks.add(new Tick(k * step, Numbers.fixed(k * step, decimals)));
    }
    return ticks;
  }

  private static double step(double span, int most) {
    double power = Math.pow(10, Math.floor(Math.log10(span / most)));
    for (double factor : new double[] {1, 2, 5}) {
      if (span / (factor * power) <= most) {
        return factor * power;
      }
    }
    return 10 * power;
  }

  /** An axis of time, ticked at first days of months, or at days when it is short. */
  static Axis time(LocalDateTime from, LocalDateTime to) {
    double low = Dates.onAxis(from);
    double high = Math.max(Dates.onAxis(to), low + 1);
    double room = 0.02 * (high - low);
    LocalDate first = LocalDate.ofEpochDay((long) Math.ceil(low));
    LocalDate last = LocalDate.ofEpochDay((long) Math.floor(high));
    boolean brief = high - low <= MOST_TICKS * 14;
    List<Tick> ticks = brief ? dayTicks(first, last) : monthTicks(first, last);
    return new Axis(low - room, high + room, ticks);
  }

  private static List<Tick> dayTicks(LocalDate first, LocalDate last) {
    long span = Dates.days(first, last);
    int step = DAY_STEPS[DAY_STEPS.length - 1];
    for (int i = DAY_STEPS.length - 1; i >= 0; i--) {
      step = span / DAY_STEPS[i] <= MOST_TICKS ? DAY_STEPS[i] : step;
    }
    List<Tick> ticks = new ArrayList<>();
    for (LocalDate day = first; !day.isAfter(last); day = day.plusDays(step)) {
      ticks.add(new Tick(day.toEpochDay(), Dates.brief(day)));
    }
    return ticks;
  }

  private static List<Tick> monthTicks(LocalDate first, LocalDate last) {
    long months = Dates.days(first, last) / 30;
    int step = MONTH_STEPS[MONTH_STEPS.length - 1];
    for (int i = MONTH_STEPS.length - 1; i >= 0; i--) {
      step = months / MONTH_STEPS[i] <= MOST_TICKS ? MONTH_STEPS[i] : step;
    }
    List<Tick> ticks = new ArrayList<>();
    LocalDate month = first.getDayOfMonth() == 1 ? first : first.withDayOfMonth(1).plusMonths(1);
    int year = 0;
    for (; !month.isAfter(last); month = month.plusMonths(step)) {
      String label = MONTH.format(month) + (month.getYear() == year ? "" : " " + month.getYear());
      year = month.getYear();
      ticks.add(new Tick(month.toEpochDay(), label));
    }
    return ticks;
  }
}
