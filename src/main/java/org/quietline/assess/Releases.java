package org.quietline.assess;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.quietline.assess.Release.Decision;
import org.quietline.assess.Release.Held;
import org.quietline.assess.Release.HeldBy;
import org.quietline.assess.Release.Judged;
import org.quietline.assess.Release.Used;
import org.quietline.assess.SplitModel.Place;
import org.quietline.assess.UncertaintyBudget.Combined;
import org.quietline.bench.Calibration;
import org.quietline.bench.Method.ProductLimits;
import org.quietline.bench.ReleaseSettings;
import org.quietline.bench.ReleaseSettings.Costs;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.capability.StudentConformance;

/** May the batches of one method go? */
final class Releases {
  private final Records records;
  private final Budgets budgets;
  private final Doubts doubts;
  private final OptionalDouble outside;
  private final ReleaseSettings settings;
  private final Map<Result, Integer> sessions = new HashMap<>();

  Releases(Records records, Budgets budgets, Doubts doubts) {
    this.records = records;
    this.budgets = budgets;
    this.doubts = doubts;
    this.settings = records.bench().settings().release();
    this.outside = OutsideComparisons.statedUncertainty(records);
    List<List<Result>> found =
        Sessions.of(
            records.results(), r -> r, r -> records.bench().calibrationOf(r).map(Calibration::key));
    for (int i = 0; i < found.size(); i++) {
      for (Result result : found.get(i)) {
        sessions.put(result, i);
      }
    }
  }

  /** One for each sample with a product or retest result in the period; none without a limit. */
  List<Release> ask() {
    if (records.method().limits().isEmpty()) {
      return List.of();
    }
    Map<String, List<Result>> samples = new LinkedHashMap<>();
    for (Result result : records.results()) {
      if (result.role() == Role.PRODUCT || result.role() == Role.RETEST) {
        samples.computeIfAbsent(result.sample(), k -> new ArrayList<>()).add(result);
      }
    }
    return samples.entrySet().stream()
        .filter(e -> e.getValue().stream().anyMatch(r -> records.period().contains(r.takenAt())))
        .map(e -> release(e.getKey(), e.getValue()))
        .toList();
  }

  private Release release(String sample, List<Result> all) {
    String instrument = all.get(all.size() - 1).instrument();
    List<Result> own =
        all.stream()
            .filter(r -> r.instrument().equals(instrument) && !records.bench().isExcluded(r))
            .toList();
    List<Result> counted = own.stream().filter(records::counts).toList();
    List<Used> used = counted.stream().flatMap(r -> used(r).stream()).toList();
    OptionalDouble value =
        own.isEmpty() || counted.size() < own.size() || used.size() < counted.size()
            ? OptionalDouble.empty()
            : used.stream().mapToDouble(Used::value).average();
    Answer<Judged> judged =
        own.isEmpty()
            ? Answer.cannotSay("every result of this sample was taken out by an action")
            : counted.size() < own.size()
                ? Answer.cannotSay("a reading is only a bound, or no number")
                : value.isEmpty()
                    ? Answer.cannotSay("no calibration is recorded behind a result")
                    : budgets.of(instrument).map(b -> judged(b, used));
    return new Release(
        records.method(),
        sample,
        instrument,
        used,
        value,
        settings.confidence(),
        judged,
        held(own),
        own.isEmpty() ? Optional.empty() : doubts.lastControl(own.get(own.size() - 1)));
  }

  private List<Held> held(List<Result> results) {
    return results.stream()
        .flatMap(
            r ->
                Stream.concat(
                    records.reported(r).wantsReading()
                        ? Stream.of(new Held(HeldBy.READINGS_DISAGREE, r.sample()))
                        : Stream.empty(),
                    doubts.of(r).stream()))
        .distinct()
        .toList();
  }

  private Optional<Used> used(Result result) {
    return records
        .bench()
        .calibrationOf(result)
        .map(
            c ->
                new Used(
                    result.takenAt(),
                    records.value(result).orElseThrow(),
                    records.reported(result).used(),
                    c.key(),
                    sessions.getOrDefault(result, 0),
                    result.role() == Role.RETEST,
                    result.origin().file(),
                    result.origin().line()));
  }

