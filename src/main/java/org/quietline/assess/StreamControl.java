package org.quietline.assess;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.quietline.assess.Records.StreamKey;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.Calibration;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.Material;
import org.quietline.bench.Result;
import org.quietline.bench.Rule;
import org.quietline.stats.compare.Bias;
import org.quietline.stats.control.WeightedMean;
import org.quietline.stats.sample.Summary;

/** Is a control stream in control? */
final class StreamControl {
  /** The fewest results from which provisional limits are computed. */
  static final int FEWEST_FOR_LIMITS = 5;

  /** The fewest results for limits that are not provisional. Source: ISO 4259-4 practice. */
  static final int FEWEST_FOR_SETTLED_LIMITS = 15;

  /** The confidence with which guaranteed limits keep their false-signal rate. */
  static final double GUARANTEE = 0.90;

  /** The rules that are computed. */
  static final Set<Rule> RULES =
      Set.of(Rule.BEYOND_ACTION_LIMIT, Rule.WEIGHTED_MEAN_BEYOND_LIMIT, Rule.READINGS_DISAGREE);

  private final Records records;
  private final FalseSignals falseSignals;
  private final ChartSettings chart;

  StreamControl(Records records, FalseSignals falseSignals) {
    this.records = records;
    this.falseSignals = falseSignals;
    this.chart = records.bench().settings().chart();
  }

  List<StreamFindings> ask() {
    List<StreamFindings> streams = new ArrayList<>();
    for (Map.Entry<StreamKey, List<Result>> stream : records.streams().entrySet()) {
      streams.add(judge(stream.getKey(), stream.getValue()));
    }
    return streams;
  }

  private StreamFindings judge(StreamKey key, List<Result> results) {
    List<Result> counted = results.stream().filter(this::counts).toList();
    Baselines baselines = Baselines.of(records, key, counted);
    List<Result> base = baselines.latest().base();
    Answer<Baseline> baseline = baselines.latest().baseline();
    List<Point> points = points(results, counted, baselines);
    List<Signal> signals = new SignalFinder(records, key, baselines).find(results, points);
    int inPeriod =
        (int) points.stream().filter(p -> p.counts() && records.period().contains(p.at())).count();
    int pairsInPeriod =
        (int)
            points.stream()
                .filter(p -> p.counts() && p.range().isPresent())
                .filter(p -> records.period().contains(p.at()))
                .count();
    return new StreamFindings(
        key.instrument(),
        key.material(),
        points,
        inPeriod,
        baseline,
        signals,
        falseSignals.expected(baseline, inPeriod, pairsInPeriod),
        bias(key.material(), base));
  }

  private boolean counts(Result result) {
    return value(result).isPresent() && !records.bench().isExcluded(result);
  }

  private OptionalDouble value(Result result) {
    return result.value(records.method().replicates());
  }

  private List<Point> points(List<Result> results, List<Result> counted, Baselines baselines) {
    List<Optional<WeightedMean.Point>> trace = trace(counted, baselines);
    Set<Result> base = Collections.newSetFromMap(new IdentityHashMap<>());
    base.addAll(baselines.latest().base());
    List<Point> points = new ArrayList<>();
    int next = 0;
    for (Result result : results) {
      boolean counts = counts(result);
      Optional<WeightedMean.Point> mean = counts ? trace.get(next) : Optional.empty();
      if (counts) {
        next++;
      }
      points.add(point(result, base.contains(result), mean));
    }
    return points;
  }

  /**
   * The mean starts anew at each calibration and at each change of limits. Source: ISO 7870-6
   * practice after an adjustment.
   */
  private List<Optional<WeightedMean.Point>> trace(List<Result> counted, Baselines baselines) {
    List<Optional<WeightedMean.Point>> trace = new ArrayList<>();
    int start = 0;
    while (start < counted.size()) {
      Optional<Baseline> ruling = baselines.at(counted.get(start));
      int end = start + 1;
      while (end < counted.size() && baselines.at(counted.get(end)).equals(ruling)) {
        end++;
      }
      List<Result> stretch = counted.subList(start, end);
      if (ruling.isPresent()) {
        trace(stretch, Baselines.weightedMean(ruling.get().limits(), chart))
            .forEach(point -> trace.add(Optional.of(point)));
      } else {
        stretch.forEach(r -> trace.add(Optional.empty()));
      }
      start = end;
    }
    return trace;
  }

  private List<WeightedMean.Point> trace(List<Result> stretch, WeightedMean mean) {
    List<Optional<String>> calibrations =
        stretch.stream().map(r -> records.bench().calibrationOf(r).map(Calibration::key)).toList();
    double[] values = stretch.stream().mapToDouble(r -> value(r).orElseThrow()).toArray();
    boolean[] restarts = new boolean[values.length];
    for (int i = 1; i < values.length; i++) {
      restarts[i] = !calibrations.get(i).equals(calibrations.get(i - 1));
    }
    return mean.trace(values, restarts);
  }

  private Point point(Result result, boolean inBaseline, Optional<WeightedMean.Point> mean) {
    return new Point(
        result.takenAt(),
        value(result),
        result.pair().map(p -> OptionalDouble.of(p.range())).orElse(OptionalDouble.empty()),
        records.bench().isExcluded(result),
        inBaseline,
        records.bench().calibrationOf(result).map(Calibration::key),
        asDouble(mean.map(WeightedMean.Point::mean)),
        asDouble(mean.map(WeightedMean.Point::lower)),
        asDouble(mean.map(WeightedMean.Point::upper)),
        result.origin().file(),
        result.origin().line());
  }

  private static OptionalDouble asDouble(Optional<Double> value) {
    return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }

  private Answer<MaterialBias> bias(Material material, List<Result> base) {
    if (material.assignedValue().isEmpty()) {
      return Answer.cannotSay(
          material.key() + " has no assigned value, so only a move away from its baseline shows");
    }
    if (material.standardUncertainty().isEmpty()) {
      return Answer.cannotSay(
          "needs the standard-uncertainty of the assigned value of " + material.key());
    }
    if (base.size() < FEWEST_FOR_LIMITS) {
      return Answer.cannotSay("needs " + FEWEST_FOR_LIMITS + " results, has " + base.size());
    }
    double[] values = base.stream().mapToDouble(r -> value(r).orElseThrow()).toArray();
    Bias bias =
        Bias.of(
            Summary.of(values),
            material.assignedValue().get().doubleValue(),
            material.standardUncertainty().get().doubleValue());
    return Answer.of(
        new MaterialBias(bias.difference(), bias.standardUncertainty(), bias.significantAt(0.05)));
  }
}
