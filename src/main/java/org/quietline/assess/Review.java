package org.quietline.assess;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.quietline.bench.Accounting;
import org.quietline.bench.Action;
import org.quietline.bench.Bench;
import org.quietline.bench.Calibration;
import org.quietline.bench.Result;

/**
 * The monthly review: puts every question to every method of a bench.
 *
 * @param bench the bench
 * @param accounting what became of every row
 * @param settingsFingerprint of the settings file
 * @param dataFingerprint of the data files
 */
public record Review(
    Bench bench, Accounting accounting, String settingsFingerprint, String dataFingerprint) {

  /**
   * The latest month with results, which is reviewed when nobody asks for another one.
   *
   * @return empty for a bench without results
   */
  public Optional<YearMonth> latestMonth() {
    List<Result> results = bench.results();
    return results.isEmpty()
        ? Optional.empty()
        : Optional.of(YearMonth.from(results.get(results.size() - 1).takenAt()));
  }

  /**
   * Reviews a period. Everything recorded up to the moment the review speaks from is used; nothing
   * later is looked at, and never the wall clock, so that the same folder gives the same findings
   * on any day.
   *
   * @param period the days under review
   * @param on the day to speak from, by default the end of the period or the latest row, whichever
   *     is earlier
   * @return the findings
   */
  public Findings of(Period period, Optional<LocalDate> on) {
    LocalDateTime now = on.map(day -> day.atTime(LocalTime.MAX)).orElse(momentOf(period));
    Bench then = bench.asOf(now);
    FalseSignals falseSignals = new FalseSignals(bench.settings().chart());
    List<MethodFindings> methods =
        bench.settings().methods().stream()
            .map(method -> judge(Records.of(then, method, period, now), falseSignals))
            .toList();
    List<Action> idle = then.actions().stream().filter(a -> isIdle(a, methods)).toList();
    return new Findings(
        bench.settings().name(),
        period,
        now,
        bench.settings().chart(),
        accounting,
        methods,
        idle,
        settingsFingerprint,
        dataFingerprint);
  }

  /** An action closes nothing when it names no cause, or a signal that was not found. */
  private static boolean isIdle(Action action, List<MethodFindings> methods) {
    return action.cause().isEmpty()
        || methods.stream()
            .flatMap(m -> m.streams().stream())
            .flatMap(s -> s.signals().stream())
            .noneMatch(s -> s.id().equals(action.matter()));
  }

  private LocalDateTime momentOf(Period period) {
    LocalDateTime end = period.to().atTime(LocalTime.MAX);
    return latestRow().filter(latest -> latest.isBefore(end)).orElse(end);
  }

  /**
   * The moment of the latest result, calibration or action.
   *
   * @return empty for a bench without any
   */
  public Optional<LocalDateTime> latestRow() {
    return Stream.of(
            bench.results().stream().map(Result::takenAt),
            bench.calibrations().stream().map(Calibration::calibratedAt),
            bench.actions().stream().map(Action::recordedAt))
        .flatMap(moments -> moments)
        .max(LocalDateTime::compareTo);
  }

  private static MethodFindings judge(Records records, FalseSignals falseSignals) {
    List<Replicates> replicates = ReadingsAgreement.ask(records);
    List<PersonPairs> people = ReadingsAgreement.askByPerson(records);
    List<StreamFindings> streams = new StreamControl(records, falseSignals).ask();
    List<Drift> drift = new CalibrationDrift(records, streams).ask();
    Precision precision = MethodPrecision.ask(records, streams);
    List<OutOfDate> outOfDate = DateCheck.ask(records);
    return new MethodFindings(
        records.method(),
        Weighing.verdict(records, replicates, people, streams, drift, outOfDate),
        replicates,
        people,
        streams,
        drift,
        precision,
        ProcessCapability.ask(records, precision),
        outOfDate,
        DateCheck.coverage(records));
  }
}
