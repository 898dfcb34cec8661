package org.quietline.intake;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import org.quietline.bench.Accounting;
import org.quietline.bench.Action;
import org.quietline.bench.Bench;
import org.quietline.bench.Calibration;
import org.quietline.bench.Conflict;
import org.quietline.bench.OutsideResult;
import org.quietline.bench.ReagentLot;
import org.quietline.bench.Result;
import org.quietline.bench.Temperature;

/** Reads a bench folder: {@code bench.toml}, the sheets beside it, and those in its readings. */
public final class BenchFolder {
  private final FolderListing listing;
  private final SettingsReader.Found found;
  private final SheetReading reading;
  private final Tally tally;

  private BenchFolder(
      FolderListing listing, SettingsReader.Found found, SheetReading reading, Tally tally) {
    this.listing = listing;
    this.found = found;
    this.reading = reading;
    this.tally = tally;
  }

  /**
   * Reads a bench folder.
   *
   * @param folder the folder that holds {@code bench.toml}
   * @return the bench and what became of every row
   * @throws IntakeException when the folder cannot be used at all: it is none, or its {@code
   *     bench.toml} is missing, cannot be read, or lacks a name, a time zone or a usable method
   */
  public static Intake read(Path folder) {
    return read(folder, (bytesRead, bytesInAll) -> {});
  }

  /**
   * Reads a bench folder and tells how far it has come.
   *
   * @param folder the folder that holds {@code bench.toml}
   * @param progress hears of the bytes read, on the calling thread
   * @return the bench and what became of every row
   * @throws IntakeException when the folder cannot be used at all: it is none, or its {@code
   *     bench.toml} is missing, cannot be read, or lacks a name, a time zone or a usable method
   */
  public static Intake read(Path folder, Progress progress) {
    if (!Files.isDirectory(folder)) {
      throw new IntakeException(
          folder,
          (Files.exists(folder) ? folder + " is not a folder" : folder + " does not exist")
              + ". Give the folder that holds bench.toml and run again.");
    }
    SettingsFile file = SettingsFile.read(folder);
    SettingsReader.Found found = SettingsReader.read(file);
    Tally tally = new Tally();
    FolderListing listing = FolderListing.of(folder, tally, found.sheets());
    SheetReading reading =
        new SheetReading(tally, found.sheets(), counting(progress, listing.bytes()));
    Bench bench = new BenchFolder(listing, found, reading, tally).read();
    Accounting accounting = tally.accounting(found.aside());
    return new Intake(
        bench, accounting, file.fingerprint(), Fingerprint.shortOf(accounting.files()));
  }

  private static LongConsumer counting(Progress progress, long bytesInAll) {
    long[] bytesRead = {0};
    return more -> {
      bytesRead[0] += more;
      progress.read(bytesRead[0], Math.max(bytesInAll, bytesRead[0]));
    };
  }

  private Bench read() {
    CalibrationRows calibrationRows = new CalibrationRows(found.methods(), found.instruments());
    Gathered<Calibration> calibrations = new Gathered<>(calibrationRows);
    boolean haveCalibrations = readSheet("calibrations.csv", calibrations);
    Gathered<ReagentLot> reagents = new Gathered<>(new ReagentRows(found.methods()));
    readSheet("reagents.csv", reagents);
    ResultRows resultRows =
        new ResultRows(found, haveCalibrations ? Optional.of(calibrationRows) : Optional.empty());
    Gathered<Result> results = new Gathered<>(resultRows);
    for (SheetFile sheet : listing.readings()) {
      reading.read(sheet, results);
    }
    tally.converted(resultRows.conversions());
    tally.numbersAside(resultRows.numbersAside());
    Gathered<Action> actions = new Gathered<>(new ActionRows(found));
    readSheet("actions.csv", actions);
    Gathered<OutsideResult> outside = new Gathered<>(new OutsideRows(found.methods()));
    readSheet("outside.csv", outside);
    Gathered<Temperature> temperatures = new Gathered<>(new ColdChainRows());
    readSheet("cold-chain.csv", temperatures);
    return new Bench(
        found.settings(),
        results.taken(),
        calibrations.taken(),
        reagents.taken(),
        actions.taken(),
        outside.taken(),
        conflicts(results),
        temperatures.taken());
  }

  private static List<Conflict> conflicts(Gathered<Result> results) {
    return results.against().stream()
        .map(
            a ->
                new Conflict(
                    a.first(),
                    a.other(),
                    a.part() + " " + shown(a.firstText()) + " against " + shown(a.text())))
        .toList();
  }

  private static String shown(String text) {
    return text.isEmpty() ? "empty" : Excerpt.of(text);
  }

  private boolean readSheet(String name, Gathered<?> into) {
    Optional<SheetFile> sheet = listing.sheet(name);
    return sheet.isPresent() && reading.read(sheet.get(), into);
  }
}
