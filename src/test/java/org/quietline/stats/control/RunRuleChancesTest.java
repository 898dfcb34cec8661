package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;

/** How often each rule is met by chance, counted over everything a window can hold. */
class RunRuleChancesTest {

  private static RunRule rule(JsonNode row) {
    int count = row.get(1).intValue();
    int of = row.get(2).intValue();
    double zone = row.get(3).doubleValue();
    return switch (row.get(0).asText()) {
      case "Beyond" -> new RunRule.Beyond(count, of, zone);
      case "EitherSide" -> new RunRule.EitherSide(count, of, zone);
      case "Opposite" -> new RunRule.Opposite(count, zone);
      case "SameSide" -> new RunRule.SameSide(count);
      case "Within" -> new RunRule.Within(count, zone);
      default -> new RunRule.Outside(count, zone);
    };
  }

  /** A value a window can hold, and its chance. */
  private record Zone(double value, double chance) {}

  /** Every sequence of zones that a window can hold, weighted with its chance. */
  @Test
  void chanceOfEachZoneRuleByEnumeration() {
    Reference reference = Reference.read("run-rule-chances");
    JsonNode rows = reference.at("/expected/rows");
    assertEquals(12, rows.size());
    for (int i = 0; i < rows.size(); i++) {
      RunRule rule = rule(rows.get(i));
      List<Zone> zones = zones(rule, rows.get(i).get(3).doubleValue());
      double met = enumerate(rule, zones, new double[rule.span()], 0, 1);
      reference.check(RunRule.class, "chance of " + rule, "/expected/rows/" + i + "/4", met);
    }
  }

  /** What a rule tells apart: sides of the centre, sides of its zone, or both. */
  private static List<Zone> zones(RunRule rule, double zone) {
    double tail = Normal.above(zone);
    if (zone == 0) {
      return List.of(new Zone(-1, 0.5), new Zone(1, 0.5));
    }
    if (rule instanceof RunRule.Within || rule instanceof RunRule.Outside) {
      return List.of(new Zone(zone - 0.5, 1 - 2 * tail), new Zone(zone + 0.5, 2 * tail));
    }
    return List.of(
        new Zone(-zone - 0.5, tail),
        new Zone(-zone + 0.5, 0.5 - tail),
        new Zone(zone - 0.5, 0.5 - tail),
        new Zone(zone + 0.5, tail));
  }

  private static double enumerate(
      RunRule rule, List<Zone> zones, double[] window, int filled, double chance) {
    if (filled == window.length) {
      int last = window.length - 1;
      boolean met =
          RunRules.of(rule).find(ChartedSeries.of(window)).stream().anyMatch(m -> m.at() == last);
      return met ? chance : 0;
    }
    double sum = 0;
    for (Zone zone : zones) {
      window[filled] = zone.value();
      sum += enumerate(rule, zones, window, filled + 1, chance * zone.chance());
    }
    return sum;
  }

  /** Orders of n different values; the alternating ones are counted by Euler's zigzag numbers. */
  @Test
  void ordersThatMeetSteadyAndAlternatingRules() {
    Reference reference = Reference.read("run-rule-chances");
    JsonNode rows = reference.at("/expected/permutations");
    int checked = 0;
    for (int i = 0; i < rows.size(); i++) {
      int count = rows.get(i).get(1).intValue();
      RunRule rule =
          rows.get(i).get(0).asText().equals("Steady")
              ? new RunRule.Steady(count)
              : new RunRule.Alternating(count);
      String pointer = "/expected/permutations/" + i;
      if (count <= 7) {
        int met = permutations(rule, new double[count], 0, new boolean[count]);
        reference.check(RunRule.class, "orders that meet " + rule, pointer + "/2", met);
        checked++;
      } else {
        // 14! orders are too many; a share of a seeded sample stands for them
        SplittableRandom random = new SplittableRandom(14);
        double chance = rows.get(i).get(2).doubleValue() / rows.get(i).get(3).doubleValue();
        int trials = 30_000;
        int met = 0;
        for (int t = 0; t < trials; t++) {
          double[] window = random.doubles(count).toArray();
          met += RunRules.of(rule).find(ChartedSeries.of(window)).size();
        }
        Simulation.assertShare(chance, met, trials);
      }
    }
    assertEquals(7, checked);
  }

  private static int permutations(RunRule rule, double[] window, int filled, boolean[] used) {
    if (filled == window.length) {
      return RunRules.of(rule).find(ChartedSeries.of(window)).size();
    }
    int met = 0;
    for (int v = 0; v < used.length; v++) {
      if (!used[v]) {
        used[v] = true;
        window[filled] = v - 2;
        met += permutations(rule, window, filled + 1, used);
        used[v] = false;
      }
    }
    return met;
  }
}
