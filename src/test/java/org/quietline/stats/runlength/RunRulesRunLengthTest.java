package org.quietline.stats.runlength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.function.LongToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.control.RunRule;
import org.quietline.stats.control.RunRule.Alternating;
import org.quietline.stats.control.RunRule.Beyond;
import org.quietline.stats.control.RunRule.Outside;
import org.quietline.stats.control.RunRule.SameSide;
import org.quietline.stats.control.RunRule.Steady;
import org.quietline.stats.control.RunRule.Within;
import org.quietline.stats.sample.Summary;

class RunRulesRunLengthTest {
  private static final RunRule ONE = new Beyond(1, 1, 3);
  private static final RunRule TWO = new Beyond(2, 3, 2);
  private static final RunRule THREE = new Beyond(4, 5, 1);
  private static final RunRule FOUR = new SameSide(8);
  private static final RunRule[] EIGHT = {
    ONE,
    new SameSide(9),
    new Steady(6),
    new Alternating(14),
    TWO,
    THREE,
    new Within(15, 1),
    new Outside(8, 1)
  };
  private static final Map<String, List<RunRule>> SETS =
      Map.ofEntries(
          Map.entry("1", List.of(ONE)),
          Map.entry("12", List.of(ONE, TWO)),
          Map.entry("13", List.of(ONE, THREE)),
          Map.entry("14", List.of(ONE, FOUR)),
          Map.entry("123", List.of(ONE, TWO, THREE)),
          Map.entry("124", List.of(ONE, TWO, FOUR)),
          Map.entry("134", List.of(ONE, THREE, FOUR)),
          Map.entry("1234", List.of(ONE, TWO, THREE, FOUR)),
          Map.entry("1 and 9 on one side", List.of(ONE, new SameSide(9))),
          Map.entry("1 2 and 9 on one side", List.of(ONE, TWO, new SameSide(9))),
          Map.entry("1, 8 outside 1", List.of(ONE, new Outside(8, 1))),
          Map.entry("10 of 11 on one side", List.of(new Beyond(10, 11, 0))),
          Map.entry("6 of 8 beyond 0.5", List.of(new Beyond(6, 8, 0.5))));

  private static Chart set(String name) {
    return new Chart.Rules(Objects.requireNonNull(SETS.get(name), name));
  }

  private static Chart rules(RunRule... rules) {
    return Chart.rules(rules);
  }

  /** In control from memory, under shift computed by the file's own chain. */
  @Test
  void champAndWoodallsCombinations() {
    Reference table = Reference.read("arl-shewhart-runs-rules-champ-woodall-1987");
    int checked = 0;
    for (Iterator<String> keys = table.at("/data/combinations").fieldNames(); keys.hasNext(); ) {
      String key = keys.next();
      Chart chart = set(key.substring(1));
      double half = key.equals("C1") ? 0.05 : 0.005;
      table.check(
          Chart.Rules.class,
          "average, rules " + key.substring(1) + ", no shift",
          "/expected/in_control_ARL/" + key,
          RunLength.of(chart, Change.none()).average(),
          half);
      for (Iterator<String> shifts = table.at("/crosscheck/own/" + key).fieldNames();
          shifts.hasNext(); ) {
        String shift = shifts.next();
        assertEquals(
            table.number("/crosscheck/own/" + key + "/" + shift),
            RunLength.of(chart, Change.shift(Double.parseDouble(shift))).average(),
            0.0051,
            key + " at " + shift);
        checked++;
      }
    }
    assertEquals(88, checked);
  }

  @Test
  void wholeDistributionOfSetsOfRules() {
    Reference table = Reference.read("run-length-rules");
    int rows = table.at("/expected/rows").size();
    assertEquals(13 * 11, rows);
    for (int at = 0; at < rows; at++) {
      String row = "/expected/rows/" + at;
      String set = table.at(row + "/0").asText();
      double shift = table.number(row + "/1");
      Expected.check(
          table,
          Chart.Rules.class,
          row,
          2,
          RunLength.of(set(set), Change.shift(shift)),
          "rules " + set + ", shift " + shift);
    }
  }

  @Test
  void streaksWithinAndOutside() {
    Reference table = Reference.read("run-length-streaks");
    for (int at = 0; at < 12; at++) {
      String row = "/expected/rows/" + at;
      int count = (int) table.number(row + "/1");
      double zone = table.number(row + "/2");
      double shift = table.number(row + "/3");
      RunRule rule =
          table.at(row + "/0").asText().equals("within")
              ? new Within(count, zone)
              : new Outside(count, zone);
      table.check(
          Chart.Rules.class,
          "average, " + rule + ", shift " + shift,
          row + "/4",
          RunLength.of(rules(rule), Change.shift(shift)).average());
    }
    assertEquals(12, table.at("/expected/rows").size());
  }

