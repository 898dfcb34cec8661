package org.quietline.assess;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.quietline.bench.Result;

/**
 * One sitting at the bench: results of one method on one instrument with gaps under four hours, and
 * neither another calibration nor another session named.
 */
final class Sessions {
  private static final Duration GAP = Duration.ofHours(4);

  private Sessions() {}

  static List<List<Logged>> of(List<Logged> inTime) {
    return of(inTime, Logged::result, l -> l.result().calibration());
  }

  /** The same of anything that has a result and, perhaps, a calibration behind it. */
  static <T> List<List<T>> of(
      List<T> inTime, Function<T, Result> result, Function<T, Optional<String>> calibration) {
    Map<String, List<T>> current = new LinkedHashMap<>();
    List<List<T>> sessions = new ArrayList<>();
    for (T one : inTime) {
      String instrument = result.apply(one).instrument();
      List<T> session = current.get(instrument);
      if (session == null || !goesOn(session.get(session.size() - 1), one, result, calibration)) {
        session = new ArrayList<>();
        sessions.add(session);
        current.put(instrument, session);
      }
      session.add(one);
    }
    return sessions;
  }

  private static <T> boolean goesOn(
      T last, T next, Function<T, Result> result, Function<T, Optional<String>> calibration) {
    Result before = result.apply(last);
    Result after = result.apply(next);
    if (before.session().isPresent() && after.session().isPresent()) {
      return before.session().equals(after.session());
    }
    return Duration.between(before.takenAt(), after.takenAt()).compareTo(GAP) < 0
        && mayBeSame(calibration.apply(last), calibration.apply(next));
  }

  private static boolean mayBeSame(Optional<String> one, Optional<String> other) {
    return one.isEmpty() || other.isEmpty() || one.equals(other);
  }
}
