package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.quietline.assess.OutOfDate.Kind;
import org.quietline.assess.Verdict.Level;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.ChartSettings.LimitsFrom;
import org.quietline.bench.Method.ShelfLife;
import org.quietline.bench.Role;
import org.quietline.bench.Rule;
import org.quietline.bench.Storage;

/** Verdicts, dates, and the moment a review speaks from. */
class ReviewTest {
  /** Benches here begin with results and are calibrated later, which is a question of its own. */
  private static final Class<?> OLDER_THAN_CALIBRATIONS = Concern.RecordsContradict.class;

  private static final String[] QUIET = {
    "0.201", "0.203", "0.202", "0.201", "0.198", "0.197", "0.203", "0.200", "0.198", "0.199",
    "0.199", "0.197", "0.202", "0.201", "0.200", "0.198", "0.203", "0.199", "0.199", "0.202"
  };

  /** Twenty quiet days, never calibrated, so that only the stream is judged. */
  private static TestBench quiet() {
    TestBench bench = paired(QUIET);
    bench.validDays = OptionalInt.empty();
    return bench;
  }

  /** One control a day whose two readings lie 0.001 to either side of the value. */
  private static TestBench paired(String... values) {
    TestBench bench = new TestBench();
    BigDecimal step = new BigDecimal("0.001");
    for (String value : values) {
      BigDecimal middle = new BigDecimal(value);
      bench.control(
          TestBench.START.plusDays(bench.results.size()),
          middle.subtract(step).toPlainString(),
          middle.add(step).toPlainString());
    }
    return bench;
  }

  private static List<Class<?>> concerns(MethodFindings found) {
    return found.verdict().concerns().stream().<Class<?>>map(Object::getClass).toList();
  }

  @Test
  void twenty_quiet_results_are_steady() {
    Findings findings = quiet().findings("2026-01");
    assertEquals(Level.STEADY, findings.methods().get(0).verdict().level());
    assertEquals(List.of(), findings.methods().get(0).verdict().concerns());
    assertTrue(findings.steady());
  }

  @Test
  void an_open_stop_signal_holds_the_method_until_its_cause_is_recorded() {
    TestBench bench = quiet().daily("0.250");
    MethodFindings held = bench.method("2026-01");
    assertEquals(Level.HOLD, held.verdict().level());
    assertEquals(List.of(Concern.OpenStopSignals.class), concerns(held));
    LocalDateTime at = TestBench.START.plusDays(20);
    bench.action(at, Rule.BEYOND_ACTION_LIMIT, false);
    bench.action(at, Rule.WEIGHTED_MEAN_BEYOND_LIMIT, false);
    assertEquals(Level.STEADY, bench.method("2026-01").verdict().level());
    assertEquals(2, bench.stream("2026-01").signals().size());
  }

  @Test
  void an_open_notice_is_a_watch() {
    TestBench bench = quiet().daily("0.250");
    bench.chart =
        new ChartSettings(
            20,
            LimitsFrom.MOVING_RANGE,
            0.4,
            List.of(Rule.READINGS_DISAGREE),
            List.of(Rule.BEYOND_ACTION_LIMIT));
    assertEquals(Level.WATCH, bench.method("2026-01").verdict().level());
    assertEquals(
        List.of(Concern.OpenNotices.class, Concern.NoStopRules.class),
        concerns(bench.method("2026-01")));
  }

  @Test
  void too_few_results_are_a_watch_and_never_steady() {
    MethodFindings young = quietFirst(5);
    assertEquals(List.of(Concern.TooFewResults.class), concerns(young));
    assertEquals(Level.WATCH, young.verdict().level());
    assertEquals(List.of(Concern.TooFewResults.class), concerns(quietFirst(3)));
  }

  private static MethodFindings quietFirst(int results) {
    TestBench bench = paired(java.util.Arrays.copyOf(QUIET, results));
    bench.validDays = OptionalInt.empty();
    return bench.method("2026-01");
  }

  @Test
  void a_method_without_controls_is_a_watch() {
    TestBench bench = new TestBench();
    bench.validDays = OptionalInt.empty();
    bench.product(TestBench.START, "B-1", "0.2", "0.2");
    assertEquals(List.of(Concern.NoControls.class), concerns(bench.method("2026-01")));
  }

