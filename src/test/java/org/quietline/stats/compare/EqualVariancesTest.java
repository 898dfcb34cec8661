package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;

class EqualVariancesTest {
  private static final Class<?> SUBJECT = EqualVariances.class;

  private static double[][] gears(Reference reference) {
    return IntStream.rangeClosed(1, 10)
        .mapToObj(i -> reference.numbers("/data/batches/" + i, 10))
        .toArray(double[][]::new);
  }

  /** The page prints 20.78580 for 20.78587: the file says to compare with 1e-4. */
  @Test
  void handbookGearsByBartlett() {
    Reference nist = Reference.read("nist-1.3.5.7-bartlett");
    EqualVariances test = EqualVariances.bartlett(gears(nist));
    nist.check(SUBJECT, "Bartlett, page", "/expected/T_page", test.statistic(), 1e-4);
    nist.check(SUBJECT, "Bartlett, output", "/expected/T_R_output", test.statistic());
    nist.check(SUBJECT, "Bartlett chance", "/expected/p", test.chance());
    nist.check(SUBJECT, "Bartlett 5 %", "/expected/critical_0.05", test.criticalValue(0.05));
  }

  @Test
  void handbookGearsByDistances() {
    Reference nist = Reference.read("nist-1.3.5.10-levene");
    EqualVariances test = EqualVariances.brownForsythe(gears(nist));
    nist.check(SUBJECT, "Brown-Forsythe", "/expected/W", test.statistic());
    nist.check(SUBJECT, "Brown-Forsythe chance", "/expected/p", test.chance());
    nist.check(SUBJECT, "Brown-Forsythe 5 %", "/expected/critical_0.05", test.criticalValue(0.05));
    double mean = EqualVariances.levene(gears(nist)).statistic();
    Recalculated.check(nist, "Levene", "/own/W_mean_centred", mean);
  }

  @Test
  void outsideLibrary() {
    Reference reference = Reference.read("equal-variances");
    double[][] groups = {
      reference.numbers("/data/groups/0", 5),
      reference.numbers("/data/groups/1", 6),
      reference.numbers("/data/groups/2", 4),
      reference.numbers("/data/groups/3", 3)
    };
    EqualVariances bartlett = EqualVariances.bartlett(groups);
    check(reference, "bartlett", bartlett);
    EqualVariances levene = EqualVariances.levene(groups);
    check(reference, "levene", levene);
    check(reference, "brownForsythe", EqualVariances.brownForsythe(groups));
    reference.check(
        SUBJECT, "Bartlett 5 %", "/expected/bartlettCritical", bartlett.criticalValue(0.05));
    reference.check(SUBJECT, "ratio 5 %", "/expected/ratioCritical", levene.criticalValue(0.05));
    assertEquals(18, levene.values());
    assertEquals(4, levene.groups());
  }

  private static void check(Reference reference, String name, EqualVariances test) {
    reference.check(SUBJECT, name, "/expected/" + name, test.statistic());
    reference.check(SUBJECT, name + " chance", "/expected/" + name + "Chance", test.chance());
  }

  @Test
  void shiftsAndScalesDoNotMatter() {
    double[][] groups = {{1, 2, 4}, {1, 5, 9, 7}, {0, 3, 3.5}};
    double[][] moved = {{30, 50, 90}, {-20, 60, 140, 100}, {7, 67, 77}};
    assertRelative(
        EqualVariances.bartlett(groups).statistic(),
        EqualVariances.bartlett(moved).statistic(),
        1e-12,
        "Bartlett");
    assertRelative(
        EqualVariances.levene(groups).statistic(),
        EqualVariances.levene(moved).statistic(),
        1e-12,
        "Levene");
    assertRelative(
        EqualVariances.brownForsythe(groups).statistic(),
        EqualVariances.brownForsythe(moved).statistic(),
        1e-12,
        "Brown and Forsythe");
  }

  @Test
  void equalVariancesAreEqual() {
    double[][] groups = {{1, 2, 4}, {11, 12, 14}, {-1, 0, 2}};
    assertEquals(0, EqualVariances.bartlett(groups).statistic(), 1e-12);
    assertEquals(1, EqualVariances.bartlett(groups).chance(), 1e-12);
    assertEquals(0, EqualVariances.levene(groups).statistic(), 1e-12);
    assertEquals(1, EqualVariances.brownForsythe(groups).chance(), 1e-12);
  }

  /** For two groups of one size Bartlett's is a function of the ratio of variances alone. */
  @Test
  void twoGroupsByHand() {
    double[] a = {1, 2, 4, 5};
    double[] b = {1, 3, 9, 10};
    double va = 10.0 / 3;
    double vb = Arrays.stream(b).map(v -> (v - 5.75) * (v - 5.75)).sum() / 3;
    double raw = 6 * Math.log((va + vb) / 2) - 3 * Math.log(va) - 3 * Math.log(vb);
    double expected = raw / (1 + (2.0 / 3 - 1.0 / 6) / 3);
    Evidence.own(
        SUBJECT,
        "two groups",
        "formula by hand",
        expected,
        EqualVariances.bartlett(a, b).statistic(),
        1e-13);
  }
}
