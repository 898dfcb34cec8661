package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.quietline.bench.BaselineChoice;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.ChartSettings.LimitsFrom;
import org.quietline.bench.ChartSettings.Weight;
import org.quietline.bench.Rule;
import org.quietline.stats.control.ControlLimits;

/**
 * Streams against the individuals example IM-1: twenty values whose mean, deviations and limits
 * were recomputed with NumPy 2.4 from the formulas of ISO 7870-2 before they were typed here.
 */
class StreamControlTest {
  private static final String[] IM_1 = {
    "0.201", "0.198", "0.205", "0.196", "0.203", "0.200", "0.194", "0.207", "0.199", "0.202",
    "0.197", "0.204", "0.193", "0.200", "0.206", "0.198", "0.201", "0.195", "0.203", "0.199"
  };

  private static ChartSettings chart(LimitsFrom from) {
    ChartSettings d = ChartSettings.DEFAULTS;
    return new ChartSettings(
        d.baselineResults(), from, d.weighting(), d.stopRules(), d.noticeRules());
  }

  @Test
  void limits_come_from_the_first_twenty_results_by_their_moving_range() {
    StreamFindings stream = new TestBench().daily(IM_1).stream("2026-01");
    StreamFindings.Baseline baseline = stream.baseline().value().orElseThrow();
    assertEquals(20, baseline.results());
    assertFalse(baseline.provisional());
    assertEquals(ControlLimits.Basis.MOVING_RANGE, baseline.limitsFrom());
    assertEquals(0.20005, baseline.centre(), 1e-12);
    assertEquals(0.00652632, baseline.meanMovingRange(), 5e-9);
    assertEquals(0.00394001, baseline.sampleDeviation(), 5e-9);
    assertEquals(0.182699, baseline.limits().lowerAction(), 1e-6);
    assertEquals(0.217401, baseline.limits().upperAction(), 1e-6);
    assertEquals(0.0213184, baseline.limits().movingRangeUpper(), 5e-8);
    assertEquals(List.of(), stream.signals());
  }

  @Test
  void the_weighted_mean_sees_a_small_shift_at_the_fifth_new_result() {
    TestBench bench = new TestBench().daily(IM_1);
    bench.chart = chart(LimitsFrom.SAMPLE_DEVIATION);
    bench.calibrated("C-1", TestBench.START.minusDays(1));
    bench.calibrated("C-2", TestBench.START.plusDays(19).plusHours(5));
    bench.daily("0.206", "0.204", "0.208", "0.205", "0.209", "0.207");
    StreamFindings stream = bench.stream("2026-01");
    double[] means = {0.202430, 0.203058, 0.205035, 0.205021, 0.206613, 0.206768};
    for (int i = 0; i < means.length; i++) {
      assertEquals(means[i], stream.points().get(20 + i).weightedMean().getAsDouble(), 5e-7);
    }
    assertEquals(0.204778, stream.points().get(20).weightedUpper().getAsDouble(), 5e-7);
    assertEquals(0.205960, stream.baseline().value().orElseThrow().weightedUpper(), 5e-7);
    Signal first = stream.signals().get(0);
    assertEquals(Rule.WEIGHTED_MEAN_BEYOND_LIMIT, first.id().rule());
    assertEquals(TestBench.START.plusDays(24), first.id().at());
    assertEquals(Weight.STOP, first.weight());
    assertTrue(first.open());
  }

