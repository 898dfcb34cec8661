package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every wrong line of a {@code [[sheet]]} is told, and then the sheet and its files are set aside.
 */
class SheetEntryTest {
  @TempDir private Path folder;
  private TempBench bench;

  @BeforeEach
  void makeBench() {
    bench = new TempBench(folder);
  }

  private List<String> said(String lines) {
    bench.put(
        "bench.toml",
        TempBench.SETTINGS + "\n[[sheet]]\nmatch = \"readings/own*\"\n" + lines + "\n");
    return bench.settingsAside().stream().map(Object::toString).toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "delimiter = \";;\"|delimiter: delimiter is \";;\"; it must be one sign such as \";\" or"
            + " \"\\t\".",
        "delimiter = \"x\"|delimiter: delimiter is \"x\"; it must be one sign such as \";\" or"
            + " \"\\t\".",
        "delimiter = 5|delimiter: delimiter is 5; it must be one sign such as \";\" or \"\\t\".",
        "decimal = \"comma\"|decimal: decimal is \"comma\"; it must be \".\" or \",\" or \"either\".",
        "encoding = \"latin\"|encoding: encoding is \"latin\"; it must be one of UTF-8, UTF-16,"
            + " UTF-16LE, UTF-16BE, windows-1252, ISO-8859-1.",
        "header = \"no\"|header: header is \"no\"; it must be true or false, without quotes.",
        "skip-lines = -1|skip-lines: skip-lines is -1; it must be 0 or more.",
        "time-format = \"dd/MM/yyyy\"|time-format: time-format is \"dd/MM/yyyy\"; it lacks m.",
        "time-format = \"dd/MM/yyyy HH:mm X\"|time-format: time-format is \"dd/MM/yyyy HH:mm X\";"
            + " the letter X is none of y M d H h m s a.",
        "time-format = \"dd/MM/yyyy hh:mm\"|time-format: time-format is \"dd/MM/yyyy hh:mm\"; h"
            + " from 1 to 12 and a for AM or PM go together.",
        "time-format = \"dd/MM/yyyy mm\"|time-format: time-format is \"dd/MM/yyyy mm\"; write the"
            + " hour once, H from 0 to 23 or h from 1 to 12 with a.",
        "time-format = \"ddd/MM/yyyy HH:mm\"|time-format: time-format is \"ddd/MM/yyyy HH:mm\"; it"
            + " is none that can be read, such as dd/MM/yyyy HH:mm.",
        "time-format = []|time-format: time-format is []; it must name at least one format.",
        "time-format = 5|time-format: time-format is 5; it must be a list of texts, such as"
            + " [\"one\", \"two\"].",
        "date-format = \"dd/MM/yyyy HH\"|date-format: date-format is \"dd/MM/yyyy HH\"; a day has"
            + " no time of day, only y M d.",
        "layout = \"long\"|layout: layout is \"long\"; it must be row-per-result or"
            + " row-per-reading.",
        "columns = \"Vial\"|columns: columns is \"Vial\"; it must be a table such as { sample ="
            + " \"Vial\" }.",
        "columns = { smple = \"Vial\" }|columns.smple: \"smple\" is no field of this sheet (did you"
            + " mean sample?).",
        "columns = { sample = [\"A\", \"B\"] }|columns.sample: columns.sample is [\"A\",\"B\"]; it"
            + " takes one column.",
        "columns = { taken_at = [1, 2, 3] }|columns.taken_at: columns.taken_at is [1,2,3]; it takes"
            + " one column or two.",
        "columns = { sample = 0 }|columns.sample: columns.sample is 0; a column is named as in"
            + " \"Vial\", or by its number from 1.",
        "columns = { sample = \" \" }|columns.sample: columns.sample is \" \"; a column is named as"
            + " in \"Vial\", or by its number from 1.",
        "columns = { result = \"No\" }|columns.result: columns.result is \"No\"; it is read only"
            + " with layout = \"row-per-reading\".",
        "columns = { readings = [\"A\"], reading_2 = \"B\" }|columns.reading_2: columns.reading_2"
            + " is \"B\"; the readings stand in columns.readings.",
        "values = { role = \"K\" }|values.role: values.role is \"K\"; it must be a table such as {"
            + " \"TEXT IN FILE\" = \"text of the bench\" }.",
        "values = { role = { \"K\" = 1 } }|values.role.K: values.role.K is 1; it must be text in"
            + " quotes.",
        "values = { rolle = { \"K\" = \"control\" } }|values.rolle: \"rolle\" is no field of this"
            + " sheet (did you mean role?).",
        "defaults = { role = 1 }|defaults.role: defaults.role is 1; it must be text in quotes.",
        "defaults = { reading_1 = \"0\" }|defaults.reading_1: defaults.reading_1 is \"0\"; what is"
            + " measured has no default.",
        "ignore = \"Average\"|ignore: ignore is \"Average\"; it must be a list of columns, such as"
            + " [\"Average\", 7].",
        "ignore = [true]|ignore: ignore is [true]; a column is named as in \"Vial\", or by its"
            + " number from 1.",
      })
  void aLineThatCannotBeUsedSetsTheSheetAside(String line, String reason) {
    bench.put("readings/own.csv", "x\n1\n2\n");
    assertEquals(
        List.of("bench.toml, line 30, " + reason + " The sheet was set aside."), said(line));
    assertEquals(
        "readings/own.csv, line 1, sheet: The [[sheet]] in bench.toml, line 28, describes this file"
            + " and was itself set aside; mend it. All 2 rows were set aside.",
        bench.aside().get(0).toString());
  }

  @Test
  void allWrongLinesAreToldAtOnceEachWithItsPlace() {
    assertEquals(
        List.of(
            "bench.toml, line 30, decimal: decimal is 1; it must be text in quotes. The sheet was"
                + " set aside.",
            "bench.toml, line 34, columns.smple: \"smple\" is no field of this sheet (did you mean"
                + " sample?). The sheet was set aside.",
            "bench.toml, line 35, columns.unit: columns.unit is []; it takes one column. The sheet"
                + " was set aside.",
            "bench.toml, line 31, delimitter: \"delimitter\" is not a setting of a sheet (did you"
                + " mean delimiter?). It was not used; the rest of the sheet was."),
        said(
            """
            decimal = 1
            delimitter = ";"
            [sheet.columns]
            sample = "Vial"
            smple = "Vial"
            unit = []
            """));
  }

  @Test
  void aColumnCannotBeReadAndIgnored() {
    assertEquals(
        List.of(
            "bench.toml, line 31, ignore: ignore is [\"vial\"]; the column Vial is read as sample;"
                + " name it in one of the two only. The sheet was set aside."),
        said(
            """
            columns = { sample = "Vial" }
            ignore = ["vial"]
            """));
  }

  @Test
  void withoutAHeaderColumnsAreNumbers() {
    assertEquals(
        List.of(
            "bench.toml, line 31, columns.sample: columns.sample is \"Vial\"; without a header a"
                + " column is named by its number, as in 3. The sheet was set aside."),
        said(
            """
            header = false
            columns = { sample = "Vial" }
            """));
  }

  @Test
  void onlyResultsComeAsOneRowAReading() {
    bench.put(
        "bench.toml",
        TempBench.SETTINGS
            + """

            [[sheet]]
            match = "reagents.csv"
            layout = "row-per-reading"
            """);
    assertEquals(
        "bench.toml, line 30, layout: layout is \"row-per-reading\"; only results come as one row a"
            + " reading. The sheet was set aside.",
        bench.settingsAside().get(0).toString());
  }
}
