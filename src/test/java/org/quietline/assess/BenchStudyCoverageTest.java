package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Diagnosis.Pattern;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.ChartSettings.LimitsFrom;
import org.quietline.bench.ChartSettings.Weight;
import org.quietline.stats.Coverage;
import org.quietline.stats.Study;
import org.quietline.stats.runlength.Chart;
import org.quietline.stats.runlength.ShiftDelay;

/**
 * What charts state against what they do, on seeded simulated benches whose truth is known: one
 * control result a week, a calibration every 30 days, limits from the first 20 results.
 */
class BenchStudyCoverageTest {
  private static final int SLICE = 150;
  private static final int WHOLE = 4000;
  private static final int BASELINE = 20;
  private static final int NEW_RESULTS = 26;
  private static final double WITHIN = 0.002;

  private static SimulatedBench bench(long seed, double between, LimitsFrom limits, int weeks) {
    SimulatedBench bench = new SimulatedBench(seed);
    bench.levels = List.of(0.2);
    bench.people = List.of("RO");
    bench.sessionsPerWeek = 1;
    bench.productsPerSession = 0;
    bench.weeks = weeks;
    bench.readingDeviation = 0.001;
    bench.sessionDeviation = Math.sqrt(WITHIN * WITHIN - 0.001 * 0.001 / 2);
    bench.calibrationDeviation = between * WITHIN;
    ChartSettings d = ChartSettings.DEFAULTS;
    bench.chart =
        new ChartSettings(BASELINE, limits, d.weighting(), d.stopRules(), d.noticeRules());
    return bench;
  }

  /** What one scenario of benches in control gave. */
  private record Quiet(
      double stated, double observed, Map<Pattern, Integer> patterns, int benches) {
    double share(ToDoubleFunction<Pattern> which) {
      return patterns.entrySet().stream()
              .mapToDouble(e -> which.applyAsDouble(e.getKey()) * e.getValue())
              .sum()
          / benches;
    }
  }

  private static Quiet quiet(double between, LimitsFrom limits) {
    int benches = Coverage.trials(SLICE, WHOLE);
    double stated = 0;
    long observed = 0;
    Map<Pattern, Integer> patterns = new TreeMap<>();
    for (int i = 0; i < benches; i++) {
      SimulatedBench bench = bench(5000 + i, between, limits, BASELINE + NEW_RESULTS);
      StreamFindings stream = bench.streams().get(0);
      LocalDate first = stream.points().get(BASELINE).at().toLocalDate();
      Period period = new Period(first, first.plusYears(2));
      stated +=
          new FalseSignals(bench.chart)
              .expected(stream.points(), stream.baseline(), period)
              .value()
              .orElseThrow();
      observed +=
          stream.signals().stream()
              .filter(s -> s.weight() == Weight.STOP && period.contains(s.id().at()))
              .count();
      patterns.merge(stream.diagnosis().value().orElseThrow().pattern(), 1, Integer::sum);
    }
    Quiet quiet = new Quiet(stated / benches, observed / (double) benches, patterns, benches);
    Study.add(
        "false stop signals, 26 results after a baseline of 20",
        String.format(Locale.ROOT, "%s, calibrations %.1f of within", limits.key(), between),
        "a bench",
        quiet.stated(),
        quiet.observed(),
        benches);
    Study.add(
        "diagnosis does not say that the limits fit",
        String.format(Locale.ROOT, "%s, calibrations %.1f of within", limits.key(), between),
        "share",
        Double.NaN,
        quiet.share(p -> p == Pattern.INDEPENDENT || p == Pattern.ALLOWED_FOR ? 0 : 1),
        benches);
    return quiet;
  }

  private static double tolerance(double whole) {
    return Coverage.trials(0, 1) == 1 ? whole : 0.5;
  }

