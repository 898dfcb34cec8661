package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.SetAside;

/**
 * Puts any bytes into a bench folder as one of its sheets and reads it. Whatever the bytes, the
 * outcome is one of two: an intake whose counts add up and whose remarks are sentences, or, where
 * the bytes are the settings, a sentence that says why the folder cannot be used.
 */
final class HostileFile {
  private static final List<String> PLACES =
      List.of(
          "readings/a.csv",
          "readings/semicolon.csv",
          "readings/long.csv",
          "readings/pad.csv",
          "calibrations.csv",
          "reagents.csv",
          "actions.csv",
          "outside.csv",
          "bench.toml");

  private static final String SHEETS =
      """

      [[sheet]]
      match = "readings/semicolon.csv"
      delimiter = ";"
      decimal = ","
      encoding = "windows-1252"
      time-format = "dd.MM.yyyy HH:mm"
      columns = { taken_at = ["Day", "Time"], readings = ["R1", "R2"] }
      ignore = ["Mean"]
      defaults = { method = "total-glycerin", instrument = "PM-1", role = "product" }

      [[sheet]]
      match = "readings/long.csv"
      delimiter = "\\t"
      skip-lines = 1
      layout = "row-per-reading"
      columns = { result = "Run", readings = "Value", reading_number = "No" }
      values = { readings = { "over" = ">2.5" } }
      defaults = { instrument = "PM-1", role = "product" }

      [[sheet]]
      match = "readings/pad.csv"
      header = false
      decimal = "either"
      time-format = ["dd/MM/yyyy HH:mm", "yyyy-MM-dd HH:mm", "d MMM yyyy HH:mm"]
      columns = { taken_at = 1, sample = 2, readings = [3, 4], unit = 5 }
      defaults = { method = "total-glycerin", instrument = "PM-1", role = "product" }
      """;

  private final Path folder;

  HostileFile(Path folder) {
    this.folder = folder;
    TempBench bench = new TempBench(folder);
    bench.put("bench.toml", TempBench.SETTINGS + SHEETS);
    bench.put("readings/none", "");
    delete("readings/none");
  }

  /** How many places there are to put bytes into. */
  static int places() {
    return PLACES.size();
  }

  /** The place a sheet of the corpus belongs to. */
  static int placeOf(String sheetOfCorpus) {
    String kind = sheetOfCorpus.substring(0, sheetOfCorpus.indexOf('/'));
    return kind.equals("readings") ? 0 : PLACES.indexOf(kind + ".csv");
  }

  /** Reads bytes at a place, and checks the outcome; returns how many rows were counted. */
  long read(int place, byte[] bytes) {
    String name = PLACES.get(place);
    byte[] before = name.equals("bench.toml") ? contentOf(name) : new byte[0];
    put(name, bytes);
    try {
      return check(BenchFolder.read(folder).accounting());
    } catch (IntakeException e) {
      assertEquals("bench.toml", name, e.getMessage());
      assertSentence(String.valueOf(e.getMessage()));
      return 0;
    } finally {
      if (before.length > 0) {
        put(name, before);
      } else {
        delete(name);
      }
    }
  }

  private static long check(Accounting accounting) {
    long read = accounting.files().stream().mapToLong(Accounting.FileRead::rows).sum();
    assertEquals(
        read,
        accounting.takenIn()
            + accounting.metBefore()
            + accounting.rowsAside()
            + accounting.rowsInConflict());
    accounting.aside().forEach(HostileFile::check);
    accounting.settingsAside().forEach(HostileFile::check);
    accounting.conflicts().forEach(conflict -> assertSentence(conflict.toString()));
    return accounting.rows();
  }

  private static void check(SetAside aside) {
    assertSentence(aside.reason());
    assertTrue(aside.line() >= 1, aside::toString);
    assertFalse(aside.field().isEmpty(), aside::toString);
    assertTrue(aside.text().length() <= Excerpt.LENGTH, aside::toString);
  }

  private static void assertSentence(String text) {
    assertTrue(text.endsWith(".") || text.endsWith("?"), text);
    assertTrue(text.length() < 3000, text);
    assertTrue(text.chars().noneMatch(c -> c < ' '), text);
  }

  private void put(String name, byte[] bytes) {
    try {
      Files.write(folder.resolve(name), bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private byte[] contentOf(String name) {
    try {
      return Files.readAllBytes(folder.resolve(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void delete(String name) {
    try {
      Files.deleteIfExists(folder.resolve(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
