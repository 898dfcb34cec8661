package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.quietline.stats.compare.Dixon.Form;
import org.quietline.stats.compare.SamplesAlike.Ties;
import org.quietline.stats.sample.Summary;

/** Every refusal of the tests and intervals, with its whole sentence. */
class ComparisonsInvalidInputTest {
  private static final double NAN = Double.NaN;
  private static final double INFINITE = Double.POSITIVE_INFINITY;
  private static final SplittableRandom RANDOM = new SplittableRandom(1);

  private static void refused(String sentence, Executable call) {
    assertEquals(sentence, assertThrows(IllegalArgumentException.class, call).getMessage());
  }

  @Test
  void means() {
    Summary flat = Summary.of(2, 2, 2);
    refused("standard error must be above zero, is 0.0", () -> MeanTest.oneSample(flat, 1));
    refused("standard error must be above zero, is 0.0", () -> MeanTest.pooled(flat, flat));
    refused("standard error must be above zero, is 0.0", () -> MeanTest.welch(flat, flat));
    refused("value to test against is NaN", () -> MeanTest.oneSample(Summary.of(1, 2), NAN));
    refused("difference is Infinity", () -> new MeanTest(INFINITE, 1, 1));
    refused("degrees of freedom must be at least 1, is 0.5", () -> new MeanTest(1, 1, 0.5));
    refused(
        "degrees of freedom must be at least 1, is Infinity", () -> new MeanTest(1, 1, INFINITE));
    refused(
        "pairs need as many second values as first: 3, 2",
        () -> MeanTest.paired(new double[3], new double[2]));
    refused("needs at least 2 values, has 1", () -> MeanTest.paired(new double[1], new double[2]));
    refused("needs at least 2 values, has 0", () -> MeanTest.paired(new double[2], new double[0]));
    refused("level must be between 0 and 1, is 1.0", () -> new MeanTest(1, 1, 1).interval(1));
    refused("margin must be above zero, is 0.0", () -> equivalence(0));
    refused("alpha must be between 0 and 0.5, is 0.5", () -> equivalence(1).interval(0.5));
    refused("alpha must be between 0 and 0.5, is 0.0", () -> equivalence(1).at(0));
    refused("alpha must be between 0 and 0.5, is NaN", () -> equivalence(1).at(NAN));
  }

  private static Equivalence equivalence(double margin) {
    return new Equivalence(new MeanTest(1, 1, 1), margin);
  }

  @Test
  void biases() {
    refused("difference is NaN", () -> new Bias(NAN, 1, 1, 1));
    refused("standard error of the mean must not be below zero, is NaN", () -> bias(NAN, 1, 1));
    refused("degrees of freedom must be at least 1, is 0", () -> bias(1, 0, 1));
    refused("standard uncertainty must not be below zero, is -1.0", () -> bias(1, 1, -1));
    refused("level must be between 0 and 1, is 0.0", () -> bias(1, 1, 1).interval(0));
    refused("alpha must be between 0 and 1, is NaN", () -> bias(1, 1, 1).significantAt(NAN));
  }

  private static Bias biasOf(double reference, double uncertainty) {
    return Bias.of(new Summary(5, 0, 1), reference, uncertainty);
  }

  private static Bias bias(double error, int df, double uncertainty) {
    return new Bias(1, error, df, uncertainty);
  }

  @Test
  void deviations() {
    refused("deviation must not be below zero, is NaN", () -> new DeviationTest(NAN, 1, 1));
    refused("degrees of freedom must be at least 1, is 0", () -> new DeviationTest(1, 0, 1));
    refused(
        "deviation to test against must be above zero, is 0.0", () -> new DeviationTest(1, 1, 0));
    DeviationTest test = new DeviationTest(1, 1, 1);
    refused("level must be between 0 and 1, is 0.0", () -> test.interval(0));
    refused("level must be between 0 and 1, is 95.0", () -> test.upperBound(95));
    refused("ratio must not be below zero, is -1.0", () -> new VarianceRatio(-1, 1, 1));
    refused("first degrees of freedom must be at least 1, is 0", () -> new VarianceRatio(1, 0, 1));
    refused("second degrees of freedom must be at least 1, is 0", () -> new VarianceRatio(1, 1, 0));
    refused(
        "level must be between 0 and 1, is NaN", () -> new VarianceRatio(1, 1, 1).interval(NAN));
  }

