package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.FileRead;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.bench.Calibration;
import org.quietline.bench.Origin;
import org.quietline.bench.Result;

/** Thousands of files mangled at random: the counts add up and no row vanishes. */
class MangledFilesTest {
  private static final int ROUNDS = 3000;
  private static final byte[] SIGNS =
      "\"\",,;\n\n\r\0 .-/<>O0179aT:\t".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] ODD = {
    (byte) 0xFF, (byte) 0xC3, (byte) 0xB5, (byte) 0xEF, (byte) 0x80
  };
  private static final String RESULTS = "readings/a.csv";
  private static final String CALIBRATIONS = "calibrations.csv";

  @TempDir private Path folder;
  private TempBench bench;

  @BeforeEach
  void makeBench() {
    bench = new TempBench(folder);
  }

  private static String results(Random random, String end) {
    StringBuilder sheet = new StringBuilder(TempBench.HEADER).append(end);
    int rows = 2 + random.nextInt(8);
    for (int i = 0; i < rows; i++) {
      int before = sheet.length();
      boolean control = random.nextBoolean();
      sheet
          .append("2026-10-1")
          .append(random.nextInt(10))
          .append("T09:1")
          .append(random.nextInt(3))
          .append(",total-glycerin,PM-1,")
          .append(control ? "control,QC-TG-A" : "product,B-" + random.nextInt(3))
          .append(",0.18")
          .append(random.nextInt(2))
          .append(",<0.2,,")
          .append(random.nextBoolean() ? "g/kg" : "")
          .append(",C-1,L-1,RO,")
          .append(random.nextInt(3) == 0 ? "\"one, \"\"two\"\"\"" : "µ")
          .append(end);
      if (random.nextInt(6) == 0) {
        sheet.append(sheet.substring(before));
      }
    }
    return sheet.toString();
  }

  private static final String CALIBRATION_SHEET =
      """
      calibration,method,instrument,calibrated_at,calibrator_1_assigned,calibrator_1_response
      C-1,total-glycerin,PM-1,2026-09-01T08:00,0.10,0.21
      C-2,total-glycerin,PM-1,2026-10-01T08:00,0.10,
      """;

  private static byte[] mangled(byte[] content, Random random, int most) {
    byte[] bytes = content;
    int times = random.nextInt(most + 1);
    for (int i = 0; i < times; i++) {
      int at = random.nextInt(bytes.length + 1);
      int to = Math.min(bytes.length, at + 1 + random.nextInt(random.nextInt(8) == 0 ? 90 : 2));
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      out.write(bytes, 0, at);
      switch (random.nextInt(6)) {
        case 0, 1 -> out.write(SIGNS[random.nextInt(SIGNS.length)]);
        case 2 -> out.write(ODD[random.nextInt(ODD.length)]);
        case 3 -> out.write(bytes, at, to - at);
        default -> at = to;
      }
      int from = random.nextInt(40) == 0 ? bytes.length : at;
      out.write(bytes, from, bytes.length - from);
      bytes = out.toByteArray();
    }
    return bytes;
  }

  @Test
  void rowsOfMangledSheetsAreAllAccountedFor() {
    Random random = new Random(20_261_014);
    long plain = 0;
    long takenIn = 0;
    long metBefore = 0;
    long setAside = 0;
    for (int round = 0; round < ROUNDS; round++) {
      String end = List.of("\n", "\r\n", "\r").get(random.nextInt(3));
      byte[] sheet = mangled(results(random, end).getBytes(StandardCharsets.UTF_8), random, 6);
      byte[] calibrations = mangled(CALIBRATION_SHEET.getBytes(StandardCharsets.UTF_8), random, 1);
      Intake intake = bench.put(RESULTS, sheet).put(CALIBRATIONS, calibrations).read();
      Accounting accounting = intake.accounting();
      assertEquals(
          accounting.rows(),
          accounting.files().stream().mapToLong(FileRead::rows).sum(),
          "round " + round);
      Set<Long> found = new TreeSet<>();
      for (Result result : intake.bench().results()) {
        found.add(result.origin().line());
      }
      plain += check(round, sheet, RESULTS, found, accounting);
      found.clear();
      for (Calibration calibration : intake.bench().calibrations()) {
        found.add(calibration.origin().line());
      }
      plain += check(round, calibrations, CALIBRATIONS, found, accounting);
      takenIn += accounting.takenIn();
      metBefore += accounting.metBefore();
      setAside += accounting.rowsAside();
    }
    assertTrue(plain > ROUNDS, "sheets without quotes: " + plain);
    assertTrue(
        takenIn > ROUNDS && metBefore > 100 && setAside > ROUNDS,
        takenIn + " taken in, " + metBefore + " met before, " + setAside + " set aside");
  }

  /** Counts lines by its own, simpler means; sheets with quotes are left to the sums. */
  private static int check(
      int round, byte[] sheet, String file, Set<Long> found, Accounting accounting) {
    String text = new String(sheet, StandardCharsets.ISO_8859_1);
    String[] lines = text.split("\r\n|\r|\n", -1);
    if (text.contains("\"")) {
      for (SetAside aside : accounting.aside()) {
        assertTrue(
            !aside.file().equals(file) || (aside.line() >= 1 && aside.line() <= lines.length),
            "round " + round);
        assertTrue(aside.text().length() <= 80, "round " + round);
      }
      return 0;
    }
    Set<Long> expected = new TreeSet<>();
    for (int i = 0; i < lines.length; i++) {
      if (!lines[i].replaceAll("[, \t\0\u00A0]", "").isEmpty() || lines[i].contains("\0")) {
        expected.add(i + 1L);
      }
    }
    if (expected.isEmpty()) {
      return 0;
    }
    long header = ((TreeSet<Long>) expected).first();
    expected.remove(header);
    long rows =
        accounting.files().stream()
            .filter(f -> f.file().equals(file))
            .findFirst()
            .orElseThrow()
            .rows();
    assertEquals(expected.size(), rows, "round " + round);
    boolean wholeFile = false;
    for (SetAside aside : accounting.aside()) {
      if (aside.file().equals(file) && aside.field().equals("header") && aside.rows() > 0) {
        wholeFile = true;
        assertEquals(expected.size(), aside.rows(), "round " + round);
      } else if (aside.file().equals(file) && aside.rows() > 0) {
        assertTrue(aside.reason().endsWith(" The row was set aside."), aside.reason());
        found.add(aside.line());
      }
    }
    accounting.conflicts().stream()
        .filter(c -> c.origin().file().equals(file))
        .forEach(c -> found.add(c.origin().line()));
    if (!wholeFile) {
      assertTrue(expected.containsAll(found), "round " + round);
      expected.removeAll(found);
      assertTrue(expected.size() <= accounting.metBefore(), "round " + round + " " + expected);
    }
    return 1;
  }

  @Test
  void mangledSettingsAreReadOrRefusedInASentence() {
    Random random = new Random(7);
    byte[] settings =
        (TempBench.SETTINGS
                + "[chart]\nweighting = 0.4\nstop-rules = [\"beyond-action-limit\"]\n"
                + "[[person]]\nkey = \"A\"\nfrom = 2026-01-01\n"
                + "[[sheet]]\nmatch = \"x*.csv\"\n")
            .getBytes(StandardCharsets.UTF_8);
    int lines = new String(settings, StandardCharsets.UTF_8).split("\n", -1).length;
    int read = 0;
    int refused = 0;
    for (int round = 0; round < ROUNDS; round++) {
      bench.put("bench.toml", mangled(settings, random, 3));
      try {
        for (SetAside aside : bench.read().accounting().settingsAside()) {
          assertTrue(aside.line() >= 1 && aside.line() <= lines + 30, aside.toString());
        }
        read++;
      } catch (IntakeException e) {
        String sentence = String.valueOf(e.getMessage());
        assertTrue(sentence.startsWith("bench.toml") && sentence.endsWith("run again."), sentence);
        refused++;
      }
    }
    assertTrue(read > 500 && refused > 500, read + " read, " + refused + " refused");
  }

  @Test
  void oddSettingsAreRefusedInASentence() {
    for (String toml :
        Arrays.asList("a = " + "[".repeat(3000), "n = " + "1".repeat(3000), "a.".repeat(3000))) {
      bench.put("bench.toml", toml);
      IntakeException e = assertThrows(IntakeException.class, bench::read);
      assertTrue(String.valueOf(e.getMessage()).endsWith("Mend that line and run again."));
    }
  }

  @Test
  void originsAreLinesOfTheFile() {
    bench.rows("2026-10-14T09:12,total-glycerin,PM-1,product,B-1,0.180,,,,,,,");
    assertEquals(new Origin(RESULTS, 2), bench.read().bench().results().get(0).origin());
  }
}
