package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class SubgroupLimitsTest {
  private static final Class<?> SUBJECT = SubgroupLimits.class;

  /**
   * Data and figures from memory. The recalled limits from ranges (74.01432, 73.98804, 0.04813)
   * belong to a mean range of 0.02276, not to these data, whose mean range of 0.02324 is the book's
   * printed 0.023: there the figures recalculated from the data are the target. The recalled limits
   * from deviations were made with s̄ rounded to 0.0094 and a mean rounded to 74.001.
   */
  @Test
  void pistonRings() {
    Reference book = Reference.read("montgomery-piston-rings-xbar-r-s");
    List<double[]> groups = book.rows("/data/samples", 25);
    SubgroupLimits byDeviations = SubgroupLimits.fromDeviations(groups);
    book.check(SUBJECT, "grand mean", "/expected/grand_mean", byDeviations.centre());
    ChartLimits deviations = byDeviations.ofDeviation(5);
    book.check(SUBJECT, "mean deviation", "/expected/s_bar", deviations.centre());
    book.check(SUBJECT, "upper limit of deviations", "/expected/s_UCL", deviations.upper());
    book.check(SUBJECT, "deviation from s", "/expected/sigma_s", byDeviations.deviation());
    double rounded = 74.001 - byDeviations.centre();
    ChartLimits means = byDeviations.ofMean(5);
    double upper = means.upper() + rounded;
    double lower = means.lower() + rounded;
    book.check(SUBJECT, "upper limit of means, s", "/expected/xbar_UCL_s", upper);
    book.check(SUBJECT, "lower limit of means, s", "/expected/xbar_LCL_s", lower);
    // the recalculation used tabulated constants: half a unit of its last digit
    book.check(SUBJECT, "upper, s", "/crosscheck/own/xbar_UCL_s", means.upper(), 0.000006);
    book.check(SUBJECT, "lower, s", "/crosscheck/own/xbar_LCL_s", means.lower(), 0.000006);

    SubgroupLimits byRanges = SubgroupLimits.fromRanges(groups);
    book.check(SUBJECT, "mean range", "/expected/R_bar", byRanges.ofRange(5).centre(), 0.0005);
    book.check(SUBJECT, "mean range", "/crosscheck/own/R_bar", byRanges.ofRange(5).centre(), 5e-6);
    double sigma = byRanges.deviation();
    book.check(SUBJECT, "deviation from R", "/crosscheck/own/sigma_R~1d2", sigma, 1e-6);
    book.check(SUBJECT, "upper, R", "/crosscheck/own/xbar_UCL_R", byRanges.ofMean(5).upper(), 1e-5);
    book.check(SUBJECT, "lower, R", "/crosscheck/own/xbar_LCL_R", byRanges.ofMean(5).lower(), 1e-5);
    book.check(
        SUBJECT,
        "upper limit of ranges",
        "/crosscheck/own/R_UCL",
        byRanges.ofRange(5).upper(),
        2e-5);
    assertEquals(0, byRanges.ofRange(5).lower());
    assertEquals(SubgroupLimits.Basis.RANGES, byRanges.basis());
    assertEquals(SubgroupLimits.Basis.DEVIATIONS, byDeviations.basis());
  }

  /** The published tables, through limits of a population with centre 0 and deviation 1. */
  @Test
  void publishedConstants() {
    Reference ranges = Reference.read("constants-range-chart-a2-d2-d3-d4");
    Reference deviations = Reference.read("constants-s-chart-d3-c4-a3-b3-b6");
    SubgroupLimits unit = new SubgroupLimits(SubgroupLimits.Basis.RANGES, 0, 1, 100);
    // the tables are off by up to two units of the last digit in some cells, and have one misprint,
    // D4 for 11: see the crosscheck in the files
    for (int n = 2; n <= 25; n++) {
      ChartLimits range = unit.ofRange(n);
      ChartLimits deviation = unit.ofDeviation(n);
      double mean = unit.ofMean(n).upper();
      cell(ranges, n, "d2", range.centre(), 0.0011);
      cell(ranges, n, "D3", range.lower() / range.centre(), 0.0016);
      cell(ranges, n, "D4", range.upper() / range.centre(), n == 11 ? 0.031 : 0.0016);
      cell(ranges, n, "A2", mean / range.centre(), 0.0011);
      cell(deviations, n, "c4", deviation.centre(), 6e-5);
      cell(deviations, n, "B3", deviation.lower() / deviation.centre(), 0.0006);
      cell(deviations, n, "B4", deviation.upper() / deviation.centre(), 0.0006);
      cell(deviations, n, "A3", mean / deviation.centre(), 0.0006);
    }
  }

  /** All cells are held to; those of a few sizes stand on the table of evidence. */
  private static void cell(Reference table, int n, String name, double got, double tolerance) {
    String at = "/expected/" + n + "/" + name;
    assertEquals(table.number(at), got, tolerance, name + " of " + n);
    if (n == 2 || n == 5 || n == 10 || n == 25) {
      table.check(SUBJECT, name + ", n = " + n, at, got, tolerance);
    }
  }

  @Test
  void computedConstants() {
    Reference reference = Reference.read("subgroup-constants");
    SubgroupLimits unit = new SubgroupLimits(SubgroupLimits.Basis.RANGES, 0, 1, 100);
    double chance = 0.002699796063260206;
    for (int i = 0; i < 9; i++) {
      String row = "/expected/rows/" + i + "/";
      int n = (int) reference.number(row + "0");
      ChartLimits range = unit.ofRange(n);
      double d3 = (range.upper() - range.centre()) / 3;
      reference.check(SUBJECT, "mean range, n = " + n, row + "1", range.centre());
      reference.check(SUBJECT, "deviation of the range, n = " + n, row + "2", d3);
      double c4 = unit.ofDeviation(n).centre();
      reference.check(SUBJECT, "mean deviation, n = " + n, row + "3", c4);
      ChartLimits byChance = unit.ofRange(n, chance);
      reference.check(SUBJECT, "lower range by chance, n = " + n, row + "4", byChance.lower());
      reference.check(SUBJECT, "upper range by chance, n = " + n, row + "5", byChance.upper());
      assertEquals(range.centre(), byChance.centre());
    }
  }

  /** Closed forms of the range of two, three and four. */
  @Test
  void closedForms() {
    double rootPi = Math.sqrt(Math.PI);
    Evidence.own(
        SUBJECT,
        "mean range of four",
        "closed form 12/√π·(¼ + asin(⅓)/(2π))",
        12 / rootPi * (0.25 + Math.asin(1 / 3.0) / (2 * Math.PI)),
        new SubgroupLimits(SubgroupLimits.Basis.RANGES, 0, 1, 9).ofRange(4).centre(),
        1e-13);
  }

  @Test
  void equalAndUnequalSizes() {
    Reference reference = Reference.read("subgroup-limits");
    for (String kind : new String[] {"equal", "unequal"}) {
      List<double[]> groups =
          kind.equals("equal")
              ? reference.rows("/data/equal", 6)
              : reference.rows("/data/unequal", 5);
      String at = "/expected/" + kind + "/";
      SubgroupLimits ranges = SubgroupLimits.fromRanges(groups);
      SubgroupLimits deviations = SubgroupLimits.fromDeviations(groups);
      SubgroupLimits pooled = SubgroupLimits.fromPooledDeviation(groups);
      reference.check(SUBJECT, kind + ", centre", at + "centre", ranges.centre());
      reference.check(SUBJECT, kind + ", ranges", at + "deviationByRanges", ranges.deviation());
      reference.check(
          SUBJECT, kind + ", ranges' degrees", at + "degreesByRanges", ranges.degreesOfFreedom());
      reference.check(
          SUBJECT, kind + ", deviations", at + "deviationByDeviations", deviations.deviation());
      reference.check(
          SUBJECT,
          kind + ", deviations' degrees",
          at + "degreesByDeviations",
          deviations.degreesOfFreedom());
      reference.check(SUBJECT, kind + ", pooled", at + "deviationPooled", pooled.deviation());
      reference.check(
          SUBJECT, kind + ", pooled degrees", at + "degreesPooled", pooled.degreesOfFreedom());
      assertEquals(SubgroupLimits.Basis.POOLED_DEVIATION, pooled.basis());
      assertEquals(ranges.centre(), pooled.centre());
      int[] sizes = kind.equals("equal") ? new int[] {4} : new int[] {2, 5, 7};
      for (int n : sizes) {
        checkLimits(reference, kind + ", size " + n, at + "limits/" + n + "/", deviations, n);
      }
    }
  }

  private static void checkLimits(
      Reference reference, String words, String at, SubgroupLimits limits, int n) {
    ChartLimits[] two = {
      limits.ofMean(n),
      limits.ofMean(n, 0.0027),
      limits.ofRange(n, 0.0027),
      limits.ofDeviation(n, 0.0027)
    };
    String[] names = {"mean", "meanByChance", "rangeByChance", "deviationByChance"};
    for (int i = 0; i < two.length; i++) {
      reference.check(SUBJECT, words + ", lower " + names[i], at + names[i] + "/0", two[i].lower());
      reference.check(SUBJECT, words + ", upper " + names[i], at + names[i] + "/1", two[i].upper());
    }
    ChartLimits[] three = {limits.ofRange(n), limits.ofDeviation(n)};
    String[] threeNames = {"range", "deviation"};
    for (int i = 0; i < three.length; i++) {
      String name = threeNames[i];
      reference.check(SUBJECT, words + ", lower " + name, at + name + "/0", three[i].lower());
      reference.check(SUBJECT, words + ", mean " + name, at + name + "/1", three[i].centre());
      reference.check(SUBJECT, words + ", upper " + name, at + name + "/2", three[i].upper());
    }
    assertEquals(three[1].centre(), two[3].centre(), 1e-15);
    assertEquals(three[0].centre(), two[2].centre(), 1e-15);
    assertEquals(limits.centre(), two[0].centre());
  }

  /** Table recalled and computed again; both agree to the printed digit. */
  @Test
  void degreesOfFreedomOfMeanRanges() {
    Reference table = Reference.read("range-degrees-of-freedom");
    SplittableRandom random = new SplittableRandom(3);
    int rows = table.at("/expected/rows").size();
    assertEquals(18, rows);
    for (int i = 0; i < rows; i++) {
      String row = "/expected/rows/" + i + "/";
      int count = (int) table.number(row + "0");
      int size = (int) table.number(row + "1");
      List<double[]> groups = new ArrayList<>();
      for (int g = 0; g < count; g++) {
        groups.add(Simulation.normal(random, size));
      }
      double degrees = SubgroupLimits.fromRanges(groups).degreesOfFreedom();
      String words = "degrees of freedom of " + count + " ranges of " + size;
      table.check(SUBJECT, words, row + "2", degrees, 0.05);
      assertRelative(table.number(row + "3"), degrees, 1e-8, words);
    }
  }

  @Test
  void degreesOfFreedomOfEqualDeviationsAndOfManyGroups() {
    List<double[]> one = List.of(new double[] {1, 2, 4, 8, 16});
    assertRelative(4, SubgroupLimits.fromDeviations(one).degreesOfFreedom(), 1e-9, "one of five");
    assertRelative(1, DeviationScatter.freedomOf(Math.PI / 2 - 1), 1e-9, "a pair");
    List<double[]> many = new ArrayList<>();
    for (int i = 0; i < 30_000; i++) {
      many.add(new double[] {0, 1});
    }
    // relative variance π/2 − 1 each; 1/(2v) and the next term for many
    double v = (Math.PI / 2 - 1) / 30_000;
    double degrees = SubgroupLimits.fromDeviations(many).degreesOfFreedom();
    assertRelative(1 / (2 * v) + 0.25, degrees, 1e-7, "many");
    assertRelative(
        DeviationScatter.relativeVariance(9999.9),
        DeviationScatter.relativeVariance(10000.1),
        2.1e-5,
        "where the series begins");
  }

  @RepeatedTest(10)
  void shiftScaleAndOrder(RepetitionInfo repetition) {
    SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
    double shift = random.nextDouble(-5, 5);
    double scale = random.nextDouble(0.2, 5);
    List<double[]> groups = new ArrayList<>();
    List<double[]> moved = new ArrayList<>();
    List<double[]> turned = new ArrayList<>();
    for (int g = 0; g < 6; g++) {
      double[] x = Simulation.normal(random, 2 + random.nextInt(4));
      groups.add(x);
      moved.add(Arrays.stream(x).map(v -> shift + scale * v).toArray());
      double[] sorted = x.clone();
      Arrays.sort(sorted);
      turned.add(0, sorted);
    }
    for (int i = 0; i < 3; i++) {
      SubgroupLimits before = from(i, groups);
      SubgroupLimits after = from(i, moved);
      SubgroupLimits other = from(i, turned);
      assertEquals(shift + scale * before.centre(), after.centre(), 1e-10);
      assertRelative(scale * before.deviation(), after.deviation(), 1e-10, "deviation");
      assertRelative(before.degreesOfFreedom(), after.degreesOfFreedom(), 1e-12, "degrees");
      assertRelative(before.deviation(), other.deviation(), 1e-12, "order");
    }
  }

  private static SubgroupLimits from(int way, List<double[]> groups) {
    return way == 0
        ? SubgroupLimits.fromRanges(groups)
        : way == 1
            ? SubgroupLimits.fromDeviations(groups)
            : SubgroupLimits.fromPooledDeviation(groups);
  }

  @Test
  void withoutSpread() {
    SubgroupLimits still =
        SubgroupLimits.fromRanges(List.of(new double[] {2, 2}, new double[] {2, 2}));
    assertEquals(0, still.deviation());
    assertEquals(new ChartLimits(2, 2, 2), still.ofMean(2));
    assertEquals(new ChartLimits(0, 0, 0), still.ofRange(2));
    assertEquals(new ChartLimits(0, 0, 0), still.ofDeviation(2));
  }

  /** Expected: gamma functions of mpmath with 40 digits. */
  @Test
  void deviationsOfLargeSubgroupsAndOfRareAlarms() {
    SubgroupLimits unit = new SubgroupLimits(SubgroupLimits.Basis.DEVIATIONS, 0, 1, 9);
    assertRelative(1.0668569840479027, unit.ofDeviation(1000).upper(), 1e-14, "1000");
    assertRelative(1.029952241389421, unit.ofDeviation(5000).upper(), 1e-14, "5000");
    assertRelative(4.670954190149071, unit.ofDeviation(5, 1e-17).upper(), 1e-12, "rare");
  }
}
