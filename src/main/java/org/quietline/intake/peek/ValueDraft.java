package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Drafts what the texts of the file mean in the words of the bench. */
final class ValueDraft {
  private static final int MOST_QUESTIONS = 12;
  private static final int MOST_ANSWERS = 8;

  private final Draft draft;
  private final Grid grid;
  private final Assigned assigned;
  private final Vocabulary words;

  ValueDraft(Draft draft, Grid grid, Assigned assigned, Vocabulary words) {
    this.draft = draft;
    this.grid = grid;
    this.assigned = assigned;
    this.words = words;
  }

  void write() {
    texts(Field.METHOD, words.isKnown());
    texts(Field.INSTRUMENT, words.isKnown());
    texts(Field.UNIT, words.isKnown());
    texts(Field.ROLE, true);
    readings();
  }

  private void texts(Field field, boolean known) {
    Optional<Column> column = assigned.one(field);
    if (column.isEmpty() || !known) {
      return;
    }
    List<String> open = new ArrayList<>();
    for (String text : column.get().distinct()) {
      Optional<String> key = words.keyOf(field, text).or(() -> byMaterial(field, text));
      if (key.isEmpty()) {
        open.add(text);
      } else if (!key.get().equals(text)) {
        line(field, text, key.get());
      }
    }
    open.stream().limit(MOST_QUESTIONS).forEach(text -> ask(field, column.get(), text));
    if (open.size() > MOST_QUESTIONS) {
      draft.found(
          field.key(),
          (open.size() - MOST_QUESTIONS) + " more texts nobody knows",
          "such as " + Shown.some(open.subList(MOST_QUESTIONS, open.size()), 3));
    }
  }

  private void line(Field field, String text, String key) {
    draft.line(keyOf(field, text), Toml.text(key));
    String why =
        field == Field.ROLE && !key.equalsIgnoreCase(text)
            ? "all its rows are of control materials of the bench"
            : "it is the title or the key of " + key;
    draft.found(field.key() + " " + Shown.quoted(text), key, why);
  }

  private static String keyOf(Field field, String text) {
    return "values." + field.key() + "." + Toml.text(text);
  }

  /** A word for a role is control where every row that has it is of a control material. */
  private Optional<String> byMaterial(Field field, String text) {
    Optional<Column> samples = assigned.one(Field.SAMPLE);
    Optional<Column> roles = assigned.one(Field.ROLE);
    if (field != Field.ROLE || samples.isEmpty() || roles.isEmpty()) {
      return Optional.empty();
    }
    Set<String> of =
        grid.rows().stream()
            .filter(r -> r.at(roles.get().place()).equals(text))
            .map(r -> r.at(samples.get().place()))
            .filter(s -> !s.isEmpty())
            .collect(Collectors.toSet());
    return !of.isEmpty() && of.stream().allMatch(words::isMaterial)
        ? Optional.of("control")
        : Optional.empty();
  }

  private void ask(Field field, Column column, String text) {
    List<String> candidates = words.candidates(field, text);
    long rows = column.cells().stream().filter(text::equals).count();
    String what = field.key() + " " + Shown.quoted(text) + " (" + Shown.counted(rows, "row") + ")";
    if (candidates.isEmpty()) {
      draft.found(what, "not known", "the bench has no " + field.key());
      return;
    }
    draft.ask(
        "What does the " + what + " mean?",
        candidates.stream()
            .limit(MOST_ANSWERS)
            .map(key -> keyOf(field, text) + " = " + Toml.text(key))
            .toList());
  }

  /** Dashes stand for no reading; what a word stands for is asked. */
  private void readings() {
    Map<String, Integer> odd = new LinkedHashMap<>();
    for (Column column : assigned.all(Field.READINGS)) {
      for (String text : column.filled()) {
        if (!NumberShape.of(text).isNumber()) {
          odd.merge(text, 1, Integer::sum);
        }
      }
    }
    int asked = 0;
    for (Map.Entry<String, Integer> entry : odd.entrySet()) {
      String text = entry.getKey();
      if (text.matches("[-–—_./]+")) {
        draft.line(keyOf(Field.READINGS, text), Toml.text(""));
        draft.found(
            "reading " + Shown.quoted(text),
            "no reading",
            "a dash, in " + Shown.counted(entry.getValue(), "cell"));
      } else if (text.chars().noneMatch(Character::isDigit) && asked++ < MOST_QUESTIONS) {
        word(text, entry.getValue());
      }
    }
  }

  private void word(String text, int cells) {
    String key = keyOf(Field.READINGS, text);
    boolean over = text.matches("(?iu)(over|high|hi|max|above|ovr|>+|über|hoch|haut|alto)\\W*");
    boolean under = text.matches("(?iu)(under|low|lo|min|below|<+|unter|tief|bas|bajo)\\W*");
    List<String> answers = new ArrayList<>();
    if (over || under) {
      answers.add(key + " = " + Toml.text(over ? ">UPPER" : "<LOWER"));
    }
    answers.add(key + " = " + Toml.text(""));
    draft.ask(
        "What does the reading "
            + Shown.quoted(text)
            + " ("
            + Shown.counted(cells, "cell")
            + ") mean? "
            + (over || under
                ? "Put the "
                    + (over ? "upper" : "lower")
                    + " end of the range in place of "
                    + (over ? "UPPER" : "LOWER")
                    + ", or say that nothing was read."
                : "If nothing was read, take the line; else mend those rows."),
        answers);
  }
}
