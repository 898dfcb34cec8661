package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.assess.InstrumentCalibrations.Curve;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.NoncentralT;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.distribution.Student;

/** Simulated histories of two-point calibrations: false notices, intervals, steps found. */
class CalibrationSimulationTest {
  private static final int HISTORIES = 2000;
  private static final double NOISE = 0.002;
  private static final Period ALL =
      new Period(LocalDate.of(2026, 1, 1), LocalDate.of(2036, 12, 31));

  /** A calibration a month; from one of them on every response is higher by a shift. */
  private static InstrumentCalibrations history(
      SplittableRandom random, int calibrations, int shiftedFrom, double shift, int decimals) {
    FreeBench bench = new FreeBench();
    for (int i = 0; i < calibrations; i++) {
      double add = i >= shiftedFrom ? shift : 0;
      bench.calibrated(
          FreeBench.START.plusDays(30L * i),
          FreeBench.text(0.042 + NOISE * Simulation.normal(random), decimals),
          "0.100",
          FreeBench.text(0.210 + add + NOISE * Simulation.normal(random), decimals),
          "0.300",
          FreeBench.text(0.550 + add + NOISE * Simulation.normal(random), decimals));
    }
    return CalibrationHistory.ask(bench.records("tg", ALL)).get(0);
  }

  private static void falseNotices(int shiftedFrom, double shift, int decimals) {
    SplittableRandom random = new SplittableRandom(17);
    Rate steps = new Rate(HISTORIES);
    Rate blanks = new Rate(HISTORIES);
    for (int i = 0; i < HISTORIES; i++) {
      InstrumentCalibrations found = history(random, 20, shiftedFrom, shift, decimals);
      int here = (int) found.curves().stream().filter(c -> isStepOf(c, shiftedFrom)).count();
      int judgedHere = shiftedFrom < 20 ? 1 : 0;
      steps.add(found.steps().observed() - here, found.steps().judged() - judgedHere);
      blanks.add(found.blanks().get(0).rate());
    }
    steps.assertIs(FalseSignals.BEYOND_THREE_DEVIATIONS);
    blanks.assertIs(FalseSignals.BEYOND_THREE_DEVIATIONS);
  }

  private static boolean isStepOf(Curve curve, int calibration) {
    return curve.calibration().key().equals("C-" + (calibration + 1))
        && curve.step().value().filter(InstrumentCalibrations.Step::isBeyond).isPresent();
  }

  @Test
  void a_steady_instrument_gives_the_stated_false_notices() {
    falseNotices(20, 0, 6);
  }

  @Test
  void readings_in_steps_of_half_a_deviation_change_little() {
    falseNotices(20, 0, 3);
  }

  @Test
  void after_a_lasting_step_the_rate_is_the_stated_one_again() {
    falseNotices(10, 12 * NOISE, 6);
  }

  @Test
  void intervals_of_the_change_hold_the_true_one() {
    SplittableRandom random = new SplittableRandom(23);
    Rate missed = new Rate(HISTORIES);
    for (int i = 0; i < HISTORIES; i++) {
      InstrumentCalibrations found = history(random, 8, 7, 0.005, 6);
      InstrumentCalibrations.Step step = found.curves().get(7).step().value().orElseThrow();
      boolean holds = step.uncertainty().value().orElseThrow().interval().contains(-0.005 / 1.7);
      missed.add(holds ? 0 : 1, 1);
    }
    missed.assertIs(0.05);
  }

  /** The chance of seeing a step is the tail of the noncentral t distribution. */
  @Test
  void a_planted_step_is_seen_as_often_as_theory_says() {
    double shift = 7 * NOISE;
    SplittableRandom random = new SplittableRandom(29);
    Rate seen = new Rate(HISTORIES);
    for (int i = 0; i < HISTORIES; i++) {
      InstrumentCalibrations found = history(random, 12, 11, shift, 6);
      seen.add(isStepOf(found.curves().get(11), 11) ? 1 : 0, 1);
    }
    int freedom = 9;
    double limit = Student.exceededWith(Normal.above(3), freedom);
    double height = NOISE * Math.sqrt(0.3 * 0.3 + 0.7 * 0.7);
    double power = NoncentralT.above(limit, freedom, shift / (Math.sqrt(2) * height));
    assertTrue(power > 0.9, "power " + power);
    seen.assertIs(power);
  }

  @Test
  void a_blank_that_rose_by_two_deviations_is_seen_within_ten_three_times_in_four() {
    SplittableRandom random = new SplittableRandom(31);
    int seen = 0;
    for (int i = 0; i < 500; i++) {
      FreeBench bench = new FreeBench();
      for (int k = 0; k < 40; k++) {
        double add = k >= 30 ? 2 * NOISE : 0;
        bench.calibrated(
            FreeBench.START.plusDays(30L * k),
            FreeBench.text(0.042 + add + NOISE * Simulation.normal(random), 6));
      }
      Period after = new Period(LocalDate.of(2028, 6, 1), LocalDate.of(2036, 12, 31));
      seen +=
          CalibrationHistory.ask(bench.records("tg", after))
                      .get(0)
                      .blanks()
                      .get(0)
                      .rate()
                      .observed()
                  > 0
              ? 1
              : 0;
    }
    assertTrue(seen > 0.75 * 500, "seen " + seen + " of 500");
  }
}
