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
class ReleaseCommandTest {
  private static final Path TIDEWICK = Path.of("sample-runs", "tidewick");

  @TempDir private Path folder;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int release(String... more) {
    List<String> words = new ArrayList<>(List.of("release", TIDEWICK.toString()));
    words.addAll(List.of("--out", folder.resolve("out").toString()));
    words.addAll(Arrays.asList(more));
    return Quietline.run(
        new Terminal(new PrintWriter(out, true), new PrintWriter(err, true), false),
        words.toArray(String[]::new));
  }

  private String note(String name) throws IOException {
    try (PDDocument pdf = Loader.loadPDF(folder.resolve("out").resolve(name).toFile())) {
      assertEquals(1, pdf.getNumberOfPages(), name);
      return new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
    }
  }

  private static void assertSays(String text, String... words) {
    for (String said : words) {
      assertTrue(text.contains(said), said + "\n---\n" + text);
    }
  }

  @Test
  void aBatchAtItsLimitIsTooCloseToCallWithItsWaysOut() throws IOException {
    assertEquals(3, release("--sample", "B-1159"), err.toString());
    assertSays(out.toString(), "B-1159  too close to call", "with a chance of 86");
    assertSays(
        note("release-B-1159-2026-10-30.pdf"),
        "May batch B-1159 go?",
        "0.2345",
        "at most 0.240 (ASTM D6751)",
        "a fresh test after a recalibration",
        "an outside laboratory, which then decides alone",
        "readings/2026-10.csv line 7",
        "in-house production-control result",
        "JCGM 106:2012",
        "referee method or an accredited laboratory");
  }

  @Test
  void aBatchTestedWhileTheDriftWasOnIsHeld() throws IOException {
    assertEquals(3, release("--sample", "B-1165"), err.toString());
    assertSays(out.toString(), "B-1165  held", "reagent lot TG-L10 was past");
    assertSays(
        note("release-B-1165-2026-10-30.pdf"),
        "total-glycerin/PM-1/QC-TG-A/2026-10-23T07:44/beyond-action-limit");
  }

  /** On the day it was tested nothing was known of the drift. */
  @Test
  void anEarlierDaySpeaksByWhatWasKnownThen() {
    assertEquals(0, release("--sample", "B-1161", "--on", "2026-10-12"), err.toString());
    assertSays(out.toString(), "B-1161  within");
  }

  @Test
  void withoutASampleTheLatestDayIsJudged() throws IOException {
    assertEquals(3, release(), err.toString());
    assertSays(out.toString(), "B-1171  held");
    try (Stream<Path> written = Files.list(folder.resolve("out"))) {
      assertEquals(
          List.of("release-B-1171-2026-10-30.pdf"),
          written.map(f -> f.getFileName().toString()).toList());
    }
  }

  @Test
  void aYoungMethodCannotSay() {
    assertEquals(3, release("--sample", "OIL-305"), err.toString());
    assertSays(out.toString(), "OIL-305  cannot say", "it cannot be said: needs control");
  }

  @Test
  void anUnknownSampleIsNamedAndNothingIsWritten() {
    assertEquals(2, release("--sample", "B-1"));
    assertSays(err.toString(), "Sample B-1 has no result");
    assertFalse(Files.exists(folder.resolve("out")));
  }

  @Test
  void theSameFolderGivesTheSameBytes() throws IOException {
    release("--sample", "B-1159");
    Path file = folder.resolve("out").resolve("release-B-1159-2026-10-30.pdf");
    byte[] first = Files.readAllBytes(file);
    release("--sample", "B-1159");
    assertArrayEquals(first, Files.readAllBytes(file));
  }
}