  @Test
  void false_stop_signals_are_as_stated_where_calibrations_do_not_differ() {
    for (LimitsFrom limits :
        List.of(LimitsFrom.MOVING_RANGE, LimitsFrom.SAMPLE_DEVIATION, LimitsFrom.PREDICTION)) {
      Quiet quiet = quiet(0, limits);
      assertEquals(1, quiet.observed() / quiet.stated(), tolerance(0.10), limits.key());
    }
  }

  @Test
  void limits_that_allow_for_calibrations_keep_their_rate_where_they_differ() {
    // few calibrations say little about their own deviation, so that the rate is kept about: the
    // study says how nearly; limits from moving ranges give 2, 6 and 15 times what they state
    double[][] most = {{0, 1.2}, {0.5, 1.6}, {1, 2.6}, {2, 4.5}};
    for (double[] scenario : most) {
      Quiet quiet = quiet(scenario[0], LimitsFrom.BETWEEN_CALIBRATIONS);
      double slack = Coverage.trials(1, 0);
      assertTrue(
          quiet.observed() < (scenario[1] + slack) * quiet.stated(), scenario[0] + ": " + quiet);
    }
  }

  @Test
  void the_diagnosis_warns_where_moving_ranges_do_not_see_the_calibrations() {
    for (double between : new double[] {0.5, 1, 2}) {
      Quiet quiet = quiet(between, LimitsFrom.MOVING_RANGE);
      assertTrue(
          quiet.share(p -> p == Pattern.INDEPENDENT ? 0 : 1) >= 0.90, between + ": " + quiet);
    }
  }

  @Test
  void shifts_are_seen_as_soon_as_stated() {
    Chart chart =
        Chart.together(Chart.individuals(3), Chart.weightedMean(0.4, 3, Chart.Limits.GROWING));
    for (double shift : new double[] {1, 1.5, 2}) {
      ShiftDelay stated =
          ShiftDelay.simulate(
              chart, new ShiftDelay.Baseline.OfMovingRange(BASELINE), 4, shift, 20_000, 7);
      int benches = Coverage.trials(SLICE, WHOLE);
      int[] delays = new int[benches];
      for (int i = 0; i < benches; i++) {
        delays[i] = delay(9000 + i, shift, BASELINE + i % 4);
      }
      Arrays.sort(delays);
      String what = String.format(Locale.ROOT, "shift of %.1f deviations", shift);
      double within = Arrays.stream(delays).filter(d -> d <= 4).count() / (double) benches;
      Study.add(what, "seen within 4 results", "share", stated.chanceWithin(4), within, benches);
      double half = smooth(delays);
      Study.add(what, "half seen within", "results", smooth(stated), half, benches);
      assertEquals(1, within / stated.chanceWithin(4), tolerance(0.10), what);
      assertEquals(1, half / smooth(stated), tolerance(0.10), what);
    }
  }

  private static int delay(long seed, double shift, int week) {
    SimulatedBench bench = bench(seed, 0, LimitsFrom.MOVING_RANGE, week + 80);
    bench.plant(SimulatedBench.Kind.ADDITIVE, week, shift);
    StreamFindings stream = bench.streams().get(0);
    List<Point> points = stream.points();
    for (int i = week; i < points.size(); i++) {
      Point point = points.get(i);
      if (stream.signals().stream()
          .anyMatch(s -> s.weight() == Weight.STOP && s.id().at().equals(point.at()))) {
        return i - week + 1;
      }
    }
    return Integer.MAX_VALUE;
  }

  /** The median between whole numbers: where the line through the shares seen crosses a half. */
  private static double smooth(ShiftDelay delay) {
    int n = (int) delay.quantile(0.5);
    double before = delay.chanceWithin(n - 1);
    return n - 1 + (0.5 - before) / (delay.chanceWithin(n) - before);
  }

  private static double smooth(int[] sorted) {
    int n = sorted[(sorted.length - 1) / 2];
    double before = Arrays.stream(sorted).filter(d -> d < n).count() / (double) sorted.length;
    double upTo = Arrays.stream(sorted).filter(d -> d <= n).count() / (double) sorted.length;
    return n - 1 + (0.5 - before) / (upTo - before);
  }
}
