package org.quietline.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program as it is handed over: the jar with its libraries, and the zip with its launcher. */
class PackagedProgramIT {
  private static final Path TIDEWICK = Path.of("sample-runs", "tidewick").toAbsolutePath();

  @TempDir private Path elsewhere;

  private record Ended(int status, String screen) {}

  private Ended run(List<String> command) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(command).directory(elsewhere.toFile()).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String screen = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Ended(process.waitFor(), screen);
  }

  private static String java() {
    return Path.of(System.getProperty("java.home"), "bin", "java").toString();
  }

  @Test
  void the_jar_runs_from_anywhere_and_writes_the_same_bytes_twice() throws Exception {
    String jar = System.getProperty("quietline.jar");
    for (String out : List.of("first", "second")) {
      Ended ended = run(List.of(java(), "-jar", jar, "review", TIDEWICK.toString(), "--out", out));
      assertEquals(3, ended.status(), ended.screen());
    }
    for (String file : List.of("review-2026-10.pdf", "findings.json")) {
      assertEquals(
          -1,
          Files.mismatch(
              elsewhere.resolve("first").resolve(file), elsewhere.resolve("second").resolve(file)),
          file);
    }
  }

  @Test
  void the_jar_carries_what_a_new_bench_is_made_of() throws Exception {
    String jar = System.getProperty("quietline.jar");
    Ended begun = run(List.of(java(), "-jar", jar, "begin", "bench"));
    assertEquals(0, begun.status(), begun.screen());
    Ended reviewed = run(List.of(java(), "-jar", jar, "review", "bench"));
    assertEquals(3, reviewed.status(), reviewed.screen());
    assertTrue(reviewed.screen().startsWith("bench: no result is in yet"), reviewed.screen());
  }

  @Test
  void the_zip_holds_a_launcher_that_makes_its_archive_of_classes_once() throws Exception {
    unzip(Path.of(System.getProperty("quietline.zip")));
    Path home = elsewhere.resolve("quietline-" + Version.number());
    assertTrue(Files.isRegularFile(home.resolve("bin/quietline.bat")));
    assertTrue(Files.isRegularFile(home.resolve("licences/Lato-OFL-1.1.txt")));
    Path launcher = home.resolve("bin/quietline");
    List<String> review =
        List.of("/bin/sh", launcher.toString(), "review", TIDEWICK.toString(), "--out", "out");
    Ended first = run(review);
    assertEquals(3, first.status(), first.screen());
    assertTrue(Files.isRegularFile(home.resolve("lib/quietline.jsa")), "the archive is kept");
    Ended second = run(review);
    assertEquals(first, second);
    assertEquals(
        new Ended(0, "quietline " + Version.number() + "\n"),
        run(List.of("/bin/sh", launcher.toString(), "--version")));
  }

  private void unzip(Path zip) throws IOException {
    List<String> seen = new ArrayList<>();
    try (InputStream in = Files.newInputStream(zip);
        ZipInputStream entries = new ZipInputStream(in)) {
      for (ZipEntry entry = entries.getNextEntry(); entry != null; entry = entries.getNextEntry()) {
        Path target = elsewhere.resolve(entry.getName()).normalize();
        assertTrue(target.startsWith(elsewhere), entry.getName());
        if (entry.isDirectory()) {
          Files.createDirectories(target);
        } else {
          Files.createDirectories(target.getParent());
          Files.copy(entries, target);
          seen.add(entry.getName());
        }
      }
    }
    assertTrue(seen.size() > 10, seen.toString());
  }
}
