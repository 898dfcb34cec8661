package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.quietline.assess.InstrumentCalibrations.Curve;
import org.quietline.assess.InstrumentCalibrations.Level;
import org.quietline.assess.InstrumentCalibrations.Limit;
import org.quietline.assess.InstrumentCalibrations.Step;
import org.quietline.assess.InstrumentCalibrations.Uncertainty;
import org.quietline.bench.ChartSettings.Weight;
import org.quietline.bench.Rule;
import org.quietline.bench.SignalId;
import org.quietline.stats.Reference;

/** Calibrations whose numbers follow by hand; quantiles of Student's t are those of R 4. */
class CalibrationHistoryTest {
  /** t(Φ(3), 2) and t(0.975, 2). */
  private static final double T_2 = 19.2067442;

  private static final double T95_2 = 4.302653;

  private static FreeBench bench(String... lowAndHigh) {
    FreeBench bench = new FreeBench();
    for (int i = 0; i < lowAndHigh.length; i += 2) {
      bench.calibrated(
          FreeBench.START.plusDays(30L * i / 2),
          "",
          "0.100",
          lowAndHigh[i],
          "0.300",
          lowAndHigh[i + 1]);
    }
    return bench;
  }

  private static InstrumentCalibrations of(FreeBench bench) {
    List<InstrumentCalibrations> all = CalibrationHistory.ask(bench.records("tg"));
    assertEquals(1, all.size());
    return all.get(0);
  }

  private static Step step(InstrumentCalibrations all, int calibration) {
    return all.curves().get(calibration - 1).step().value().orElseThrow();
  }

  @Test
  void what_read_0_230_yesterday_reads_0_227_today() {
    FreeBench bench = bench("0.2100", "0.5500", "0.2151", "0.5551");
    bench.limit = Optional.of(new BigDecimal("0.230"));
    InstrumentCalibrations all = of(bench);
    Curve first = all.curves().get(0);
    assertEquals(1.7, first.slope(), 1e-12);
    assertEquals(0.04, first.offset(), 1e-12);
    assertEquals("needs a calibration before it", first.step().why().orElseThrow());
    Step step = step(all, 2);
    assertEquals("C-1", step.before().key());
    assertEquals(0.230, step.level());
    assertEquals(0.227, step.reads(), 1e-12);
    assertEquals(-0.003, step.change(), 1e-12);
    assertTrue(step.insideCalibrators());
    assertFalse(step.isBeyond());
    assertEquals("needs 4 calibrations before it, has 1", step.limit().why().orElseThrow());
    assertEquals(
        "needs the scatter of a response from 2 calibrations with the same calibrators before the"
            + " two compared",
        step.uncertainty().why().orElseThrow());
    assertEquals(Optional.of(new Level(0.230, Level.Source.PRODUCT_LIMIT)), all.level().value());
  }

  @Test
  void the_uncertainty_comes_from_the_calibrations_before_the_two_compared() {
    InstrumentCalibrations all =
        of(bench("0.210", "0.550", "0.212", "0.552", "0.211", "0.551", "0.211", "0.551"));
    Step step = step(all, 4);
    Uncertainty u = step.uncertainty().value().orElseThrow();
    assertEquals(Uncertainty.Scatter.BETWEEN_CALIBRATIONS, u.scatter());
    assertEquals(Math.sqrt(2e-6), u.responseDeviation(), 1e-12);
    assertEquals(2, u.degreesOfFreedom());
    double standard = Math.sqrt(2e-6) / 1.7 * Math.sqrt(2 * (0.3 * 0.3 + 0.7 * 0.7));
    assertEquals(standard, u.standard(), 1e-12);
    assertEquals(-T95_2 * standard, u.interval().lower(), 1e-8);
    assertEquals(T95_2 * standard, u.interval().upper(), 1e-8);
  }

  @Test
  void the_limit_is_what_two_calibrations_like_those_before_differ_by() {
    FreeBench bench =
        bench(
            "0.2100", "0.5500", "0.2110", "0.5510", "0.2120", "0.5520", "0.2110", "0.5510",
            "0.2510", "0.5910");
    InstrumentCalibrations all = of(bench);
    assertEquals("needs 4 calibrations before it, has 3", step(all, 4).limit().why().orElseThrow());
    Step fifth = step(all, 5);
    Limit limit = fifth.limit().value().orElseThrow();
    assertEquals(Math.sqrt(2) * T_2 * 0.001 / 1.7, limit.value(), 1e-8);
    assertEquals(Math.sqrt(2) * T95_2 * 0.001 / 1.7, limit.warning(), 1e-8);
    assertEquals(2, limit.degreesOfFreedom());
    assertTrue(limit.provisional());
    assertEquals(-0.04 / 1.7, fifth.change(), 1e-12);
    assertTrue(fifth.isBeyond());
    Signal signal = all.signals().get(0);
    assertEquals("tg/PM-1/calibration/2026-05-05T09:00/calibration-step", signal.id().toString());
    assertEquals(Optional.of(signal.id()), SignalId.parse(signal.id().toString()));
    assertEquals(Weight.NOTICE, signal.weight());
    assertEquals(fifth.change(), signal.value());
    assertEquals(-limit.value(), signal.limit());
    assertTrue(signal.open());
    assertEquals(1, all.steps().judged());
    assertEquals(1, all.steps().observed());
    bench.usesRules = false;
    InstrumentCalibrations unused = of(bench);
    assertEquals(List.of(), unused.signals());
    assertTrue(step(unused, 5).isBeyond());
  }

