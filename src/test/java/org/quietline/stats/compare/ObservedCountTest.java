package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;

class ObservedCountTest {
  private static final Class<?> SUBJECT = ObservedCount.class;

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5, 10, 20})
  void garwoodsTable(int count) {
    Reference table = Reference.read("count-intervals-garwood-1936");
    Interval interval = new ObservedCount(count, 1).exactInterval(0.95);
    table.check(SUBJECT, "lower of " + count, "/expected/" + count + "/0", interval.lower());
    table.check(SUBJECT, "upper of " + count, "/expected/" + count + "/1", interval.upper());
  }

  @Test
  void outsideLibrary() {
    Reference reference = Reference.read("count-intervals");
    var rows = reference.rows("/expected/rows", 5);
    for (int i = 0; i < rows.size(); i++) {
      double[] row = rows.get(i);
      ObservedCount seen = new ObservedCount((int) row[0], row[1]);
      String at = "/expected/rows/" + i + "/";
      String of = " of " + seen.count();
      reference.check(SUBJECT, "low" + of, at + 3, seen.exactInterval(row[2]).lower());
      reference.check(SUBJECT, "high" + of, at + 4, seen.exactInterval(row[2]).upper());
      reference.check(SUBJECT, "lower bound" + of, at + 5, seen.lowerBound(row[2]));
      reference.check(SUBJECT, "upper bound" + of, at + 6, seen.upperBound(row[2]));
      assertRelative(row[0] / row[1], seen.rate(), 1e-15, "rate");
    }
  }

  @Test
  void tails() {
    Reference reference = Reference.read("count-intervals");
    var rows = reference.rows("/expected/tails", 6);
    for (int i = 0; i < rows.size(); i++) {
      int k = (int) rows.get(i)[0];
      double mean = rows.get(i)[1];
      String at = "/expected/tails/" + i + "/";
      String what = k + " where " + mean + " are expected";
      reference.check(PoissonTail.class, "at least " + what, at + 2, PoissonTail.atLeast(k, mean));
      reference.check(PoissonTail.class, "at most " + what, at + 3, PoissonTail.atMost(k, mean));
    }
    assertEquals(0, PoissonTail.atMost(-1, 3));
    assertEquals(1, PoissonTail.atLeast(-1, 3));
    assertEquals(1, PoissonTail.atMost(0, 0));
    assertEquals(0, PoissonTail.atLeast(1, 0));
  }

  @Test
  void noEventIsAboutThree() {
    assertRelative(-Math.log(0.05) / 4, new ObservedCount(0, 4).upperBound(0.95), 1e-13, "three");
    assertEquals(0, new ObservedCount(0, 4).lowerBound(0.95));
  }

  /** No event: the upper end is −ln of the tail, by the density of no event, exp(−mean). */
  @Test
  void levelsNearNothingAndOne() {
    double nearOne = Math.nextDown(1.0);
    Interval wide = new ObservedCount(0, 1).exactInterval(nearOne);
    assertEquals(0, wide.lower());
    assertEquals(-Math.log((1 - nearOne) / 2), wide.upper(), 1e-12);
    // one event or more with a chance of 1 − 1e-17 has the mean −ln 1e-17
    assertEquals(-Math.log(1e-17), new ObservedCount(1, 1).lowerBound(1e-17), 1e-12);
    assertEquals(1e-17, new ObservedCount(0, 1).upperBound(1e-17), 1e-29);
  }
}
