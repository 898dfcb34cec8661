package org.quietline.intake;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.quietline.bench.Action;
import org.quietline.bench.Origin;
import org.quietline.bench.SignalId;

/** The rows of {@code actions.csv}. */
final class ActionRows implements RowKind<Action> {
  private static final Layout LAYOUT =
      new Layout(
          List.of("recorded_at", "signal", "cause"),
          List.of("action", "exclude_result", "decided_by", "remark"),
          Set.of("exclude_result"),
          List.of());

  private final SettingsReader.Found found;

  ActionRows(SettingsReader.Found found) {
    this.found = found;
  }

  private record Key(
      LocalDateTime at,
      SignalId signal,
      Optional<String> cause,
      Optional<String> action,
      boolean exclude,
      Optional<String> by,
      Optional<String> remark) {}

  @Override
  public Layout layout() {
    return LAYOUT;
  }

  @Override
  public Action make(Row row) throws Unusable {
    LocalDateTime at = row.needTime("recorded_at");
    SignalId signal = signal(row.need("signal"));
    Optional<String> cause = row.text("cause");
    boolean exclude = yes(row.text("exclude_result"));
    if (exclude && cause.isEmpty()) {
      throw new Unusable(
          "exclude_result",
          row.text("exclude_result").orElse(""),
          "exclude_result is yes, but no cause is given; write the cause, or no.");
    }
    return row.build(
        () ->
            new Action(
                at,
                signal,
                cause,
                row.text("action"),
                exclude,
                row.text("decided_by"),
                row.text("remark"),
                row.origin()));
  }

  private SignalId signal(String text) throws Unusable {
    SignalId signal =
        SignalId.parse(text)
            .orElseThrow(
                () ->
                    new Unusable(
                        "signal",
                        text,
                        Excerpt.quoted(text)
                            + " is no signal id; copy it whole from the review, as in"
                            + " method/instrument/material/2026-10-14T09:12/beyond-action-limit."));
    found.methods().need("signal", signal.method());
    found.instruments().need("signal", signal.instrument());
    Materials.need(found.materials(), "signal", signal.method(), signal.material());
    return signal;
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
        made.signal(),
        made.cause(),
        made.action(),
        made.excludeResult(),
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