  private Judged judged(UncertaintyBudget budget, List<Used> used) {
    List<Place> places =
        used.stream().map(u -> new Place(u.calibration(), u.session(), u.readings())).toList();
    double value = used.stream().mapToDouble(Used::value).average().orElseThrow();
    Combined combined = budget.ofMean(places);
    ProductLimits limits = records.method().limits().orElseThrow();
    OptionalDouble lower = asDouble(limits.lower());
    OptionalDouble upper = asDouble(limits.upper());
    StudentConformance question =
        new StudentConformance(lower, upper, combined.uncertainty(), combined.degreesOfFreedom());
    Decision byValue =
        switch (question.verdict(value, settings.confidence())) {
          case ACCEPT -> Decision.WITHIN;
          case REJECT -> Decision.BEYOND;
          case UNDECIDED -> Decision.TOO_CLOSE_TO_CALL;
        };
    WaysOut ways =
        new WaysOut(budget, places, new WaysOut.Wanted(lower, upper, settings.confidence()), value);
    List<Release.WayOut> found =
        byValue == Decision.TOO_CLOSE_TO_CALL ? ways.all(outside) : List.of();
    return new Judged(
        budget.split().material(),
        budget.split().calibrations(),
        combined.uncertainty(),
        combined.degreesOfFreedom(),
        budget.shared(places),
        question.chance(value),
        question.guardBand(settings.confidence()),
        lower,
        upper,
        byValue,
        found,
        WaysOut.worth(found),
        settings
            .costs()
            .map(Costs::breakEven)
            .map(OptionalDouble::of)
            .orElse(OptionalDouble.empty()));
  }

  private static OptionalDouble asDouble(Optional<java.math.BigDecimal> limit) {
    return limit.map(v -> OptionalDouble.of(v.doubleValue())).orElse(OptionalDouble.empty());
  }

  /** What puts single results in doubt, by what a review found. */
  record Doubts(
      Records records,
      Collection<Story> stories,
      Collection<OutOfDate> outOfDate,
      Collection<Drift> drift) {

    List<Held> of(Result result) {
      List<Held> held = new ArrayList<>();
      stories.stream()
          .filter(s -> s.open() && s.stops())
          .filter(s -> s.lookBack().filter(l -> isIn(l, result)).isPresent())
          .forEach(s -> held.add(new Held(HeldBy.STOP_SIGNAL, s.id().toString())));
      outOfDate.stream()
          .filter(o -> o.result().equals(result) && o.open())
          .forEach(
              o ->
                  held.add(
                      new Held(
                          o.kind() == OutOfDate.Kind.CALIBRATION_VALIDITY
                              ? HeldBy.CALIBRATION_PAST_DATE
                              : HeldBy.REAGENT_PAST_DATE,
                          o.what())));
      records
          .bench()
          .calibrationOf(result)
          .filter(c -> drift.stream().anyMatch(d -> isUnsafe(d, c, result)))
          .ifPresent(c -> held.add(new Held(HeldBy.CALIBRATION_UNSAFE, c.key())));
      return held;
    }

    private static boolean isIn(LookBack lookBack, Result result) {
      return lookBack.results().stream()
          .anyMatch(
              d -> d.file().equals(result.origin().file()) && d.line() == result.origin().line());
    }

    private static boolean isUnsafe(Drift drift, Calibration calibration, Result result) {
      return drift.calibration().equals(Optional.of(calibration))
          && (drift.decision() == Drift.Decision.RECALIBRATE_NOW
              || drift.decision() == Drift.Decision.RECALIBRATE_BY)
          && drift
              .lastSafeDay()
              .value()
              .filter(day -> result.takenAt().toLocalDate().isAfter(day))
              .isPresent();
    }

    Optional<java.time.LocalDateTime> lastControl(Result result) {
      Optional<Calibration> calibration = records.bench().calibrationOf(result);
      return records.of(Role.CONTROL).stream()
          .filter(c -> c.instrument().equals(result.instrument()) && records.counts(c))
          .filter(c -> !c.takenAt().isAfter(result.takenAt()))
          .filter(c -> records.bench().calibrationOf(c).equals(calibration))
          .reduce((earlier, later) -> later)
          .map(Result::takenAt);
    }
  }
}
