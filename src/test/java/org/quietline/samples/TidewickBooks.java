package org.quietline.samples;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;

/** What the invented bench wrote down beside its results: causes found, and outside results. */
final class TidewickBooks {
  private static final String SLIP =
      "First reading typed ten times too big; the pad shows the point one place further left";
  private static final String LOT =
      "Reagent lot TG-L07 reads about 0.011 above TG-L06 against the calibration made with TG-L06";

  private TidewickBooks() {}

  static String actions(List<TidewickRow> rows) {
    Sheet sheet = new Sheet("recorded_at,signal,cause,action,exclude_result,decided_by,remark");
    for (TidewickRow row : rows) {
      if (TidewickDirt.isSlip(row)) {
        String at = LocalDateTime.parse(row.takenAt()).plusMinutes(95).toString();
        for (String rule : List.of("beyond-action-limit", "readings-disagree")) {
          sheet.add(at, id(row, rule), SLIP, "Typing is read back aloud", "yes", "RO", "");
        }
      }
      if (inStep(row)) {
        for (String rule : List.of("beyond-action-limit", "weighted-mean-beyond-limit")) {
          sheet.add(
              "2026-07-09T10:20",
              id(row, rule),
              LOT,
              "Calibrated anew with TG-L07; batches since 23 June looked at again",
              "no",
              "RO",
              "");
        }
      }
    }
    return sheet.text();
  }

  static String outside(List<TidewickRow> rows, Noise noise) {
    Sheet sheet =
        new Sheet(
            "sample,method,laboratory,reported_on,value,expanded_uncertainty,coverage_factor,"
                + "remark");
    List<TidewickRow> glycerin =
        rows.stream().filter(r -> r.is("total-glycerin", "product")).toList();
    List<TidewickRow> acid = rows.stream().filter(r -> r.is("acid-number", "product")).toList();
    for (int i : List.of(15, 75, 110, 145)) {
      sheet.add(outside(glycerin.get(i), "0.014", noise.normal(0.006)));
    }
    for (int i : List.of(30, 90)) {
      sheet.add(outside(acid.get(i), "0.030", noise.normal(0.012)));
    }
    return sheet.text();
  }

  private static List<String> outside(TidewickRow row, String expanded, double difference) {
    BigDecimal mean =
        new BigDecimal(row.readings().get(0))
            .add(new BigDecimal(row.readings().get(1)))
            .divide(BigDecimal.valueOf(2), 4, RoundingMode.HALF_UP);
    LocalDate reported = LocalDateTime.parse(row.takenAt()).toLocalDate().plusDays(9);
    return List.of(
        row.sample(),
        row.method(),
        "Harbour Row Laboratory (invented)",
        reported.toString(),
        TidewickResults.text(mean.doubleValue() + difference, 3),
        expanded,
        "2",
        "");
  }

  private static boolean inStep(TidewickRow row) {
    if (!row.is("total-glycerin", "control")) {
      return false;
    }
    LocalDate day = LocalDateTime.parse(row.takenAt()).toLocalDate();
    return !day.isBefore(TidewickMethod.STEP_FROM) && day.isBefore(TidewickMethod.STEP_UNTIL);
  }

  private static String id(TidewickRow row, String rule) {
    return String.join("/", row.method(), row.instrument(), row.sample(), row.takenAt(), rule);
  }
}
