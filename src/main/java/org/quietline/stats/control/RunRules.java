package org.quietline.stats.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.quietline.stats.numeric.Require;

/**
 * A set of run rules, and where a series meets them.
 *
 * <p>A rule is met at a value only by a pattern that ends there; while a pattern goes on, every
 * further value meets the rule again. Counting starts anew at the marked places, so no pattern
 * reaches across one. A left-out value is never counted and never breaks a run. A value on the
 * centre is on neither side and breaks a run on one side; equal neighbours break a steady or an
 * alternating run; a value on the edge of a zone is inside it. After a start, rules of some among
 * several are met as soon as the some are there.
 *
 * <p>Every rule added raises the false alarms: with the four zone rules a series in control meets
 * one on average after 92 values, with the action limit alone after 370 (Champ and Woodall (1987),
 * Technometrics 29, 393–399).
 *
 * @param rules the rules, at least one, none twice
 */
public record RunRules(List<RunRule> rules) {

  /**
   * Checks and copies.
   *
   * @param rules the rules
   * @throws IllegalArgumentException if there is none or one is there twice
   */
  public RunRules {
    rules = List.copyOf(rules);
    Require.atLeast(rules.size(), 1, "number of rules");
    for (RunRule rule : rules) {
      if (rules.indexOf(rule) != rules.lastIndexOf(rule)) {
        throw new IllegalArgumentException("rule given twice: " + rule);
      }
    }
  }

  /**
   * A rule that a series meets at one of its values.
   *
   * @param rule which rule
   * @param at the place of the value, from 0, at which the pattern ends
   * @param points the places of the values that make the pattern, ascending, {@code at} the last;
   *     for some among several only those beyond the zone
   */
  public record Met(RunRule rule, int at, List<Integer> points) {
    /**
     * Copies.
     *
     * @param rule which rule
     * @param at where the pattern ends
     * @param points the values that make it
     */
    public Met {
      points = List.copyOf(points);
    }
  }

  /**
   * A set of rules.
   *
   * @param rules the rules, at least one, none twice
   * @return the set
   * @throws IllegalArgumentException if there is none or one is there twice
   */
  public static RunRules of(RunRule... rules) {
    return new RunRules(List.of(rules));
  }

  /**
   * The four zone rules: one value beyond three deviations, two of three beyond two, four of five
   * beyond one, each on one side, and eight in a row on one side of the centre. Source: Western
   * Electric, Statistical Quality Control Handbook (1956), pages 25–27.
   *
   * @return the set
   */
  public static RunRules fourZoneRules() {
    return of(
        new RunRule.Beyond(1, 1, 3),
        new RunRule.Beyond(2, 3, 2),
        new RunRule.Beyond(4, 5, 1),
        new RunRule.SameSide(8));
  }

  /**
   * The eight tests: one beyond three deviations; nine in a row on one side; six in a row rising or
   * falling; fourteen in turn up and down; two of three beyond two and four of five beyond one on
   * one side; fifteen within one; eight in a row outside one, on either side. The third adds more
   * false alarms than power (Davis and Woodall (1988), J. Qual. Technol. 20, 260–262). Source:
   * Nelson (1984), J. Qual. Technol. 16, 237–239; ISO 7870-2:2013, annex.
   *
   * @return the set
   */
  public static RunRules eightTests() {
    return of(
        new RunRule.Beyond(1, 1, 3),
        new RunRule.SameSide(9),
        new RunRule.Steady(6),
        new RunRule.Alternating(14),
        new RunRule.Beyond(2, 3, 2),
        new RunRule.Beyond(4, 5, 1),
        new RunRule.Within(15, 1),
        new RunRule.Outside(8, 1));
  }

  /**
   * The rejection rules of the multirule chart for values taken in sets: one beyond three
   * deviations (1-3s), two in a row beyond two on one side (2-2s), within a set one beyond two on
   * each side (R-4s), four in a row beyond one on one side (4-1s), ten in a row on one side (10-x).
   * Its warning of one value beyond two deviations (1-2s) only says that the rules are to be looked
   * at, and is left out. In a row means successive values whatever their set. R-4s in its first
   * form, one value above and one below, not a difference of four deviations. For values taken one
   * at a time use {@link #multirule()}. Source: Westgard, Barry, Hunt and Groth (1981), Clin. Chem.
   * 27, 493–501 (from memory).
   *
   * @param set how many values are taken together, at least 2
   * @return the set of rules
   * @throws IllegalArgumentException if the set is below 2
   */
  public static RunRules multirule(int set) {
    List<RunRule> rules = new ArrayList<>(multirule().rules);
    rules.add(2, new RunRule.Opposite(set, 2));
    return new RunRules(rules);
  }

  /**
   * The multirule chart for values taken one at a time, where R-4s, which compares values taken
   * together, has no meaning. Source: {@link #multirule(int)}.
   *
   * @return the set of rules
   */
  public static RunRules multirule() {
    return of(
        new RunRule.Beyond(1, 1, 3),
        new RunRule.Beyond(2, 2, 2),
        new RunRule.Beyond(4, 4, 1),
        new RunRule.SameSide(10));
  }

  /**
   * Finds where the rules are met.
   *
   * @param series the series
   * @return every rule at every value that meets it, in the order of the series and at one value in
   *     the order of the rules
   */
  public List<Met> find(ChartedSeries series) {
    List<Met> found = new ArrayList<>();
    for (ChartedSeries.Stretch stretch : series.stretches()) {
      for (RunRule rule : rules) {
        findIn(series, stretch, rule, found);
      }
    }
    found.sort(Comparator.comparingInt(Met::at));
    return List.copyOf(found);
  }

  private static void findIn(
      ChartedSeries series, ChartedSeries.Stretch stretch, RunRule rule, List<Met> found) {
    List<Integer> counted = stretch.counted();
    double[] u = counted.stream().mapToDouble(series.deviations()::get).toArray();
    for (int last = 0; last < counted.size(); last++) {
      int from = Math.max(0, last - rule.span() + 1);
      if (rule instanceof RunRule.Opposite opposite) {
        int place = counted.get(last) - stretch.first();
        int setBegins = counted.get(last) - place % opposite.set();
        while (counted.get(from) < setBegins) {
          from++;
        }
      }
      List<Integer> pattern = RunPattern.of(rule, Arrays.copyOfRange(u, from, last + 1));
      if (!pattern.isEmpty()) {
        List<Integer> places = counted.subList(from, last + 1);
        found.add(new Met(rule, counted.get(last), pattern.stream().map(places::get).toList()));
      }
    }
  }
}
