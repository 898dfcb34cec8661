package org.quietline.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A new bench as its owner meets it: begun, reviewed on the same day, and after the first rows. */
class BeginCommandTest {
  @TempDir private Path folder;
  private Path bench;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @BeforeEach
  void placeBench() {
    bench = folder.resolve("my-bench");
  }

  private int run(String... arguments) {
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    return Quietline.run(
        new Terminal(new PrintWriter(out, true), new PrintWriter(err, true), false), arguments);
  }

  private int begin(String... more) {
    return run(
        Stream.concat(Stream.of("begin", bench.toString()), Stream.of(more))
            .toArray(String[]::new));
  }

  private int review() {
    return run("review", bench.toString(), "--out", folder.resolve("out").toString());
  }

  private static List<String> names(Path where) throws IOException {
    try (Stream<Path> files = Files.walk(where)) {
      return files
          .filter(Files::isRegularFile)
          .map(f -> where.relativize(f).toString())
          .sorted()
          .toList();
    }
  }

  private static void append(Path file, String row) throws IOException {
    Files.writeString(file, row + "\n", StandardOpenOption.APPEND);
  }

  private void assertRefused(String sentence, String... words) {
    assertEquals(2, begin(words), err.toString());
    assertEquals(sentence + "\nHelp: quietline begin --help\n", err.toString());
    assertEquals("", out.toString());
  }

  @Test
  void a_bench_is_made_and_the_next_three_steps_are_told() throws IOException {
    assertEquals(0, begin());
    assertEquals(
        """
        A new bench is in %1$s:
        readings/results.csv, calibrations.csv, reagents.csv, actions.csv, outside.csv, bench.toml.

        Next:
        1. Open bench.toml in an editor. See that what is marked CHECK is true, and fill in what is
           marked FILL IN as far as you know it.
        2. Calibrate, and write a row into calibrations.csv. Measure the control material of each
           method, and write each result into readings/results.csv as a row of role control.
        3. Run: quietline review %1$s
           It says at any time what is still needed.

        Read the safety data sheet of each reagent lot before you open it. Results of this bench are
        in-house production control, and stand for no specification's referee method.
        """
            .formatted(bench),
        out.toString());
    assertEquals("", err.toString());
    assertEquals(
        List.of(
            "actions.csv",
            "bench.toml",
            "calibrations.csv",
            "outside.csv",
            "readings/results.csv",
            "reagents.csv"),
        names(bench));
    String settings = Files.readString(bench.resolve("bench.toml"));
    assertTrue(settings.contains("\nname = \"my-bench\" "), settings);
    assertTrue(settings.contains("Other cards: free-glycerin."), settings);
  }

  @Test
  void name_zone_and_methods_can_be_chosen() throws IOException {
    assertEquals(
        0,
        begin(
            "--name",
            "Oil shed",
            "--timezone",
            "America/Chicago",
            "--methods",
            "total-glycerin, free-glycerin"));
    String settings = Files.readString(bench.resolve("bench.toml"));
    assertTrue(settings.contains("\nname = \"Oil shed\" "), settings);
    assertTrue(settings.contains("\ntimezone = \"America/Chicago\" "), settings);
    assertEquals(
        List.of("card = \"total-glycerin\"", "card = \"free-glycerin\""),
        settings.lines().filter(line -> line.startsWith("card = ")).toList());
  }

  @Test
  void a_review_on_the_first_day_says_what_each_method_needs() {
    begin("--methods", "total-glycerin", "--name", "Oil shed");
    assertEquals(3, review());
    assertEquals(
        """
        Oil shed: no result is in yet, so nothing can be judged.
        0 rows: 0 taken in, 0 met before, 0 set aside
        total-glycerin  Calibrate, and write a row into calibrations.csv; it then holds for 30 days. Measure
                        QC-TG-1, and write each result into readings/ as a row of role control. Not set in
                        bench.toml: allowable-bias, without which drift is not judged; the assigned-value of
                        QC-TG-1, without which no bias is claimed.
        A control material has provisional limits from its result number 5 on, settled ones from number 15,
          and its first 20 make the baseline.
        """,
        out.toString());
    assertEquals("", err.toString());
    assertFalse(Files.exists(folder.resolve("out")), "there is no month to write about");
  }

  @Test
  void a_calibration_alone_is_told_with_its_last_day() throws IOException {
    begin("--methods", "total-glycerin");
    append(bench.resolve("calibrations.csv"), "C-1,total-glycerin,PM-1,2026-01-05T08:30,,,,,,,,");
    assertEquals(3, review());
    assertTrue(
        out.toString()
            .contains(
                "total-glycerin  Calibrated on 5 January 2026, good to 4 February 2026. Measure"),
        out.toString());
  }