  @Test
  void a_month_without_controls_is_a_watch() {
    TestBench bench = quiet();
    bench.product(LocalDateTime.of(2026, 3, 2, 9, 0), "B-1", "0.2", "0.2");
    MethodFindings found = bench.method("2026-03");
    assertEquals(List.of(Concern.NoRecentControls.class), concerns(found));
    assertEquals(
        LocalDate.of(2026, 1, 24),
        ((Concern.NoRecentControls) found.verdict().concerns().get(0)).last());
  }

  @Test
  void a_bias_beyond_the_allowance_is_a_watch() {
    TestBench bench = quiet();
    bench.assigned = Optional.of(new BigDecimal("0.180"));
    assertEquals(List.of(Concern.Biased.class), concerns(bench.method("2026-01")));
    bench.assigned = Optional.of(new BigDecimal("0.194"));
    assertEquals(Level.STEADY, bench.method("2026-01").verdict().level());
    bench.allowance = Optional.empty();
    assertEquals(List.of(Concern.Biased.class), concerns(bench.method("2026-01")));
  }

  @Test
  void an_expired_calibration_holds_the_method() {
    TestBench bench = paired(QUIET);
    bench.calibrated("C-1", TestBench.START.minusDays(20));
    MethodFindings found = bench.method("2026-01");
    assertEquals(
        List.of(Concern.CalibrationExpired.class, Concern.UsedPastDate.class), concerns(found));
    assertEquals(Level.HOLD, found.verdict().level());
    OutOfDate first = found.outOfDate().get(0);
    assertEquals(Kind.CALIBRATION_VALIDITY, first.kind());
    assertEquals(LocalDate.of(2026, 1, 15), first.lastDay());
    assertEquals(1, first.daysPast());
    assertEquals(TestBench.START.plusDays(11), first.result().takenAt());
  }

  @Test
  void not_knowing_the_drift_is_a_concern_from_half_the_validity_on() {
    TestBench bench = paired(QUIET);
    bench.calibrated("C-1", TestBench.START.plusDays(17).plusHours(1));
    assertEquals(List.of(OLDER_THAN_CALIBRATIONS), concerns(bench.method("2026-01")));
    TestBench later = paired(QUIET);
    later.calibrated("C-1", TestBench.START.plusDays(17).plusHours(1));
    later.product(TestBench.START.plusDays(33), "B-1", "0.2", "0.2");
    later.control(TestBench.START.plusDays(32), "0.2", "0.2");
    assertEquals(List.of(Concern.DriftUnknown.class), concerns(later.method("2026-02")));
  }

  @Test
  void the_earlier_of_printed_date_and_shelf_life_applies() {
    TestBench bench = quiet();
    LocalDate opened = LocalDate.of(2026, 1, 2);
    bench.lot("L-1", opened, LocalDate.of(2026, 12, 1), Storage.AMBIENT);
    bench.lot("L-2", opened, LocalDate.of(2026, 1, 10), Storage.REFRIGERATED);
    bench.result(
        LocalDateTime.of(2026, 1, 21, 9, 0),
        Role.PRODUCT,
        "B-1",
        "RO",
        Optional.of("L-1"),
        "0.2",
        "0.2");
    bench.result(
        LocalDateTime.of(2026, 1, 21, 9, 30),
        Role.PRODUCT,
        "B-2",
        "RO",
        Optional.of("L-2"),
        "0.2",
        "0.2");
    List<OutOfDate> late = bench.method("2026-01").outOfDate();
    assertEquals(
        List.of(Kind.REAGENT_SHELF_LIFE, Kind.REAGENT_EXPIRY),
        late.stream().map(OutOfDate::kind).toList());
    assertEquals(List.of(1L, 11L), late.stream().map(OutOfDate::daysPast).toList());
    assertEquals(List.of(Concern.UsedPastDate.class), concerns(bench.method("2026-01")));
    bench.shelfLife = ShelfLife.NOT_SET;
    assertEquals(1, bench.method("2026-01").outOfDate().size());
    assertEquals("reagent-expiry", late.get(1).kind().key());
  }