  /** Steady and alternating values: exact fractions in the file, quadrature in the program. */
  @Test
  void comparedValues() {
    Reference table = Reference.read("run-length-comparisons");
    int at = 0;
    for (double[] row : table.rows("/expected/rows", 6)) {
      Chart chart =
          row[1] == 0
              ? rules(new Steady((int) row[0]))
              : row[0] == 0
                  ? rules(new Alternating((int) row[1]))
                  : rules(new Steady((int) row[0]), new Alternating((int) row[1]));
      for (double shift : new double[] {0, 1.7}) {
        RunLengthDistribution got = RunLength.of(chart, Change.shift(shift));
        table.check(
            Chart.Rules.class,
            "average, " + chart + ", shift " + shift,
            "/expected/rows/" + at + "/2",
            got.average());
        assertEquals(row[3], got.chanceWithin(10), 1e-12);
        assertEquals(row[4], got.chanceWithin(20), 1e-12);
        assertEquals(row[5], got.chanceWithin(40), 1e-12);
      }
      at++;
    }
  }

  /** The practitioner's figures: all eight rules 74 give or take 1.3, 10.0 after a shift of 1. */
  @Test
  void allEightRules() {
    RunLengthDistribution none = RunLength.of(rules(EIGHT), Change.none());
    RunLengthDistribution shifted = RunLength.of(rules(EIGHT), Change.shift(1));
    assertEquals(new RunLengthDistribution.Way.Exact(), none.way());
    assertEquals(74, none.average(), 4 * 1.3);
    for (RunLengthDistribution exact : List.of(none, shifted)) {
      double shift = exact == none ? 0 : 1;
      double[] lengths = naive(EIGHT, n -> shift, 6000, 17);
      Summary seen = Summary.of(lengths);
      double error = seen.deviation() / Math.sqrt(lengths.length);
      assertEquals(seen.mean(), exact.average(), 4 * error);
      Evidence.own(
          Chart.Rules.class,
          "average, all eight rules, shift " + shift,
          "6000 seeded series, windows judged anew",
          seen.mean(),
          exact.average(),
          4 * error / seen.mean());
    }
  }

  @ParameterizedTest
  @CsvSource({"0.02", "0.1", "-0.3"})
  void rulesUnderDrift(double drift) {
    RunRule[] rules = {ONE, TWO, new Steady(5), new SameSide(7), new Within(9, 1.2)};
    double[] lengths = naive(rules, n -> drift * n, 5000, 23);
    Summary seen = Summary.of(lengths);
    RunLengthDistribution got = RunLength.of(rules(rules), Change.drift(drift));
    double error = seen.deviation() / Math.sqrt(lengths.length);
    Evidence.own(
        Change.Drift.class,
        "average, rules with steady values, drift " + drift,
        "5000 seeded series, windows judged anew",
        seen.mean(),
        got.average(),
        4 * error / seen.mean());
    assertEquals(seen.deviation(), got.standardDeviation(), 0.06 * seen.deviation());
    Simulation.assertShare(
        got.chanceWithin(10),
        (int) Arrays.stream(lengths).filter(n -> n <= 10).count(),
        lengths.length);
  }

  /** Rules drawn at random, exact against series whose windows are judged anew. */
  @Test
  void randomSetsOfRules() {
    SplittableRandom random = new SplittableRandom(2);
    for (int trial = 0; trial < 25; trial++) {
      RunRule[] rules = new RunRule[random.nextInt(2, 5)];
      for (int i = 0; i < rules.length; i++) {
        rules[i] = randomRule(random);
      }
      double shift = random.nextDouble(-1.5, 1.5);
      double[] lengths = naive(rules, n -> shift, 2500, trial);
      Summary seen = Summary.of(lengths);
      RunLengthDistribution got = RunLength.of(rules(rules), Change.shift(shift));
      String what = Arrays.toString(rules) + " at " + shift;
      assertEquals(
          seen.mean(), got.average(), 4.5 * seen.deviation() / Math.sqrt(lengths.length), what);
      assertEquals(new RunLengthDistribution.Way.Exact(), got.way());
    }
  }

  private static RunRule randomRule(SplittableRandom random) {
    int count = random.nextInt(2, 5);
    double zone = random.nextInt(1, 5) / 2.0;
    return switch (random.nextInt(6)) {
      case 0 -> new Beyond(count, random.nextInt(count, 8), zone);
      case 1 -> new SameSide(count + 3);
      case 2 -> new Within(count + 1, zone);
      case 3 -> new Outside(count, zone);
      case 4 -> new Steady(count + 1);
      default -> new Alternating(count + 2);
    };
  }

