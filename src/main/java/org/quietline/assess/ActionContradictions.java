package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.quietline.assess.Contradiction.ActionBeforeResult;
import org.quietline.bench.Action;
import org.quietline.bench.Check;
import org.quietline.bench.Matter;
import org.quietline.bench.Origin;
import org.quietline.bench.QuestionId;
import org.quietline.bench.Result;
import org.quietline.bench.SignalId;

/** Was any action recorded before the result it is about? */
final class ActionContradictions {
  private ActionContradictions() {}

  static List<Contradiction> ask(Asking asking) {
    List<Action> actions = asking.bench().actions();
    boolean questions = actions.stream().anyMatch(a -> a.matter() instanceof QuestionId);
    Map<String, Result> bySubject = questions ? bySubject(asking) : Map.of();
    List<Contradiction> found = new ArrayList<>();
    for (Action action : actions) {
      about(asking, action.matter(), bySubject)
          .filter(r -> r.takenAt().isAfter(action.recordedAt()))
          .filter(r -> asking.isOn(Check.ACTION_BEFORE_RESULT, r.method()))
          .ifPresent(r -> found.add(early(asking, action, r)));
    }
    return found;
  }

  private static Map<String, Result> bySubject(Asking asking) {
    Map<String, Result> results = new HashMap<>();
    asking
        .bench()
        .results()
        .forEach(
            r -> results.putIfAbsent(QuestionId.of(r, Check.ACTION_BEFORE_RESULT).subject(), r));
    return results;
  }

  private static Optional<Result> about(
      Asking asking, Matter matter, Map<String, Result> bySubject) {
    if (matter instanceof SignalId signal) {
      return asking.bench().results().stream().filter(signal::isOn).findFirst();
    }
    return matter instanceof QuestionId question
        ? Optional.ofNullable(bySubject.get(question.subject()))
        : Optional.empty();
  }

  private static Contradiction early(Asking asking, Action action, Result result) {
    LocalDateTime at = result.takenAt();
    List<Origin> origins = List.of(action.origin(), result.origin());
    QuestionId id = new QuestionId(action.matter().toString(), Check.ACTION_BEFORE_RESULT);
    return new ActionBeforeResult(
        asking.about(id, Optional.of(result.method()), at, origins), action, at);
  }
}