  @Test
  void six_more_results_signal_at_the_fifth_by_weighted_mean_and_cumulative_sum() {
    TestBench bench = new TestBench().daily(IM_1);
    bench.chart =
        new ChartSettings(
            20,
            LimitsFrom.SAMPLE_DEVIATION,
            0.4,
            List.of(Rule.WEIGHTED_MEAN_BEYOND_LIMIT),
            List.of(Rule.CUMULATIVE_SUM_BEYOND_LIMIT));
    bench.daily("0.206", "0.204", "0.208", "0.205", "0.209");
    List<Signal> signals = bench.stream("2026-01").signals();
    assertEquals(
        List.of(
            "tg/PM-1/QC/2026-01-29T09:00/weighted-mean-beyond-limit",
            "tg/PM-1/QC/2026-01-29T09:00/cumulative-sum-beyond-limit"),
        signals.stream().map(s -> s.id().toString()).toList());
    assertEquals(
        List.of(Weight.STOP, Weight.NOTICE), signals.stream().map(Signal::weight).toList());
    // z, its limit, and the sum with k = 0.5, recomputed with NumPy 2.4
    assertEquals(0.206586282864916, signals.get(0).value(), 1e-9);
    assertEquals(0.205960016029877, signals.get(0).limit(), 1e-9);
    assertEquals(5.55835377756149, signals.get(1).value(), 1e-9);
    assertEquals(5, signals.get(1).limit(), 0.0);
    List<LocalDateTime> days =
        java.util.stream.IntStream.range(20, 25).mapToObj(TestBench.START::plusDays).toList();
    assertEquals(days, signals.get(1).points());
    assertEquals(0.0064 - 0.00005, signals.get(1).size().getAsDouble(), 1e-9);
  }

  @Test
  void prediction_limits_are_as_wide_as_the_number_of_results_asks_for() {
    // t(Φ(3), n − 1)·√(1 + 1/n) by SciPy 1.17.1
    double[] multipliers = {
      7.252072286710695, 4.294091191819875, 3.532362837302007, 3.158218345689062
    };
    int[] sizes = {5, 10, 20, 60};
    for (int i = 0; i < 4; i++) {
      TestBench bench = new TestBench();
      bench.chart = new ChartSettings(60, LimitsFrom.PREDICTION, 0.4, List.of(), List.of());
      for (int j = 0; j < sizes[i]; j++) {
        bench.daily(IM_1[j % 20]);
      }
      StreamFindings.Baseline baseline = bench.stream("2026-03").baseline().value().orElseThrow();
      assertEquals(sizes[i] < 15, baseline.provisional());
      double reach = baseline.limits().upperAction() - baseline.centre();
      assertEquals(multipliers[i], reach / baseline.sampleDeviation(), 1e-9);
    }
  }

  @Test
  void a_baseline_under_fifteen_gives_provisional_prediction_limits() {
    TestBench bench = new TestBench();
    bench.daily("0.201", "0.198", "0.205", "0.196", "0.203");
    StreamFindings stream = bench.stream("2026-01");
    StreamFindings.Baseline baseline = stream.baseline().value().orElseThrow();
    assertTrue(baseline.provisional());
    double factor =
        (baseline.limits().upperAction() - baseline.centre()) / baseline.sampleDeviation();
    assertEquals(7.25, factor, 0.005);
    // five results judged by a target, five weighted means of the results that make the limits
    assertTrue(stream.price().expectedStops().value().orElseThrow() < 10 * 0.0027);
  }

  @Test
  void four_results_give_no_limits_and_say_what_they_need() {
    StreamFindings stream =
        new TestBench().daily("0.201", "0.198", "0.205", "0.196").stream("2026-01");
    assertEquals(Optional.of("needs 5 results, has 4"), stream.baseline().why());
    assertEquals(Optional.of("there are no limits yet"), stream.price().delays().why());
    assertEquals(List.of(), stream.signals());
    assertTrue(stream.points().get(3).weightedMean().isEmpty());
  }

  @Test
  void results_that_are_all_the_same_number_give_limits_of_their_rounding() {
    TestBench bench = new TestBench();
    for (int i = 0; i < 20; i++) {
      bench.daily("0.2");
    }
    bench.daily("0.201");
    assertEquals(List.of(), bench.stream("2026-01").signals());
    bench.daily("0.3");
    assertFalse(bench.stream("2026-01").signals().isEmpty());
  }

  @Test
  void limits_stay_where_they_are_when_later_results_come() {
    TestBench bench = new TestBench().daily(IM_1);
    double before = bench.stream("2026-01").baseline().value().orElseThrow().centre();
    bench.daily("0.215", "0.216", "0.214", "0.215");
    assertEquals(before, bench.stream("2026-01").baseline().value().orElseThrow().centre(), 0.0);
  }

