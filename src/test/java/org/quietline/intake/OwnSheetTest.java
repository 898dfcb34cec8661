package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.bench.Reading;
import org.quietline.bench.ReagentLot;
import org.quietline.bench.Result;
import org.quietline.bench.Role;

/** Files of a layout of their own are read as their {@code [[sheet]]} says. */
class OwnSheetTest {
  private static final Charset WINDOWS = Charset.forName("windows-1252");

  /** The example of the published interface, as it stands there. */
  private static final String EXAMPLE =
      """
      [[sheet]]                          # optional: describes a layout other than the plain one
      match = "readings/stick-*.csv"
      delimiter = ";"
      decimal = ","
      encoding = "windows-1252"
      time-format = "dd/MM/yyyy HH:mm"
      columns = { taken_at = ["Date", "Time"], method = "Test", sample = "Vial", readings = ["R1", "R2"], unit = "Unit" }
      values = { method = { "TGLY" = "total-glycerin" } }
      defaults = { instrument = "PM-1", role = "product" }
      """;

  @TempDir private Path folder;
  private TempBench bench;

  @BeforeEach
  void makeBench() {
    bench = new TempBench(folder);
  }

  private TempBench sheet(String entry) {
    return bench.put("bench.toml", TempBench.SETTINGS + "\n" + entry);
  }

  private static String described(String lines) {
    return """
        [[sheet]]
        match = "readings/own.txt"
        delimiter = ";"
        columns = { sample = "Vial", readings = ["R1"] }
        defaults = { method = "total-glycerin", instrument = "PM-1", role = "product" }
        """
        + lines;
  }

  private List<Result> results() {
    return bench.read().bench().results();
  }

  private static List<String> readings(Result result) {
    return result.writtenReadings().stream().map(Reading::toString).toList();
  }

  private String reason() {
    return bench.aside().get(0).reason();
  }

  @Test
  void theExampleOfTheInterfaceIsReadAsItStands() {
    sheet(EXAMPLE)
        .put(
            "readings/stick-1.csv",
            """
            Date;Time;Vial;Test;R1;R2;Unit;remark
            14/10/2026;09:12;B-1;TGLY;0,180;<0,2;;5 µl
            14/10/2026;09:30;B-2;acid-number;1,8;;mg KOH/g;
            """
                .getBytes(WINDOWS));
    Intake intake = bench.read();
    assertEquals(List.of(), intake.accounting().settingsAside());
    assertEquals(List.of(), intake.accounting().aside());
    Result first = intake.bench().results().get(0);
    assertEquals(LocalDateTime.of(2026, 10, 14, 9, 12), first.takenAt());
    assertEquals("total-glycerin", first.method());
    assertEquals("PM-1", first.instrument());
    assertEquals(Role.PRODUCT, first.role());
    assertEquals("B-1", first.sample());
    assertEquals(
        List.of(
            new Reading.Measured(new BigDecimal("0.180")),
            new Reading.Below(new BigDecimal("0.2"))),
        first.readings());
    assertEquals("% mass", first.writtenUnit().symbol());
    assertEquals(Optional.of("5 µl"), first.remark());
    Result second = intake.bench().results().get(1);
    assertEquals("acid-number", second.method());
    assertEquals(List.of("1.8"), readings(second));
  }

  @Test
  void theSameResultInAPlainSheetAndInAnotherLayoutIsMetBefore() {
    sheet(EXAMPLE)
        .put(
            "readings/a.csv",
            """
            taken_at,method,instrument,role,sample,reading_1,reading_2
            2026-10-14T09:12,total-glycerin,PM-1,product,B-1,0.180,0.181
            """)
        .put(
            "readings/stick-1.csv",
            """
            Date;Time;Vial;Test;R1;R2;Unit
            14/10/2026;09:12;B-1;TGLY;0,180;0,181;
            """);
    assertEquals(1, bench.read().accounting().metBefore());
  }

