package org.quietline.assess;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.quietline.assess.Records.StreamKey;
import org.quietline.bench.Action;
import org.quietline.bench.Calibration;
import org.quietline.bench.ChartSettings.RestartAt;
import org.quietline.bench.Result;
import org.quietline.bench.SignalId;

/** What happened between the results of a stream, and where its running figures start anew. */
final class Restarts {
  private final Records records;
  private final StreamKey key;
  private final List<Action> closing;

  private Restarts(Records records, StreamKey key) {
    this.records = records;
    this.key = key;
    this.closing = records.bench().actions().stream().filter(this::closesASignal).toList();
  }

  /** What happened before each result, since the one before it; nothing before the first. */
  static List<Set<RestartAt>> before(Records records, StreamKey key, List<Result> inTime) {
    Restarts restarts = new Restarts(records, key);
    List<Set<RestartAt>> events = new ArrayList<>();
    Optional<String> lot = Optional.empty();
    for (int i = 0; i < inTime.size(); i++) {
      Result result = inTime.get(i);
      Set<RestartAt> since =
          i == 0 ? EnumSet.noneOf(RestartAt.class) : restarts.between(inTime.get(i - 1), result);
      Optional<String> known = lot;
      if (result
          .reagentLot()
          .filter(l -> known.isPresent() && !l.equals(known.get()))
          .isPresent()) {
        since.add(RestartAt.REAGENT_LOT);
      }
      lot = result.reagentLot().or(() -> known);
      events.add(since);
    }
    return events;
  }

  private boolean closesASignal(Action action) {
    return action.cause().isPresent()
        && action.matter() instanceof SignalId id
        && id.method().equals(records.method().key())
        && id.instrument().equals(key.instrument())
        && id.material().equals(key.material().key())
        && !id.isTooEarly(action.recordedAt());
  }

  private Set<RestartAt> between(Result earlier, Result later) {
    Set<RestartAt> events = EnumSet.noneOf(RestartAt.class);
    if (!calibration(earlier).equals(calibration(later))) {
      events.add(RestartAt.CALIBRATION);
    }
    if (closing.stream()
        .anyMatch(
            a ->
                !a.recordedAt().isBefore(earlier.takenAt())
                    && a.recordedAt().isBefore(later.takenAt()))) {
      events.add(RestartAt.CLOSED_SIGNAL);
    }
    return events;
  }

  private Optional<String> calibration(Result result) {
    return records.bench().calibrationOf(result).map(Calibration::key);
  }
}