  @Test
  void a_lot_used_on_its_last_day_is_in_date() {
    TestBench bench = quiet();
    bench.lot("L-1", LocalDate.of(2026, 1, 2), LocalDate.of(2026, 1, 20), Storage.AMBIENT);
    bench.result(
        LocalDateTime.of(2026, 1, 20, 16, 0),
        Role.PRODUCT,
        "B-1",
        "RO",
        Optional.of("L-1"),
        "0.2",
        "0.2");
    assertEquals(List.of(), bench.method("2026-01").outOfDate());
  }

  @Test
  void far_too_many_disagreeing_pairs_in_one_month_are_a_watch() {
    TestBench bench = quiet();
    for (int i = 0; i < 60; i++) {
      turned(bench, TestBench.START.plusHours(i), "B-" + i, i, "0.201");
    }
    for (int i = 0; i < 4; i++) {
      turned(bench, LocalDateTime.of(2026, 2, 2 + i, 9, 0), "D-" + i, i, "0.206");
      bench.control(LocalDateTime.of(2026, 2, 2 + i, 10, 0), "0.200", "0.200");
    }
    assertEquals(List.of(Concern.PairsDisagree.class), concerns(bench.method("2026-02")));
  }

  @Test
  void a_person_who_differs_is_a_watch() {
    TestBench bench = quiet();
    for (int i = 0; i < 20; i++) {
      turned(bench, TestBench.START.plusHours(i), "B-" + i, i, "0.201");
      bench.result(
          TestBench.START.plusHours(i).plusMinutes(1),
          Role.PRODUCT,
          "E-" + i,
          "EV",
          Optional.empty(),
          i % 2 == 0 ? "0.200" : "0.203",
          i % 2 == 0 ? "0.203" : "0.200");
    }
    assertEquals(List.of(Concern.PersonDiffers.class), concerns(bench.method("2026-01")));
  }

  @Test
  void the_review_speaks_from_the_latest_row_and_looks_at_nothing_later_than_asked() {
    TestBench bench = quiet();
    assertEquals(LocalDateTime.of(2026, 1, 24, 9, 0), bench.findings("2026-01").now());
    bench.product(LocalDateTime.of(2026, 2, 3, 9, 0), "B-1", "0.2", "0.2");
    assertEquals(
        LocalDate.of(2026, 1, 31).atTime(java.time.LocalTime.MAX), bench.findings("2026-01").now());
    assertEquals(Optional.of(YearMonth.of(2026, 2)), bench.review().latestMonth());
    Findings early =
        bench.review().of(Period.of(YearMonth.of(2026, 1)), Optional.of(LocalDate.of(2026, 1, 9)));
    assertEquals(5, early.methods().get(0).streams().get(0).points().size());
    assertEquals(Optional.empty(), new TestBench().review().latestMonth());
  }

  @Test
  void settings_that_could_not_be_used_are_never_steady() {
    Findings f = quiet().findings("2026-01");
    var aside =
        new org.quietline.bench.Accounting.SetAside("bench.toml", 3, "unit", "", "is missing", 0);
    var accounting =
        new org.quietline.bench.Accounting(
            f.accounting().files(), List.of(), List.of(aside), f.accounting().takenIn(), 0);
    assertFalse(
        new Findings(
                f.bench(),
                f.period(),
                f.now(),
                f.chart(),
                accounting,
                f.methods(),
                List.of(),
                "a",
                "b")
            .steady());
  }