  @Test
  void the_first_results_are_reviewed_as_ever() throws IOException {
    begin("--methods", "total-glycerin");
    append(bench.resolve("calibrations.csv"), "C-1,total-glycerin,PM-1,2026-01-05T08:30,,,,,,,,");
    append(
        bench.resolve("readings/results.csv"),
        "2026-01-05T09:10,total-glycerin,PM-1,control,QC-TG-1,0.181,0.179,,,,,,,,");
    append(
        bench.resolve("readings/results.csv"),
        "2026-01-06T09:10,total-glycerin,PM-1,control,QC-TG-1,1800,1830,mg/kg,,,,,,,");
    assertEquals(3, review());
    assertTrue(
        out.toString().contains("QC-TG-1 on PM-1 has 2 results, and no limits yet"),
        out.toString());
    assertEquals(
        List.of("findings.json", "review-2026-01.pdf", "to-settle-2026-01.csv"),
        names(folder.resolve("out")));
  }

  @Test
  void rows_that_are_all_set_aside_are_no_beginning() throws IOException {
    begin("--methods", "total-glycerin");
    append(bench.resolve("readings/results.csv"), "yesterday,total-glycerin,,,,,,,,,,,,,");
    assertEquals(4, review());
    assertEquals(
        bench
            + ": no result could be taken in, so there is nothing to review. Put results into"
            + " readings/, mend the rows set aside, and run again.\n",
        err.toString());
  }

  @Test
  void a_folder_that_is_in_use_is_left_as_it_is() throws IOException {
    begin();
    byte[] before = Files.readAllBytes(bench.resolve("bench.toml"));
    assertRefused(bench + " is a bench already: it holds a bench.toml. Give another folder.");
    assertArrayEquals(before, Files.readAllBytes(bench.resolve("bench.toml")));

    bench = folder.resolve("used");
    Files.createDirectories(bench.resolve("notes"));
    assertRefused(bench + " is not empty: it holds notes. Give a new folder, or empty it.");
    assertEquals(List.of(), names(bench));

    bench = folder.resolve("file");
    Files.writeString(bench, "text");
    assertRefused(bench + " is a file. Give a folder, or the name of one to make.");
  }

  @Test
  void an_empty_folder_is_used_also_with_hidden_files_in_it() throws IOException {
    Files.createDirectories(bench);
    Files.writeString(bench.resolve(".hidden"), "");
    assertEquals(0, begin());
    assertEquals(7, names(bench).size());
  }

  @Test
  void words_that_make_no_bench_are_refused() {
    assertRefused(
        "\"zinc\" is no method card; there are acid-number, free-fatty-acid, total-glycerin,"
            + " free-glycerin. A method without a card is written into bench.toml by hand.",
        "--methods",
        "acid-number,zinc");
    assertRefused(
        "\"Dublin\" is no time zone. Write it as in Europe/Dublin.", "--timezone", "Dublin");
    assertRefused("--name must be one line with something on it.", "--name", "  ");
    assertRefused("--name must be one line with something on it.", "--name", "two\nlines");
    assertFalse(Files.exists(bench));
  }

  @Test
  void what_cannot_be_made_leaves_nothing_behind() throws IOException {
    Path file = folder.resolve("file");
    Files.writeString(file, "text");
    bench = file.resolve("bench");
    assertEquals(1, begin());
    assertEquals(
        bench
            + ": the bench could not be made, and nothing of it was left behind. See that the"
            + " folder may be written to and that the disk is not full, or give another one.\n",
        err.toString());
    assertEquals("text", Files.readString(file));
  }

  @Test
  void a_file_that_fails_half_way_takes_the_others_back() throws IOException {
    Map<String, String> clash = new LinkedHashMap<>();
    clash.put("good.csv", "header");
    clash.put("clash", "a file");
    clash.put("clash/inner.csv", "which would need a folder of that name");
    assertThrows(IOException.class, () -> new NewFolder(bench).write(clash));
    assertEquals(List.of(), names(folder));
    assertFalse(Files.exists(bench), "the folder was not there before");
  }

  @Test
  void the_help_names_every_card_and_default() {
    assertEquals(0, run("begin", "--help"));
    assertEquals(
        """
        Usage: quietline begin [-hV] [--methods=CARDS] [--name=NAME] [--timezone=ZONE] DIR
        Makes the folder of a new bench, with settings to fill in and empty sheets.
              DIR               The folder to make; it may exist if it is empty.
          -h, --help            Show this help message and exit.
              --methods=CARDS   The methods it runs, as names of method cards with commas between them, of
                                acid-number, free-fatty-acid, total-glycerin, free-glycerin.
                                Default: acid-number,free-fatty-acid,total-glycerin.
              --name=NAME       The bench's name. Default: the folder's.
              --timezone=ZONE   The zone of all times on the sheets, such as Europe/Dublin.
                                Default: this computer's, to be checked in bench.toml.
          -V, --version         Print version information and exit.
        """,
        out.toString());
  }
}
