package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Text that a spreadsheet program opens without running anything in it. */
class SafeCsvTest {
  private static String written(List<String> fields) throws IOException {
    StringBuilder text = new StringBuilder();
    new SafeCsv(text).line(fields);
    return text.toString();
  }

  @Test
  void fieldsThatNeedItAreQuotedAndLinesEndWithBothSigns() throws IOException {
    assertEquals(
        "plain,\"with, comma\",\"a \"\"quote\"\"\",\"two\nlines\",\" spaced \",,2026-10-14\r\n",
        written(
            List.of(
                "plain",
                "with, comma",
                "a \"quote\"",
                "two\nlines",
                " spaced ",
                "",
                "2026-10-14")));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "=1+1",
        "=HYPERLINK(\"x\")",
        "+cmd|' /C calc'!A0",
        "-2+3",
        "@SUM(A1)",
        "\t=1",
        "\r=1",
        "\n=1",
        "-",
        "+",
        "-1e5",
        "--1",
        "-1.",
        "-.5",
        "+1 2"
      })
  void whatAProgramWouldTakeForAFormulaGetsAnApostrophe(String field) {
    assertEquals("'" + field, SafeCsv.harmless(field));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"-0.5", "+3", "0.180", "-12", "", "a=b", "<0.010", ">2.5", "B-1041", "'=1", "1-2"})
  void plainNumbersAndOtherTextStayAsTheyAre(String field) {
    assertEquals(field, SafeCsv.harmless(field));
  }

  @Test
  void anotherReaderFindsTheSameFields() throws IOException {
    List<String> fields =
        List.of(
            "=A1", "-0.5", "a,b", "\"", "\"\"", "line\r\nline", "", "é·−", " x", "\tx", "#", "'");
    String text = written(fields) + written(List.of("next"));
    try (CSVParser parser =
        CSVParser.builder()
            .setReader(new java.io.StringReader(text))
            .setFormat(CSVFormat.RFC4180)
            .get()) {
      List<CSVRecord> lines = parser.getRecords();
      assertEquals(2, lines.size());
      assertEquals(fields.stream().map(SafeCsv::harmless).toList(), lines.get(0).toList());
      assertEquals(List.of("next"), lines.get(1).toList());
    }
  }
}
