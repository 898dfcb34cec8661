package org.quietline.stats.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertAgree;

import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class LackOfFitTest {
  private static void check(Reference reference, String what, String base, LackOfFit test) {
    check(reference, what + ", lack", base + "/lack_ss", test.lackSquares());
    check(reference, what + ", replicates", base + "/pure_ss", test.pureSquares());
    check(reference, what + ", deviation", base + "/pure_sd", test.pureDeviation());
    check(reference, what + ", F", base + "/F", test.ratio().orElseThrow().ratio());
    check(reference, what + ", chance", base + "/p", test.ratio().orElseThrow().upperTail());
    assertEquals(reference.at(base + "/lack_df").asInt(), test.lackDegrees());
    assertEquals(reference.at(base + "/pure_df").asInt(), test.pureDegrees());
  }

  private static void check(Reference reference, String what, String pointer, double got) {
    reference.check(LackOfFit.class, what, pointer, got);
  }

  @ParameterizedTest
  @CsvSource({"line, 1", "parabola, 2"})
  void loadCell(String shape, int degree) {
    Reference reference = Reference.read("loadcell-lack-of-fit");
    LackOfFit test = LeastSquaresTest.loadCell(degree).lackOfFit().orElseThrow();
    check(reference, "load cell " + shape, "/expected/" + shape, test);
  }

  @Test
  void weightedLine() {
    Reference reference = Reference.read("line-weighted");
    LeastSquares fit =
        LeastSquares.weighted(
            Terms.linear(1),
            reference.numbers("/data/x", 8),
            reference.numbers("/data/y", 8),
            reference.numbers("/data/w", 8));
    check(reference, "weighted line", "/expected/lack_of_fit", fit.lackOfFit().orElseThrow());
  }

  @Test
  void alaskaPipeline() {
    Reference printed = Reference.read("nist-4.6.2-alaska-lack-of-fit");
    LackOfFit test = LeastSquaresTest.alaska(0).lackOfFit().orElseThrow();
    String what = "Alaska pipeline, line: ";
    check(printed, what + "deviation of replicates", "/expected/pure_sd", test.pureDeviation());
    check(printed, what + "F", "/expected/F", test.ratio().orElseThrow().ratio());
    double percent = 100 * (1 - test.ratio().orElseThrow().upperTail());
    check(printed, what + "percent point", "/expected/percent_point", percent);
    assertEquals(76, test.lackDegrees());
    assertEquals(29, test.pureDegrees());
    Reference weighted = Reference.read("nist-4.6.2-alaska-weighted");
    LackOfFit other = LeastSquaresTest.alaska(-1.5).lackOfFit().orElseThrow();
    assertAgree(
        12,
        weighted.number("/expected/own/lack_of_fit/F"),
        other.ratio().orElseThrow().ratio(),
        "weighted F");
  }

  @Test
  void bothPartsMakeUpTheResidualSquares() {
    LeastSquares fit = LeastSquaresTest.alaska(-1);
    LackOfFit test = fit.lackOfFit().orElseThrow();
    assertAgree(
        14, fit.residualSquares(), test.lackSquares() + test.pureSquares(), "residual squares");
    assertEquals(fit.degreesOfFreedom(), test.lackDegrees() + test.pureDegrees());
  }

  @Test
  void noTestWithoutReplicatesOrWithoutPointsToSpare() {
    double[] y = {1, 2, 4, 5};
    assertEquals(
        Optional.empty(),
        LeastSquares.fit(Terms.linear(1), new double[] {1, 2, 3, 4}, y).lackOfFit());
    assertEquals(
        Optional.empty(),
        LeastSquares.fit(Terms.linear(1), new double[] {1, 1, 3, 3}, y).lackOfFit());
    assertTrue(
        LeastSquares.fit(Terms.linear(1), new double[] {-0.0, 0.0, 2, 3}, y)
            .lackOfFit()
            .isPresent());
  }

  @Test
  void equalReplicatesGiveNoRatio() {
    LackOfFit test =
        LeastSquares.fit(Terms.linear(1), new double[] {1, 1, 2, 3}, new double[] {2, 2, 5, 5})
            .lackOfFit()
            .orElseThrow();
    assertEquals(0, test.pureSquares());
    assertTrue(test.lackSquares() > 0);
    assertEquals(Optional.empty(), test.ratio());
  }

  /** On a true line the chance is uniform; on a parabola the test sees what is missing. */
  @Test
  void falseAlarmsAreAsManyAsStated() {
    SplittableRandom random = new SplittableRandom(31);
    int alarms = 0;
    int seen = 0;
    double[] x = {1, 1, 2, 2, 3, 3, 4, 4, 5, 5};
    for (int trial = 0; trial < 2000; trial++) {
      double[] y = Simulation.normal(random, 10);
      double[] bent = new double[10];
      for (int i = 0; i < 10; i++) {
        bent[i] = y[i] + 1.5 * x[i] * (x[i] - 6);
      }
      alarms += chance(x, y) < 0.05 ? 1 : 0;
      seen += chance(x, bent) < 0.05 ? 1 : 0;
    }
    Simulation.assertShare(0.05, alarms, 2000);
    assertTrue(seen > 1600, "seen " + seen);
  }

  private static double chance(double[] x, double[] y) {
    LackOfFit test = LeastSquares.fit(Terms.linear(1), x, y).lackOfFit().orElseThrow();
    return test.ratio().orElseThrow().upperTail();
  }
}
