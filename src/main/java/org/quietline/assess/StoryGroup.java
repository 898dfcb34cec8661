package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.quietline.assess.ControlHistory.Entry;
import org.quietline.bench.Action;
import org.quietline.bench.Calibration;

/** Signals on their way to be one story. */
final class StoryGroup {
  /** How many good results between two signals say that the first move had gone. */
  private static final int GOOD_BETWEEN = 4;

  /** How many results after a calibration tell whether it changed anything. */
  private static final int AFTER_CALIBRATION = 4;

  private final ControlHistory history;
  private final List<Calibration> calibrations;
  private final List<Stretch> stretches = new ArrayList<>();
  private final Set<ControlPlace> places = new HashSet<>();

  /** The materials whose results gave its signals. */
  private final Set<String> materials = new HashSet<>();

  private Stretch earliest;
  private Optional<List<Entry>> results = Optional.empty();
  private Optional<Optional<Calibration>> resetBy = Optional.empty();

  StoryGroup(ControlHistory history, List<Calibration> all, Stretch first) {
    this.history = history;
    this.calibrations =
        all.stream().filter(c -> c.instrument().equals(first.signal().id().instrument())).toList();
    stretches.add(first);
    places.add(first.place());
    first.results().forEach(e -> materials.add(e.material()));
    earliest = first;
  }

  void take(StoryGroup other) {
    stretches.addAll(other.stretches);
    stretches.sort(Comparator.comparing(Stretch::last).thenComparing(s -> s.signal().id().rule()));
    places.addAll(other.places);
    materials.addAll(other.materials);
    earliest = stretches.stream().min(Comparator.comparing(Stretch::first)).orElseThrow();
    results = Optional.empty();
    resetBy = Optional.empty();
  }

  List<Stretch> stretches() {
    return stretches;
  }

  String instrument() {
    return earliest.signal().id().instrument();
  }

  Stretch earliest() {
    return earliest;
  }

  LocalDateTime first() {
    return earliest.first();
  }

  LocalDateTime last() {
    return stretches.get(stretches.size() - 1).last();
  }

  /** 1 above the centre, −1 below, 0 where no signal says anything about the level. */
  int side() {
    return stretches.stream().mapToInt(Stretch::side).filter(s -> s != 0).findFirst().orElse(0);
  }

  /** The results of the instrument from the onset to the latest signal. */
  List<Entry> results() {
    if (results.isEmpty()) {
      List<Entry> charted = history.charted(instrument());
      results =
          Optional.of(
              charted
                  .subList(
                      ControlHistory.before(charted, first()), ControlHistory.upTo(charted, last()))
                  .stream()
                  .filter(e -> !e.excluded() || places.contains(e.place()))
                  .toList());
    }
    return results.orElseThrow();
  }

  /** Whether a later signal has the same origin. */
  boolean goesOnWith(Stretch later) {
    if (!instrument().equals(later.signal().id().instrument())) {
      return false;
    }
    if (places.contains(later.place())) {
      return true;
    }
    boolean overlap = !later.first().isAfter(last());
    return later.side() != 0
        && later.side() == side()
        && (overlap || isNear(later))
        && !isReset(later.first());
  }

  /** Whether no signal of it is on a control result that is a number. */
  boolean isFree() {
    return stretches.stream().allMatch(s -> s.results().isEmpty());
  }

  /** Whether another story lies between its onset and its latest signal. */
  boolean spans(StoryGroup other) {
    return instrument().equals(other.instrument())
        && !other.first().isBefore(first())
        && !other.last().isAfter(last());
  }

  private boolean isNear(Stretch later) {
    List<Entry> stream = history.counted(instrument(), later.signal().id().material());
    int between =
        ControlHistory.before(stream, later.first()) - ControlHistory.upTo(stream, last());
    return between < GOOD_BETWEEN;
  }

  private boolean isReset(LocalDateTime before) {
    return calibrations.stream()
        .filter(c -> c.calibratedAt().isAfter(last()) && !c.calibratedAt().isAfter(before))
        .anyMatch(this::resets);
  }

  /** The calibration that ended it. */
  Optional<Calibration> resetBy() {
    if (resetBy.isEmpty()) {
      resetBy =
          Optional.of(
              calibrations.stream()
                  .filter(c -> c.calibratedAt().isAfter(last()))
                  .filter(this::resets)
                  .findFirst());
    }
    return resetBy.orElseThrow();
  }

  private boolean resets(Calibration calibration) {
    List<Entry> before = results().stream().filter(e -> materials.contains(e.material())).toList();
    List<Entry> counted = history.counted(instrument());
    List<Entry> after =
        counted
            .subList(ControlHistory.upTo(counted, calibration.calibratedAt()), counted.size())
            .stream()
            .filter(e -> materials.contains(e.material()))
            .limit(AFTER_CALIBRATION)
            .toList();
    double was = StretchFinder.mean(before);
    return !after.isEmpty() && was != 0 && StretchFinder.mean(after) / was < StretchFinder.HALF;
  }

  boolean isOpen() {
    return stretches.stream().anyMatch(s -> s.signal().open());
  }

  /** When its last cause was recorded, once all its signals are closed. */
  Optional<LocalDateTime> closedAt() {
    return isOpen()
        ? Optional.empty()
        : stretches.stream()
            .flatMap(s -> s.signal().closing().stream())
            .map(Action::recordedAt)
            .max(LocalDateTime::compareTo);
  }

  /** When it had ended: by a calibration, or by what was done; absent while it goes on. */
  Optional<LocalDateTime> endedAt() {
    Optional<LocalDateTime> reset = resetBy().map(Calibration::calibratedAt);
    Optional<LocalDateTime> closed = closedAt();
    return reset.isPresent() && closed.isPresent()
        ? Optional.of(reset.get().isBefore(closed.get()) ? reset.get() : closed.get())
        : reset.or(() -> closed);
  }
}
