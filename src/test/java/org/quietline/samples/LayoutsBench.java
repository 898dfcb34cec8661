package org.quietline.samples;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Makes {@code sample-runs/layouts}: an invented bench whose three files have layouts of their own.
 * ABOUT.md says what each holds and what a review must make of it.
 */
final class LayoutsBench {
  static final String STICK = "readings/stick-0412.csv";
  static final String TITRATOR = "readings/titrator-week-16.txt";
  static final String PAD = "readings/pad.csv";

  private static final Charset OLD = Charset.forName("windows-1252");
  private static final List<LocalDate> DAYS =
      List.of("03-16", "03-19", "03-23", "03-26", "03-30", "04-02", "04-09").stream()
          .map(day -> LocalDate.parse("2026-" + day))
          .toList();

  private LayoutsBench() {}

  /**
   * Writes the folder.
   *
   * @param args the folder to write, or nothing for {@code sample-runs/layouts}
   * @throws IOException when the folder cannot be written
   */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args.length > 0 ? args[0] : "sample-runs/layouts");
    for (var file : files().entrySet()) {
      Path path = folder.resolve(file.getKey());
      Files.createDirectories(path.toAbsolutePath().getParent());
      Files.write(path, file.getValue());
    }
  }

  /** Every file but ABOUT.md, by its name relative to the folder. */
  static SortedMap<String, byte[]> files() {
    SortedMap<String, byte[]> files = new TreeMap<>();
    String settings =
        String.join(
            "\n",
            LayoutsSettings.BENCH,
            LayoutsSettings.STICK_SHEET,
            LayoutsSettings.TITRATOR_SHEET,
            LayoutsSettings.PAD_SHEET);
    files.put("bench.toml", settings.getBytes(StandardCharsets.UTF_8));
    files.put("calibrations.csv", calibrations().getBytes(StandardCharsets.UTF_8));
    files.put(STICK, stick().getBytes(OLD));
    files.put(TITRATOR, titrator().getBytes(StandardCharsets.UTF_8));
    files.put(PAD, LayoutsSettings.PAD.getBytes(StandardCharsets.UTF_8));
    return files;
  }

  private static String calibrations() {
    Sheet sheet =
        new Sheet(
            "calibration,method,instrument,calibrated_at,blank_response,calibrator_1_assigned,"
                + "calibrator_1_response,calibrator_2_assigned,calibrator_2_response,reagent_lot,"
                + "operator,remark");
    sheet.add(
        "TG-1",
        "total-glycerin",
        "PM-1",
        "2026-03-15T16:10",
        "0.043",
        "0.100",
        "0.214",
        "0.300",
        "0.552",
        "",
        "MK",
        "");
    sheet.add("AN-1", "acid-number", "PM-1", "2026-03-15T16:40", "", "", "", "", "", "", "MK", "");
    sheet.add("AN-2", "acid-number", "TI-2", "2026-04-12T15:05", "", "", "", "", "", "", "JV", "");
    return sheet.text();
  }

  /** Semicolons, decimal commas, an average, words in German, and one row written twice. */
  private static String stick() {
    Noise noise = new Noise(412);
    List<String> lines = new ArrayList<>();
    lines.add(
        "Datum;Uhrzeit;Methode;Gerät;Art;Probe;Messwert 1;Messwert 2;Mittelwert;Einheit;Kürzel;"
            + "Bemerkung");
    int batch = 2301;
    for (LocalDate day : DAYS) {
      String date = day.format(DateTimeFormatter.ofPattern("dd.MM.yyyy", Locale.ROOT));
      lines.add(stickRow(noise, date + ";08:05;TGLY", "QC;QC-TG-A", 0.180));
      lines.add(stickRow(noise, date + ";08:21;ANZ", "QC;QC-AN-A", 0.350));
      lines.add(stickRow(noise, date + ";09:10;TGLY", "Charge;B-" + batch, 0.212));
      lines.add(stickRow(noise, date + ";09:34;ANZ", "Charge;B-" + batch++, 0.310));
    }
    lines.set(7, lines.get(7) + "Küvette neu, 50 µl nachgefüllt");
    String[] oneReading = lines.get(12).split(";", -1);
    oneReading[7] = "----";
    oneReading[8] = oneReading[6];
    lines.set(12, String.join(";", oneReading));
    lines.add(lines.get(28));
    return String.join("\r\n", lines) + "\r\n";
  }

  private static String stickRow(Noise noise, String start, String sample, double level) {
    BigDecimal first = number(level + noise.normal(0.003));
    BigDecimal second = first.add(number(noise.normal(0.002)));
    BigDecimal mean = first.add(second).divide(BigDecimal.valueOf(2), 3, RoundingMode.HALF_UP);
    String unit = start.endsWith("ANZ") ? "mg KOH/g" : "% mass";
    return String.join(
        ";", start, "PM-1", sample, comma(first), comma(second), comma(mean), unit, "MK", "");
  }

  private static BigDecimal number(double value) {
    return BigDecimal.valueOf(value).setScale(3, RoundingMode.HALF_EVEN);
  }

  private static String comma(BigDecimal number) {
    return number.toPlainString().replace('.', ',');
  }

  /** Tabs, two lines before the header, and a row for each reading of a run. */
  private static String titrator() {
    Noise noise = new Noise(16);
    List<String> lines = new ArrayList<>();
    lines.add("Titrator 2, results of week 16");
    lines.add("Printed 18/04/2026 4:05 PM");
    lines.add("Run\tRep\tDate\tTime\tAssay\tVial\tType\tResult\tUnit\tOperator");
    for (int run = 0; run < 12; run++) {
      boolean control = run % 4 == 0;
      String sample = control ? "QC-AN-A\tcontrol" : "B-" + (2310 + run) + "\tproduct";
      double level = control ? 0.350 : 0.290 + 0.01 * run;
      int readings = run == 5 ? 3 : run == 10 ? 1 : 2;
      for (int rep = 1; rep <= readings; rep++) {
        lines.add(titratorRow(run, rep, sample, number(level + noise.normal(0.004))));
      }
    }
    lines.set(19, lines.get(19).replace("B-2317", "B-2371"));
    return String.join("\n", lines) + "\n";
  }

  private static String titratorRow(int run, int rep, String sample, BigDecimal reading) {
    int hour = 8 + run % 4 * 2;
    return String.join(
        "\t",
        "T-" + (871 + run),
        Integer.toString(rep),
        (13 + run / 4) + "/04/2026",
        (hour > 12 ? hour - 12 : hour) + ":" + (run + 10) + (hour < 12 ? " AM" : " PM"),
        "Acid number",
        sample,
        reading.toPlainString(),
        "mg KOH/g",
        "JV");
  }
}
