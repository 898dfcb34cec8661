package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Drift.Decision;
import org.quietline.stats.distribution.StudentMixture;

/** Lines that are known to a given spread, on day 15 of 30, with an allowance of 10. */
class CalibrationDecisionTest {
  private static final double DF = 20;

  private static StudentMixture known(double mean, double scale) {
    return StudentMixture.of(new double[] {1}, new double[] {mean}, new double[] {scale}, DF, 0);
  }

  private static CalibrationDecision decide(
      IntToDoubleFunction mean, double scale, double slope, double slopeScale, double followedTo) {
    return CalibrationDecision.of(
        new CalibrationDecision.Question(
            day -> known(mean.applyAsDouble(day), scale),
            known(slope, slopeScale),
            10,
            0.05,
            15,
            30,
            followedTo));
  }

  @Test
  void aLineThatStaysInsideIsKept() {
    CalibrationDecision decision = decide(day -> 0.1 * day, 2, 0.1, 0.1, 29);
    assertEquals(Decision.KEEP, decision.decision());
    assertEquals(OptionalInt.of(30), decision.lastSafeDay());
    assertEquals(Optional.empty(), decision.why());
  }

  /** One-sided here: the last day on which t of 20 degrees of freedom leaves at most 5 %. */
  @Test
  void aLineThatLeavesLaterHasALastSafeDay() {
    CalibrationDecision decision = decide(day -> 0.4 * day, 1, 0.4, 0.05, 29);
    assertEquals(Decision.RECALIBRATE_BY, decision.decision());
    TDistribution t = new TDistribution(DF);
    int day = decision.lastSafeDay().orElseThrow();
    assertTrue(t.cumulativeProbability(0.4 * day - 10) <= 0.05, "day " + day);
    assertTrue(t.cumulativeProbability(0.4 * (day + 1) - 10) > 0.05, "day " + day);
  }

  @Test
  void aLineThatHasLeftHasItsLastSafeDayBehindIt() {
    CalibrationDecision decision = decide(day -> 0.9 * day, 1, 0.9, 0.05, 29);
    assertEquals(Decision.RECALIBRATE_NOW, decision.decision());
    assertTrue(decision.lastSafeDay().orElseThrow() < 15);
  }

  @Test
  void notKnowingTheDirectionIsNoReasonToRecalibrate() {
    CalibrationDecision decision = decide(day -> 0.02 * day, 8, 0.02, 0.5, 29);
    assertEquals(Decision.CANNOT_SAY, decision.decision());
    assertEquals(
        Optional.of("the control results do not show in which direction it goes"), decision.why());
  }

  @Test
  void aLineIsNotTrustedFarBeyondTheLongestWindow() {
    assertEquals(Decision.CANNOT_SAY, decide(day -> 0, 1, 0, 0.1, 19).decision());
    assertEquals(Decision.KEEP, decide(day -> 0, 1, 0, 0.1, 21).decision());
    assertEquals(
        Optional.of(
            "no window was followed beyond day 12, and the line alone does not carry to day 30"),
        decide(day -> 0, 1, 0, 0.1, 12.5).why());
  }

  @Test
  void aSafeChanceIsOneOfBothSides() {
    // each side 4 %: together more than a safe day carries
    double scale = 10 / new TDistribution(DF).inverseCumulativeProbability(0.96);
    CalibrationDecision decision = decide(day -> 0, scale, 0, 0.1, 29);
    assertEquals(Decision.CANNOT_SAY, decision.decision());
    assertEquals(OptionalInt.empty(), decision.lastSafeDay());
  }
}
