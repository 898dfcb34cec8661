package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Drift.Decision;
import org.quietline.bench.Method.Allowance;
import org.quietline.stats.model.StraightLine;

/**
 * The current window against five checks on days 1, 8, 15, 22 and 29, whose line, interval and
 * chances were computed with SciPy 1.17.1.
 */
class CalibrationDriftTest {
  private static final LocalDateTime CALIBRATED = LocalDateTime.of(2026, 1, 1, 9, 0);
  private static final int[] DAYS = {1, 8, 15, 22, 29};
  private static final String[] SLOW = {"-0.005", "-0.002", "0.004", "0.005", "0.006"};
  private static final String[] FAST = {"0.001", "0.004", "0.008", "0.013", "0.017"};

  private static TestBench window(String... deviations) {
    TestBench bench = new TestBench();
    bench.calibrated("C-1", CALIBRATED.minusDays(30));
    bench.calibrated("C-2", CALIBRATED);
    bench.uncertainty = Optional.of(BigDecimal.ZERO);
    for (int i = 0; i < deviations.length; i++) {
      String value = new BigDecimal(deviations[i]).add(new BigDecimal("0.200")).toPlainString();
      bench.control(CALIBRATED.plusDays(DAYS[i]), value, value);
    }
    return bench;
  }

  private static Drift drift(TestBench bench) {
    return bench.method("2026-01").drift().get(0);
  }

  @Test
  void the_line_of_five_checks_agrees_with_least_squares_done_elsewhere() {
    Drift drift = drift(window(SLOW));
    Drift.Line line = drift.line().value().orElseThrow();
    assertEquals(4.142857142857e-4, line.slopePerDay(), 1e-15);
    assertEquals(1.6389217801e-4, line.slope().lower(), 1e-13);
    assertEquals(6.6467925056e-4, line.slope().upper(), 1e-13);
    assertTrue(line.slopeIsReal());
    assertEquals(0.0074, line.biasNow(), 1e-12);
    assertEquals(0.007814285714, line.biasAtExpiry(), 1e-12);
    assertEquals(30 * 6.6467925056e-4, line.largestHidden(), 1e-12);
    assertEquals(0.030163156, drift.chanceBeyondAtExpiry().value().orElseThrow(), 1e-8);
    assertEquals(13, line.fan().size());
    assertEquals(30, line.fan().get(12).day());
    assertEquals(2, drift.windows());
    assertEquals("C-2", drift.calibration().orElseThrow().key());
    assertEquals(Optional.of(LocalDate.of(2026, 1, 31)), drift.expires());
  }

  @Test
  void a_chance_below_five_in_a_hundred_keeps_the_calibration_to_its_date() {
    Drift drift = drift(window(SLOW));
    assertEquals(Decision.KEEP, drift.decision());
    assertEquals(Optional.of(LocalDate.of(2026, 1, 31)), drift.lastSafeDay().value());
  }

  @Test
  void the_references_uncertainty_raises_the_chance() {
    TestBench bench = window(SLOW);
    bench.uncertainty = Optional.of(new BigDecimal("0.002"));
    Drift drift = drift(bench);
    assertEquals(0.0700744154562198, drift.chanceBeyondAtExpiry().value().orElseThrow(), 1e-12);
    assertEquals(0.002, drift.referenceUncertainty().value().orElseThrow(), 0.0);
    bench.uncertainty = Optional.empty();
    assertEquals(
        Optional.of(
            "needs the standard-uncertainty of the assigned value of QC; "
                + "the chances leave it out"),
        drift(bench).referenceUncertainty().why());
  }

  @Test
  void a_fast_drift_that_is_past_the_allowance_asks_for_recalibration_now() {
    Drift drift = drift(window(FAST));
    assertEquals(Decision.RECALIBRATE_NOW, drift.decision());
    LocalDate safe = drift.lastSafeDay().value().orElseThrow();
    int day = (int) java.time.temporal.ChronoUnit.DAYS.between(CALIBRATED.toLocalDate(), safe);
    assertLastSafe(day, FAST);
    assertTrue(day < 29);
    assertTrue(drift.chanceBeyondAtExpiry().value().orElseThrow() > 0.99);
  }

