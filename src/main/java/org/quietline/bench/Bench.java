package org.quietline.bench;

import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
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
 * @param temperatures temperatures at the places where reagents are kept
 */
public record Bench(
    Settings settings,
    List<Result> results,
    List<Calibration> calibrations,
    List<ReagentLot> reagentLots,
    List<Action> actions,
    List<OutsideResult> outsideResults,
    List<Conflict> conflicts,
    List<Temperature> temperatures) {

  /** Copies the lists and puts results and calibrations in time order, ties in the given order. */
  public Bench {
    results = results.stream().sorted(Comparator.comparing(Result::takenAt)).toList();
    calibrations =
        calibrations.stream().sorted(Comparator.comparing(Calibration::calibratedAt)).toList();
    reagentLots = List.copyOf(reagentLots);
    actions = List.copyOf(actions);
    outsideResults = List.copyOf(outsideResults);
    conflicts = List.copyOf(conflicts);
    temperatures = List.copyOf(temperatures);
  }

  /**
   * A bench that records no temperatures of reagents.
   *
   * @param settings what the bench set down about itself
   * @param results every result taken in
   * @param calibrations every calibration
   * @param reagentLots the reagent lots
   * @param actions causes and actions recorded for signals
   * @param outsideResults results of outside laboratories
   * @param conflicts rows that stand against a result taken in
   */
  public Bench(
      Settings settings,
      List<Result> results,
      List<Calibration> calibrations,
      List<ReagentLot> reagentLots,
      List<Action> actions,
      List<OutsideResult> outsideResults,
      List<Conflict> conflicts) {
    this(
        settings,
        results,
        calibrations,
        reagentLots,
        actions,
        outsideResults,
        conflicts,
        List.of());
  }

  /**
   * The calibration a result was made under: the one its row names, else the latest calibration of
   * its method and instrument at or before it.
   *
   * @param result a result of this bench
   * @return empty when the bench recorded no such calibration, or made the one named only later
   */
  public Optional<Calibration> calibrationOf(Result result) {
    if (result.calibration().isPresent()) {
      String named = result.calibration().get();
      return calibrations.stream()
          .filter(c -> c.key().equals(named) && c.isFor(result.method(), result.instrument()))
          .filter(c -> !c.calibratedAt().isAfter(result.takenAt()))
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
      if (settling(conflict, actionsThen)
          .flatMap(Action::useRow)
          .filter(conflict.other().origin()::equals)
          .isPresent()) {
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
        conflicts.stream().filter(c -> !c.first().takenAt().isAfter(moment)).toList(),
        temperatures.stream().filter(t -> !t.takenAt().isAfter(moment)).toList());
  }

  /**
   * The conflicts that no action has settled. An action settles one when it names its id and a
   * cause, and chooses a row that is one of those in conflict.
   *
   * @return in the order in which they were met
   */
  public List<Conflict> openConflicts() {
    return conflicts.stream().filter(c -> settling(c).isEmpty()).toList();
  }

  /**
   * The action that settles a conflict: the latest that names its id and a cause and chooses a row
   * that is one of those in conflict.
   *
   * @param conflict a conflict of this bench
   * @return empty while it is open
   */
  public Optional<Action> settling(Conflict conflict) {
    return settling(conflict, actions);
  }

  private Optional<Action> settling(Conflict conflict, List<Action> among) {
    Set<Origin> rows = rowsIn(conflict.id());
    return among.stream()
        .filter(a -> a.matter().equals(conflict.id()) && a.cause().isPresent())
        .filter(a -> a.useRow().filter(rows::contains).isPresent())
        .filter(a -> !a.matter().isTooEarly(a.recordedAt()))
        .max(Comparator.comparing(Action::recordedAt));
  }

  /**
   * The rows that claim to be one result.
   *
   * @param conflict the id of a conflict
   * @return where they stand; empty when there is no such conflict
   */
  public Set<Origin> rowsIn(QuestionId conflict) {
    Set<Origin> rows = new LinkedHashSet<>();
    conflicts.stream()
        .filter(c -> c.id().equals(conflict))
        .forEach(c -> rows.addAll(List.of(c.first().origin(), c.other().origin())));
    return rows;
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
        .filter(a -> !matter.isTooEarly(a.recordedAt()))
        .max(Comparator.comparing(Action::recordedAt));
  }
}
