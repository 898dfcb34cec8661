package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.sample.AlgorithmA.Constants;

class AlgorithmATest {
  private static final Class<?> SUBJECT = AlgorithmA.class;

  /** The file's answers are printed to seven and six digits by a general statistics package. */
  @Test
  void copperInFlour() {
    Reference copper = Reference.read("robust-algorithm-a-copper-flour");
    double[] values = copper.numbers("/data/y", 24);
    AlgorithmA found = AlgorithmA.of(values).orElseThrow();
    copper.check(SUBJECT, "mean", "/expected/huber_proposal_2_mu", found.mean());
    // printed 0.673652; converged further it is 0.6736526, see the cross-check
    copper.check(SUBJECT, "deviation", "/expected/huber_proposal_2_s", found.deviation(), 1e-6);
    AlgorithmA printed = AlgorithmA.of(Constants.AS_PRINTED, values).orElseThrow();
    String own = "/crosscheck/own/";
    copper.check(SUBJECT, "mean, printed constants", own + "converged_x*", printed.mean());
    copper.check(
        SUBJECT, "deviation, printed constants", own + "converged_s*", printed.deviation());
    copper.check(Summary.class, "mean", "/expected/mean", Summary.meanOf(values));
    copper.check(RobustSummary.class, "median", "/expected/median", RobustSummary.medianOf(values));
    assertEquals(24, found.n());
    assertEquals(2, found.drawnIn());
  }

  @Test
  void equationsSolvedElsewhere() {
    Reference reference = Reference.read("algorithm-a");
    assertRelative(
        reference.number("/expected/correction"), Constants.EXACT.correction(), 1e-14, "constant");
    List<double[]> rows = reference.rows("/expected/rows", 5);
    for (int i = 0; i < rows.size(); i++) {
      double[] values =
          reference.numbers("/data/sets/" + i, reference.at("/data/sets/" + i).size());
      AlgorithmA exact = AlgorithmA.of(values).orElseThrow();
      AlgorithmA printed = AlgorithmA.of(Constants.AS_PRINTED, values).orElseThrow();
      String at = "/expected/rows/" + i;
      reference.check(SUBJECT, "mean of set " + i, at + "/0", exact.mean());
      reference.check(SUBJECT, "deviation of set " + i, at + "/1", exact.deviation());
      reference.check(SUBJECT, "values drawn in of set " + i, at + "/2", exact.drawnIn());
      reference.check(SUBJECT, "mean of set " + i + ", printed", at + "/3", printed.mean());
      reference.check(
          SUBJECT, "deviation of set " + i + ", printed", at + "/4", printed.deviation());
    }
  }

  @Test
  void withoutAnyFarValueItIsTheMean() {
    AlgorithmA found = AlgorithmA.of(1, 2, 3).orElseThrow();
    assertEquals(2, found.mean(), 1e-14);
    assertEquals(0, found.drawnIn());
    double deviation = Constants.EXACT.correction();
    Evidence.own(SUBJECT, "deviation of 1, 2, 3", "by hand", deviation, found.deviation(), 1e-12);
    assertRelative(1.25 * deviation / Math.sqrt(3), found.standardError(), 1e-12, "error");
  }

  @Test
  void moreThanHalfEqualStartsFromTheSampleDeviation() {
    AlgorithmA found = AlgorithmA.of(5, 5, 5, 5, 1, 2, 8).orElseThrow();
    assertTrue(found.deviation() > 1);
  }

  @Test
  void nearlyAllEqualSaysNothing() {
    assertEquals(Optional.empty(), AlgorithmA.of(5, 5, 5, 5, 5, 5, 5, 5, 9));
    assertEquals(Optional.empty(), AlgorithmA.of(5, 5, 5));
  }

  @Test
  void movesWithTheValuesAndNotWithTheirOrder() {
    SplittableRandom random = new SplittableRandom(83);
    for (int i = 0; i < 50; i++) {
      double[] values = Simulation.normal(random, 5 + i % 20);
      values[0] += i % 3 == 0 ? 40 : 0;
      AlgorithmA before = AlgorithmA.of(values).orElseThrow();
      double[] moved = Arrays.stream(values).map(v -> 1000 - 3 * v).sorted().toArray();
      AlgorithmA after = AlgorithmA.of(moved).orElseThrow();
      assertRelative(1000 - 3 * before.mean(), after.mean(), 1e-12, "mean");
      assertRelative(3 * before.deviation(), after.deviation(), 1e-9, "deviation");
      assertEquals(before.drawnIn(), after.drawnIn());
    }
  }

  /** A wild value counts no more the farther it is. */
  @Test
  void oneWildValueHasABoundedPull() {
    double near = AlgorithmA.of(1, 2, 3, 4, 5, 6, 7, 100).orElseThrow().mean();
    double far = AlgorithmA.of(1, 2, 3, 4, 5, 6, 7, 1e9).orElseThrow().mean();
    assertEquals(near, far, 1e-6);
  }

  @Test
  void estimatesTheDeviationOfNormalValues() {
    SplittableRandom random = new SplittableRandom(84);
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < 2000; i++) {
      AlgorithmA found = AlgorithmA.of(Simulation.normal(random, 40)).orElseThrow();
      sum += found.deviation();
      squares += found.mean() * found.mean();
    }
    assertEquals(1, sum / 2000, 0.02);
    double error = AlgorithmA.of(Simulation.normal(random, 40)).orElseThrow().standardError();
    assertTrue(Math.sqrt(squares / 2000) < 1.25 / Math.sqrt(40) && error > 0);
  }

  /** Whole numbers with an offset have the same differences to the last digit. */
  @Test
  void offsetCostsNoDigits() {
    double[] values = {1, 2, 3, 4, 5, 6, 7, 8, 9, 30};
    AlgorithmA near = AlgorithmA.of(values).orElseThrow();
    AlgorithmA far = AlgorithmA.of(Arrays.stream(values).map(v -> v + 1e8).toArray()).orElseThrow();
    assertRelative(3.64897613200816, near.deviation(), 1e-12, "deviation");
    assertEquals(near.deviation(), far.deviation());
    assertEquals(1e8 + near.mean(), far.mean());
    assertTrue(AlgorithmA.of(-1e150, 1e150, 1e150, 0).isPresent(), "differences above 1e150");
  }
}
