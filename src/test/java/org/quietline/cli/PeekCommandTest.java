package org.quietline.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The look at a file as a user meets it: words in, lines and an exit status out. */
class PeekCommandTest {
  private static final int WIDTH = 100;

  @TempDir private Path folder;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... arguments) {
    return Quietline.run(
        new Terminal(new PrintWriter(out, true), new PrintWriter(err, true), false), arguments);
  }

  private Path file(String text) throws IOException {
    return Files.writeString(folder.resolve("x.csv"), text);
  }

  private List<String> screen() {
    return out.toString().lines().toList();
  }

  @Test
  void theScreenSaysWhatWasFoundHowRowsAreReadAndWhatToPaste() throws IOException {
    Path file =
        file(
            """
            Datum;Uhrzeit;Test;Device;Type;Sample;R1;R2;Mittel
            14.10.2026;09:12;acid;S-9;product;B-1;0,311;0,313;0,312
            14.10.2026;09:40;acid;S-9;product;B-2;0,3l5;0,316;
            15.10.2026;09:05;acid;S-9;product;B-3;0,301;0,306;0,304
            16.10.2026;09:05;acid;S-9;product;B-4;0,302;0,306;0,304
            """);
    assertEquals(0, run("peek", file.toString(), "--rows", "1"));
    assertEquals(
        """
        readings/x.csv
          No bench.toml is given or lies above the file, so every method, instrument and material it names
          is taken as known. Give the bench folder with --bench.

        What the file says
          size                270 bytes (looked at to its end)
          between columns     a semicolon (5 of 5 lines have 9 fields)
          encoding            plain ASCII (no byte is above 127, so every encoding reads it alike)
          line ends           LF (5)
          header              line 1 (it holds words only, and the rows below it more)
          rows                4 (of 9 fields)
          decimal mark        a comma (7 numbers like 0,311)
          times               dd.MM.yyyy HH:mm (14.10.2026 exists only day first)
          layout              one row a result (no column groups the rows)
          taken_at            "Datum" and "Uhrzeit" (one holds days, the other times of day)
          method              "Test" (named so)
          instrument          "Device" (named so)
          role                "Type" (named so, and it holds names of roles)
          sample              "Sample" (named so)
          readings            "R1" and "R2" (named so, and they hold numbers)
          not read            "Mittel" (it is the mean of "R1" and "R2" in every row)

        The first rows, as they are read
          line 2
            taken_at      2026-10-14T09:12   from "14.10.2026" + "09:12"
            method        acid
            instrument    S-9
            role          product
            sample        B-1
            reading_1     0.311   from "0,311"
            reading_2     0.313   from "0,313"
            unit          % mass   (not in the file)

        What became of the rows
          4 rows: 3 taken in, 0 met before, 1 set aside, 0 in conflict.
          readings/x.csv, line 3, reading_1: "0,3l5" is not a number (a letter l or I where a one belongs?).
          The row was set aside.

        Proposed for bench.toml
        [[sheet]]
        match = "readings/x.csv"
        delimiter = ";"
        decimal = ","
        time-format = "dd.MM.yyyy HH:mm"
        columns.taken_at = ["Datum", "Uhrzeit"]
        columns.method = "Test"
        columns.instrument = "Device"
        columns.role = "Type"
        columns.readings = ["R1", "R2"]
        ignore = ["Mittel"]

        It matches this one file.
        """
            .lines()
            .toList(),
        screen());
    assertEquals("", err.toString());
  }

  @Test
  void questionsStandAtTheEndAndAnAnswerShowsTheRows() throws IOException {
    Path file =
        file(
            """
            Date,Test,Device,Type,Sample,R1
            03/04/2026 09:12,acid,S-9,product,B-1,0.311
            """);
    assertEquals(0, run("peek", file.toString()));
    assertEquals(
        """
        Questions
          1.  In what order do day and month stand? No day above 12 tells.
              1a  time-format = "dd/MM/yyyy HH:mm"
              1b  time-format = "MM/dd/yyyy HH:mm"
        To see what an answer does, add --answer with its name. To keep it, take the # off its line.
        """
            .lines()
            .toList(),
        screen().subList(screen().indexOf("Questions"), screen().size()));
    assertTrue(screen().contains("No row would be taken in"));
    out.getBuffer().setLength(0);
    assertEquals(0, run("peek", file.toString(), "--answer", "1B"));
    assertTrue(screen().contains("    taken_at      2026-03-04T09:12   from \"03/04/2026 09:12\""));
    assertTrue(screen().contains("time-format = \"MM/dd/yyyy HH:mm\""));
    out.getBuffer().setLength(0);
    assertEquals(0, run("peek", file.toString(), "--time-format", "dd/MM/yyyy HH:mm"));
    assertTrue(screen().contains("    taken_at      2026-04-03T09:12   from \"03/04/2026 09:12\""));
  }

  @Test
  void whatTheUserSaysGoesBeforeWhatTheFileSays() throws IOException {
    Path file =
        file(
            """
            Date!Test!Device!Type!Sample!R1
            2026-04-03 09:12!acid!S-9!product!B-1!1,311
            """);
    assertEquals(
        0,
        run(
            "peek",
            file.toString(),
            "--delimiter",
            "!",
            "--decimal",
            ",",
            "--encoding",
            "iso-8859-1"));
    assertTrue(screen().contains("delimiter = \"!\""));
    assertTrue(screen().contains("decimal = \",\""));
    assertTrue(screen().contains("encoding = \"ISO-8859-1\""));
    assertTrue(screen().contains("    reading_1     1.311   from \"1,311\""));
  }

  @Test
  void aBenchInALayoutOfItsOwnIsLookedAtAndReviewed() {
    String bench = Path.of("sample-runs", "layouts").toString();
    assertEquals(0, run("peek", Path.of(bench, "readings", "stick-0412.csv").toString()));
    assertTrue(
        screen().contains("  It is read as the [[sheet]] in bench.toml, line 49, describes it."),
        out.toString());
    assertTrue(screen().stream().allMatch(line -> line.length() <= WIDTH), out.toString());
    assertEquals(3, run("review", bench, "--out", folder.resolve("out").toString()));
    assertEquals("", err.toString());
  }

  @Test
  void wrongWordsAreSaidToBeWrong() throws IOException {
    String file = file("a,b\n1,2\n").toString();
    assertEquals(2, run("peek", file, "--decimal", "dot"));
    assertEquals(2, run("peek", file, "--delimiter", "ab"));
    assertEquals(2, run("peek", file, "--encoding", "EBCDIC"));
    assertEquals(2, run("peek", file, "--rows", "-1"));
    assertEquals(2, run("peek"));
    assertEquals(
        """
        --decimal dot is none of . and , and either.
        Help: quietline peek --help
        --delimiter ab is not one sign, such as ; or tab.
        Help: quietline peek --help
        --encoding EBCDIC is none of UTF-8, UTF-16, UTF-16LE, UTF-16BE, windows-1252, ISO-8859-1.
        Help: quietline peek --help
        --rows -1 is less than 0.
        Help: quietline peek --help
        Something is missing after the command. Missing required parameter: 'FILE'.
        Help: quietline peek --help
        """
            .lines()
            .toList(),
        err.toString().lines().toList());
  }

  @Test
  void aFileThatCannotBeUsedEndsInASentence() throws IOException {
    assertEquals(4, run("peek", folder.toString()));
    assertEquals(4, run("peek", folder.resolve("none.csv").toString()));
    assertEquals(4, run("peek", file("a,b\n1,2\n").toString(), "--bench", folder.toString()));
    assertEquals(
        List.of(
            folder + " is a folder. Give one file in it.",
            folder.resolve("none.csv") + " does not exist. Give the path of a file.",
            "The folder "
                + folder
                + " holds no bench.toml. Give the folder that holds it, or write one, and run"
                + " again."),
        err.toString().lines().toList());
    assertEquals("", out.toString());
  }
}
