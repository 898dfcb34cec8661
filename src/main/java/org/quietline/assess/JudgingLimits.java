package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.assess.InForce.Origin;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.bench.Result;
import org.quietline.stats.control.ControlLimits;

/**
 * The limits that judge the results of a stream one after the other.
 *
 * <p>Limits from few results hold every one of those results, whatever it is: with n results none
 * is farther than (n − 1)/√n deviations from their mean. So the first results are judged by what
 * was known before them ({@link StartUp}), and the sixth to fourteenth by what the results before
 * predict, which a new result of the same kind breaks with 0.27 % chance at any n; those signals
 * stay when the limits have settled. First results that nothing was known about are judged by the
 * limits that they are part of, once those have settled.
 */
final class JudgingLimits {
  private final Records records;
  private final Baselines baselines;
  private final StartUp startUp;
  private final List<Double> values = new ArrayList<>();
  private final List<Double> ranges = new ArrayList<>();

  JudgingLimits(Records records, Baselines baselines, StartUp startUp) {
    this.records = records;
    this.baselines = baselines;
    this.startUp = startUp;
  }

  /** The limits of a result, given those before it. */
  Optional<InForce> of(Result result) {
    Optional<Baseline> baseline = baselines.at(result);
    boolean chosen = baseline.map(Baseline::chosen).orElse(false);
    return chosen
        ? settled(baseline)
        : before(StreamControl.FEWEST_FOR_SETTLED_LIMITS - 1, baseline);
  }

  /** The limits that will judge the next result. */
  Optional<InForce> next() {
    Baselines.Ruling ruling = baselines.latest();
    Optional<Baseline> baseline = ruling.baseline().value();
    return ruling.choice().isPresent()
        ? settled(baseline)
        : before(StreamControl.FEWEST_FOR_SETTLED_LIMITS, baseline);
  }

  /** Before so many results they come from what is known or from the results themselves. */
  private Optional<InForce> before(int settledFrom, Optional<Baseline> baseline) {
    if (startUp.rules(asArray(values))) {
      return startUp.next(Baselines.leastDeviation(records), asArray(values));
    }
    if (values.size() >= StreamControl.FEWEST_FOR_LIMITS && values.size() < settledFrom) {
      return Optional.of(
          Baselines.inForce(
              Origin.EARLIER_RESULTS,
              values.size(),
              ControlLimits.predictionFrom(Baselines.leastDeviation(records), asArray(values))));
    }
    return settled(baseline.filter(b -> values.size() >= settledFrom || !b.provisional()));
  }

  private static Optional<InForce> settled(Optional<Baseline> baseline) {
    return baseline.map(
        b ->
            Baselines.inForce(
                b.chosen() ? Origin.CHOSEN : Origin.FIRST_RESULTS, b.results(), b.limits()));
  }

  /** How far a result's pair may be apart. */
  OptionalDouble rangeUpper(Result result) {
    Optional<Baseline> baseline = baselines.at(result);
    if (baseline.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (baseline.get().chosen() || !early(ranges)) {
      return asDouble(baseline.get().readingsRangeUpper().value());
    }
    return OptionalDouble.of(Baselines.rangeLimit(records, asArray(ranges)));
  }

  private static boolean early(List<Double> before) {
    return before.size() >= StreamControl.FEWEST_FOR_LIMITS
        && before.size() < StreamControl.FEWEST_FOR_SETTLED_LIMITS - 1;
  }

  /** Remembers a result that counts. */
  void add(Result result) {
    records.value(result).ifPresent(values::add);
    result.pair().ifPresent(pair -> ranges.add(pair.range()));
  }

  private static double[] asArray(List<Double> list) {
    return list.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private static OptionalDouble asDouble(Optional<Double> value) {
    return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }
}
