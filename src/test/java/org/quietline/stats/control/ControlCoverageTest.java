package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Coverage;
import org.quietline.stats.Interval;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.distribution.ToleranceFactor;
import org.quietline.stats.sample.Summary;

/** How often limits hold what they promise, in seeded simulations of normal values. */
class ControlCoverageTest {
  private static final int[] SIZES = {5, 8, 12, 20};
  private static final double THREE = 1 - Normal.outside(3);

  private static void check(
      Class<?> subject, String what, String size, double nominal, int held, int trials) {
    Coverage.check(subject, what, size, nominal, held, trials, nominal, nominal);
  }

  @Test
  void theNextValueIsWithinPredictionLimits() {
    for (int n : SIZES) {
      SplittableRandom random = new SplittableRandom(500 + n);
      int trials = Coverage.trials(4000, 100_000);
      int action = 0;
      int warning = 0;
      for (int i = 0; i < trials; i++) {
        ControlLimits limits = ControlLimits.prediction(Simulation.normal(random, n));
        double next = Simulation.normal(random);
        action += next >= limits.lowerAction() && next <= limits.upperAction() ? 1 : 0;
        warning += next >= limits.lowerWarning() && next <= limits.upperWarning() ? 1 : 0;
      }
      String size = "n = " + n;
      check(ControlLimits.class, "prediction, action limits", size, THREE, action, trials);
      check(ControlLimits.class, "prediction, warning limits", size, 0.95, warning, trials);
    }
  }

  /**
   * Three sample deviations of a small baseline are left more often than 0.27 %: the share that
   * Student's t gives, which the javadoc states.
   */
  @Test
  void theNextValueLeavesThreeSampleDeviationsMoreOften() {
    double[] stated = {0.0520, 0.0255, 0.0149, 0.0086};
    for (int i = 0; i < SIZES.length; i++) {
      int n = SIZES[i];
      double alarm = 2 * Student.above(3 / Math.sqrt(1 + 1.0 / n), n - 1);
      assertEquals(stated[i], alarm, 0.00005);
      SplittableRandom random = new SplittableRandom(550 + n);
      int trials = Coverage.trials(4000, 100_000);
      int held = 0;
      for (int t = 0; t < trials; t++) {
        ControlLimits limits = ControlLimits.fromSampleDeviation(Simulation.normal(random, n));
        double next = Simulation.normal(random);
        held += next >= limits.lowerAction() && next <= limits.upperAction() ? 1 : 0;
      }
      String what = "three sample deviations, next value";
      check(ControlLimits.class, what, "n = " + n, 1 - alarm, held, trials);
    }
  }

  /** With confidence 90 % the false-alarm chance given the limits is at most 0.27 %. */
  @Test
  void guaranteedLimitsKeepTheFalseAlarmChanceDown() {
    for (int n : SIZES) {
      // the factor depends on n alone; it is held to outside values elsewhere
      double factor = ToleranceFactor.twoSidedLeaving(n, Normal.outside(3), 0.9);
      ControlLimits one =
          ControlLimits.guaranteed(0.9, Simulation.normal(new SplittableRandom(n), n));
      assertEquals(factor, (one.upperAction() - one.centre()) / one.deviation(), 1e-9);
      SplittableRandom random = new SplittableRandom(600 + n);
      int trials = Coverage.trials(4000, 100_000);
      int kept = 0;
      for (int i = 0; i < trials; i++) {
        Summary s = Summary.of(Simulation.normal(random, n));
        double half = factor * s.deviation();
        double alarm = Normal.below(s.mean() - half) + Normal.above(s.mean() + half);
        kept += alarm <= Normal.outside(3) ? 1 : 0;
      }
      String what = "guaranteed, false alarms at most 0.27 %";
      check(ControlLimits.class, what, "n = " + n, 0.9, kept, trials);
    }
  }

  @Test
  void theNextValueIsWithinPredictiveLimitsOverPopulationsOfThePrior() {
    PredictiveLimits prior = new PredictiveLimits(2, 1.5, 4, 0.7);
    for (int n : new int[] {0, 5, 12}) {
      SplittableRandom random = new SplittableRandom(700 + n);
      int trials = Coverage.trials(4000, 100_000);
      int held = 0;
      for (int i = 0; i < trials; i++) {
        // σ² = ν·s²/χ²(ν), mean = centre + σ·Z/√κ
        double chiSquare = Arrays.stream(Simulation.normal(random, 4)).map(z -> z * z).sum();
        double sigma = 0.7 * Math.sqrt(4 / chiSquare);
        double mean = 2 + sigma * Simulation.normal(random) / Math.sqrt(1.5);
        double[] values =
            Arrays.stream(Simulation.normal(random, n)).map(z -> mean + sigma * z).toArray();
        Interval limits = prior.updatedBy(values).warning();
        held += limits.contains(mean + sigma * Simulation.normal(random)) ? 1 : 0;
      }
      String what = "predictive, warning limits, populations of the prior";
      check(PredictiveLimits.class, what, "n = " + n, 0.95, held, trials);
    }
  }

