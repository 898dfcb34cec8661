package org.quietline.assess;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.quietline.assess.InForce.Origin;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.ChartSettings.Weight;
import org.quietline.bench.Rule;
import org.quietline.stats.control.ControlLimits.Basis;
import org.quietline.stats.control.RunRule;
import org.quietline.stats.control.SignalChance;
import org.quietline.stats.runlength.ShiftDelay;
import org.quietline.stats.sample.MovingRange;

/**
 * How many false stop signals chance alone gives.
 *
 * <p>Each result that counts adds the chance that a result in control breaks each stop rule, on
 * average over baselines of the size at hand: {@link SignalChance} for single results, weighted
 * means, patterns and moving ranges; 0.27 % for limits of prediction, which have it by their
 * making, and for pairs; {@link ShiftDelay} for cumulative sums. Signals are counted, not stories:
 * weighted means beyond their limit, and patterns that go on, come in rows. Results of the baseline
 * itself are counted like later ones where several make a signal, which is up to a fifth too many.
 * With limits that allow for calibrations, 0.27 % is counted for single results and weighted means;
 * by simulation of 5 calibrations of 4 it was 0.21 and 0.22 % where they do not differ, 0.32 and
 * 0.97 % where they differ as much as results within them. Runs and sums see the error that results
 * of a calibration share, so that nothing is said of them. A period that had other limits before is
 * counted with those in force now.
 */
final class FalseSignals {
  /** The chance of a normal value beyond three deviations, {@code 2·(1 − Φ(3))}. */
  static final double BEYOND_THREE_DEVIATIONS = 0.002_699_796_063_260_207;

  private static final Set<Rule> COUNTED_APART =
      Set.of(Rule.BEYOND_ACTION_LIMIT, Rule.WEIGHTED_MEAN_BEYOND_LIMIT, Rule.READINGS_DISAGREE);

  /** Sums of results with wider limits see nothing. */
  private static final double WIDEST = 10;

  private static final int BENCHES = 4000;
  private static final long SEED = 20_261_102;

  /** No pattern looks back at more results. */
  private static final int LONGEST_PATTERN = 8;

  private final ChartSettings chart;
  private final List<Rule> others;
  private final Map<Asked, Double> known = new HashMap<>();

  /** What the chance of a rule about several results depends on. */
  private record Asked(Rule rule, Basis basis, int results, double width, int since, int between) {}

  FalseSignals(ChartSettings chart) {
    this.chart = chart;
    this.others =
        Arrays.stream(Rule.values())
            .filter(rule -> stops(rule) && !COUNTED_APART.contains(rule))
            .toList();
  }

  private boolean stops(Rule rule) {
    return chart.weightOf(rule).filter(w -> w == Weight.STOP).isPresent();
  }

  /** The rules among the stop rules that are computed on control streams. */
  Set<Rule> stopping() {
    EnumSet<Rule> rules = EnumSet.noneOf(Rule.class);
    StreamControl.RULES.stream().filter(this::stops).forEach(rules::add);
    return rules;
  }

  /** What the results of the period cost. */
  Answer<Double> expected(List<Point> points, Answer<Baseline> baseline, Period period) {
    boolean shareErrors =
        baseline.value().filter(b -> b.limitsFrom() == Basis.BETWEEN_GROUPS).isPresent();
    List<String> runs =
        others.stream().filter(r -> StreamRules.chart(r).isPresent()).map(Rule::key).toList();
    if (shareErrors && !runs.isEmpty()) {
      return Answer.cannotSay(
          "with limits that allow for calibrations it is not known how often chance alone breaks "
              + String.join(", ", runs));
    }
    double sum = 0;
    int since = 0;
    int sinceSettled = 0;
    int judged = 0;
    int between = between(points);
    for (Point point : points) {
      if (!point.counts()) {
        continue;
      }
      since = point.restarted() ? 1 : since + 1;
      boolean settled = point.judgedBy().filter(FalseSignals::isSettled).isPresent();
      sinceSettled = settled ? (point.restarted() ? 1 : sinceSettled + 1) : 0;
      if (period.contains(point.at()) && point.judgedBy().isPresent()) {
        judged++;
        sum += ofResult(point, point.judgedBy().get(), baseline, since);
        if (sinceSettled > 0 && baseline.value().isPresent()) {
          sum += ofOthers(baseline.value().get(), sinceSettled, between);
        }
      }
    }
    if (judged == 0) {
      return Answer.cannotSay("no result of the period was judged by limits");
    }
    return Answer.of(sum);
  }

