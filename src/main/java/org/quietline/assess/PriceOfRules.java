package org.quietline.assess;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.quietline.assess.Price.Delay;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.ChartSettings.Weight;
import org.quietline.bench.Material;
import org.quietline.bench.Rule;
import org.quietline.stats.runlength.Chart;
import org.quietline.stats.runlength.ShiftDelay;

/** What do the stop rules of a stream cost, and how soon do they see a shift? */
final class PriceOfRules {
  private static final double[] SHIFTS = {1, 1.5, 2};
  private static final int BENCHES = 2000;
  private static final long SEED = 20_261_101;
  private static final int FIRST_FEW = 4;
  private static final int MONTHS_LOOKED_AT = 3;
  private static final int FEWEST_FOR_A_RATE = 3;
  private static final double LARGEST_SHIFT = 100;

  /** What {@link Chart} follows; only limits from few calibrations that differ are wider. */
  private static final double WIDEST = 10;

  private final Records records;
  private final FalseSignals falseSignals;
  private final ChartSettings settings;
  private final Function<Asked, ShiftDelay> delays;

  /** What a delay depends on. */
  record Asked(Chart chart, ShiftDelay.Baseline baseline, int between, double shift) {}

  PriceOfRules(Records records, FalseSignals falseSignals, Function<Asked, ShiftDelay> delays) {
    this.records = records;
    this.falseSignals = falseSignals;
    this.settings = records.bench().settings().chart();
    this.delays = delays;
  }

  /** Delays by simulation, each asked for once. */
  static Function<Asked, ShiftDelay> simulated() {
    Map<Asked, ShiftDelay> known = new HashMap<>();
    return wanted ->
        known.computeIfAbsent(
            wanted,
            asked ->
                ShiftDelay.simulate(
                    asked.chart(),
                    asked.baseline(),
                    asked.between(),
                    asked.shift(),
                    BENCHES,
                    SEED));
  }

  Price of(Material material, List<Point> points, List<Signal> signals, Answer<Baseline> baseline) {
    int between = FalseSignals.between(points);
    return new Price(
        falseSignals.expected(points, baseline, records.period()),
        (int)
            signals.stream()
                .filter(s -> s.weight() == Weight.STOP && records.period().contains(s.id().at()))
                .count(),
        testsPerWeek(points),
        between,
        delays(material, baseline, between));
  }

  private OptionalDouble testsPerWeek(List<Point> points) {
    LocalDateTime since = records.now().minusMonths(MONTHS_LOOKED_AT);
    List<LocalDateTime> times =
        points.stream().filter(Point::counts).map(Point::at).filter(t -> t.isAfter(since)).toList();
    if (times.size() < FEWEST_FOR_A_RATE) {
      return OptionalDouble.empty();
    }
    double days = Duration.between(times.get(0), times.get(times.size() - 1)).toMinutes() / 1440.0;
    return days > 0 ? OptionalDouble.of(7 * (times.size() - 1) / days) : OptionalDouble.empty();
  }

  private Answer<List<Delay>> delays(Material material, Answer<Baseline> baseline, int between) {
    if (baseline.value().isEmpty()) {
      return Answer.cannotSay("there are no limits yet");
    }
    Baseline limits = baseline.value().get();
    if (FalseSignals.width(limits) > WIDEST) {
      return Answer.cannotSay("the action limits are more than 10 deviations from the centre");
    }
    Optional<Chart> chart = chart(limits);
    if (chart.isEmpty()) {
      return Answer.cannotSay("no stop rule watches the level of results");
    }
    List<Delay> delays = new ArrayList<>();
    for (double shift : SHIFTS) {
      delays.add(delay(limits, chart.get(), between, shift, false));
    }
    double level = material.assignedValue().map(v -> v.doubleValue()).orElse(limits.centre());
    records
        .method()
        .allowance()
        .map(a -> a.at(level) / limits.deviation())
        .filter(shift -> shift > 0 && shift < LARGEST_SHIFT)
        .ifPresent(shift -> delays.add(delay(limits, chart.get(), between, shift, true)));
    return Answer.of(delays);
  }

  private Delay delay(Baseline limits, Chart chart, int between, double shift, boolean allowance) {
    ShiftDelay.Baseline from = FalseSignals.source(limits.limitsFrom(), limits.results());
    ShiftDelay delay = delays.apply(new Asked(chart, from, between, shift));
    return new Delay(
        shift * limits.deviation(),
        shift,
        allowance,
        delay.chanceWithin(FIRST_FEW),
        delay.quantile(0.5),
        delay.quantile(0.9));
  }

  /** The stop rules about the level of results, as one chart. */
  private Optional<Chart> chart(Baseline limits) {
    double width = FalseSignals.width(limits);
    List<Chart> parts = new ArrayList<>();
    for (Rule rule : falseSignals.stopping()) {
      if (rule == Rule.BEYOND_ACTION_LIMIT) {
        parts.add(Chart.individuals(width));
      } else if (rule == Rule.WEIGHTED_MEAN_BEYOND_LIMIT) {
        parts.add(Chart.weightedMean(settings.weighting(), width, Chart.Limits.GROWING));
      } else {
        StreamRules.chart(rule)
            .map(part -> part.widened(width / StreamRules.ACTION))
            .ifPresent(parts::add);
      }
    }
    return parts.isEmpty()
        ? Optional.empty()
        : Optional.of(Chart.together(parts.toArray(new Chart[0])));
  }
}