  @Test
  void theNextDeviationIsBelowThePrecisionLimit() {
    for (int groups : SIZES) {
      SplittableRandom random = new SplittableRandom(800 + groups);
      double factor = new PrecisionLimits(1, 2 * groups).upper(2, 0.05);
      int trials = Coverage.trials(4000, 100_000);
      int held = 0;
      for (int i = 0; i < trials; i++) {
        double[] deviations = new double[groups];
        for (int g = 0; g < groups; g++) {
          deviations[g] = Summary.of(Simulation.normal(random, 3)).deviation();
        }
        double limit = factor * PrecisionLimits.pool(2, deviations).pooled();
        held += Summary.of(Simulation.normal(random, 3)).deviation() <= limit ? 1 : 0;
      }
      String size = groups + " deviations of 3";
      check(PrecisionLimits.class, "5 % limit of a deviation", size, 0.95, held, trials);
    }
  }

  @Test
  void rangesAndDeviationsAreWithinTheirProbabilityLimits() {
    SubgroupLimits unit = new SubgroupLimits(SubgroupLimits.Basis.RANGES, 0, 1, 100);
    for (int n : new int[] {2, 5, 12}) {
      ChartLimits ofRange = unit.ofRange(n, 0.05);
      ChartLimits ofDeviation = unit.ofDeviation(n, 0.05);
      ChartLimits ofMean = unit.ofMean(n, 0.05);
      SplittableRandom random = new SplittableRandom(900 + n);
      int trials = Coverage.trials(4000, 100_000);
      int ranges = 0;
      int deviations = 0;
      int means = 0;
      for (int i = 0; i < trials; i++) {
        double[] x = Simulation.normal(random, n);
        Summary s = Summary.of(x);
        double range = Arrays.stream(x).max().orElseThrow() - Arrays.stream(x).min().orElseThrow();
        ranges += ofRange.beyond(range) ? 0 : 1;
        deviations += ofDeviation.beyond(s.deviation()) ? 0 : 1;
        means += ofMean.beyond(s.mean()) ? 0 : 1;
      }
      String size = "n = " + n;
      check(SubgroupLimits.class, "range, 5 % limits, known deviation", size, 0.95, ranges, trials);
      check(SubgroupLimits.class, "deviation, 5 % limits, known", size, 0.95, deviations, trials);
      check(SubgroupLimits.class, "mean, 5 % limits, known", size, 0.95, means, trials);
    }
  }

  /** All three estimates of the deviation are right on average, and as sure as they say. */
  @Test
  void deviationsOfSubgroupsAreUnbiasedWithTheirDegreesOfFreedom() {
    SplittableRandom random = new SplittableRandom(17);
    int trials = 1500;
    double[][] estimates = new double[3][trials];
    double[] degrees = new double[3];
    for (int i = 0; i < trials; i++) {
      List<double[]> groups = new ArrayList<>();
      for (int size : new int[] {2, 5, 3, 7, 2}) {
        groups.add(Simulation.normal(random, size));
      }
      SubgroupLimits[] limits = {
        SubgroupLimits.fromRanges(groups),
        SubgroupLimits.fromDeviations(groups),
        SubgroupLimits.fromPooledDeviation(groups)
      };
      for (int w = 0; w < 3; w++) {
        estimates[w][i] = limits[w].deviation();
        degrees[w] = limits[w].degreesOfFreedom();
      }
    }
    for (int w = 0; w < 3; w++) {
      double spread = Math.sqrt(DeviationScatter.relativeVariance(degrees[w]));
      Summary s = Summary.of(estimates[w]);
      assertEquals(1, s.mean(), 4 * spread / Math.sqrt(trials), "way " + w);
      assertEquals(spread, s.deviation(), 4 * spread / Math.sqrt(2.0 * trials), "way " + w);
    }
    assertTrue(degrees[0] < degrees[1] && degrees[1] < degrees[2], Arrays.toString(degrees));
  }

