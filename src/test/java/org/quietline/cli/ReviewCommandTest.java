package org.quietline.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command as a user meets it: words in, lines, files and an exit status out. */
class ReviewCommandTest {
  @TempDir private Path folder;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... arguments) {
    return Quietline.run(
        new Terminal(new PrintWriter(out, true), new PrintWriter(err, true), false), arguments);
  }

  private int review(Path bench, String... more) {
    List<String> words = new ArrayList<>(List.of("review", bench.toString()));
    words.addAll(List.of("--out", folder.resolve("out").toString()));
    words.addAll(Arrays.asList(more));
    return run(words.toArray(String[]::new));
  }

  /** A copy of the invented bench that a test may spoil. */
  private Path tidewick() throws IOException {
    Path source = Path.of("sample-runs", "tidewick");
    Path copy = folder.resolve("bench");
    try (Stream<Path> files = Files.walk(source)) {
      for (Path file : files.toList()) {
        Files.copy(file, copy.resolve(source.relativize(file).toString()));
      }
    }
    return copy;
  }

  private static void change(Path file, String from, String to) throws IOException {
    String text = Files.readString(file);
    assertTrue(text.contains(from), from);
    Files.writeString(file, text.replace(from, to));
  }

  private List<String> written() throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("out"))) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  /** What rests on precision and bias, each figure recomputed from the others. */
  private static void batches(JsonNode method) {
    double own = method.at("/uncertainty/0/standardUncertainty").doubleValue();
    JsonNode outside = method.at("/outside/0");
    double stated = outside.at("/standardUncertainty").doubleValue();
    double difference = outside.at("/own").doubleValue() - outside.at("/outside").doubleValue();
    assertEquals(difference / Math.hypot(own, stated), outside.at("/zeta").doubleValue(), 1e-12);
    assertEquals(outside.at("/zeta").doubleValue() / 2, outside.at("/en").doubleValue(), 1e-15);
    assertTrue(outside.at("/z").isNull());
    assertEquals("outside.csv gives no assessment_deviation", outside.at("/zNote").textValue());
    JsonNode comparison = method.at("/comparisons/0");
    assertEquals("alike", comparison.at("/verdict").textValue());
    assertTrue(comparison.at("/deming").isNull());
    assertEquals("needs 6 samples, has 4", comparison.at("/demingNote").textValue());
    assertEquals(0, method.at("/costsOfDeciding").size());
    JsonNode capability = method.at("/capability");
    double expected = capability.at("/expectedBeyondPerMillion").doubleValue() / 1e6;
    assertTrue(capability.at("/shareBeyondLower95").doubleValue() < expected);
    assertTrue(capability.at("/shareBeyondUpper95").doubleValue() > expected);
    assertEquals("normal", capability.at("/shape").textValue());
    for (JsonNode release : method.at("/release")) {
      if (release.at("/sample").textValue().equals("B-1159")) {
        assertEquals("too-close-to-call", release.at("/decision").textValue());
      }
    }
  }

  private JsonNode findings() throws IOException {
    return new ObjectMapper().readTree(folder.resolve("out/findings.json").toFile());
  }

  private void assertScreen(String... lines) {
    for (String line : lines) {
      assertTrue(out.toString().lines().toList().contains(line), line + "\n---\n" + out);
    }
  }

  @Test
  void the_main_job_writes_pages_and_findings_and_says_one_thing_a_method() throws IOException {
    assertEquals(3, review(tidewick()));
    assertEquals(
        List.of(
            "findings.json",
            "notice-total-glycerin-PM-1-2026-10-23-0744.pdf",
            "review-2026-10.pdf",
            "to-settle-2026-10.csv"),
        written());
    assertScreen(
        "Tidewick Oil & Fuel, bench 1 (invented), October 2026, as of 30 October 2026",
        "521 rows: 514 taken in, 4 met before, 3 set aside",
        "readings/2026-02.csv, line 20, taken_at: \"2026-02-30T09:10\" does not exist (February 2026"
            + " has 28 days). The row was set aside.",
        "readings/2026-03.csv, line 14, reading_1: \"O.18\" is not a number (a letter O where a zero"
            + " belongs?). The row was set aside.",
        "readings/2026-07.csv, line 11, method: \"toal-glycerin\" is no method of this bench (did you"
            + " mean total-glycerin?). The row was set aside.");
    for (String start : List.of("hold    total-gl", "steady  acid-number", "watch   free-fatty")) {
      assertTrue(out.toString().lines().anyMatch(l -> l.startsWith(start)), start);
    }
    assertEquals("", err.toString());
  }

  @Test
  void findings_hold_what_the_file_interface_promises() throws IOException {
    review(tidewick());
    JsonNode root = findings();
    assertEquals(1, root.get("schema").asInt());
    assertEquals("2026-10-01", root.get("from").asText());
    assertEquals("2026-10-31", root.get("to").asText());
    JsonNode intake = root.get("intake");
    assertEquals(
        intake.get("rows").asInt(),
        intake.get("takenIn").asInt()
            + intake.get("metBefore").asInt()
            + intake.get("setAside").asInt());
    assertEquals(18, intake.get("files").size());
    assertEquals(64, intake.at("/files/0/sha256").asText().length());
    assertEquals("O.18", intake.at("/aside/1/text").asText());
    JsonNode glycerin = root.at("/methods/0");
    assertEquals("hold", glycerin.get("verdict").asText());
    assertEquals(59, glycerin.at("/replicates/0/results").asInt());
    JsonNode stream = glycerin.at("/streams/0");
    assertEquals(20, stream.at("/baseline/results").asInt());
    assertEquals(0.187576, stream.at("/limits/upperAction").asDouble(), 1e-6);
    assertEquals(10, stream.get("signals").size());
    JsonNode last = stream.at("/signals/9");
    assertEquals(
        "total-glycerin/PM-1/QC-TG-A/2026-10-30T07:50/weighted-mean-beyond-limit",
        last.get("id").asText());
    assertEquals("stop", last.get("weight").asText());
    assertEquals("open", last.get("status").asText());
    JsonNode drift = glycerin.at("/drift/0");
    assertEquals("TG-C15", drift.get("calibration").asText());
    assertEquals(15, drift.get("windows").asInt());
    assertEquals("recalibrate-now", drift.get("decision").asText());
    assertEquals(0.24, glycerin.at("/capability/limit").asDouble(), 0.0);
    batches(glycerin);
    JsonNode young = root.at("/methods/2");
    assertTrue(young.get("capability").isNull());
    assertEquals("needs 10 product results, has 8", young.get("capabilityNote").asText());
    assertEquals(
        "the control results do not show in which direction it goes",
        young.at("/drift/0/lastSafeDayNote").asText());
  }

  @Test
  void the_same_folder_gives_the_same_bytes() throws IOException {
    Path bench = tidewick();
    review(bench);
    byte[] json = Files.readAllBytes(folder.resolve("out/findings.json"));
    byte[] pages = Files.readAllBytes(folder.resolve("out/review-2026-10.pdf"));
    review(bench);
    assertTrue(Arrays.equals(json, Files.readAllBytes(folder.resolve("out/findings.json"))));
    assertTrue(Arrays.equals(pages, Files.readAllBytes(folder.resolve("out/review-2026-10.pdf"))));
  }

  @Test
  void published_data_are_steady() {
    assertEquals(0, review(Path.of("sample-runs", "resistivity")));
    assertScreen(
        "Resistivity check standard, April 1994, as of 11 April 1994",
        "25 rows: 25 taken in, 0 met before, 0 set aside");
  }

  @Test
  void another_month_or_stretch_of_days_can_be_asked_for() throws IOException {
    Path bench = tidewick();
    review(bench, "--month", "2026-04");
    review(bench, "--from", "2026-04-10", "--to", "2026-05-02", "--paper", "letter");
    assertEquals(
        List.of(
            "findings.json",
            "review-2026-04-10-to-2026-05-02.pdf",
            "review-2026-04.pdf",
            "to-settle-2026-04-10-to-2026-05-02.csv",
            "to-settle-2026-04.csv"),
        written());
    assertEquals("2026-05-02", findings().get("to").asText());
  }

  @Test
  void the_day_to_speak_from_can_be_set_back() throws IOException {
    review(tidewick(), "--month", "2026-10", "--on", "2026-10-20");
    assertEquals("2026-10-20T23:59", findings().get("now").asText());
    assertEquals(6, findings().at("/methods/0/streams/0/signals").size());
  }

  @Test
  void a_wrong_folder_is_one_sentence() throws IOException {
    assertEquals(4, review(folder.resolve("nowhere")));
    assertEquals(
        folder.resolve("nowhere")
            + " does not exist. Give the folder that holds bench.toml and run"
            + " again.\n",
        err.toString());
    assertFalse(Files.exists(folder.resolve("out")));
  }

  @Test
  void a_broken_settings_file_is_one_sentence_with_its_line() throws IOException {
    Path bench = tidewick();
    change(bench.resolve("bench.toml"), "[[method]]\nkey = \"acid", "[[method\nkey = \"acid");
    assertEquals(4, review(bench));
    assertTrue(err.toString().startsWith("bench.toml, line 18: not valid TOML: "), err.toString());
    assertTrue(err.toString().endsWith("Mend that line and run again.\n"), err.toString());
    assertEquals(1, err.toString().lines().count());
  }

  @Test
  void an_empty_file_is_named_and_the_rest_reviewed() throws IOException {
    Path bench = tidewick();
    Files.writeString(bench.resolve("readings/2026-10.csv"), "");
    review(bench);
    assertScreen(
        "Tidewick Oil & Fuel, bench 1 (invented), September 2026, as of 30 September 2026",
        "readings/2026-10.csv, line 1, file: The file is empty; nothing was read.");
  }

  @Test
  void a_missing_column_sets_its_file_aside_and_the_rest_is_reviewed() throws IOException {
    Path bench = tidewick();
    change(bench.resolve("readings/2026-09.csv"), ",sample,", ",probe,");
    assertEquals(3, review(bench));
    JsonNode aside = findings().at("/intake/aside/3");
    assertEquals("readings/2026-09.csv", aside.get("file").asText());
    assertEquals(1, aside.get("line").asInt());
    assertEquals(32, aside.get("rows").asInt());
    assertTrue(aside.get("reason").asText().contains("sample"), aside.toString());
  }

  @Test
  void settings_that_cannot_be_used_are_told_and_are_never_steady() throws IOException {
    Path bench = tidewick();
    change(bench.resolve("bench.toml"), "product-upper-limit = 0.50", "product-uper-limit = 0.50");
    assertEquals(3, review(bench));
    JsonNode aside = findings().at("/intake/settingsAside/1");
    assertEquals(27, aside.get("line").asInt());
    assertTrue(aside.get("reason").asText().contains("product-upper-limit"), aside.toString());
    assertTrue(out.toString().contains("2 settings could not be used"), out.toString());
  }

  @Test
  void a_notice_rule_finds_the_step_of_the_calibrators() throws IOException {
    Path bench = tidewick();
    Files.writeString(
        bench.resolve("bench.toml"),
        Files.readString(bench.resolve("bench.toml"))
            + "\n[chart]\nnotice-rules = [\"calibration-step\", \"eight-on-one-side\"]\n");
    assertEquals(3, review(bench));
    // ABOUT.md: the responses are 6 % higher from TG-C12, of 9 July 2026, on; acid number is quiet
    JsonNode signals = findings().at("/methods/0/free/signals");
    assertEquals(1, signals.size());
    assertTrue(
        signals.at("/0/id").asText().startsWith("total-glycerin/PM-1/calibration/2026-07-09T"),
        signals.toString());
    assertEquals(0, findings().at("/methods/1/free/signals").size());
    assertEquals("steady", findings().at("/methods/1/verdict").asText());
  }

  @Test
  void the_id_of_a_calibration_step_closes_it() throws IOException {
    Path bench = tidewick();
    Files.writeString(
        bench.resolve("bench.toml"),
        Files.readString(bench.resolve("bench.toml"))
            + "\n[chart]\nnotice-rules = [\"calibration-step\"]\n");
    review(bench);
    String id = findings().at("/methods/0/free/signals/0/id").asText();
    assertEquals("open", findings().at("/methods/0/free/signals/0/status").asText());
    Path actions = bench.resolve("actions.csv");
    String head = Files.readAllLines(actions).get(0);
    int aside = findings().at("/intake/setAside").asInt();
    Files.writeString(
        actions,
        Files.readString(actions)
            + rowOf(head, "recorded_at", "2026-07-10T09:00", "signal", id, "cause", "new lot")
            + "\n");
    review(bench);
    assertEquals("closed", findings().at("/methods/0/free/signals/0/status").asText());
    assertEquals(aside, findings().at("/intake/setAside").asInt());
    assertEquals(0, findings().at("/idleActions").size());
  }

  @Test
  void an_id_whose_third_part_does_not_belong_to_its_rule_is_set_aside_with_a_sentence()
      throws IOException {
    Path bench = tidewick();
    Path actions = bench.resolve("actions.csv");
    String head = Files.readAllLines(actions).get(0);
    String id = "total-glycerin/PM-1/QC-TG-A/2026-07-09T07:00/calibration-step";
    Files.writeString(
        actions,
        Files.readString(actions)
            + rowOf(head, "recorded_at", "2026-07-10T09:00", "signal", id, "cause", "new lot")
            + "\n");
    review(bench);
    assertTrue(
        out.toString()
            .contains(
                "the third part of an id of calibration-step is calibration, not \"QC-TG-A\"; copy"
                    + " the id whole from the review."),
        out.toString());
  }

  private static String rowOf(String head, String... fields) {
    java.util.Map<String, String> given = new java.util.HashMap<>();
    for (int i = 0; i < fields.length; i += 2) {
      given.put(fields[i], fields[i + 1]);
    }
    return java.util.Arrays.stream(head.split(","))
        .map(column -> given.getOrDefault(column.strip(), ""))
        .collect(java.util.stream.Collectors.joining(","));
  }

  @Test
  void a_bench_without_results_says_what_to_do() throws IOException {
    Path bench = tidewick();
    try (Stream<Path> files = Files.list(bench.resolve("readings"))) {
      for (Path file : files.toList()) {
        Files.delete(file);
      }
    }
    assertEquals(4, review(bench));
    assertScreen("60 rows: 60 taken in, 0 met before, 0 set aside");
    assertEquals(
        bench
            + ": no result could be taken in, so there is nothing to review. Put results into"
            + " readings/, mend the rows set aside, and run again.\n",
        err.toString());
  }

  @Test
  void wrong_words_are_sentences_with_a_pointer_to_help() {
    record Said(String sentence, List<String> words) {}
    List<Said> cases =
        List.of(
            new Said(
                "Which command? There are: begin, review, outlook, peek.\nHelp: quietline --help\n",
                List.of()),
            new Said(
                """
                Something is missing after the command. Missing required parameter: 'BENCH'.
                Help: quietline review --help
                """,
                List.of("review")),
            new Said(
                "Invalid value for option '--month': \"2026-13\" is no month. Write it as in"
                    + " 2026-10.\nHelp: quietline review --help\n",
                List.of("review", "x", "--month", "2026-13")),
            new Said(
                "Invalid value for option '--on': \"31.10.2026\" is no day. Write it as in"
                    + " 2026-10-14.\nHelp: quietline review --help\n",
                List.of("review", "x", "--on", "31.10.2026")),
            new Said(
                "--from and --to go together.\nHelp: quietline review --help\n",
                List.of("review", "x", "--from", "2026-01-01")),
            new Said(
                "--to 2026-01-01 is before --from 2026-02-01.\nHelp: quietline review --help\n",
                List.of("review", "x", "--from", "2026-02-01", "--to", "2026-01-01")),
            new Said(
                "Either --month, or --from and --to, not both.\nHelp: quietline review --help\n",
                List.of(
                    "review",
                    "x",
                    "--month",
                    "2026-01",
                    "--from",
                    "2026-02-01",
                    "--to",
                    "2026-02-03")));
    for (Said said : cases) {
      err.getBuffer().setLength(0);
      assertEquals(2, run(said.words().toArray(String[]::new)), said.sentence());
      assertEquals(said.sentence(), err.toString());
    }
    err.getBuffer().setLength(0);
    assertEquals(2, run("reveiw", "x"));
    assertTrue(
        err.toString().contains("Did you mean: quietline review or quietline release?"),
        err.toString());
  }

  @Test
  void an_output_folder_that_cannot_be_made_is_a_sentence() throws IOException {
    Path file = Files.writeString(folder.resolve("taken"), "x", StandardCharsets.UTF_8);
    assertEquals(
        1, run("review", tidewick().toString(), "--out", file.resolve("deeper").toString()));
    assertTrue(err.toString().endsWith("Choose another folder with --out.\n"), err.toString());
    assertEquals(1, err.toString().lines().count(), err.toString());
  }

  @Test
  void help_and_version_are_no_trouble() {
    assertEquals(0, run("review", "--help"));
    assertTrue(out.toString().contains("The bench folder, with its bench.toml."), out.toString());
    out.getBuffer().setLength(0);
    assertEquals(0, run("--version"));
    assertTrue(out.toString().matches("quietline \\d+\\.\\d+\\.\\d+\n"), out.toString());
  }

  @Test
  void days_that_do_not_fit_the_data_are_wrong_usage() throws IOException {
    Path bench = tidewick();
    assertEquals(2, review(bench, "--month", "2027-03"));
    assertEquals(
        "The latest row of "
            + bench
            + " is of 2026-10-30, before 2027-03-01. Choose an earlier"
            + " month.\nHelp: quietline review --help\n",
        err.toString());
    err.getBuffer().setLength(0);
    assertEquals(2, review(bench, "--month", "2026-10", "--on", "2026-11-02"));
    assertEquals(
        """
        --on 2026-11-02 is not within the days reviewed, 2026-10-01 to 2026-10-31.
        Help: quietline review --help
        """,
        err.toString());
  }

  @Test
  void a_month_whose_sheet_cannot_be_read_is_told_before_anything_else() throws IOException {
    Path bench = tidewick();
    change(bench.resolve("readings/2026-10.csv"), "taken_at,method", "when,method");
    assertEquals(3, review(bench));
    assertScreen(
        "Tidewick Oil & Fuel, bench 1 (invented), September 2026, as of 30 September 2026",
        "Not one row of readings/2026-10.csv could be used; what is said here is said without it.");
  }

  @Test
  void a_mistyped_signal_is_told_and_closes_nothing() throws IOException {
    Path bench = tidewick();
    change(bench.resolve("actions.csv"), "2026-06-24T07:36/beyond", "2026-06-24T07:37/beyond");
    review(bench);
    assertTrue(
        out.toString()
            .contains(
                "actions.csv, line 4: the signal"
                    + " total-glycerin/PM-1/QC-TG-A/2026-06-24T07:37/beyond-action-limit is not among"
                    + " those found, so it closes nothing. Copy the id from findings.json."),
        out.toString());
    assertEquals("open", findings().at("/methods/0/streams/0/signals/2/status").asText());
  }
}
