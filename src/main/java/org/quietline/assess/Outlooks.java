package org.quietline.assess;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.IntFunction;
import java.util.stream.Stream;
import org.quietline.bench.Calibration;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.StudentMixture;
import org.quietline.stats.mixed.LineOutlook;

/** The outlooks of one method: a decision and what it rests on, for each instrument. */
final class Outlooks {
  /** A validity is not looked for beyond so many times the one that is set. */
  private static final int FARTHEST = 2;

  private final Records records;
  private final List<StreamFindings> streams;
  private final int tests;

  Outlooks(Records records, List<StreamFindings> streams, int tests) {
    this.records = records;
    this.streams = streams;
    this.tests = tests;
  }

  List<CalibrationOutlook> ask() {
    List<Drift> drifts = new CalibrationDrift(records, streams).ask();
    List<InstrumentCalibrations> histories = CalibrationHistory.ask(records);
    return drifts.stream()
        .map(
            d ->
                outlook(
                    d,
                    histories.stream()
                        .filter(h -> h.instrument().equals(d.instrument()))
                        .findFirst()))
        .toList();
  }

  private CalibrationOutlook outlook(Drift drift, Optional<InstrumentCalibrations> signs) {
    List<Calibration> calibrations =
        records.calibrations().stream()
            .filter(c -> c.instrument().equals(drift.instrument()))
            .toList();
    if (calibrations.isEmpty()) {
      Answer<?> nothing = Answer.cannotSay("no calibration is recorded for this instrument");
      String why = nothing.why().orElseThrow();
      return new CalibrationOutlook(
          records.method(),
          drift,
          List.of(),
          Answer.cannotSay(why),
          List.of(),
          Answer.cannotSay(why),
          Answer.cannotSay(why),
          List.of(),
          DateCheck.lotsInUse(records),
          signs);
    }
    CalibrationDrift.Window window = new CalibrationDrift(records, streams).window(calibrations);
    return new CalibrationOutlook(
        records.method(),
        drift,
        window
            .model()
            .value()
            .map(m -> new Explanations(records, m, window.scale()).ask())
            .orElse(List.of()),
        window.model().value().isPresent()
            ? Backtests.of(window.points(), window.form(), window.scale())
            : Answer.cannotSay(window.model().why().orElseThrow()),
        plans(drift, window),
        window.model().map(m -> touched(drift, window, m)),
        interval(drift, window),
        Rechecks.of(window.points(), window.model().value()),
        DateCheck.lotsInUse(records),
        signs);
  }

  private List<Answer<TestPlan>> plans(Drift drift, CalibrationDrift.Window window) {
    if (window.model().value().isEmpty() || drift.expires().isEmpty()) {
      return List.of();
    }
    TestPlanner planner =
        new TestPlanner(
            window.model().value().get().line(),
            window.start(),
            window.today(),
            window.lastDay(),
            drift
                .lastSafeDay()
                .value()
                .map(
                    d ->
                        OptionalInt.of(
                            (int) java.time.temporal.ChronoUnit.DAYS.between(window.start(), d)))
                .orElse(OptionalInt.empty()),
            drift.allowance());
    List<Answer<TestPlan>> plans = new ArrayList<>();
    for (int n = 1; n <= tests; n++) {
      plans.add(planner.plan(n));
    }
    return plans;
  }

  private Touched touched(Drift drift, CalibrationDrift.Window window, DriftModel model) {
    Optional<LocalDateTime> good =
        drift.allowance().isEmpty()
            ? Optional.empty()
            : drift.deviations().stream()
                .filter(
                    d -> Math.abs(d.deviation()) <= drift.allowance().getAsDouble() * (1 + 1e-9))
                .filter(d -> !signalled(drift.instrument(), d))
                .map(Drift.Deviation::at)
                .reduce((earlier, later) -> later);
    LocalDateTime start = window.calibration().calibratedAt();
    LocalDateTime since = good.orElse(start);
    LineOutlook.GroupLine line = model.line();
    List<Touched.Result> results =
        records.of(Role.PRODUCT).stream()
            .filter(r -> r.instrument().equals(drift.instrument()))
            .filter(r -> records.bench().calibrationOf(r).equals(Optional.of(window.calibration())))
            .filter(r -> r.takenAt().isAfter(since))
            .map(r -> touched(r, line.at(DriftPoints.days(start, r.takenAt())), window))
            .toList();
    return new Touched(since, good.isPresent(), results);
  }

  private boolean signalled(String instrument, Drift.Deviation deviation) {
    return streams.stream()
        .filter(s -> s.instrument().equals(instrument))
        .filter(s -> s.material().key().equals(deviation.material()))
        .flatMap(s -> s.signals().stream())
        .anyMatch(s -> s.id().at().equals(deviation.at()));
  }

  private Touched.Result touched(
      Result result, StudentMixture error, CalibrationDrift.Window window) {
    OptionalDouble value = records.value(result);
    double share = value.isPresent() ? window.shareAt(value.getAsDouble()) : 1;
    double middle = share * error.mean();
    Interval error95 = error.interval(0.95);
    OptionalDouble allowance = window.allowanceAt(value);
    return new Touched.Result(
        result.takenAt(),
        result.sample(),
        value,
        middle,
        new Interval(share * error95.lower(), share * error95.upper()),
        allowance.isPresent() && share > 0
            ? OptionalDouble.of(error.chanceBeyond(allowance.getAsDouble() / share))
            : OptionalDouble.empty(),
        value.isPresent() ? margin(value.getAsDouble() - middle) : OptionalDouble.empty(),
        result.origin().file(),
        result.origin().line());
  }

  /** From the nearer product limit inwards. */
  private OptionalDouble margin(double value) {
    return records.method().limits().stream()
        .flatMap(
            l ->
                Stream.concat(
                    l.upper().map(BigDecimal::doubleValue).map(u -> u - value).stream(),
                    l.lower().map(BigDecimal::doubleValue).map(u -> value - u).stream()))
        .mapToDouble(Double::doubleValue)
        .min();
  }

  private Answer<IntervalReview> interval(Drift drift, CalibrationDrift.Window window) {
    if (drift.expires().isEmpty()) {
      return Answer.cannotSay("no calibration-valid-days is set for this method");
    }
    if (drift.allowance().isEmpty()) {
      return Answer.cannotSay("no allowable-bias is set for this method");
    }
    return window
        .model()
        .value()
        .filter(m -> m.windows() >= 2)
        .map(m -> Answer.of(interval(drift.allowance().getAsDouble(), window, m)))
        .orElse(Answer.cannotSay("needs control results in 2 windows"));
  }

  private static IntervalReview interval(
      double allowance, CalibrationDrift.Window window, DriftModel model) {
    LineOutlook outlook = model.outlook();
    int farthest = FARTHEST * window.lastDay();
    double safe = window.safeChance();
    return new IntervalReview(
        window.lastDay(),
        safe,
        lastSafe(day -> outlook.averageAt(day, model.here()), allowance, safe, farthest),
        lastSafe(day -> outlook.newLineAt(day, model.here()), allowance, safe, farthest),
        window.points().followedTo(),
        model.windows());
  }

  private static OptionalInt lastSafe(
      IntFunction<StudentMixture> line, double allowance, double safe, int farthest) {
    int day = -1;
    while (day < farthest && line.apply(day + 1).chanceBeyond(allowance) <= safe) {
      day++;
    }
    return day < 0 ? OptionalInt.empty() : OptionalInt.of(day);
  }
}
