package org.quietline.intake;

import java.nio.file.FileSystems;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** The {@code [[sheet]]} entries, which describe files of a layout of their own. */
final class OwnSheets {
  private static final Map<String, Layout> TOP =
      Map.of(
          "calibrations.csv", CalibrationRows.LAYOUT,
          "reagents.csv", ReagentRows.LAYOUT,
          "actions.csv", ActionRows.LAYOUT,
          "outside.csv", OutsideRows.LAYOUT,
          "cold-chain.csv", ColdChainRows.LAYOUT);

  private final List<Sheet> sheets = new ArrayList<>();

  private OwnSheets() {}

  /**
   * One entry.
   *
   * @param glob the pattern of file names
   * @param matcher the pattern, made ready
   * @param line where the entry begins
   * @param form what it describes; empty where that could not be used
   */
  private record Sheet(String glob, PathMatcher matcher, int line, Optional<SheetForm> form) {
    /** An exact name is narrower than any pattern, and of patterns the one with more letters. */
    int narrowness() {
      return hasWildcard()
          ? (int) glob.chars().filter(c -> "*?[]{}".indexOf(c) < 0).count()
          : Integer.MAX_VALUE;
    }

    private boolean hasWildcard() {
      return glob.chars().anyMatch(c -> "*?[{".indexOf(c) >= 0);
    }
  }

  static OwnSheets read(List<Entry> entries, SettingsNotes notes) {
    OwnSheets own = new OwnSheets();
    for (Entry entry : entries) {
      try {
        String glob = entry.needText("match");
        PathMatcher matcher = matcher(entry, glob);
        own.sheets.add(new Sheet(glob, matcher, entry.line(), form(entry, notes, glob, matcher)));
      } catch (Unusable e) {
        notes.add(
            entry.pathOf(e.field()),
            e.field(),
            e.text(),
            e.sentence() + " The sheet was set aside.");
      }
    }
    return own;
  }

  private static PathMatcher matcher(Entry entry, String glob) throws Unusable {
    try {
      return FileSystems.getDefault().getPathMatcher("glob:" + glob);
    } catch (IllegalArgumentException e) {
      throw entry.wrong("match", "it must be a pattern such as readings/stick-*.csv");
    }
  }

  private static Optional<SheetForm> form(
      Entry entry, SettingsNotes notes, String glob, PathMatcher matcher) {
    List<Layout> layouts = new ArrayList<>();
    TOP.forEach(
        (name, layout) -> {
          if (matcher.matches(Path.of(name))) {
            layouts.add(layout);
          }
        });
    Set<String> fields = new TreeSet<>();
    if (layouts.isEmpty() || glob.contains("/") || glob.contains("**")) {
      layouts.add(ResultRows.LAYOUT);
      fields.addAll(List.of(SheetForm.READINGS, "result", "reading_number"));
    }
    layouts.forEach(layout -> fields.addAll(layout.names()));
    return new SheetEntry(
            entry,
            notes,
            fields,
            name -> layouts.stream().anyMatch(layout -> layout.pattern(name).isPresent()))
        .read();
  }

  /** Whether an entry matches a file. */
  boolean matches(String file) {
    return sheets.stream().anyMatch(sheet -> sheet.matcher.matches(Path.of(file)));
  }

  /**
   * The form of a file: that of the narrowest entry that matches it, else the plain sheet's.
   *
   * @throws Unusable when the entry could not be used, or two are equally narrow
   */
  SheetForm of(String file) throws Unusable {
    Path path = Path.of(file);
    List<Sheet> matching = sheets.stream().filter(sheet -> sheet.matcher.matches(path)).toList();
    if (matching.isEmpty()) {
      return SheetForm.PLAIN;
    }
    int narrowest = matching.stream().mapToInt(Sheet::narrowness).max().getAsInt();
    List<Sheet> best = matching.stream().filter(s -> s.narrowness() == narrowest).toList();
    if (best.size() > 1) {
      throw new Unusable(
          "sheet",
          best.get(0).glob,
          "The [[sheet]] entries in bench.toml, lines "
              + best.get(0).line
              + " and "
              + best.get(1).line
              + ", both describe this file; let only one of them match it.");
    }
    Sheet sheet = best.get(0);
    return sheet.form.orElseThrow(
        () ->
            new Unusable(
                "sheet",
                sheet.glob,
                "The [[sheet]] in bench.toml, line "
                    + sheet.line
                    + ", describes this file and was itself set aside; mend it."));
  }
}