  @Test
  void a_fast_drift_seen_in_time_names_the_last_safe_day() {
    // the second slope is one-sided above zero with 95 %, the first is not
    TestBench bench = window("0.001", "0.0085", "0.0085");
    assertEquals(Decision.CANNOT_SAY, drift(bench).decision());
    bench = window("0.0010", "0.0041", "0.0071");
    Drift drift = drift(bench);
    assertEquals(Decision.RECALIBRATE_BY, drift.decision());
    LocalDate safe = drift.lastSafeDay().value().orElseThrow();
    assertLastSafe(
        (int) java.time.temporal.ChronoUnit.DAYS.between(CALIBRATED.toLocalDate(), safe),
        "0.0010",
        "0.0041",
        "0.0071");
  }

  /** By the ordinary straight line, which is what one window alone gives. */
  private static void assertLastSafe(int day, String... deviations) {
    double[] days =
        java.util.Arrays.stream(DAYS).limit(deviations.length).asDoubleStream().toArray();
    double[] values =
        java.util.Arrays.stream(deviations).mapToDouble(Double::parseDouble).toArray();
    StraightLine line = StraightLine.fit(days, values);
    assertTrue(line.chanceBeyond(day, 0.012) <= 0.05);
    assertTrue(line.chanceBeyond(day + 1.0, 0.012) > 0.05);
  }

  @Test
  void noisy_checks_say_how_much_drift_could_be_hiding() {
    Drift drift = drift(window("0.006", "-0.005", "0.004", "-0.006", "0.005"));
    assertEquals(Decision.CANNOT_SAY, drift.decision());
    Drift.Line line = drift.line().value().orElseThrow();
    assertFalse(line.slopeIsReal());
    assertTrue(line.largestHidden() > 0.012);
    assertEquals(
        Optional.of("the control results do not show in which direction it goes"),
        drift.lastSafeDay().why());
  }

  @Test
  void two_checks_draw_no_line() {
    Drift drift = drift(window("0.001", "0.002"));
    assertEquals(
        Optional.of("needs 1 more control result on other days of a window"), drift.line().why());
    assertEquals(Decision.CANNOT_SAY, drift.decision());
    assertEquals(2, drift.deviations().size());
  }

  @Test
  void checks_on_one_moment_draw_no_line() {
    TestBench bench = window();
    for (int i = 0; i < 3; i++) {
      bench.control(CALIBRATED.plusDays(1), "0.20" + i, "0.20" + i);
    }
    assertEquals(
        Optional.of("needs 2 more control results on other days of a window"),
        drift(bench).line().why());
  }

  @Test
  void checks_that_lie_exactly_on_a_line_scatter_by_their_rounding() {
    Drift drift = drift(window("0", "0", "0", "0"));
    // 0.001/√12 times √(1/4 + 18.5²/245) at day 30 with t(0.975; 2)
    assertEquals(
        4.302652729911275 * 0.001 / Math.sqrt(12) * Math.sqrt(0.25 + 18.5 * 18.5 / 245),
        drift.line().value().orElseThrow().atExpiry().upper(),
        1e-12);
    assertEquals(Decision.KEEP, drift.decision());
  }

  @Test
  void a_window_past_its_validity_is_expired_whatever_the_line_says() {
    TestBench bench = window(SLOW);
    bench.product(CALIBRATED.plusDays(31), "B-1", "0.1", "0.1");
    Drift drift = bench.method("2026-02").drift().get(0);
    assertEquals(Decision.EXPIRED, drift.decision());
    assertEquals(Optional.of(LocalDate.of(2026, 1, 31)), drift.lastSafeDay().value());
  }

