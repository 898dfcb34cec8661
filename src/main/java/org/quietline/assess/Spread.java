package org.quietline.assess;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.quietline.stats.sample.RobustSummary;

/**
 * How far sound numbers lie apart, by level: precision follows the level, so each is judged by the
 * ones nearest to it.
 */
final class Spread {
  /** Fewer show nothing. */
  static final int FEWEST = 5;

  /** So many nearest are looked at. */
  private static final int NEAREST = 61;

  private final double[] levels;
  private final double[] values;

  private Spread(double[] levels, double[] values) {
    this.levels = levels;
    this.values = values;
  }

  /** A difference of logarithms and the level at which it was seen. */
  record At(double level, double value) {}

  static Spread of(List<At> seen) {
    List<At> sorted = seen.stream().sorted(Comparator.comparingDouble(At::level)).toList();
    return new Spread(
        sorted.stream().mapToDouble(At::level).toArray(),
        sorted.stream().mapToDouble(At::value).toArray());
  }

  /** The differences nearest to a level; empty when there are too few. */
  Optional<RobustSummary> at(double level) {
    if (levels.length < FEWEST) {
      return Optional.empty();
    }
    int found = Arrays.binarySearch(levels, level);
    int place = found < 0 ? -found - 1 : found;
    int from = Math.max(0, Math.min(place - NEAREST / 2, levels.length - NEAREST));
    int to = Math.min(levels.length, from + NEAREST);
    return Optional.of(RobustSummary.of(Arrays.copyOfRange(values, from, to)));
  }
}
