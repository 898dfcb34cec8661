package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.InConflict;
import org.quietline.bench.Accounting.SetAside;

/**
 * Sheets with one defect each, the file named for it, and beside it what must be said: the counts,
 * then every sentence. The counts were written down before the sheets were read for the first time;
 * of 105, three were mended afterwards, each for a reason that the file shows. The sentences were
 * written by the program and then read one by one, and eight were mended for what they said.
 */
class CorpusTest {
  private static final int FILES = 106;

  private static final String CALIBRATIONS =
      """
      calibration,method,instrument,calibrated_at
      C-1,total-glycerin,PM-1,2026-01-01T08:00
      """;

  @TempDir private Path folder;

  static Path corpus() {
    URL root = Objects.requireNonNull(CorpusTest.class.getResource("corpus"));
    try {
      return Path.of(root.toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Every sheet, relative to the corpus: the folder says what kind of sheet it is. */
  static List<String> sheets() throws IOException {
    try (Stream<Path> files = Files.walk(corpus())) {
      return files
          .map(file -> corpus().relativize(file).toString().replace('\\', '/'))
          .filter(name -> name.endsWith(".csv"))
          .sorted()
          .toList();
    }
  }

  @Test
  void theCorpusIsComplete() throws IOException {
    assertEquals(FILES, sheets().size());
    try (Stream<Path> files = Files.walk(corpus())) {
      assertEquals(FILES, files.filter(file -> file.toString().endsWith(".txt")).count());
    }
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void whatIsSaidOfASheetIsWhatIsWrongWithIt(String sheet) throws IOException {
    Path expected = corpus().resolve(sheet.replace(".csv", ".txt"));
    assertEquals(Files.readString(expected), said(sheet));
  }

  private String said(String sheet) throws IOException {
    byte[] content = Files.readAllBytes(corpus().resolve(sheet));
    String name = nameInBench(sheet);
    TempBench bench = new TempBench(folder);
    if (name.startsWith("readings/")) {
      bench.put("calibrations.csv", CALIBRATIONS);
    }
    Accounting accounting = bench.put(name, content).read().accounting();
    int own = name.startsWith("readings/") ? 1 : 0;
    List<String> lines = new ArrayList<>();
    lines.add(
        String.format(
            "taken in %d, met before %d, set aside %d, in conflict %d",
            accounting.takenIn() - own,
            accounting.metBefore(),
            accounting.rowsAside(),
            accounting.rowsInConflict()));
    accounting.aside().stream().map(SetAside::toString).forEach(lines::add);
    accounting.conflicts().stream().map(InConflict::toString).forEach(lines::add);
    lines.forEach(line -> assertTrue(StandardCharsets.UTF_8.newEncoder().canEncode(line), line));
    return String.join("\n", lines) + "\n";
  }

  private static String nameInBench(String sheet) {
    String kind = sheet.substring(0, sheet.indexOf('/'));
    return kind.equals("readings") ? sheet : kind + ".csv";
  }
}
