package org.quietline.samples;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.quietline.bench.Accounting;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;
import org.quietline.intake.BenchFolder;
import org.quietline.intake.Intake;
import org.quietline.intake.peek.Answers;
import org.quietline.intake.peek.Peek;
import org.quietline.intake.peek.Question;

/** The committed folder, what a look at its files proposes, and what a review reads in them. */
class LayoutsBenchTest {
  private static final Path FOLDER = Path.of("sample-runs/layouts");

  @TempDir private Path fresh;

  /** The bench without its sheets: what a look has to go by. */
  private Path bare(String sheets) throws IOException {
    for (Map.Entry<String, byte[]> file : LayoutsBench.files().entrySet()) {
      Path path = fresh.resolve(file.getKey());
      Files.createDirectories(path.toAbsolutePath().getParent());
      Files.write(path, file.getValue());
    }
    Files.writeString(fresh.resolve("bench.toml"), LayoutsSettings.BENCH + sheets);
    return fresh;
  }

  private Peek look(String file, String... answers) throws IOException {
    Answers said =
        new Answers(
            List.of(), Optional.empty(), Optional.empty(), Optional.empty(), List.of(answers));
    return Peek.at(bare("").resolve(file), Optional.empty(), said, 5);
  }

  private static List<String> asked(Peek peek) {
    return peek.questions().stream().map(Question::text).toList();
  }

  @Test
  void theFolderIsWhatTheGeneratorMakes() throws IOException {
    Map<String, byte[]> made = LayoutsBench.files();
    Set<String> kept = new TreeSet<>();
    try (Stream<Path> walk = Files.walk(FOLDER)) {
      walk.filter(Files::isRegularFile)
          .forEach(p -> kept.add(FOLDER.relativize(p).toString().replace('\\', '/')));
    }
    kept.remove("ABOUT.md");
    assertEquals(made.keySet(), kept);
    for (Map.Entry<String, byte[]> file : made.entrySet()) {
      assertArrayEquals(
          file.getValue(), Files.readAllBytes(FOLDER.resolve(file.getKey())), file.getKey());
    }
  }

  @Test
  void theStickIsInAnOldEncodingAndNoOther() throws IOException {
    byte[] stick = Files.readAllBytes(FOLDER.resolve(LayoutsBench.STICK));
    assertTrue(
        new String(stick, Charset.forName("windows-1252"))
            .contains("Küvette neu, 50 µl nachgefüllt"));
    assertTrue(new String(stick, StandardCharsets.UTF_8).contains("\uFFFD"));
  }

  @Test
  void theSheetOfTheStickIsTheProposalWithItsCodesAnswered() throws IOException {
    assertEquals(
        List.of(
            "What does the method \"TGLY\" (14 rows) mean?",
            "What does the method \"ANZ\" (15 rows) mean?",
            "What does the role \"Charge\" (15 rows) mean?"),
        asked(look(LayoutsBench.STICK)));
    Peek answered = look(LayoutsBench.STICK, "1a", "2b", "3b");
    assertEquals(LayoutsSettings.STICK_SHEET, answered.proposal());
    assertEquals(List.of(), answered.questions());
    assertEquals(28, answered.trial().accounting().takenIn());
    assertEquals(1, answered.trial().accounting().metBefore());
  }

  @Test
  void theSheetOfTheTitratorIsTheProposal() throws IOException {
    Peek peek = look(LayoutsBench.TITRATOR);
    assertEquals(LayoutsSettings.TITRATOR_SHEET, peek.proposal());
    assertEquals(List.of(), peek.questions());
    assertEquals(Optional.of("readings/titrator-week-*.txt"), peek.kind());
  }

  @Test
  void theSheetOfThePadIsTheProposalAnswered() throws IOException {
    assertEquals(
        List.of(
            "In what order do day and month stand? Both orders were used, and 1 row has two"
                + " meanings; with both formats it is set aside.",
            "What does the method \"TG\" (19 rows) mean?",
            "What does the role \"batch\" (11 rows) mean?",
            "What does the reading \"over\" (2 cells) mean? Put the upper end of the range in place"
                + " of UPPER, or say that nothing was read.",
            "No column says the instrument. What is it?"),
        asked(look(LayoutsBench.PAD)));
    Peek answered = look(LayoutsBench.PAD, "1a", "2a", "3b", "4a", "5a");
    assertTrue(answered.proposal().contains("values.readings.\"over\" = \">UPPER\""));
    assertEquals(LayoutsSettings.PAD_SHEET, answered.proposal().replace(">UPPER", ">0.300"));
  }