  @Test
  void without_an_allowance_or_a_validity_no_date_is_given() {
    TestBench bench = window(SLOW);
    bench.allowance = Optional.empty();
    assertEquals(
        Optional.of("no allowable-bias is set for this method"), drift(bench).lastSafeDay().why());
    bench = window(SLOW);
    bench.validDays = OptionalInt.empty();
    assertEquals(
        Optional.of("no calibration-valid-days is set for this method"),
        drift(bench).chanceBeyondAtExpiry().why());
  }

  @Test
  void an_allowance_in_percent_is_of_the_references_level() {
    TestBench bench = window(SLOW);
    bench.allowance = Optional.of(new Allowance(new BigDecimal("6"), true));
    assertEquals(0.012, drift(bench).allowance().getAsDouble(), 1e-15);
  }

  @Test
  void a_baseline_inside_the_window_cannot_show_its_own_drift() {
    TestBench bench = window(SLOW);
    bench.assigned = Optional.empty();
    bench.uncertainty = Optional.empty();
    Drift drift = drift(bench);
    assertFalse(drift.deviations().get(0).assigned());
    assertEquals(
        Optional.of(
            "the baseline's own results are in this window, so they cannot show its drift: needs an"
                + " assigned value or a later window"),
        drift.line().why());
  }

  @Test
  void without_an_assigned_value_drift_is_told_from_an_earlier_baselines_centre() {
    TestBench bench = window(SLOW);
    bench.assigned = Optional.empty();
    bench.uncertainty = Optional.empty();
    for (int i = 0; i < 20; i++) {
      String value = i % 2 == 0 ? "0.199" : "0.201";
      bench.control(CALIBRATED.minusDays(25).plusDays(i), value, value);
    }
    Drift drift = drift(bench);
    assertEquals(-0.005, drift.deviations().get(0).deviation(), 1e-12);
    assertEquals(2, drift.pool().value().orElseThrow().windows());
    assertEquals(25, drift.pool().value().orElseThrow().results());
    // deviation of the baseline: 0.001 * sqrt(20/19), over sqrt(20)
    assertEquals(0.001 / Math.sqrt(19), drift.referenceUncertainty().value().orElseThrow(), 1e-12);
  }

  @Test
  void a_reference_too_uncertain_for_the_allowance_settles_nothing() {
    TestBench bench = window(SLOW);
    bench.uncertainty = Optional.of(new BigDecimal("0.007"));
    Drift drift = drift(bench);
    assertEquals(
        Optional.of("the uncertainty of the assigned value alone uses up the allowance"),
        drift.lastSafeDay().why());
    assertEquals(Decision.CANNOT_SAY, drift.decision());
  }

  @Test
  void a_percentage_of_nothing_is_no_allowance() {
    TestBench bench = window(SLOW);
    bench.allowance = Optional.of(new Allowance(new BigDecimal("6"), true));
    bench.assigned = Optional.of(BigDecimal.ZERO);
    assertEquals(
        Optional.of("allowable-bias-percent needs a reference other than zero"),
        drift(bench).lastSafeDay().why());
  }

  @Test
  void a_control_that_is_plainly_off_asks_for_recalibration_also_without_a_validity() {
    TestBench bench = window("0.020", "0.021", "0.0195", "0.0205");
    bench.validDays = OptionalInt.empty();
    assertEquals(Decision.RECALIBRATE_NOW, drift(bench).decision());
  }

  @Test
  void not_knowing_is_no_reason_to_recalibrate() {
    Drift drift = drift(window("0.030", "-0.020", "0.028"));
    assertTrue(drift.chanceBeyondNow().value().orElseThrow() > 0.5);
    assertEquals(Decision.CANNOT_SAY, drift.decision());
  }

  @Test
  void an_instrument_without_a_calibration_is_said() {
    TestBench bench = new TestBench();
    bench.control(CALIBRATED, "0.2", "0.2");
    Drift drift = drift(bench);
    assertEquals(Optional.empty(), drift.calibration());
    assertEquals(Optional.of("no calibration is recorded for this instrument"), drift.line().why());
    bench.validDays = OptionalInt.empty();
    assertEquals(List.of(), bench.method("2026-01").drift());
  }
}
