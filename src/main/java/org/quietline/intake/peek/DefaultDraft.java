package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** Drafts what holds for all rows because the file has no column for it. */
final class DefaultDraft {
  /** Stands in a line whose key only the user knows. */
  static final String OPEN_KEY = "KEY OF THE BENCH";

  private final Draft draft;
  private final Grid grid;
  private final Assigned assigned;
  private final Vocabulary words;

  DefaultDraft(Draft draft, Grid grid, Assigned assigned, Vocabulary words) {
    this.draft = draft;
    this.grid = grid;
    this.assigned = assigned;
    this.words = words;
  }

  void write() {
    same(Field.METHOD);
    same(Field.INSTRUMENT);
    role();
    sample();
    readings();
    unit();
  }

  /**
   * The one method or instrument that is named before the header; or the only one of the bench,
   * where no line before the header could name another.
   */
  private void same(Field field) {
    if (assigned.has(field)) {
      return;
    }
    Map<String, String> known = words.of(field);
    List<String> named =
        known.entrySet().stream()
            .filter(e -> isNamedBefore(e.getKey()) || isNamedBefore(e.getValue()))
            .map(Map.Entry::getKey)
            .toList();
    if (named.size() == 1) {
      decided(field, named.get(0), "it is named in the lines before the header");
    } else if (known.size() == 1 && grid.before().isEmpty()) {
      decided(field, known.keySet().iterator().next(), "the bench has no other");
    } else {
      ask(field, List.copyOf(known.keySet()));
    }
  }

  private boolean isNamedBefore(String name) {
    Pattern wanted = Pattern.compile(" " + Pattern.quote(plain(name)) + " (?!\\d)");
    return grid.before().stream().anyMatch(l -> wanted.matcher(" " + plain(l.text()) + " ").find());
  }

  private static String plain(String text) {
    return text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\d-]+", " ").strip();
  }

  private void decided(Field field, String key, String why) {
    draft.line("defaults." + field.key(), Toml.text(key));
    draft.found(field.key(), key + " for all rows", why);
  }

  private void ask(Field field, List<String> keys) {
    List<String> lines = new ArrayList<>();
    for (Column column : assigned.spare()) {
      lines.add("columns." + field.key() + " = " + column.toml());
    }
    keys.forEach(key -> lines.add("defaults." + field.key() + " = " + Toml.text(key)));
    if (keys.isEmpty()) {
      lines.add("defaults." + field.key() + " = " + Toml.text(OPEN_KEY));
    }
    draft.ask("No column says the " + field.key() + ". What is it?", lines);
  }

  private void role() {
    if (assigned.has(Field.ROLE)) {
      return;
    }
    List<String> samples = assigned.one(Field.SAMPLE).map(c -> c.filled()).orElse(List.of());
    long controls = samples.stream().filter(words::isMaterial).count();
    if (controls > 0 && controls == samples.size()) {
      decided(Field.ROLE, "control", "every sample is a control material of the bench");
      return;
    }
    List<String> lines = new ArrayList<>();
    words.of(Field.ROLE).keySet().forEach(r -> lines.add("defaults.role = " + Toml.text(r)));
    draft.ask(
        "No column says what the samples were. What were they all?"
            + (controls > 0
                ? " "
                    + Shown.counted(controls, "row")
                    + " of "
                    + samples.size()
                    + " name a control material, so no answer fits all rows: export them apart."
                : ""),
        lines);
  }

  private void sample() {
    if (!assigned.has(Field.SAMPLE)) {
      List<String> lines = new ArrayList<>();
      assigned.spare().forEach(c -> lines.add("columns.sample = " + c.toml()));
      if (lines.isEmpty()) {
        lines.add("columns.sample = " + Toml.text("NAME OF THE COLUMN"));
      }
      draft.ask("Which column names the sample?", lines);
    }
  }

  private void readings() {
    if (!assigned.has(Field.READINGS)) {
      draft.ask(
          "No column holds numbers that could be readings. Which one does?",
          List.of("columns.readings = " + Toml.text("NAME OF THE COLUMN")));
    }
  }

  private void unit() {
    Optional<String> unit = ColumnDraft.unitOf(assigned.all(Field.READINGS));
    if (assigned.has(Field.UNIT) || unit.isEmpty()) {
      return;
    }
    Optional<String> key = words.keyOf(Field.UNIT, unit.get());
    if (key.isPresent() || !words.isKnown()) {
      decided(Field.UNIT, key.orElse(unit.get()), "it stands in brackets behind the readings");
    } else {
      ask(Field.UNIT, words.candidates(Field.UNIT, unit.get()));
    }
  }
}
