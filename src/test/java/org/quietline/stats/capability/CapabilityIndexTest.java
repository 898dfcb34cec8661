package org.quietline.stats.capability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.ChiSquare;
import org.quietline.stats.distribution.NoncentralT;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.sample.Summary;

class CapabilityIndexTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();
  private final Reference computed = Reference.read("capability-bounds");

  @Test
  void ppkIntervalsAndShares() {
    for (int i = 0; i < 7; i++) {
      String row = "/expected/ppk/" + i + "/";
      double index = computed.number(row + 0);
      Summary s = new Summary(computed.at(row + 1).asInt(), 0, 1);
      PerformanceIndex got = PerformanceIndex.upper(s, 3 * index);
      String name = "Ppk " + index + " of " + s.n() + ": ";
      check(PerformanceIndex.class, name, row, got.interval(0.95), 2);
      check(PerformanceIndex.class, name + "share beyond, ", row, got.shareBeyondInterval(0.95), 4);
      PerformanceIndex mirrored = PerformanceIndex.lower(s, -3 * index);
      assertEquals(got.interval(0.95), mirrored.interval(0.95));
      assertEquals(got.shareBeyondInterval(0.95), mirrored.shareBeyondInterval(0.95));
    }
  }

  @Test
  void cpkBoundsWithDegreesOfFreedomOfTheirOwn() {
    for (int i = 0; i < 5; i++) {
      String row = "/expected/cpk/" + i + "/";
      double index = computed.number(row + 0);
      int n = computed.at(row + 1).asInt();
      WithinDeviation within = new WithinDeviation(1, computed.number(row + 2));
      CapabilityIndex got = new CapabilityIndex(n, 0, within, NONE, OptionalDouble.of(3 * index));
      String name = "Cpk " + index + " of " + n + " with " + within.degreesOfFreedom() + ": ";
      assertRelative(index, got.index(), 1e-15, name);
      computed.check(CapabilityIndex.class, name + "bound", row + 3, got.lowerBound(0.95));
      check(CapabilityIndex.class, name, row, got.interval(0.95), 4);
    }
  }

  private void check(Class<?> subject, String name, String row, Interval got, int column) {
    computed.check(subject, name + "lower end", row + column, got.lower());
    computed.check(subject, name + "upper end", row + (column + 1), got.upper());
  }

  @Test
  void spreadBounds() {
    for (int i = 0; i < 4; i++) {
      String row = "/expected/spread/" + i + "/";
      double index = computed.number(row + 0);
      SpreadIndex got = new SpreadIndex(-3 * index, 3 * index, 1, computed.number(row + 1));
      String name = "Cp " + index + " with " + got.degreesOfFreedom() + ": ";
      computed.check(SpreadIndex.class, name + "index", row + 0, got.index());
      computed.check(SpreadIndex.class, name + "bound", row + 2, got.lowerBound(0.95));
      check(SpreadIndex.class, name, row, got.interval(0.95), 3);
    }
  }

  @Test
  void noncentralTWithBrokenDegreesOfFreedom() {
    for (int i = 0; i < 7; i++) {
      String row = "/expected/noncentral/" + i + "/";
      double t = computed.number(row + 0);
      double df = computed.number(row + 1);
      double delta = computed.number(row + 2);
      String what = "below " + t + " with " + df + " and " + delta;
      computed.check(NoncentralT.class, what, row + 3, NoncentralT.cdf(t, df, delta));
    }
    assertEquals(NoncentralT.cdf(3.0, 7, 2), NoncentralT.cdf(3.0, 7.0, 2));
  }

  @Test
  void bookExampleOfCp() {
    Reference book = Reference.read("cp-interval-montgomery");
    Summary s = new Summary(book.at("/data/n").asInt(), 50, book.number("/data/deviation"));
    SpreadIndex got = SpreadIndex.of(s, book.number("/data/lower"), book.number("/data/upper"));
    book.check(SpreadIndex.class, "book: Cp", "/expected/index", got.index());
    // the book multiplies the rounded 2.29, which moves the ends by up to 0.006
    Interval interval = got.interval(0.95);
    book.check(SpreadIndex.class, "book: lower", "/expected/lower95", interval.lower(), 0.0061);
    book.check(SpreadIndex.class, "book: upper", "/expected/upper95", interval.upper(), 0.0061);
  }

  @Test
  void handbookExampleWithin() {
    Reference nist = Reference.read("nist-6.1.6-capability");
    OptionalDouble lower = OptionalDouble.of(nist.number("/data/LSL"));
    OptionalDouble upper = OptionalDouble.of(nist.number("/data/USL"));
    double mean = nist.number("/data/mean");
    WithinDeviation within = new WithinDeviation(nist.number("/data/sd"), 40);
    CapabilityIndex both = new CapabilityIndex(50, mean, within, lower, upper);
    Class<?> subject = CapabilityIndex.class;
    nist.check(subject, "Cpk", "/expected/Cpk", both.index());
    nist.check(
        subject,
        "CpkU",
        "/expected/Cpu",
        new CapabilityIndex(50, mean, within, NONE, upper).index());
    nist.check(
        subject,
        "CpkL",
        "/expected/Cpl",
        new CapabilityIndex(50, mean, within, lower, NONE).index());
    nist.check(SpreadIndex.class, "Cp", "/expected/Cp", both.spread().index());
    assertEquals(40, both.spread().degreesOfFreedom());
  }

  @Test
  void movingRangeHasTheDegreesOfFreedomOfItsVariance() {
    for (int i = 0; i < 6; i++) {
      String row = "/expected/moving/" + i + "/";
      int n = computed.at(row + 0).asInt();
      double[] values = IntStream.range(0, n).mapToDouble(k -> k % 2).toArray();
      WithinDeviation got = WithinDeviation.fromMovingRange(values);
      computed.check(
          WithinDeviation.class, "degrees of freedom of " + n, row + 1, got.degreesOfFreedom());
      assertRelative(Math.sqrt(Math.PI) / 2, got.deviation(), 1e-14, "deviation");
    }
  }

  /** The mean moving range of 12 normal values varies as the formula says. */
  @Test
  void varianceOfTheMeanMovingRange() {
    SplittableRandom random = new SplittableRandom(61);
    int trials = 40_000;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < trials; i++) {
      double d = WithinDeviation.fromMovingRange(Simulation.normal(random, 12)).deviation();
      sum += d;
      squares += d * d;
    }
    double mean = sum / trials;
    double relative = (squares / trials - mean * mean) / (mean * mean);
    double m = 11;
    double v = 2 - 4 / Math.PI;
    double c = 4 / Math.PI * (Math.sqrt(0.75) + Math.PI / 12 - 1);
    double expected = Math.PI / 4 * (m * v + 2 * (m - 1) * c) / (m * m);
    Evidence.own(
        WithinDeviation.class,
        "variance of the mean moving range",
        "simulation of 40 000",
        relative,
        expected,
        0.03);
    assertEquals(1, mean, 0.005);
  }

  @Test
  void pooledDeviation() {
    List<double[]> groups = new ArrayList<>();
    for (JsonNode group : computed.at("/data/groups")) {
      groups.add(
          IntStream.range(0, group.size()).mapToDouble(i -> group.get(i).doubleValue()).toArray());
    }
    assertEquals(4, groups.size());
    WithinDeviation got = WithinDeviation.pooled(groups);
    computed.check(WithinDeviation.class, "pooled", "/expected/pooled", got.deviation());
    assertEquals(6, got.degreesOfFreedom());
  }

  @Test
  void withAllDegreesOfFreedomItIsThePerformanceIndex() {
    Summary s = new Summary(14, 2, 0.7);
    OptionalDouble lower = OptionalDouble.of(-1);
    OptionalDouble upper = OptionalDouble.of(4);
    CapabilityIndex got = new CapabilityIndex(14, 2, new WithinDeviation(0.7, 13), lower, upper);
    PerformanceIndex other = PerformanceIndex.nearer(s, lower, upper);
    assertEquals(other.index(), got.index());
    assertEquals(other.lowerBound(0.9), got.lowerBound(0.9));
    assertEquals(other.interval(0.9), got.interval(0.9));
    assertEquals(other.shareBeyondInterval(0.9), got.shareBeyondInterval(0.9));
    SpreadIndex spread = SpreadIndex.of(s, -1, 4);
    assertEquals(spread, got.spread());
    assertRelative(
        spread.index() * Math.sqrt(ChiSquare.quantile(0.1, 13) / 13),
        spread.lowerBound(0.9),
        1e-14,
        "bound");
  }

  /** Both sides, each with half the chance of missing. */
  @Test
  void shareBeyondTwoLimitsJoinsTheSides() {
    Summary s = new Summary(14, 0, 1);
    Interval both =
        PerformanceIndex.nearer(s, OptionalDouble.of(-2), OptionalDouble.of(3))
            .shareBeyondInterval(0.9);
    Interval below = PerformanceIndex.lower(s, -2).shareBeyondInterval(0.95);
    Interval above = PerformanceIndex.upper(s, 3).shareBeyondInterval(0.95);
    assertEquals(below.upper() + above.upper(), both.upper(), 1e-15);
    assertEquals(below.lower(), both.lower(), 1e-15);
    assertTrue(both.contains(Normal.above(2) + Normal.above(3)));
    Interval wild =
        PerformanceIndex.nearer(
                new Summary(2, 0, 1), OptionalDouble.of(-0.1), OptionalDouble.of(0.1))
            .shareBeyondInterval(0.99);
    assertEquals(1, wild.upper());
  }

  @Test
  void moreValuesNarrow() {
    double narrow = PerformanceIndex.upper(new Summary(50, 0, 1), 4).lowerBound(0.95);
    double wide = PerformanceIndex.upper(new Summary(10, 0, 1), 4).lowerBound(0.95);
    assertTrue(wide < narrow);
    WithinDeviation few = new WithinDeviation(1, 5);
    WithinDeviation many = new WithinDeviation(1, 500);
    OptionalDouble upper = OptionalDouble.of(4);
    assertTrue(
        new CapabilityIndex(50, 0, few, NONE, upper).lowerBound(0.95)
            < new CapabilityIndex(50, 0, many, NONE, upper).lowerBound(0.95));
  }
}
