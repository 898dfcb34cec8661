package org.quietline.assess;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.quietline.assess.NoticeRate.Question;
import org.quietline.assess.RetestFindings.Between;
import org.quietline.assess.RetestFindings.Move;
import org.quietline.assess.RetestFindings.Retested;
import org.quietline.assess.RetestFindings.Same;
import org.quietline.bench.Calibration;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.compare.MeanTest;
import org.quietline.stats.sample.PooledDeviation;
import org.quietline.stats.sample.Summary;

/** What do retained samples say that were measured again in another session? */
final class Retests {
  /** The fewest samples from which a mean difference is told. */
  static final int FEWEST = 5;

  /** The fewest samples from which a deviation between sessions is told. */
  static final int FEWEST_FOR_DEVIATION = 6;

  /** Samples whose levels differ by more than this factor have no deviation in common. */
  private static final double LEVELS_APART = 3;

  private final Records records;
  private final String instrument;
  private final IdentityHashMap<Result, Integer> sessions = new IdentityHashMap<>();
  private final List<Retested> retests = new ArrayList<>();
  private int unmatched;
  private int sameSession;
  private int repeated;
  private int notNumbers;

  private Retests(Records records, String instrument) {
    this.records = records;
    this.instrument = instrument;
  }

  /** For each instrument with retests, in key order. */
  static List<RetestFindings> ask(Records records) {
    return records.instruments().stream()
        .filter(i -> records.of(Role.RETEST).stream().anyMatch(r -> r.instrument().equals(i)))
        .map(i -> new Retests(records, i).judge())
        .toList();
  }

  private RetestFindings judge() {
    findSessions();
    Set<String> done = new HashSet<>();
    for (Result again : records.of(Role.RETEST)) {
      if (again.instrument().equals(instrument)) {
        add(again, done);
      }
    }
    Answer<Move> all = move(r -> true);
    return new RetestFindings(
        instrument,
        retests,
        unmatched,
        sameSession,
        repeated,
        notNumbers,
        all,
        move(r -> r.calibration() == Same.YES),
        move(r -> r.calibration() == Same.NO),
        move(r -> r.person() == Same.YES),
        move(r -> r.person() == Same.NO),
        new NoticeRate(
            Question.RETESTS_MOVED,
            instrument,
            all.value().isPresent() ? 1 : 0,
            ReadingsAgreement.CHANCE_THAT_TELLS,
            all.value().filter(Move::moved).isPresent() ? 1 : 0));
  }

  private void findSessions() {
    List<Logged> logged =
        records.results().stream()
            .flatMap(r -> Logged.of(r, records.reported(r), true).stream())
            .toList();
    List<List<Logged>> found = Sessions.of(logged);
    for (int i = 0; i < found.size(); i++) {
      for (Logged one : found.get(i)) {
        sessions.put(one.result(), i);
      }
    }
  }

  private boolean counts(Result result) {
    return records.value(result).isPresent() && !records.bench().isExcluded(result);
  }

  private void add(Result again, Set<String> done) {
    Optional<Result> first =
        records.of(Role.PRODUCT).stream()
            .filter(r -> r.instrument().equals(instrument) && r.sample().equals(again.sample()))
            .filter(r -> r.takenAt().isBefore(again.takenAt()) && counts(r))
            .findFirst();
    if (!counts(again)) {
      notNumbers++;
    } else if (first.isEmpty()) {
      unmatched++;
    } else if (isSameSession(first.get(), again)) {
      sameSession++;
    } else if (!done.add(again.sample())) {
      repeated++;
    } else {
      retests.add(retested(first.get(), again));
    }
  }

  private boolean isSameSession(Result first, Result again) {
    Integer one = sessions.get(first);
    return one != null && one.equals(sessions.get(again));
  }

  private Retested retested(Result first, Result again) {
    return new Retested(
        first,
        again,
        records.value(again).orElseThrow() - records.value(first).orElseThrow(),
        Duration.between(first.takenAt(), again.takenAt()).toMinutes() / 1440.0,
        same(calibrationOf(first), calibrationOf(again)),
        same(first.operator(), again.operator()));
  }

  private Optional<String> calibrationOf(Result result) {
    return records.bench().calibrationOf(result).map(Calibration::key);
  }

  private static Same same(Optional<String> one, Optional<String> other) {
    if (one.isEmpty() || other.isEmpty()) {
      return Same.UNKNOWN;
    }
    return one.equals(other) ? Same.YES : Same.NO;
  }

  private Answer<Move> move(Predicate<Retested> which) {
    List<Retested> chosen = retests.stream().filter(which).toList();
    if (chosen.size() < FEWEST) {
      return Answer.cannotSay("needs " + FEWEST + " samples, has " + chosen.size());
    }
    Summary summary = Summary.of(chosen.stream().mapToDouble(Retested::difference).toArray());
    if (Differences.areEqual(records, summary.deviation())) {
      return Answer.cannotSay(
          "needs differences that differ: all " + chosen.size() + " are the same number");
    }
    MeanTest test = MeanTest.oneSample(summary, 0);
    return Answer.of(
        new Move(
            chosen.size(),
            summary.mean(),
            test.interval(0.95),
            test.chance(),
            test.chance() < ReadingsAgreement.CHANCE_THAT_TELLS,
            between(chosen, summary)));
  }

  private Answer<Between> between(List<Retested> chosen, Summary summary) {
    if (chosen.size() < FEWEST_FOR_DEVIATION) {
      return Answer.cannotSay("needs " + FEWEST_FOR_DEVIATION + " samples, has " + chosen.size());
    }
    double[] levels =
        chosen.stream()
            .mapToDouble(r -> records.value(r.first()).orElseThrow() + r.difference() / 2)
            .sorted()
            .toArray();
    if (!(levels[0] > 0 && levels[levels.length - 1] <= LEVELS_APART * levels[0])) {
      return Answer.cannotSay(
          "needs samples whose levels differ by a factor of at most 3, has "
              + levels[0]
              + " to "
              + levels[levels.length - 1]);
    }
    int freedom = summary.n() - 1;
    PooledDeviation deviation = new PooledDeviation(freedom, summary.deviation() / Math.sqrt(2));
    return Answer.of(new Between(deviation.deviation(), freedom, deviation.interval(0.95)));
  }
}
