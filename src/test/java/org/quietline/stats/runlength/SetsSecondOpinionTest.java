package org.quietline.stats.runlength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Simulation;
import org.quietline.stats.control.DailyReading;
import org.quietline.stats.control.RunRule;
import org.quietline.stats.control.RunRule.Alternating;
import org.quietline.stats.control.RunRule.Beyond;
import org.quietline.stats.control.RunRule.EitherSide;
import org.quietline.stats.control.RunRule.Opposite;
import org.quietline.stats.control.RunRule.Outside;
import org.quietline.stats.control.RunRule.SameSide;
import org.quietline.stats.control.RunRule.Steady;
import org.quietline.stats.control.RunRule.Within;
import org.quietline.stats.control.RunRules;
import org.quietline.stats.runlength.RunLength.Start;
import org.quietline.stats.runlength.RunLengthDistribution.Way;
import org.quietline.stats.sample.Summary;

/**
 * Rules that look at either side or at sets, against whole series that are judged by the rules as
 * they are.
 */
class SetsSecondOpinionTest {
  private static final String HOW = "seeded series judged by RunRules";

  private static void compare(Class<?> subject, Chart chart, Change change, int set, int trials) {
    List<Chart.Rules> parts = chart.parts().map(Chart.Rules.class::cast).toList();
    double[] values = JudgedSeries.lengths(parts, change::mean, trials, 41);
    double[] sets = Arrays.stream(values).map(n -> Math.ceil(n / set)).toArray();
    RunLengthDistribution exact = RunLength.of(chart, change);
    assertEquals(new Way.Exact(), exact.way(), chart.toString());
    Summary seen = Summary.of(values);
    double error = seen.deviation() / Math.sqrt(trials);
    String what = chart + ", " + change;
    Evidence.own(
        subject, "average, " + what, HOW, seen.mean(), exact.average(), 4 * error / seen.mean());
    assertEquals(
        Summary.of(sets).mean(), exact.inSets(set).average(), 4 * error / set + 1e-9, what);
    for (int n : new int[] {1, 2, 3, 4, 9}) {
      int within = (int) Arrays.stream(values).filter(v -> v <= n).count();
      Simulation.assertShare(exact.chanceWithin(n), within, trials);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 4, 5})
  void multirule(int set) {
    for (double shift : new double[] {0, 1, -2}) {
      int trials = shift == 0 ? 250 : 2000;
      Chart chart = Chart.rules(RunRules.multirule(set));
      compare(Chart.Rules.class, chart, Change.shift(shift), set, trials);
    }
  }

  @Test
  void dailyReading() {
    Chart chart = Chart.rules(DailyReading.outOfControl());
    for (Change change :
        List.of(Change.none(), Change.shift(1.3), Change.drift(0.05), Change.drift(-0.2))) {
      int trials = change.equals(Change.none()) ? 400 : 2000;
      compare(DailyReading.class, chart, change, 1, trials);
    }
  }

  @Test
  void multiruleUnderDrift() {
    Chart chart = Chart.rules(RunRules.multirule(3));
    compare(Change.Drift.class, chart, Change.drift(0.1), 3, 2000);
    compare(Change.Drift.class, chart, Change.drift(-0.02), 3, 1000);
  }

  /** Rules of every kind drawn at random, in sets of their own and looked at in sets. */
  @Test
  void randomSetsOfRules() {
    SplittableRandom random = new SplittableRandom(3);
    for (int trial = 0; trial < 40; trial++) {
      RunRule[] each = {randomSetRule(random), randomSetRule(random), randomRule(random)};
      RunRule[] atEnd = {randomSetRule(random), randomRule(random)};
      int every = random.nextInt(1, 5);
      Chart chart = Chart.together(Chart.rules(each), Chart.rulesEvery(every, atEnd));
      double shift = random.nextDouble(-1.5, 1.5);
      compare(Chart.Rules.class, chart, Change.shift(shift), random.nextInt(1, 6), 1500);
    }
  }

  private static RunRule randomSetRule(SplittableRandom random) {
    int count = random.nextInt(1, 5);
    double zone = random.nextInt(1, 5) / 2.0;
    return random.nextBoolean()
        ? new EitherSide(count, random.nextInt(count, 8), zone)
        : new Opposite(random.nextInt(2, 8), zone);
  }

