package org.quietline.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.Findings;
import org.quietline.assess.Period;
import org.quietline.assess.Review;
import org.quietline.intake.BenchFolder;
import org.quietline.intake.Intake;

/** An invented bench written as files, taken in and reviewed. */
final class WrittenBench {
  static final String HEADER =
      "taken_at,method,instrument,role,sample,reading_1,reading_2,unit,calibration,reagent_lot,"
          + "operator,sequence";

  private static final String SETTINGS =
      """
      name = "Invented bench"
      timezone = "Europe/Dublin"

      [[method]]
      key = "total"
      unit = "% mass"
      decimals = 3
      replicates = 2
      replicate-kind = "re-read"
      calibration-valid-days = 30
      shelf-life-days = { refrigerated = 20 }

      [[method]]
      key = "free"
      unit = "mg/kg"
      decimals = 0
      replicates = 1
      part-of = "total"

      [[instrument]]
      key = "PM-1"

      [[instrument]]
      key = "PM-2"

      [[material]]
      key = "QC"
      method = "total"
      assigned-value = 0.180
      """;

  private final Path folder;

  WrittenBench(Path folder) {
    this.folder = folder;
    put("bench.toml", SETTINGS);
  }

  WrittenBench put(String name, String content) {
    try {
      Path file = folder.resolve(name);
      Files.createDirectories(file.getParent());
      Files.writeString(file, content);
      return this;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  WrittenBench settings(String more) {
    return put("bench.toml", SETTINGS + "\n" + more);
  }

  WrittenBench sheet(String name, String... rows) {
    return put(name, HEADER + "\n" + String.join("\n", rows) + "\n");
  }

  WrittenBench rows(String... rows) {
    return sheet("readings/a.csv", rows);
  }

  WrittenBench calibrations(String... rows) {
    return put(
        "calibrations.csv",
        "calibration,method,instrument,calibrated_at\n" + String.join("\n", rows) + "\n");
  }

  WrittenBench lots(String... rows) {
    return put(
        "reagents.csv",
        "reagent_lot,method,received_on,opened_on,expires_on,storage\n"
            + String.join("\n", rows)
            + "\n");
  }

  WrittenBench actions(String... rows) {
    return put(
        "actions.csv",
        "recorded_at,signal,cause,use_row,decided_by\n" + String.join("\n", rows) + "\n");
  }

  Intake read() {
    return BenchFolder.read(folder);
  }

  Review review() {
    Intake intake = read();
    return new Review(
        intake.bench(),
        intake.accounting(),
        intake.settingsFingerprint(),
        intake.dataFingerprint());
  }

  /** The findings of the latest month. */
  Findings findings() {
    Review review = review();
    return review.of(Period.of(review.latestMonth().orElseThrow()), Optional.empty());
  }

  Findings findings(String month) {
    return review().of(Period.of(YearMonth.parse(month)), Optional.empty());
  }

  /** Every contradiction: its id, whether it is open, and its sentence. */
  List<String> told() {
    return told(findings());
  }

  static List<String> told(Findings findings) {
    return findings.contradictions().stream()
        .map(
            c ->
                c.id()
                    + (c.open() ? " open" : " answered")
                    + (c.asked().inPeriod() ? ": " : ", not of the period: ")
                    + ContradictionWords.sentence(c))
        .toList();
  }
}
