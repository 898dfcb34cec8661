package org.quietline.stats;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.quietline.stats.agreement.PassingBablok;
import org.quietline.stats.capability.PerformanceIndex;
import org.quietline.stats.control.RunRules;
import org.quietline.stats.mixed.GroupedLines;
import org.quietline.stats.mixed.GroupedPoints;
import org.quietline.stats.mixed.LineOutlook;
import org.quietline.stats.mixed.LineSpread;
import org.quietline.stats.mixed.LinesGivenRatios;
import org.quietline.stats.mixed.NestedGroups;
import org.quietline.stats.mixed.VarianceComponents;
import org.quietline.stats.runlength.Change;
import org.quietline.stats.runlength.Chart;
import org.quietline.stats.runlength.RunLength;
import org.quietline.stats.sample.Summary;

/** What a whole fit or a table costs. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class FitCost {
  private static final int WINDOWS = 100;
  private static final int EACH = 9;
  private static final double[] SHIFTS = {0, 0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3};

  private final int[] groups = new int[WINDOWS * EACH];
  private final double[] days = new double[WINDOWS * EACH];
  private final double[] values = new double[WINDOWS * EACH];
  private final double[] hundred = new double[100];
  private final double[] other = new double[100];

  /** Draws 100 windows of 9 results, and 100 pairs. */
  @Setup
  public void draw() {
    SplittableRandom random = new SplittableRandom(5);
    for (int w = 0; w < WINDOWS; w++) {
      double offset = 0.003 * Simulation.normal(random);
      double slope = 0.0003 + 0.0001 * Simulation.normal(random);
      for (int j = 0; j < EACH; j++) {
        int i = w * EACH + j;
        groups[i] = w;
        days[i] = 3 * j + random.nextDouble();
        values[i] = offset + slope * days[i] + 0.004 * Simulation.normal(random);
      }
    }
    for (int i = 0; i < 100; i++) {
      hundred[i] = 0.2 + 0.04 * Simulation.normal(random);
      other[i] = hundred[i] + 0.004 * Simulation.normal(random);
    }
  }

  /** Restricted likelihood, heights and slopes of 100 windows of 9 results. */
  @Benchmark
  public Object linesOfHundredWindows() {
    GroupedPoints points = GroupedPoints.of(days, values, groups);
    return GroupedLines.fit(points, LineSpread.INDEPENDENT);
  }

  /** The closed form for one pair of ratios, points prepared anew. */
  @Benchmark
  public Object linesForGivenRatios() {
    return LinesGivenRatios.of(GroupedPoints.of(days, values, groups), 0.5, 0.001, 0);
  }

  /** Lines averaged over their spread, and the chance on each of 30 days for the last window. */
  @Benchmark
  public double outlookOfHundredWindows() {
    GroupedPoints points = GroupedPoints.of(days, values, groups);
    LineOutlook.GroupLine line =
        LineOutlook.of(points, 30, 0).withSharedUncertainty(0.003).line(WINDOWS - 1);
    double sum = 0;
    for (int day = 1; day <= 30; day++) {
      sum += line.at(day).chanceBeyond(0.012);
    }
    return sum;
  }

  /** Restricted likelihood, components of the same windows. */
  @Benchmark
  public Object componentsOfHundredWindows() {
    return VarianceComponents.fit(values, NestedGroups.of(groups));
  }

  /** Shifted median of 4950 slopes. */
  @Benchmark
  public Object passingBablok() {
    return PassingBablok.fit(hundred, other);
  }

  /** The exact bound of an index from 100 values. */
  @Benchmark
  public double boundOfIndex() {
    return PerformanceIndex.upper(Summary.of(hundred), 0.35).lowerBound(0.95);
  }

  /** Average run lengths of the weighted mean at nine shifts. */
  @Benchmark
  public Object tableOfWeightedMean() {
    return table(Chart.weightedMean(0.4, 3));
  }

  /** Average run lengths of a cumulative sum at nine shifts. */
  @Benchmark
  public Object tableOfCumulativeSum() {
    return table(Chart.cumulativeSum(0.5, 5));
  }

  /** Average run lengths of the four zone rules at nine shifts. */
  @Benchmark
  public Object tableOfZoneRules() {
    return table(new Chart.Rules(RunRules.fourZoneRules().rules()));
  }

  private static Object table(Chart chart) {
    List<Double> averages = new ArrayList<>();
    for (double shift : SHIFTS) {
      averages.add(RunLength.of(chart, Change.shift(shift)).average());
    }
    return averages;
  }
}
