package org.quietline.samples;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** The working days and the batches of the invented plant. */
final class TidewickDays {
  static final LocalDate FIRST = LocalDate.of(2025, 9, 1);
  static final LocalDate LAST = LocalDate.of(2026, 10, 31);

  private static final double BATCH_ON_A_DAY = 0.62;
  private static final double ACID_NUMBER_TOO = 0.8;

  private TidewickDays() {}

  /** Monday to Friday, but not from Christmas Eve to the first Sunday of January. */
  static boolean isOpen(LocalDate day) {
    boolean weekend =
        day.getDayOfWeek() == DayOfWeek.SATURDAY || day.getDayOfWeek() == DayOfWeek.SUNDAY;
    boolean holiday =
        !day.isBefore(LocalDate.of(2025, 12, 24)) && !day.isAfter(LocalDate.of(2026, 1, 4));
    return !weekend && !holiday && !day.isBefore(FIRST) && !day.isAfter(LAST);
  }

  static List<Batch> batches(Noise noise) {
    List<Batch> batches = new ArrayList<>();
    int number = 1001;
    for (LocalDate day = FIRST.plusDays(2); !day.isAfter(LAST); day = day.plusDays(1)) {
      if (isOpen(day) && noise.uniform() < BATCH_ON_A_DAY) {
        batches.add(new Batch(day, "B-" + number, noise.uniform() < ACID_NUMBER_TOO));
        number++;
      }
    }
    return batches;
  }

  /**
   * A batch.
   *
   * @param day the day it was tested
   * @param key its id
   * @param acidNumberToo whether its acid number was tested as well
   */
  record Batch(LocalDate day, String key, boolean acidNumberToo) {}
}
