package org.quietline.intake.peek;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files of many kinds: what is seen in them, what is proposed, what is asked, how rows are read.
 */
class PeekTest {
  private static final String BENCH =
      """
      name = "b"
      timezone = "UTC"

      [[method]]
      key = "acid-number"
      title = "Acid number"
      unit = "mg KOH/g"
      decimals = 3
      replicates = 2
      replicate-kind = "re-read"

      [[instrument]]
      key = "TI-1"
      title = "Titrator 1"

      [[material]]
      key = "QC-AN"
      method = "acid-number"
      """;

  @TempDir private Path folder;

  private Path file(String name, String text, Charset charset) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.toAbsolutePath().getParent());
    Files.write(file, text.getBytes(charset));
    return file;
  }

  private Path file(String text) throws IOException {
    return file("lone/x.csv", text, StandardCharsets.UTF_8);
  }

  private Path onBench(String text) throws IOException {
    file("bench.toml", BENCH, StandardCharsets.UTF_8);
    return file("readings/x.csv", text, StandardCharsets.UTF_8);
  }

  private static Peek look(Path file) {
    return Peek.at(file, Optional.empty(), Answers.NONE, 5);
  }

  private static Peek look(Path file, String... chosen) {
    return Peek.at(
        file,
        Optional.empty(),
        new Answers(
            List.of(), Optional.empty(), Optional.empty(), Optional.empty(), List.of(chosen)),
        5);
  }

  private static List<String> lines(Peek peek) {
    return peek.proposal().lines().toList();
  }

  private static List<String> asked(Peek peek) {
    return peek.questions().stream().map(Question::text).toList();
  }

  private static String found(Peek peek, String about) {
    return peek.evidence().stream()
        .filter(e -> e.about().equals(about))
        .map(e -> e.found() + " (" + e.why() + ")")
        .findFirst()
        .orElse("");
  }

  private static List<String> shown(Peek peek, int row) {
    return peek.rows().get(row).fields().stream()
        .map(p -> p.field() + " " + p.value() + " " + p.from())
        .toList();
  }

  private static String refusal(Path file) {
    PeekException e = assertThrows(PeekException.class, () -> look(file));
    return String.valueOf(e.getMessage()).replace(file.toString(), "FILE");
  }

  @Test
  void aPlainSheetNeedsNoSheet() throws IOException {
    Peek peek =
        look(
            onBench(
                """
                taken_at,method,instrument,role,sample,reading_1,reading_2
                2026-10-14T09:12,acid-number,TI-1,control,QC-AN,0.351,0.349
                2026-10-15T09:12,acid-number,TI-1,product,B-1,0.301,
                """));
    assertTrue(peek.plain());
    assertEquals(List.of(), peek.questions());
    assertEquals(2, peek.trial().accounting().takenIn());
    assertEquals(
        List.of(
            "taken_at 2026-10-14T09:12 [2026-10-14T09:12]",
            "method acid-number [acid-number]",
            "instrument TI-1 [TI-1]",
            "role control [control]",
            "sample QC-AN [QC-AN]",
            "reading_1 0.351 [0.351]",
            "reading_2 0.349 [0.349]",
            "unit mg KOH/g []"),
        shown(peek, 0));
  }

  @Test
  void aPlainSheetWithOtherDaysNeedsOne() throws IOException {
    Peek peek =
        look(
            onBench(
                """
                taken_at,method,instrument,role,sample,reading_1
                14.10.2026 09:12,acid-number,TI-1,control,QC-AN,0.351
                """));
    assertEquals(
        List.of("[[sheet]]", "match = \"readings/x.csv\"", "time-format = \"dd.MM.yyyy HH:mm\""),
        lines(peek));
    assertEquals(1, peek.trial().accounting().takenIn());
  }

  @Test
  void openOrderAndOpenDecimalMarkAreAskedAndNothingIsReadMeanwhile() throws IOException {
    Path file =
        onBench(
            """
            Date;Test;Sample;Type;R1
            03/04/2026 09:10;acid-number;B-1;product;1,231
            05/04/2026 09:10;acid-number;B-2;product;1,233
            """);
    Peek peek = look(file);
    assertEquals(
        List.of(
            "What is the decimal mark? 2 numbers like 1,231 may hold a decimal mark or a thousands"
                + " mark.",
            "In what order do day and month stand? No day above 12 tells."),
        asked(peek));
    assertTrue(lines(peek).contains("decimal = \"\""));
    assertEquals(
        "decimal is empty; write it or take the line out. The sheet was set aside.",
        peek.trial().sheetAside().get(0).reason());
    assertEquals(0, peek.trial().accounting().takenIn());
    assertEquals("reading_1 1.231 [1,231]", shown(look(file, "1a", "2a"), 0).get(5));
    assertEquals(
        "2026-04-03T09:10", look(file, "1a", "2a").trial().results().get(0).takenAt().toString());
    assertEquals(
        "2026-03-04T09:10", look(file, "1a", "2b").trial().results().get(0).takenAt().toString());
  }

  @Test
  void rowsThatJumpBackInTimeAreEvidenceForTheQuestion() throws IOException {
    Peek peek =
        look(
            onBench(
                """
                Date;Test;Sample;Type;R1
                11/03/2026 09:10;acid-number;B-1;product;0,31
                12/03/2026 09:10;acid-number;B-2;product;0,32
                01/04/2026 09:10;acid-number;B-3;product;0,33
                """));
    assertEquals(
        List.of(
            "In what order do day and month stand? No day above 12 tells. With \"dd/MM/yyyy HH:mm\""
                + " the days run forward, with \"MM/dd/yyyy HH:mm\" they step back 1 time."),
        asked(peek));
  }

  @Test
  void aSheetWithoutHeaderIsReadByNumbers() throws IOException {
    StringBuilder text = new StringBuilder();
    for (int i = 10; i < 22; i++) {
      text.append(
          "2026-04-"
              + i
              + " 09:10,acid-number,TI-1,product,B-"
              + i
              + ",0.3"
              + i
              + "1,0.3"
              + i
              + "5,0.3"
              + i
              + "3\n");
    }
    Peek peek = look(onBench(text.toString()), "1a");
    assertEquals(
        List.of(
            "[[sheet]]",
            "match = \"readings/x.csv\"",
            "header = false",
            "columns.taken_at = 1",
            "columns.method = 2",
            "columns.instrument = 3",
            "columns.role = 4",
            "columns.readings = [6, 7]",
            "ignore = [8]",
            "columns.sample = 5"),
        lines(peek));
    assertEquals(12, peek.trial().accounting().takenIn());
    assertEquals(
        "column 8 (it is the mean of column 6 and column 7 in every row)", found(peek, "not read"));
  }

  @Test
  void sixteenBitTextWithoutAMarkIsFoundByItsZeros() throws IOException {
    file("bench.toml", BENCH, StandardCharsets.UTF_8);
    Path file =
        file(
            "readings/x.csv",
            """
            Date\tTest\tVial\tType\tR1
            14.10.26 09:10\tacid number\tB-1\tproduct\t0,31
            15.10.26 09:10\tacid number\tB-2\tproduct\t0,32
            16.10.26 09:10\tacid number\tB-3\tproduct\t0,33
            17.10.26 09:10\tacid number\tB-4\tproduct\t0,33
            """,
            StandardCharsets.UTF_16LE);
    Peek peek = look(file);
    assertEquals(
        "UTF-16LE without a byte-order mark (every second byte is zero)", found(peek, "encoding"));
    assertEquals("two digits (26 is read as 2026)", found(peek, "years"));
    assertEquals(
        List.of(
            new Question(
                1,
                "In what order do day and month stand? The year has two digits, and no number tells"
                    + " it from the day.",
                List.of("time-format = \"dd.MM.yy HH:mm\"", "time-format = \"yy.MM.dd HH:mm\""))),
        peek.questions());
    assertEquals(0, peek.trial().accounting().takenIn());
  }

  @Test
  void readingsInTwoUnitsAndMeansThatMayBeReadingsAreAsked() throws IOException {
    assertEquals(
        List.of(
            "columns.readings = \"Result 1 (mg/kg)\"", "columns.readings = \"Result 2 % mass\""),
        readingsAsked("Result 1 (mg/kg);Result 2 % mass", "2500;0.25", "2400;0.24"));
    assertEquals(
        List.of(
            "columns.readings = [\"Reading A\", \"Reading B\", \"Reading C\"]",
            "columns.readings = [\"Reading A\", \"Reading C\"]",
            "columns.readings = [\"Reading A\", \"Reading B\"]",
            "columns.readings = \"Reading A\"",
            "columns.readings = \"Reading B\"",
            "columns.readings = \"Reading C\""),
        readingsAsked(
            "Reading A;Reading B;Reading C", "0.18;0.19;0.19", "0.20;0.20;0.20", "0.22;0.21;0.21"));
    assertEquals(
        List.of(), readingsAsked("Result;Result 2;Result 3", "0.25;0.30;0.40", "0.25;0.31;0.42"));
  }

  private List<String> readingsAsked(String columns, String... values) throws IOException {
    StringBuilder text = new StringBuilder("Date;Method;Instrument;Role;Sample;" + columns + "\n");
    for (int i = 0; i < values.length; i++) {
      text.append("2026-10-1" + i + " 09:12;tg;PM-1;product;B-" + i + ";" + values[i] + "\n");
    }
    Path file = file("asked.csv", text.toString(), StandardCharsets.UTF_8);
    return look(file).questions().stream()
        .flatMap(q -> q.lines().stream())
        .filter(line -> line.startsWith("columns.readings"))
        .toList();
  }

  @Test
  void bytesOfAnOldEncodingAreFoundAndSaidToBeAlikeWhereTheyAre() throws IOException {
    String text =
        """
        Date;Test;Sample;R1;Note
        2026-10-14 09:10;acid-number;B-1;0,31;Küvette
        2026-10-15 09:10;acid-number;B-2;0,31;
        """;
    Path alike = file("lone/a.csv", text, StandardCharsets.ISO_8859_1);
    Path euro = file("lone/b.csv", text.replace("ü", "€"), Charset.forName("windows-1252"));
    assertEquals(
        "windows-1252 (it is not UTF-8; windows-1252 and ISO-8859-1 read it alike)",
        found(look(alike), "encoding"));
    assertEquals(
        "windows-1252 (it is not UTF-8, and 1 byte from 80 to 9F are signs in this encoding only)",
        found(look(euro), "encoding"));
  }

  @Test
  void aNameThatMayMeanTwoThingsIsAsked() throws IOException {
    Peek peek =
        look(
            onBench(
                """
                Date,Lot,Value
                2026-10-14 09:10,L1,0.311
                2026-10-15 09:10,L2,0.312
                """));
    assertEquals("Is \"Lot\" the sample or the reagent lot?", asked(peek).get(0));
    assertEquals(
        List.of("columns.sample = \"Lot\"", "columns.reagent_lot = \"Lot\""),
        peek.questions().get(0).lines());
  }

  @Test
  void theOnlyMethodAndInstrumentOfABenchHoldForAllRows() throws IOException {
    Peek peek =
        look(
            onBench(
                """
                Date,Vial,R1 (mg KOH/g),R2 (mg KOH/g)
                2026-10-14 09:10,QC-AN,0.351,0.352
                2026-10-15 09:10,QC-AN,0.352,0.350
                """));
    assertEquals(List.of(), asked(peek));
    assertEquals("acid-number for all rows (the bench has no other)", found(peek, "method"));
    assertEquals("TI-1 for all rows (the bench has no other)", found(peek, "instrument"));
    assertEquals(
        "control for all rows (every sample is a control material of the bench)",
        found(peek, "role"));
    assertEquals(
        "mg KOH/g for all rows (it stands in brackets behind the readings)", found(peek, "unit"));
    assertEquals(2, peek.trial().accounting().takenIn());
  }

  @Test
  void materialsAmongOtherSamplesCannotShareOneRole() throws IOException {
    Peek peek =
        look(
            onBench(
                """
                Date,Vial,R1
                2026-10-14 09:10,QC-AN,0.351
                2026-10-15 09:10,B-1,0.352
                """));
    assertEquals(
        List.of(
            "No column says what the samples were. What were they all? 1 row of 2 name a control"
                + " material, so no answer fits all rows: export them apart."),
        asked(peek));
  }

  @Test
  void aUnitThatConvertsIsKnownAndOneThatDoesNotIsAsked() throws IOException {
    Peek peek =
        look(
            onBench(
                """
                Date,Vial,R1,Unit
                2026-10-14 09:10,QC-AN,0.351,mg KOH/g
                2026-10-15 09:10,QC-AN,0.352,mgKOH
                """));
    assertEquals(List.of("What does the unit \"mgKOH\" (1 row) mean?"), asked(peek));
    assertEquals("values.unit.\"mgKOH\" = \"mg KOH/g\"", peek.questions().get(0).lines().get(0));
    assertEquals(1, peek.trial().accounting().takenIn());
    assertEquals("unit", peek.trial().accounting().aside().get(0).field());
  }

  @Test
  void theSheetOfTheBenchIsUsedWhereItMatches() throws IOException {
    file(
        "bench.toml",
        BENCH
            + """

            [[sheet]]
            match = "readings/*.csv"
            delimiter = ";"
            columns = { taken_at = "When", sample = "Vial", readings = "Found" }
            defaults = { method = "acid-number", instrument = "TI-1", role = "product" }
            """,
        StandardCharsets.UTF_8);
    Path file =
        file(
            "readings/x.csv",
            """
            When;Vial;Found
            2026-10-14 09:10;B-1;0.351
            """,
            StandardCharsets.UTF_8);
    Peek peek = look(file);
    assertEquals(Optional.of("the [[sheet]] in bench.toml, line 20"), peek.sheet());
    assertEquals("sample B-1 [B-1]", shown(peek, 0).get(4));
    assertEquals("reading_1 0.351 [0.351]", shown(peek, 0).get(5));
  }

  @Test
  void withoutABenchEverythingNamedIsTakenAsKnown() throws IOException {
    Peek peek =
        look(
            file(
                """
                Date,Test,Device,Type,Sample,R1,Unit
                2026-10-14 09:10,sulfur,S-9,control,X-1,12.5,mg/kg
                2026-10-15 09:10,sulfur,S-9,product,X-2,12.9,mg/kg
                """));
    assertEquals(Optional.empty(), peek.bench());
    assertEquals("readings/x.csv", peek.name());
    assertEquals(2, peek.trial().accounting().takenIn());
  }

  @Test
  void aSheetBesideTheSettingsIsReadByItsOwnColumns() throws IOException {
    file("bench.toml", BENCH, StandardCharsets.UTF_8);
    Path file =
        file(
            "calibrations.csv",
            """
            calibration,method,instrument,calibrated_at
            C-1,acid-number,TI-1,2026-10-01T08:00
            C-2,acid-number,TI-7,2026-10-02T08:00
            """,
            StandardCharsets.UTF_8);
    Peek peek = look(file);
    assertTrue(peek.ofBench());
    assertEquals(1, peek.trial().accounting().takenIn());
    assertEquals(
        "calibrations.csv, line 3, instrument: \"TI-7\" is no instrument of this bench (did you"
            + " mean TI-1?). The row was set aside.",
        peek.trial().accounting().aside().get(0).toString());
  }

  @Test
  void signsThatMeanSomethingInAPatternAreTakenAsTheyAre() throws IOException {
    file("bench.toml", BENCH, StandardCharsets.UTF_8);
    Path file =
        file(
            "readings/a [1] {x}-2026.csv",
            """
            Date,Vial,R1
            2026-10-14 09:10,QC-AN,0.351
            """,
            StandardCharsets.UTF_8);
    Peek peek = look(file);
    assertEquals("match = \"readings/a \\\\[1\\\\] \\\\{x\\\\}-2026.csv\"", lines(peek).get(1));
    assertEquals(1, peek.trial().accounting().takenIn());
  }

  @Test
  void anAnswerNobodyAskedForIsRefused() throws IOException {
    Path file =
        onBench(
            """
            Date,Vial,R1
            2026-10-14 09:10,QC-AN,0.351
            """);
    PeekException e = assertThrows(PeekException.class, () -> look(file, "1a"));
    assertEquals(
        "There is no answer 1a here; an answer is a question's number and a line's letter, such as"
            + " 1a.",
        e.getMessage());
  }

  @Test
  void whatIsNoSheetEndsInASentence() throws IOException {
    assertEquals("FILE is a folder. Give one file in it.", refusal(folder));
    assertEquals(
        "FILE does not exist. Give the path of a file.", refusal(folder.resolve("none.csv")));
    assertEquals("FILE is empty: it holds no byte.", refusal(file("")));
    assertEquals("x.csv holds no row: every line is empty.", refusal(file("\n \n")));
    assertEquals(
        "FILE is a zip archive; a spreadsheet workbook is one too. Save the sheet as CSV and look"
            + " at that.",
        refusal(file("PK\3\4 and more")));
    assertEquals(
        "x.csv is no text: it holds NUL bytes or control signs, as a picture or a program does."
            + " Give a file of text.",
        refusal(file("a,b\n1,\0\n")));
    assertEquals(
        "x.csv cannot be cut into columns: its lines hold no comma, semicolon, tab or upright stroke"
            + " in common. Is it a list or a letter? If another sign stands between the columns, give"
            + " it with --delimiter.",
        refusal(file("one\ntwo\nthree\n")));
    assertEquals(
        "x.csv holds no line end in its first 4 MB, so it is no sheet of rows. Was it exported as a"
            + " table?",
        refusal(file("1,".repeat(2_100_000))));
  }

  @Test
  @Timeout(60)
  void aLongFileIsLookedAtInPartAndItsEndIsSeen() throws IOException {
    StringBuilder text = new StringBuilder("Date,Vial,R1\n");
    int rows = 0;
    while (text.length() <= FileHead.MOST) {
      text.append(13 + rows % 15)
          .append(".10.2026 ")
          .append(10 + rows % 14)
          .append(":10,QC-AN,0.3");
      text.append(rows++).append('\n');
    }
    text.append("13.10.2026");
    Peek peek = look(onBench(text.toString()));
    assertEquals("4000 kB (its start and its end)", found(peek, "size"));
    assertEquals(
        "without a line end (the file stops in its last line; is it whole?)", found(peek, "end"));
    assertEquals(rows + 1, peek.trial().accounting().rows());
    assertEquals(1, peek.trial().accounting().rowsAside());
  }
}