  @Test
  void a_period_that_ends_before_it_starts_is_refused() {
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> new Period(LocalDate.of(2026, 2, 1), LocalDate.of(2026, 1, 1)));
    assertEquals(
        "the period ends on 2026-01-01, before it starts 2026-02-01", refused.getMessage());
  }

  @Test
  void an_answer_keeps_its_reason_when_something_is_computed_from_it() {
    assertEquals(Answer.of(4), Answer.of(2).map(n -> n * 2));
    assertEquals(Answer.cannotSay("needs 2"), Answer.<Integer>cannotSay("needs 2").map(n -> n * 2));
  }

  @Test
  void pairs_that_are_all_equal_are_a_watch() {
    TestBench bench = new TestBench().daily(QUIET);
    bench.validDays = OptionalInt.empty();
    assertEquals(List.of(Concern.PairsIdentical.class), concerns(bench.method("2026-01")));
  }

  @Test
  void a_bench_without_stop_rules_is_a_watch() {
    TestBench bench = quiet();
    bench.chart = new ChartSettings(20, LimitsFrom.MOVING_RANGE, 0.4, List.of(), List.of());
    assertEquals(List.of(Concern.NoStopRules.class), concerns(bench.method("2026-01")));
  }

  /** A pair whose larger reading comes first in every second result. */
  private static void turned(
      TestBench bench, LocalDateTime at, String sample, int i, String larger) {
    bench.product(at, sample, i % 2 == 0 ? "0.200" : larger, i % 2 == 0 ? larger : "0.200");
  }

  @Test
  void an_instrument_in_use_without_controls_is_a_watch() {
    TestBench bench = quiet();
    bench.results.add(
        new org.quietline.bench.Result(
            TestBench.START,
            "tg",
            "PM-2",
            Role.PRODUCT,
            "B-1",
            List.of(new org.quietline.bench.Reading.Measured(new BigDecimal("0.2"))),
            List.of(new org.quietline.bench.Reading.Measured(new BigDecimal("0.2"))),
            new org.quietline.bench.Unit("% mass"),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            new org.quietline.bench.Origin("readings/b.csv", 2)));
    assertEquals(
        List.of(new Concern.NoControls(Optional.of("PM-2"))),
        bench.method("2026-01").verdict().concerns());
  }

  @Test
  void a_control_of_last_week_is_recent_in_the_first_days_of_a_month() {
    TestBench bench = quiet();
    bench.product(LocalDateTime.of(2026, 2, 2, 9, 0), "B-1", "0.2", "0.2");
    assertEquals(List.of(), concerns(bench.method("2026-02")));
  }

  @Test
  void a_chance_that_is_not_safe_is_a_concern_also_early_in_a_window() {
    TestBench bench = paired(QUIET);
    bench.calibrated("C-1", TestBench.START.plusDays(12).plusHours(1));
    bench.uncertainty = Optional.of(new BigDecimal("0.0055"));
    MethodFindings found = bench.method("2026-01");
    assertTrue(found.drift().get(0).chanceBeyondNow().value().orElseThrow() < 0.5);
    assertEquals(
        found.drift().get(0).chanceBeyondNow().value().orElseThrow() > 0.05,
        concerns(found).contains(Concern.DriftUnknown.class));
  }

  @Test
  void it_is_counted_for_how_many_results_dates_could_be_checked() {
    TestBench bench = quiet();
    assertEquals(new DateCoverage(20, 0, 20, List.of()), bench.method("2026-01").dates());
    bench.validDays = OptionalInt.of(30);
    assertEquals(new DateCoverage(20, 20, 20, List.of()), bench.method("2026-01").dates());
  }

  @Test
  void the_last_minute_of_a_period_belongs_to_it() {
    TestBench bench = quiet();
    bench.control(LocalDateTime.of(2026, 1, 31, 23, 59, 30), "0.500", "0.501");
    assertEquals(Level.HOLD, bench.method("2026-01").verdict().level());
  }

  @Test
  void an_instrument_that_rests_does_not_hold_the_method() {
    TestBench bench = quiet();
    bench.validDays = OptionalInt.of(30);
    bench.calibrated("C-1", TestBench.START.plusDays(17).plusHours(1));
    bench.calibrations.add(
        new org.quietline.bench.Calibration(
            "C-0",
            "tg",
            "PM-0",
            LocalDateTime.of(2024, 1, 5, 9, 0),
            Optional.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            new org.quietline.bench.Origin("calibrations.csv", 9)));
    MethodFindings found = bench.method("2026-01");
    assertEquals(2, found.drift().size());
    assertEquals(List.of(OLDER_THAN_CALIBRATIONS), concerns(found));
  }
}
