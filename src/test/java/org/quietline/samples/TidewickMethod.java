package org.quietline.samples;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;

/**
 * What the invented bench is like in one method: the truth from which its rows are drawn.
 *
 * @param key the method's key
 * @param letters the letters that ids of the method begin with
 * @param instrument the instrument it runs on
 * @param unit its unit
 * @param decimals decimals of a reading
 * @param material its control material
 * @param assigned the material's value
 * @param reading the deviation of one reading
 * @param day the deviation from day to day
 * @param calibration the deviation from calibration to calibration
 * @param productMean the mean of the batches
 * @param productDeviation the deviation of the batches
 * @param calibrators the assigned values of its two calibrators
 * @param slope the response to one unit
 * @param calibrated the days on which it was calibrated
 * @param hour the hour in which it is calibrated and controlled
 * @param productHour the first hour of its product results
 */
record TidewickMethod(
    String key,
    String letters,
    String instrument,
    String unit,
    int decimals,
    String material,
    double assigned,
    double reading,
    double day,
    double calibration,
    double productMean,
    double productDeviation,
    List<String> calibrators,
    double slope,
    List<LocalDate> calibrated,
    int hour,
    int productHour) {

  /** The day from which a new reagent lot reads high. */
  static final LocalDate STEP_FROM = LocalDate.of(2026, 6, 23);

  /** The day of the next calibration, which ends it. */
  static final LocalDate STEP_UNTIL = LocalDate.of(2026, 7, 9);

  /** How much higher it reads. */
  static final double STEP = 0.011;

  /** The change a day of the last calibration of total glycerin. */
  static final double DRIFT = 0.0005;

  /** How many times further apart one person's readings are. */
  static final double CARELESS = 2.5;

  static final TidewickMethod TOTAL_GLYCERIN =
      new TidewickMethod(
          "total-glycerin",
          "TG",
          "PM-1",
          "% mass",
          3,
          "QC-TG-A",
          0.180,
          0.0020,
          0.0018,
          0.0008,
          0.183,
          0.0185,
          List.of("0.100", "0.300"),
          1.70,
          days(
              "2025-09-02 2025-09-30 2025-10-29 2025-11-26 2025-12-23 2026-01-21 2026-02-18"
                  + " 2026-03-18 2026-04-16 2026-05-14 2026-06-11 2026-07-09 2026-08-06"
                  + " 2026-09-03 2026-10-01"),
          7,
          9);

  static final TidewickMethod ACID_NUMBER =
      new TidewickMethod(
          "acid-number",
          "AN",
          "PM-1",
          "mg KOH/g",
          3,
          "QC-AN-A",
          0.300,
          0.0040,
          0.0030,
          0.0010,
          0.280,
          0.040,
          List.of("0.100", "0.500"),
          0.92,
          days(
              "2025-09-03 2025-10-01 2025-10-30 2025-11-27 2025-12-22 2026-01-20 2026-02-17"
                  + " 2026-03-16 2026-04-14 2026-05-12 2026-06-09 2026-07-07 2026-08-05"
                  + " 2026-09-04 2026-10-02"),
          8,
          13);

  static final TidewickMethod FREE_FATTY_ACID =
      new TidewickMethod(
          "free-fatty-acid",
          "FA",
          "PM-2",
          "% mass",
          2,
          "QC-FA-A",
          2.00,
          0.030,
          0.020,
          0.010,
          2.40,
          0.70,
          List.of("1.00", "5.00"),
          0.18,
          days("2026-09-25 2026-10-23"),
          8,
          10);

  /** What a batch holds more than chance would have it: one is brought to the limit. */
  double plantedIn(String sample) {
    return key.equals("total-glycerin") && sample.equals("B-1159") ? 0.033 : 0;
  }

  /** What this method reads wrong at a moment, over and above chance: the planted troubles. */
  double planted(LocalDateTime at) {
    if (!key.equals("total-glycerin")) {
      return 0;
    }
    LocalDate last = calibrated.get(calibrated.size() - 1);
    LocalDate on = at.toLocalDate();
    if (!on.isBefore(last)) {
      return DRIFT * ChronoUnit.DAYS.between(last, on);
    }
    boolean newLotOldCalibration = !on.isBefore(STEP_FROM) && on.isBefore(STEP_UNTIL);
    return newLotOldCalibration ? STEP : 0;
  }

  /** The deviation of one reading of a person. */
  double readingOf(String operator) {
    return key.equals("total-glycerin") && operator.equals("TB") ? CARELESS * reading : reading;
  }

  private static List<LocalDate> days(String text) {
    return List.of(text.split(" ")).stream().map(LocalDate::parse).toList();
  }
}