  private double ofResult(Point point, InForce limits, Answer<Baseline> baseline, int since) {
    double sum = 0;
    if (stops(Rule.BEYOND_ACTION_LIMIT)) {
      sum += ofSingle(limits, baseline, point.inBaseline());
    }
    if (stops(Rule.WEIGHTED_MEAN_BEYOND_LIMIT) && point.weightedMean().isPresent()) {
      sum += baseline.value().map(b -> ofWeightedMean(b, since, point.inBaseline())).orElse(0.0);
    }
    if (stops(Rule.READINGS_DISAGREE)
        && point.rangeUpper().isPresent()
        && point.range().isPresent()) {
      sum += BEYOND_THREE_DEVIATIONS;
    }
    return sum;
  }

  private double ofOthers(Baseline baseline, int since, int between) {
    double width = width(baseline);
    double sum = 0;
    for (Rule rule : others) {
      Asked asked =
          new Asked(
              rule,
              baseline.limitsFrom(),
              baseline.results(),
              width,
              Math.min(since, LONGEST_PATTERN),
              between);
      sum += known.computeIfAbsent(asked, a -> ofOther(a, chance(baseline)));
    }
    return sum;
  }

  /** Zones and ranges are measured in thirds of the way to the action limit. */
  private static double ofOther(Asked asked, SignalChance chance) {
    double third = asked.width() / StreamRules.ACTION;
    if (asked.rule() == Rule.MOVING_RANGE_BEYOND_LIMIT) {
      return asked.since() < 2 ? 0 : chance.ofMovingRange(MovingRange.D4 * MovingRange.D2 * third);
    }
    Optional<RunRule> pattern = StreamRules.pattern(asked.rule());
    if (pattern.isEmpty()) {
      return StreamRules.chart(asked.rule())
          .filter(sums -> asked.width() <= WIDEST)
          .map(
              sums ->
                  ShiftDelay.falseSignalsPerValue(
                      sums.widened(third),
                      source(asked.basis(), asked.results()),
                      asked.between(),
                      BENCHES,
                      SEED))
          .orElse(0.0);
    }
    if (pattern.get() instanceof RunRule.Beyond beyond) {
      return chance.ofPattern(
          new RunRule.Beyond(beyond.count(), beyond.of(), beyond.zone() * third), asked.since());
    }
    int span = pattern.get().span();
    if (pattern.get() instanceof RunRule.SameSide) {
      return chance.ofPattern(new RunRule.Beyond(span, span, 0), asked.since());
    }
    // so many results in ascending or in descending order
    return asked.since() < span
        ? 0
        : IntStream.rangeClosed(2, span).mapToDouble(i -> 1.0 / i).reduce(2, (a, b) -> a * b);
  }

  private static boolean isSettled(InForce limits) {
    return limits.origin() == Origin.FIRST_RESULTS || limits.origin() == Origin.CHOSEN;
  }

  private static double ofSingle(InForce limits, Answer<Baseline> baseline, boolean own) {
    if (!isSettled(limits) || baseline.value().isEmpty()) {
      return BEYOND_THREE_DEVIATIONS;
    }
    Baseline known = baseline.value().get();
    if (known.limitsFrom() == Basis.BETWEEN_GROUPS) {
      return BEYOND_THREE_DEVIATIONS;
    }
    double width = width(known);
    return own ? chance(known).ofOwnValue(width) : chance(known).ofNextValue(width);
  }

  private double ofWeightedMean(Baseline baseline, int since, boolean own) {
    if (baseline.limitsFrom() == Basis.BETWEEN_GROUPS) {
      return BEYOND_THREE_DEVIATIONS;
    }
    double width = width(baseline);
    return own
        ? chance(baseline).ofOwnWeightedMean(width, chart.weighting(), since)
        : chance(baseline).ofWeightedMean(width, chart.weighting(), since);
  }

  /** Where centre and deviation of limits come from. */
  static ShiftDelay.Baseline source(Basis basis, int results) {
    return basis == Basis.MOVING_RANGE
        ? new ShiftDelay.Baseline.OfMovingRange(results)
        : new ShiftDelay.Baseline.SampleDeviation(results);
  }

  /** Results that count for each restart, rounded, at least one. */
  static int between(List<Point> points) {
    long counted = points.stream().filter(Point::counts).count();
    long restarts = points.stream().filter(p -> p.counts() && p.restarted()).count();
    return (int) Math.max(1, Math.round(counted / Math.max(1.0, restarts + 1.0)));
  }

  private static SignalChance chance(Baseline baseline) {
    return baseline.limitsFrom() == Basis.MOVING_RANGE
        ? SignalChance.fromMovingRange(baseline.results())
        : SignalChance.fromSampleDeviation(baseline.results());
  }

  /** How many deviations the action limits are from the centre. */
  static double width(Baseline baseline) {
    return (baseline.limits().upperAction() - baseline.centre()) / baseline.deviation();
  }
}
