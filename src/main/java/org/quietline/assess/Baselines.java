package org.quietline.assess;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.Records.StreamKey;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.bench.BaselineChoice;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.Result;
import org.quietline.stats.control.ControlLimits;
import org.quietline.stats.control.WeightedMean;
import org.quietline.stats.sample.DuplicateDeviation;
import org.quietline.stats.sample.Summary;

/**
 * The baselines of one stream, each with the day from which its limits apply. A baseline that a
 * person chose applies from its first day to the next one's; what came before keeps the limits it
 * had, because a revision must not turn history into signals.
 */
final class Baselines {
  /** A spread below this share of the last reported digit is an accident of arithmetic. */
  private static final double DUST = 1e-6;

  private final Records records;
  private final ChartSettings chart;
  private final List<Ruling> rulings = new ArrayList<>();

  private Baselines(Records records) {
    this.records = records;
    this.chart = records.bench().settings().chart();
  }

  /**
   * A baseline and since when it rules.
   *
   * @param from the first day it applies to
   * @param base the results it is made from
   * @param baseline the baseline, if they suffice
   */
  record Ruling(LocalDate from, List<Result> base, Answer<Baseline> baseline) {}

  /** The baselines of a stream, from its results that count, in time order. */
  static Baselines of(Records records, StreamKey key, List<Result> counted) {
    Baselines baselines = new Baselines(records);
    List<BaselineChoice> choices =
        records.bench().settings().baselines().stream()
            .filter(b -> b.method().equals(records.method().key()))
            .filter(b -> b.instrument().equals(key.instrument()))
            .filter(b -> b.material().equals(key.material().key()))
            .filter(b -> !b.from().isAfter(records.now().toLocalDate()))
            .sorted(Comparator.comparing(BaselineChoice::from))
            .toList();
    LocalDate firstChoice = choices.isEmpty() ? LocalDate.MAX : choices.get(0).from();
    List<Result> before =
        counted.stream().filter(r -> r.takenAt().toLocalDate().isBefore(firstChoice)).toList();
    int first = Math.min(baselines.chart.baselineResults(), before.size());
    baselines.add(LocalDate.MIN, before.subList(0, first), false);
    for (BaselineChoice choice : choices) {
      baselines.add(
          choice.from(), counted.stream().filter(r -> isWithin(choice, r)).toList(), true);
    }
    return baselines;
  }

  private static boolean isWithin(BaselineChoice choice, Result result) {
    LocalDate day = result.takenAt().toLocalDate();
    return !day.isBefore(choice.from()) && !day.isAfter(choice.to());
  }

  private void add(LocalDate from, List<Result> base, boolean chosen) {
    rulings.add(new Ruling(from, base, baseline(base, chosen)));
  }

  /** The one in force now. */
  Ruling latest() {
    return rulings.get(rulings.size() - 1);
  }

  /** The one in force when a result was taken; results before any known one are judged by it. */
  Optional<Baseline> at(Result result) {
    LocalDate day = result.takenAt().toLocalDate();
    Optional<Baseline> known = Optional.empty();
    for (Ruling ruling : rulings) {
      Optional<Baseline> here = ruling.baseline().value();
      if (here.isPresent() && (known.isEmpty() || !ruling.from().isAfter(day))) {
        known = here;
      }
    }
    return known;
  }

  private Answer<Baseline> baseline(List<Result> base, boolean chosen) {
    if (base.size() < StreamControl.FEWEST_FOR_LIMITS) {
      return Answer.cannotSay(
          "needs " + StreamControl.FEWEST_FOR_LIMITS + " results, has " + base.size());
    }
    double[] values =
        base.stream()
            .mapToDouble(r -> r.value(records.method().replicates()).orElseThrow())
            .toArray();
    Summary summary = Summary.of(values);
    if (summary.deviation() < DUST * Math.pow(10, -records.method().decimals())) {
      return Answer.cannotSay(
          "needs results that differ: all " + base.size() + " are the same number");
    }
    boolean provisional = base.size() < StreamControl.FEWEST_FOR_SETTLED_LIMITS;
    ControlLimits limits =
        provisional
            ? ControlLimits.prediction(values)
            : switch (chart.limitsFrom()) {
              case MOVING_RANGE -> ControlLimits.fromMovingRange(values);
              case SAMPLE_DEVIATION -> ControlLimits.fromSampleDeviation(values);
              case PREDICTION -> ControlLimits.prediction(values);
              case GUARANTEED -> ControlLimits.guaranteed(StreamControl.GUARANTEE, values);
            };
    var steady = weightedMean(limits, chart).steadyLimits();
    return Answer.of(
        new Baseline(
            base.size(),
            base.get(0).takenAt(),
            base.get(base.size() - 1).takenAt(),
            chosen,
            limits.centre(),
            limits.deviation(),
            limits.meanMovingRange(),
            summary.deviation(),
            limits,
            limits.basis(),
            provisional,
            readingsRangeUpper(base),
            steady.lower(),
            steady.upper()));
  }

  /** The weighted mean's limits are as wide, in deviations, as the action limits. */
  static WeightedMean weightedMean(ControlLimits limits, ChartSettings chart) {
    double width = (limits.upperAction() - limits.centre()) / limits.deviation();
    return new WeightedMean(limits.centre(), limits.deviation(), chart.weighting(), width);
  }

  private Answer<Double> readingsRangeUpper(List<Result> base) {
    if (records.method().replicates() < 2) {
      return Answer.cannotSay("one reading makes a result, so there are no pairs");
    }
    List<Result> paired = base.stream().filter(r -> ReadingsAgreement.hasPair(records, r)).toList();
    if (paired.size() < StreamControl.FEWEST_FOR_LIMITS) {
      return Answer.cannotSay(
          "needs " + StreamControl.FEWEST_FOR_LIMITS + " pairs, has " + paired.size());
    }
    DuplicateDeviation deviation = DuplicateDeviation.of(ReadingsAgreement.differences(paired));
    if (deviation.deviation() == 0) {
      return Answer.cannotSay(
          "needs pairs that differ: the readings of all " + paired.size() + " pairs are equal");
    }
    return Answer.of(deviation.rangeLimit(FalseSignals.BEYOND_THREE_DEVIATIONS));
  }
}
