package org.quietline.assess;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.quietline.bench.Result;

/**
 * One sitting at the bench: results of one method on one instrument with gaps under four hours, and
 * neither another calibration nor another session named.
 */
final class Sessions {
  private static final Duration GAP = Duration.ofHours(4);

  private Sessions() {}

  static List<List<Logged>> of(List<Logged> inTime) {
    Map<String, List<Logged>> current = new LinkedHashMap<>();
    List<List<Logged>> sessions = new ArrayList<>();
    for (Logged logged : inTime) {
      String instrument = logged.result().instrument();
      List<Logged> session = current.get(instrument);
      if (session == null || !goesOn(session.get(session.size() - 1).result(), logged.result())) {
        session = new ArrayList<>();
        sessions.add(session);
        current.put(instrument, session);
      }
      session.add(logged);
    }
    return sessions;
  }

  private static boolean goesOn(Result last, Result next) {
    if (last.session().isPresent() && next.session().isPresent()) {
      return last.session().equals(next.session());
    }
    return Duration.between(last.takenAt(), next.takenAt()).compareTo(GAP) < 0
        && mayBeSame(last.calibration(), next.calibration());
  }

  private static boolean mayBeSame(Optional<String> one, Optional<String> other) {
    return one.isEmpty() || other.isEmpty() || one.equals(other);
  }
}
