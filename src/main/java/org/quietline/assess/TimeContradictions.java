package org.quietline.assess;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.quietline.assess.Contradiction.Asked;
import org.quietline.assess.Contradiction.TimeInFuture;
import org.quietline.assess.Contradiction.TimeOutOfStep;
import org.quietline.assess.Contradiction.TimeSkipped;
import org.quietline.bench.Action;
import org.quietline.bench.Bench;
import org.quietline.bench.Calibration;
import org.quietline.bench.Check;
import org.quietline.bench.Origin;
import org.quietline.bench.QuestionId;
import org.quietline.bench.Result;

/** Can the times be right: against the rows around, against all others, against the clocks? */
final class TimeContradictions {
  /** Rows that are neighbours in a file lie closer in time than this. */
  private static final Duration STEP = Duration.ofDays(31);

  /** More odd rows than these, or than one in ten, and the file is simply not in time order. */
  private static final int FEW_IN_A_FILE = 3;

  /** How far behind everything else the future begins. */
  private static final int FUTURE_DAYS = 180;

  private static final int MOST_IN_FUTURE = 3;

  /** For each row in the future at least so many others must say when now is. */
  private static final int OTHERS_FOR_EACH = 3;

  private TimeContradictions() {}

  static List<Contradiction> ask(Asking asking) {
    List<Contradiction> found = new ArrayList<>(future(asking));
    List<Origin> told = found.stream().map(c -> c.asked().origins().get(0)).toList();
    Asking.by(r -> r.origin().file(), asking.whole().results())
        .forEach(
            (file, results) ->
                outOfStep(asking, results).stream()
                    .filter(c -> !told.contains(c.asked().origins().get(0)))
                    .forEach(found::add));
    found.addAll(skipped(asking));
    return found;
  }

  /**
   * The results whose time lies far after everything else: at most three, more than 180 days after
   * all other results, the calibrations and the actions.
   */
  static List<Result> inFuture(Bench bench) {
    List<Result> results = bench.results();
    for (int k = MOST_IN_FUTURE; k > 0; k--) {
      int rest = results.size() - k;
      if (rest >= OTHERS_FOR_EACH * k) {
        LocalDateTime latest = latestBeside(bench, results.subList(0, rest));
        List<Result> late = results.subList(rest, results.size());
        if (late.get(0).takenAt().isAfter(latest.plusDays(FUTURE_DAYS))) {
          return late.stream()
              .filter(r -> bench.settings().isOn(Check.TIME_IN_FUTURE, r.method()))
              .toList();
        }
      }
    }
    return List.of();
  }

  /**
   * The results whose time is in doubt and for which nobody has answered: those in the future and
   * those out of step. What month it is must not follow them.
   */
  static Set<Origin> inDoubt(Bench bench) {
    Set<Origin> places = new HashSet<>();
    inFuture(bench).forEach(r -> places.add(r.origin()));
    Asking.by(r -> r.origin().file(), bench.results())
        .values()
        .forEach(
            ofFile ->
                odd(ofFile).stream()
                    .map(Odd::row)
                    .filter(r -> bench.settings().isOn(Check.TIME_OUT_OF_STEP, r.method()))
                    .filter(r -> bench.closing(QuestionId.of(r, Check.TIME_OUT_OF_STEP)).isEmpty())
                    .forEach(r -> places.add(r.origin())));
    return places;
  }

  /** The moment of the latest of some results, the calibrations and the actions. */
  static LocalDateTime latestBeside(Bench bench, List<Result> results) {
    return Stream.of(
            results.stream().map(Result::takenAt),
            bench.calibrations().stream().map(Calibration::calibratedAt),
            bench.actions().stream().map(Action::recordedAt))
        .flatMap(moments -> moments)
        .max(Comparator.naturalOrder())
        .orElse(LocalDateTime.MIN);
  }

  /** Told by a review that reaches to the latest row; an earlier month knows nothing of them. */
  private static List<Contradiction> future(Asking asking) {
    List<Result> late = inFuture(asking.whole());
    List<Result> rest = asking.whole().results().stream().filter(r -> !late.contains(r)).toList();
    LocalDateTime latest = latestBeside(asking.whole(), rest);
    if (late.isEmpty() || asking.period().to().isBefore(latest.toLocalDate())) {
      return List.of();
    }
    List<Contradiction> found = new ArrayList<>();
    for (Result result : late) {
      QuestionId id = QuestionId.of(result, Check.TIME_IN_FUTURE);
      found.add(
          new TimeInFuture(
              asked(asking, id, result, List.of(result.origin()), true), result, latest));
    }
    return found;
  }

