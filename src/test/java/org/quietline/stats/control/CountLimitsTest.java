package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;

/** Charts of counts and of shares. */
class CountLimitsTest {

  /** Figures of the page from memory, reproduced from its data. */
  @Test
  void handbookDefects() {
    Reference nist = Reference.read("nist-6.3.3.1-c-chart");
    int[] counts =
        Arrays.stream(nist.numbers("/data/defects", 25)).mapToInt(d -> (int) d).toArray();
    CountLimits chart = CountLimits.of(counts);
    ChartLimits limits = chart.limits();
    nist.check(CountLimits.class, "mean count", "/expected/c_bar", chart.mean());
    nist.check(CountLimits.class, "upper limit", "/expected/UCL", limits.upper());
    nist.check(CountLimits.class, "lower limit", "/expected/LCL", limits.lower());
    int[] beyond =
        IntStream.range(0, 25).filter(i -> limits.beyond(counts[i])).map(i -> i + 1).toArray();
    assertEquals(1, beyond.length);
    nist.check(ChartLimits.class, "count beyond", "/expected/out_of_control_wafers/0", beyond[0]);
    // the third lies on the limit, which is inside
    assertEquals(limits.upper(), counts[2]);
  }

  /** Figures of the page from memory, reproduced from its data. */
  @Test
  void handbookShares() {
    Reference nist = Reference.read("nist-6.3.3.2-p-chart");
    double[] shares = nist.numbers("/data/fraction_defective", 30);
    int[] counts = Arrays.stream(shares).mapToInt(p -> (int) Math.round(50 * p)).toArray();
    int[] sizes = new int[30];
    Arrays.fill(sizes, 50);
    ShareLimits chart = ShareLimits.of(counts, sizes);
    ChartLimits limits = chart.limits(50);
    nist.check(ShareLimits.class, "share", "/expected/p_bar", chart.share());
    nist.check(ShareLimits.class, "upper limit", "/expected/UCL", limits.upper());
    nist.check(ShareLimits.class, "lower limit", "/expected/LCL", limits.lower());
    int[] beyond =
        IntStream.range(0, 30).filter(i -> limits.beyond(shares[i])).map(i -> i + 1).toArray();
    assertEquals(2, beyond.length);
    for (int i = 0; i < 2; i++) {
      nist.check(
          ChartLimits.class, "share beyond", "/expected/out_of_control_wafers/" + i, beyond[i]);
    }
  }

  @Test
  void computedLimitsAndFalseAlarms() {
    Reference reference = Reference.read("count-limits");
    for (int i = 0; i < 5; i++) {
      String row = "/expected/counts/" + i + "/";
      CountLimits chart = new CountLimits(reference.number(row + "0"));
      String words = " for a mean count of " + chart.mean();
      ChartLimits limits = chart.limits();
      reference.check(CountLimits.class, "lower" + words, row + "1", limits.lower());
      reference.check(CountLimits.class, "upper" + words, row + "2", limits.upper());
      reference.check(CountLimits.class, "false alarm" + words, row + "3", chart.falseAlarm());

      row = "/expected/shares/" + i + "/";
      ShareLimits share = new ShareLimits(reference.number(row + "0"));
      int n = (int) reference.number(row + "1");
      words = " for a share of " + share.share() + " in " + n;
      limits = share.limits(n);
      reference.check(ShareLimits.class, "lower" + words, row + "2", limits.lower());
      reference.check(ShareLimits.class, "upper" + words, row + "3", limits.upper());
      reference.check(ShareLimits.class, "false alarm" + words, row + "4", share.falseAlarm(n));
    }
  }

  @Test
  void nothingAndEverything() {
    assertEquals(new ChartLimits(0, 0, 0), CountLimits.of(0, 0, 0).limits());
    assertEquals(0, CountLimits.of(0).falseAlarm());
    ShareLimits none = ShareLimits.of(new int[] {0, 0}, new int[] {5, 7});
    assertEquals(new ChartLimits(0, 0, 0), none.limits(3));
    assertEquals(0, none.falseAlarm(3));
    ShareLimits all = ShareLimits.of(new int[] {5, 7}, new int[] {5, 7});
    assertEquals(new ChartLimits(1, 1, 1), all.limits(3));
    assertEquals(0, all.falseAlarm(3));
    assertEquals(0.25, ShareLimits.of(new int[] {1, 2}, new int[] {4, 8}).share());
    assertEquals(Integer.MAX_VALUE, CountLimits.of(Integer.MAX_VALUE, Integer.MAX_VALUE).mean());
  }

  @Test
  void chartLimitsHoldTheirEnds() {
    ChartLimits limits = new ChartLimits(1, 2, 4);
    assertFalse(limits.beyond(1) || limits.beyond(4) || limits.beyond(3));
    assertEquals(true, limits.beyond(Math.nextDown(1.0)) && limits.beyond(Math.nextUp(4.0)));
  }
}
