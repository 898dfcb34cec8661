package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertAgree;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.sample.MovingRange;

class ControlLimitsTest {
  private final Reference practitioner = Reference.read("practitioner-individuals");
  private final double[] values = practitioner.numbers("/data/values", 20);

  /** The printed limits use the rounded d2 = 1.128; numbers of the page typed from memory. */
  @Test
  void handbookFlowRates() {
    Reference nist = Reference.read("nist-6.3.2.2-individuals");
    double[] flow = nist.numbers("/data/flowrate", 10);
    ControlLimits limits = ControlLimits.fromMovingRange(flow);
    double[] ranges = nist.numbers("/expected/moving_ranges", 9);
    for (int i = 0; i < ranges.length; i++) {
      assertEquals(ranges[i], Math.abs(flow[i + 1] - flow[i]), 1e-12);
    }
    Class<?> subject = ControlLimits.class;
    nist.check(subject, "mean", "/expected/mean", limits.centre());
    nist.check(subject, "mean moving range", "/expected/mr_bar", limits.meanMovingRange());
    // what rounding d2 to 1.128 does to the half-width
    double rounded =
        3 * limits.meanMovingRange() * (1 / nist.number("/expected/d2_used") - 1 / MovingRange.D2);
    nist.check(subject, "upper, d2 rounded", "/expected/UCL", limits.upperAction() + rounded);
    nist.check(subject, "lower, d2 rounded", "/expected/LCL", limits.lowerAction() - rounded);
    nist.check(subject, "upper", "/crosscheck/own/UCL_exact_d2=2~1sqrt(pi)", limits.upperAction());
    nist.check(subject, "lower", "/crosscheck/own/LCL_exact_d2", limits.lowerAction());
    for (double v : flow) {
      assertTrue(v > limits.lowerAction() && v < limits.upperAction());
    }
  }

  @Test
  void practitionersMovingRangeLimits() {
    ControlLimits limits = ControlLimits.fromMovingRange(values);
    assertEquals(ControlLimits.Basis.MOVING_RANGE, limits.basis());
    check("meanMovingRange", limits.meanMovingRange());
    check("movingRangeDeviation", limits.deviation());
    check("movingRangeLower", limits.lowerAction());
    check("movingRangeUpper", limits.upperAction());
    check("rangeUpper", limits.movingRangeUpper());
    assertRelative(2 * limits.deviation(), limits.upperWarning() - limits.centre(), 1e-12, "2");
    assertRelative(2 * limits.deviation(), limits.centre() - limits.lowerWarning(), 1e-12, "-2");
  }

  @Test
  void practitionersSampleDeviationLimits() {
    ControlLimits limits = ControlLimits.fromSampleDeviation(values);
    assertEquals(ControlLimits.Basis.SAMPLE_DEVIATION, limits.basis());
    check("mean", limits.centre());
    check("deviation", limits.deviation());
    check("sampleLower", limits.lowerAction());
    check("sampleUpper", limits.upperAction());
    check("rangeUpper", limits.movingRangeUpper());
  }

  private void check(String name, double actual) {
    practitioner.check(ControlLimits.class, name, "/expected/" + name, actual);
  }

  @Test
  void handbookCheckStandard() {
    Reference nist = Reference.read("nist-2.6.2-check-standard-resistivity");
    double[] checks = nist.rows("/data/rows", 25).stream().mapToDouble(row -> row[10]).toArray();
    ControlLimits limits = ControlLimits.fromSampleDeviation(checks);
    Class<?> subject = ControlLimits.class;
    nist.check(subject, "centre", "/expected/center", limits.centre());
    nist.check(subject, "deviation", "/expected/s2", limits.deviation(), 0.000051);
    nist.check(subject, "lower warning", "/expected/LCL_2s", limits.lowerWarning());
    nist.check(subject, "upper warning", "/expected/UCL_2s", limits.upperWarning());
    double[] beyond =
        Arrays.stream(checks)
            .filter(v -> v < limits.lowerWarning() || v > limits.upperWarning())
            .toArray();
    double[] listed = nist.numbers("/crosscheck/own/values_beyond_2s", 2);
    assertEquals(Arrays.toString(listed), Arrays.toString(beyond));
  }

