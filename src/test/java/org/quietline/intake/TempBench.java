package org.quietline.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.SetAside;

/** A bench folder made for one test. Everything in it is invented. */
final class TempBench {
  static final String SETTINGS =
      """
      name = "Invented bench"
      timezone = "Europe/Dublin"

      [[method]]
      key = "total-glycerin"
      title = "Total glycerin"
      unit = "% mass"
      decimals = 3
      replicates = 2
      replicate-kind = "re-read"
      calibration-valid-days = 30

      [[method]]
      key = "acid-number"
      unit = "mg KOH/g"
      decimals = 2
      replicates = 1

      [[instrument]]
      key = "PM-1"
      title = "Photometer 1"

      [[material]]
      key = "QC-TG-A"
      method = "total-glycerin"
      assigned-value = 0.180
      """;

  static final String HEADER =
      "taken_at,method,instrument,role,sample,reading_1,reading_2,reading_3,unit,calibration,"
          + "reagent_lot,operator,remark";

  private final Path folder;

  TempBench(Path folder) {
    this.folder = folder;
    put("bench.toml", SETTINGS);
  }

  Path folder() {
    return folder;
  }

  TempBench put(String name, String content) {
    return put(name, content.getBytes(StandardCharsets.UTF_8));
  }

  TempBench put(String name, byte[] content) {
    try {
      Path file = folder.resolve(name);
      Files.createDirectories(file.getParent());
      Files.write(file, content);
      return this;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Writes one sheet of results under the usual header. */
  TempBench rows(String... rows) {
    return put("readings/a.csv", HEADER + "\n" + String.join("\n", rows) + "\n");
  }

  Intake read() {
    return BenchFolder.read(folder);
  }

  /** What was set aside, without the raw rows. */
  List<SetAside> aside() {
    return withoutRaw(read().accounting());
  }

  static List<SetAside> withoutRaw(Accounting accounting) {
    return accounting.aside().stream()
        .map(a -> new SetAside(a.file(), a.line(), a.field(), a.text(), a.reason(), a.rows()))
        .toList();
  }

  List<SetAside> settingsAside() {
    return read().accounting().settingsAside();
  }
}
