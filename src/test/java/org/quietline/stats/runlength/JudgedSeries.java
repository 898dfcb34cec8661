package org.quietline.stats.runlength;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.function.LongToDoubleFunction;
import org.quietline.stats.Simulation;
import org.quietline.stats.control.ChartedSeries;
import org.quietline.stats.control.RunRules;

/** Run lengths the slow way: whole series are drawn and then judged by the rules as they are. */
final class JudgedSeries {
  private JudgedSeries() {}

  /** Values until the first signal of charts that are watched together. */
  static double[] lengths(
      List<Chart.Rules> charts, LongToDoubleFunction mean, int trials, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] lengths = new double[trials];
    for (int trial = 0; trial < trials; trial++) {
      double[] u = {};
      OptionalInt at = OptionalInt.empty();
      for (int size = 16; at.isEmpty(); size *= 2) {
        int before = u.length;
        u = Arrays.copyOf(u, size);
        for (int i = before; i < size; i++) {
          u[i] = mean.applyAsDouble(i + 1) + Simulation.normal(random);
        }
        at = first(charts, ChartedSeries.of(u));
      }
      lengths[trial] = at.getAsInt() + 1;
    }
    return lengths;
  }

  private static OptionalInt first(List<Chart.Rules> charts, ChartedSeries series) {
    return charts.stream()
        .flatMapToInt(
            chart ->
                new RunRules(chart.rules())
                    .find(series).stream()
                        .mapToInt(RunRules.Met::at)
                        .filter(at -> (at + 1) % chart.every() == 0))
        .min();
  }
}
