package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class RunRulesTest {

  private static final List<RunRule> ALL =
      List.of(
          new RunRule.Beyond(1, 1, 3),
          new RunRule.Beyond(2, 3, 2),
          new RunRule.Beyond(4, 5, 1),
          new RunRule.Beyond(10, 11, 0),
          new RunRule.EitherSide(2, 3, 2),
          new RunRule.Opposite(2, 2),
          new RunRule.SameSide(8),
          new RunRule.Steady(6),
          new RunRule.Alternating(8),
          new RunRule.Within(7, 1),
          new RunRule.Outside(4, 1));

  /** Values that are twice as far out meet rules that are twice as wide, where the others did. */
  @Test
  void widenedRulesAreMetInLargerUnits() {
    double[] u = Simulation.normal(new SplittableRandom(12), 2000);
    ChartedSeries series = ChartedSeries.of(u);
    ChartedSeries larger = ChartedSeries.of(Arrays.stream(u).map(x -> 2 * x).toArray());
    for (RunRule rule : ALL) {
      assertEquals(
          RunRules.of(rule).find(series).stream().map(RunRules.Met::points).toList(),
          RunRules.of(rule.widened(2)).find(larger).stream().map(RunRules.Met::points).toList(),
          rule.toString());
      assertEquals(rule, rule.widened(1));
    }
    assertEquals(new RunRule.EitherSide(2, 3, 1.5), ALL.get(4).widened(0.75));
    assertEquals(new RunRule.Opposite(2, 3), ALL.get(5).widened(1.5));
    assertEquals(new RunRule.Within(7, 2.5), ALL.get(9).widened(2.5));
  }

  /** Each hit with its points, found outside by a search that looks at every window afresh. */
  @Test
  void longSeriesWithRestartsAndLeftOutValues() {
    Reference reference = Reference.read("run-rule-series");
    ChartedSeries series =
        ChartedSeries.of(reference.numbers("/data/series", 240))
            .startingAnewAt(places(reference.at("/data/starts")))
            .leavingOut(places(reference.at("/data/leftOut")));
    List<String> expected = new ArrayList<>();
    for (JsonNode row : reference.at("/expected/rows")) {
      expected.add(row.get(0).asText() + " " + row.get(1) + " " + row.get(2));
    }
    List<RunRules.Met> found = new RunRules(ALL).find(series);
    assertEquals(
        expected.stream().sorted().toList(),
        found.stream()
            .map(m -> m.rule() + " " + m.at() + " " + m.points().toString().replace(" ", ""))
            .sorted()
            .toList());
    for (RunRule rule : ALL) {
      int hits = (int) found.stream().filter(m -> m.rule().equals(rule)).count();
      reference.check(
          RunRules.class, "values of a series that meet " + rule, "/expected/counts/" + rule, hits);
    }
    reference.check(
        ChartedSeries.class,
        "values of a series that meet the action limit",
        "/expected/counts/" + ALL.get(0),
        RunRules.of(ALL.get(0)).find(series).size());
  }

  private static int[] places(JsonNode node) {
    return IntStream.range(0, node.size()).map(i -> node.get(i).intValue()).toArray();
  }

  /** A second opinion written as text: letters for zones and steps, patterns at the end of it. */
  @RepeatedTest(24)
  void agreesWithPatternsOfText(RepetitionInfo repetition) {
    Random random = new Random(repetition.getCurrentRepetition());
    double scale = 0.6 + 0.1 * (repetition.getCurrentRepetition() % 12);
    double[] u =
        random.doubles(70, -1, 1).map(v -> Math.round(4 * scale * (v + v * v * v)) / 2.0).toArray();
    List<RunRules.Met> found = new RunRules(ALL).find(ChartedSeries.of(u));
    for (int at = 0; at < u.length; at++) {
      int place = at;
      for (RunRule rule : ALL) {
        assertEquals(
            byText(rule, Arrays.copyOf(u, at + 1)),
            found.stream().anyMatch(m -> m.at() == place && m.rule().equals(rule)),
            rule + " at " + at);
      }
    }
  }

  private static boolean byText(RunRule rule, double[] u) {
    StringBuilder zones = new StringBuilder();
    StringBuilder steps = new StringBuilder();
    for (int i = 0; i < u.length; i++) {
      int zone = (int) Math.min(3, Math.ceil(Math.abs(u[i])) - 1);
      zones.append(u[i] == 0 ? '0' : (char) ((u[i] > 0 ? 'a' : 'A') + zone));
      if (i > 0) {
        steps.append(u[i] > u[i - 1] ? '+' : u[i] < u[i - 1] ? '-' : '=');
      }
    }
    return switch (ALL.indexOf(rule)) {
      case 0 -> zones.toString().matches(".*[dD]");
      case 1 -> zones.toString().matches(".*([cd].?[cd]|[CD].?[CD])");
      case 2 -> allButOne(zones, 4, "[bcd]") || allButOne(zones, 4, "[BCD]");
      case 3 -> allButOne(zones, 10, "[a-d]") || allButOne(zones, 10, "[A-D]");
      case 4 -> zones.toString().matches(".*[cdCD].?[cdCD]");
      case 5 -> zones.toString().matches("(..)*([cd][CD]|[CD][cd])");
      case 6 -> zones.toString().matches(".*([a-d]{8}|[A-D]{8})");
      case 7 -> steps.toString().matches(".*(\\+{5}|-{5})");
      case 8 -> steps.toString().matches(".*((\\+-){3}\\+|(-\\+){3}-)");
      case 9 -> zones.toString().matches(".*[0aA]{7}");
      default -> zones.toString().matches(".*[b-dB-D]{4}");
    };
  }

  /** So many letters at the end, or the first of one more with any one letter between. */
  private static boolean allButOne(CharSequence zones, int count, String letter) {
    String whole = ".*" + letter + "{" + count + "}";
    String one = ".*" + letter + "(?=.{" + count + "}$)" + letter + "*." + letter + "+";
    return zones.toString().matches(whole) || zones.toString().matches(one);
  }

  @Test
  void namedSets() {
    assertEquals(
        List.of(
            new RunRule.Beyond(1, 1, 3),
            new RunRule.Beyond(2, 3, 2),
            new RunRule.Beyond(4, 5, 1),
            new RunRule.SameSide(8)),
        RunRules.fourZoneRules().rules());
    assertEquals(
        List.of(
            new RunRule.Beyond(1, 1, 3),
            new RunRule.SameSide(9),
            new RunRule.Steady(6),
            new RunRule.Alternating(14),
            new RunRule.Beyond(2, 3, 2),
            new RunRule.Beyond(4, 5, 1),
            new RunRule.Within(15, 1),
            new RunRule.Outside(8, 1)),
        RunRules.eightTests().rules());
    assertEquals(
        List.of(
            new RunRule.Beyond(1, 1, 3),
            new RunRule.Beyond(2, 2, 2),
            new RunRule.Opposite(4, 2),
            new RunRule.Beyond(4, 4, 1),
            new RunRule.SameSide(10)),
        RunRules.multirule(4).rules());
    assertEquals(4, RunRules.multirule().rules().size());
  }

  private static List<RunRules.Met> find(RunRule rule, double... u) {
    return RunRules.of(rule).find(ChartedSeries.of(u));
  }

  @Test
  void patternsEndWithTheLatestValueAndGoOn() {
    RunRule.Beyond twoOfThree = new RunRule.Beyond(2, 3, 2);
    // the third is inside: the pair before it is not met again
    assertEquals(
        List.of(new RunRules.Met(twoOfThree, 1, List.of(0, 1))),
        find(twoOfThree, 2.1, 2.2, 1, -2.5, 2.5));
    assertEquals(
        List.of(
            new RunRules.Met(twoOfThree, 1, List.of(0, 1)),
            new RunRules.Met(twoOfThree, 2, List.of(0, 1, 2))),
        find(twoOfThree, -2.1, -2.2, -2.3));
    RunRule.SameSide three = new RunRule.SameSide(3);
    assertEquals(
        List.of(
            new RunRules.Met(three, 4, List.of(2, 3, 4)),
            new RunRules.Met(three, 5, List.of(3, 4, 5))),
        find(three, 1, 0, 1, 1, 1, 1, -1));
  }

  @Test
  void whatIsFoundComesInTheOrderOfTheSeriesThenOfTheRules() {
    RunRule run = new RunRule.SameSide(3);
    RunRule far = new RunRule.Beyond(1, 1, 3);
    assertEquals(
        List.of(
            new RunRules.Met(far, 0, List.of(0)),
            new RunRules.Met(run, 2, List.of(0, 1, 2)),
            new RunRules.Met(far, 2, List.of(2))),
        RunRules.of(run, far).find(ChartedSeries.of(4, 1, 5)));
  }

  @Test
  void edgesAndTies() {
    assertTrue(find(new RunRule.Beyond(1, 1, 3), 3, -3).isEmpty());
    assertEquals(2, find(new RunRule.Beyond(1, 1, 3), Math.nextUp(3.0), -Math.nextUp(3.0)).size());
    assertTrue(find(new RunRule.Beyond(2, 2, 0), 0, 0, 1, 0, 1).isEmpty());
    assertTrue(find(new RunRule.EitherSide(1, 1, 2), 2, -2).isEmpty());
    assertEquals(1, find(new RunRule.EitherSide(2, 2, 2), 2.1, -2.1).size());
    assertEquals(1, find(new RunRule.Within(2, 1), 1, -1).size());
    assertTrue(find(new RunRule.Outside(2, 1), 1, -1, 1.5).isEmpty());
    assertEquals(1, find(new RunRule.Outside(2, 1), 1.1, -1.1).size());
    assertTrue(find(new RunRule.Steady(3), 1, 2, 2, 3).isEmpty());
    assertEquals(1, find(new RunRule.Steady(3), 3, 2, 1).size());
    assertTrue(find(new RunRule.Alternating(4), 1, 2, 2, 1, 2).isEmpty());
    assertEquals(1, find(new RunRule.Alternating(4), 1, 2, 1, 2).size());
    assertTrue(find(new RunRule.Opposite(2, 2), 2, -2.5, 2.5, -2).isEmpty());
    assertTrue(find(new RunRule.Opposite(2, 2), -2, 2.5).isEmpty());
  }

  @Test
  void setsAreCutFromTheStartAndLeftOutValuesKeepTheirPlace() {
    RunRule.Opposite opposite = new RunRule.Opposite(2, 2);
    assertEquals(
        List.of(new RunRules.Met(opposite, 1, List.of(0, 1))), find(opposite, 2.5, -2.5, 0, 0));
    assertTrue(find(opposite, 0, 2.5, -2.5, 0).isEmpty());
    ChartedSeries moved = ChartedSeries.of(0, 2.5, -2.5, 0).startingAnewAt(1);
    assertEquals(
        List.of(new RunRules.Met(opposite, 2, List.of(1, 2))), RunRules.of(opposite).find(moved));
    ChartedSeries left = ChartedSeries.of(0, 2.5, -2.5, 0).leavingOut(0);
    assertTrue(RunRules.of(opposite).find(left).isEmpty());
    RunRule.Opposite four = new RunRule.Opposite(4, 2);
    assertEquals(
        List.of(new RunRules.Met(four, 3, List.of(0, 1, 3))), find(four, 2.5, 3, 0, -2.5, 2.5));
  }

  @Test
  void noRuleReachesAcrossAStartAndLeftOutValuesAreNotThere() {
    RunRule.SameSide four = new RunRule.SameSide(4);
    ChartedSeries plain = ChartedSeries.of(1, 1, 1, -9, 1, 1);
    assertTrue(RunRules.of(four).find(plain).isEmpty());
    assertEquals(
        List.of(
            new RunRules.Met(four, 4, List.of(0, 1, 2, 4)),
            new RunRules.Met(four, 5, List.of(1, 2, 4, 5))),
        RunRules.of(four).find(plain.leavingOut(3)));
    assertEquals(List.of(), RunRules.of(four).find(plain.leavingOut(3).startingAnewAt(2)));
    // a start at a place left out still cuts
    assertEquals(List.of(), RunRules.of(four).find(plain.leavingOut(3).startingAnewAt(3)));
    assertTrue(RunRules.eightTests().find(ChartedSeries.of()).isEmpty());
  }

  @RepeatedTest(20)
  void cuttingAndLeavingOutAreWhatTheySay(RepetitionInfo repetition) {
    SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
    double[] u = Arrays.stream(Simulation.normal(random, 60)).map(v -> v * 1.6).toArray();
    int cut = 1 + random.nextInt(58);
    RunRules rules = RunRules.eightTests();
    List<RunRules.Met> apart = new ArrayList<>(rules.find(ChartedSeries.of(Arrays.copyOf(u, cut))));
    rules.find(ChartedSeries.of(Arrays.copyOfRange(u, cut, 60))).stream()
        .map(
            m ->
                new RunRules.Met(
                    m.rule(), m.at() + cut, m.points().stream().map(p -> p + cut).toList()))
        .forEach(apart::add);
    assertEquals(apart, rules.find(ChartedSeries.of(u).startingAnewAt(cut)));

    double[] without =
        IntStream.range(0, 60).filter(i -> i != cut).mapToDouble(i -> u[i]).toArray();
    assertEquals(
        rules.find(ChartedSeries.of(without)).stream()
            .map(m -> m.rule() + " " + m.points().stream().map(p -> p < cut ? p : p + 1).toList())
            .toList(),
        rules.find(ChartedSeries.of(u).leavingOut(cut)).stream()
            .map(m -> m.rule() + " " + m.points())
            .toList());
    double[] mirrored = Arrays.stream(u).map(v -> -v).toArray();
    assertEquals(rules.find(ChartedSeries.of(u)), rules.find(ChartedSeries.of(mirrored)));
  }

  @Test
  void standardisedSeries() {
    assertEquals(
        List.of(-1.0, 0.0, 2.0), ChartedSeries.standardised(10, 2, 8, 10, 14).deviations());
  }
}
