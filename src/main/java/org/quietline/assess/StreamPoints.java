package org.quietline.assess;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import org.quietline.assess.Records.StreamKey;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.Calibration;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.ChartSettings.RestartAt;
import org.quietline.bench.Result;
import org.quietline.stats.control.WeightedMean;

/** The results of one stream as points of its chart: limits, weighted mean, events. */
final class StreamPoints {
  private final Records records;
  private final ChartSettings chart;
  private final Baselines baselines;
  private final List<Result> counted;
  private final List<Set<RestartAt>> events;
  private final boolean[] restarts;
  private final List<Optional<WeightedMean.Point>> means = new ArrayList<>();

  private StreamPoints(Records records, StreamKey key, List<Result> counted, Baselines baselines) {
    this.records = records;
    this.chart = records.bench().settings().chart();
    this.baselines = baselines;
    this.counted = counted;
    this.events = Restarts.before(records, key, counted);
    this.restarts = new boolean[counted.size()];
    for (int i = 1; i < restarts.length; i++) {
      restarts[i] = !Collections.disjoint(events.get(i), chart.restartAt()) || limitsChange(i);
    }
  }

  /**
   * The points.
   *
   * @param results all results of the stream, in time order
   * @param counted those of them that count
   */
  static Judged of(
      Records records,
      StreamKey key,
      List<Result> results,
      List<Result> counted,
      Baselines baselines) {
    StreamPoints points = new StreamPoints(records, key, counted, baselines);
    points.followMeans();
    JudgingLimits limits = new JudgingLimits(records, baselines, StartUp.of(records, key));
    List<Point> judged = points.points(results, limits);
    return new Judged(judged, limits.next());
  }

  /**
   * Points, and the limits that will judge the next one.
   *
   * @param points the points
   * @param next the limits, where there are any
   */
  record Judged(List<Point> points, Optional<InForce> next) {}

  private boolean limitsChange(int i) {
    return !baselines.at(counted.get(i)).equals(baselines.at(counted.get(i - 1)));
  }

  private void followMeans() {
    int start = 0;
    while (start < counted.size()) {
      int end = start + 1;
      while (end < counted.size() && !limitsChange(end)) {
        end++;
      }
      List<Result> stretch = counted.subList(start, end);
      Optional<Baseline> ruling = baselines.at(counted.get(start));
      if (ruling.isPresent()) {
        double[] values =
            stretch.stream().mapToDouble(r -> records.value(r).orElseThrow()).toArray();
        boolean[] anew = Arrays.copyOfRange(restarts, start, end);
        Baselines.weightedMean(ruling.get(), chart, values, anew)
            .forEach(mean -> means.add(Optional.of(mean)));
      } else {
        stretch.forEach(r -> means.add(Optional.empty()));
      }
      start = end;
    }
  }

  private List<Point> points(List<Result> results, JudgingLimits limits) {
    Set<Result> base = Collections.newSetFromMap(new IdentityHashMap<>());
    base.addAll(baselines.latest().base());
    List<Point> points = new ArrayList<>();
    int next = 0;
    for (Result result : results) {
      boolean counts = records.counts(result);
      Optional<WeightedMean.Point> mean = counts ? means.get(next) : Optional.empty();
      points.add(
          new Point(
              result.takenAt(),
              records.value(result),
              result.pair().map(p -> OptionalDouble.of(p.range())).orElse(OptionalDouble.empty()),
              records.bench().isExcluded(result),
              base.contains(result),
              limits.of(result),
              limits.rangeUpper(result),
              counts ? events.get(next) : Set.of(),
              counts && restarts[next],
              records.bench().calibrationOf(result).map(Calibration::key),
              of(mean, WeightedMean.Point::mean),
              of(mean, WeightedMean.Point::lower),
              of(mean, WeightedMean.Point::upper),
              result.origin().file(),
              result.origin().line()));
      if (counts) {
        limits.add(result);
        next++;
      }
    }
    return points;
  }

  private static OptionalDouble of(
      Optional<WeightedMean.Point> mean, Function<WeightedMean.Point, Double> part) {
    return mean.map(part).map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }
}