  private static String[] steady(int calibrations) {
    String[] responses = new String[2 * calibrations];
    for (int i = 0; i < calibrations; i++) {
      responses[2 * i] = FreeBench.text(0.21 + 0.001 * (i % 3), 4);
      responses[2 * i + 1] = FreeBench.text(0.55 + 0.001 * (i % 3), 4);
    }
    return responses;
  }

  @Test
  void one_step_does_not_hide_the_next() {
    String[] responses = steady(24);
    for (int i = 12; i < 24; i++) {
      double lot = i < 18 ? 0.012 : 0.024;
      responses[2 * i] = FreeBench.text(0.21 + lot + 0.001 * (i % 3), 4);
      responses[2 * i + 1] = FreeBench.text(0.55 + lot + 0.001 * (i % 3), 4);
    }
    InstrumentCalibrations all = of(bench(responses));
    assertEquals(
        List.of("C-13", "C-19"),
        all.curves().stream()
            .filter(c -> c.step().value().filter(Step::isBeyond).isPresent())
            .map(c -> c.calibration().key())
            .toList());
    assertEquals(2, all.signals().size());
  }

  @Test
  void a_calibration_that_an_action_took_out_judges_no_other() {
    String[] responses = steady(7);
    responses[2] = "0.3110";
    FreeBench bench = bench(responses);
    double wide = step(of(bench), 7).limit().value().orElseThrow().value();
    bench.takenOut(
        new SignalId(
            "tg",
            "PM-1",
            SignalId.CALIBRATION,
            FreeBench.START.plusDays(30),
            Rule.CALIBRATION_STEP));
    Limit limit = step(of(bench), 7).limit().value().orElseThrow();
    assertEquals(3, limit.degreesOfFreedom());
    assertTrue(limit.value() < wide / 10, limit + " against " + wide);
  }

  @Test
  void slope_offset_and_each_response_are_followed() {
    InstrumentCalibrations all = of(bench(steady(5)));
    assertEquals(
        List.of("SLOPE", "OFFSET", "RESPONSE 0.100", "RESPONSE 0.300"),
        all.tracks().stream()
            .map(t -> t.of() + t.calibrator().map(c -> " " + c).orElse(""))
            .toList());
    CalibrationTrack low = all.tracks().get(2);
    assertEquals(0.211, low.marks().get(4).value());
    assertEquals(
        "needs 4 calibrations before it, has 3", low.marks().get(3).limits().why().orElseThrow());
    assertEquals(0.21075, low.marks().get(4).limits().value().orElseThrow().centre(), 1e-12);
    assertTrue(low.marks().get(4).provisional());
    assertFalse(low.marks().get(4).isBeyond());
  }

  @Test
  void a_calibration_without_two_responses_is_counted_and_makes_no_curve() {
    FreeBench bench = bench(steady(2));
    bench.calibrated(FreeBench.START.plusDays(90), "", "0.100", "0.210", "0.300", "");
    bench.calibrated(FreeBench.START.plusDays(91), "", "0.100", "0.210", "0.10", "0.211");
    InstrumentCalibrations all = of(bench);
    assertEquals(2, all.withoutLine());
    assertEquals(2, all.curves().size());
  }

  @Test
  void without_a_limit_the_level_is_the_control_materials() {
    FreeBench bench = bench(steady(2));
    bench.limit = Optional.empty();
    assertEquals(
        Optional.of(new Level(0.200, Level.Source.ASSIGNED_VALUE)), of(bench).level().value());
    bench.assigned = Optional.empty();
    assertEquals(
        "needs a product limit or a control material with an assigned value",
        of(bench).curves().get(1).step().why().orElseThrow());
  }

  @Test
  void calibrators_that_respond_alike_read_nothing() {
    assertEquals(
        "needs calibrators that respond differently",
        of(bench("0.210", "0.550", "0.300", "0.300")).curves().get(1).step().why().orElseThrow());
  }

  /**
   * The linewidth calibration of the NIST/SEMATECH handbook, 40 points, against itself: the
   * variance of a height of its line follows from the covariances of its coefficients in print.
   */
  @Test
  void many_calibrators_give_the_line_and_the_uncertainty_of_the_handbook() {
    Reference handbook = Reference.read("nist-2.3.6.7-linewidth-calibration");
    String[] pairs = new String[80];
    for (int i = 0; i < 80; i++) {
      pairs[i] = handbook.at("/data/rows/" + i / 2 + "/" + i % 2).asText();
    }
    FreeBench bench = new FreeBench();
    bench.limit = Optional.of(BigDecimal.valueOf(8));
    bench.calibrated(FreeBench.START, "", pairs).calibrated(FreeBench.START.plusDays(1), "", pairs);
    InstrumentCalibrations all = of(bench);
    assertEquals(handbook.number("/expected/a"), all.curves().get(0).offset(), 5e-8);
    assertEquals(handbook.number("/expected/b"), all.curves().get(0).slope(), 5e-8);
    Step step = step(all, 2);
    assertEquals(0, step.change(), 1e-12);
    Uncertainty u = step.uncertainty().value().orElseThrow();
    assertEquals(Uncertainty.Scatter.RESIDUALS_OF_LINES, u.scatter());
    assertEquals(38, u.degreesOfFreedom());
    double height =
        handbook.number("/expected/cov_aa")
            + 16 * handbook.number("/expected/cov_ab")
            + 64 * handbook.number("/expected/cov_bb");
    double expected = Math.sqrt(2 * height) / handbook.number("/expected/b");
    assertEquals(expected, u.standard(), 1e-5 * expected);
  }
}
