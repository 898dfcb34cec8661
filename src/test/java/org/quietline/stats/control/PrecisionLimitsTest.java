package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;

class PrecisionLimitsTest {
  private static final Class<?> SUBJECT = PrecisionLimits.class;

  @Test
  void handbookCheckStandard() {
    Reference nist = Reference.read("nist-2.6.2-check-standard-resistivity");
    double[] deviations =
        nist.rows("/data/rows", 25).stream().mapToDouble(row -> row[11]).toArray();
    PrecisionLimits limits = PrecisionLimits.pool(5, deviations);
    nist.check(SUBJECT, "pooled deviation", "/expected/s1_pooled", limits.pooled());
    nist.check(SUBJECT, "degrees of freedom", "/expected/s1_df", limits.degreesOfFreedom());
    double limit = limits.upper(5, 0.05);
    nist.check(SUBJECT, "upper limit of deviations", "/expected/UCL_s_chart", limit);
    double ratio = limit / limits.pooled();
    nist.check(SUBJECT, "F at 95 %", "/expected/F_0.95_5_125", ratio * ratio);
    double[] beyond = Arrays.stream(deviations).filter(s -> s > limit).toArray();
    assertEquals(
        Arrays.toString(nist.numbers("/crosscheck/own/sds_above_limit", 2)),
        Arrays.toString(beyond));
  }

  /** The page divides by 351 degrees of freedom, the file holds 651: the figure is the same. */
  @Test
  void handbookMasses() {
    Reference nist = Reference.read("nist-2.2.3-mass-precision-chart");
    PrecisionLimits limits = PrecisionLimits.pool(3, nist.numbers("/data/residual_sd", 217));
    nist.check(SUBJECT, "pooled of 217", "/crosscheck/own/pooled_sd_all_217", limits.pooled());
    nist.check(SUBJECT, "1 % limit", "/expected/upper_control_limit", limits.upper(3, 0.01));
    PrecisionLimits asPrinted = new PrecisionLimits(limits.pooled(), 351);
    double limit = asPrinted.upper(3, 0.01);
    nist.check(SUBJECT, "1 % limit with 351", "/crosscheck/own/limit_all", limit);
    double ratio = limit / limits.pooled();
    nist.check(SUBJECT, "F at 99 %", "/crosscheck/own/F_0.99_3_351", ratio * ratio);
  }

  @Test
  void computedLimits() {
    Reference reference = Reference.read("precision-limits");
    for (int i = 0; i < 7; i++) {
      String row = "/expected/rows/" + i + "/";
      int df = (int) reference.number(row + "0");
      double chance = reference.number(row + "2");
      PrecisionLimits unit = new PrecisionLimits(1, (int) reference.number(row + "1"));
      String words = " of " + df + " over " + unit.degreesOfFreedom() + " at " + chance;
      reference.check(SUBJECT, "lower" + words, row + "3", unit.lower(df, chance));
      reference.check(SUBJECT, "upper" + words, row + "4", unit.upper(df, chance));
      PrecisionLimits seven = new PrecisionLimits(7, unit.degreesOfFreedom());
      assertRelative(7 * unit.upper(df, chance), seven.upper(df, chance), 1e-13, "scale");
      assertRelative(7 * unit.lower(df, chance), seven.lower(df, chance), 1e-13, "scale");
    }
  }

  @Test
  void poolingByHand() {
    PrecisionLimits limits = PrecisionLimits.pool(new int[] {1, 3}, new double[] {4, 2});
    assertEquals(new PrecisionLimits(Math.sqrt(7), 4), limits);
    assertEquals(0, PrecisionLimits.pool(2, 0, 0).upper(2, 0.01));
  }
}