  @Test
  void a_baseline_that_a_person_chose_wins() {
    TestBench bench = new TestBench().daily(IM_1);
    LocalDate from = TestBench.START.toLocalDate().plusDays(2);
    bench.baselines.add(
        new BaselineChoice(
            "tg", "PM-1", "QC", from, from.plusDays(15), Optional.of("RO"), Optional.empty()));
    StreamFindings.Baseline baseline = bench.stream("2026-01").baseline().value().orElseThrow();
    assertTrue(baseline.chosen());
    assertEquals(16, baseline.results());
    assertEquals(from.atTime(9, 0), baseline.from());
  }

  @Test
  void a_slip_is_a_signal_of_three_rules_and_an_action_takes_it_out_of_the_limits() {
    TestBench bench = new TestBench().daily(IM_1);
    LocalDateTime at = TestBench.START.plusDays(20);
    bench.control(at, "0.201", "2.01");
    StreamFindings open = bench.stream("2026-01");
    assertEquals(
        List.of(
            "tg/PM-1/QC/2026-01-25T09:00/beyond-action-limit",
            "tg/PM-1/QC/2026-01-25T09:00/weighted-mean-beyond-limit",
            "tg/PM-1/QC/2026-01-25T09:00/readings-disagree"),
        open.signals().stream().map(s -> s.id().toString()).toList());
    bench.action(at, Rule.BEYOND_ACTION_LIMIT, true);
    StreamFindings closed = bench.stream("2026-01");
    assertEquals(
        List.of(
            "tg/PM-1/QC/2026-01-25T09:00/beyond-action-limit",
            "tg/PM-1/QC/2026-01-25T09:00/readings-disagree"),
        closed.signals().stream().map(s -> s.id().toString()).toList());
    assertFalse(closed.signals().get(0).open());
    assertEquals(20, closed.counted());
    assertTrue(closed.points().get(20).excluded());
  }

  @Test
  void pairs_further_apart_than_the_baselines_are_a_signal() {
    TestBench bench = new TestBench();
    String[] second = {
      "0.203", "0.197", "0.206", "0.198", "0.202", "0.201", "0.193", "0.209", "0.198", "0.203",
      "0.199", "0.203", "0.194", "0.202", "0.205", "0.199", "0.203", "0.194", "0.204", "0.198"
    };
    for (int i = 0; i < 20; i++) {
      bench.control(TestBench.START.plusDays(i), IM_1[i], second[i]);
    }
    // sum d^2 = 38e-6 over 20 pairs, so s = sqrt(38e-6/40) = 9.74679e-4;
    // t(0.9986501, 20) = 3.4221513 by SciPy 1.17.1; limit = 1.414214 * 3.4221513 * 9.74679e-4
    double limit = 0.00471711;
    StreamFindings.Baseline baseline = bench.stream("2026-01").baseline().value().orElseThrow();
    assertEquals(limit, baseline.readingsRangeUpper().value().orElseThrow(), 1e-8);
    bench.control(TestBench.START.plusDays(20), "0.198", "0.203");
    StreamFindings stream = bench.stream("2026-01");
    assertEquals(1, stream.signals().size());
    assertEquals(Rule.READINGS_DISAGREE, stream.signals().get(0).id().rule());
    assertEquals(0.005, stream.signals().get(0).value(), 1e-12);
  }

  @Test
  void censored_results_stay_listed_and_do_not_count() {
    TestBench bench = new TestBench().daily(IM_1);
    bench.control(TestBench.START.plusDays(20), "<0.010", "<0.010");
    StreamFindings stream = bench.stream("2026-01");
    assertEquals(21, stream.points().size());
    assertEquals(20, stream.counted());
    assertTrue(stream.points().get(20).value().isEmpty());
  }

  @Test
  void rules_that_are_not_in_use_give_no_signal_and_cost_nothing() {
    TestBench bench = new TestBench().daily(IM_1);
    bench.chart = new ChartSettings(20, LimitsFrom.MOVING_RANGE, 0.4, List.of(), List.of());
    bench.daily("0.9");
    assertEquals(List.of(), bench.stream("2026-01").signals());
    assertEquals(0, bench.stream("2026-01").price().expectedStops().value().orElseThrow(), 0.0);
  }