  @Test
  void groups() {
    double[] good = {1, 2, 4};
    double[] flat = {3, 3, 3};
    refused("groups must be at least 2, is 1", () -> EqualVariances.bartlett(good));
    refused("groups must be at least 2, is 0", () -> EqualVariances.levene());
    refused("needs at least 2 values, has 1", () -> EqualVariances.bartlett(good, new double[1]));
    refused(
        "needs at least 3 values, has 2", () -> EqualVariances.brownForsythe(good, new double[2]));
    refused("all values of a group are equal: 3.0", () -> EqualVariances.bartlett(good, flat));
    refused("the distances do not vary within any group", () -> EqualVariances.levene(flat, flat));
    refused("statistic must not be below zero, is NaN", () -> variances(NAN, 2, 9));
    refused("groups must be at least 2, is 1", () -> variances(1, 1, 9));
    refused("values must be at least 4, is 3", () -> variances(1, 3, 3));
    refused(
        "alpha must be between 0 and 1, is 0.0",
        () -> EqualVariances.levene(good, good).criticalValue(0));
  }

  private static EqualVariances variances(double statistic, int groups, int values) {
    return new EqualVariances(EqualVariances.Form.LEVENE, statistic, groups, values);
  }

  @Test
  void order() {
    refused("n must be at least 3, is 2", () -> new VonNeumannTest(2, 1));
    refused("ratio must be from 0 to 4, is 4.5", () -> new VonNeumannTest(3, 4.5));
    refused("ratio must be from 0 to 4, is NaN", () -> new VonNeumannTest(3, NAN));
    refused("n must be at least 3, is 2", () -> VonNeumannTest.criticalValue(2, 0.05));
    refused("chance must be between 0 and 1, is 1.0", () -> VonNeumannTest.criticalValue(3, 1));
    refused("needs at least 3 values, has 2", () -> VonNeumannTest.of(1, 2));
    refused("needs at least 2 values, has 1", () -> RunsTest.aboutMedian(1));
    refused("below must be at least 1, is 0", () -> RunsTest.aboutMedian(1, 1));
    refused("above must be at least 1, is 0", () -> RunsTest.aboutMedian(1, 2, 2, 2));
    refused("runs must be from 2 to 5, is 6", () -> new RunsTest(2, 3, 6));
    refused("runs must be from 2 to 6, is 1", () -> new RunsTest(3, 3, 1));
  }

  @Test
  void outliers() {
    refused("needs at least 3 values, has 2", () -> Grubbs.of(Suspect.EITHER, 1, 2));
    refused("all other values are equal: 1.0", () -> Grubbs.of(Suspect.EITHER, 1, 1, 2));
    refused("n must be at least 3, is 2", () -> Grubbs.criticalValue(Suspect.EITHER, 2, 0.05));
    refused(
        "alpha must be between 0 and 1, is 5.0", () -> Grubbs.criticalValue(Suspect.EITHER, 3, 5));
    refused("n must be at least 3, is 2", () -> new Grubbs(Suspect.EITHER, 2, 0, 1, 1));
    refused("statistic must not be below zero, is NaN", () -> grubbs(NAN, 1));
    refused("chance must be from 0 to 1, is 1.5", () -> grubbs(1, 1.5));
    refused("chance must be from 0 to 1, is NaN", () -> grubbs(1, NAN));
    refused("alpha must be between 0 and 1, is 0.0", () -> grubbs(1, 1).significantAt(0));
    refused("groups must be at least 2, is 1", () -> Cochran.criticalValue(1, 1, 0.05));
    refused("degrees of freedom must be at least 1, is 0", () -> Cochran.ofDeviations(0, 1, 2));
    refused("alpha must be between 0 and 1, is 0.0", () -> Cochran.criticalValue(2, 1, 0));
    refused("deviation must not be below zero, is -1.0", () -> Cochran.ofDeviations(1, 2, -1));
    refused("largest deviation must be above zero, is 0.0", () -> Cochran.ofDifferences(0, 0));
    refused("needs at least 2 values, has 1", () -> Cochran.ofDifferences(1));
    refused("needs at least 2 values, has 1", () -> Cochran.ofDeviations(3, 1));
    refused("statistic must be from 0 to 1, is NaN", () -> new Cochran(2, 1, 0, NAN));
    refused("statistic must be from 0 to 1, is 1.5", () -> new Cochran(2, 1, 0, 1.5));
  }