  @Test
  void columnsThatAreNotNamedAreRemarkedOnAndIgnoredOnesAreNot() {
    sheet(
            """
            [[sheet]]
            match = "readings/own.txt"
            columns = { readings = ["R1", 7], sample = "Vial" }
            ignore = ["Average", 9, "operator"]
            """)
        .put(
            "readings/own.txt",
            """
            taken_at,method,instrument,role,VIAL,r1,R2,average,spare,reading_1,operator,sample
            2026-10-14T09:12,total-glycerin,PM-1,product,B-1,0.180,0.190,0.185,x,9,RO,S
            """);
    Intake intake = bench.read();
    Result result = intake.bench().results().get(0);
    assertEquals(List.of("0.180", "0.190"), readings(result));
    assertEquals("B-1", result.sample());
    assertEquals(Optional.empty(), result.operator());
    assertEquals(
        List.of(
            "readings/own.txt, line 1, reading_1: The column \"reading_1\" is not named in the"
                + " [[sheet]] in bench.toml, line 28, and nothing in it was read.",
            "readings/own.txt, line 1, sample: The column \"sample\" is not named in the [[sheet]]"
                + " in bench.toml, line 28, and nothing in it was read."),
        intake.accounting().aside().stream().map(Object::toString).toList());
  }

  @Test
  void aSheetWithoutHeaderIsReadByTheNumbersOfItsColumns() {
    sheet(
            """
            [[sheet]]
            match = "readings/pad-??.log"
            delimiter = "\\t"
            header = false
            skip-lines = 2
            decimal = "either"
            time-format = ["d.M.yy H:mm", "yyyyMMdd HHmmss"]
            columns = { taken_at = [1, 2], sample = 3, readings = [4, 5], role = 6 }
            values = { role = { "K" = "control", "" = "product" }, readings = { "over" = ">2.5", "---" = "" } }
            defaults = { method = "total-glycerin", instrument = "PM-1", operator = "RO" }
            ignore = [7]
            """)
        .put(
            "readings/pad-01.log",
            """
            Invented pad\t"open
            from 14.10.
            14.10.26\t9:12\tB-1\t0,180\t0.181\t\t9
            20261014\t091300\tQC-TG-A\tover\t---\tK\t9
            14.10.26\t9:14\tB-2\t0,1
            14.10.26\t9:15\tB-3\t1,234.5\t\t\t9
            14.10.26\t9:16\tB-4\t1,234,5\t\t\t9
            """);
    Intake intake = bench.read();
    List<Result> results = intake.bench().results();
    assertEquals(LocalDateTime.of(2026, 10, 14, 9, 12), results.get(0).takenAt());
    assertEquals(List.of("0.180", "0.181"), readings(results.get(0)));
    assertEquals(3, results.get(0).origin().line());
    assertEquals(Role.CONTROL, results.get(1).role());
    assertEquals(List.of(">2.5"), readings(results.get(1)));
    assertEquals(Optional.of("RO"), results.get(1).operator());
    assertEquals(
        List.of(
            "readings/pad-01.log, line 5, row: The row has 4 fields where the first row has 7;"
                + " write every field, empty ones too. The row was set aside.",
            "readings/pad-01.log, line 6, reading_1: \"1,234.5\" is not a number (a thousands mark"
                + " or a decimal comma? Write no thousands mark, and a decimal point). The row was"
                + " set aside.",
            "readings/pad-01.log, line 7, reading_1: \"1,234,5\" is not a number (two decimal"
                + " marks). The row was set aside."),
        intake.accounting().aside().stream().map(Object::toString).toList());
    assertEquals(5, intake.accounting().rows());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "0.18|\"0.18\" is not a number (a decimal point? This sheet writes a decimal comma).",
        "1,2,3|\"1,2,3\" is not a number (two decimal marks).",
        "0,18!|\"0,18!\" is not a number (write one like 0,180, or <0,010, or nothing).",
      })
  void aNumberWithTheWrongMarkSaysWhichMarkTheSheetWrites(String text, String reason) {
    sheet(described("decimal = \",\"\n"))
        .put("readings/own.txt", "taken_at;Vial;R1\n2026-10-14T09:12;B-1;" + text + "\n");
    assertEquals(reason + " The row was set aside.", reason());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "13/02/2026 09:12|2026-02-13T09:12",
        "02/13/2026 09:12|2026-02-13T09:12",
        "05/05/2026 09:12|2026-05-05T09:12",
        "14-oct-2026 1:05 pm|2026-10-14T13:05",
      })
  void aTextIsTriedAgainstAllFormats(String text, String time) {
    sheet(
            described(
                "time-format = [\"dd/MM/yyyy HH:mm\", \"MM/dd/yyyy HH:mm\", \"d-MMM-yyyy h:mm"
                    + " a\"]\n"))
        .put("readings/own.txt", "taken_at;Vial;R1\n" + text + ";B-1;0.18\n");
    assertEquals(LocalDateTime.parse(time), results().get(0).takenAt());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "03/04/2026 09:12|\"03/04/2026 09:12\" can be read as 2026-04-03T09:12 (dd/MM/yyyy HH:mm)"
            + " or as 2026-03-04T09:12 (MM/dd/yyyy HH:mm); leave only one of these formats in its"
            + " [[sheet]].",
        "31/02/2026 09:12|\"31/02/2026 09:12\" is not a time that exists, written dd/MM/yyyy HH:mm"
            + " or MM/dd/yyyy HH:mm; correct it, or the format in its [[sheet]].",
      })
  void aTimeThatIsAmbiguousOrNoneIsSetAside(String text, String reason) {
    sheet(described("time-format = [\"dd/MM/yyyy HH:mm\", \"MM/dd/yyyy HH:mm\"]\n"))
        .put("readings/own.txt", "taken_at;Vial;R1\n" + text + ";B-1;0.18\n");
    assertEquals(reason + " The row was set aside.", reason());
    assertEquals("taken_at", bench.aside().get(0).field());
  }

  @Test
  void theSheetsBesideTheSettingsMayHaveALayoutOfTheirOwn() {
    sheet(
            """
            [[sheet]]
            match = "reagents.csv"
            delimiter = ";"
            date-format = "d.M.yyyy"
            columns = { reagent_lot = "Charge", expires_on = "bis" }
            defaults = { method = "total-glycerin" }

            [[sheet]]
            match = "{calibrations,outside,actions}.csv"
            delimiter = ";"
            decimal = ","
            time-format = "d.M.yyyy H:mm"
            columns = { calibration = "Nr", calibrated_at = ["am"], calibrator_1_assigned = "S1", value = "Wert", recorded_at = "am", signal = "Zeichen", cause = "Grund" }
            defaults = { method = "total-glycerin", instrument = "PM-1", laboratory = "Lab" }
            """)
        .put("reagents.csv", "Charge;bis\nL-1;1.12.2026\n")
        .put("calibrations.csv", "Nr;am;S1\nC-1;1.10.2026 8:00;0,10\n")
        .put("outside.csv", "sample;Wert;expanded_uncertainty\nB-1;0,22;0,01\n")
        .put(
            "actions.csv",
            """
            am;Zeichen;Grund
            2.10.2026 8:00;total-glycerin/PM-1/QC-TG-A/2026-10-01T09:12/beyond-action-limit;bubble
            """);
    Intake intake = bench.read();
    assertEquals(List.of(), intake.accounting().settingsAside());
    assertEquals(List.of(), intake.accounting().aside());
    ReagentLot lot = intake.bench().reagentLots().get(0);
    assertEquals("L-1", lot.key());
    assertEquals(Optional.of(LocalDate.of(2026, 12, 1)), lot.expiresOn());
    assertEquals(
        new BigDecimal("0.10"),
        intake.bench().calibrations().get(0).calibrators().get(0).assigned());
    assertEquals(new BigDecimal("0.22"), intake.bench().outsideResults().get(0).value());
    assertEquals(Optional.of("bubble"), intake.bench().actions().get(0).cause());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "Vial;R1|The sheet says nothing of taken_at; name a column for it, or a default, in the"
            + " [[sheet]] in bench.toml, line 28. The header is \"vial,r1\".",
        "taken_at;Vail;R2|The sheet lacks the columns Vial, R1 named in the [[sheet]] in"
            + " bench.toml, line 28; it has taken_at, Vail, R2. The header is"
            + " \"taken_at,vail,r2\".",
        "taken_at;R1|The sheet lacks the column Vial named in the [[sheet]] in bench.toml, line 28;"
            + " it has taken_at, R1. The header is \"taken_at,r1\".",
        "taken_at;Vial;R1;r1|The column R1 is there twice; name it by its number in the [[sheet]]"
            + " in bench.toml, line 28. The header is \"taken_at,vial,r1,r1\".",
        "taken_at;Vial;R1;units|The column \"units\" is not known (did you mean unit?); rename it,"
            + " or name it in columns or ignore of the [[sheet]] in bench.toml, line 28. The header"
            + " is \"taken_at,vial,r1,units\".",
      })
  void aFileThatDoesNotFitItsSheetIsSetAside(String header, String reason) {
    sheet(described("")).put("readings/own.txt", header + "\n1\n2\n");
    assertEquals(reason + " All 2 rows were set aside.", reason());
  }

  @Test
  void aNumberedColumnBeyondTheFirstRowIsMissing() {
    sheet(
            """
            [[sheet]]
            match = "readings/own.txt"
            header = false
            columns = { taken_at = 1, sample = 2, readings = 3 }
            defaults = { method = "total-glycerin", instrument = "PM-1", role = "product" }
            """)
        .put("readings/own.txt", "2026-10-14T09:12,B-1\n2026-10-14T09:13,B-2\n");
    assertEquals(
        "The sheet lacks the column 3 named in the [[sheet]] in bench.toml, line 28; it has 2"
            + " columns. All 2 rows were set aside.",
        reason());
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-16", "UTF-16LE", "UTF-16BE", "windows-1252", "ISO-8859-1", "UTF-8"})
  void everyEncodingIsRead(String encoding) {
    String content = "taken_at;Vial;R1;remark\n2026-10-14T09:12;B-1;0.18;größer\n";
    sheet(described("encoding = \"" + encoding + "\"\n"))
        .put("readings/own.txt", content.getBytes(Charset.forName(encoding)));
    assertEquals(Optional.of("größer"), results().get(0).remark());
  }

  @Test
  void bytesThatAreNotOfTheEncodingSetTheirRowAside() {
    byte[] content =
        "taken_at;Vial;R1;remark\n2026-10-14T09:12;B-1;0.18;a\u0081b\n"
            .getBytes(StandardCharsets.ISO_8859_1);
    sheet(described("encoding = \"windows-1252\"\n")).put("readings/own.txt", content);
    assertEquals(
        "\"a\uFFFDb\" is not windows-1252; save the file as windows-1252, or correct the encoding"
            + " in the [[sheet]] in bench.toml, line 28. The row was set aside.",
        reason());
  }

  @Test
  void aMarkThatSpeaksAgainstTheEncodingSetsTheFileAside() {
    sheet(described("encoding = \"windows-1252\"\n"))
        .put("readings/own.txt", "\uFEFFtaken_at;Vial;R1\n2026-10-14T09:12;B-1;0.18\n");
    assertEquals(
        "The file begins with the mark of UTF-8, but the [[sheet]] in bench.toml, line 28 says"
            + " windows-1252; correct the encoding there. Its one row was set aside.",
        reason());
  }

  @Test
  void theNarrowestMatchWinsAndATieIsAnError() {
    String entry =
        """
        [[sheet]]
        match = "%s"
        columns = { sample = "%s" }
        """;
    sheet(
            String.format(entry, "readings/*.csv", "wide")
                + String.format(entry, "readings/stick-*.csv", "narrow")
                + String.format(entry, "readings/stick-1.csv", "exact")
                + String.format(entry, "readings/a-*.csv", "one")
                + String.format(entry, "readings/*-a.csv", "other"))
        .put("readings/stick-1.csv", "exact\n")
        .put("readings/stick-2.csv", "exact\n")
        .put("readings/x.csv", "exact\n")
        .put("readings/a-a.csv", "exact\n1\n");
    assertEquals(
        List.of(
            "readings/a-a.csv, line 1, sheet: The [[sheet]] entries in bench.toml, lines 37 and 40,"
                + " both describe this file; let only one of them match it. Its one row was set"
                + " aside.",
            "readings/stick-1.csv, line 1, header: The sheet says nothing of taken_at, method,"
                + " instrument, role, reading_1; name a column for it, or a default, in the"
                + " [[sheet]] in bench.toml, line 34. The header is \"exact\". It holds no rows.",
            "readings/stick-2.csv, line 1, header: The sheet lacks the column narrow named in the"
                + " [[sheet]] in bench.toml, line 31; it has exact. The header is \"exact\". It"
                + " holds no rows.",
            "readings/x.csv, line 1, header: The sheet lacks the column wide named in the [[sheet]]"
                + " in bench.toml, line 28; it has exact. The header is \"exact\". It holds no"
                + " rows."),
        bench.aside().stream().map(Object::toString).toList());
  }

  @Test
  void theReasonOfARowNamesTheSignBetweenFields() {
    sheet(described("")).put("readings/own.txt", "taken_at;Vial;R1\n1;2;3;4\ntaken_at;vial;r1\n");
    assertEquals(
        List.of(
            "The row has 4 fields where the header has 3 (the sign between fields inside a"
                + " remark?); put such a field in quotes. The row was set aside.",
            "This is the header once more (two files joined?); take the line out. The row was set"
                + " aside."),
        bench.aside().stream().map(a -> a.reason()).toList());
  }

  @Test
  void aFileThatNoSheetMatchesIsReadAsThePlainSheet() {
    sheet(EXAMPLE).rows("2026-10-14T09:12,total-glycerin,PM-1,product,B-1,0.180,,,,,,,");
    assertEquals(1, results().size());
    assertTrue(bench.settingsAside().isEmpty());
  }
}
