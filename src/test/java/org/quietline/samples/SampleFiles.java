package org.quietline.samples;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The files of a sample folder, by their name relative to it, in UTF-8. */
final class SampleFiles {
  private SampleFiles() {}

  static void write(Path folder, Map<String, String> files) throws IOException {
    for (Map.Entry<String, String> file : files.entrySet()) {
      Path path = folder.resolve(file.getKey());
      Path parent = path.getParent();
      if (parent != null) {
        Files.createDirectories(parent);
      }
      Files.write(path, file.getValue().getBytes(StandardCharsets.UTF_8));
    }
  }

  /** Every file below a folder, ABOUT.md left out because a person wrote it. */
  static SortedMap<String, String> read(Path folder) throws IOException {
    SortedMap<String, String> files = new TreeMap<>();
    List<Path> paths;
    try (Stream<Path> walk = Files.walk(folder)) {
      paths = walk.filter(Files::isRegularFile).toList();
    }
    for (Path path : paths) {
      String name = folder.relativize(path).toString().replace('\\', '/');
      if (!name.equals("ABOUT.md")) {
        files.put(name, new String(Files.readAllBytes(path), StandardCharsets.UTF_8));
      }
    }
    return files;
  }
}
