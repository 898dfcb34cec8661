package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that change while they are read, and things in the folder that are no files. */
class FilesUnderWayTest {
  private static final String ROW = "2026-10-14T09:12,total-glycerin,PM-1,product,B-1,0.180,,,,,,,";
  private static final String CHANGED =
      "readings/a.csv, line 1, file: The file changed while it was read, so what was read may be"
          + " neither its old content nor its new one; run again.";

  @TempDir private Path folder;
  private TempBench bench;

  @BeforeEach
  void makeBench() {
    bench = new TempBench(folder);
    bench.rows(ROW);
  }

  private static List<String> said(Intake intake) {
    return intake.accounting().aside().stream().map(Object::toString).toList();
  }

  /** Does something to the file as soon as its first bytes were read. */
  private Intake readWhile(Change change) {
    boolean[] done = {false};
    return BenchFolder.read(
        folder,
        (read, inAll) -> {
          if (!done[0]) {
            done[0] = true;
            try {
              change.make(folder.resolve("readings/a.csv"));
            } catch (IOException e) {
              throw new UncheckedIOException(e);
            }
          }
        });
  }

  private interface Change {
    void make(Path file) throws IOException;
  }

  @Test
  void aFileThatGrowsWhileItIsReadIsToldAndItsRowsStay() {
    Intake intake =
        readWhile(file -> Files.writeString(file, ROW + "\n", StandardOpenOption.APPEND));
    assertEquals(List.of(CHANGED), said(intake));
    assertEquals(List.of("readings/a.csv"), intake.accounting().changedFiles());
    assertTrue(intake.accounting().takenIn() >= 1);
  }

  @Test
  void aFileThatIsReplacedWhileItIsReadIsTold() {
    Intake intake =
        readWhile(
            file -> {
              byte[] bytes = Files.readAllBytes(file);
              Files.delete(file);
              Files.write(file, bytes);
            });
    assertEquals(List.of(CHANGED), said(intake));
  }

  @Test
  void aFileThatIsGoneAfterItWasReadIsTold() {
    assertEquals(List.of(CHANGED), said(readWhile(Files::delete)));
  }

  @Test
  void aFileThatStaysIsNotTold() {
    Intake intake = readWhile(file -> {});
    assertEquals(List.of(), said(intake));
    assertEquals(List.of(), intake.accounting().changedFiles());
  }

  @Test
  void aLinkThatLeadsToItselfIsToldAndDoesNotHang() throws IOException {
    Files.createSymbolicLink(folder.resolve("readings/loop.csv"), Path.of("loop.csv"));
    Intake intake = assertTimeoutPreemptively(Duration.ofSeconds(20), bench::read);
    assertEquals(
        List.of("readings/loop.csv, line 1, file: It is not a file; nothing was read."),
        said(intake));
    assertEquals(1, intake.accounting().takenIn());
  }

  @Test
  void aPipeIsToldAndDoesNotHang() throws IOException, InterruptedException {
    Path pipe = folder.resolve("readings/pipe.csv");
    Process make = new ProcessBuilder("mkfifo", pipe.toString()).start();
    assumeTrue(make.waitFor() == 0);
    Intake intake = assertTimeoutPreemptively(Duration.ofSeconds(20), bench::read);
    assertEquals(
        List.of("readings/pipe.csv, line 1, file: It is not a file; nothing was read."),
        said(intake));
  }

  @Test
  void readingsThatLeadNowhereAreTold() throws IOException {
    Files.delete(folder.resolve("readings/a.csv"));
    Files.delete(folder.resolve("readings"));
    Files.createSymbolicLink(folder.resolve("readings"), Path.of("nowhere"));
    assertEquals(
        List.of("readings, line 1, file: readings is not a folder; nothing in it was read."),
        said(bench.read()));
  }
}