  /** Follows series value by value and judges every window from scratch. */
  private static double[] naive(RunRule[] rules, LongToDoubleFunction mean, int trials, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] lengths = new double[trials];
    double[] x = new double[100_000];
    for (int trial = 0; trial < trials; trial++) {
      int n = 0;
      boolean met = false;
      while (!met) {
        x[n] = mean.applyAsDouble(n + 1) + Simulation.normal(random);
        n++;
        for (RunRule rule : rules) {
          met |= met(rule, x, n);
        }
      }
      lengths[trial] = n;
    }
    return lengths;
  }

  private static boolean met(RunRule rule, double[] x, int n) {
    double last = x[n - 1];
    if (rule instanceof Beyond beyond) {
      int hits = 0;
      for (int i = Math.max(0, n - beyond.of()); i < n; i++) {
        hits += x[i] * Math.signum(last) > beyond.zone() ? 1 : 0;
      }
      return Math.abs(last) > beyond.zone() && hits >= beyond.count();
    }
    if (n < rule.span()) {
      return false;
    }
    boolean all = true;
    for (int i = n - rule.span(); i < n; i++) {
      if (rule instanceof SameSide) {
        all &= x[i] * last > 0;
      } else if (rule instanceof Within within) {
        all &= Math.abs(x[i]) < within.zone();
      } else if (rule instanceof Outside outside) {
        all &= Math.abs(x[i]) > outside.zone();
      } else if (rule instanceof Steady && i < n - 1) {
        all &= (x[i + 1] - x[i]) * (last - x[n - 2]) > 0;
      } else if (rule instanceof Alternating && i < n - 2) {
        all &= (x[i + 2] - x[i + 1]) * (x[i + 1] - x[i]) < 0;
      }
    }
    return all;
  }

  @Test
  void allFourZoneRulesNeedFewStates() {
    ZoneChain chain = ZoneChain.of(List.of(Chart.rules(ONE, TWO, THREE, FOUR))).orElseThrow();
    assertTrue(chain.states() < 500, () -> "states " + chain.states());
    assertEquals(8, ZoneChain.of(List.of(Chart.rules(new Within(8, 1)))).orElseThrow().states());
    assertEquals(15, ZoneChain.of(List.of(Chart.rules(FOUR))).orElseThrow().states());
  }

  @Test
  void aRuleMoreSignalsSooner() {
    double before = Double.POSITIVE_INFINITY;
    for (int count = 1; count <= EIGHT.length; count++) {
      RunRule[] some = Arrays.copyOf(EIGHT, count);
      double average = RunLength.of(rules(some), Change.shift(0.3)).average();
      assertTrue(average < before, count + " rules");
      before = average;
    }
  }

  @Test
  void shiftsEitherWayAreAlike() {
    for (Chart chart : List.of(rules(ONE, TWO, FOUR), rules(ONE, new Steady(5)))) {
      assertRelative(
          RunLength.of(chart, Change.shift(0.7)).average(),
          RunLength.of(chart, Change.shift(-0.7)).average(),
          1e-11,
          chart.toString());
    }
  }

  /** Two on one side at once: the sides must take turns, and so the chances do. */
  @Test
  void chancesThatTakeTurns() {
    double up = 0.5 * (1 + 0.6826894921370859);
    RunLengthDistribution got = RunLength.of(rules(new SameSide(2)), Change.shift(1));
    double p = up;
    double q = 1 - up;
    // from one up: 1 + q·(1 + p·…); from one down: the other way round
    double fromUp = (1 + q) / (1 - p * q);
    double fromDown = (1 + p) / (1 - p * q);
    assertRelative(1 + p * fromUp + q * fromDown, got.average(), 1e-13, "average");
    assertRelative(1 - 2 * Math.pow(p * q, 30), got.chanceWithin(60), 1e-15, "within 60");
    double quiet = 2 * Math.pow(p * q, 15);
    assertEquals(30, got.quantile(1 - 1.1 * quiet));
    assertEquals(31, got.quantile(1 - 0.9 * quiet));
    assertEquals(29, got.quantile(1 - 4 * quiet));
  }

  /** So many on one side take 2^c − 1 values on average; nothing can signal before the c-th. */
  @Test
  void longRunsOnOneSide() {
    for (int count : new int[] {2, 8, 20, 40, 60, 200}) {
      RunLengthDistribution got = RunLength.of(rules(new SameSide(count)), Change.none());
      Evidence.own(
          Chart.Rules.class,
          "average, " + count + " on one side",
          "theory: 2^c − 1",
          Math.pow(2, count) - 1,
          got.average(),
          1e-10);
      assertEquals(0, got.chanceWithin(count - 1L));
      assertRelative(Math.pow(2, 1 - count), got.chanceWithin(count), 1e-12, "first chance");
    }
    RunLengthDistribution never = RunLength.of(rules(new Within(5, 1)), Change.shift(60));
    assertEquals(Double.POSITIVE_INFINITY, never.average());
    assertEquals(Double.POSITIVE_INFINITY, never.quantile(0.01));
    assertEquals(0, never.chanceWithin(Long.MAX_VALUE / 2));
  }

  @Test
  void settledRulesForgetTheStart() {
    Chart chart = rules(ONE, new SameSide(8));
    double fresh = RunLength.of(chart, Change.none()).average();
    double settled = RunLength.of(chart, Change.none(), RunLength.Start.SETTLED).average();
    assertTrue(settled < fresh);
    // settled, the chance of a signal is the same at every value
    RunLengthDistribution still = RunLength.of(chart, Change.none(), RunLength.Start.SETTLED);
    double chance = 1 / still.average();
    assertRelative(chance, still.chanceWithin(1), 1e-9, "first");
    assertRelative(Math.sqrt(1 - chance) / chance, still.standardDeviation(), 1e-9, "deviation");
  }
}
