package org.quietline.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The committed folder is what the generator makes, and holds what its ABOUT.md says. */
class TidewickGeneratorTest {
  @Test
  void theFolderIsWhatTheGeneratorMakes(@TempDir Path fresh) throws IOException {
    TidewickGenerator.main(new String[] {fresh.toString()});
    SortedMap<String, String> made = SampleFiles.read(fresh);
    SortedMap<String, String> kept = SampleFiles.read(TidewickSheets.FOLDER);
    assertEquals(19, made.size(), "14 months and 5 files beside them");
    assertEquals(made.keySet(), kept.keySet());
    made.forEach((name, text) -> assertEquals(text, kept.get(name), name));
  }

  @Test
  void anotherSeedMakesAnotherMethodAndLeavesTheRest() {
    TidewickGenerator.Seeds seeds = TidewickGenerator.SEEDS;
    SortedMap<String, String> kept = TidewickGenerator.files(seeds);
    SortedMap<String, String> other =
        TidewickGenerator.files(
            new TidewickGenerator.Seeds(
                seeds.plan(),
                seeds.totalGlycerin() + 1,
                seeds.acidNumber(),
                seeds.freeFattyAcid()));
    assertFalse(rowsOf(kept, "total-glycerin").equals(rowsOf(other, "total-glycerin")));
    assertEquals(213, rowsOf(kept, "acid-number").size(), "59 controls and 154 products");
    assertTrue(rowsOf(kept, "acid-number").equals(rowsOf(other, "acid-number")));
  }

  @Test
  void theRowsOfEachFileAddUp() throws IOException {
    assertEquals(TidewickSheets.rowsInAbout("Rows of each file"), TidewickSheets.rowsPerFile());
  }

  @Test
  void theRowsThatCannotBeReadStandWhereAboutSaysTheyDo() throws IOException {
    assertEquals(
        "2026-02-30T09:10",
        TidewickSheets.sheet("readings/2026-02.csv").get(18).get("taken_at"),
        "line 20");
    assertEquals(
        "O.18", TidewickSheets.sheet("readings/2026-03.csv").get(12).get("reading_1"), "line 14");
    assertEquals(
        "toal-glycerin",
        TidewickSheets.sheet("readings/2026-07.csv").get(9).get("method"),
        "line 11");
    long unreadable = 0;
    for (CSVRecord row : TidewickSheets.allRows()) {
      unreadable += isUnreadable(row) ? 1 : 0;
    }
    assertEquals(3, unreadable);
  }

  @Test
  void fourRowsAreExactCopiesAndNoOtherTwoShareAKey() throws IOException {
    Set<List<String>> rows = new HashSet<>();
    Set<List<String>> keys = new HashSet<>();
    int copies = 0;
    for (CSVRecord row : TidewickSheets.allRows()) {
      if (rows.add(filled(row))) {
        List<String> key =
            List.of(
                row.get("taken_at"),
                row.get("method"),
                row.get("instrument"),
                row.get("role"),
                row.get("sample"));
        assertTrue(keys.add(key), key.toString());
      } else {
        copies++;
      }
    }
    assertEquals(4, copies);
    assertEquals(461, rows.size() + copies);
  }

  @Test
  void theOddRowsAreThere() throws IOException {
    List<CSVRecord> single = new ArrayList<>();
    List<CSVRecord> censored = new ArrayList<>();
    List<CSVRecord> third = new ArrayList<>();
    List<CSVRecord> otherUnit = new ArrayList<>();
    for (CSVRecord row : TidewickSheets.allRows()) {
      addIf(row.get("reading_2").isEmpty(), row, single);
      addIf(row.get("reading_1").startsWith("<"), row, censored);
      addIf(row.isMapped("reading_3") && !row.get("reading_3").isEmpty(), row, third);
      addIf(row.get("unit").equals("mg/kg"), row, otherUnit);
    }
    assertEquals(List.of("B-1034"), samples(single));
    assertEquals(List.of("WASH-31"), samples(censored));
    assertEquals(List.of("B-1135"), samples(third));
    assertEquals(List.of("B-1043"), samples(otherUnit));
    assertEquals("TB", third.get(0).get("operator"));
  }

  @Test
  void theYoungMethodHasFiveControls() throws IOException {
    List<String> days = new ArrayList<>();
    int products = 0;
    for (CSVRecord row : TidewickSheets.allRows()) {
      if (row.get("method").equals("free-fatty-acid")) {
        assertEquals("PM-2", row.get("instrument"));
        addIf(row.get("role").equals("control"), row.get("taken_at").substring(0, 10), days);
        products += row.get("role").equals("product") ? 1 : 0;
      }
    }
    assertEquals(5, days.size());
    assertTrue(days.get(0).startsWith("2026-09-25"), days.get(0));
    assertEquals("2026-10-23", days.get(4));
    assertEquals(8, products);
  }

