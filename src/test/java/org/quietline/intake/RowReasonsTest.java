package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.bench.Reading;

/** Every row that cannot be used says why, and what would mend it. */
class RowReasonsTest {
  private static final List<String> COLUMNS = Arrays.asList(TempBench.HEADER.split(",", -1));
  private static final List<String> GOOD =
      Arrays.asList(
          "2026-10-14T09:12,total-glycerin,PM-1,product,B-1,0.180,0.181,,,,,RO,ok".split(",", -1));

  @TempDir private Path folder;
  private TempBench bench;

  @BeforeEach
  void makeBench() {
    bench = new TempBench(folder);
  }

  private static String rowWith(String column, String text) {
    List<String> cells = new ArrayList<>(GOOD);
    cells.set(COLUMNS.indexOf(column), '"' + text.replace("\"", "\"\"") + '"');
    return String.join(",", cells);
  }

  @Test
  void theGoodRowIsTakenIn() {
    Accounting accounting = bench.rows(String.join(",", GOOD)).read().accounting();
    assertEquals(1, accounting.takenIn());
    assertEquals(List.of(), accounting.aside());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "O.18|\"O.18\" is not a number (a letter O where a zero belongs?).",
        "0.l8|\"0.l8\" is not a number (a letter l or I where a one belongs?).",
        "0,18|\"0,18\" is not a number (a decimal comma? This sheet writes a decimal point).",
        "<0,18|\"<0,18\" is not a number (a decimal comma? This sheet writes a decimal point).",
        "1,234|\"1,234\" is not a number (a thousands mark or a decimal comma? Write no thousands"
            + " mark, and a decimal point).",
        "1 234.5|\"1 234.5\" is not a number (a thousands mark or a decimal comma? Write no"
            + " thousands mark, and a decimal point).",
        "1.234,5|\"1.234,5\" is not a number (thousands marks and a decimal comma? Write only a"
            + " point).",
        "1.8E-1|\"1.8E-1\" is not a number (an exponent? Write the number out).",
        "0.18%|\"0.18%\" is not a number (a percent sign? The unit belongs in the column unit).",
        "0.18 mg|\"0.18 mg\" is not a number (a unit after the number? It belongs in the column"
            + " unit).",
        "0.1.8|\"0.1.8\" is not a number (two decimal points).",
        "NaN|\"NaN\" is not a number (not a value at all; leave it empty where nothing was read).",
        "#DIV/0!|\"#DIV/0!\" is not a number (not a value at all; leave it empty where nothing was"
            + " read).",
        "over|\"over\" is not a number (a word where a number belongs? Leave it empty where nothing"
            + " was read).",
        "-|\"-\" is not a number (a word where a number belongs? Leave it empty where nothing was"
            + " read).",
        "≤0.01|\"≤0.01\" is not a number (below a bound is written <0.010, above it >2.5).",
        "−0.18|\"−0.18\" is not a number (a dash where a minus sign - belongs?).",
        "0.18?|\"0.18?\" is not a number (write one like 0.180, or <0.010, or nothing).",
        "0.00000000000000000000000000000000000000000001|"
            + "\"0.00000000000000000000000000000000000000000001\" is not a number (it is longer than"
            + " 40 signs).",
      })
  void aReadingThatIsNoNumber(String text, String reason) {
    assertEquals(
        List.of(
            new SetAside(
                "readings/a.csv", 2, "reading_2", text, reason + " The row was set aside.", 1)),
        bench.rows(rowWith("reading_2", text)).aside());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "2026-02-30T10:00|\"2026-02-30T10:00\" does not exist (February 2026 has 28 days).",
        "2026-13-01T10:00|\"2026-13-01T10:00\" does not exist (months run from 01 to 12).",
        "2026-10-14T24:00|\"2026-10-14T24:00\" does not exist (a day runs from 00:00:00 to"
            + " 23:59:59).",
        "2026-10-14T09:60|\"2026-10-14T09:60\" does not exist (a day runs from 00:00:00 to"
            + " 23:59:59).",
        "2026-10-14T09:12:61|\"2026-10-14T09:12:61\" does not exist (a day runs from 00:00:00 to"
            + " 23:59:59).",
        "14/10/2026 09:12|\"14/10/2026 09:12\" is not a time (day, month and year in what order?"
            + " write year, month, day and time as in 2026-10-14T09:12).",
        "2026-10-14|\"2026-10-14\" is not a time (the time of day is missing; write it as in"
            + " 2026-10-14T09:12).",
        "2026-10-14T09:12Z|\"2026-10-14T09:12Z\" is not a time (a zone or offset? Write the bench's"
            + " local time as in 2026-10-14T09:12).",
        "2026-10-14T09:12:30.5|\"2026-10-14T09:12:30.5\" is not a time (a fraction of a second?"
            + " Write whole seconds or none, as in 2026-10-14T09:12:30).",
        "yesterday|\"yesterday\" is not a time (write year, month, day and time as in"
            + " 2026-10-14T09:12).",
        "``|taken_at is empty; every row needs it, write it.",
      })
  void aTimeThatIsNone(String text, String reason) {
    assertEquals(
        List.of(
            new SetAside(
                "readings/a.csv", 2, "taken_at", text, reason + " The row was set aside.", 1)),
        bench.rows(rowWith("taken_at", text)).aside());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "method|total-glicerin|\"total-glicerin\" is no method of this bench (did you mean"
            + " total-glycerin?).",
        "method|zinc|\"zinc\" is no method of this bench (known: total-glycerin, acid-number).",
        "method|``|method is empty; every row needs it, write it.",
        "instrument|PM-2|\"PM-2\" is no instrument of this bench (did you mean PM-1?).",
        "role|controll|\"controll\" is no role (did you mean control?).",
        "role|sample|\"sample\" is no role (known: control, product, blank, retest).",
        "role|control|\"B-1\" is no control material of total-glycerin (known: QC-TG-A).",
        "sample|B/1|\"B/1\" holds a stroke (/), which a sample may not; write a hyphen in its"
            + " place.",
        "unit|%|\"%\" does not convert to the unit of total-glycerin (did you mean % mass?); write"
            + " % mass or g/kg or mg/g or mg/kg or ppm, or leave the field empty where it is % mass.",
      })
  void aNameThatTheBenchDoesNotKnow(String column, String text, String reason) {
    boolean control = text.equals("control");
    assertEquals(
        List.of(
            new SetAside(
                "readings/a.csv",
                2,
                control ? "sample" : column,
                control ? "B-1" : text,
                reason + " The row was set aside.",
                1)),
        bench.rows(rowWith(column, text)).aside());
  }

  @Test
  void aMassFractionWithoutBasisDoesNotConvertToAcidNumber() {
    String row = "2026-10-14T09:12,acid-number,PM-1,product,B-1,0.18,,,mg/kg,,,,";
    assertEquals(
        "\"mg/kg\" does not convert to the unit of acid-number (a mass fraction converts to acid"
            + " number only with its basis); write mg KOH/g or % mass as oleic or % mass as"
            + " palmitic or % mass as lauric or % mass as stearic or % mass as linoleic, or leave"
            + " the field empty where it is mg KOH/g. The row was set aside.",
        bench.rows(row).aside().get(0).reason());
  }

  @Test
  void aRowWithoutAnyReadingIsSetAside() {
    assertEquals(
        List.of(
            new SetAside(
                "readings/a.csv",
                2,
                "reading_1",
                "",
                "The row has no reading at all; write at least one. The row was set aside.",
                1)),
        bench.rows("2026-10-14T09:12,total-glycerin,PM-1,product,B-1,,,,,,,,").aside());
  }

  @Test
  void aGapBeforeAReadingStaysAMissingReading() {
    String row = "2026-10-14T09:12,total-glycerin,PM-1,product,B-1,,0.181,,,,,,";
    List<Reading> readings = bench.rows(row).read().bench().results().get(0).readings();
    assertEquals(2, readings.size());
    assertEquals(new Reading.Missing(), readings.get(0));
  }

  @Test
  void aRowThatNeedsAnEntrySetAsideSaysSo() {
    bench.put("bench.toml", TempBench.SETTINGS.replace("decimals = 3", "decimals = \"three\""));
    bench.rows(String.join(",", GOOD), "2026-10-14T09:12,acid-number,PM-1,product,B-1,0.18,,,,,,,");
    assertEquals(1, bench.read().accounting().takenIn());
    assertEquals(
        List.of(
            new SetAside(
                "readings/a.csv",
                2,
                "method",
                "total-glycerin",
                "\"total-glycerin\" cannot be used: its entry in bench.toml, line 4, was set aside:"
                    + " decimals is \"three\"; it must be a whole number, without quotes. The row"
                    + " was set aside.",
                1)),
        bench.aside());
  }

  @Test
  void aControlWhoseMaterialWasSetAsideSaysSo() {
    bench.put(
        "bench.toml",
        TempBench.SETTINGS.replace("assigned-value = 0.180", "assigned-value = \"\""));
    bench.rows("2026-10-14T09:12,total-glycerin,PM-1,control,QC-TG-A,0.18,,,,,,,");
    assertEquals(
        "\"QC-TG-A\" cannot be used: its entry in bench.toml, line 23, was set aside:"
            + " assigned-value is \"\"; it must be a number such as 0.012, without quotes. The row"
            + " was set aside.",
        bench.aside().get(0).reason());
  }

  private static final String CALIBRATIONS =
      """
      calibration,method,instrument,calibrated_at,calibrator_1_assigned,calibrator_1_response
      C-1,total-glycerin,PM-1,2026-10-01T08:00,0.10,0.21
      C-2,acid-number,PM-1,2026-10-01T09:00,,
      C-3,total-glycerin,PM-1,2026-10-20T09:00,,
      C-4,total-glycerin,PM-1,2026-10-20T09:00,,0.21
      C-5,total-glycerin,PM-1,2026-10-20,,
      C-6,total-glycerin,PM-1,2026-10-20T09:00,<0.1,
      """;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "C-2|\"C-2\" is a calibration of acid-number on PM-1, not of total-glycerin on PM-1; name"
            + " the right one or leave the field empty.",
        "C-5|\"C-5\" cannot be used: its row in calibrations.csv, line 6, was set aside:"
            + " \"2026-10-20\" is not a time (the time of day is missing; write it as in"
            + " 2026-10-14T09:12).",
        "D-99|\"D-99\" is not in calibrations.csv (known: C-1, C-2, C-3).",
        "C-11|\"C-11\" is not in calibrations.csv (did you mean C-1?).",
      })
  void aCalibrationThatCannotBeMeant(String text, String reason) {
    bench.put("calibrations.csv", CALIBRATIONS).rows(rowWith("calibration", text));
    List<SetAside> aside = bench.aside();
    assertEquals(
        new SetAside(
            "readings/a.csv", 2, "calibration", text, reason + " The row was set aside.", 1),
        aside.get(aside.size() - 1));
  }

  @Test
  void aCalibrationThatIsMeantIsKept() {
    bench.put("calibrations.csv", CALIBRATIONS).rows(rowWith("calibration", "C-1"));
    assertEquals("C-1", bench.read().bench().results().get(0).calibration().orElseThrow());
  }

  @Test
  void withoutASheetOfCalibrationsTheNameIsTakenAsItStands() {
    bench.rows(rowWith("calibration", "C-77"));
    assertEquals("C-77", bench.read().bench().results().get(0).calibration().orElseThrow());
    bench.put("calibrations.csv", "id\nC-1\n");
    assertEquals(1, bench.read().bench().results().size());
  }

  @Test
  void calibrationRowsThatCannotBeUsed() {
    bench.put("calibrations.csv", CALIBRATIONS);
    assertEquals(
        List.of(
            new SetAside(
                "calibrations.csv",
                5,
                "calibrator_1_response",
                "0.21",
                "calibrator_1_response is given without calibrator_1_assigned; write what the"
                    + " calibrator is worth. The row was set aside.",
                1),
            new SetAside(
                "calibrations.csv",
                6,
                "calibrated_at",
                "2026-10-20",
                "\"2026-10-20\" is not a time (the time of day is missing; write it as in"
                    + " 2026-10-14T09:12). The row was set aside.",
                1),
            new SetAside(
                "calibrations.csv",
                7,
                "calibrator_1_assigned",
                "<0.1",
                "\"<0.1\" is a bound where this column takes a plain number. The row was set aside.",
                1)),
        bench.aside());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "L-1;zinc;;;;|method|zinc|\"zinc\" is no method of this bench (known: total-glycerin,"
            + " acid-number).",
        ";total-glycerin;;;;|reagent_lot|``|reagent_lot is empty; every row needs it, write it.",
        "L-1;total-glycerin;1/2/2026;;;|received_on|1/2/2026|\"1/2/2026\" is not a day (day, month"
            + " and year in what order? write year, month, day as in 2026-10-14).",
        "L-1;total-glycerin;;2026-04-31;;|opened_on|2026-04-31|\"2026-04-31\" does not exist (April"
            + " 2026 has 30 days).",
        "L-1;total-glycerin;;;2026-04-30T08:00;|expires_on|2026-04-30T08:00|\"2026-04-30T08:00\" is"
            + " not a day (a time of day too many? write year, month, day as in 2026-10-14).",
        "L-1;total-glycerin;;;soon;|expires_on|soon|\"soon\" is not a day (write year, month, day as"
            + " in 2026-10-14).",
        "L-1;total-glycerin;;;;frozen|storage|frozen|\"frozen\" is no kind of storage (known:"
            + " refrigerated, ambient).",
      })
  void reagentRowsThatCannotBeUsed(String row, String field, String text, String reason) {
    bench.put(
        "reagents.csv",
        "reagent_lot,method,received_on,opened_on,expires_on,storage\n"
            + row.replace(';', ',')
            + "\n");
    assertEquals(
        List.of(
            new SetAside("reagents.csv", 2, field, text, reason + " The row was set aside.", 1)),
        bench.aside());
  }

  private static final String SIGNAL =
      "total-glycerin/PM-1/QC-TG-A/2026-10-14T09:12/beyond-action-limit";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "SIGNAL;;yes|exclude_result|yes|exclude_result is yes, but no cause is given; write the"
            + " cause, or no.",
        "SIGNAL;c;maybe|exclude_result|maybe|\"maybe\" is neither yes nor no; write one of them.",
        "the red one;c;|signal|the red one|\"the red one\" is no id of a signal or a question; copy it whole from the"
            + " review, as in method/instrument/material/2026-10-14T09:12/beyond-action-limit.",
        "a/PM-1/QC-TG-A/2026-10-14T09:12/beyond-action-limit;c;|signal|a|\"a\" is no method of this"
            + " bench (known: total-glycerin, acid-number).",
        "total-glycerin/b/QC-TG-A/2026-10-14T09:12/beyond-action-limit;c;|signal|b|\"b\" is no"
            + " instrument of this bench (known: PM-1).",
        "total-glycerin/PM-1/c/2026-10-14T09:12/beyond-action-limit;c;|signal|c|\"c\" is no control"
            + " material of total-glycerin (known: QC-TG-A).",
      })
  void actionRowsThatCannotBeUsed(String row, String field, String text, String reason) {
    bench.put(
        "actions.csv",
        "recorded_at,signal,cause,exclude_result\n2026-10-15T08:00,"
            + row.replace("SIGNAL", SIGNAL).replace(';', ',')
            + "\n");
    assertEquals(
        List.of(new SetAside("actions.csv", 2, field, text, reason + " The row was set aside.", 1)),
        bench.aside());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "B-1;total-glycerin;Lab;;;|value|``|value is empty; every row needs it, write it.",
        "B-1;total-glycerin;Lab;>0.2;;|value|>0.2|\">0.2\" is a bound where this column takes a"
            + " plain number.",
        "B-1;total-glycerin;Lab;0.2x!;;|value|0.2x!|\"0.2x!\" is not a number (a unit after the"
            + " number? It belongs in the column unit).",
        "B-1;total-glycerin;Lab;0.2;-0.01;|expanded_uncertainty|-0.01|expanded_uncertainty is"
            + " -0.01, it must be more than 0; leave it empty where it is not known.",
        "B-1;total-glycerin;Lab;0.2;0.01;0|coverage_factor|0|coverage_factor is 0, it must be more"
            + " than 0; leave it empty where it is not known.",
        "B-1;total-glycerin;;0.2;;|laboratory|``|laboratory is empty; every row needs it, write it.",
      })
  void outsideRowsThatCannotBeUsed(String row, String field, String text, String reason) {
    bench.put(
        "outside.csv",
        "sample,method,laboratory,value,expanded_uncertainty,coverage_factor\n"
            + row.replace(';', ',')
            + "\n");
    assertEquals(
        List.of(new SetAside("outside.csv", 2, field, text, reason + " The row was set aside.", 1)),
        bench.aside());
  }

  /** A record may one day refuse more than the columns are checked for; that is no crash. */
  @Test
  void whatARecordRefusesIsToldAtItsColumn() throws Unusable {
    Header header =
        Header.of(
            List.of("a", "b"),
            new Layout(List.of("a", "b"), List.of(), Set.of(), List.of()),
            SheetForm.PLAIN);
    Cells cells = new Cells(2, new String[] {"1", "2"}, false, false, RawRow.of("1,2"));
    Row row = new Row("x.csv", header, cells);
    Unusable atColumn =
        assertThrows(
            Unusable.class,
            () ->
                row.build(
                    () -> {
                      throw new IllegalArgumentException("b is 2, it must be more");
                    }));
    assertEquals("b", atColumn.field());
    assertEquals("2", atColumn.text());
    assertEquals("b is 2, it must be more; mend it.", atColumn.sentence());
    Unusable atRow =
        assertThrows(
            Unusable.class,
            () ->
                row.build(
                    () -> {
                      throw new IllegalArgumentException("too odd");
                    }));
    assertEquals("row", atRow.field());
    assertEquals("1,2", atRow.text());
  }
}