  @Test
  void expected_false_signals_count_what_limits_owe_to_their_baseline() {
    TestBench bench = new TestBench().daily(IM_1);
    bench.chart =
        new ChartSettings(
            20, LimitsFrom.SAMPLE_DEVIATION, 0.4, List.of(Rule.BEYOND_ACTION_LIMIT), List.of());
    // the first 14 are judged by what is known before them, 0.27 %; a later one of the baseline:
    // 2·P(T(18) > 3·sqrt(20·18)/sqrt(19² − 20·9)) by SciPy 1.17.1 (Thompson's formula)
    double early = 0.0026997960632601866;
    double own = 0.0005025182269454306;
    double first = 14 * early + 6 * own;
    assertEquals(first, expected(bench), 1e-9);
    bench.daily("0.200", "0.201");
    // a later one: 2·P(T(19) > 3/sqrt(1.05)) by SciPy 1.17.1
    double next = 0.008636093415381478;
    assertEquals(first + 2 * next, expected(bench), 1e-9);
    bench.chart =
        new ChartSettings(
            20,
            LimitsFrom.SAMPLE_DEVIATION,
            0.4,
            List.of(Rule.EIGHT_ON_ONE_SIDE),
            List.of(Rule.BEYOND_ACTION_LIMIT));
    // a run of eight on one side can end at one result only, the eighth from the 15th on; with a
    // mean of 20 results its chance is E(Φ(z/√20)^8 + Φ(−z/√20)^8), by SciPy 1.17.1
    assertEquals(0.015942818638150814, expected(bench), 1e-9);
  }

  private static double expected(TestBench bench) {
    return bench.stream("2026-01").price().expectedStops().value().orElseThrow();
  }

  @Test
  void the_assigned_values_uncertainty_decides_whether_there_is_a_bias() {
    TestBench bench = new TestBench().daily(IM_1);
    bench.assigned = Optional.of(new java.math.BigDecimal("0.198"));
    MaterialBias careful = bench.stream("2026-01").bias().value().orElseThrow();
    assertEquals(0.00205, careful.difference(), 1e-12);
    assertEquals(0.00205 / 0.93802, careful.standardUncertainty(), 1e-8);
    assertFalse(careful.significant());
    bench.uncertainty = Optional.of(java.math.BigDecimal.ZERO);
    assertTrue(bench.stream("2026-01").bias().value().orElseThrow().significant());
    bench.uncertainty = Optional.empty();
    assertEquals(
        Optional.of("needs the standard-uncertainty of the assigned value of QC"),
        bench.stream("2026-01").bias().why());
    bench.assigned = Optional.empty();
    assertEquals(
        Optional.of("QC has no assigned value, so only a move away from its baseline shows"),
        bench.stream("2026-01").bias().why());
  }

  @Test
  void a_wild_sixth_result_is_a_signal_though_provisional_limits_hold_it() {
    TestBench bench = new TestBench().daily("0.201", "0.198", "0.205", "0.196", "0.203");
    assertEquals(List.of(), bench.stream("2026-01").signals());
    bench.daily("0.300");
    StreamFindings stream = bench.stream("2026-01");
    StreamFindings.Baseline baseline = stream.baseline().value().orElseThrow();
    assertTrue(baseline.limits().upperAction() > 0.300);
    Signal signal = stream.signals().get(0);
    assertEquals(Rule.BEYOND_ACTION_LIMIT, signal.id().rule());
    // mean 0.2006, deviation 0.00364692, t(0.9986501, 4) = 6.62 of SciPy 1.17.1, times sqrt(6/5)
    assertEquals(
        0.2006 + 6.620205966815855 * 0.003646916505762089 * Math.sqrt(1.2), signal.limit(), 1e-7);
  }

