package org.quietline.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command as a user meets it, on the invented bench. */
class OutlookCommandTest {
  private static final Path TIDEWICK = Path.of("sample-runs", "tidewick");

  @TempDir private Path folder;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int outlook(String... more) {
    return outlookOf(TIDEWICK, more);
  }

  private int outlookOf(Path bench, String... more) {
    List<String> words = new ArrayList<>(List.of("outlook", bench.toString()));
    words.addAll(List.of("--out", folder.resolve("out").toString()));
    words.addAll(Arrays.asList(more));
    return Quietline.run(
        new Terminal(new PrintWriter(out, true), new PrintWriter(err, true), false),
        words.toArray(String[]::new));
  }

  private String note(String name) throws IOException {
    return note(name, 2);
  }

  private String note(String name, int pages) throws IOException {
    try (PDDocument pdf = Loader.loadPDF(folder.resolve("out").resolve(name).toFile())) {
      assertEquals(pages, pdf.getNumberOfPages(), name);
      return new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
    }
  }

  private static void assertSays(String text, String... words) {
    for (String said : words) {
      assertTrue(text.contains(said), said + "\n---\n" + text);
    }
  }

  /** Planted: the line passes the allowance on 25 October. */
  @Test
  void the_planted_drift_is_called_before_it_passes_the_allowance() throws IOException {
    assertEquals(3, outlook("--on", "2026-10-23"));
    assertSays(
        out.toString(),
        "total-glycerin/PM-1  recalibrate now",
        "acid-number/PM-1  keep to its date",
        "free-fatty-acid/PM-2  cannot say yet",
        "What would settle it: ");
    String text = note("outlook-total-glycerin-PM-1-2026-10-23.pdf");
    assertSays(text, "TG-C15", "invented", "QC-TG-A", "0.0120");
    assertTrue(
        text.contains("licen") && text.toLowerCase(java.util.Locale.ROOT).contains("local"), text);
  }

  @Test
  void the_quiet_method_keeps_its_thirty_days() throws IOException {
    assertEquals(0, outlook("--on", "2026-10-23", "--method", "acid-number"));
    assertSays(
        out.toString(),
        "Keep calibration AN-C15 to its date, 1 November 2026",
        "No drift is shown");
    assertSays(note("outlook-acid-number-PM-1-2026-10-23.pdf"), "AN-C15", "1 November 2026");
  }

  @Test
  void the_young_method_is_told_what_it_needs() throws IOException {
    assertEquals(3, outlook("--method", "free-fatty-acid"));
    assertSays(
        out.toString(),
        "Cannot say yet whether calibration FA-C02 lasts",
        "What would settle it: 1 control test");
    assertSays(note("outlook-free-fatty-acid-PM-2-2026-10-30.pdf"), "FA-C02");
  }

  @Test
  void the_same_folder_gives_the_same_bytes() throws IOException {
    outlook("--method", "acid-number");
    Path file = folder.resolve("out/outlook-acid-number-PM-1-2026-10-30.pdf");
    byte[] first = Files.readAllBytes(file);
    outlook("--method", "acid-number");
    assertArrayEquals(first, Files.readAllBytes(file));
    outlook("--method", "acid-number", "--paper", "LETTER", "--tests", "0");
    assertFalse(Arrays.equals(first, Files.readAllBytes(file)));
  }

  private void assertRefused(String sentence, String... words) {
    err.getBuffer().setLength(0);
    assertEquals(2, outlook(words));
    assertEquals(sentence + "\nHelp: quietline outlook --help\n", err.toString());
  }

  @Test
  void wrong_words_are_sentences_with_a_pointer_to_help() {
    assertRefused("--tests 7 is not from 0 to 6.", "--tests", "7");
    assertRefused(
        "There is no method colour in "
            + TIDEWICK.resolve("bench.toml")
            + ". There are: total-glycerin, acid-number, free-fatty-acid.",
        "--method",
        "colour");
    assertRefused("No method of this bench was calibrated by 2020-01-01.", "--on", "2020-01-01");
    assertFalse(Files.exists(folder.resolve("out")));
  }

