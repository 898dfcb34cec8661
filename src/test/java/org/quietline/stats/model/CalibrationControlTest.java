package org.quietline.stats.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.sample.Summary;

class CalibrationControlTest {
  private static StraightLine linewidth() {
    List<double[]> rows =
        Reference.read("nist-2.3.6.7-linewidth-calibration").rows("/data/rows", 40);
    return StraightLine.fit(
        rows.stream().mapToDouble(r -> r[0]).toArray(),
        rows.stream().mapToDouble(r -> r[1]).toArray());
  }

  @Test
  void linewidthOverSixDays() {
    Reference printed = Reference.read("nist-2.3.7.1-linewidth-instrument-control");
    CalibrationControl control = CalibrationControl.of(linewidth(), 3, 0.05);
    assertEquals(38, control.degreesOfFreedom());
    printed.check(
        CalibrationControl.class, "factor of the limits", "/expected/t_star", control.factor());
    // the page reads back through its rounded line, 0.2357 + 0.987 x
    CalibrationControl rounded =
        new CalibrationControl(
            printed.number("/data/calibration/a"),
            printed.number("/data/calibration/b"),
            control.deviation(),
            38,
            3,
            0.05);
    double[] values = new double[18];
    List<String> rows = new java.util.ArrayList<>();
    for (int i = 0; i < 18; i++) {
      String row = "/data/rows/" + i + "/";
      values[i] = rounded.value(printed.number(row + 3), printed.number(row + 2));
      if (rounded.isBeyond(values[i])) {
        rows.add(printed.at(row + 0).asText());
      }
    }
    printed.check(
        CalibrationControl.class,
        "deviation of the control values",
        "/expected/sd_of_calibrated_differences",
        Summary.of(values).deviation());
    assertEquals(List.of("4", "4", "4"), rows);
    double[] own = printed.numbers("/crosscheck/own/W", 18);
    for (int i = 0; i < 18; i++) {
      assertEquals(own[i], values[i], 0.51e-5);
    }
    printed.check(
        CalibrationControl.class,
        "limit",
        "/crosscheck/own/control_limit_with_own_residual_sd",
        control.limit());
  }

  @Test
  void factors() {
    Reference reference = Reference.read("calibration-control-factors");
    List<double[]> rows = reference.rows("/expected/rows", 14);
    for (int i = 0; i < 14; i++) {
      int df = (int) rows.get(i)[0];
      int checks = (int) rows.get(i)[1];
      reference.check(
          CalibrationControl.class,
          "factor for " + df + " degrees of freedom and " + checks + " checks",
          "/expected/rows/" + i + "/2",
          new CalibrationControl(0, 1, 1, df, checks, 0.05).factor());
    }
  }

  @Test
  void aFallingLineHasTheSameLimit() {
    CalibrationControl rising = new CalibrationControl(1, 2, 0.1, 8, 2, 0.05);
    CalibrationControl falling = new CalibrationControl(1, -2, 0.1, 8, 2, 0.05);
    assertEquals(rising.limit(), falling.limit());
    assertEquals(0.5, falling.value(-2, 1));
    assertEquals(0.5, rising.value(4, 1));
    assertTrue(falling.isBeyond(-falling.limit() * 1.0001));
    assertFalse(falling.isBeyond(-falling.limit()));
    assertFalse(falling.isBeyond(falling.limit()));
    assertTrue(falling.isBeyond(falling.limit() * 1.0001));
  }

  /** With the line known and s from few degrees of freedom, an occasion gives alarms as stated. */
  @Test
  void falseAlarmsOfOneCheckAreAsStated() {
    SplittableRandom random = new SplittableRandom(71);
    int alarms = 0;
    int trials = 20_000;
    for (int i = 0; i < trials; i++) {
      double squares = 0;
      for (int j = 0; j < 4; j++) {
        double z = Simulation.normal(random);
        squares += z * z;
      }
      CalibrationControl control = new CalibrationControl(0, 2, Math.sqrt(squares / 4), 4, 1, 0.05);
      alarms += control.isBeyond(control.value(Simulation.normal(random), 0)) ? 1 : 0;
    }
    Simulation.assertShare(0.05, alarms, trials);
  }
}
