package org.quietline.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFilesTest {
  @TempDir private Path folder;
  private Path pages;
  private Path json;

  @BeforeEach
  void writeOnce() throws IOException {
    pages = folder.resolve("pages.pdf");
    json = folder.resolve("findings.json");
    new OutputFiles().add(pages, out -> out.write('a')).add(json, out -> out.write('b')).write();
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void a_write_that_fails_half_way_leaves_all_old_files_whole() throws IOException {
    IOException full =
        assertThrows(
            IOException.class,
            () ->
                new OutputFiles()
                    .add(pages, out -> out.write('c'))
                    .add(
                        json,
                        out -> {
                          out.write("ne".getBytes(StandardCharsets.UTF_8));
                          throw new IOException("No space left on device");
                        })
                    .write());
    assertEquals(json + ": could not be written, No space left on device", full.getMessage());
    assertEquals("a", Files.readString(pages));
    assertEquals("b", Files.readString(json));
    assertEquals(List.of("findings.json", "pages.pdf"), names());
  }

  @Test
  void a_new_write_replaces_the_old_files() throws IOException {
    new OutputFiles().add(pages, out -> out.write('c')).add(json, out -> out.write('d')).write();
    assertEquals("c", Files.readString(pages));
    assertEquals("d", Files.readString(json));
    assertEquals(List.of("findings.json", "pages.pdf"), names());
  }

  @Test
  void a_folder_in_the_place_of_a_file_is_said_before_anything_is_put_there() throws IOException {
    Path taken = Files.createDirectory(folder.resolve("taken"));
    IOException no =
        assertThrows(
            IOException.class,
            () ->
                new OutputFiles()
                    .add(pages, out -> out.write('c'))
                    .add(taken, out -> out.write('d'))
                    .write());
    assertEquals(taken + ": could not be written, there is a folder of that name", no.getMessage());
    assertEquals("a", Files.readString(pages));
  }

  @Test
  void a_root_is_no_file_name() {
    Path root = folder.getRoot();
    assertEquals(
        root + " is no file name",
        assertThrows(
                IllegalArgumentException.class,
                () -> new OutputFiles().add(root, out -> out.write('x')))
            .getMessage());
  }
}
