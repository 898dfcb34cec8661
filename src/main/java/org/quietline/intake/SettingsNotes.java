package org.quietline.intake;

import java.util.ArrayList;
import java.util.List;
import org.quietline.bench.Accounting.SetAside;

/** What {@code bench.toml} says that cannot be used, each with its line. */
final class SettingsNotes {
  static final String FILE = "bench.toml";

  private final TomlPlaces places;
  private final List<SetAside> entries = new ArrayList<>();

  SettingsNotes(TomlPlaces places) {
    this.places = places;
  }

  int line(String path) {
    return places.line(path);
  }

  void add(String path, String field, String text, String sentences) {
    entries.add(new SetAside(FILE, line(path), field, Excerpt.of(text), sentences, 1));
  }

  List<SetAside> entries() {
    return entries;
  }
}
