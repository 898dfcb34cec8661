package org.quietline.intake;

import java.nio.file.FileSystems;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The {@code [[sheet]]} entries, which describe files of a layout of their own. This version reads
 * only the plain sheet, so it reports each entry and sets the files it matches aside, unread.
 */
final class OwnSheets {
  private final List<Sheet> sheets = new ArrayList<>();

  private OwnSheets() {}

  private record Sheet(String glob, PathMatcher matcher, int line) {}

  static OwnSheets read(List<Entry> entries, SettingsNotes notes) {
    OwnSheets own = new OwnSheets();
    for (Entry entry : entries) {
      try {
        String glob = entry.needText("match");
        own.sheets.add(new Sheet(glob, matcher(entry, glob), entry.line()));
        notes.add(
            entry.path(),
            "sheet",
            glob,
            "This version reads only the plain sheet, and not the layout described here for "
                + Excerpt.quoted(glob)
                + "; save those files as plain sheets and take the entry out. The sheet was set"
                + " aside, and the files it matches.");
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

  /** Why a file is not read as a plain sheet, if a pattern matches its name. */
  Optional<Unusable> against(String file) {
    if (sheets.isEmpty()) {
      return Optional.empty();
    }
    Path path = Path.of(file);
    return sheets.stream()
        .filter(sheet -> sheet.matcher.matches(path))
        .findFirst()
        .map(
            sheet ->
                new Unusable(
                    "sheet",
                    sheet.glob,
                    "The [[sheet]] in bench.toml, line "
                        + sheet.line
                        + ", describes this file, and this version reads only the plain sheet; save"
                        + " it as a plain sheet and take the [[sheet]] out."));
  }
}