  private static List<Contradiction> outOfStep(Asking asking, List<Result> ofFile) {
    List<Contradiction> found = new ArrayList<>();
    for (Odd odd : odd(ofFile)) {
      boolean used = !odd.row().takenAt().isAfter(asking.now());
      boolean known =
          used
              || (!odd.before().takenAt().isAfter(asking.now())
                  && !odd.after().takenAt().isAfter(asking.now()));
      if (known && asking.isOn(Check.TIME_OUT_OF_STEP, odd.row().method())) {
        boolean inPeriod =
            Stream.of(odd.before(), odd.row(), odd.after())
                .anyMatch(r -> asking.period().contains(r.takenAt()));
        List<Origin> origins =
            List.of(odd.row().origin(), odd.before().origin(), odd.after().origin());
        QuestionId id = QuestionId.of(odd.row(), Check.TIME_OUT_OF_STEP);
        found.add(
            new TimeOutOfStep(
                asked(asking, id, odd.row(), origins, inPeriod),
                odd.row(),
                odd.before(),
                odd.after(),
                used));
      }
    }
    return found;
  }

  /** A row far in time from its neighbours in the file, which agree with each other. */
  private record Odd(Result before, Result row, Result after) {}

  private static List<Odd> odd(List<Result> ofFile) {
    List<Result> rows =
        ofFile.stream().sorted(Comparator.comparing(r -> r.origin().line())).toList();
    List<Odd> odd = new ArrayList<>();
    for (int i = 1; i + 1 < rows.size(); i++) {
      Odd one = new Odd(rows.get(i - 1), rows.get(i), rows.get(i + 1));
      if (near(one.before(), one.after())
          && !near(one.before(), one.row())
          && !near(one.row(), one.after())) {
        odd.add(one);
      }
    }
    return odd.size() > Math.max(FEW_IN_A_FILE, rows.size() / 10) ? List.of() : odd;
  }

  private static boolean near(Result one, Result other) {
    return Duration.between(one.takenAt(), other.takenAt()).abs().compareTo(STEP) <= 0;
  }

  private static Asked asked(
      Asking asking, QuestionId id, Result result, List<Origin> origins, boolean inPeriod) {
    return new Asked(
        id,
        Optional.empty(),
        result.takenAt(),
        origins,
        inPeriod,
        result.takenAt().isAfter(asking.now()) ? Optional.empty() : asking.bench().closing(id));
  }

  private static List<Contradiction> skipped(Asking asking) {
    List<Contradiction> found = new ArrayList<>();
    for (Result result : asking.bench().results()) {
      QuestionId id = QuestionId.of(result, Check.TIME_DOES_NOT_EXIST);
      if (asking.isOn(id.check(), result.method())) {
        skipped(asking, id, result.sample(), result.takenAt(), result.origin())
            .ifPresent(found::add);
      }
    }
    for (Calibration calibration : asking.bench().calibrations()) {
      String subject =
          String.join("/", calibration.method(), calibration.instrument(), calibration.key());
      QuestionId id = new QuestionId(subject, Check.TIME_DOES_NOT_EXIST);
      if (asking.isOn(id.check(), calibration.method())) {
        skipped(asking, id, calibration.key(), calibration.calibratedAt(), calibration.origin())
            .ifPresent(found::add);
      }
    }
    return found;
  }

  private static Optional<Contradiction> skipped(
      Asking asking, QuestionId id, String what, LocalDateTime at, Origin origin) {
    ZoneOffsetTransition change = asking.bench().settings().timezone().getRules().getTransition(at);
    if (change == null || !change.isGap()) {
      return Optional.empty();
    }
    return Optional.of(
        new TimeSkipped(
            asking.about(id, Optional.empty(), at, List.of(origin)),
            what,
            change.getDateTimeBefore(),
            change.getDateTimeAfter()));
  }
}