  private Path copy() throws IOException {
    Path copy = folder.resolve("bench");
    try (Stream<Path> files = Files.walk(TIDEWICK)) {
      for (Path file : files.toList()) {
        Files.copy(file, copy.resolve(TIDEWICK.relativize(file).toString()));
      }
    }
    return copy;
  }

  /** A bad row is set aside with its place; the rest counts. */
  @Test
  void temperatures_of_the_cold_chain_are_read() throws IOException {
    Path bench = copy();
    Files.writeString(
        bench.resolve("cold-chain.csv"),
        """
        taken_at,place,temperature_c,remark
        2026-10-02T08:00,refrigerated,4.5,
        2026-10-03T08:00,refrigerated,warm,
        2026-10-04T08:00,AN-L05,-2.0,door left open in frost (invented)
        """);
    List<String> words =
        List.of("review", bench.toString(), "--month", "2026-10", "--out", folder + "/o");
    Quietline.run(
        new Terminal(new PrintWriter(out, true), new PrintWriter(err, true), false),
        words.toArray(String[]::new));
    assertSays(out.toString(), "cold-chain.csv, line 3, temperature_c: \"warm\" is not a number");
    assertSays(Files.readString(folder.resolve("o/findings.json")), "reagent-frozen");
  }

  @Test
  void what_a_bench_asks_and_sets_stands_on_the_note() throws IOException {
    Path bench = copy();
    String settings =
        Files.readString(TIDEWICK.resolve("bench.toml"))
            .replace(
                "key = \"total-glycerin\"\n",
                "key = \"total-glycerin\"\ndrift-form = \"proportional\"\n");
    Files.writeString(bench.resolve("bench.toml"), settings + "\n[outlook]\nsafe-chance = 0.02\n");
    assertEquals(3, outlookOf(bench, "--on", "2026-10-23"));
    assertSays(
        note("outlook-acid-number-PM-1-2026-10-23.pdf"), "stays at or below 2 % (under 0.1 %");
    assertSays(
        note("outlook-total-glycerin-PM-1-2026-10-23.pdf"),
        "Drift is taken as the same share of all levels, as set.",
        // 0.00569 on day 15.17 by the posterior of recompute_outlook.py, times 0.223 / 0.180
        "B-1164 16 Oct 2026, 11:14 0.223 +0.0070");
  }

  @Test
  void two_levels_say_on_the_note_how_drift_acts() throws IOException {
    Path bench = copy();
    Files.writeString(
        bench.resolve("bench.toml"),
        Files.readString(TIDEWICK.resolve("bench.toml"))
            + "\n[[material]]\nkey = \"LOW\"\nmethod = \"total-glycerin\"\nassigned-value = 0.060\n");
    StringBuilder rows =
        new StringBuilder(
            "taken_at,method,instrument,role,sample,reading_1,reading_2,unit,operator\n");
    String[] readings = {"0.060", "0.061", "0.062", "0.064"};
    int[] days = {2, 9, 15, 22};
    for (int i = 0; i < days.length; i++) {
      rows.append(
          String.format(
              java.util.Locale.ROOT,
              "2026-10-%02dT09:30,total-glycerin,PM-1,control,LOW,%s,%s,%% mass,RO\n",
              days[i],
              readings[i],
              readings[i]));
    }
    Files.writeString(bench.resolve("readings/low.csv"), rows);
    assertEquals(3, outlookOf(bench, "--on", "2026-10-23"));
    String text = out.toString() + err;
    assertSays(note("outlook-total-glycerin-PM-1-2026-10-23.pdf"), "(chance of a share ");
    assertFalse(text.contains("Exception"), text);
  }

  @Test
  void a_bench_without_rows_has_no_outlook() throws IOException {
    Path bench = folder.resolve("empty");
    Files.createDirectories(bench);
    Files.copy(TIDEWICK.resolve("bench.toml"), bench.resolve("bench.toml"));
    assertEquals(4, outlookOf(bench));
    assertSays(err.toString(), "no result and no calibration could be taken in");
  }
}
