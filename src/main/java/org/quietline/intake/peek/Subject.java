package org.quietline.intake.peek;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.quietline.intake.TrialReading;

/**
 * The file that is looked at, and the bench it belongs to.
 *
 * @param file where it is
 * @param bench the folder of the bench, if there is one
 * @param name what the file is called relative to the bench folder
 */
record Subject(Path file, Optional<Path> bench, String name) {
  private static final String SETTINGS = "bench.toml";

  /** Without a bench given, the nearest folder above the file that holds a bench.toml is it. */
  static Subject of(Path file, Optional<Path> given) {
    Optional<Path> bench = given.or(() -> above(file));
    String last = String.valueOf(file.getFileName());
    String inReadings = TrialReading.isOfBench(last) ? last : "readings/" + last;
    return new Subject(
        file, bench, bench.flatMap(folder -> within(folder, file)).orElse(inReadings));
  }

  private static Optional<Path> above(Path file) {
    for (Path p = file.toAbsolutePath().normalize().getParent(); p != null; p = p.getParent()) {
      if (Files.isRegularFile(p.resolve(SETTINGS))) {
        return Optional.of(p);
      }
    }
    return Optional.empty();
  }

  private static Optional<String> within(Path folder, Path file) {
    Path top = folder.toAbsolutePath().normalize();
    Path path = file.toAbsolutePath().normalize();
    return path.startsWith(top)
        ? Optional.of(top.relativize(path).toString().replace('\\', '/'))
        : Optional.empty();
  }

  /** The name as a pattern that matches it and no other file. */
  String match() {
    return name.replaceAll("([*?\\[\\]{}\\\\])", "\\\\$1");
  }

  /** A pattern for later files of the same kind, where the name holds digits. */
  Optional<String> matchOfKind() {
    int stroke = match().lastIndexOf('/') + 1;
    String last = match().substring(stroke);
    String kind = last.replaceAll("(?<=[-_. ])\\d+([-_.]?\\d+)*", "*");
    boolean telling = kind.replaceAll("[*.]|csv|txt", "").length() > 2;
    return kind.equals(last) || !telling
        ? Optional.empty()
        : Optional.of(match().substring(0, stroke) + kind);
  }
}
