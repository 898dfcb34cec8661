package org.quietline.assess;

import static java.util.stream.Collectors.groupingBy;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiPredicate;
import org.quietline.bench.Bench;
import org.quietline.bench.Method;
import org.quietline.bench.Result;
import org.quietline.bench.Role;

/** Everything that lets expect a result's value, over all methods of a bench. */
final class Witnesses {
  /** A witness that notices so much settles whether a number is sound: just under twice as much. */
  private static final double SETTLES = Math.log(1.9);

  private final Map<String, MethodLog> logs = new LinkedHashMap<>();
  private final Map<Related, Spread> ratios = new HashMap<>();

  /** Two methods of which one lets expect the other. */
  private record Related(String method, String from) {}

  private Witnesses() {}

  static Witnesses of(Bench bench) {
    Witnesses witnesses = new Witnesses();
    Map<String, List<Result>> results =
        bench.results().stream().collect(groupingBy(Result::method));
    for (Method method : bench.settings().methods()) {
      witnesses.logs.put(
          method.key(), MethodLog.of(bench, method, results.getOrDefault(method.key(), List.of())));
    }
    for (MethodLog log : witnesses.logs.values()) {
      for (MethodLog from : witnesses.relatedTo(log)) {
        witnesses.ratios.put(
            new Related(log.method().key(), from.method().key()), ratios(log, from));
      }
    }
    return witnesses;
  }

  private static Spread ratios(MethodLog log, MethodLog from) {
    List<Spread.At> seen = new ArrayList<>();
    for (Logged logged : log.all()) {
      if (logged.counts() && logged.result().role() != Role.CONTROL) {
        from.levelOf(logged.result().sample())
            .ifPresent(level -> seen.add(new Spread.At(level, logged.level() - level)));
      }
    }
    return Spread.of(seen);
  }

  MethodLog log(String method) {
    return Objects.requireNonNull(logs.get(method), method);
  }

  /** The methods that measure the other one of acid number and free fatty acid. */
  List<MethodLog> relatedTo(MethodLog log) {
    return logs.values().stream()
        .filter(l -> FattyAcid.areRelated(l.method(), log.method()))
        .toList();
  }

  /** What lets expect the value of a result, the sharpest first. */
  List<Witness> about(Logged logged) {
    MethodLog log = log(logged.result().method());
    List<Witness> witnesses = new ArrayList<>();
    log.sameSample(logged).ifPresent(witnesses::add);
    if (logged.result().role() != Role.CONTROL) {
      relatedTo(log).forEach(from -> related(log, from, logged).ifPresent(witnesses::add));
    }
    log.kindOf(logged).ifPresent(witnesses::add);
    return witnesses;
  }

  private Optional<Witness> related(MethodLog log, MethodLog from, Logged logged) {
    List<Logged> others = from.ofSample(logged.result().sample());
    Spread ratio = ratios.get(new Related(log.method().key(), from.method().key()));
    Optional<Double> level = from.levelOf(logged.result().sample());
    if (ratio == null || level.isEmpty()) {
      return Optional.empty();
    }
    double digit = Math.hypot(logged.digit(), others.get(0).digit());
    return ratio
        .at(level.get())
        .map(
            s ->
                Witness.of(
                    Slip.Source.RELATED_METHOD,
                    level.get() + s.median(),
                    s,
                    digit,
                    Optional.of(others.get(others.size() - 1))));
  }

  /** The first witness that speaks against a result, unless a sharper one speaks for it. */
  Optional<Witness> accuser(Logged logged) {
    return firstAgainst(logged, Witness::accuses);
  }

  /** The first witness that doubts a result, unless a sharper one speaks for it. */
  Optional<Witness> doubter(Logged logged) {
    return firstAgainst(logged, Witness::doubts);
  }

  private Optional<Witness> firstAgainst(Logged logged, BiPredicate<Witness, Double> against) {
    for (Witness witness : about(logged)) {
      if (against.test(witness, logged.level())) {
        return Optional.of(witness);
      }
      if (witness.notices(SETTLES)) {
        return Optional.empty();
      }
    }
    return Optional.empty();
  }

  /**
   * Whether anything besides its own readings would notice that a result is ten times too large.
   */
  boolean canJudge(Logged logged) {
    return about(logged).stream().anyMatch(w -> w.notices(Math.log(10)));
  }

  /**
   * Of two numbers that do not fit together either may be the wrong one. This one is cleared when
   * something sharp that does not rest on the other one speaks for it, or something speaks against
   * the other one and nothing against this one.
   */
  boolean isCleared(Logged logged, Witness accuser) {
    if (accuser.other().isEmpty()) {
      return false;
    }
    Logged other = accuser.other().get();
    Optional<Witness> own = independent(logged, other);
    boolean doubted = own.filter(w -> w.doubts(logged.level())).isPresent();
    boolean sharp = own.filter(w -> w.notices(SETTLES)).isPresent();
    return !doubted
        && (sharp || independent(other, logged).filter(w -> w.doubts(other.level())).isPresent());
  }

  /** The sharpest expectation of a result that does not rest on another one. */
  private Optional<Witness> independent(Logged logged, Logged other) {
    boolean oneMethod = logged.result().method().equals(other.result().method());
    return about(logged).stream()
        .filter(w -> w.other().filter(other::equals).isEmpty())
        .filter(w -> oneMethod || w.source() != Slip.Source.RELATED_METHOD)
        .findFirst();
  }
}
