package org.quietline.intake;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.quietline.bench.Action;
import org.quietline.bench.Check;
import org.quietline.bench.Matter;
import org.quietline.bench.Origin;
import org.quietline.bench.QuestionId;
import org.quietline.bench.SignalId;

/** The rows of {@code actions.csv}. */
final class ActionRows implements RowKind<Action> {
  static final Layout LAYOUT =
      new Layout(
          List.of("recorded_at", "signal", "cause"),
          List.of("action", "exclude_result", "use_row", "decided_by", "remark"),
          Set.of("exclude_result", "use_row"),
          List.of());

  private final SettingsReader.Found found;

  ActionRows(SettingsReader.Found found) {
    this.found = found;
  }

  private record Key(
      LocalDateTime at,
      Matter matter,
      Optional<String> cause,
      Optional<String> action,
      boolean exclude,
      Optional<Origin> useRow,
      Optional<String> by,
      Optional<String> remark) {}

  @Override
  public Layout layout() {
    return LAYOUT;
  }

  @Override
  public Action make(Row row) throws Unusable {
    LocalDateTime at = row.needTime("recorded_at");
    Matter matter = matter(row.need("signal"));
    Optional<String> cause = row.text("cause");
    boolean exclude = yes(row.text("exclude_result"));
    if (exclude && cause.isEmpty()) {
      throw new Unusable(
          "exclude_result",
          row.text("exclude_result").orElse(""),
          "exclude_result is yes, but no cause is given; write the cause, or no.");
    }
    Optional<Origin> useRow = useRow(row.text("use_row"), matter);
    return row.build(
        () ->
            new Action(
                at,
                matter,
                cause,
                row.text("action"),
                exclude,
                useRow,
                row.text("decided_by"),
                row.text("remark"),
                row.origin()));
  }

  private Matter matter(String text) throws Unusable {
    Matter matter =
        Matter.parse(text)
            .orElseThrow(
                () ->
                    new Unusable(
                        "signal",
                        text,
                        Excerpt.quoted(text)
                            + " is no id of a signal or a question; copy it whole from the review,"
                            + " as in"
                            + " method/instrument/material/2026-10-14T09:12/beyond-action-limit."));
    if (matter instanceof SignalId signal) {
      found.methods().need("signal", signal.method());
      found.instruments().need("signal", signal.instrument());
      switch (signal.rule()) {
        case CALIBRATION_STEP -> needWord(text, signal, SignalId.CALIBRATION);
        case BLANK_DRIFTING -> needWord(text, signal, SignalId.BLANK);
        case METHODS_DISAGREE -> found.methods().need("signal", signal.material());
        default -> Materials.need(found.materials(), "signal", signal.method(), signal.material());
      }
    }
    return matter;
  }

  private static void needWord(String text, SignalId signal, String word) throws Unusable {
    if (!signal.material().equals(word)) {
      throw new Unusable(
          "signal",
          text,
          "the third part of an id of "
              + signal.rule().key()
              + " is "
              + word
              + ", not "
              + Excerpt.quoted(signal.material())
              + "; copy the id whole from the review.");
    }
  }

  private static Optional<Origin> useRow(Optional<String> place, Matter matter) throws Unusable {
    if (place.isEmpty()) {
      return Optional.empty();
    }
    Optional<Origin> row = Origin.parse(place.get());
    if (row.isEmpty()) {
      throw new Unusable(
          "use_row",
          place.get(),
          Excerpt.quoted(place.get())
              + " is no place of a row; write file and line as in readings/2026-10.csv:17.");
    }
    if (!(matter instanceof QuestionId question) || question.check() != Check.ROWS_IN_CONFLICT) {
      throw new Unusable(
          "use_row",
          place.get(),
          "use_row chooses among rows in conflict, and "
              + matter
              + " is no conflict; leave it empty.");
    }
    return row;
  }

  private static boolean yes(Optional<String> word) throws Unusable {
    String answer = word.map(w -> w.toLowerCase(Locale.ROOT)).orElse("no");
    if (!answer.equals("yes") && !answer.equals("no")) {
      throw new Unusable(
          "exclude_result",
          word.orElse(""),
          Excerpt.quoted(word.orElse("")) + " is neither yes nor no; write one of them.");
    }
    return answer.equals("yes");
  }

  @Override
  public Object keyOf(Action made) {
    return new Key(
        made.recordedAt(),
        made.matter(),
        made.cause(),
        made.action(),
        made.excludeResult(),
        made.useRow(),
        made.decidedBy(),
        made.remark());
  }

  @Override
  public List<Part<Action>> parts() {
    return List.of();
  }

  @Override
  public Origin originOf(Action made) {
    return made.origin();
  }
}
