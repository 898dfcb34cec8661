package org.quietline.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** A folder that is made with its files, or not at all. */
final class NewFolder {
  private final Path folder;

  NewFolder(Path folder) {
    this.folder = folder;
  }

  /** Why nothing may be made there, as a sentence; hidden files do no harm. */
  Optional<String> whyNot() throws IOException {
    if (Files.exists(folder.resolve("bench.toml"))) {
      return Optional.of(
          folder + " is a bench already: it holds a bench.toml. Give another folder.");
    }
    if (!Files.isDirectory(folder)) {
      return Files.exists(folder)
          ? Optional.of(folder + " is a file. Give a folder, or the name of one to make.")
          : Optional.empty();
    }
    try (Stream<Path> within = Files.list(folder)) {
      return within
          .map(path -> String.valueOf(path.getFileName()))
          .filter(own -> !own.startsWith("."))
          .sorted()
          .findFirst()
          .map(
              some ->
                  folder + " is not empty: it holds " + some + ". Give a new folder, or empty it.");
    }
  }

  void write(Map<String, String> files) throws IOException {
    List<Path> made = foldersToMake();
    OutputFiles output = new OutputFiles();
    files.forEach(
        (file, text) ->
            output.add(
                folder.resolve(file), out -> out.write(text.getBytes(StandardCharsets.UTF_8))));
    try {
      output.write();
    } catch (IOException e) {
      takeBack(files.keySet(), made, e);
      throw e;
    }
  }

  /** The folder was empty or missing before, so that everything of these names is from here. */
  private void takeBack(Set<String> files, List<Path> made, IOException cause) {
    Stream.concat(files.stream().map(folder::resolve), made.stream())
        .forEach(
            path -> {
              try {
                Files.deleteIfExists(path);
              } catch (IOException e) {
                cause.addSuppressed(e);
              }
            });
  }

  /** The folders that are not there yet, the innermost first. */
  private List<Path> foldersToMake() {
    List<Path> missing = new ArrayList<>();
    for (Path path = folder.resolve("readings").toAbsolutePath().normalize();
        path != null && !Files.exists(path);
        path = path.getParent()) {
      missing.add(path);
    }
    return missing;
  }
}