  /** Differences of 0.02 each in decimals, whose doubles differ in the last digits. */
  @Test
  void equalButForRounding() {
    double[] first = {.62, .58, .47, .51};
    double[] second = {.60, .56, .45, .49};
    refused(
        "all differences are equal but for rounding: 0.020000000000000018",
        () -> MeanTest.paired(first, second));
    refused("all differences are equal: 0.0", () -> MeanTest.paired(first, first));
    double[] wild = {.62 - .60, .58 - .56, .47 - .45, .51 - .48};
    String others = "all other values are equal but for rounding: 0.020000000000000018";
    refused(others, () -> Grubbs.of(Suspect.EITHER, wild));
    refused(others, () -> deviates(1, 0.05, wild));
    refused(
        "all values beyond the gap are equal but for rounding: 0.020000000000000018",
        () -> Dixon.of(Suspect.LARGEST, wild));
    double[] two = {.62 - .60, .58 - .56, .47 - .45, .51 - .48, .04};
    refused(
        "all other values are equal but for rounding: 0.019999999999999907",
        () -> GrubbsPair.of(Suspect.LARGEST, two));
    Summary noise = Summary.of(.62 - .60, .58 - .56, .47 - .45);
    for (Executable call :
        List.<Executable>of(
            () -> MeanTest.oneSample(noise, 0),
            () -> MeanTest.pooled(noise, noise),
            () -> MeanTest.welch(noise, noise))) {
      String message =
          Objects.requireNonNull(assertThrows(IllegalArgumentException.class, call).getMessage());
      assertTrue(
          message.endsWith(" is only rounding for values near 0.019999999999999962"), message);
    }
    double[][] alike = {{3.03, 3.03, 3.23, 3.23}, {.08, .08, .28, .28}, {5.19, 5.19, 5.39, 5.39}};
    refused("the distances do not vary within any group", () -> EqualVariances.levene(alike));
    refused(
        "the distances do not vary within any group", () -> EqualVariances.brownForsythe(alike));
    double[] flat = {.62 - .60, .58 - .56, .47 - .45};
    refused(
        "all values of a group are equal but for rounding: 0.020000000000000018",
        () -> EqualVariances.bartlett(first, flat));
  }

  /** A real spread on a large offset stays one: exact in binary, so t is that without offset. */
  @Test
  void smallSpreadOnAnOffset() {
    double offset = 0x1p30;
    Grubbs plain = Grubbs.of(Suspect.EITHER, 0, 0.25, 0.5, 4);
    Grubbs moved = Grubbs.of(Suspect.EITHER, offset, offset + 0.25, offset + 0.5, offset + 4);
    assertEquals(plain.statistic(), moved.statistic(), 1e-12);
  }

  @Test
  void places() {
    refused("place must be from 0 to 1, is 2", () -> new Cochran(2, 1, 2, 0.6));
    refused("place must be from 0 to 2, is -1", () -> new Grubbs(Suspect.EITHER, 3, -1, 1, 1));
    refused(
        "place must be from 0 to 4, is 5", () -> new Dixon(Form.R10, Suspect.EITHER, 5, 5, 0.5));
    refused("place must be at least 0, is -1", () -> step(-1, 1, 1));
    refused("statistic must not be below zero, is NaN", () -> step(0, NAN, 1));
    refused("critical value must not be below zero, is -1.0", () -> step(0, 1, -1));
  }

  private static Object step(int place, double statistic, double critical) {
    return new ExtremeStudentizedDeviates.Step(place, statistic, critical);
  }

  @Test
  void chancesThatCannotBeTold() {
    refused(
        "trials must leave at least 10 on each side of the critical value, leave 0.01",
        () -> TietjenMoore.criticalValue(Suspect.EITHER, 2, 10, 1e-4, 100, RANDOM));
    refused(
        "trials must leave at least 10 on each side of the critical value, leave 6.25",
        () -> TietjenMoore.criticalValue(Suspect.EITHER, 2, 10, 0.9375, 100, RANDOM));
    refused(
        "alpha must be at most 0.999999 for one end, is 0.9999999999999",
        () -> Dixon.criticalValue(Form.R10, Suspect.LARGEST, 3, 0.9999999999999));
  }

  private static Grubbs grubbs(double statistic, double chance) {
    return new Grubbs(Suspect.EITHER, 3, 0, statistic, chance);
  }

