package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.ChartSettings.LimitsFrom;
import org.quietline.bench.Method;
import org.quietline.bench.Result;
import org.quietline.bench.Rule;
import org.quietline.stats.Simulation;
import org.quietline.stats.sample.Summary;

/**
 * What is stated about false signals, against the signals of simulated benches: 60 results, a
 * calibration before every fifth or at the start alone, values as the knowledge before describes
 * them.
 */
class FalseSignalsTest {
  private static final int RESULTS = 60;
  private static final List<Rule> RULES = List.copyOf(StreamControl.RULES);

  /** Signals less what is stated, in all benches, and how many were stated. */
  private static final class Tally {
    final List<Double> seen = new ArrayList<>();
    final List<Double> stated = new ArrayList<>();

    double ratio() {
      return sum(seen) / sum(stated);
    }

    /** The standard error of the ratio, from bench to bench. */
    double error() {
      double ratio = ratio();
      double[] off = new double[seen.size()];
      Arrays.setAll(off, i -> seen.get(i) - ratio * stated.get(i));
      return Summary.of(off).deviation() * Math.sqrt(off.length) / sum(stated);
    }

    void add(
        Period period,
        List<Signal> signals,
        FalseSignals falseSignals,
        List<Point> points,
        Answer<Baseline> baseline) {
      seen.add((double) signals.stream().filter(s -> period.contains(s.id().at())).count());
      stated.add(falseSignals.expected(points, baseline, period).value().orElse(0.0));
    }

    private static double sum(List<Double> list) {
      return list.stream().mapToDouble(Double::doubleValue).sum();
    }
  }

  private static ChartSettings chart(LimitsFrom from, List<Rule> stops) {
    return new ChartSettings(20, from, 0.4, stops, List.of());
  }

  private static TestBench bench(
      SplittableRandom random, LimitsFrom from, int each, double between) {
    double chiSquare = Arrays.stream(Simulation.normal(random, 4)).map(z -> z * z).sum();
    double sigma = 4 * Math.sqrt(4 / chiSquare);
    double mean = 200 + sigma * Simulation.normal(random);
    TestBench bench = new TestBench();
    bench.assigned = Optional.of(new BigDecimal("200"));
    bench.uncertainty = Optional.empty();
    bench.allowance = Optional.of(new Method.Allowance(new BigDecimal("12"), false));
    bench.chart = chart(from, RULES);
    double effect = 0;
    for (int i = 0; i < RESULTS; i++) {
      if (i % each == 0) {
        bench.calibrated("C-" + i / each, TestBench.START.plusDays(i).minusHours(1));
        effect = between * sigma * Simulation.normal(random);
      }
      double centre = mean + effect + sigma * Simulation.normal(random);
      double half = 0.3 * sigma * Simulation.normal(random);
      bench.control(
          TestBench.START.plusDays(i),
          String.format(Locale.ROOT, "%.5f", centre - half),
          String.format(Locale.ROOT, "%.5f", centre + half));
    }
    return bench;
  }

  /** All benches: for each rule the new results, from the 21st on, and all of them. */
  private record Seen(Map<Rule, Tally> later, Map<Rule, Tally> all) {}

  private static Period from(int result) {
    return new Period(
        TestBench.START.toLocalDate().plusDays(result),
        TestBench.START.toLocalDate().plusDays(RESULTS));
  }

  private static Seen follow(LimitsFrom from, int each, double between, int benches) {
    SplittableRandom random = new SplittableRandom(20261114 + each + 31 * from.key().length());
    Seen seen = new Seen(new EnumMap<>(Rule.class), new EnumMap<>(Rule.class));
    Map<Rule, FalseSignals> stated = new EnumMap<>(Rule.class);
    RULES.forEach(rule -> stated.put(rule, new FalseSignals(chart(from, List.of(rule)))));
    for (int b = 0; b < benches; b++) {
      Records records = bench(random, from, each, between).records();
      Map.Entry<Records.StreamKey, List<Result>> stream =
          records.streams().entrySet().iterator().next();
      Records.StreamKey key = stream.getKey();
      List<Result> results = stream.getValue();
      Baselines baselines = Baselines.of(records, key, results);
      Answer<Baseline> baseline = baselines.latest().baseline();
      List<Point> points = StreamPoints.of(records, key, results, results, baselines).points();
      List<Signal> signals = new SignalFinder(records, key).find(results, points);
      stated.forEach(
          (rule, expected) -> {
            List<Signal> ofRule = signals.stream().filter(x -> x.id().rule() == rule).toList();
            seen.later()
                .computeIfAbsent(rule, r -> new Tally())
                .add(from(20), ofRule, expected, points, baseline);
            seen.all()
                .computeIfAbsent(rule, r -> new Tally())
                .add(from(0), ofRule, expected, points, baseline);
          });
    }
    return seen;
  }