  @Test
  void results_that_were_all_equal_still_judge_the_next_by_their_last_digit() {
    TestBench bench = new TestBench();
    bench.daily("0.2", "0.2", "0.2", "0.2", "0.2", "0.2", "0.2", "0.2", "0.201");
    assertEquals(List.of(), bench.stream("2026-01").signals());
    bench.daily("0.5");
    assertEquals(1, bench.stream("2026-01").signals().size());
  }

  @Test
  void a_signal_of_the_first_results_stays_when_the_limits_have_settled() {
    TestBench bench = new TestBench().daily("0.201", "0.198", "0.205", "0.196", "0.203", "0.300");
    bench.daily(java.util.Arrays.copyOf(IM_1, 14));
    StreamFindings stream = bench.stream("2026-01");
    assertFalse(stream.baseline().value().orElseThrow().provisional());
    assertEquals(
        TestBench.START.plusDays(5),
        stream.signals().stream()
            .filter(s -> s.id().rule() == Rule.BEYOND_ACTION_LIMIT)
            .findFirst()
            .orElseThrow()
            .id()
            .at());
  }

  @Test
  void a_bound_beyond_a_limit_is_a_signal() {
    TestBench bench = new TestBench().daily(IM_1);
    bench.control(TestBench.START.plusDays(20), ">0.300", ">0.300");
    bench.control(TestBench.START.plusDays(21), "<0.100", "0.090");
    bench.control(TestBench.START.plusDays(22), "<0.300", "<0.300");
    List<Signal> signals = bench.stream("2026-01").signals();
    assertEquals(
        List.of(TestBench.START.plusDays(20), TestBench.START.plusDays(21)),
        signals.stream().map(s -> s.id().at()).toList());
    assertEquals(List.of(0.3, 0.1), signals.stream().map(Signal::value).toList());
  }

  @Test
  void an_action_recorded_later_closes_nothing_earlier() {
    TestBench bench = new TestBench().daily(IM_1);
    LocalDateTime at = TestBench.START.plusDays(20);
    bench.control(at, "0.260", "0.260");
    bench.action(at, Rule.BEYOND_ACTION_LIMIT, false);
    bench.action(at, Rule.WEIGHTED_MEAN_BEYOND_LIMIT, false);
    assertTrue(bench.stream("2026-01").signals().stream().noneMatch(Signal::open));
    Findings before =
        bench
            .review()
            .of(Period.of(java.time.YearMonth.of(2026, 1)), Optional.of(LocalDate.of(2026, 1, 24)));
    assertEquals(20, before.methods().get(0).streams().get(0).points().size());
    bench.actions.clear();
    bench.actions.add(late(at));
    bench.product(LocalDateTime.of(2026, 3, 1, 9, 0), "B-1", "0.2", "0.2");
    assertTrue(bench.stream("2026-01").signals().stream().allMatch(Signal::open));
    assertFalse(bench.stream("2026-03").signals().get(0).open());
  }

  private static org.quietline.bench.Action late(LocalDateTime at) {
    return new org.quietline.bench.Action(
        LocalDateTime.of(2026, 2, 9, 9, 0),
        new org.quietline.bench.SignalId("tg", "PM-1", "QC", at, Rule.BEYOND_ACTION_LIMIT),
        Optional.of("found in February"),
        Optional.empty(),
        false,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        new org.quietline.bench.Origin("actions.csv", 2));
  }

  @Test
  void an_action_for_a_signal_that_was_not_found_closes_nothing_and_is_told() {
    TestBench bench = new TestBench().daily(IM_1);
    bench.action(TestBench.START.plusDays(3), Rule.BEYOND_ACTION_LIMIT, false);
    Findings findings = bench.findings("2026-01");
    assertEquals(1, findings.idleActions().size());
    assertFalse(findings.steady());
  }

