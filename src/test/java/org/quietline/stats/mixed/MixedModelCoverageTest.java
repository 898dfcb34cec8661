package org.quietline.stats.mixed;

import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.stats.Coverage;
import org.quietline.stats.Simulation;

/** How often the intervals of the mixed models hold the truth. */
class MixedModelCoverageTest {
  private static final double[] DAYS = {1, 8, 15, 22, 29};
  private static final double SQUARES = 490;

  /**
   * Five results a window; spreads of height and slope as variance ratios, that of the slope times
   * the squared days about their mean. Where slopes do not differ, or hardly, the intervals are
   * wide.
   */
  @ParameterizedTest
  @CsvSource({
    "3, 1, 0, 95, 100", "3, 1, 1, 95, 99", "3, 1, 4, 93, 97", "3, 1, 25, 92, 97",
    "6, 1, 0, 94, 99", "6, 1, 1, 94, 97", "6, 1, 4, 93.5, 96.5", "6, 1, 25, 93.5, 96.5",
    "12, 1, 0, 94, 98.5", "12, 1, 1, 93.5, 96.5", "12, 1, 4, 93.5, 96.5", "12, 1, 25, 93.5, 96.5",
    "6, 16, 0, 95, 99.5", "6, 16, 1, 93.5, 97.5", "12, 0, 0, 94, 97.5", "12, 0, 1, 93.5, 96.5"
  })
  void linesOfWindows(int windows, double height, double slope, double least, double most) {
    int trials = Coverage.trials(150, 20_000);
    SplittableRandom random = new SplittableRandom(windows * 1000L + (long) (10 * height + slope));
    int[] held = new int[5];
    double a = Math.sqrt(height);
    double b = Math.sqrt(slope / SQUARES);
    for (int i = 0; i < trials; i++) {
      double[] t = new double[5 * windows];
      double[] y = new double[t.length];
      int[] groups = new int[t.length];
      double[] own = new double[2];
      for (int j = 0; j < t.length; j++) {
        if (j % 5 == 0) {
          own = new double[] {a * Simulation.normal(random), b * Simulation.normal(random)};
        }
        t[j] = DAYS[j % 5];
        groups[j] = j / 5;
        y[j] = own[0] + own[1] * t[j] + Simulation.normal(random);
      }
      GroupedLines lines = GroupedLines.fit(GroupedPoints.of(t, y, groups), LineSpread.INDEPENDENT);
      double last = own[0] + 30 * own[1];
      double next = a * Simulation.normal(random) + 30 * b * Simulation.normal(random);
      double error = Simulation.normal(random);
      held[0] += lines.slope().interval(0.95).contains(0) ? 1 : 0;
      held[1] += lines.averageAt(30).interval(0.95).contains(0) ? 1 : 0;
      held[2] += lines.groupLineAt(windows - 1, 30).interval(0.95).contains(last) ? 1 : 0;
      held[3] += lines.newLineAt(30).interval(0.95).contains(next) ? 1 : 0;
      held[4] += lines.newValueAt(30).interval(0.95).contains(next + error) ? 1 : 0;
    }
    String size =
        String.format(Locale.ROOT, "%d windows x 5, ratios %.0f and %.0f", windows, height, slope);
    Class<?> subject = GroupedLines.class;
    Coverage.check(subject, "slope", size, 0.95, held[0], trials, least / 100, most / 100);
    Coverage.check(subject, "average line", size, 0.95, held[1], trials, 0.925, 1);
    Coverage.check(subject, "group's line", size, 0.95, held[2], trials, 0.935, 1);
    Coverage.check(subject, "new line", size, 0.95, held[3], trials, 0.925, 1);
    Coverage.check(subject, "new value", size, 0.95, held[4], trials, 0.925, 0.995);
  }

