package org.quietline.stats.compare;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.function.Predicate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Coverage;
import org.quietline.stats.Interval;
import org.quietline.stats.Simulation;
import org.quietline.stats.sample.Summary;

/** How often intervals hold the truth, and how often tests find what is not there. */
class ComparisonsCoverageTest {
  private static final int SLICE = 1500;
  private static final int WHOLE = 50_000;

  private static void check(
      Class<?> subject,
      String what,
      String size,
      double least,
      double most,
      Predicate<SplittableRandom> holds) {
    SplittableRandom random = new SplittableRandom(what.hashCode() * 31L + size.hashCode());
    int trials = Coverage.trials(SLICE, WHOLE);
    int held = 0;
    for (int i = 0; i < trials; i++) {
      held += holds.test(random) ? 1 : 0;
    }
    Coverage.check(subject, what, size, 0.95, held, trials, least, most);
  }

  private static Summary sample(SplittableRandom random, int n, double deviation) {
    double[] values = Simulation.normal(random, n);
    for (int i = 0; i < n; i++) {
      values[i] *= deviation;
    }
    return Summary.of(values);
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 5, 8, 12, 20})
  void meansAndDeviations(int n) {
    String size = "n = " + n;
    check(MeanTest.class, "one mean", size, 0.948, 0.952, r -> holdsMean(r, n));
    check(DeviationTest.class, "one deviation", size, 0.948, 0.952, r -> holdsDeviation(r, n));
    check(VarianceRatio.class, "ratio of two variances", size, 0.948, 0.952, r -> holdsRatio(r, n));
    check(MeanTest.class, "two means, pooled", size, 0.948, 0.952, r -> holdsPooled(r, n));
  }

  private static boolean holdsMean(SplittableRandom random, int n) {
    return MeanTest.oneSample(sample(random, n, 1), 0).interval(0.95).contains(0);
  }

  private static boolean holdsDeviation(SplittableRandom random, int n) {
    double s = sample(random, n, 1).deviation();
    return new DeviationTest(s, n - 1, 1).interval(0.95).contains(1);
  }

  private static boolean holdsRatio(SplittableRandom random, int n) {
    double a = sample(random, n, 2).deviation();
    double b = sample(random, 8, 1).deviation();
    return VarianceRatio.of(a, n - 1, b, 7).interval(0.95).contains(4);
  }

  private static boolean holdsPooled(SplittableRandom random, int n) {
    MeanTest test = MeanTest.pooled(sample(random, n, 1), sample(random, 6, 1));
    return test.interval(0.95).contains(0);
  }

  @ParameterizedTest
  @CsvSource({"5, 5, 1", "5, 8, 1", "5, 8, 2", "5, 8, 4", "5, 8, 0.5", "5, 8, 0.25", "3, 3, 1"})
  void welch(int a, int b, double deviation) {
    String size = "n = " + a + ", " + b + ", deviations " + deviation + " to 1";
    check(
        MeanTest.class,
        "two means, Welch",
        size,
        0.940,
        a == 3 ? 0.970 : 0.960,
        r -> MeanTest.welch(sample(r, a, deviation), sample(r, b, 1)).interval(0.95).contains(0));
  }

  @ParameterizedTest
  @CsvSource({"2, 0.3", "2, 1", "3, 0.3", "3, 1", "5, 0.3", "5, 1", "5, 3", "20, 1"})
  void biasAgainstAnUncertainReference(int n, double ratio) {
    double u = ratio / Math.sqrt(n);
    check(
        Bias.class,
        "bias, reference's uncertainty " + ratio + " of the mean's",
        "n = " + n,
        0.949,
        0.985,
        r -> {
          double reference = u * Simulation.normal(r);
          return !Bias.of(sample(r, n, 1), reference, u).significantAt(0.05);
        });
  }

  /** At the margin equivalence may be claimed in 5 % at most; with few values it hardly ever is. */
  @ParameterizedTest
  @CsvSource({"3, 0.5, 1", "8, 1, 0.952", "20, 1, 0.952"})
  void equivalenceClaimedAtTheMargin(int n, double margin, double most) {
    check(
        Equivalence.class,
        "no claim of equivalence where the truth is at the margin of " + margin,
        "n = " + n,
        0.948,
        most,
        r -> {
          MeanTest test = MeanTest.oneSample(sample(r, n, 1), margin);
          return new Equivalence(test, margin).at(0.05) != Equivalence.Verdict.EQUIVALENT;
        });
  }

  @ParameterizedTest
  @CsvSource({"8, 0.05", "8, 0.3", "20, 0.05", "20, 0.5", "60, 0.1"})
  void shares(int n, double truth) {
    String size = "n = " + n + ", share " + truth;
    Function<SplittableRandom, ObservedShare> draw =
        r -> {
          int count = 0;
          for (int i = 0; i < n; i++) {
            count += r.nextDouble() < truth ? 1 : 0;
          }
          return new ObservedShare(count, n);
        };
    check(
        ObservedShare.class,
        "share, exact",
        size,
        0.95,
        1,
        r -> draw.apply(r).exactInterval(0.95).contains(truth));
    check(
        ObservedShare.class,
        "share, score",
        size,
        0.91,
        0.99,
        r -> draw.apply(r).scoreInterval(0.95).contains(truth));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 3, 12})
  void events(double mean) {
    check(
        ObservedCount.class,
        "Poisson mean, exact",
        "mean " + mean,
        0.95,
        1,
        r -> {
          Interval interval = new ObservedCount(poisson(r, mean), 1).exactInterval(0.95);
          return interval.contains(mean);
        });
  }

  private static int poisson(SplittableRandom random, double mean) {
    double limit = Math.exp(-mean);
    double product = random.nextDouble();
    int count = 0;
    while (product > limit) {
      product *= random.nextDouble();
      count++;
    }
    return count;
  }

  @ParameterizedTest
  @CsvSource({
    "3, 0.950, 0.960, 0.870, 0.885, 0.998, 1",
    "5, 0.945, 0.955, 0.895, 0.908, 0.994, 1",
    "10, 0.945, 0.953, 0.926, 0.937, 0.965, 0.975"
  })
  void fiveGroupsOfEqualVariances(
      int n, double b1, double b2, double l1, double l2, double f1, double f2) {
    String size = "5 groups of " + n;
    check(
        EqualVariances.class,
        "no finding by Bartlett",
        size,
        b1,
        b2,
        r -> EqualVariances.bartlett(groups(r, n)).chance() > 0.05);
    check(
        EqualVariances.class,
        "no finding by Levene",
        size,
        l1,
        l2,
        r -> EqualVariances.levene(groups(r, n)).chance() > 0.05);
    check(
        EqualVariances.class,
        "no finding by Brown and Forsythe",
        size,
        f1,
        f2,
        r -> EqualVariances.brownForsythe(groups(r, n)).chance() > 0.05);
  }

  private static double[][] groups(SplittableRandom random, int n) {
    double[][] groups = new double[5][];
    for (int i = 0; i < groups.length; i++) {
      groups[i] = Simulation.normal(random, n);
    }
    return groups;
  }

  @ParameterizedTest
  @ValueSource(ints = {4, 8, 12, 20})
  void outliersInCleanSamples(int n) {
    String size = "n = " + n;
    double single = Grubbs.criticalValue(Suspect.EITHER, n, 0.05);
    check(
        Grubbs.class,
        "no outlier found, either end",
        size,
        0.948,
        0.953,
        r -> Grubbs.of(Suspect.EITHER, Simulation.normal(r, n)).statistic() <= single);
    double pair = GrubbsPair.criticalValue(Suspect.LARGEST, n, 0.05);
    check(
        GrubbsPair.class,
        "no pair found, one end",
        size,
        0.948,
        0.952,
        r -> statisticOfPair(Suspect.LARGEST, r, n) >= pair);
    double pairs = GrubbsPair.criticalValue(Suspect.EITHER, n, 0.05);
    check(
        GrubbsPair.class,
        "no pair found, either end",
        size,
        0.948,
        0.956,
        r -> statisticOfPair(Suspect.EITHER, r, n) >= pairs);
    Dixon.Form form = Dixon.Form.forSize(n);
    double gap = Dixon.criticalValue(form, Suspect.EITHER, n, 0.05);
    check(
        Dixon.class,
        "no outlier found, either end",
        size,
        0.948,
        0.957,
        r -> Dixon.of(Suspect.EITHER, Simulation.normal(r, n)).statistic() <= gap);
    double share = Cochran.criticalValue(n, 1, 0.05);
    check(
        Cochran.class,
        "no large difference found in pairs",
        size,
        0.948,
        0.954,
        r -> Cochran.ofDifferences(Simulation.normal(r, n)).statistic() <= share);
  }

  /** The statistic alone, without the chance's integral. */
  private static double statisticOfPair(Suspect suspect, SplittableRandom random, int n) {
    double[] x = Simulation.normal(random, n);
    Arrays.sort(x);
    double all = squares(x, 0, n);
    double high = squares(x, 0, n - 2) / all;
    double low = squares(x, 2, n) / all;
    return suspect == Suspect.EITHER ? Math.min(low, high) : high;
  }

  private static double squares(double[] values, int from, int to) {
    double sum = 0;
    double squares = 0;
    for (int i = from; i < to; i++) {
      sum += values[i];
      squares += values[i] * values[i];
    }
    return squares - sum * sum / (to - from);
  }

  @ParameterizedTest
  @CsvSource({"10, 0.86, 0.873", "15, 0.913, 0.925", "25, 0.937, 0.947", "50, 0.945, 0.953"})
  void upToFiveOutliersInCleanSamples(int n, double least, double most) {
    check(
        ExtremeStudentizedDeviates.class,
        "no outlier found of up to five",
        "n = " + n,
        least,
        most,
        r -> ExtremeStudentizedDeviates.of(5, 0.05, Simulation.normal(r, n)).places().isEmpty());
  }

  @ParameterizedTest
  @CsvSource({"3, 5, 0.94, 0.948", "4, 8, 0.942, 0.950", "2, 6, 0.938, 0.946"})
  void samplesOfOnePopulation(int samples, int n, double least, double most) {
    check(
        SamplesAlike.class,
        "no difference found",
        samples + " samples of " + n,
        least,
        most,
        r -> {
          double[][] drawn = new double[samples][];
          for (int i = 0; i < samples; i++) {
            drawn[i] = Simulation.normal(r, n);
          }
          // T of the 5 % chance, found once for each number of samples
          double critical = samples == 2 ? 1.960 : samples == 3 ? 1.945 : 1.915;
          return SamplesAlike.of(SamplesAlike.Ties.MIDRANK, drawn).standardised() <= critical;
        });
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 12, 20})
  void orderOfIndependentValues(int n) {
    double low = VonNeumannTest.criticalValue(n, 0.025);
    check(
        VonNeumannTest.class,
        "no order found, either side",
        "n = " + n,
        0.948,
        0.952,
        r -> Math.abs(VonNeumannTest.of(Simulation.normal(r, n)).ratio() - 2) <= 2 - low);
    check(
        RunsTest.class,
        "no order found, either side",
        "n = " + n,
        0.95,
        1,
        r -> RunsTest.aboutMedian(Simulation.normal(r, n)).chance() > 0.05);
  }
}
