package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.quietline.bench.Accounting;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;

/** Sheets in which one row is one reading. */
class LongFormTest {
  private static final String FILE = "readings/long.csv";
  private static final String SHEET =
      """

      [[sheet]]
      match = "readings/long*.csv"
      delimiter = ";"
      decimal = ","
      layout = "row-per-reading"
      columns = { result = "No", readings = "Value", taken_at = "When", sample = "Vial" }
      values = { readings = { "over" = ">2,5" } }
      defaults = { method = "total-glycerin", instrument = "PM-1", role = "product" }
      """;
  private static final String NUMBERED =
      SHEET.replace("result = ", "reading_number = \"n\", result = ");

  @TempDir private Path folder;
  private TempBench bench;

  @BeforeEach
  void makeBench() {
    bench = new TempBench(folder);
    bench.put("bench.toml", TempBench.SETTINGS + SHEET);
  }

  private TempBench numbered() {
    return bench.put("bench.toml", TempBench.SETTINGS + NUMBERED);
  }

  private List<List<String>> readings() {
    return bench.read().bench().results().stream().map(LongFormTest::readings).toList();
  }

  private static List<String> readings(Result result) {
    return result.readings().stream().map(Reading::toString).toList();
  }

  private List<String> said() {
    return bench.read().accounting().aside().stream().map(Object::toString).toList();
  }

  private void assertCounts(long takenIn, long metBefore, long aside, long inConflict) {
    Accounting accounting = bench.read().accounting();
    assertEquals(
        List.of(takenIn, metBefore, aside, inConflict),
        List.of(
            accounting.takenIn(),
            accounting.metBefore(),
            accounting.rowsAside(),
            accounting.rowsInConflict()));
  }

  @Test
  void rowsOfOneResultArePutTogetherWhereverTheyStand() {
    bench.put(
        FILE,
        """
        No;When;Vial;Value
        7;2026-10-14T09:12;B-1;0,180
        8;2026-10-14T09:20;B-2;over
        7;2026-10-14T09:12;B-1;0,181
        """);
    assertEquals(List.of(List.of("0.180", "0.181"), List.of(">2.5")), readings());
    assertEquals(2, bench.read().bench().results().get(0).origin().line());
    assertCounts(3, 0, 0, 0);
  }

  @Test
  void theNumberOfAReadingOrdersThemAndAGapIsAMissingReading() {
    numbered()
        .put(
            FILE,
            """
            No;n;When;Vial;Value
            7;3;2026-10-14T09:12;B-1;0,183
            7;1;2026-10-14T09:12;B-1;0,181
            7;4;2026-10-14T09:12;B-1;
            """);
    assertEquals(List.of(List.of("0.181", "", "0.183")), readings());
    assertCounts(3, 0, 0, 0);
  }

  @Test
  void theOddRowOfAResultIsSetAside() {
    bench.put(
        FILE,
        """
        No;When;Vial;Value;operator
        7;2026-10-14T09:12;B-1;0,180;RO
        7;2026-10-14T09:12;B-1;0,181;AB
        7;2026-10-14T09:13;B-1;0,182;RO
        7;2026-10-14T09:12;B-1;0,183;
        """);
    assertEquals(
        List.of(
            FILE
                + ", line 3, operator: operator is \"AB\" here and \"RO\" in line 2, which is of the"
                + " same result 7; the rows of one result agree in everything but the reading. The"
                + " row was set aside.",
            FILE
                + ", line 4, taken_at: taken_at is \"2026-10-14T09:13\" here and"
                + " \"2026-10-14T09:12\" in line 2, which is of the same result 7; the rows of one"
                + " result agree in everything but the reading. The row was set aside.",
            FILE
                + ", line 5, operator: operator is empty here and \"RO\" in line 2, which is of the"
                + " same result 7; the rows of one result agree in everything but the reading. The"
                + " row was set aside."),
        said());
    assertEquals("7;2026-10-14T09:12;B-1;0,181;AB", bench.read().accounting().aside().get(0).raw());
    assertEquals(List.of(List.of("0.180")), readings());
    assertCounts(1, 0, 3, 0);
  }

