package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;

class RunsTestTest {
  private static final Class<?> SUBJECT = RunsTest.class;

  @Test
  void handbookBeamDeflections() {
    Reference nist = Reference.read("nist-1.3.5.13-runs-test");
    RunsTest test = RunsTest.aboutMedian(nist.numbers("/data/y", 200));
    assertEquals(new RunsTest(100, 100, 120), test);
    nist.check(SUBJECT, "z", "/expected/Z", test.statistic());
    // the output has 0.007065, by its rounded z 0.007064; unrounded it is 0.0070646
    nist.check(SUBJECT, "chance", "/expected/p", test.normalChance(), 0.0000011);
  }

  @Test
  void exactFractions() {
    Reference reference = Reference.read("runs-about-median");
    var rows = reference.rows("/expected/rows", 9);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      RunsTest test = new RunsTest((int) row[0], (int) row[1], (int) row[2]);
      String at = "/expected/rows/" + i + "/";
      String of = " of " + test.runs() + " runs of " + test.below() + " and " + test.above();
      reference.check(SUBJECT, "chance below" + of, at + 3, test.chanceBelow());
      reference.check(SUBJECT, "chance above" + of, at + 4, test.chanceAbove());
      reference.check(SUBJECT, "mean" + of, at + 5, test.expected());
      reference.check(SUBJECT, "z" + of, at + 6, test.statistic());
      reference.check(SUBJECT, "normal chance" + of, at + 7, test.normalChance());
      assertRelative(Math.min(1, 2 * Math.min(row[3], row[4])), test.chance(), 1e-11, "two-sided");
    }
  }

  @ParameterizedTest
  @CsvSource({"5, 4", "10, 9"})
  void publishedTable(int each, int cells) {
    Reference table = Reference.read("runs-swed-eisenhart-1943");
    for (int i = 0; i < cells; i++) {
      RunsTest test = new RunsTest(each, each, 2 + i);
      String what = "at most " + test.runs() + " runs of " + each + " and " + each;
      String at = "/expected/" + each + "," + each + "/" + i;
      table.check(SUBJECT, what, at, test.chanceBelow());
    }
  }

  /** Every order of three lows and five highs, counted. */
  @Test
  void allOrdersCounted() {
    int[] seen = new int[9];
    for (int bits = 0; bits < 256; bits++) {
      if (Integer.bitCount(bits) == 5) {
        seen[1 + Integer.bitCount((bits ^ (bits >> 1)) & 127)]++;
      }
    }
    int below = 0;
    for (int runs = 2; runs <= 7; runs++) {
      below += seen[runs];
      double got = new RunsTest(3, 5, runs).chanceBelow();
      Evidence.own(SUBJECT, "3 and 5, " + runs, "all orders counted", below / 56.0, got, 1e-12);
    }
  }

  @Test
  void valuesOnTheMedianAreLeftOut() {
    assertEquals(new RunsTest(2, 2, 4), RunsTest.aboutMedian(1, 9, 5, 2, 8));
    assertEquals(new RunsTest(2, 2, 2), RunsTest.aboutMedian(5, 1, 5, 2, 8, 9, 5));
  }

  @Test
  void oneAndOneSayNothing() {
    RunsTest test = RunsTest.aboutMedian(1, 2);
    assertEquals(new RunsTest(1, 1, 2), test);
    assertEquals(0, test.statistic());
    assertEquals(1, test.chance(), 1e-15);
    assertEquals(1, test.normalChance(), 1e-15);
  }
}
