package org.quietline.assess;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.Records.StreamKey;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.Action;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;
import org.quietline.bench.Rule;
import org.quietline.bench.SignalId;
import org.quietline.stats.control.ControlLimits;
import org.quietline.stats.sample.DuplicateDeviation;

/**
 * Finds the rules a stream's results broke.
 *
 * <p>Limits from few results hold every one of those results, whatever it is: with n results none
 * is farther than (n − 1)/√n deviations from their mean. So the sixth to fourteenth result of a
 * stream is judged by what the results before it predict, which a new result of the same kind
 * breaks with 0.27 % chance at any n, and those signals stay when the limits have settled.
 */
final class SignalFinder {
  /** Equal readings may still lie half a step of their last digit apart. */
  private static final double HALF_STEP = 0.5;

  private final Records records;
  private final StreamKey key;
  private final Baselines baselines;
  private final List<Signal> found = new ArrayList<>();
  private final List<Double> values = new ArrayList<>();
  private final List<Double> ranges = new ArrayList<>();

  SignalFinder(Records records, StreamKey key, Baselines baselines) {
    this.records = records;
    this.key = key;
    this.baselines = baselines;
  }

  List<Signal> find(List<Result> results, List<Point> points) {
    for (int i = 0; i < points.size(); i++) {
      Result result = results.get(i);
      Point point = points.get(i);
      baselines.at(result).ifPresent(baseline -> judge(result, point, baseline));
      if (points.get(i).counts()) {
        points.get(i).value().ifPresent(values::add);
        points.get(i).range().ifPresent(ranges::add);
      }
    }
    return List.copyOf(found);
  }

  private void judge(Result result, Point point, Baseline baseline) {
    ControlLimits limits = early(values, baseline) ? beforehand() : baseline.limits();
    if (point.value().isPresent()) {
      double value = point.value().getAsDouble();
      check(result, Rule.BEYOND_ACTION_LIMIT, value, limits.lowerAction(), limits.upperAction());
    } else {
      censored(result, limits);
    }
    if (point.weightedMean().isPresent()) {
      check(
          result,
          Rule.WEIGHTED_MEAN_BEYOND_LIMIT,
          point.weightedMean().getAsDouble(),
          point.weightedLower().getAsDouble(),
          point.weightedUpper().getAsDouble());
    }
    if (point.range().isPresent()) {
      rangeLimit(baseline)
          .ifPresent(
              upper ->
                  check(result, Rule.READINGS_DISAGREE, point.range().getAsDouble(), 0, upper));
    }
  }

  private static boolean early(List<Double> before, Baseline baseline) {
    return !baseline.chosen()
        && before.size() >= StreamControl.FEWEST_FOR_LIMITS
        && before.size() < StreamControl.FEWEST_FOR_SETTLED_LIMITS - 1;
  }

  private ControlLimits beforehand() {
    double step = Math.pow(10, -records.method().decimals());
    double least = HALF_STEP * step / Math.sqrt(records.method().replicates());
    return ControlLimits.predictionFrom(
        least, values.stream().mapToDouble(Double::doubleValue).toArray());
  }

  private Optional<Double> rangeLimit(Baseline baseline) {
    if (!early(ranges, baseline)) {
      return baseline.readingsRangeUpper().value();
    }
    DuplicateDeviation before =
        DuplicateDeviation.of(ranges.stream().mapToDouble(Double::doubleValue).toArray());
    return before.deviation() == 0
        ? Optional.empty()
        : Optional.of(before.rangeLimit(FalseSignals.BEYOND_THREE_DEVIATIONS));
  }

  /** A bound beyond a limit proves that the result is beyond it, too. */
  private void censored(Result result, ControlLimits limits) {
    for (Reading reading : result.readings()) {
      if (reading instanceof Reading.Above above
          && isAtLeast(above.bound(), limits.upperAction())) {
        add(result, above.bound().doubleValue(), limits.upperAction());
        return;
      }
      if (reading instanceof Reading.Below below
          && !isAtLeast(below.bound(), Math.nextUp(limits.lowerAction()))) {
        add(result, below.bound().doubleValue(), limits.lowerAction());
        return;
      }
    }
  }

  private static boolean isAtLeast(BigDecimal bound, double limit) {
    return bound.doubleValue() >= limit;
  }

  private void add(Result result, double value, double limit) {
    add(result, Rule.BEYOND_ACTION_LIMIT, value, limit);
  }

  private void check(Result result, Rule rule, double value, double lower, double upper) {
    if (value > upper) {
      add(result, rule, value, upper);
    } else if (value < lower) {
      add(result, rule, value, lower);
    }
  }

  private void add(Result result, Rule rule, double value, double limit) {
    SignalId id =
        new SignalId(
            records.method().key(), key.instrument(), key.material().key(), result.takenAt(), rule);
    Optional<Action> closing = records.bench().closing(id);
    boolean open = closing.isEmpty() && !records.bench().isExcluded(result);
    records
        .bench()
        .settings()
        .chart()
        .weightOf(rule)
        .ifPresent(weight -> found.add(new Signal(id, weight, value, limit, open, closing)));
  }
}
