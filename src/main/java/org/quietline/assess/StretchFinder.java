package org.quietline.assess;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.quietline.assess.ControlHistory.Entry;
import org.quietline.assess.Story.OnsetFrom;
import org.quietline.bench.Rule;
import org.quietline.stats.control.CumulativeSum;
import org.quietline.stats.control.StepChange;

/**
 * Finds the results a signal most likely stands for: those since the likeliest beginning of a step,
 * or for a cumulative sum since it was last zero. It looks back to the last calibration, and beyond
 * it where the results before it were off to the same side by at least half as much, because then
 * the calibration changed nothing.
 */
final class StretchFinder {
  /** A move that lost half its size has gone. */
  static final double HALF = 0.5;

  /** Rules about one result or about no control result, which say nothing about the level. */
  private static final Set<Rule> NOT_ABOUT_LEVEL =
      Set.of(
          Rule.READINGS_DISAGREE,
          Rule.MOVING_RANGE_BEYOND_LIMIT,
          Rule.CALIBRATION_STEP,
          Rule.BLANK_DRIFTING,
          Rule.METHODS_DISAGREE);

  private final ControlHistory history;

  StretchFinder(ControlHistory history) {
    this.history = history;
  }

  Stretch find(Signal signal) {
    Optional<Entry> entry = history.at(ControlPlace.of(signal.id()));
    if (entry.isEmpty() || entry.get().excluded() || !entry.get().isCharted()) {
      return alone(signal, entry, 0);
    }
    if (NOT_ABOUT_LEVEL.contains(signal.id().rule())) {
      return alone(signal, entry, 0);
    }
    return stretch(signal, entry.get());
  }

  private static Stretch alone(Signal signal, Optional<Entry> entry, int side) {
    return new Stretch(signal, entry.stream().toList(), side, OnsetFrom.THE_RESULT_ALONE);
  }

  private Stretch stretch(Signal signal, Entry last) {
    List<Entry> whole = history.counted(last.instrument(), last.material());
    List<Entry> stream = whole.subList(0, ControlHistory.upTo(whole, last.at()));
    int start = windowStart(stream, stream.size() - 1);
    if (signal.id().rule() == Rule.CUMULATIVE_SUM_BEYOND_LIMIT) {
      Optional<List<Entry>> sinceZero = sinceZero(stream.subList(start, stream.size()));
      if (sinceZero.isPresent()) {
        List<Entry> results = sinceZero.get();
        return new Stretch(signal, results, side(results), OnsetFrom.LAST_ZERO);
      }
    }
    List<Entry> results = stream.subList(firstAfterStep(stream, start), stream.size());
    boolean otherSide = side(results) != (int) Math.signum(last.difference());
    if (signal.id().rule() == Rule.BEYOND_ACTION_LIMIT && otherSide) {
      return alone(signal, Optional.of(last), -side(results));
    }
    return new Stretch(signal, results, side(results), OnsetFrom.STEP);
  }

  /** The first result of the calibration window that a result lies in. */
  private static int windowStart(List<Entry> stream, int at) {
    int start = at;
    while (start > 0
        && stream.get(start - 1).calibrationKey().equals(stream.get(at).calibrationKey())) {
      start--;
    }
    return start;
  }

  private static int firstAfterStep(List<Entry> stream, int windowStart) {
    int start = windowStart;
    int first = start + step(stream.subList(start, stream.size()));
    while (first == start && start > 0) {
      int earlier = windowStart(stream, start - 1);
      int wider = earlier + step(stream.subList(earlier, stream.size()));
      if (wider >= start
          || !alike(stream.subList(wider, start), stream.subList(start, stream.size()))) {
        break;
      }
      first = wider;
      start = earlier;
    }
    return first;
  }

  private static int step(List<Entry> results) {
    return StepChange.before(0, results.stream().mapToDouble(Entry::deviation).toArray()).first();
  }

  /** Whether results before a calibration were off as those after it are. */
  private static boolean alike(List<Entry> before, List<Entry> after) {
    return mean(before) / mean(after) >= HALF;
  }

  static double mean(List<Entry> results) {
    return results.stream().mapToDouble(Entry::deviation).average().orElse(0);
  }

  private static int side(List<Entry> results) {
    return (int) Math.signum(mean(results));
  }

  private static Optional<List<Entry>> sinceZero(List<Entry> window) {
    double[] deviations = window.stream().mapToDouble(Entry::deviation).toArray();
    List<CumulativeSum.Point> trace =
        CumulativeSum.usual(0, 1).trace(deviations, new boolean[deviations.length]);
    CumulativeSum.Point at = trace.get(trace.size() - 1);
    CumulativeSum.Arm arm = at.high().sum() >= at.low().sum() ? at.high() : at.low();
    return arm.count() == 0
        ? Optional.empty()
        : Optional.of(window.subList(window.size() - arm.count(), window.size()));
  }
}
