package org.quietline.assess;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.quietline.assess.Records.StreamKey;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.Action;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;
import org.quietline.bench.Rule;
import org.quietline.bench.SignalId;

/** Finds the rules a stream's results broke. */
final class SignalFinder {
  private final Records records;
  private final StreamKey key;
  private final List<Signal> found = new ArrayList<>();
  private final Set<SignalId> broken = new HashSet<>();

  SignalFinder(Records records, StreamKey key) {
    this.records = records;
    this.key = key;
  }

  /**
   * The signals, in time order, at one result in the order of the rules.
   *
   * @param results all results of the stream
   * @param points the same as points
   */
  List<Signal> find(List<Result> results, List<Point> points) {
    for (int i = 0; i < points.size(); i++) {
      judge(results.get(i), points.get(i));
    }
    List<Point> counted = new ArrayList<>();
    List<Result> ofCounted = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      if (points.get(i).counts()) {
        counted.add(points.get(i));
        ofCounted.add(results.get(i));
      }
    }
    for (SeriesRules.Broken broken : SeriesRules.of(counted)) {
      add(
          ofCounted.get(broken.at()),
          broken.rule(),
          broken.value(),
          broken.limit(),
          broken.points().stream().map(p -> counted.get(p).at()).toList(),
          broken.size());
    }
    found.sort(Comparator.comparing((Signal s) -> s.id().at()).thenComparing(s -> s.id().rule()));
    return List.copyOf(found);
  }

  /** Every rule that was found broken, also those the bench does not use. */
  Set<SignalId> broken() {
    return broken;
  }

  private void judge(Result result, Point point) {
    if (point.value().isPresent()) {
      point.judgedBy().ifPresent(limits -> single(result, point.value().getAsDouble(), limits));
    } else {
      point.judgedBy().ifPresent(limits -> censored(result, limits));
    }
    if (point.weightedMean().isPresent()) {
      double mean = point.weightedMean().getAsDouble();
      double centre =
          (point.weightedLower().getAsDouble() + point.weightedUpper().getAsDouble()) / 2;
      check(
          result,
          Rule.WEIGHTED_MEAN_BEYOND_LIMIT,
          mean,
          point.weightedLower().getAsDouble(),
          point.weightedUpper().getAsDouble(),
          OptionalDouble.of(mean - centre));
    }
    if (point.range().isPresent() && point.rangeUpper().isPresent()) {
      check(
          result,
          Rule.READINGS_DISAGREE,
          point.range().getAsDouble(),
          0,
          point.rangeUpper().getAsDouble(),
          OptionalDouble.empty());
    }
  }

  private void single(Result result, double value, InForce limits) {
    check(
        result,
        Rule.BEYOND_ACTION_LIMIT,
        value,
        limits.lowerAction(),
        limits.upperAction(),
        OptionalDouble.of(value - limits.centre()));
  }

  /** A bound beyond a limit proves that the result is beyond it, too. */
  private void censored(Result result, InForce limits) {
    for (Reading reading : result.readings()) {
      if (reading instanceof Reading.Above above
          && isAtLeast(above.bound(), limits.upperAction())) {
        bound(result, above.bound().doubleValue(), limits.upperAction(), limits);
        return;
      }
      if (reading instanceof Reading.Below below
          && !isAtLeast(below.bound(), Math.nextUp(limits.lowerAction()))) {
        bound(result, below.bound().doubleValue(), limits.lowerAction(), limits);
        return;
      }
    }
  }

  private void bound(Result result, double bound, double limit, InForce limits) {
    add(
        result,
        Rule.BEYOND_ACTION_LIMIT,
        bound,
        limit,
        List.of(result.takenAt()),
        OptionalDouble.of(bound - limits.centre()));
  }

  private static boolean isAtLeast(BigDecimal bound, double limit) {
    return bound.doubleValue() >= limit;
  }

  private void check(
      Result result, Rule rule, double value, double lower, double upper, OptionalDouble size) {
    if (value > upper || value < lower) {
      add(result, rule, value, value > upper ? upper : lower, List.of(result.takenAt()), size);
    }
  }

  private void add(
      Result result,
      Rule rule,
      double value,
      double limit,
      List<LocalDateTime> points,
      OptionalDouble size) {
    SignalId id =
        new SignalId(
            records.method().key(), key.instrument(), key.material().key(), result.takenAt(), rule);
    broken.add(id);
    Optional<Action> closing = records.bench().closing(id);
    boolean open = closing.isEmpty() && !records.bench().isExcluded(result);
    records
        .bench()
        .settings()
        .chart()
        .weightOf(rule)
        .ifPresent(
            weight -> found.add(new Signal(id, weight, value, limit, points, size, open, closing)));
  }
}
