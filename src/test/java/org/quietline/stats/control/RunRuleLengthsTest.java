package org.quietline.stats.control;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.sample.Summary;

/** Run lengths simulated with the rules as they are, against published and outside ones. */
class RunRuleLengthsTest {

  private static double[] runLengths(RunRules rules, double shift, int trials, int set, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] lengths = new double[trials];
    for (int t = 0; t < trials; t++) {
      double[] u = {};
      int at = -1;
      for (int size = 32; at < 0; size *= 2) {
        int before = u.length;
        u = Arrays.copyOf(u, size);
        for (int i = before; i < size; i++) {
          u[i] = shift + Simulation.normal(random);
        }
        at =
            rules.find(ChartedSeries.of(u)).stream()
                .mapToInt(RunRules.Met::at)
                .findFirst()
                .orElse(-1);
      }
      lengths[t] = at / set + 1;
    }
    return lengths;
  }

  /** Simulated here with the rules as they are; the table is exact. Four standard errors. */
  @Test
  void publishedRunLengthsOfZoneRules() {
    Reference reference = Reference.read("arl-shewhart-runs-rules-champ-woodall-1987");
    List<RunRule> four = RunRules.fourZoneRules().rules();
    String[] sets = {"C12", "C13", "C14", "C1234"};
    for (String set : sets) {
      List<RunRule> rules = set.substring(1).chars().mapToObj(c -> four.get(c - '1')).toList();
      double[] lengths = runLengths(new RunRules(rules), 0, 250, 1, 100 + set.length());
      Summary summary = Summary.of(lengths);
      reference.check(
          RunRules.class,
          "simulated run length in control, " + set,
          "/expected/in_control_ARL/" + set,
          summary.mean(),
          4 * summary.deviation() / Math.sqrt(lengths.length));
    }
    double[] shifted = runLengths(RunRules.fourZoneRules(), 1, 1500, 1, 5);
    reference.check(
        RunRules.class,
        "simulated run length at one deviation, C1234",
        "/crosscheck/own/C1234/1.0",
        Summary.of(shifted).mean(),
        4 * Summary.of(shifted).deviation() / Math.sqrt(shifted.length));
  }

  /** Both sides simulated; four joint standard errors. */
  @Test
  void runLengthsOfTheMultirule() {
    Reference reference = Reference.read("multirule-run-lengths");
    int[] trials = {200, 600, 1500, 1500, 1500};
    for (int i = 0; i < trials.length; i++) {
      double shift = reference.number("/expected/rows/" + i + "/0");
      double error = reference.number("/expected/rows/" + i + "/2");
      double[] sets = runLengths(RunRules.multirule(2), shift, trials[i], 2, 77 + i);
      Summary summary = Summary.of(sets);
      reference.check(
          RunRules.class,
          "simulated sets of two until the multirule rejects, shift " + shift,
          "/expected/rows/" + i + "/1",
          summary.mean(),
          4 * Math.hypot(error, summary.deviation() / Math.sqrt(trials[i])));
    }
  }
}