  @Test
  void weightedMeanIsWithinItsLimitsFromTheFirstValueOn() {
    double width = Normal.exceededWith(0.025);
    WeightedMean chart = new WeightedMean(0, 1, 0.4, width);
    WeightedMean holding = chart.holdingSlips();
    double[] gaps = {3, 0.5, 1, 0.2, 2, 1, 1, 8, 0.1, 1, 1, 1};
    int[] places = {0, 1, 2, 11};
    int trials = Coverage.trials(6000, 100_000);
    int[] even = new int[4];
    int[] uneven = new int[4];
    int[] held = new int[4];
    SplittableRandom random = new SplittableRandom(41);
    for (int i = 0; i < trials; i++) {
      double[] x = Simulation.normal(random, 12);
      var plain = chart.trace(x, new boolean[12]);
      var spaced = chart.trace(x, gaps, new boolean[12]);
      var slips = holding.trace(x, new boolean[12]);
      for (int p = 0; p < 4; p++) {
        even[p] += plain.get(places[p]).beyond() ? 0 : 1;
        uneven[p] += spaced.get(places[p]).beyond() ? 0 : 1;
        held[p] += slips.get(places[p]).beyond() ? 0 : 1;
      }
    }
    for (int p = 0; p < 4; p++) {
      String size = "value " + (places[p] + 1);
      check(WeightedMean.class, "weighted mean, 5 % limits", size, 0.95, even[p], trials);
      check(WeightedMean.class, "the same, uneven spacing", size, 0.95, uneven[p], trials);
      Coverage.check(
          WeightedMean.class, "the same, slips held", size, 0.95, held[p], trials, 0.95, 0.952);
    }
  }

  /** The variance behind the limits is that of the mean, at each of the first values. */
  @Test
  void varianceOfTheWeightedMean() {
    SplittableRandom random = new SplittableRandom(9);
    int trials = 4000;
    double[][] means = new double[6][trials];
    double[] half = new double[6];
    WeightedMean chart = new WeightedMean(0, 1, 0.4, 1);
    for (int i = 0; i < trials; i++) {
      var points = chart.trace(Simulation.normal(random, 6), new boolean[6]);
      for (int t = 0; t < 6; t++) {
        means[t][i] = points.get(t).mean();
        half[t] = points.get(t).upper();
      }
    }
    for (int t = 0; t < 6; t++) {
      double allowed = 4 * half[t] / Math.sqrt(2.0 * trials);
      assertEquals(half[t], Summary.of(means[t]).deviation(), allowed, "value " + t);
    }
  }

  @Test
  void qStatisticsAreStandardNormalAndIndependent() {
    SplittableRandom random = new SplittableRandom(91);
    int trials = Coverage.trials(6000, 100_000);
    QStatistics[] kinds = {
      QStatistics.unknown(), QStatistics.knownCentre(5), QStatistics.knownDeviation(2)
    };
    String[] names = {"both unknown", "deviation unknown", "centre unknown"};
    for (int k = 0; k < 3; k++) {
      int[] within = new int[3];
      int[] alike = new int[2];
      int[] places = {2, 4, 9};
      for (int i = 0; i < trials; i++) {
        double[] x = Arrays.stream(Simulation.normal(random, 10)).map(z -> 5 + 2 * z).toArray();
        List<OptionalDouble> q = kinds[k].trace(x, new boolean[10]);
        double[] at = Arrays.stream(places).mapToDouble(p -> q.get(p).getAsDouble()).toArray();
        for (int p = 0; p < 3; p++) {
          within[p] += Math.abs(at[p]) <= Normal.exceededWith(0.025) ? 1 : 0;
        }
        // independent: the signs of one pair, and the sizes of another, agree half of the time
        double next = q.get(3).getAsDouble();
        double median = Normal.exceededWith(0.25);
        alike[0] += at[0] * next > 0 ? 1 : 0;
        alike[1] += Math.abs(at[1]) > median == Math.abs(q.get(5).getAsDouble()) > median ? 1 : 0;
      }
      for (int p = 0; p < 3; p++) {
        String what = "Q within 5 % limits, " + names[k];
        check(QStatistics.class, what, "value " + (places[p] + 1), 0.95, within[p], trials);
      }
      Simulation.assertShare(0.5, alike[0], trials);
      Simulation.assertShare(0.5, alike[1], trials);
    }
  }
}