  @Test
  void publishedRangeConstantsForTwo() {
    Reference table = Reference.read("constants-range-chart-a2-d2-d3-d4");
    assertEquals(table.number("/expected/2/d2"), MovingRange.D2, 0.0005);
    assertEquals(table.number("/expected/2/D4"), MovingRange.D4, 0.0005);
    assertEquals(table.number("/crosscheck/own/2/d2"), MovingRange.D2, 0.000005);
    assertEquals(table.number("/crosscheck/own/2/D4"), MovingRange.D4, 0.000005);
  }

  @Test
  void predictionMultipliers() {
    Reference reference = Reference.read("practitioner-prediction-multipliers");
    for (int i = 0; i < 9; i++) {
      double[] row = reference.rows("/expected/rows", 9).get(i);
      int n = (int) row[0];
      double[] numbers = Simulation.normal(new SplittableRandom(n), n);
      ControlLimits limits = ControlLimits.prediction(numbers);
      double action = (limits.upperAction() - limits.centre()) / limits.deviation();
      double warning = (limits.centre() - limits.lowerWarning()) / limits.deviation();
      String at = "/expected/rows/" + i + "/";
      String of = " multiplier of prediction limits, n = " + n;
      reference.check(ControlLimits.class, "action" + of, at + 1, action);
      reference.check(ControlLimits.class, "warning" + of, at + 2, warning);
      assertEquals(row[3], action, row[5], "printed action" + of);
      assertEquals(row[4], warning, row[5], "printed warning" + of);
    }
  }

  @Test
  void guaranteedLimitsAreToleranceIntervals() {
    ControlLimits limits = ControlLimits.guaranteed(0.9, values);
    assertEquals(ControlLimits.Basis.GUARANTEED, limits.basis());
    double action = (limits.upperAction() - limits.centre()) / limits.deviation();
    double warning = (limits.upperWarning() - limits.centre()) / limits.deviation();
    // rows of tolerance-factors.json for n = 20 and the contents of three and two deviations
    Reference factorsOfN = Reference.read("tolerance-factors");
    var rows = factorsOfN.rows("/expected/twoSided", 28);
    double[] contents = {1 - Normal.outside(3), 1 - Normal.outside(2)};
    double[] factors = {action, warning};
    int found = 0;
    for (int r = 0; r < rows.size(); r++) {
      double[] row = rows.get(r);
      for (int i = 0; i < 2; i++) {
        if (row[0] == 20 && row[2] == 0.9 && Math.abs(row[1] - contents[i]) < 1e-12) {
          factorsOfN.check(
              ControlLimits.class,
              "factor of guaranteed limits, n = 20, content " + row[1],
              "/expected/twoSided/" + r + "/3",
              factors[i]);
          found++;
        }
      }
    }
    assertEquals(2, found);
  }

  @Test
  void valuesWithoutSpreadGiveLimitsAtTheCentre() {
    double[] same = {0.2, 0.2, 0.2};
    for (ControlLimits limits :
        new ControlLimits[] {
          ControlLimits.fromMovingRange(same),
          ControlLimits.fromSampleDeviation(same),
          ControlLimits.prediction(same),
          ControlLimits.guaranteed(0.9, same)
        }) {
      assertEquals(0.2, limits.centre());
      assertEquals(0.2, limits.lowerAction());
      assertEquals(0.2, limits.upperAction());
      assertEquals(0, limits.movingRangeUpper());
    }
  }

  @Test
  void twoValuesByHand() {
    ControlLimits limits = ControlLimits.fromMovingRange(1, 3);
    assertEquals(2, limits.centre());
    assertAgree(15, Math.sqrt(Math.PI), limits.deviation(), "2 over d2");
  }
}