  private static void check(Map<Rule, Tally> tallies, double least, double most) {
    tallies.forEach(
        (rule, tally) -> {
          if (Tally.sum(tally.stated) == 0) {
            assertEquals(0, Tally.sum(tally.seen), 0.0, rule.key());
            return;
          }
          double ratio = tally.ratio();
          double error = 4 * tally.error();
          assertTrue(
              ratio > least - error && ratio < most + error,
              () -> rule + " " + ratio + " with error " + error / 4);
        });
  }

  /**
   * Of 3000 benches, new results gave 0.88 to 1.09 times what is stated for every rule, and all
   * results, of which a third are the baseline's own, 0.75 to 1.03 times.
   */
  @ParameterizedTest
  @CsvSource({
    "MOVING_RANGE, 5",
    "MOVING_RANGE, 60",
    "SAMPLE_DEVIATION, 5",
    "SAMPLE_DEVIATION, 60",
    "PREDICTION, 5",
    "GUARANTEED, 60"
  })
  void signals_are_as_many_as_stated(LimitsFrom from, int each) {
    Seen seen = follow(from, each, 0, 250);
    check(seen.later(), 0.88, 1.09);
    check(seen.all(), 0.75, 1.05);
  }

  /** Results of a calibration share its error, which runs and sums see. */
  @Test
  void rules_about_several_results_cannot_be_priced_where_calibrations_differ() {
    SplittableRandom random = new SplittableRandom(20261115);
    TestBench bench = bench(random, LimitsFrom.BETWEEN_CALIBRATIONS, 4, 1);
    assertEquals(
        Optional.of(
            "with limits that allow for calibrations it is not known how often chance alone breaks"
                + " eight-on-one-side"),
        expected(bench, Rule.BEYOND_ACTION_LIMIT, Rule.EIGHT_ON_ONE_SIDE).why());
    double plain =
        expected(bench, Rule.BEYOND_ACTION_LIMIT, Rule.WEIGHTED_MEAN_BEYOND_LIMIT)
            .value()
            .orElseThrow();
    assertEquals(2 * RESULTS * FalseSignals.BEYOND_THREE_DEVIATIONS, plain, 1e-9);
  }

  private static Answer<Double> expected(TestBench bench, Rule... stops) {
    bench.chart = chart(LimitsFrom.BETWEEN_CALIBRATIONS, List.of(stops));
    return bench.streamOf("QC").price().expectedStops();
  }

  /**
   * Single results and weighted means with limits from five calibrations of four: by 1500 benches
   * 0.8 times what is stated where calibrations do not differ, and 1.2 and 3.6 times where they
   * differ as much as the results within.
   */
  @Test
  void limits_that_allow_for_calibrations() {
    for (boolean differ : new boolean[] {false, true}) {
      Seen seen = follow(LimitsFrom.BETWEEN_CALIBRATIONS, 4, differ ? 1 : 0, 150);
      Map<Rule, Tally> single = new EnumMap<>(seen.later());
      single.keySet().retainAll(List.of(Rule.BEYOND_ACTION_LIMIT, Rule.READINGS_DISAGREE));
      check(single, 0.78, 1.2);
      Map<Rule, Tally> means = new EnumMap<>(seen.later());
      means.keySet().retainAll(List.of(Rule.WEIGHTED_MEAN_BEYOND_LIMIT));
      check(means, 0.8, differ ? 3.6 : 1);
    }
  }
}
