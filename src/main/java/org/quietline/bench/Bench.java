package org.quietline.bench;

import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * One laboratory's own test bench: its settings and everything it recorded.
 *
 * @param settings what the bench set down about itself
 * @param results every result taken in, in time order
 * @param calibrations every calibration, in time order
 * @param reagentLots the reagent lots
 * @param actions causes and actions recorded for signals
 * @param outsideResults results of outside laboratories
 */
public record Bench(
    Settings settings,
    List<Result> results,
    List<Calibration> calibrations,
    List<ReagentLot> reagentLots,
    List<Action> actions,
    List<OutsideResult> outsideResults) {

  /** Copies the lists and puts results and calibrations in time order, ties in the given order. */
  public Bench {
    results = results.stream().sorted(Comparator.comparing(Result::takenAt)).toList();
    calibrations =
        calibrations.stream().sorted(Comparator.comparing(Calibration::calibratedAt)).toList();
    reagentLots = List.copyOf(reagentLots);
    actions = List.copyOf(actions);
    outsideResults = List.copyOf(outsideResults);
  }

  /**
   * The calibration a result was made under: the one its row names, else the latest calibration of
   * its method and instrument at or before it.
   *
   * @param result a result of this bench
   * @return empty when the bench recorded no such calibration
   */
  public Optional<Calibration> calibrationOf(Result result) {
    if (result.calibration().isPresent()) {
      String named = result.calibration().get();
      return calibrations.stream()
          .filter(c -> c.key().equals(named) && c.isFor(result.method(), result.instrument()))
          .findFirst();
    }
    return calibrations.stream()
        .filter(c -> c.isFor(result.method(), result.instrument()))
        .filter(c -> !c.calibratedAt().isAfter(result.takenAt()))
        .reduce((earlier, later) -> later);
  }

  /**
   * The bench as it stood at a moment: without the results, calibrations and actions that were
   * recorded later. Reagent lots and outside results carry no time of recording and stay.
   *
   * @param moment local time of the bench
   * @return the bench as of then
   */
  public Bench asOf(LocalDateTime moment) {
    return new Bench(
        settings,
        results.stream().filter(r -> !r.takenAt().isAfter(moment)).toList(),
        calibrations.stream().filter(c -> !c.calibratedAt().isAfter(moment)).toList(),
        reagentLots,
        actions.stream().filter(a -> !a.recordedAt().isAfter(moment)).toList(),
        outsideResults);
  }

  /**
   * The reagent lot a result was made with.
   *
   * @param result a result of this bench
   * @return empty when the row names no lot, or one that the bench did not record for the method
   */
  public Optional<ReagentLot> reagentLotOf(Result result) {
    return result
        .reagentLot()
        .flatMap(
            lot ->
                reagentLots.stream()
                    .filter(r -> r.key().equals(lot) && r.method().equals(result.method()))
                    .findFirst());
  }

  /**
   * Whether an action with a cause took this result out of baselines and statistics.
   *
   * @param result a result of this bench
   * @return true when some action excludes it
   */
  public boolean isExcluded(Result result) {
    return actions.stream().anyMatch(a -> a.excludes(result));
  }

  /**
   * The action that closes a signal: the latest that names it and a cause.
   *
   * @param signal the signal
   * @return empty while the signal is open
   */
  public Optional<Action> closing(SignalId signal) {
    return actions.stream()
        .filter(a -> a.signal().equals(signal) && a.cause().isPresent())
        .max(Comparator.comparing(Action::recordedAt));
  }
}
