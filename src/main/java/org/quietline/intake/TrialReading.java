package org.quietline.intake;

import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.bench.Calibration;
import org.quietline.bench.Result;
import org.quietline.bench.Settings;

/**
 * Reads one file as a review would, without the rest of the bench: with the {@code [[sheet]]}
 * entries of the bench, or with one that is tried out. Nothing is kept.
 */
public final class TrialReading {
  private static final String CALIBRATIONS = "calibrations.csv";

  private final Optional<Path> folder;
  private final SettingsFile file;
  private final Settings settings;

  private TrialReading(Optional<Path> folder, SettingsFile file) {
    this.folder = folder;
    this.file = file;
    this.settings = SettingsReader.read(file).settings();
  }

  /**
   * A trial on a bench.
   *
   * @param folder the folder that holds {@code bench.toml}
   * @return the trial
   * @throws IntakeException when {@code bench.toml} cannot be used
   */
  public static TrialReading in(Path folder) {
    return new TrialReading(Optional.of(folder), SettingsFile.read(folder));
  }

  /**
   * A trial on a bench that is only assumed.
   *
   * @param settings what its {@code bench.toml} would say
   * @return the trial
   * @throws IntakeException when the settings cannot be used
   */
  public static TrialReading assuming(String settings) {
    return new TrialReading(Optional.empty(), SettingsFile.ofText(settings));
  }

  /**
   * The settings of the bench.
   *
   * @return what could be used of them
   */
  public Settings settings() {
    return settings;
  }

  /**
   * Whether a name is that of one of the four sheets beside {@code bench.toml}.
   *
   * @param name a file's name relative to the bench folder
   * @return true for calibrations, reagents, actions and outside results
   */
  public static boolean isOfBench(String name) {
    return FolderListing.SHEETS.stream().anyMatch(name::equalsIgnoreCase);
  }

  /**
   * What a file gives.
   *
   * @param results the results taken in, in the order of the file
   * @param accounting what became of its rows
   * @param sheetAside what of the sheet that was tried could not be used
   */
  public record Trial(List<Result> results, Accounting accounting, List<SetAside> sheetAside) {
    /** Copies the lists. */
    public Trial {
      results = List.copyOf(results);
      sheetAside = List.copyOf(sheetAside);
    }
  }

  /**
   * A column of a sheet.
   *
   * @param name its name in the header; empty where it is named by its number
   * @param number its number, counted from 1; 0 where it is named by its name
   */
  public record NamedColumn(String name, int number) {}

  /**
   * The {@code [[sheet]]} that describes a file.
   *
   * @param place where it stands
   * @param delimiter what stands between two columns
   * @param encoding the encoding, where one is named
   * @param columns the columns of each field that it names
   */
  public record Described(
      String place,
      char delimiter,
      Optional<String> encoding,
      Map<String, List<NamedColumn>> columns) {}

  /**
   * The sheet of the bench that describes a file.
   *
   * @param name the file's name relative to the bench folder
   * @return empty when none does, or none that can be used
   */
  public Optional<Described> sheetFor(String name) {
    return described(file, name);
  }

  /**
   * A sheet that is tried out, as it describes a file.
   *
   * @param name the file's name relative to the bench folder
   * @param sheet the {@code [[sheet]]} as TOML
   * @return empty when it does not describe the file, or cannot be used
   * @throws IntakeException when the text is no TOML
   */
  public Optional<Described> sheetFor(String name, String sheet) {
    return described(file.withSheets(sheet), name);
  }

  private static Optional<Described> described(SettingsFile with, String name) {
    try {
      SheetForm form = SettingsReader.read(with).sheets().of(name);
      return form.described().map(place -> described(form, place));
    } catch (Unusable e) {
      return Optional.empty();
    }
  }

  private static Described described(SheetForm form, String place) {
    Map<String, List<NamedColumn>> columns = new LinkedHashMap<>();
    form.columns()
        .forEach(
            (field, of) ->
                columns.put(
                    field, of.stream().map(c -> new NamedColumn(c.name(), c.number())).toList()));
    return new Described(place, form.delimiter(), form.encoding().map(Charset::name), columns);
  }

  /**
   * Reads a file with the sheets of the bench.
   *
   * @param path where it is
   * @param name its name relative to the bench folder
   * @return what it gives
   */
  public Trial read(Path path, String name) {
    return read(file, path, name);
  }

  /**
   * Reads a file with a sheet that is tried out, in place of those of the bench.
   *
   * @param path where it is
   * @param name its name relative to the bench folder
   * @param sheet the {@code [[sheet]]} as TOML
   * @return what it gives
   * @throws IntakeException when the text is no TOML
   */
  public Trial read(Path path, String name, String sheet) {
    return read(file.withSheets(sheet), path, name);
  }

  private Trial read(SettingsFile with, Path path, String name) {
    SettingsReader.Found found = SettingsReader.read(with);
    Tally tally = new Tally();
    SheetReading reading = new SheetReading(tally, found.sheets(), bytes -> {});
    SheetFile sheet = new SheetFile(name, path, 0);
    List<Result> results = List.of();
    if (isOfBench(name)) {
      reading.read(sheet, new Gathered<>(kindOf(name, found)));
    } else {
      Gathered<Result> gathered = new Gathered<>(new ResultRows(found, calibrations()));
      reading.read(sheet, gathered);
      results = gathered.taken();
    }
    return new Trial(results, tally.accounting(List.of()), sheetAside(found.aside()));
  }

  private static RowKind<?> kindOf(String name, SettingsReader.Found found) {
    return switch (name.toLowerCase(Locale.ROOT)) {
      case "calibrations.csv" -> new CalibrationRows(found.methods(), found.instruments());
      case "reagents.csv" -> new ReagentRows(found.methods());
      case "actions.csv" -> new ActionRows(found);
      case "cold-chain.csv" -> new ColdChainRows();
      default -> new OutsideRows(found.methods());
    };
  }

  /** What is set aside only because of the sheet that is tried. */
  private List<SetAside> sheetAside(List<SetAside> all) {
    List<String> without =
        SettingsReader.read(file.withSheets("")).aside().stream().map(SetAside::reason).toList();
    List<SetAside> sheet = new ArrayList<>(all);
    sheet.removeIf(aside -> without.contains(aside.reason()));
    return sheet;
  }

  private Optional<CalibrationRows> calibrations() {
    if (folder.isEmpty()) {
      return Optional.empty();
    }
    SettingsReader.Found found = SettingsReader.read(file);
    Tally unheard = new Tally();
    CalibrationRows rows = new CalibrationRows(found.methods(), found.instruments());
    SheetReading reading = new SheetReading(unheard, found.sheets(), bytes -> {});
    return FolderListing.of(folder.get(), unheard, found.sheets())
        .sheet(CALIBRATIONS)
        .filter(sheet -> reading.read(sheet, new Gathered<Calibration>(rows)))
        .map(sheet -> rows);
  }
}
