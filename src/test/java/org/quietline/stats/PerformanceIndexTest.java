package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PerformanceIndexTest {
  private final Reference practitioner = Reference.read("practitioner-capability");

  @Test
  void practitionersExample() {
    Summary s =
        new Summary(24, practitioner.number("/data/mean"), practitioner.number("/data/deviation"));
    PerformanceIndex found = PerformanceIndex.upper(s, practitioner.number("/data/upper"));
    check("index", found.index());
    check("lower95", found.lowerBound(0.95));
    check("beyondPerMillion", found.beyondPerMillion());
  }

  private void check(String name, double actual) {
    assertRelative(
        practitioner.number("/expected/" + name), actual, practitioner.tolerance(), name);
  }

  @Test
  void practitionersLowerBounds() {
    for (double[] row : practitioner.rows("/expected/rows", 9)) {
      Summary s = new Summary((int) row[1], 0, 1);
      double fromAbove = PerformanceIndex.upper(s, 3 * row[0]).lowerBound(0.95);
      double fromBelow = PerformanceIndex.lower(s, -3 * row[0]).lowerBound(0.95);
      assertRelative(row[2], fromAbove, practitioner.tolerance(), row[0] + ", " + row[1]);
      assertEquals(fromAbove, fromBelow, 1e-12);
      assertEquals(row[3], fromAbove, 0.00051, "printed " + row[0] + ", " + row[1]);
    }
  }

  /** Numbers of the page typed from memory. */
  @Test
  void handbookExample() {
    Reference nist = Reference.read("nist-6.1.6-capability");
    Summary s = new Summary(50, nist.number("/data/mean"), nist.number("/data/sd"));
    double lower = nist.number("/data/LSL");
    double upper = nist.number("/data/USL");
    assertEquals(nist.number("/expected/Cpu"), PerformanceIndex.upper(s, upper).index(), 0.00005);
    assertEquals(nist.number("/expected/Cpl"), PerformanceIndex.lower(s, lower).index(), 0.00005);
    PerformanceIndex both =
        PerformanceIndex.nearer(s, OptionalDouble.of(lower), OptionalDouble.of(upper));
    assertEquals(nist.number("/expected/Cpk"), both.index(), 0.00005);
    assertEquals(1e6 * (Normal.above(2) + Normal.above(4)), both.beyondPerMillion(), 1e-9);
    assertEquals(PerformanceIndex.upper(s, upper).lowerBound(0.95), both.lowerBound(0.95));
  }

  /**
   * Bissell's approximate interval, recalculated in the file (the interval recalled from memory
   * there is a known slip), is close to the exact bound at 97.5 %.
   */
  @Test
  void approximationOfTheBookIsClose() {
    Reference book = Reference.read("cpk-confidence-interval-montgomery");
    double index = book.number("/data/Cpk");
    Summary s = new Summary(book.at("/data/n").asInt(), 0, 1);
    double bound = PerformanceIndex.upper(s, 3 * index).lowerBound(0.975);
    assertEquals(book.number("/crosscheck/own/lower"), bound, 0.02);
  }

  @Test
  void meanBeyondItsLimitIsNegative() {
    PerformanceIndex found = PerformanceIndex.upper(new Summary(10, 1, 1), 0.4);
    assertEquals(-0.2, found.index(), 1e-15);
    assertTrue(found.lowerBound(0.95) < -0.2);
    assertTrue(found.lowerBound(0.05) > -0.2);
    assertEquals(
        PerformanceIndex.nearer(
            new Summary(10, 1, 1), OptionalDouble.empty(), OptionalDouble.of(0.4)),
        found);
  }

  @Test
  void boundOfALargeIndexIsItsShareOfChiSquare() {
    // far from the limit only the deviation is uncertain: index * sqrt(chi2(0.05, n-1) / (n-1))
    PerformanceIndex found = PerformanceIndex.upper(new Summary(20, 0, 1), 3e4);
    double share = Math.sqrt(ChiSquare.quantile(0.05, 19) / 19);
    assertRelative(1e4 * share, found.lowerBound(0.95), 1e-7, "bound");
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 8, 12, 20})
  void boundOfOneLimitCoversAsOftenAsItSays(int n) {
    SplittableRandom random = new SplittableRandom(300 + n);
    int trials = 2000;
    int covered = 0;
    for (int i = 0; i < trials; i++) {
      Summary s = Summary.of(Simulation.normal(random, n));
      covered += bound(PerformanceIndex.upper(s, 3.3)) <= 1.1 ? 1 : 0;
    }
    Simulation.assertShare(0.95, covered, trials);
  }

  private static double bound(PerformanceIndex index) {
    return index.lowerBound(0.95);
  }

  @Test
  void boundOfTheNearerOfTwoLimitsErrsOnTheSafeSide() {
    SplittableRandom random = new SplittableRandom(41);
    int trials = 1200;
    int centred = 0;
    int offCentre = 0;
    for (int i = 0; i < trials; i++) {
      Summary s = Summary.of(Simulation.normal(random, 10));
      centred += twoSided(s, -3, 3) <= 1 ? 1 : 0;
      offCentre += twoSided(s, -9, 3) <= 1 ? 1 : 0;
    }
    Simulation.assertShareAtLeast(0.96, centred, trials);
    Simulation.assertShare(0.95, offCentre, trials);
  }

  private static double twoSided(Summary s, double lower, double upper) {
    return bound(PerformanceIndex.nearer(s, OptionalDouble.of(lower), OptionalDouble.of(upper)));
  }
}
