package org.quietline.stats.runlength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.control.DailyReading;
import org.quietline.stats.control.RunRule;
import org.quietline.stats.control.RunRule.Beyond;
import org.quietline.stats.control.RunRule.EitherSide;
import org.quietline.stats.control.RunRule.Opposite;
import org.quietline.stats.control.RunRule.SameSide;
import org.quietline.stats.control.RunRules;
import org.quietline.stats.runlength.RunLength.Start;
import org.quietline.stats.runlength.RunLengthDistribution.Way;

/** Rules that look at either side or at sets of values, against figures from outside. */
class SetsRunLengthTest {
  private static final RunRule ONE = new Beyond(1, 1, 3);
  private static final RunRule TWO = new Beyond(2, 2, 2);
  private static final RunRule FOUR = new Beyond(4, 4, 1);
  private static final RunRule TEN = new SameSide(10);

  private static final Map<String, Chart> SHORT =
      Map.ofEntries(
          Map.entry("daily reading", Chart.rules(DailyReading.outOfControl())),
          Map.entry("either 2 of 2 beyond 2", Chart.rules(new EitherSide(2, 2, 2))),
          Map.entry("either 3 of 5 beyond 1.5", Chart.rules(new EitherSide(3, 5, 1.5))),
          Map.entry("opposite 2 beyond 1", Chart.rules(new Opposite(2, 1))),
          Map.entry("opposite 3 beyond 1.5", Chart.rules(new Opposite(3, 1.5))),
          Map.entry("opposite 5 beyond 1.5", Chart.rules(new Opposite(5, 1.5))),
          Map.entry("1-3s, 2-2s, R-4s of 2", Chart.rules(ONE, TWO, new Opposite(2, 2))),
          Map.entry("1-3s, 2-2s, R-4s of 4", Chart.rules(ONE, TWO, new Opposite(4, 2))),
          Map.entry(
              "opposite 2 beyond 1.5 and opposite 5 beyond 2",
              Chart.rules(new Opposite(2, 1.5), new Opposite(5, 2))),
          Map.entry(
              "either 3 of 4 beyond 1, opposite 3 beyond 1.5 and 6 on one side",
              Chart.rules(new EitherSide(3, 4, 1), new Opposite(3, 1.5), new SameSide(6))),
          Map.entry(
              "every 3: 2 of 3 beyond 1.5, either 3 of 4 beyond 1",
              Chart.rulesEvery(3, new Beyond(2, 3, 1.5), new EitherSide(3, 4, 1))));

  private static Chart chart(String name) {
    return Objects.requireNonNull(SHORT.get(name), name);
  }

  /** The multirule with its rules of successive values looked at as a file says. */
  private static Chart multirule(int set, String reading) {
    RunRule opposite = new Opposite(set, 2);
    return switch (reading) {
      case "each value" -> Chart.rules(RunRules.multirule(set));
      case "end of set" ->
          Chart.together(Chart.rules(ONE, opposite), Chart.rulesEvery(set, TWO, FOUR, TEN));
      default -> Chart.together(Chart.rules(ONE, opposite, TWO), Chart.rulesEvery(set, FOUR, TEN));
    };
  }

  @Test
  void shortRulesInValuesAndInSets() {
    Reference table = Reference.read("run-length-sets");
    int rows = table.at("/expected/short").size();
    assertEquals(3 * 19, rows);
    for (int at = 0; at < rows; at++) {
      String row = "/expected/short/" + at;
      Chart chart = chart(table.at(row + "/0").asText());
      int counted = (int) table.number(row + "/1");
      double shift = table.number(row + "/2");
      RunLengthDistribution got = RunLength.of(chart, Change.shift(shift)).inSets(counted);
      assertEquals(new Way.Exact(), got.way());
      String what = chart + ", in sets of " + counted + ", shift " + shift;
      Expected.check(table, Chart.Rules.class, row, 3, got, what);
    }
  }

  @Test
  void settledRulesMeetTheChangeAtTheBeginningOfASet() {
    Reference table = Reference.read("run-length-sets");
    int rows = table.at("/expected/settled").size();
    assertEquals(3 * 11, rows);
    for (int at = 0; at < rows; at++) {
      String row = "/expected/settled/" + at;
      Chart chart = chart(table.at(row + "/0").asText());
      double shift = table.number(row + "/1");
      double got = RunLength.of(chart, Change.shift(shift), Start.SETTLED).average();
      String what = "average, settled, " + chart + ", shift " + shift;
      table.check(Chart.Rules.class, what, row + "/2", got);
    }
  }

  @Test
  void multiruleInSetsOfTwoAndFour() {
    Reference table = Reference.read("run-length-sets");
    int rows = table.at("/expected/multirule").size();
    assertEquals(2 * 3 * 5, rows);
    for (int at = 0; at < rows; at++) {
      String row = "/expected/multirule/" + at;
      int set = (int) table.number(row + "/0");
      String reading = table.at(row + "/1").asText();
      double shift = table.number(row + "/2");
      RunLengthDistribution got =
          RunLength.of(multirule(set, reading), Change.shift(shift)).inSets(set);
      String what = "multirule in sets of " + set + ", " + reading + ", shift " + shift;
      Expected.check(table, RunLengthDistribution.class, row, 3, got, what);
    }
  }

