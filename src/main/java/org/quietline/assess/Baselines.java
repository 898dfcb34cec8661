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
import org.quietline.stats.Interval;
import org.quietline.stats.control.ControlLimits;
import org.quietline.stats.control.GroupedLimits;
import org.quietline.stats.control.WeightedMean;
import org.quietline.stats.distribution.Student;
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

  private static final double HALF_STEP = 0.5;
  private static final int FEWEST = StreamControl.FEWEST_FOR_LIMITS;

  private final Records records;
  private final ChartSettings chart;
  private final List<Ruling> rulings = new ArrayList<>();
  private Optional<String> notUsed = Optional.empty();

  private Baselines(Records records) {
    this.records = records;
    this.chart = records.bench().settings().chart();
  }

  /**
   * A baseline and since when it rules.
   *
   * @param from the first day it applies to
   * @param choice the person's choice, if it is one
   * @param base the results it is made from
   * @param baseline the baseline, if they suffice
   */
  record Ruling(
      LocalDate from,
      Optional<BaselineChoice> choice,
      List<Result> base,
      Answer<Baseline> baseline) {}

  /** The baselines of a stream, from its results that count, in time order. */
  static Baselines of(Records records, StreamKey key, List<Result> counted) {
    Baselines baselines = new Baselines(records);
    List<BaselineChoice> choices =
        records.bench().settings().baselines().stream()
            .filter(b -> b.method().equals(records.method().key()))
            .filter(b -> b.instrument().equals(key.instrument()))
            .filter(b -> b.material().equals(key.material().key()))
            .filter(b -> !b.to().isAfter(records.now().toLocalDate()))
            .sorted(Comparator.comparing(BaselineChoice::from))
            .toList();
    List<BaselineChoice> usable =
        choices.stream().filter(c -> within(c, counted).size() >= FEWEST).toList();
    if (!choices.isEmpty()) {
      BaselineChoice last = choices.get(choices.size() - 1);
      if (!usable.contains(last)) {
        baselines.notUsed = Optional.of(notUsed(last, within(last, counted).size()));
      }
    }
    LocalDate firstChoice = usable.isEmpty() ? LocalDate.MAX : usable.get(0).from();
    List<Result> before =
        counted.stream().filter(r -> r.takenAt().toLocalDate().isBefore(firstChoice)).toList();
    int first = Math.min(baselines.chart.baselineResults(), before.size());
    baselines.add(LocalDate.MIN, Optional.empty(), before.subList(0, first));
    for (BaselineChoice choice : usable) {
      baselines.add(choice.from(), Optional.of(choice), within(choice, counted));
    }
    return baselines;
  }

  private static List<Result> within(BaselineChoice choice, List<Result> counted) {
    return counted.stream()
        .filter(r -> !r.takenAt().toLocalDate().isBefore(choice.from()))
        .filter(r -> !r.takenAt().toLocalDate().isAfter(choice.to()))
        .toList();
  }

  private static String notUsed(BaselineChoice choice, int results) {
    return "the baseline chosen from "
        + choice.from()
        + " to "
        + choice.to()
        + " needs "
        + FEWEST
        + " results, has "
        + results
        + "; the limits before it stay";
  }

  private void add(LocalDate from, Optional<BaselineChoice> choice, List<Result> base) {
    rulings.add(new Ruling(from, choice, base, baseline(base, choice.isPresent())));
  }

  /** All of them, in the order of time. */
  List<Ruling> rulings() {
    return List.copyOf(rulings);
  }

  /** The one in force now. */
  Ruling latest() {
    return rulings.get(rulings.size() - 1);
  }

  /** Why the latest choice is not in force, if it is not. */
  Optional<String> notUsed() {
    return notUsed;
  }

  /**
   * The one in force when a result was taken. Results before any known one are judged by the first
   * results, once these suffice, and never by a later choice.
   */
  Optional<Baseline> at(Result result) {
    LocalDate day = result.takenAt().toLocalDate();
    Optional<Baseline> known = Optional.empty();
    for (Ruling ruling : rulings) {
      Optional<Baseline> here = ruling.baseline().value();
      if (here.isPresent() && !ruling.from().isAfter(day)) {
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
    double[] values = base.stream().mapToDouble(r -> records.value(r).orElseThrow()).toArray();
    Summary summary = Summary.of(values);
    boolean provisional = base.size() < StreamControl.FEWEST_FOR_SETTLED_LIMITS;
    double least = leastDeviation(records);
    Made made =
        provisional ? Made.of(ControlLimits.predictionFrom(least, values)) : made(base, values);
    if (made.limits().deviation() < least) {
      made = Made.of(ControlLimits.predictionFrom(least, values));
    }
    ControlLimits limits = made.limits();
    var steady = steadyLimits(made, chart);
    return Answer.of(
        new Baseline(
            base.size(),
            base.get(0).takenAt(),
            base.get(base.size() - 1).takenAt(),
            chosen,
            limits.centre(),
            limits.deviation(),
            made.between(),
            limits.meanMovingRange(),
            summary.deviation(),
            limits,
            limits.basis(),
            provisional,
            readingsRangeUpper(base),
            steady.lower(),
            steady.upper()));
  }

  /** Equal results may still lie half a step of their last digit apart. */
  static double leastDeviation(Records records) {
    return HALF_STEP
        * Math.pow(10, -records.method().decimals())
        / Math.sqrt(records.method().replicates());
  }

  /** Whether values differ by more than arithmetic alone makes them differ. */
  static boolean differ(Records records, double[] values) {
    return values.length > 1
        && Summary.of(values).deviation() >= DUST * Math.pow(10, -records.method().decimals());
  }

  /** Limits, and the deviation between calibrations that they allow for. */
  private record Made(ControlLimits limits, double between) {
    static Made of(ControlLimits limits) {
      return new Made(limits, 0);
    }
  }

  private Made made(List<Result> base, double[] values) {
    return switch (chart.limitsFrom()) {
      case MOVING_RANGE -> Made.of(ControlLimits.fromMovingRange(values));
      case SAMPLE_DEVIATION -> Made.of(ControlLimits.fromSampleDeviation(values));
      case PREDICTION -> Made.of(ControlLimits.prediction(values));
      case GUARANTEED -> Made.of(ControlLimits.guaranteed(StreamControl.GUARANTEE, values));
      case BETWEEN_CALIBRATIONS -> grouped(StreamDiagnosis.labels(records, base), values);
    };
  }

  /** Where one calibration made the baseline, nothing shows how calibrations differ. */
  private static Made grouped(int[] labels, double[] values) {
    if (!GroupedLimits.tellApart(values, labels)) {
      return Made.of(ControlLimits.prediction(values));
    }
    GroupedLimits grouped = GroupedLimits.of(values, labels);
    return new Made(grouped.limits(), grouped.between());
  }

  /** The weighted mean's limits are as wide, in deviations, as the action limits. */
  static List<WeightedMean.Point> weightedMean(
      Baseline baseline, ChartSettings chart, double[] values, boolean[] restarts) {
    return weightedMean(new Made(baseline.limits(), baseline.betweenDeviation()), chart)
        .trace(values, restarts, baseline.betweenDeviation());
  }

  private static WeightedMean weightedMean(Made made, ChartSettings chart) {
    ControlLimits limits = made.limits();
    double width = (limits.upperAction() - limits.centre()) / limits.deviation();
    double within = Math.sqrt(Math.max(0, square(limits.deviation()) - square(made.between())));
    return new WeightedMean(limits.centre(), within, chart.weighting(), width);
  }

  private static Interval steadyLimits(Made made, ChartSettings chart) {
    WeightedMean mean = weightedMean(made, chart);
    double share = chart.weighting() / (2 - chart.weighting());
    double half =
        mean.width() * Math.sqrt(square(mean.deviation()) * share + square(made.between()));
    return new Interval(mean.centre() - half, mean.centre() + half);
  }

  private static double square(double x) {
    return x * x;
  }

  /** Limits as they judge a result. */
  static InForce inForce(InForce.Origin origin, int results, ControlLimits limits) {
    return new InForce(
        origin,
        results,
        Optional.empty(),
        limits.centre(),
        limits.lowerAction(),
        limits.lowerWarning(),
        limits.upperWarning(),
        limits.upperAction());
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
    return Answer.of(rangeLimit(records, ReadingsAgreement.differences(paired)));
  }

  /** How far a new pair may be apart; equal readings may still differ by their rounding, q/√12. */
  static double rangeLimit(Records records, double... differences) {
    double rounding = Math.pow(10, -records.method().decimals()) / Math.sqrt(12);
    double deviation = Math.max(rounding, DuplicateDeviation.of(differences).deviation());
    double chance = FalseSignals.BEYOND_THREE_DEVIATIONS;
    return Math.sqrt(2) * Student.exceededWith(chance / 2, differences.length) * deviation;
  }
}