  private static RunRule randomRule(SplittableRandom random) {
    int count = random.nextInt(2, 5);
    double zone = random.nextInt(1, 5) / 2.0;
    return switch (random.nextInt(6)) {
      case 0 -> new Beyond(count, random.nextInt(count, 8), zone);
      case 1 -> new SameSide(count + 3);
      case 2 -> new Within(count + 1, zone);
      case 3 -> new Outside(count, zone);
      case 4 -> new Steady(count + 2);
      default -> new Alternating(count + 3);
    };
  }

  /** The program's own simulation of the same charts, whose quiet time ends with a set. */
  @Test
  void simulationOfRulesInSetsAgrees() {
    Chart[] charts = {
      Chart.rules(new Opposite(3, 1.2), new EitherSide(3, 4, 1.5)),
      Chart.together(
          Chart.rules(new Beyond(1, 1, 2.5), new Opposite(7, 1.8)),
          Chart.rulesEvery(3, new SameSide(4), new Steady(4), new Within(4, 1)))
    };
    int trials = 4000;
    for (Chart chart : charts) {
      for (double shift : new double[] {0, -0.8}) {
        RunLengthDistribution fresh = RunLength.of(chart, Change.shift(shift));
        RunLengthDistribution settled = RunLength.of(chart, Change.shift(shift), Start.SETTLED);
        near(fresh, RunLength.simulated(chart, Change.shift(shift), trials, 5));
        // 20 is no multiple of any of the sets
        near(settled, SimulatedRunLength.of(chart, n -> shift, 20, 0, trials, 6));
      }
    }
  }

  private static void near(RunLengthDistribution exact, RunLengthDistribution seen) {
    Way.Simulated way = assertInstanceOf(Way.Simulated.class, seen.way());
    assertEquals(seen.average(), exact.average(), 4 * way.averageError());
    RunLengthDistribution inThrees = seen.inSets(3);
    double error = assertInstanceOf(Way.Simulated.class, inThrees.way()).averageError();
    assertEquals(inThrees.average(), exact.inSets(3).average(), 4 * error);
    for (int n = 1; n < 8; n++) {
      int within = (int) Math.round(way.trials() * seen.chanceWithin(n));
      Simulation.assertShare(exact.chanceWithin(n), within, way.trials());
    }
  }

  /** Sets too large for a chain; none of 20 011 values ends without both sides seen: 3/(2q). */
  @Test
  void setsThatAreTooLargeAreSimulated() {
    Chart chart = Chart.rules(new Opposite(20_011, 2));
    RunLengthDistribution got = RunLength.of(chart, Change.none());
    Way.Simulated way = assertInstanceOf(Way.Simulated.class, got.way());
    assertEquals(100_000, way.trials());
    double q = Chances.between(2, 40, 0);
    Evidence.own(
        RunLength.class,
        "average, Opposite in a set without end",
        "theory: 3/(2q)",
        1.5 / q,
        got.average(),
        4 * way.averageError() / got.average());
    // a limit that alone would take too long does not stand in the way
    Chart beside = Chart.together(Chart.individuals(5), chart);
    near(
        RunLength.of(Chart.rules(new Opposite(9_999, 2)), Change.none()),
        RunLength.of(beside, Change.none()));
  }

  /** A chart of another kind beside rules that look at sets. */
  @Test
  void besideAWeightedMeanTheyAreSimulated() {
    Chart mean = Chart.weightedMean(0.2, 2.9);
    Chart rules = Chart.rules(RunRules.multirule(2));
    RunLengthDistribution got = RunLength.of(Chart.together(mean, rules), Change.shift(1));
    assertInstanceOf(Way.Simulated.class, got.way());
    assertTrue(got.average() < RunLength.of(rules, Change.shift(1)).average());
    assertTrue(got.average() < RunLength.of(mean, Change.shift(1)).average());
    RunLengthDistribution wide =
        RunLength.of(Chart.together(Chart.weightedMean(0.2, 9), rules), Change.shift(1));
    assertRelative(RunLength.of(rules, Change.shift(1)).average(), wide.average(), 0.015, "wide");
  }
}
