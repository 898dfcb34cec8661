package org.quietline.stats.capability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.distribution.ChiSquare;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.sample.Summary;

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
    practitioner.check(PerformanceIndex.class, "batches: " + name, "/expected/" + name, actual);
  }

  @Test
  void practitionersLowerBounds() {
    int place = 0;
    for (double[] row : practitioner.rows("/expected/rows", 9)) {
      Summary s = new Summary((int) row[1], 0, 1);
      double fromAbove = PerformanceIndex.upper(s, 3 * row[0]).lowerBound(0.95);
      double fromBelow = PerformanceIndex.lower(s, -3 * row[0]).lowerBound(0.95);
      practitioner.check(
          PerformanceIndex.class,
          "lower bound of " + row[0] + " from " + (int) row[1],
          "/expected/rows/" + place++ + "/2",
          fromAbove);
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
    Class<?> subject = PerformanceIndex.class;
    nist.check(subject, "upper index", "/expected/Cpu", PerformanceIndex.upper(s, upper).index());
    nist.check(subject, "lower index", "/expected/Cpl", PerformanceIndex.lower(s, lower).index());
    PerformanceIndex both =
        PerformanceIndex.nearer(s, OptionalDouble.of(lower), OptionalDouble.of(upper));
    nist.check(subject, "index of the nearer", "/expected/Cpk", both.index());
    assertEquals(1e6 * (Normal.above(2) + Normal.above(4)), both.beyondPerMillion(), 1e-9);
    assertEquals(PerformanceIndex.upper(s, upper).lowerBound(0.95), both.lowerBound(0.95));
  }

  /**
   * Bissell's approximate interval, recalculated in the file (the interval recalled from memory
   * there is a known slip), is within 0.02 of the exact one.
   */
  @Test
  void approximationOfTheBookIsClose() {
    Reference book = Reference.read("cpk-confidence-interval-montgomery");
    double index = book.number("/data/Cpk");
    Summary s = new Summary(book.at("/data/n").asInt(), 0, 1);
    Interval interval = PerformanceIndex.upper(s, 3 * index).interval(0.95);
    Class<?> subject = PerformanceIndex.class;
    book.check(subject, "approximate lower end", "/crosscheck/own/lower", interval.lower(), 0.02);
    book.check(subject, "approximate upper end", "/crosscheck/own/upper", interval.upper(), 0.02);
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

  /** The last level below 1 is a little wider than the one before it on both sides. */
  @Test
  void levelNextToOne() {
    PerformanceIndex index = PerformanceIndex.upper(new Summary(20, 10, 1), 14);
    Interval wide = index.interval(1 - 1e-15);
    Interval wider = index.interval(Math.nextDown(1.0));
    assertTrue(wider.lower() < wide.lower() && wide.upper() < wider.upper());
    // half of what a level of nextDown(1) leaves, so a little below its one-sided bound
    double bound = index.lowerBound(Math.nextDown(1.0));
    assertTrue(wider.lower() < bound && bound < wide.lower());
    Interval share = index.shareBeyondInterval(Math.nextDown(1.0));
    assertRelative(Normal.above(3 * wider.lower()), share.upper(), 1e-10, "upper share");
  }
}