  @Test
  void everyResultFollowsItsCalibrationWithinThirtyDays() throws IOException {
    Map<String, LocalDateTime> calibrated = new TreeMap<>();
    for (CSVRecord row : TidewickSheets.sheet("calibrations.csv")) {
      calibrated.put(row.get("calibration"), LocalDateTime.parse(row.get("calibrated_at")));
    }
    assertEquals(32, calibrated.size());
    for (CSVRecord row : TidewickSheets.allRows()) {
      if (!isUnreadable(row)) {
        LocalDateTime at = LocalDateTime.parse(row.get("taken_at"));
        LocalDateTime from =
            Objects.requireNonNull(calibrated.get(row.get("calibration")), row.toString());
        assertTrue(from.isBefore(at), row.toString());
        assertTrue(!at.isAfter(from.plusDays(30)), row.toString());
      }
    }
  }

  @Test
  void reagentsArePastTheirDateOnlyWhereAboutSaysSo() throws IOException {
    Map<String, CSVRecord> lots = new TreeMap<>();
    for (CSVRecord lot : TidewickSheets.sheet("reagents.csv")) {
      lots.put(lot.get("reagent_lot"), lot);
    }
    List<String> past = new ArrayList<>();
    for (CSVRecord row : TidewickSheets.allRows()) {
      CSVRecord lot = Objects.requireNonNull(lots.get(row.get("reagent_lot")), row.toString());
      if (!isUnreadable(row)) {
        LocalDate on = LocalDateTime.parse(row.get("taken_at")).toLocalDate();
        LocalDate opened = LocalDate.parse(lot.get("opened_on"));
        assertTrue(!LocalDate.parse(lot.get("received_on")).isAfter(opened), lot.toString());
        assertTrue(!opened.isAfter(on), row.toString());
        boolean overPrinted = on.isAfter(LocalDate.parse(lot.get("expires_on")));
        boolean overOpened = on.isAfter(opened.plusDays(shelfLife(lot)));
        addIf(overPrinted || overOpened, lot.get("reagent_lot") + " " + on, past);
      }
    }
    assertEquals(
        List.of(
            "TG-L04 2026-03-10",
            "TG-L04 2026-03-11",
            "TG-L04 2026-03-12",
            "TG-L10 2026-10-20",
            "TG-L10 2026-10-21"),
        past);
  }

  @Test
  void everyActionAndOutsideResultNamesARowOfTheBench() throws IOException {
    Set<String> controls = new HashSet<>();
    Set<String> samples = new HashSet<>();
    for (CSVRecord row : TidewickSheets.allRows()) {
      String sample = row.get("sample");
      controls.add(
          String.join("/", row.get("method"), row.get("instrument"), sample, row.get("taken_at")));
      samples.add(row.get("method") + " " + sample);
    }
    List<CSVRecord> actions = TidewickSheets.sheet("actions.csv");
    assertEquals(6, actions.size());
    for (CSVRecord action : actions) {
      String signal = action.get("signal");
      assertTrue(controls.contains(signal.substring(0, signal.lastIndexOf('/'))), signal);
      assertFalse(action.get("cause").isEmpty());
    }
    List<CSVRecord> outside = TidewickSheets.sheet("outside.csv");
    assertEquals(6, outside.size());
    for (CSVRecord row : outside) {
      assertTrue(samples.contains(row.get("method") + " " + row.get("sample")), row.toString());
    }
  }

  @Test
  void oneReadingIsTypedTenTimesTooBig() throws IOException {
    List<String> slips = new ArrayList<>();
    for (CSVRecord row : TidewickSheets.allRows()) {
      if (row.get("sample").equals("QC-TG-A")) {
        boolean tooBig = new BigDecimal(row.get("reading_1")).compareTo(BigDecimal.ONE) > 0;
        addIf(tooBig, row.get("taken_at"), slips);
      }
    }
    assertEquals(List.of("2026-04-23T07:32"), slips);
  }

  private static long shelfLife(CSVRecord lot) {
    boolean cold = lot.get("storage").equals("refrigerated");
    return lot.get("method").equals("acid-number") ? (cold ? 90 : 30) : (cold ? 60 : 18);
  }

  private static boolean isUnreadable(CSVRecord row) {
    return row.get("taken_at").startsWith("2026-02-30")
        || row.get("reading_1").startsWith("O")
        || row.get("method").equals("toal-glycerin");
  }

  private static <T> void addIf(boolean wanted, T what, List<T> to) {
    if (wanted) {
      to.add(what);
    }
  }

  private static List<String> samples(List<CSVRecord> rows) {
    return rows.stream().map(r -> r.get("sample")).toList();
  }

  private static List<String> filled(CSVRecord row) {
    List<String> fields = new ArrayList<>();
    row.toMap().forEach((column, text) -> addIf(!text.isEmpty(), column + "=" + text, fields));
    fields.sort(String::compareTo);
    return fields;
  }

  private static Set<String> rowsOf(SortedMap<String, String> files, String method) {
    return files.entrySet().stream()
        .filter(f -> f.getKey().startsWith("readings/"))
        .flatMap(f -> f.getValue().lines())
        .filter(line -> line.contains("," + method + ","))
        .collect(Collectors.toSet());
  }
}