  /** Two runs of two readings in each group, or 1 to 4 runs of 1 to 3 readings. */
  @ParameterizedTest
  @CsvSource({
    "3, false, 0, 0", "3, false, 1, 1", "3, false, 10, 1", "6, false, 0, 1", "6, false, 1, 0",
    "6, false, 1, 1", "6, false, 10, 1", "12, false, 0, 0", "12, false, 1, 1", "12, false, 10, 1",
    "3, true, 1, 1", "6, true, 1, 1", "6, true, 10, 1", "12, true, 1, 1"
  })
  void componentsOfNestedGroups(int groups, boolean unequal, double outer, double inner) {
    int trials = Coverage.trials(200, 5_000);
    SplittableRandom random = new SplittableRandom(groups * 100L + (long) (7 * outer + inner));
    int[] sizes = sizes(groups, unequal);
    int[][] labels = labels(groups, sizes);
    int[] held = new int[5];
    double[][] draws = new double[0][];
    for (int i = 0; i < trials; i++) {
      double[] y = nested(random, labels, Math.sqrt(outer), Math.sqrt(inner));
      VarianceComponents found = VarianceComponents.fit(y, NestedGroups.of(labels[0], labels[1]));
      draws = draws.length == 0 ? found.draws(503, 194) : draws;
      PivotalComponents pivotal = found.pivotal(draws);
      held[0] += pivotal.interval(0.95, 1, 1, 1).contains(outer + inner + 1) ? 1 : 0;
      held[1] += pivotal.interval(0.95, 1, 0, 0).contains(outer) ? 1 : 0;
      held[2] += pivotal.interval(0.95, 0, 1, 0).contains(inner) ? 1 : 0;
      held[3] += pivotal.interval(0.95, 0, 0, 1).contains(1) ? 1 : 0;
      held[4] += found.coefficient(0).interval(0.95).contains(0) ? 1 : 0;
    }
    String size =
        String.format(
            Locale.ROOT,
            "%d groups%s, components %.0f, %.0f, 1",
            groups,
            unequal ? " of unequal size" : " x 2 x 2",
            outer,
            inner);
    Class<?> subject = PivotalComponents.class;
    Coverage.check(subject, "sum", size, 0.95, held[0], trials, 0.935, 0.98);
    Coverage.check(subject, "outer component", size, 0.95, held[1], trials, 0.935, 0.98);
    Coverage.check(subject, "inner component", size, 0.95, held[2], trials, 0.935, 0.98);
    Coverage.check(subject, "residual", size, 0.95, held[3], trials, 0.935, 0.965);
    Coverage.check(VarianceComponents.class, "mean", size, 0.95, held[4], trials, 0.935, 1);
  }

  /** For each run its readings; runs of a group stand together. */
  private static int[] sizes(int groups, boolean unequal) {
    int[] sizes = new int[4 * groups];
    for (int run = 0; run < sizes.length; run++) {
      int group = run / 4;
      int place = run % 4;
      int runs = unequal ? 1 + 2 * group % 4 : 2;
      int readings = unequal ? 1 + (group + place) % 2 + (place == 0 ? 1 : 0) : 2;
      sizes[run] = place < runs ? readings : 0;
    }
    return sizes;
  }

  private static int[][] labels(int groups, int[] sizes) {
    int n = java.util.Arrays.stream(sizes).sum();
    int[][] labels = new int[2][n];
    int place = 0;
    for (int run = 0; run < 4 * groups; run++) {
      for (int i = 0; i < sizes[run]; i++, place++) {
        labels[0][place] = run / 4;
        labels[1][place] = run;
      }
    }
    return labels;
  }

  private static double[] nested(
      SplittableRandom random, int[][] labels, double outer, double inner) {
    double[] y = new double[labels[0].length];
    double group = 0;
    double run = 0;
    for (int i = 0; i < y.length; i++) {
      boolean first = i == 0;
      if (first || labels[0][i] != labels[0][i - 1]) {
        group = outer * Simulation.normal(random);
      }
      if (first || labels[1][i] != labels[1][i - 1]) {
        run = inner * Simulation.normal(random);
      }
      y[i] = group + run + Simulation.normal(random);
    }
    return y;
  }
}
