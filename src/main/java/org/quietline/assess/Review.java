package org.quietline.assess;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.quietline.bench.Accounting;
import org.quietline.bench.Action;
import org.quietline.bench.Bench;
import org.quietline.bench.Calibration;
import org.quietline.bench.Origin;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.runlength.ShiftDelay;

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
   * The latest month with results, which is reviewed when nobody asks for another one. Results
   * whose time is in doubt, far after everything else or far from the rows around them, do not
   * count.
   *
   * @return empty for a bench without results
   */
  public Optional<YearMonth> latestMonth() {
    return resultsInTime().reduce((earlier, later) -> later).map(r -> YearMonth.from(r.takenAt()));
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
    Bench recorded = bench.asOf(now);
    Bench then = FoundedActions.only(recorded, period, now);
    FalseSignals falseSignals = new FalseSignals(bench.settings().chart());
    Function<PriceOfRules.Asked, ShiftDelay> delays = PriceOfRules.simulated();
    SlipFinder slipFinder = new SlipFinder(then);
    List<Records> records =
        bench.settings().methods().stream().map(m -> Records.of(then, m, period, now)).toList();
    AcrossRecords across =
        Contradictions.ask(new Asking(bench, then, period, now), accounting, records);
    List<MethodFindings> methods =
        records.stream().map(r -> judge(r, falseSignals, delays, slipFinder, across)).toList();
    IdleActions idleActions = new IdleActions(then, methods, across);
    List<Action> idle = recorded.actions().stream().filter(idleActions::isIdle).toList();
    return new Findings(
        bench.settings().name(),
        period,
        now,
        bench.settings().chart(),
        accounting,
        methods,
        idle,
        across,
        settingsFingerprint,
        dataFingerprint);
  }

  /**
   * The outlook of every calibration in use.
   *
   * @param on the day to speak from, by default that of the latest row
   * @param method the key of one method; empty for all
   * @param tests for how many control tests the next ones are planned, zero or more
   * @return the findings
   */
  public OutlookFindings outlook(Optional<LocalDate> on, Optional<String> method, int tests) {
    LocalDateTime now =
        on.map(day -> day.atTime(LocalTime.MAX))
            .or(this::latestRow)
            .orElseThrow(() -> new IllegalArgumentException("the bench has no rows"));
    Period period = Period.of(YearMonth.from(now));
    Bench then = FoundedActions.only(bench.asOf(now), period, now);
    FalseSignals falseSignals = new FalseSignals(bench.settings().chart());
    Function<PriceOfRules.Asked, ShiftDelay> delays = PriceOfRules.simulated();
    List<CalibrationOutlook> outlooks =
        bench.settings().methods().stream()
            .filter(m -> method.map(m.key()::equals).orElse(true))
            .map(m -> Records.of(then, m, period, now))
            .flatMap(
                r ->
                    new Outlooks(
                            r,
                            new StreamControl(r, new PriceOfRules(r, falseSignals, delays)).ask(),
                            tests)
                        .ask().stream())
            .toList();
    return new OutlookFindings(
        bench.settings().name(), now, accounting, outlooks, settingsFingerprint, dataFingerprint);
  }

  /**
   * May batches go? By everything known now, also for batches tested earlier.
   *
   * @param on the day to speak from, by default that of the latest row
   * @param sample one sample; by default those with a product or retest result on the latest day
   *     that has one
   * @return the findings; without batches where no such sample has a method with a limit
   */
  public ReleaseFindings release(Optional<LocalDate> on, Optional<String> sample) {
    LocalDateTime now =
        on.map(day -> day.atTime(LocalTime.MAX))
            .or(this::latestRow)
            .orElseThrow(() -> new IllegalArgumentException("the bench has no rows"));
    List<Result> tested =
        bench.results().stream()
            .filter(r -> r.role() == Role.PRODUCT || r.role() == Role.RETEST)
            .filter(r -> !r.takenAt().isAfter(now))
            .filter(r -> sample.isEmpty() || r.sample().equals(sample.get()))
            .toList();
    LocalDate latest =
        tested.isEmpty()
            ? now.toLocalDate()
            : tested.get(tested.size() - 1).takenAt().toLocalDate();
    Set<String> samples =
        tested.stream()
            .filter(r -> sample.isPresent() || r.takenAt().toLocalDate().equals(latest))
            .map(Result::sample)
            .collect(Collectors.toSet());
    LocalDate first =
        tested.stream()
            .filter(r -> samples.contains(r.sample()))
            .map(r -> r.takenAt().toLocalDate())
            .findFirst()
            .orElse(latest);
    Findings findings = of(new Period(first, now.toLocalDate()), Optional.of(now.toLocalDate()));
    return new ReleaseFindings(
        findings.bench(),
        now,
        bench.settings().release(),
        accounting,
        ReleaseFindings.batches(findings.methods()).stream()
            .filter(b -> samples.contains(b.sample()))
            .toList(),
        settingsFingerprint,
        dataFingerprint);
  }

  private LocalDateTime momentOf(Period period) {
    LocalDateTime end = period.to().atTime(LocalTime.MAX);
    return latestRow().filter(latest -> latest.isBefore(end)).orElse(end);
  }

  /**
   * The moment of the latest result, calibration or action, without results whose time is in doubt.
   *
   * @return empty for a bench without any
   */
  public Optional<LocalDateTime> latestRow() {
    return Stream.of(
            resultsInTime().map(Result::takenAt),
            bench.calibrations().stream().map(Calibration::calibratedAt),
            bench.actions().stream().map(Action::recordedAt))
        .flatMap(moments -> moments)
        .max(LocalDateTime::compareTo);
  }

  private Stream<Result> resultsInTime() {
    Set<Origin> inDoubt = TimeContradictions.inDoubt(bench);
    return bench.results().stream().filter(r -> !inDoubt.contains(r.origin()));
  }

  private static MethodFindings judge(
      Records records,
      FalseSignals falseSignals,
      Function<PriceOfRules.Asked, ShiftDelay> delays,
      SlipFinder slipFinder,
      AcrossRecords across) {
    List<Replicates> replicates = ReadingsAgreement.ask(records);
    List<PersonPairs> people = ReadingsAgreement.askByPerson(records);
    List<StreamFindings> streams =
        new StreamControl(records, new PriceOfRules(records, falseSignals, delays)).ask();
    List<Drift> drift = new CalibrationDrift(records, streams).ask();
    List<OutsideDifference> outside = OutsideComparisons.differences(records);
    Budgets budgets = new Budgets(records, outside);
    Precision precision = MethodPrecision.ask(records, streams, budgets);
    Answer<Capability> capability = ProcessCapability.ask(records, precision);
    List<OutOfDate> outOfDate = across.outOfDate(records.method().key());
    Slips slips = slipFinder.ask(records);
    FreeStreams free = FreeStreams.ask(records);
    List<Story> stories = Stories.ask(records, streams, free.signals());
    Releases releases =
        new Releases(records, budgets, new Releases.Doubts(records, stories, outOfDate, drift));
    return new MethodFindings(
        records.method(),
        AcrossWeighing.added(
            Weighing.verdict(records, replicates, free, people, streams, drift, outOfDate, slips),
            across,
            records.method().key()),
        replicates,
        people,
        streams,
        drift,
        precision,
        capability,
        outOfDate,
        DateCheck.coverage(records),
        slips,
        free,
        stories,
        new Batches(
            budgets.statements(),
            OutsideComparisons.scored(outside, budgets.statements()),
            PairedComparisons.ask(records, outside),
            CostsOfDeciding.ask(records.bench().settings().release(), capability, budgets),
            releases.ask()));
  }
}
