package org.quietline.samples;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Makes the folder {@code sample-runs/tidewick} from fixed seeds: fourteen months of an invented
 * bench with planted troubles. Its ABOUT.md, written by hand, says which.
 */
final class TidewickGenerator {
  /** The seeds behind the folder; ABOUT.md says how they were chosen. */
  static final Seeds SEEDS = new Seeds(1, 21, 48, 3);

  private static final YearMonth DOUBLED = YearMonth.of(2025, 11);
  private static final YearMonth OVERLAPPING = YearMonth.of(2026, 5);
  private static final YearMonth WITH_THIRD_READING = YearMonth.of(2026, 8);
  private static final int OVERLAP = 3;

  private TidewickGenerator() {}

  /**
   * Writes the folder.
   *
   * @param args the folder to write, or nothing for {@code sample-runs/tidewick}
   * @throws IOException when it cannot be written
   */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args.length > 0 ? args[0] : "sample-runs/tidewick");
    SampleFiles.write(folder, files(SEEDS));
  }

  /** Every file but ABOUT.md, by its name relative to the folder. */
  static SortedMap<String, String> files(Seeds seeds) {
    List<TidewickDays.Batch> batches = TidewickDays.batches(new Noise(seeds.plan()));
    TidewickResults glycerin =
        new TidewickResults(TidewickMethod.TOTAL_GLYCERIN, seeds.totalGlycerin());
    glycerin.calibrateAndControl();
    batches.forEach(b -> glycerin.test(b.day(), b.key()));
    TidewickResults acid = new TidewickResults(TidewickMethod.ACID_NUMBER, seeds.acidNumber());
    acid.calibrateAndControl();
    batches.stream()
        .filter(TidewickDays.Batch::acidNumberToo)
        .forEach(b -> acid.test(b.day(), b.key()));
    TidewickResults oil =
        new TidewickResults(TidewickMethod.FREE_FATTY_ACID, seeds.freeFattyAcid());
    oil.calibrateAndControl();
    oilDays().forEach((key, day) -> oil.test(day, key));

    Sheet calibrations =
        new Sheet(
            "calibration,method,instrument,calibrated_at,blank_response,calibrator_1_assigned,"
                + "calibrator_1_response,calibrator_2_assigned,calibrator_2_response,reagent_lot,"
                + "operator,remark");
    List<TidewickRow> clean = new ArrayList<>();
    for (TidewickResults results : List.of(glycerin, acid, oil)) {
      results.calibrations().forEach(calibrations::add);
      clean.addAll(results.rows());
    }
    clean.sort(Comparator.comparing(TidewickRow::takenAt).thenComparing(TidewickRow::method));
    List<TidewickRow> rows = TidewickDirt.spoil(clean);

    SortedMap<String, String> files = new TreeMap<>();
    files.put("bench.toml", TidewickSettings.TOML);
    files.put("calibrations.csv", calibrations.text());
    files.put("reagents.csv", TidewickLots.sheet());
    files.put("actions.csv", TidewickBooks.actions(rows));
    files.put("outside.csv", TidewickBooks.outside(clean, new Noise(seeds.plan() + 1)));
    YearMonth last = YearMonth.from(TidewickDays.LAST);
    for (YearMonth month = YearMonth.from(TidewickDays.FIRST);
        !month.isAfter(last);
        month = month.plusMonths(1)) {
      files.put("readings/" + month + ".csv", readings(month, rows));
    }
    return files;
  }

  private static String readings(YearMonth month, List<TidewickRow> all) {
    List<TidewickRow> rows = new ArrayList<>(of(month, all));
    if (month.equals(DOUBLED)) {
      rows = TidewickDirt.doubled(rows);
    } else if (month.equals(OVERLAPPING)) {
      List<TidewickRow> before = of(month.minusMonths(1), all);
      rows.addAll(0, before.subList(before.size() - OVERLAP, before.size()));
    }
    boolean third = month.equals(WITH_THIRD_READING);
    Sheet sheet =
        new Sheet(
            "taken_at,method,instrument,role,sample,reading_1,reading_2,"
                + (third ? "reading_3," : "")
                + "unit,calibration,reagent_lot,operator,remark");
    rows.forEach(row -> sheet.add(row.fields(third ? 3 : 2)));
    return sheet.text();
  }

  private static List<TidewickRow> of(YearMonth month, List<TidewickRow> rows) {
    return rows.stream().filter(r -> r.month().equals(month)).toList();
  }

  private static SortedMap<String, LocalDate> oilDays() {
    SortedMap<String, LocalDate> days = new TreeMap<>();
    int number = 301;
    for (String day :
        List.of(
            "2026-09-29",
            "2026-10-05",
            "2026-10-08",
            "2026-10-12",
            "2026-10-15",
            "2026-10-20",
            "2026-10-26",
            "2026-10-28")) {
      days.put("OIL-" + number, LocalDate.parse(day));
      number++;
    }
    return days;
  }

  /**
   * The seeds of the independent parts.
   *
   * @param plan which days have a batch, and the outside results
   * @param totalGlycerin total glycerin
   * @param acidNumber acid number
   * @param freeFattyAcid free fatty acid
   */
  record Seeds(long plan, long totalGlycerin, long acidNumber, long freeFattyAcid) {}
}
