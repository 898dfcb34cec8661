package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;
import org.quietline.assess.Contradiction.Asked;
import org.quietline.bench.Action;
import org.quietline.bench.Bench;
import org.quietline.bench.Check;
import org.quietline.bench.Origin;
import org.quietline.bench.QuestionId;
import org.quietline.bench.Result;

/**
 * What every check across records needs: the bench as of now, the whole of it for what only later
 * rows show, the period, and who has answered.
 *
 * @param whole the bench with everything it recorded
 * @param bench the bench as of now
 * @param period the days under review
 * @param now the moment the review speaks from
 */
record Asking(Bench whole, Bench bench, Period period, LocalDateTime now) {

  boolean isOn(Check check, String method) {
    return bench.settings().isOn(check, method);
  }

  /** A question about one moment. */
  Asked about(QuestionId id, Optional<String> method, LocalDateTime when, List<Origin> origins) {
    return new Asked(id, method, when, origins, period.contains(when), bench.closing(id));
  }

  /** A question about one result and what it is held against. */
  Asked about(Check check, Result result, Origin... against) {
    List<Origin> origins = new ArrayList<>(List.of(result.origin()));
    origins.addAll(List.of(against));
    return about(
        QuestionId.of(result, check), Optional.of(result.method()), result.takenAt(), origins);
  }

  /**
   * One question about many results of a method. An action answers for those taken before it was
   * recorded, so there can be two of it: the answered and the open.
   */
  List<Contradiction> aboutMany(
      QuestionId id, List<Result> results, BiFunction<Asked, List<Result>, Contradiction> maker) {
    Optional<Action> answer = bench.closing(id);
    Predicate<Result> known =
        r -> answer.filter(a -> !r.takenAt().isAfter(a.recordedAt())).isPresent();
    List<Result> answered = results.stream().filter(known).toList();
    List<Result> open = results.stream().filter(known.negate()).toList();
    List<Contradiction> found = new ArrayList<>();
    if (!answered.isEmpty()) {
      found.add(maker.apply(many(id, answered, answer), answered));
    }
    if (!open.isEmpty()) {
      found.add(maker.apply(many(id, open, Optional.empty()), open));
    }
    return found;
  }

  private Asked many(QuestionId id, List<Result> results, Optional<Action> answer) {
    return new Asked(
        id,
        Optional.of(results.get(0).method()),
        results.get(0).takenAt(),
        results.stream().map(Result::origin).toList(),
        results.stream().anyMatch(r -> period.contains(r.takenAt())),
        answer);
  }

  /** Results by what they share, groups in the order of their names. */
  static Map<String, List<Result>> by(Function<Result, String> name, List<Result> results) {
    Map<String, List<Result>> groups = new TreeMap<>();
    results.forEach(r -> groups.computeIfAbsent(name.apply(r), n -> new ArrayList<>()).add(r));
    return groups;
  }
}