  @Test
  void a_revised_baseline_leaves_history_with_the_limits_it_had() {
    for (boolean swapped : new boolean[] {false, true}) {
      TestBench bench = new TestBench().daily(IM_1);
      LocalDate second = TestBench.START.toLocalDate().plusDays(20);
      String[] lower = new String[20];
      for (int i = 0; i < 20; i++) {
        lower[i] =
            new java.math.BigDecimal(IM_1[i]).subtract(new java.math.BigDecimal("0.03")).toString();
      }
      bench.daily(lower);
      List<BaselineChoice> choices =
          new java.util.ArrayList<>(
              List.of(
                  choice(TestBench.START.toLocalDate(), second.minusDays(1)),
                  choice(second, second.plusDays(19))));
      if (swapped) {
        java.util.Collections.reverse(choices);
      }
      bench.baselines.addAll(choices);
      StreamFindings stream = bench.stream("2026-02");
      assertEquals(List.of(), stream.signals());
      assertEquals(0.17005, stream.baseline().value().orElseThrow().centre(), 1e-12);
    }
  }

  @Test
  void results_before_the_only_chosen_baseline_keep_the_limits_of_their_own() {
    TestBench bench = new TestBench().daily(IM_1);
    LocalDate second = TestBench.START.toLocalDate().plusDays(20);
    bench.daily("0.171", "0.168", "0.175", "0.166", "0.173", "0.170", "0.164", "0.177");
    bench.baselines.add(choice(second, second.plusDays(7)));
    assertEquals(List.of(), bench.stream("2026-02").signals());
  }

  private static BaselineChoice choice(LocalDate from, LocalDate to) {
    return new BaselineChoice("tg", "PM-1", "QC", from, to, Optional.empty(), Optional.empty());
  }

  @Test
  void means_that_differ_by_arithmetic_alone_are_judged_by_their_rounding() {
    TestBench bench = new TestBench();
    bench.replicates = 3;
    bench.assigned = Optional.of(new java.math.BigDecimal("0.100"));
    for (int i = 0; i < 19; i++) {
      bench.control(TestBench.START.plusDays(i), "0.1", "0.1", "0.1");
    }
    bench.control(TestBench.START.plusDays(19), "0.1", "0.1");
    StreamFindings stream = bench.stream("2026-01");
    assertEquals(List.of(), stream.signals());
    // half a step of 0.001 over sqrt(3), times t(0.9986501, 19) of SciPy 1.17.1 and sqrt(1 + 1/20)
    double reach = 0.0005 / Math.sqrt(3) * 3.4472331 * Math.sqrt(1.05);
    assertEquals(reach, stream.next().orElseThrow().reach(), 1e-7);
  }

  @Test
  void a_baseline_that_is_still_being_collected_is_not_in_force() {
    TestBench bench = new TestBench().daily(IM_1).daily("0.250");
    LocalDate from = TestBench.START.toLocalDate().plusDays(14);
    bench.baselines.add(choice(from, from.plusDays(300)));
    StreamFindings stream = bench.stream("2026-01");
    assertFalse(stream.baseline().value().orElseThrow().chosen());
    assertEquals(2, stream.signals().size());
  }

  @Test
  void a_choice_of_too_few_results_leaves_the_limits_and_says_so() {
    TestBench bench = new TestBench().daily(IM_1);
    LocalDate from = TestBench.START.toLocalDate().plusDays(3);
    bench.baselines.add(choice(from, from.plusDays(1)));
    StreamFindings stream = bench.stream("2026-01");
    assertEquals(20, stream.baseline().value().orElseThrow().results());
    assertEquals(
        Optional.of(
            "the baseline chosen from 2026-01-08 to 2026-01-09 needs 5 results, has 2; the limits"
                + " before it stay"),
        stream.choiceNotUsed());
  }

  @Test
  void an_action_on_a_signal_that_was_not_found_does_nothing() {
    TestBench bench = new TestBench().daily(IM_1).daily("0.250");
    LocalDateTime last = TestBench.START.plusDays(20);
    bench.action(last, Rule.SIX_RISING_OR_FALLING, true);
    StreamFindings stream = bench.stream("2026-01");
    assertEquals(21, stream.counted());
    assertTrue(stream.signals().stream().allMatch(Signal::open));
    bench.action(last, Rule.BEYOND_ACTION_LIMIT, true);
    assertEquals(20, bench.stream("2026-01").counted());
  }
}
