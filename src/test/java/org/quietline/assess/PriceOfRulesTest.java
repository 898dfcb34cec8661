package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.ChartSettings.LimitsFrom;
import org.quietline.bench.Method;
import org.quietline.bench.Rule;
import org.quietline.stats.Simulation;

class PriceOfRulesTest {
  private static TestBench bench(int calibrations, int each, double between) {
    SplittableRandom random = new SplittableRandom(20261113);
    TestBench bench = new TestBench();
    int n = calibrations * each;
    double effect = 0;
    for (int i = 0; i < n; i++) {
      if (i % each == 0) {
        bench.calibrated("C-" + i / each, TestBench.START.plusDays(i).minusHours(1));
        effect = between * (i / each % 2 == 0 ? 1 : -1);
      }
      bench.daily(
          String.format(Locale.ROOT, "%.4f", 0.2 + 0.004 * (effect + Simulation.normal(random))));
    }
    return bench;
  }

  private static ChartSettings chart(LimitsFrom from, Rule... stops) {
    return new ChartSettings(20, from, 0.4, List.of(stops), List.of());
  }

  private static Price price(TestBench bench) {
    return bench.stream("2026-01").price();
  }

  /** 20 results of limits 3 deviations out; restarts every four: the NumPy simulation. */
  @Test
  void delays_are_those_of_a_bench_with_such_restarts() {
    TestBench bench = bench(5, 4, 0);
    Price price = price(bench);
    assertEquals(4, price.betweenRestarts());
    assertEquals(OptionalDouble.of(7), price.testsPerWeek());
    List<Price.Delay> delays = price.delays().value().orElseThrow();
    assertEquals(4, delays.size());
    double[] shifts = {1, 1.5, 2};
    StreamFindings.Baseline baseline = bench.streamOf("QC").baseline().value().orElseThrow();
    for (int i = 0; i < 3; i++) {
      assertEquals(shifts[i], delays.get(i).deviations(), 0.0);
      assertEquals(shifts[i] * baseline.deviation(), delays.get(i).shift(), 1e-15);
      assertEquals(false, delays.get(i).allowance());
      assertTrue(delays.get(i).half() <= delays.get(i).nineTenths());
    }
    // shift-delay.json: seen within 4 with 0.2334 and 0.6981; 12 see a half, 40 three quarters
    double error = 4 * Math.sqrt(0.25 / 4000);
    assertEquals(0.2334, delays.get(0).withinFour(), error);
    assertEquals(0.6981, delays.get(2).withinFour(), error);
    assertTrue(delays.get(0).half() >= 10 && delays.get(0).half() <= 14);
    assertTrue(delays.get(0).nineTenths() > 40);
    assertTrue(delays.get(2).nineTenths() <= 12);
    Price.Delay allowance = delays.get(3);
    assertTrue(allowance.allowance());
    assertEquals(0.012, allowance.shift(), 1e-12);
    assertEquals(0.012 / baseline.deviation(), allowance.deviations(), 1e-12);
  }

  @Test
  void rules_that_were_added_see_shifts_sooner_and_cost_more() {
    TestBench bench = bench(1, 20, 0);
    bench.chart = chart(LimitsFrom.SAMPLE_DEVIATION, Rule.BEYOND_ACTION_LIMIT);
    Price plain = price(bench);
    bench.chart =
        chart(
            LimitsFrom.SAMPLE_DEVIATION,
            Rule.BEYOND_ACTION_LIMIT,
            Rule.EIGHT_ON_ONE_SIDE,
            Rule.CUMULATIVE_SUM_BEYOND_LIMIT,
            Rule.MOVING_RANGE_BEYOND_LIMIT);
    Price more = price(bench);
    assertTrue(
        more.delays().value().orElseThrow().get(0).half()
            < plain.delays().value().orElseThrow().get(0).half());
    assertTrue(
        more.expectedStops().value().orElseThrow() > plain.expectedStops().value().orElseThrow());
  }

  @Test
  void rules_about_spread_alone_see_no_shift() {
    TestBench bench = bench(1, 20, 0);
    bench.chart =
        chart(LimitsFrom.MOVING_RANGE, Rule.READINGS_DISAGREE, Rule.MOVING_RANGE_BEYOND_LIMIT);
    assertEquals(
        Optional.of("no stop rule watches the level of results"), price(bench).delays().why());
  }

  /** With two calibrations that differ the limits stand hundreds of deviations out. */
  @Test
  void limits_that_say_nothing_are_no_chart() {
    TestBench bench = bench(2, 10, 3);
    bench.chart = chart(LimitsFrom.BETWEEN_CALIBRATIONS, Rule.BEYOND_ACTION_LIMIT);
    StreamFindings.Baseline baseline = bench.streamOf("QC").baseline().value().orElseThrow();
    assertTrue(FalseSignals.width(baseline) > 10);
    assertTrue(baseline.betweenDeviation() > 0);
    assertEquals(
        Optional.of("the action limits are more than 10 deviations from the centre"),
        price(bench).delays().why());
    TestBench many = bench(5, 4, 1);
    many.chart = bench.chart;
    assertTrue(price(many).delays().value().isPresent());
  }

  @Test
  void an_allowance_of_many_deviations_is_left_out() {
    TestBench bench = bench(1, 20, 0);
    bench.allowance = Optional.of(new Method.Allowance(new BigDecimal("1"), false));
    assertEquals(3, price(bench).delays().value().orElseThrow().size());
    bench.allowance = Optional.empty();
    assertEquals(3, price(bench).delays().value().orElseThrow().size());
  }

  @Test
  void stops_are_counted_in_the_period_and_tests_in_the_last_three_months() {
    TestBench bench = bench(1, 20, 0);
    bench.daily("0.9", "0.9");
    Price price = bench.stream("2026-01").price();
    assertTrue(price.stopsSeen() >= 2);
    assertEquals(0, bench.stream("2026-03").price().stopsSeen());
    assertEquals(
        Optional.of("no result of the period was judged by limits"),
        bench.stream("2026-03").price().expectedStops().why());
    TestBench few = new TestBench().daily("0.2", "0.201");
    assertEquals(OptionalDouble.empty(), price(few).testsPerWeek());
    assertEquals(2, price(few).betweenRestarts());
  }
}
