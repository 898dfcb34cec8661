package org.quietline.stats.runlength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.control.DailyReading;
import org.quietline.stats.control.RunRule;
import org.quietline.stats.control.RunRule.Beyond;
import org.quietline.stats.control.RunRule.EitherSide;
import org.quietline.stats.control.RunRule.Opposite;
import org.quietline.stats.control.RunRule.Outside;
import org.quietline.stats.control.RunRule.SameSide;
import org.quietline.stats.control.RunRule.Steady;
import org.quietline.stats.control.RunRules;

/** What must hold for rules that look at either side or at sets, whatever their numbers. */
class SetsPropertyTest {
  private static double average(Chart chart, double shift) {
    return RunLength.of(chart, Change.shift(shift)).average();
  }

  /** A chart drawn with a deviation that is off by a factor has its zones there. */
  @Test
  void widenedRulesHaveWiderZones() {
    SplittableRandom random = new SplittableRandom(8);
    for (int trial = 0; trial < 20; trial++) {
      double factor = random.nextDouble(0.7, 1.4);
      double off = random.nextDouble(-1, 1);
      int every = random.nextInt(1, 4);
      Chart chart =
          Chart.rulesEvery(every, new EitherSide(2, 3, 1.5), new Opposite(3, 1.2), new SameSide(6));
      Chart there =
          Chart.rulesEvery(
              every,
              new EitherSide(2, 3, 1.5 * factor),
              new Opposite(3, 1.2 * factor),
              new SameSide(6));
      assertEquals(there, chart.widened(factor));
      assertRelative(
          average(there, 0.4 - off),
          RunLength.given(chart, Change.shift(0.4), off, factor).average(),
          1e-12,
          chart.toString());
    }
    Chart daily = Chart.rules(DailyReading.outOfControl());
    assertRelative(
        average(Chart.rules(new Beyond(1, 1, 3.3), new EitherSide(2, 3, 2.2)), 0),
        RunLength.given(daily, Change.none(), 0, 1.1).average(),
        1e-12,
        "daily");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.3, 1, 2.6})
  void shiftsEitherWayAreAlike(double shift) {
    for (Chart chart :
        List.of(
            Chart.rules(RunRules.multirule(2)),
            Chart.rules(RunRules.multirule(5)),
            Chart.rules(DailyReading.outOfControl()),
            Chart.rulesEvery(3, new Opposite(2, 1), new EitherSide(2, 4, 1), new Steady(4)))) {
      assertRelative(average(chart, shift), average(chart, -shift), 1e-11, chart.toString());
    }
  }

  /** What is met on one side is met on either. */
  @Test
  void eitherSideSignalsNoLaterThanOneSide() {
    SplittableRandom random = new SplittableRandom(5);
    for (int trial = 0; trial < 30; trial++) {
      int count = random.nextInt(1, 5);
      int of = random.nextInt(count, 9);
      double zone = random.nextDouble(0.2, 2);
      double shift = random.nextDouble(-2, 2);
      RunLengthDistribution either =
          RunLength.of(Chart.rules(new EitherSide(count, of, zone)), Change.shift(shift));
      RunLengthDistribution one =
          RunLength.of(Chart.rules(new Beyond(count, of, zone)), Change.shift(shift));
      assertTrue(either.average() <= one.average() * (1 + 1e-12));
      for (int n = 1; n < 20; n++) {
        assertTrue(either.chanceWithin(n) >= one.chanceWithin(n) - 1e-14);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"1, 3, 0", "1, 2, 1.2", "5, 3, 0", "9, 1.5, -0.7"})
  void oneOfSomeBeyondEitherSideIsASingleValue(int of, double zone, double shift) {
    double single = RunLength.individuals(zone, shift);
    assertRelative(single, average(Chart.rules(new EitherSide(1, of, zone)), shift), 1e-12, "any");
    Chart both =
        Chart.together(Chart.individuals(zone + 1), Chart.rules(new EitherSide(1, 1, zone)));
    assertRelative(single, average(both, shift), 1e-12, "narrower of two");
  }

  @Test
  void allOfThemBeyondEitherSideIsOutside() {
    for (int count = 2; count < 6; count++) {
      assertRelative(
          average(Chart.rules(new Outside(count, 0.8)), 0.3),
          average(Chart.rules(new EitherSide(count, count, 0.8)), 0.3),
          1e-13,
          "count " + count);
    }
  }

  /** Every value but one on the centre is beyond a zone of nothing. */
  @Test
  void zonesOfNothing() {
    RunLengthDistribution either =
        RunLength.of(Chart.rules(new EitherSide(3, 5, 0)), Change.shift(0.4));
    assertEquals(3, either.average(), 1e-14);
    assertEquals(0, either.standardDeviation(), 1e-7);
    RunLengthDistribution opposite =
        RunLength.of(Chart.rules(new Opposite(2, 0)), Change.none()).inSets(2);
    assertEquals(2, opposite.average(), 1e-12);
    assertEquals(1, opposite.quantile(0.5));
  }

  @Test
  void theLargerTheSetTheSoonerOppositeValuesMeet() {
    double before = Double.POSITIVE_INFINITY;
    for (int set = 2; set <= 64; set *= 2) {
      double now = average(Chart.rules(new Opposite(set, 1.5)), 0.2);
      assertTrue(now < before, "set of " + set);
      before = now;
    }
  }

  /** Rules looked at less often signal later, and looked at after each value are as ever. */
  @Test
  void rulesThatAreLookedAtInSets() {
    RunRule[] rules = {new Beyond(2, 3, 1.5), new EitherSide(3, 5, 1), new Opposite(4, 1)};
    double each = average(Chart.rules(rules), 0.5);
    assertEquals(each, average(Chart.rulesEvery(1, rules), 0.5));
    for (int every = 2; every < 7; every++) {
      assertTrue(average(Chart.rulesEvery(every, rules), 0.5) > each, "every " + every);
    }
    // of single values only the last of each set is looked at
    for (int every : new int[] {2, 5, 30}) {
      RunLengthDistribution got =
          RunLength.of(Chart.rulesEvery(every, new Beyond(1, 1, 2)), Change.shift(0.5));
      assertRelative(every * RunLength.individuals(2, 0.5), got.average(), 1e-11, "values");
      assertRelative(RunLength.individuals(2, 0.5), got.inSets(every).average(), 1e-11, "sets");
      assertEquals(0, got.chanceWithin(every - 1L));
    }
  }

  @Test
  void countsInSetsAreCountsInValuesRoundedUp() {
    List<RunLengthDistribution> all =
        List.of(
            RunLength.of(Chart.rules(RunRules.multirule(2)), Change.none()),
            RunLength.of(Chart.rules(RunRules.multirule(5)), Change.shift(1)),
            RunLength.of(Chart.rules(new Opposite(7, 2)), Change.shift(-1)),
            RunLength.of(Chart.rules(new SameSide(2)), Change.shift(1)),
            RunLength.of(Chart.individuals(3), Change.drift(0.3)),
            RunLength.of(Chart.cumulativeSum(0.5, 4), Change.none()),
            RunLength.simulated(Chart.rules(new EitherSide(2, 3, 1)), Change.none(), 500, 1));
    for (RunLengthDistribution values : all) {
      assertEquals(values.average(), values.inSets(1).average(), 1e-11 * values.average());
      for (int set : new int[] {2, 3, 5, 12, 100}) {
        RunLengthDistribution sets = values.inSets(set);
        assertEquals(values.way().getClass(), sets.way().getClass());
        assertTrue(sets.average() >= values.average() / set * (1 - 1e-12));
        assertTrue(sets.average() <= (values.average() + set - 1) / set * (1 + 1e-12));
        double range = (set - 1.0) / set;
        assertEquals(values.standardDeviation() / set, sets.standardDeviation(), range);
        for (int m = 0; m < 50; m++) {
          assertEquals(values.chanceWithin((long) m * set), sets.chanceWithin(m), 1e-12);
        }
        for (double chance : new double[] {0.013, 0.5, 0.987, 0.9999}) {
          assertEquals(Math.ceil(values.quantile(chance) / set), sets.quantile(chance));
        }
        assertEquals(
            values.inSets(4 * set).average(), sets.inSets(4).average(), 1e-11 * sets.average());
      }
    }
  }

  /** The average in sets is the sum of the chances that sets pass without a signal. */
  @Test
  void averagesInSetsAreSumsOfChances() {
    for (Chart chart :
        List.of(
            Chart.rules(RunRules.multirule(3)),
            Chart.rules(new Opposite(5, 1)),
            Chart.individuals(2))) {
      RunLengthDistribution values = RunLength.of(chart, Change.shift(0.8));
      for (int set : new int[] {2, 3, 7}) {
        double[] quiet = new double[3000];
        Arrays.setAll(quiet, m -> 1 - values.chanceWithin((long) m * set));
        double sum = Arrays.stream(quiet).sum();
        assertRelative(sum, values.inSets(set).average(), 1e-10, chart + " in " + set);
      }
    }
  }

  @Test
  void whatNeverSignalsNeverSignalsInSets() {
    RunLengthDistribution never =
        RunLength.of(Chart.rules(new RunRule.Within(5, 1)), Change.shift(60)).inSets(3);
    assertEquals(Double.POSITIVE_INFINITY, never.average());
    assertEquals(Double.POSITIVE_INFINITY, never.quantile(0.01));
    assertEquals(0, never.chanceWithin(1_000_000));
  }
}
