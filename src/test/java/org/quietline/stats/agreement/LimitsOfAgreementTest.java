package org.quietline.stats.agreement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.distribution.ToleranceFactor;
import org.quietline.stats.model.StraightLine;

class LimitsOfAgreementTest {
  private static final Class<?> SUBJECT = LimitsOfAgreement.class;

  @Test
  void practitionersComparison() {
    Reference file = Reference.read("limits-of-agreement");
    double[] x = file.numbers("/data/x", 12);
    double[] y = file.numbers("/data/y", 12);
    check(file, 0, "differences: ", LimitsOfAgreement.ofDifferences(x, y));
    check(file, 1, "relative: ", LimitsOfAgreement.ofRelativeDifferences(x, y));
  }

  private static void check(Reference file, int place, String name, LimitsOfAgreement got) {
    String at = "/expected/cases/" + place + "/";
    file.check(SUBJECT, name + "mean", at + "mean", got.differences().mean());
    file.check(SUBJECT, name + "deviation", at + "deviation", got.differences().deviation());
    ends(file, name + "mean", at + "mean", got.meanInterval(0.95));
    file.check(SUBJECT, name + "lower limit", at + "lower", got.limits(0.95).lower());
    file.check(SUBJECT, name + "upper limit", at + "upper", got.limits(0.95).upper());
    ends(file, name + "lower limit", at + "lower", got.lowerLimitInterval(0.95, 0.95));
    ends(file, name + "upper limit", at + "upper", got.upperLimitInterval(0.95, 0.95));
    file.check(
        SUBJECT,
        name + "approximate error",
        at + "approximateError",
        got.approximateLimitError(0.95));
    StraightLine trend = got.trend().orElseThrow();
    file.check(SUBJECT, name + "slope of difference", at + "slope", trend.slope());
    ends(file, name + "slope of difference", at + "slope", trend.slopeInterval(0.95));
  }

  private static void ends(Reference file, String name, String at, Interval got) {
    file.check(SUBJECT, name + ", lower end", at + "Lower95", got.lower());
    file.check(SUBJECT, name + ", upper end", at + "Upper95", got.upper());
  }

  /** The paper's limits come from the rounded mean and deviation, hence a tolerance of 0.1. */
  @Test
  void peakFlowOf1986() {
    Reference paper = Reference.read("bland-altman-1986-pefr");
    double[] large = paper.numbers("/data/large", 17);
    double[] mini = paper.numbers("/data/mini", 17);
    LimitsOfAgreement got = LimitsOfAgreement.ofDifferences(mini, large);
    double two = 1 - Normal.outside(2);
    paper.check(SUBJECT, "peak flow: mean", "/expected/mean", got.differences().mean());
    paper.check(
        SUBJECT, "peak flow: deviation", "/expected/deviation", got.differences().deviation());
    Interval mean = got.meanInterval(0.95);
    paper.check(SUBJECT, "peak flow: mean, lower end", "/expected/meanLower95", mean.lower());
    paper.check(SUBJECT, "peak flow: mean, upper end", "/expected/meanUpper95", mean.upper());
    Interval limits = got.limits(two);
    paper.check(SUBJECT, "peak flow: lower limit", "/expected/lower", limits.lower(), 0.1);
    paper.check(SUBJECT, "peak flow: upper limit", "/expected/upper", limits.upper(), 0.1);
    // the paper takes 3 for 1 + z²/2·n/(n − 1), which is 3.125 here
    double rounded = got.approximateLimitError(two) * Math.sqrt(3 / (1 + 2 * 17 / 16.0));
    paper.check(SUBJECT, "peak flow: error of a limit", "/expected/limitError", rounded);
  }

  @Test
  void holdingIsTheToleranceInterval() {
    LimitsOfAgreement got =
        LimitsOfAgreement.ofDifferences(
            new double[] {1, 2, 3, 4, 5}, new double[] {1.5, 1.9, 3.3, 4.6, 5.1});
    double k = ToleranceFactor.twoSided(5, 0.9, 0.95);
    Interval holding = got.holding(0.9, 0.95);
    assertRelative(
        2 * k * got.differences().deviation(), holding.upper() - holding.lower(), 1e-13, "width");
    assertTrue(holding.upper() > got.limits(0.9).upper());
  }

  @Test
  void exchangingTurnsTheSign() {
    double[] x = {1, 2, 3, 4, 6};
    double[] y = {1.5, 1.9, 3.3, 4.6, 5.1};
    LimitsOfAgreement one = LimitsOfAgreement.ofDifferences(x, y);
    LimitsOfAgreement other = LimitsOfAgreement.ofDifferences(y, x);
    Interval limit = one.lowerLimitInterval(0.95, 0.9);
    Interval opposite = other.upperLimitInterval(0.95, 0.9);
    assertEquals(limit.lower(), -opposite.upper(), 1e-13);
    assertEquals(limit.upper(), -opposite.lower(), 1e-13);
    assertEquals(one.trend().orElseThrow().slope(), -other.trend().orElseThrow().slope(), 1e-14);
  }

  @Test
  void relativeFormDoesNotKnowTheUnit() {
    double[] x = {1, 2, 3, 4, 6};
    double[] y = {1.5, 1.9, 3.3, 4.6, 5.1};
    LimitsOfAgreement one = LimitsOfAgreement.ofRelativeDifferences(x, y);
    LimitsOfAgreement scaled =
        LimitsOfAgreement.ofRelativeDifferences(
            Arrays.stream(x).map(v -> 7 * v).toArray(), Arrays.stream(y).map(v -> 7 * v).toArray());
    assertRelative(one.differences().mean(), scaled.differences().mean(), 1e-13, "mean");
    assertRelative(one.limits(0.95).upper(), scaled.limits(0.95).upper(), 1e-13, "limit");
  }

  @Test
  void equalDifferencesShrinkToThem() {
    LimitsOfAgreement got =
        LimitsOfAgreement.ofDifferences(new double[] {1, 2, 5}, new double[] {2, 3, 6});
    assertEquals(new Interval(1, 1), got.limits(0.95));
    assertEquals(new Interval(1, 1), got.meanInterval(0.95));
    assertEquals(new Interval(1, 1), got.upperLimitInterval(0.95, 0.95));
  }

  @Test
  void noTrendOfTwoPairsOrOneLevel() {
    assertEquals(
        Optional.empty(),
        LimitsOfAgreement.ofDifferences(new double[] {1, 2}, new double[] {2, 4}).trend());
    assertEquals(
        Optional.empty(),
        LimitsOfAgreement.ofDifferences(new double[] {1, 2, 3}, new double[] {3, 2, 1}).trend());
  }
}
