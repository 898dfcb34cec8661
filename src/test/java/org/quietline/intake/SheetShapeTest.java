package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.bench.Result;

/** Headers, ragged rows, quotes, encodings, and the line each of them is told at. */
class SheetShapeTest {
  private static final String FILE = "readings/a.csv";
  private static final String HEAD = "taken_at,method,instrument,role,sample,reading_1,remark\n";

  @TempDir private Path folder;
  private TempBench bench;

  @BeforeEach
  void makeBench() {
    bench = new TempBench(folder);
  }

  private static String row(int n) {
    return "2026-10-14T09:12,total-glycerin,PM-1,product,B-" + n + ",0.180,";
  }

  private Accounting read(String content) {
    return bench.put(FILE, content).read().accounting();
  }

  private static SetAside aside(long line, String field, String text, String reason, long rows) {
    return new SetAside(FILE, line, field, text, reason, rows);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "taken_at,method,sample,reading_1|The header lacks instrument, role; name the columns as the"
            + " plain sheet does, or describe the file in a [[sheet]] (peek proposes one). The header is \"taken_at,method,sample,reading_1\".",
        "taken_at;method;sample|The header lacks taken_at, method, instrument, role, sample,"
            + " reading_1 (this sheet is cut at commas); name the columns as the plain sheet does, or describe"
            + " the file in a [[sheet]] (peek proposes one)."
            + " The header is \"taken_at;method;sample\".",
        "taken_at,method,instrument,role,sample,reading_1,Role|The column role is there twice; keep"
            + " one of the two. The header is"
            + " \"taken_at,method,instrument,role,sample,reading_1,role\".",
        "taken_at,method,instrument,role,sample,reading_1,reading_3|The header has reading_3 but"
            + " lacks reading_2; number them from 1. The header is"
            + " \"taken_at,method,instrument,role,sample,reading_1,reading_3\".",
        "taken_at,method,instrument,role,sample,reading_1,units|The column \"units\" is not known"
            + " (did you mean unit?); rename it. The header is"
            + " \"taken_at,method,instrument,role,sample,reading_1,units\".",
        "taken_at,method,instrument,role,sample,reading_1,reading2|The column \"reading2\" is not"
            + " known (did you mean reading_2?); rename it. The header is"
            + " \"taken_at,method,instrument,role,sample,reading_1,reading2\".",
      })
  void aHeaderThatCannotBeUsedSetsTheFileAside(String header, String reason) {
    String text = reason.substring(reason.indexOf(" is \"") + 5, reason.length() - 2);
    assertEquals(
        List.of(aside(2, "header", text, reason + " All 3 rows were set aside.", 3)),
        read("\n" + header + "\n" + row(1) + "\n\n" + row(2) + "\nx").aside());
  }

  @Test
  void aSheetOfOneRowWithAWrongHeaderSaysOneRow() {
    assertTrue(read("x\ny\n").aside().get(0).reason().endsWith(" Its one row was set aside."));
    assertTrue(read("x\n").aside().get(0).reason().endsWith(" It holds no rows."));
  }

  @Test
  void columnsThatAreNotReadAreNamed() {
    Accounting accounting =
        read(HEAD.replace("remark\n", "remark,average,,opertor\n") + row(1) + ",0.18,,RO\n");
    assertEquals(1, accounting.takenIn());
    assertEquals(
        List.of(
            aside(
                1,
                "average",
                "average",
                "The column \"average\" is not one of this sheet, and nothing in it was read.",
                0),
            aside(
                1,
                "opertor",
                "opertor",
                "The column \"opertor\" is not one of this sheet (did you mean operator?), and"
                    + " nothing in it was read.",
                0),
            aside(
                1,
                "header",
                "",
                "A column without a name is not read; name it or take it out.",
                0)),
        TempBench.withoutRaw(accounting));
  }

  @Test
  void raggedRowsAndARepeatedHeader() {
    Accounting accounting =
        read(
            HEAD
                + row(1)
                + "\n2026-10-14T09:12,total-glycerin,PM-1,product,B-2,0,18,\n"
                + HEAD
                + ",,,,,,\n\n   \n2026-10-14T09:12,total-glycerin\n"
                + row(3)
                + "\n2026-10-14T09:12,total-gly");
    assertEquals(2, accounting.takenIn());
    assertEquals(6, accounting.rows());
    assertEquals(
        List.of(
            aside(
                3,
                "row",
                "2026-10-14T09:12,total-glycerin,PM-1,product,B-2,0,18,",
                "The row has 8 fields where the header has 7 (a decimal comma, or a comma in a"
                    + " remark?); put such a field in quotes. The row was set aside.",
                1),
            aside(
                4,
                "row",
                HEAD.strip(),
                "This is the header once more (two files joined?); take the line out. The row was"
                    + " set aside.",
                1),
            aside(
                8,
                "row",
                "2026-10-14T09:12,total-glycerin",
                "The row has 2 fields where the header has 7; write every field, empty ones too. The"
                    + " row was set aside.",
                1),
            aside(
                10,
                "row",
                "2026-10-14T09:12,total-gly",
                "The row has 2 fields where the header has 7 (the file stops in this row; was the"
                    + " drive pulled out early?); write every field, empty ones too. The row was set"
                    + " aside.",
                1)),
        TempBench.withoutRaw(accounting));
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r"})
  void aRemarkMayRunOverLinesAndLaterLinesAreStillCountedRight(String end) {
    String content =
        HEAD + row(1) + "\"one\ntwo \"\"three\"\"\n\"\n\n" + row(2) + "\n" + row(3) + "x,\n";
    bench.put(FILE, content.replace("\n", end));
    Intake intake = bench.read();
    List<Result> results = intake.bench().results();
    assertEquals(2, results.size());
    assertEquals("one\ntwo \"three\"", results.get(0).remark().orElseThrow().replace(end, "\n"));
    assertEquals(2, results.get(0).origin().line());
    assertEquals(6, results.get(1).origin().line());
    assertEquals(7, intake.accounting().aside().get(0).line());
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r"})
  void aQuoteThatIsNeverClosedCostsItsOwnLineOnly(String end) {
    String content = HEAD + row(1) + "\n" + row(2) + "\"open\n\n" + row(3) + "\n" + row(4);
    Accounting accounting = read(content.replace("\n", end));
    assertEquals(3, accounting.takenIn());
    assertEquals(row(2) + "\"open", accounting.aside().get(0).raw());
    assertEquals(
        List.of(
            aside(
                3,
                "row",
                row(2) + "\"open",
                "A quote is opened here and never closed; close it or take it out. The row was set"
                    + " aside.",
                1)),
        TempBench.withoutRaw(accounting));
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r"})
  void aQuoteThatEndsInMidFieldCostsItsOwnLineOnly(String end) {
    String content =
        HEAD
            + row(1)
            + "\n"
            + row(2)
            + "\"a\"b\"c\n"
            + row(3)
            + "\n"
            + row(4)
            + "\"open\n"
            + row(5)
            + "\n"
            + row(6)
            + "\"fine\"\n"
            + row(7)
            + "\n";
    Accounting accounting = read(content.replace("\n", end));
    assertEquals(5, accounting.takenIn());
    assertEquals(
        List.of(
            aside(
                3,
                "row",
                row(2) + "\"a\"b\"c",
                "A quote ends in the middle of a field; write a quote inside a field twice, and"
                    + " close every quote at the end of its field. The row was set aside.",
                1),
            aside(
                5,
                "row",
                row(4) + "\"open",
                "A quote that is opened here ends in line 7 in the middle of a field; write a quote"
                    + " inside a field twice, and close every quote at the end of its field. The row"
                    + " was set aside.",
                1)),
        TempBench.withoutRaw(accounting));
    assertEquals(List.of(2L, 4L, 6L, 7L, 8L), lines());
  }

  private List<Long> lines() {
    return bench.read().bench().results().stream().map(r -> r.origin().line()).toList();
  }

  @Test
  void aQuoteThatSwallowsRowsIsFoundOut() {
    Accounting accounting =
        read(
            HEAD
                + row(1)
                + "\"open\n"
                + row(2)
                + "closed\"\n"
                + row(3).replace("B-3", "\"B-3\nx\"")
                + "\n"
                + row(4)
                + "\n");
    assertEquals(2, accounting.takenIn());
    assertEquals(List.of(3L, 6L), lines());
    assertEquals(
        List.of(
            aside(
                2,
                "remark",
                "open " + row(2) + "closed",
                "A quoted field runs on over a line that looks like a row of its own; close the"
                    + " quote in the row it was opened in. The row was set aside.",
                1),
            aside(
                4,
                "sample",
                "B-3 x",
                "\"B-3 x\" runs over a line break, which only a remark may; close the quote in its"
                    + " line. The row was set aside.",
                1),
            aside(
                5,
                "row",
                "x\",0.180,",
                "The row has 3 fields where the header has 7; write every field, empty ones too."
                    + " The row was set aside.",
                1)),
        TempBench.withoutRaw(accounting));
  }

  @Test
  void aHeaderWithAnOpenQuoteSetsTheFileAside() {
    assertEquals(
        List.of(
            aside(
                1,
                "header",
                "\"taken_at",
                "A quote is opened here and never closed; close it or take it out. All 2 rows were"
                    + " set aside.",
                2)),
        read("\"taken_at\n" + row(1) + "\n" + row(2) + "\n").aside());
  }

  @Test
  void damagedRowsUnderAWrongHeaderAreCounted() {
    Accounting accounting = read("x\n" + row(1) + "\n" + row(2) + "\"a\"b\n\"c\nd\n");
    assertEquals(4, accounting.rows());
    assertEquals(4, accounting.aside().get(0).rows());
  }

  @Test
  void aRowThatIsNotUtf8IsSetAsideAndTheOthersStay() {
    String content = HEAD + row(1) + "5 µl\n" + row(2) + "\n";
    Accounting accounting =
        bench.put(FILE, content.getBytes(StandardCharsets.ISO_8859_1)).read().accounting();
    assertEquals(1, accounting.takenIn());
    assertEquals(
        List.of(
            aside(
                2,
                "remark",
                "5 \uFFFDl",
                "\"5 \uFFFDl\" is not UTF-8; save the file as UTF-8. The row was set aside.",
                1)),
        TempBench.withoutRaw(accounting));
  }

  @Test
  void aHeaderThatIsNotUtf8SetsTheFileAside() {
    String content = HEAD.replace("remark", "größe") + row(1) + "\n";
    Accounting accounting =
        bench.put(FILE, content.getBytes(StandardCharsets.ISO_8859_1)).read().accounting();
    assertEquals(
        "The header is not UTF-8; save the file as UTF-8. Its one row was set aside.",
        accounting.aside().get(0).reason());
  }

  @Test
  void aFileCutInTheMiddleOfACharacterIsNotUtf8() {
    byte[] whole = (HEAD + row(1) + "5 µ").getBytes(StandardCharsets.UTF_8);
    byte[] cut = Arrays.copyOf(whole, whole.length - 1);
    assertEquals(
        "\"5 \uFFFD\" is not UTF-8; save the file as UTF-8. The row was set aside.",
        bench.put(FILE, cut).aside().get(0).reason());
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-16LE", "UTF-16BE"})
  void aSheetInUtf16WithAMarkIsRead(String charset) {
    String content = "\uFEFF" + HEAD + row(1) + "5 µl €\n" + row(2) + "\n" + row(3) + "\uD800\n";
    byte[] bytes = content.getBytes(Charset.forName(charset));
    int lonely = content.indexOf('\uD800') * 2 + (charset.endsWith("LE") ? 1 : 0);
    bytes[lonely] = (byte) 0xD8;
    bytes[lonely ^ 1] = 0;
    Intake intake = bench.put(FILE, bytes).read();
    assertEquals("5 µl €", intake.bench().results().get(0).remark().orElseThrow());
    assertEquals(List.of(2L, 3L), lines());
    assertEquals(
        List.of(
            aside(
                4,
                "remark",
                "\uFFFD",
                "\"\uFFFD\" is not UTF-16; save the file as UTF-8. The row was set aside.",
                1)),
        TempBench.withoutRaw(intake.accounting()));
  }

  @Test
  void aSheetInUtf16WithoutAMarkIsFoundOut() {
    byte[] bytes = (HEAD + row(1)).getBytes(StandardCharsets.UTF_16LE);
    String reason = bench.put(FILE, bytes).aside().get(0).reason();
    assertTrue(
        reason.startsWith(
            "The header holds NUL signs, as UTF-16 without a byte-order mark does; save the file"
                + " as UTF-8, or name its encoding in a [[sheet]]. The header is"),
        reason);
  }

  @Test
  void aByteOrderMarkIsSteppedOver() {
    assertEquals(1, read("\uFEFF" + HEAD + row(1) + "5 µl").takenIn());
  }

  @Test
  void signsThatNoTextHoldsAreFoundOut() {
    Accounting accounting =
        read(
            HEAD
                + row(1)
                + "a\0b\n"
                + row(2)
                + "a\uFFFEb\n"
                + row(3)
                + "a\uFFFFb\n"
                + row(4)
                + "x".repeat(4001)
                + "\n");
    assertEquals(
        List.of(
            aside(
                2,
                "remark",
                "a\uFFFDb",
                "\"a\uFFFDb\" holds a NUL sign, as a damaged file does; write the field anew. The"
                    + " row was set aside.",
                1),
            aside(
                3,
                "remark",
                "a\uFFFDb",
                "\"a\uFFFDb\" is not UTF-8; save the file as UTF-8. The row was set aside.",
                1),
            aside(
                4,
                "remark",
                "a\uFFFDb",
                "\"a\uFFFDb\" is not UTF-8; save the file as UTF-8. The row was set aside.",
                1),
            aside(
                5,
                "remark",
                "x".repeat(79) + "…",
                "The field has 4001 signs, more than 4000; is a quote missing? Shorten it. The row"
                    + " was set aside.",
                1)),
        TempBench.withoutRaw(accounting));
  }

  @Test
  void aFileWithNothingInItIsEmpty() {
    for (String content : List.of("", "\n", "\uFEFF", ",,,\n\n")) {
      assertEquals(
          List.of(aside(1, "file", "", "The file is empty; nothing was read.", 0)),
          read(content).aside());
    }
  }

  @Test
  void blanksAroundFieldsAndQuotesDoNotCount() {
    Accounting accounting =
        read(HEAD + row(1).replace(",", " , ").replace("B-1", "\" B-1 \"") + "\u00A0\n");
    assertEquals(1, accounting.takenIn());
    Result result = bench.read().bench().results().get(0);
    assertEquals("B-1", result.sample());
    assertTrue(result.remark().isEmpty());
  }

  @Test
  void aFileOfNothingButBadRowsNamesTenThousandAndCountsTheRest() {
    StringBuilder content = new StringBuilder(TempBench.HEADER + "\n");
    for (int i = 0; i < 10_005; i++) {
      content.append("x\n");
    }
    Accounting accounting = bench.put(FILE, content.toString()).read().accounting();
    assertEquals(10_005, accounting.rowsAside());
    assertEquals(10_001, accounting.aside().size());
    assertEquals(
        "readings/a.csv, line 10002, row: From this line on 5 more rows of the file cannot be used;"
            + " mend what is named before them and run again. These 5 rows were set aside.",
        accounting.aside().get(10_000).toString());
  }

  @Test
  void aSheetShorterThanWhatIsSteppedOverIsNotCalledEmpty() {
    bench.put(
        "bench.toml",
        TempBench.SETTINGS
            + """

            [[sheet]]
            match = "readings/a.csv"
            skip-lines = 9
            """);
    Accounting accounting = bench.put(FILE, TempBench.HEADER + "\nx\n").read().accounting();
    assertEquals(
        List.of(
            "No line is left behind those that skip-lines steps over in the [[sheet]] in bench.toml,"
                + " line 28; nothing was read."),
        accounting.aside().stream().map(SetAside::reason).toList());
    assertEquals(List.of(FILE), accounting.unreadFiles());
  }

  @Test
  void rowsInConflictCannotBeSwitchedOff() {
    bench.put(
        "bench.toml",
        TempBench.SETTINGS
            + """

            [[check-off]]
            check = "rows-in-conflict"
            reason = "too many"
            """);
    assertEquals(
        List.of(
            "rows-in-conflict cannot be switched off, because one of the rows would win without a"
                + " word; choose the row that holds in actions.csv (use_row). The check-off was set"
                + " aside."),
        bench.settingsAside().stream().map(SetAside::reason).toList());
  }
}
