package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.quietline.assess.Records.StreamKey;
import org.quietline.bench.Action;
import org.quietline.bench.Bench;
import org.quietline.bench.Material;
import org.quietline.bench.Method;
import org.quietline.bench.Result;
import org.quietline.bench.SignalId;

/**
 * Which actions on control results act: those that name a signal which was found. One that names
 * another closes nothing, takes no result out and starts nothing anew.
 *
 * <p>Whether a signal is found hangs on the actions before it, so they are looked at in the order
 * in which they were recorded. A signal counts as found whether or not the bench still uses its
 * rule.
 */
final class FoundedActions {
  private final Bench bench;
  private final Period period;
  private final LocalDateTime now;

  private FoundedActions(Bench bench, Period period, LocalDateTime now) {
    this.bench = bench;
    this.period = period;
    this.now = now;
  }

  /** The bench without the actions that are not founded. */
  static Bench only(Bench bench, Period period, LocalDateTime now) {
    List<Action> onControls =
        bench.actions().stream()
            .filter(a -> a.cause().isPresent() && material(bench, a).isPresent())
            .filter(a -> !a.matter().isTooEarly(a.recordedAt()))
            .sorted(Comparator.comparing(Action::recordedAt))
            .toList();
    if (onControls.isEmpty()) {
      return bench;
    }
    List<Action> kept = new ArrayList<>(bench.actions());
    kept.removeAll(onControls);
    FoundedActions founded = new FoundedActions(bench, period, now);
    for (Action action : onControls) {
      if (founded.with(kept).isFound((SignalId) action.matter())) {
        kept.add(action);
      }
    }
    List<Action> inOrder = new ArrayList<>(bench.actions());
    Set<Action> found = new HashSet<>(kept);
    inOrder.removeIf(a -> !found.contains(a));
    return founded.with(inOrder).bench;
  }

  private static Optional<Material> material(Bench bench, Action action) {
    return action.matter() instanceof SignalId id
        ? bench.settings().material(id.method(), id.material())
        : Optional.empty();
  }

  private FoundedActions with(List<Action> actions) {
    return new FoundedActions(
        new Bench(
            bench.settings(),
            bench.results(),
            bench.calibrations(),
            bench.reagentLots(),
            actions,
            bench.outsideResults(),
            bench.conflicts(),
            bench.temperatures()),
        period,
        now);
  }

  private boolean isFound(SignalId id) {
    Optional<Method> method =
        bench.settings().methods().stream().filter(m -> m.key().equals(id.method())).findFirst();
    if (method.isEmpty()) {
      return false;
    }
    Records records = Records.of(bench, method.get(), period, now);
    return records.streams().entrySet().stream()
        .filter(e -> isOf(e.getKey(), id))
        .anyMatch(e -> broken(records, e.getKey(), e.getValue()).contains(id));
  }

  private static boolean isOf(StreamKey key, SignalId id) {
    return key.instrument().equals(id.instrument()) && key.material().key().equals(id.material());
  }

  private static Set<SignalId> broken(Records records, StreamKey key, List<Result> results) {
    List<Result> counted = results.stream().filter(records::counts).toList();
    Baselines baselines = Baselines.of(records, key, counted);
    SignalFinder finder = new SignalFinder(records, key);
    finder.find(results, StreamPoints.of(records, key, results, counted, baselines).points());
    return finder.broken();
  }
}