  @Test
  void aReadingThatIsNoneSetsItsResultAside() {
    numbered()
        .put(
            FILE,
            """
            No;n;When;Vial;Value
            7;1;2026-10-14T09:12;B-1;0,180
            7;2;2026-10-14T09:12;B-1;O,18
            8;x;2026-10-14T09:12;B-2;0,180
            ;1;2026-10-14T09:12;B-3;0,180
            9;1;2026-10-14T09:12;B-4;
            10;100;2026-10-14T09:12;B-5;0,1
            """);
    assertEquals(
        List.of(
            FILE
                + ", line 5, result: result is empty; every row needs it, write it. The row was set"
                + " aside.",
            FILE
                + ", line 3, reading: \"O,18\" is not a number (a letter O where a zero belongs?)."
                + " These 2 rows were set aside.",
            FILE
                + ", line 4, reading_number: \"x\" is not a number from 1 to 99. The row was set"
                + " aside.",
            FILE
                + ", line 6, reading: The row has no reading at all; write at least one. The row"
                + " was set aside.",
            FILE
                + ", line 7, reading_number: \"100\" is not a number from 1 to 99. The row was set"
                + " aside."),
        said());
    assertEquals(
        """
        7;1;2026-10-14T09:12;B-1;0,180
        7;2;2026-10-14T09:12;B-1;O,18""",
        bench.read().accounting().aside().get(1).raw());
    assertCounts(0, 0, 6, 0);
  }

  @Test
  void aReadingThatIsThereTwiceIsMetBeforeOrSetAside() {
    numbered()
        .put(
            FILE,
            """
            No;n;When;Vial;Value
            7;1;2026-10-14T09:12;B-1;0,180
            7;1;2026-10-14T09:12;B-1;0,180
            7;1;2026-10-14T09:12;B-1;0,190
            """);
    assertEquals(
        List.of(
            FILE
                + ", line 4, reading: Reading 1 of the result 7 is \"0,190\" here and \"0,180\" in"
                + " line 2; correct the wrong one. The row was set aside."),
        said());
    assertCounts(1, 1, 1, 0);
  }

  @Test
  void aResultMetInAnotherFileCountsWithAllItsRows() {
    String rows =
        """
        No;When;Vial;Value
        7;2026-10-14T09:12;B-1;0,180
        7;2026-10-14T09:12;B-1;0,181
        """;
    bench
        .put(FILE, rows)
        .put("readings/long-2.csv", rows)
        .put("readings/long-3.csv", rows.replace("181", "182"));
    assertCounts(2, 2, 0, 2);
    Accounting accounting = bench.read().accounting();
    assertEquals(2, accounting.copies().get(0).rows());
    assertEquals(
        "readings/long-3.csv, line 2, readings: the same row stands in readings/long-2.csv, line 2"
            + " with other content: readings is \"0.180 0.181\" there and \"0.180 0.182\" here. The"
            + " first one stays until actions.csv names the row that holds.",
        accounting.conflicts().get(0).toString());
  }

  @Test
  void aResultOfVeryManyRowsIsNone() {
    StringBuilder sheet = new StringBuilder("No;When;Vial;Value\n");
    IntStream.range(0, 100).forEach(i -> sheet.append("7;2026-10-14T09:12;B-1;0,18\n"));
    bench.put(FILE, sheet.toString());
    assertEquals(
        List.of(
            FILE
                + ", line 2, result: The result 7 has 100 rows, more than 99; is another column the"
                + " one that tells the results apart? These 100 rows were set aside."),
        said());
  }

  @Test
  void withoutAColumnForTheResultNothingIsReadTogether() {
    bench.put("bench.toml", TempBench.SETTINGS + SHEET.replace("result = \"No\", ", ""));
    bench.put(FILE, "No;When;Vial;Value\n7;2026-10-14T09:12;B-1;0,18\n");
    assertEquals(
        List.of(
            FILE
                + ", line 1, header: The sheet says nothing of result; name a column for it, or a"
                + " default, in the [[sheet]] in bench.toml, line 28. The header is"
                + " \"no,when,vial,value\". Its one row was set aside."),
        said());
  }
}