  @Test
  void pairsOfOutliers() {
    refused("needs at least 4 values, has 3", () -> GrubbsPair.of(Suspect.EITHER, 1, 2, 3));
    refused("n must be from 4 to 60, is 61", () -> GrubbsPair.of(Suspect.EITHER, new double[61]));
    refused("all other values are equal: 1.0", () -> GrubbsPair.of(Suspect.EITHER, 1, 5, 1, 6));
    refused("n must be from 4 to 60, is 3", () -> GrubbsPair.criticalValue(Suspect.EITHER, 3, 0.1));
    refused(
        "alpha must be between 0 and 1, is NaN",
        () -> GrubbsPair.criticalValue(Suspect.EITHER, 4, NAN));
    List<Integer> places = List.of(0, 1);
    refused(
        "n must be from 4 to 60, is 3", () -> new GrubbsPair(Suspect.EITHER, 3, places, 0.5, 0.5));
    refused(
        "statistic must be from 0 to 1, is -0.5",
        () -> new GrubbsPair(Suspect.EITHER, 4, places, -0.5, 0.5));
    refused(
        "chance must be from 0 to 1, is -0.5",
        () -> new GrubbsPair(Suspect.EITHER, 4, places, 0.5, -0.5));
  }

  @Test
  void manyOutliers() {
    double[] values = {1, 2, 3, 9};
    refused("outliers looked for must be from 1 to 2, is 3", () -> deviates(3, 0.05, values));
    refused("outliers looked for must be from 1 to 2, is 0", () -> deviates(0, 0.05, values));
    refused("alpha must be between 0 and 1, is 1.0", () -> deviates(1, 1, values));
    refused("needs at least 3 values, has 2", () -> deviates(1, 0.05, 1, 2));
    refused("all other values are equal: 1.0", () -> deviates(2, 0.05, 1, 1, 5, 9));
    refused(
        "outliers looked for must be from 1 to 2, is 0",
        () -> new ExtremeStudentizedDeviates(4, 0.05, List.of()));
    refused(
        "alpha must be between 0 and 1, is 0.0",
        () -> new ExtremeStudentizedDeviates(4, 0, List.of()));
    refused("outliers must be from 1 to 2, is 3", () -> tietjen(3, 100, values));
    refused("outliers must be from 1 to 2, is 0", () -> tietjen(0, 100, values));
    refused("trials must be at least 100, is 99", () -> tietjen(1, 99, values));
    refused("needs at least 3 values, has 2", () -> tietjen(1, 100, 1, 2));
    refused("all other values are equal: 1.0", () -> tietjen(1, 100, 1, 1, 9));
    refused(
        "alpha must be between 0 and 1, is 0.0",
        () -> TietjenMoore.criticalValue(Suspect.EITHER, 1, 4, 0, 100, RANDOM));
    refused(
        "outliers must be from 1 to 2, is 3",
        () -> TietjenMoore.criticalValue(Suspect.EITHER, 3, 4, 0.1, 100, RANDOM));
    refused("statistic must be from 0 to 1, is NaN", () -> tietjenRecord(NAN, 0.5));
    refused("chance must be from 0 to 1, is NaN", () -> tietjenRecord(0.5, NAN));
    refused(
        "trials must be at least 100, is 1",
        () -> new TietjenMoore(Suspect.EITHER, 4, List.of(1), 0.5, 0.5, 1));
    refused("standard uncertainty must not be below zero, is NaN", () -> biasOf(1, NAN));
    refused("reference is Infinity", () -> biasOf(INFINITE, 1));
  }

  private static Object deviates(int most, double alpha, double... values) {
    return ExtremeStudentizedDeviates.of(most, alpha, values);
  }

  private static Object tietjen(int outliers, int trials, double... values) {
    return TietjenMoore.of(Suspect.EITHER, outliers, trials, RANDOM, values);
  }

  private static Object tietjenRecord(double statistic, double chance) {
    return new TietjenMoore(Suspect.EITHER, 4, List.of(1), statistic, chance, 100);
  }

  @Test
  void simulatedFigures() {
    refused("value is NaN", () -> new Simulated(NAN, 1));
    refused("standard error must not be below zero, is NaN", () -> new Simulated(1, NAN));
  }

