package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Drafts which decimal mark the numbers have. */
final class DecimalDraft {
  private final Draft draft;
  private final Optional<String> said;

  DecimalDraft(Draft draft, Optional<String> said) {
    this.draft = draft;
    this.said = said;
  }

  void write(Assigned assigned, char delimiter) {
    if (said.isPresent()) {
      line(said.get());
      draft.found("decimal mark", said.get(), "you said so");
      return;
    }
    List<Column> numeric = new ArrayList<>(assigned.all(Field.READINGS));
    numeric.addAll(assigned.all(Field.TEMPERATURE_C));
    assigned.open().getOrDefault(Field.READINGS, List.of()).forEach(numeric::addAll);
    DecimalMark mark = DecimalMark.of(numeric, delimiter);
    draft.found("decimal mark", mark.found(), mark.why());
    if (mark.setting().isPresent()) {
      line(mark.setting().get());
    } else {
      draft.askRefusing(
          "decimal",
          "What is the decimal mark? " + mark.why() + ".",
          List.of("\",\"", "\".\"", "\"either\""));
    }
  }

  private void line(String mark) {
    if (!mark.equals(".")) {
      draft.line("decimal", Toml.text(mark));
    }
  }
}
