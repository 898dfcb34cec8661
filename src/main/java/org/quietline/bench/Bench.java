package org.quietline.bench;

import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * One laboratory's own test bench: its settings and everything it recorded.
 *
 * @param settings what the bench set down about itself
 * @param results every result taken in, in time order
 * @param calibrations every calibration, in time order
 * @param reagentLots the reagent lots
 * @param actions causes and actions recorded for signals
 * @param outsideResults results of outside laboratories
 * @param conflicts rows that stand against a result taken in
 */
public record Bench(
    Settings settings,
    List<Result> results,
    List<Calibration> calibrations,
    List<ReagentLot> reagentLots,
    List<Action> actions,
    List<OutsideResult> outsideResults,
    List<Conflict> conflicts) {

  /** Copies the lists and puts results and calibrations in time order, ties in the given order. */
  public Bench {
    results = results.stream().sorted(Comparator.comparing(Result::takenAt)).toList();
    calibrations =
        calibrations.stream().sorted(Comparator.comparing(Calibration::calibratedAt)).toList();
    reagentLots = List.copyOf(reagentLots);
    actions = List.copyOf(actions);
    outsideResults = List.copyOf(outsideResults);
    conflicts = List.copyOf(conflicts);
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
   * recorded later, and with the rows that those actions chose among rows in conflict. Reagent lots
   * and outside results carry no time of recording and stay.
   *
   * @param moment local time of the bench
   * @return the bench as of then
   */
  public Bench asOf(LocalDateTime moment) {
    List<Action> actionsThen =
        actions.stream().filter(a -> !a.recordedAt().isAfter(moment)).toList();
    Map<Origin, Result> chosen = new HashMap<>();
    for (Conflict conflict : conflicts) {
      if (decisionOn(conflict, actionsThen).filter(conflict.other().origin()::equals).isPresent()) {
        chosen.put(conflict.first().origin(), conflict.other());
      }
    }
    return new Bench(
        settings,
        results.stream()
            .filter(r -> !r.takenAt().isAfter(moment))
            .map(r -> chosen.getOrDefault(r.origin(), r))
            .toList(),
        calibrations.stream().filter(c -> !c.calibratedAt().isAfter(moment)).toList(),
        reagentLots,
        actionsThen,
        outsideResults,
        conflicts.stream().filter(c -> !c.first().takenAt().isAfter(moment)).toList());
  }

  /**
   * The conflicts that no action has settled. An action settles one when it names its id and a
   * cause, and chooses a row that is one of those in conflict.
   *
   * @return in the order in which they were met
   */
  public List<Conflict> openConflicts() {
    return conflicts.stream().filter(c -> decisionOn(c, actions).isEmpty()).toList();
  }

  private Optional<Origin> decisionOn(Conflict conflict, List<Action> among) {
    Set<Origin> rows = new HashSet<>();
    conflicts.stream()
        .filter(c -> c.id().equals(conflict.id()))
        .forEach(c -> rows.addAll(List.of(c.first().origin(), c.other().origin())));
    return among.stream()
        .filter(a -> a.matter().equals(conflict.id()) && a.cause().isPresent())
        .filter(a -> a.useRow().filter(rows::contains).isPresent())
        .max(Comparator.comparing(Action::recordedAt))
        .flatMap(Action::useRow);
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
   * The action that closes a signal or answers a question: the latest that names it and a cause.
   *
   * @param matter the signal or question
   * @return empty while it is open
   */
  public Optional<Action> closing(Matter matter) {
    return actions.stream()
        .filter(a -> a.matter().equals(matter) && a.cause().isPresent())
        .max(Comparator.comparing(Action::recordedAt));
  }
}