  @Test
  void anUnansweredProposalIsAnErrorAndNoGuess() throws IOException {
    String proposal = look(LayoutsBench.PAD).proposal();
    Accounting accounting = BenchFolder.read(bare("\n" + proposal)).accounting();
    long line = (LayoutsSettings.BENCH + "\n").lines().count() + 1;
    assertEquals(
        "readings/pad.csv, line 1, header: The sheet says nothing of instrument; name a column for"
            + " it, or a default, in the [[sheet]] in bench.toml, line "
            + line
            + ". The header is"
            + " \"date,time,test,what,sample,r1,r2,by,note\". All 20 rows were set aside.",
        accounting.aside().stream()
            .filter(a -> a.file().equals(LayoutsBench.PAD))
            .map(Object::toString)
            .collect(Collectors.joining()));
  }

  @Test
  void theReviewReadsEveryRowOrSaysWhyNot() {
    Intake intake = BenchFolder.read(FOLDER);
    Accounting accounting = intake.accounting();
    assertEquals(List.of(), accounting.settingsAside());
    assertEquals(List.of(), accounting.conflicts());
    assertEquals(76, accounting.rows());
    assertEquals(71, accounting.takenIn());
    assertEquals(1, accounting.metBefore());
    assertEquals(
        List.of(
            "readings/pad.csv:11 row",
            "readings/pad.csv:17 reading_2",
            "readings/pad.csv:19 taken_at",
            "readings/titrator-week-16.txt:20 sample"),
        accounting.aside().stream().map(a -> a.file() + ":" + a.line() + " " + a.field()).toList());
  }

  @Test
  void theValuesAreThoseThatStandInTheFiles() throws IOException {
    Result first = at(LayoutsBench.STICK, 2);
    List<String> cells = List.of(lines(LayoutsBench.STICK, "windows-1252").get(1).split(";", -1));
    assertEquals("2026-03-16T08:05", first.takenAt().toString());
    assertEquals(
        List.of(cells.get(6).replace(',', '.'), cells.get(7).replace(',', '.')), texts(first));
    assertEquals(Optional.of("Küvette neu, 50 µl nachgefüllt"), at(LayoutsBench.STICK, 8).remark());
    assertEquals(1, at(LayoutsBench.STICK, 13).readings().size());

    assertEquals(List.of("<0.05", "<0.05"), texts(at(LayoutsBench.PAD, 6)));
    assertEquals(List.of(">0.300", ">0.300"), texts(at(LayoutsBench.PAD, 7)));
    assertEquals(List.of("0.236"), texts(at(LayoutsBench.PAD, 8)));
    assertEquals("2026-04-16T08:25", at(LayoutsBench.PAD, 13).takenAt().toString());
    assertEquals(
        Optional.of("kit stood out overnight; 31 °C at 7, results since then may be high"),
        at(LayoutsBench.PAD, 13).remark());
  }

  @Test
  void aRowForEachReadingMakesOneResultOfEachRun() throws IOException {
    List<List<String>> rows =
        lines(LayoutsBench.TITRATOR, "UTF-8").stream()
            .skip(3)
            .map(line -> List.of(line.split("\t", -1)))
            .toList();
    Map<String, List<String>> byRun =
        rows.stream()
            .filter(row -> !row.get(5).equals("B-2371"))
            .collect(
                Collectors.groupingBy(
                    row -> row.get(0), Collectors.mapping(row -> row.get(7), Collectors.toList())));
    List<Result> results =
        BenchFolder.read(FOLDER).bench().results().stream()
            .filter(r -> r.origin().file().equals(LayoutsBench.TITRATOR))
            .toList();
    assertEquals(12, results.size());
    assertEquals(12, byRun.size());
    for (Result result : results) {
      String run = rows.get((int) result.origin().line() - 4).get(0);
      assertEquals(byRun.get(run), texts(result), run);
      assertEquals("TI-2", result.instrument());
    }
  }

  private static Result at(String file, long line) {
    return BenchFolder.read(FOLDER).bench().results().stream()
        .filter(r -> r.origin().file().equals(file) && r.origin().line() == line)
        .findFirst()
        .orElseThrow();
  }

  private static List<String> texts(Result result) {
    return result.writtenReadings().stream().map(Reading::toString).toList();
  }

  private static List<String> lines(String file, String encoding) throws IOException {
    return Files.readString(FOLDER.resolve(file), Charset.forName(encoding)).lines().toList();
  }
}