  @Test
  void gaps() {
    refused("needs at least 3 values, has 2", () -> Dixon.of(Suspect.EITHER, 1, 2));
    refused("needs at least 3 values, has 2", () -> Dixon.of(Form.R10, Suspect.EITHER, 1, 2));
    refused("n must be at least 3, is 2", () -> Form.forSize(2));
    refused("n must be from 6 to 100 for R22, is 5", () -> dixon(Form.R22, 5, 0.5));
    refused("n must be from 3 to 100 for R10, is 2", () -> dixon(Form.R10, 2, 0.5));
    refused("n must be from 5 to 100 for R21, is 101", () -> dixon(Form.R21, 101, 0.5));
    refused(
        "n must be from 4 to 100 for R11, is 3",
        () -> Dixon.of(Form.R11, Suspect.LARGEST, 1, 2, 3));
    refused("statistic must be from 0 to 1, is NaN", () -> dixon(Form.R10, 5, NAN));
    refused("statistic must be from 0 to 1, is 1.5", () -> dixon(Form.R10, 5, 1.5));
    refused("all values beyond the gap are equal: 1.0", () -> Dixon.of(Suspect.LARGEST, 1, 1, 7));
    refused(
        "n must be from 3 to 100 for R10, is 2",
        () -> Dixon.criticalValue(Form.R10, Suspect.EITHER, 2, 0.1));
    refused(
        "alpha must be between 0 and 1, is 0.0",
        () -> Dixon.criticalValue(Form.R10, Suspect.EITHER, 3, 0));
  }

  private static Dixon dixon(Form form, int n, double statistic) {
    return new Dixon(form, Suspect.EITHER, n, 0, statistic);
  }

  @Test
  void samples() {
    double[] good = {1, 2};
    refused("samples must be at least 2, is 1", () -> SamplesAlike.of(Ties.MIDRANK, good));
    refused("needs at least 1 value, has 0", () -> alike(good, new double[0]));
    refused("values in all must be at least 4, is 3", () -> alike(good, new double[1]));
    refused("all values are equal: 0.0", () -> alike(new double[2], new double[2]));
    refused("value 1 is NaN, not a usable number", () -> alike(good, new double[] {NAN, 1}));
    refused(
        "trials must be at least 100, is 99",
        () -> SamplesAlike.permutationChance(Ties.MIDRANK, 99, RANDOM, good, good));
    refused("samples must be at least 2, is 1", () -> new SamplesAlike(Ties.MIDRANK, 1, 1, 1));
    refused("statistic is NaN", () -> new SamplesAlike(Ties.MIDRANK, 2, NAN, 1));
    refused("deviation must be above zero, is 0.0", () -> new SamplesAlike(Ties.MIDRANK, 2, 1, 0));
  }

  private static Object alike(double[] a, double[] b) {
    return SamplesAlike.of(Ties.FROM_RIGHT, a, b);
  }

  @Test
  void counts() {
    refused("tries must be at least 1, is 0", () -> new ObservedShare(0, 0));
    refused("count must be from 0 to 5, is 6", () -> new ObservedShare(6, 5));
    refused("count must be from 0 to 5, is -1", () -> new ObservedShare(-1, 5));
    ObservedShare share = new ObservedShare(1, 5);
    refused("level must be between 0 and 1, is 0.0", () -> share.exactInterval(0));
    refused("level must be between 0 and 1, is 1.0", () -> share.scoreInterval(1));
    refused("level must be between 0 and 1, is NaN", () -> share.lowerBound(NAN));
    refused("level must be between 0 and 1, is 95.0", () -> share.upperBound(95));
    refused("share to test against must be between 0 and 1, is 1.0", () -> share.scoreAgainst(1));
    refused("count must be at least 0, is -1", () -> new ObservedCount(-1, 1));
    refused(
        "count must be below 1000000000, is 1000000000", () -> new ObservedCount(1_000_000_000, 1));
    refused("exposure must be above zero, is 0.0", () -> new ObservedCount(1, 0));
    ObservedCount count = new ObservedCount(1, 5);
    refused("level must be between 0 and 1, is 0.0", () -> count.exactInterval(0));
    refused("level must be between 0 and 1, is NaN", () -> count.lowerBound(NAN));
    refused("level must be between 0 and 1, is 95.0", () -> count.upperBound(95));
    refused("mean must not be below zero, is NaN", () -> PoissonTail.atLeast(1, NAN));
    refused("mean must not be below zero, is -1.0", () -> PoissonTail.atMost(1, -1));
    refused("n must be at least 0, is -1", () -> BinomialTail.atMost(1, -1, 0.5));
    refused("p must be from 0 to 1, is -0.5", () -> BinomialTail.atMost(1, 1, -0.5));
  }
}
