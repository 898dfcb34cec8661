package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.compare.SamplesAlike.Ties;

class SamplesAlikeTest {
  private static final Class<?> SUBJECT = SamplesAlike.class;

  /**
   * The printed chances are an extrapolation of the paper's table; the limit itself gives 0.0023,
   * so they are held to 0.0003.
   */
  @Test
  void fourLaboratories() {
    Reference labs = Reference.read("anderson-darling-k-sample-labs");
    double[][] samples = labs.rows("/data/labs", 4).toArray(double[][]::new);
    SamplesAlike right = SamplesAlike.of(Ties.FROM_RIGHT, samples);
    SamplesAlike middle = SamplesAlike.of(Ties.MIDRANK, samples);
    labs.check(SUBJECT, "T from right", "/expected/T_k_right_continuous", right.standardised());
    // printed 4.480 as 4.48
    labs.check(SUBJECT, "T midrank", "/expected/T_k_midrank", middle.standardised(), 0.0005);
    Recalculated.check(labs, "A² from right", "/own/A2_kN", right.statistic());
    Recalculated.check(labs, "A² midrank", "/own/A2_akN", middle.statistic());
    Recalculated.check(labs, "deviation", "/own/sigma", middle.deviation());
    labs.check(SUBJECT, "chance from right", "/expected/p_right", right.chance(), 0.0003);
    labs.check(SUBJECT, "chance midrank", "/expected/p_midrank", middle.chance(), 0.0003);
    var dealt =
        SamplesAlike.permutationChance(Ties.MIDRANK, 4000, new SplittableRandom(1), samples);
    assertEquals(0.0020, dealt.value(), 4 * dealt.standardError());
  }

  @ParameterizedTest
  @ValueSource(strings = {"plain", "tied", "pair"})
  void outsideLibrary(String name) {
    Reference reference = Reference.read("samples-alike");
    int samples = reference.at("/data/" + name).size();
    double[][] values = reference.rows("/data/" + name, samples).toArray(double[][]::new);
    for (Ties ties : Ties.values()) {
      double got = SamplesAlike.of(ties, values).standardised();
      String at = "/expected/" + name + "/" + ties;
      reference.check(SUBJECT, "T of " + name + ", " + ties, at, got);
    }
  }

  @Test
  void allDealsOfNineValues() {
    Reference reference = Reference.read("samples-alike");
    double[][] values = reference.rows("/data/pair", 2).toArray(double[][]::new);
    var dealt =
        SamplesAlike.permutationChance(Ties.MIDRANK, 20_000, new SplittableRandom(9), values);
    String at = "/expected/pairExactChance";
    double allowed = 4 * dealt.standardError();
    reference.check(SUBJECT, "chance by random deals", at, dealt.value(), allowed);
    double exact = reference.number(at);
    assertEquals(Math.sqrt(exact * (1 - exact) / 20_000), dealt.standardError(), 1e-4);
    // four and five values are far from the limit
    double limit = SamplesAlike.of(Ties.MIDRANK, values).chance();
    reference.check(SUBJECT, "chance by the limit", at, limit, 0.04);
  }

  /** The paper's percentiles are fitted curves: to 2.5 % of the chance, at 1 % to 9 %. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 6, 8, 10})
  void publishedPercentiles(int m) {
    Reference table = Reference.read("anderson-darling-k-sample-percentiles");
    double[] chances = table.numbers("/data/chances", 5);
    double[] points = table.numbers("/expected/" + m, 5);
    for (int i = 0; i < chances.length; i++) {
      double got = new SamplesAlike(Ties.MIDRANK, m + 1, m + points[i], 1).chance();
      String what = "chance above " + points[i] + ", m = " + m;
      double allowed = (i == 4 ? 0.09 : 0.025) * chances[i];
      table.check(SUBJECT, what, "/data/chances/" + i, got, allowed);
    }
  }

  /** The limit for two samples is that of the test of a given distribution. */
  @ParameterizedTest
  @CsvSource({"1.248, 0.25, 1e-4", "1.933, 0.10, 5e-5", "2.4924, 0.05, 2e-6", "3.8781, 0.01, 1e-6"})
  void classicalLimit(double point, double chance, double allowed) {
    double scale = Math.sqrt(2 * (Math.PI * Math.PI / 3 - 3));
    double got = new SamplesAlike(Ties.MIDRANK, 2, 1 + (point - 1) / scale, 1).chance();
    assertEquals(chance, got, allowed);
  }

  @Test
  void samplesMoreAlikeThanPossibleHaveAChanceOfOne() {
    assertEquals(1, new SamplesAlike(Ties.MIDRANK, 2, -2, 1).chance());
    assertEquals(1, new SamplesAlike(Ties.MIDRANK, 2, -0.25, 1).chance(), 1e-6);
  }

  /** The variance of A² over all deals of five values into two and three. */
  @Test
  void varianceOverAllDeals() {
    double sum = 0;
    double squares = 0;
    int deals = 0;
    for (int bits = 0; bits < 64; bits++) {
      if (Integer.bitCount(bits) == 3) {
        double[][] dealt = {new double[3], new double[3]};
        int[] filled = new int[2];
        for (int i = 0; i < 6; i++) {
          int to = bits >> i & 1;
          dealt[to][filled[to]++] = i;
        }
        double a = SamplesAlike.of(Ties.FROM_RIGHT, dealt).statistic();
        sum += a;
        squares += a * a;
        deals++;
      }
    }
    double mean = sum / deals;
    assertEquals(1, mean, 1e-13);
    double variance = squares / deals - mean * mean;
    Evidence.own(
        SUBJECT, "variance, 3 and 3", "all deals", variance, SamplesAlike.variance(3, 3), 1e-12);
  }

  @ParameterizedTest
  @EnumSource(Ties.class)
  void onlyTheOrderMatters(Ties ties) {
    double[][] samples = {{1, 4, 2}, {3, 5, 5}, {9, 2}};
    double[][] bent =
        Arrays.stream(samples)
            .map(s -> Arrays.stream(s).map(Math::exp).toArray())
            .toArray(double[][]::new);
    double[][] turned = {{9, 2}, {5, 3, 5}, {4, 2, 1}};
    double expected = SamplesAlike.of(ties, samples).statistic();
    assertRelative(expected, SamplesAlike.of(ties, bent).statistic(), 1e-14, "bent");
    assertRelative(expected, SamplesAlike.of(ties, turned).statistic(), 1e-14, "turned");
  }

  /** Nothing in a hundred deals is as unlike: one in a hundred and one, never zero. */
  @Test
  void aSimulatedChanceIsNeverZero() {
    double[] low = {1, 2, 3, 4, 5, 6, 7, 8};
    double[] high = {11, 12, 13, 14, 15, 16, 17, 18};
    Simulated dealt =
        SamplesAlike.permutationChance(Ties.MIDRANK, 100, new SplittableRandom(1), low, high);
    assertEquals(1 / 101.0, dealt.value());
  }
}
