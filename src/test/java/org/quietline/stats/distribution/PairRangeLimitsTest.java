package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class PairRangeLimitsTest {
  private static final Class<?> SUBJECT = PairRangeLimits.class;
  private static final double INFINITE = Double.POSITIVE_INFINITY;
  private final Reference computed = Reference.read("pair-range-limits");
  private final PairRangeLimits customary = PairRangeLimits.byDeviations(1);

  @Test
  void factorsAndRealChances() {
    computed.check(SUBJECT, "centre", "/expected/centre", customary.centre());
    computed.check(SUBJECT, "customary warning", "/expected/warning", customary.warning());
    computed.check(SUBJECT, "customary action", "/expected/action", customary.action());
    computed.check(
        SUBJECT, "chance of a warning", "/expected/warningChance", customary.warningChance());
    computed.check(
        SUBJECT, "chance of an action", "/expected/actionChance", customary.actionChance());
    PairRangeLimits chances = PairRangeLimits.byChances(1);
    computed.check(SUBJECT, "5 % limit", "/expected/5%", chances.warning());
    computed.check(SUBJECT, "0.27 % limit", "/expected/0.27%", chances.action());
    computed.check(SUBJECT, "1 % limit", "/expected/1%", PairRangeLimits.factor(0.01, INFINITE));
    for (int m : new int[] {1, 5, 10, 20, 60}) {
      PairRangeLimits limits = PairRangeLimits.prediction(1, m);
      String at = "/expected/prediction/" + m;
      computed.check(SUBJECT, "warning from " + m + " pairs", at + "/0", limits.warning());
      computed.check(SUBJECT, "action from " + m + " pairs", at + "/1", limits.action());
      computed.check(
          SUBJECT, "1 % limit from " + m + " pairs", at + "/2", PairRangeLimits.factor(0.01, m));
      assertEquals(m, limits.degreesOfFreedom());
    }
  }

  @Test
  void publishedFactors() {
    Reference sheet = Reference.read("pair-range-limits-recalled");
    sheet.check(SUBJECT, "printed centre", "/expected/centre", customary.centre());
    sheet.check(SUBJECT, "printed warning", "/expected/warning", customary.warning());
    sheet.check(SUBJECT, "printed action", "/expected/action", customary.action());
    PairRangeLimits chances = PairRangeLimits.byChances(1);
    sheet.check(SUBJECT, "printed 95 %", "/expected/95%", chances.warning());
    double one = PairRangeLimits.factor(0.01, INFINITE);
    sheet.check(SUBJECT, "printed 99 %", "/expected/99%", one);
    sheet.check(SUBJECT, "printed 99.73 %", "/expected/99.73%", chances.action());
  }

  @Test
  void limitsScaleWithTheDeviation() {
    PairRangeLimits wide = PairRangeLimits.byDeviations(2.5);
    assertRelative(2.5 * customary.action(), wide.action(), 1e-15, "action");
    assertEquals(customary.actionChance(), wide.actionChance());
    assertEquals(PairRangeLimits.Form.DEVIATIONS, wide.form());
    assertEquals(INFINITE, wide.degreesOfFreedom());
    assertEquals(0, PairRangeLimits.prediction(0, 3).action());
    assertEquals(PairRangeLimits.Form.PREDICTION, PairRangeLimits.prediction(0, 3).form());
    assertEquals(PairRangeLimits.Form.CHANCES, PairRangeLimits.byChances(1).form());
  }

  @Test
  void pairsBreakTheCustomaryLimitsAsOftenAsTheyTell() {
    SplittableRandom random = new SplittableRandom(73);
    int trials = 40_000;
    int warnings = 0;
    int actions = 0;
    for (int i = 0; i < trials; i++) {
      double[] pair = Simulation.normal(random, 2);
      double range = Math.abs(pair[0] - pair[1]);
      warnings += range > customary.warning() ? 1 : 0;
      actions += range > customary.action() ? 1 : 0;
    }
    Simulation.assertShare(customary.warningChance(), warnings, trials);
    Simulation.assertShare(customary.actionChance(), actions, trials);
  }
}
