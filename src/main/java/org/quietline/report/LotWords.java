package org.quietline.report;

import java.util.List;
import java.util.stream.Collectors;
import org.quietline.assess.LotLife;

/** Until when the reagent lots in use may be used, in words. */
final class LotWords {
  private LotWords() {}

  /** All lots in one text: "lot R-7 to 12 November 2026 (printed date), 20 days from now". */
  static String of(List<LotLife> lots) {
    return lots.stream().map(LotWords::of).collect(Collectors.joining("; "));
  }

  private static String of(LotLife life) {
    return "lot "
        + life.lot()
        + life.until().map(LotWords::until).orElse(": reagents.csv gives no date that ends it");
  }

  private static String until(LotLife.Until until) {
    long days = until.daysLeft();
    return " to "
        + Dates.full(until.lastDay())
        + switch (until.by()) {
          case REAGENT_EXPIRY -> " (printed date)";
          case REAGENT_SHELF_LIFE -> " (shelf life once open)";
          case REAGENT_WARMTH -> " (shelf life, shortened by warmth)";
          case REAGENT_FROZEN -> " (then it stood below 0 °C)";
          case CALIBRATION_VALIDITY -> "";
        }
        + (days == 0
            ? ", today"
            : ", "
                + Numbers.count(Math.abs(days), "day", "days")
                + (days > 0 ? " from now" : " ago"));
  }
}
