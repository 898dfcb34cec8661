package org.quietline.assess;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.assess.InForce.Origin;
import org.quietline.assess.Records.StreamKey;
import org.quietline.bench.Method;
import org.quietline.bench.Result;
import org.quietline.stats.Interval;
import org.quietline.stats.control.ControlLimits;
import org.quietline.stats.control.PredictiveLimits;
import org.quietline.stats.sample.Summary;

/**
 * Limits for the first results of a stream, before it can make its own.
 *
 * <p>What is known beforehand counts like one result for the centre, where the material has an
 * assigned value, and like four degrees of freedom for the deviation: so little that the stream's
 * own results soon outweigh it. Without an assigned value the first result is the centre that the
 * second is judged by. The deviation is that of another material's results by the same method and
 * instrument (the larger of the same amount and the same share of the level), else a third of the
 * method's allowance, and never below half a step of the last digit. Without either there are
 * limits from the fourth result on, from the results before it. Source: {@link PredictiveLimits};
 * the weights are ours.
 */
final class StartUp {
  private static final double COUNTS = 1;
  private static final double FREEDOM = 4;
  private static final int FEWEST_OWN = 3;

  private final OptionalDouble assigned;
  private final Optional<Other> other;
  private final Optional<Method.Allowance> allowance;

  private StartUp(
      OptionalDouble assigned, Optional<Other> other, Optional<Method.Allowance> allowance) {
    this.assigned = assigned;
    this.other = other;
    this.allowance = allowance;
  }

  /** What is known of a stream before its own results. */
  static StartUp of(Records records, StreamKey key) {
    OptionalDouble assigned =
        key.material()
            .assignedValue()
            .map(v -> OptionalDouble.of(v.doubleValue()))
            .orElse(OptionalDouble.empty());
    return new StartUp(assigned, other(records, key), records.method().allowance());
  }

  private record Other(String material, double mean, double deviation, int results) {
    double deviationAt(double level) {
      return mean == 0 || level == 0 ? deviation : deviation * Math.max(1, Math.abs(level / mean));
    }
  }

  /** The richest other stream of the instrument that had enough results before this one began. */
  private static Optional<Other> other(Records records, StreamKey key) {
    List<Result> own = records.streams().getOrDefault(key, List.of());
    return records.streams().entrySet().stream()
        .filter(e -> e.getKey().instrument().equals(key.instrument()) && !e.getKey().equals(key))
        .flatMap(
            e -> {
              double[] values =
                  e.getValue().stream()
                      .filter(r -> own.isEmpty() || r.takenAt().isBefore(own.get(0).takenAt()))
                      .filter(r -> !records.bench().isExcluded(r))
                      .flatMapToDouble(r -> records.value(r).stream())
                      .toArray();
              return summary(records, e.getKey().material().key(), values).stream();
            })
        .max(Comparator.comparing(Other::results).thenComparing(Other::material));
  }

  private static Optional<Other> summary(Records records, String material, double[] values) {
    if (values.length < StreamControl.FEWEST_FOR_SETTLED_LIMITS
        || !Baselines.differ(records, values)) {
      return Optional.empty();
    }
    Summary summary = Summary.of(values);
    return Optional.of(new Other(material, summary.mean(), summary.deviation(), values.length));
  }

  /** Where results are expected: the assigned value, else the first of them. */
  private OptionalDouble level(double[] results) {
    return assigned.isPresent() || results.length == 0 ? assigned : OptionalDouble.of(results[0]);
  }

  private Optional<Double> deviationAt(double level) {
    return other
        .map(o -> o.deviationAt(level))
        .or(() -> allowance.map(a -> a.at(level) / 3).filter(d -> d > 0));
  }

  /** Whether it still says something about the result after these. */
  boolean rules(double... results) {
    int until =
        other.isPresent()
            ? StreamControl.FEWEST_FOR_SETTLED_LIMITS - 1
            : StreamControl.FEWEST_FOR_LIMITS;
    OptionalDouble level = level(results);
    boolean known = level.isPresent() && deviationAt(level.getAsDouble()).isPresent();
    return results.length < until && (known || results.length >= FEWEST_OWN);
  }

  /** The limits for the next result, given those before it; only where it {@link #rules}. */
  Optional<InForce> next(double leastDeviation, double... results) {
    if (!rules(results)) {
      return Optional.empty();
    }
    double level = level(results).orElseThrow();
    Optional<Double> deviation = deviationAt(level).map(d -> Math.max(d, leastDeviation));
    if (deviation.isEmpty()) {
      return Optional.of(
          Baselines.inForce(
              Origin.EARLIER_RESULTS,
              results.length,
              ControlLimits.predictionFrom(leastDeviation, results)));
    }
    int first = assigned.isPresent() ? 0 : 1;
    PredictiveLimits limits =
        new PredictiveLimits(level, COUNTS, FREEDOM, deviation.get())
            .updatedBy(Arrays.copyOfRange(results, first, results.length));
    Interval action = limits.action();
    Interval warning = limits.warning();
    return Optional.of(
        new InForce(
            other.isPresent() ? Origin.OTHER_MATERIAL : Origin.TARGET,
            results.length,
            other.map(Other::material),
            limits.centre(),
            action.lower(),
            warning.lower(),
            warning.upper(),
            action.upper()));
  }
}
