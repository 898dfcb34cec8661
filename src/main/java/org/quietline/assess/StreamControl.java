package org.quietline.assess;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.quietline.assess.Records.StreamKey;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.Material;
import org.quietline.bench.Result;
import org.quietline.bench.Rule;
import org.quietline.stats.compare.Bias;
import org.quietline.stats.control.ControlLimits.Basis;
import org.quietline.stats.sample.Summary;

/** Is a control stream in control? */
final class StreamControl {
  /** The fewest results from which provisional limits are computed. */
  static final int FEWEST_FOR_LIMITS = 5;

  /** The fewest results for limits that are not provisional. Source: ISO 4259-4 practice. */
  static final int FEWEST_FOR_SETTLED_LIMITS = 15;

  /** The confidence with which guaranteed limits keep their false-signal rate. */
  static final double GUARANTEE = 0.90;

  /** The rules that are computed on control streams. */
  static final Set<Rule> RULES =
      Collections.unmodifiableSet(
          EnumSet.of(
              Rule.BEYOND_ACTION_LIMIT,
              Rule.WEIGHTED_MEAN_BEYOND_LIMIT,
              Rule.READINGS_DISAGREE,
              Rule.TWO_OF_THREE_BEYOND_WARNING,
              Rule.FOUR_OF_FIVE_BEYOND_ONE_DEVIATION,
              Rule.EIGHT_ON_ONE_SIDE,
              Rule.SIX_RISING_OR_FALLING,
              Rule.CUMULATIVE_SUM_BEYOND_LIMIT,
              Rule.MOVING_RANGE_BEYOND_LIMIT));

  private final Records records;
  private final PriceOfRules price;

  StreamControl(Records records, PriceOfRules price) {
    this.records = records;
    this.price = price;
  }

  List<StreamFindings> ask() {
    List<StreamFindings> streams = new ArrayList<>();
    for (Map.Entry<StreamKey, List<Result>> stream : records.streams().entrySet()) {
      streams.add(judge(stream.getKey(), stream.getValue()));
    }
    return streams;
  }

  private StreamFindings judge(StreamKey key, List<Result> results) {
    List<Result> counted = results.stream().filter(records::counts).toList();
    Baselines baselines = Baselines.of(records, key, counted);
    List<Result> base = baselines.latest().base();
    Answer<Baseline> baseline = baselines.latest().baseline();
    StreamPoints.Judged judged = StreamPoints.of(records, key, results, counted, baselines);
    List<Point> points = judged.points();
    List<Signal> signals = new SignalFinder(records, key).find(results, points);
    int inPeriod =
        (int) points.stream().filter(p -> p.counts() && records.period().contains(p.at())).count();
    boolean allowsForCalibrations =
        baseline.value().filter(b -> b.limitsFrom() == Basis.BETWEEN_GROUPS).isPresent();
    Revisions revisions = new Revisions(records);
    return new StreamFindings(
        key.instrument(),
        key.material(),
        points,
        inPeriod,
        baseline,
        baselines.notUsed(),
        judged.next(),
        signals,
        price.of(key.material(), points, signals, baseline),
        bias(key.material(), base),
        StreamDiagnosis.of(records, base, allowsForCalibrations),
        revisions.made(baselines),
        revisions.proposed(baselines, counted));
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
    double[] values = base.stream().mapToDouble(r -> records.value(r).orElseThrow()).toArray();
    Bias bias =
        Bias.of(
            Summary.of(values),
            material.assignedValue().get().doubleValue(),
            material.standardUncertainty().get().doubleValue());
    return Answer.of(
        new MaterialBias(bias.difference(), bias.standardUncertainty(), bias.significantAt(0.05)));
  }
}