  /** Simulated by the file, 400 000 runs a row; four of its standard errors. */
  @Test
  void simulatedOutside() {
    Reference table = Reference.read("run-length-sets-simulated");
    int rows = table.at("/expected/rows").size();
    assertEquals(4 * 5 + 3, rows);
    for (int at = 0; at < rows; at++) {
      String row = "/expected/rows/" + at;
      int set = (int) table.number(row + "/1");
      String reading = table.at(row + "/2").asText();
      double shift = table.number(row + "/3");
      boolean daily = table.at(row + "/0").asText().equals("daily reading");
      Chart chart = daily ? chart("daily reading") : multirule(set, reading);
      table.check(
          daily ? DailyReading.class : Chart.Rules.class,
          "average in sets of " + set + ", " + chart + ", shift " + shift,
          row + "/4",
          RunLength.of(chart, Change.shift(shift)).inSets(set).average(),
          4 * table.number(row + "/5"));
    }
  }

  /**
   * The source does not say when it looks at rules of successive values. One way agrees within 2 %
   * with its figures, whose standard error in control is 1.5 %; the other two enclose them.
   */
  @Test
  void practitionersMultirule() {
    Reference table = Reference.read("practitioner-multirule");
    double[] shifts = table.numbers("/data/shifts", 5);
    for (int i = 0; i < shifts.length; i++) {
      Change change = Change.shift(shifts[i]);
      double each = sets("each value", change);
      double mixed = sets("4-1s and 10-x at end of set", change);
      double end = sets("end of set", change);
      double printed = table.number("/expected/average/" + i);
      table.check(
          RunLength.class,
          "runs of two, multirule, 4-1s and 10-x at the end of a run, shift " + shifts[i],
          "/expected/average/" + i,
          mixed,
          0.02 * printed);
      assertTrue(each <= mixed && mixed < end, "at " + shifts[i]);
      assertTrue(i == 4 || (each < printed && printed < end), "at " + shifts[i]);
      String own = "/crosscheck/own/";
      assertEquals(table.number(own + "each value/" + i), each, 1e-8 * each);
      assertEquals(table.number(own + "end of set/" + i), end, 1e-8 * end);
    }
    double inControl = sets("4-1s and 10-x at end of set", Change.none());
    double error = table.number("/data/standardErrorInControl");
    assertEquals(table.number("/expected/average/0"), inControl, error);
  }

  private static double sets(String reading, Change change) {
    return RunLength.of(multirule(2, reading), change).inSets(2).average();
  }

  /** Two in a row beyond, on whichever side: (1 + p)/p², p the chance of being beyond. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.7, -2})
  void closedFormOfTwoOfTwo(double shift) {
    for (double zone : new double[] {0.5, 2, 3.5}) {
      double p = 1 / RunLength.individuals(zone, shift);
      Evidence.own(
          Chart.Rules.class,
          "average, EitherSide 2 of 2 beyond " + zone + ", shift " + shift,
          "theory: (1 + p)/p²",
          (1 + p) / p / p,
          RunLength.of(Chart.rules(new EitherSide(2, 2, zone)), Change.shift(shift)).average(),
          1e-10);
    }
  }

  /** Sets of s are met with chance 1 − (1 − a)^s − (1 − b)^s + (1 − a − b)^s, each for itself. */
  @ParameterizedTest
  @ValueSource(ints = {2, 3, 7, 100, 9999})
  void closedFormOfOppositeAlone(int set) {
    double zone = set < 100 ? 1.5 : 3;
    for (double shift : new double[] {0, -0.6}) {
      double above = Chances.between(zone, Double.POSITIVE_INFINITY, shift);
      double below = Chances.between(Double.NEGATIVE_INFINITY, -zone, shift);
      double chance =
          1
              - Math.pow(1 - above, set)
              - Math.pow(1 - below, set)
              + Math.pow(1 - above - below, set);
      RunLengthDistribution values =
          RunLength.of(Chart.rules(new Opposite(set, zone)), Change.shift(shift));
      RunLengthDistribution got = values.inSets(set);
      Evidence.own(
          Chart.Rules.class,
          "average in sets, Opposite in sets of " + set + ", shift " + shift,
          "theory: geometric in sets",
          1 / chance,
          got.average(),
          1e-9);
      assertEquals(Math.sqrt(1 - chance) / chance, got.standardDeviation(), 1e-8 / chance);
      assertEquals(Math.ceil(Math.log(0.5) / Math.log1p(-chance)), got.quantile(0.5));
      assertEquals(1 - Math.pow(1 - chance, 9), got.chanceWithin(9), 1e-11);
      assertEquals(1 - Math.pow(1 - chance, 9), values.chanceWithin(9L * set), 1e-11);
      assertEquals(got.average(), values.average() / set, 1);
    }
  }

  /** Two values a set: the second gives the signal, so that the sets are twice as many values. */
  @Test
  void twoOppositeValuesAreWholeSets() {
    RunLengthDistribution got = RunLength.of(Chart.rules(new Opposite(2, 1)), Change.none());
    double chance = 2 * Math.pow(Chances.between(1, 40, 0), 2);
    Evidence.own(
        Chart.Rules.class,
        "average, Opposite in sets of 2 beyond 1",
        "theory: 2/(2q²)",
        2 / chance,
        got.average(),
        1e-11);
    assertEquals(2 * Math.sqrt(1 - chance) / chance, got.standardDeviation(), 1e-8);
    assertEquals(0, got.chanceWithin(1));
    assertEquals(chance, got.chanceWithin(2), 1e-14);
    assertEquals(chance, got.chanceWithin(3), 1e-14);
    assertEquals(2 * Math.ceil(Math.log(0.1) / Math.log1p(-chance)), got.quantile(0.9));
  }
}
