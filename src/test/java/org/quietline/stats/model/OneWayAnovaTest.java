package org.quietline.stats.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertAgree;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class OneWayAnovaTest {
  private static final double DIGITS = 13;

  private static List<List<BigDecimal>> groups(Reference reference, String place, int count) {
    List<List<BigDecimal>> groups =
        StreamSupport.stream(reference.at(place).spliterator(), false)
            .map(
                group ->
                    StreamSupport.stream(group.spliterator(), false)
                        .map(v -> new BigDecimal(v.asText()))
                        .toList())
            .toList();
    assertEquals(count, groups.stream().mapToInt(List::size).sum(), "values");
    return groups;
  }

  private static double[][] doubles(List<List<BigDecimal>> groups) {
    return groups.stream()
        .map(g -> g.stream().mapToDouble(BigDecimal::doubleValue).toArray())
        .toArray(double[][]::new);
  }

  @ParameterizedTest
  @CsvSource({
    "sirstv, 25",
    "atmwtag, 48",
    "smls01, 189",
    "smls02, 1809",
    "smls04, 189",
    "smls05, 1809",
    "smls07, 189",
    "smls08, 1809"
  })
  void certifiedSets(String name, int n) {
    Reference reference = Reference.read("nist-strd-anova-" + name);
    OneWayAnova anova = OneWayAnova.ofDecimals(groups(reference, "/data/groups", n));
    certified(reference, name, anova);
    certified(reference, name + ": mean square between", "ms_between", anova.betweenMeanSquare());
    certified(reference, name + ": mean square within", "ms_within", anova.withinMeanSquare());
  }

  private static void certified(Reference reference, String name, OneWayAnova anova) {
    certified(reference, name + ": squares between", "ss_between", anova.betweenSquares());
    certified(reference, name + ": squares within", "ss_within", anova.withinSquares());
    certified(reference, name + ": F", "F", anova.ratio().orElseThrow().ratio());
    certified(
        reference, name + ": explained share", "r_squared", anova.explainedShare().orElseThrow());
    certified(reference, name + ": residual deviation", "residual_sd", anova.residualDeviation());
    JsonNode expected = reference.at("/expected");
    assertEquals(expected.get("df_between").asInt(), anova.betweenDegrees());
    assertEquals(expected.get("df_within").asInt(), anova.withinDegrees());
  }

  private static void certified(Reference reference, String what, String name, double got) {
    reference.checkDigits(OneWayAnova.class, what, "/expected/" + name, got, DIGITS);
  }

  @ParameterizedTest
  @ValueSource(strings = {"smls03", "smls06", "smls09"})
  void certifiedSetsOf18009Values(String name) {
    Reference reference = Reference.read("strd-anova-" + name);
    BigDecimal whole = new BigDecimal(reference.at("/data/whole").asText());
    List<List<BigDecimal>> groups = new ArrayList<>();
    for (double tenths : reference.numbers("/data/first_tenths", 9)) {
      BigDecimal first = whole.add(BigDecimal.valueOf((long) tenths, 1));
      List<BigDecimal> group = new ArrayList<>(List.of(first));
      for (int i = 1; i < reference.at("/data/group_size").asInt(); i++) {
        group.add(first.add(BigDecimal.valueOf(i % 2 == 1 ? -1 : 1, 1)));
      }
      groups.add(group);
    }
    certified(reference, name, OneWayAnova.ofDecimals(groups));
  }

  /** What the sets hold as doubles: nothing is lost but what the conversion loses. */
  @ParameterizedTest
  @CsvSource({"sirstv, 25", "atmwtag, 48", "smls04, 189", "smls07, 189"})
  void ofDoublesIsThatOfTheDoublesGiven(String name, int n) {
    double[][] values =
        doubles(groups(Reference.read("nist-strd-anova-" + name), "/data/groups", n));
    DecimalAnova exact = DecimalAnova.of(values);
    OneWayAnova anova = OneWayAnova.of(values);
    Evidence.own(
        OneWayAnova.class,
        name + " as doubles: squares between",
        "sums in 60 digits of the doubles",
        exact.between(),
        anova.betweenSquares(),
        1e-13);
    Evidence.own(
        OneWayAnova.class,
        name + " as doubles: squares within",
        "sums in 60 digits of the doubles",
        exact.within(),
        anova.withinSquares(),
        1e-13);
  }

  /** Sums of squares in 60 decimal digits. */
  private record DecimalAnova(double between, double within) {
    private static final MathContext EXACT = new MathContext(60);

    static DecimalAnova of(double[][] groups) {
      BigDecimal all = mean(Arrays.stream(groups).flatMapToDouble(Arrays::stream).toArray());
      BigDecimal between = BigDecimal.ZERO;
      BigDecimal within = BigDecimal.ZERO;
      for (double[] group : groups) {
        BigDecimal mean = mean(group);
        between = between.add(square(mean.subtract(all)).multiply(new BigDecimal(group.length)));
        for (double v : group) {
          within = within.add(square(new BigDecimal(v).subtract(mean)));
        }
      }
      return new DecimalAnova(between.doubleValue(), within.doubleValue());
    }

    private static BigDecimal square(BigDecimal v) {
      return v.multiply(v, EXACT);
    }

    private static BigDecimal mean(double[] values) {
      BigDecimal sum = BigDecimal.ZERO;
      for (double v : values) {
        sum = sum.add(new BigDecimal(v));
      }
      return sum.divide(new BigDecimal(values.length), EXACT);
    }
  }

  @Test
  void gearDiameters() {
    Reference printed = Reference.read("nist-1.3.5.4-oneway-anova-gear");
    OneWayAnova anova = OneWayAnova.of(doubles(groups(printed, "/data/batches", 100)));
    String what = "gear: ";
    published(printed, what + "squares between", "ss_batch", anova.betweenSquares());
    published(printed, what + "squares within", "ss_residual", anova.withinSquares());
    published(printed, what + "mean square between", "ms_batch", anova.betweenMeanSquare());
    published(printed, what + "mean square within", "ms_residual", anova.withinMeanSquare());
    published(printed, what + "F", "F", anova.ratio().orElseThrow().ratio());
    published(printed, what + "chance", "p", anova.ratio().orElseThrow().upperTail());
    published(printed, what + "residual deviation", "residual_sd", anova.residualDeviation());
    for (int i = 0; i < 10; i++) {
      published(printed, what + "mean of batch " + (i + 1), "batch_means/" + i, mean(anova, i));
    }
    Interval interval = anova.meanInterval(4, 0.95);
    double half = (interval.upper() - interval.lower()) / 2;
    double error = half / org.quietline.stats.distribution.Student.exceededWith(0.025, 90);
    published(printed, what + "standard error of a mean", "se_of_mean", error);
  }

  private static double mean(OneWayAnova anova, int group) {
    return anova.groups().get(group).mean();
  }

  private static void published(Reference printed, String what, String name, double got) {
    printed.check(OneWayAnova.class, what, "/expected/" + name, got);
  }

  @Test
  void fiveMachines() {
    Reference printed = Reference.read("nist-3.2.3.1-oneway-anova-machines");
    OneWayAnova anova = OneWayAnova.of(doubles(groups(printed, "/data/groups", 25)));
    String what = "machines: ";
    published(printed, what + "squares between", "ss_machine", anova.betweenSquares());
    published(printed, what + "squares within", "ss_residual", anova.withinSquares());
    published(printed, what + "mean square between", "ms_machine", anova.betweenMeanSquare());
    published(printed, what + "mean square within", "ms_residual", anova.withinMeanSquare());
    // the page divides rounded mean squares and prints 4.86; the recalculated ratio counts
    printed.check(
        OneWayAnova.class, what + "F", "/crosscheck/own/F", anova.ratio().orElseThrow().ratio());
    printed.check(
        OneWayAnova.class,
        what + "chance",
        "/crosscheck/own/p",
        anova.ratio().orElseThrow().upperTail());
  }

  @Test
  void unequalGroups() {
    Reference reference = Reference.read("one-way-unequal-groups");
    OneWayAnova anova = OneWayAnova.of(doubles(groups(reference, "/data/groups", 13)));
    String what = "unequal groups: ";
    published(reference, what + "squares between", "ss_between", anova.betweenSquares());
    published(reference, what + "squares within", "ss_within", anova.withinSquares());
    published(reference, what + "F", "F", anova.ratio().orElseThrow().ratio());
    published(reference, what + "chance", "p", anova.ratio().orElseThrow().upperTail());
    for (int i = 0; i < 4; i++) {
      String row = "means/" + i + "/";
      Interval interval = anova.meanInterval(i, 0.95);
      published(reference, what + "mean " + i, row + 0, mean(anova, i));
      published(reference, what + "lower 95 of mean " + i, row + 1, interval.lower());
      published(reference, what + "upper 95 of mean " + i, row + 2, interval.upper());
    }
    Interval difference = anova.differenceInterval(1, 2, 0.95);
    published(reference, what + "difference, lower 95", "difference_2_3/0", difference.lower());
    published(reference, what + "difference, upper 95", "difference_2_3/1", difference.upper());
  }

  @Test
  void decimalsAndDoublesAgreeWhereNothingIsLost() {
    SplittableRandom random = new SplittableRandom(41);
    double[][] values = {Simulation.normal(random, 5), Simulation.normal(random, 9)};
    List<List<BigDecimal>> decimals =
        Arrays.stream(values)
            .map(g -> Arrays.stream(g).mapToObj(BigDecimal::new).toList())
            .toList();
    OneWayAnova one = OneWayAnova.of(values);
    OneWayAnova other = OneWayAnova.ofDecimals(decimals);
    assertAgree(13.5, one.betweenSquares(), other.betweenSquares(), "between");
    assertAgree(13.5, one.withinSquares(), other.withinSquares(), "within");
    assertAgree(14, mean(one, 1), mean(other, 1), "mean");
    assertEquals(5, other.groups().get(0).n());
  }

  @Test
  void noSpreadWithinGivesNoRatio() {
    OneWayAnova anova = OneWayAnova.of(new double[] {1, 1}, new double[] {2});
    assertEquals(Optional.empty(), anova.ratio());
    assertEquals(OptionalDouble.of(1), anova.explainedShare());
    assertEquals(new Interval(2, 2), anova.meanInterval(1, 0.95));
    OneWayAnova equal = OneWayAnova.of(new double[] {1, 1}, new double[] {1});
    assertEquals(OptionalDouble.empty(), equal.explainedShare());
  }

  @Test
  void twoGroupsGiveTheSquareOfT() {
    OneWayAnova anova = OneWayAnova.of(new double[] {1, 4, 4.5}, new double[] {6, 7, 8, 5.5});
    double p = anova.ratio().orElseThrow().upperTail();
    // the interval of that level just reaches zero
    assertEquals(0, anova.differenceInterval(0, 1, 1 - p).upper(), 1e-12);
    assertTrue(anova.differenceInterval(0, 1, 1 - p * 1.01).upper() < 0);
  }

  @Test
  void theOrderOfGroupsDoesNotMatter() {
    double[] a = {1, 4, 4.5};
    double[] b = {6, 7};
    double[] c = {3};
    OneWayAnova one = OneWayAnova.of(a, b, c);
    OneWayAnova other = OneWayAnova.of(c, a, b);
    assertAgree(15, one.betweenSquares(), other.betweenSquares(), "between");
    assertAgree(15, one.withinSquares(), other.withinSquares(), "within");
  }
}
