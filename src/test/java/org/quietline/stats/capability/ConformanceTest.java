package org.quietline.stats.capability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.capability.Conformance.Population;
import org.quietline.stats.capability.Conformance.Risks;
import org.quietline.stats.capability.Conformance.Verdict;
import org.quietline.stats.distribution.Normal;

class ConformanceTest {
  private static final Class<?> SUBJECT = Conformance.class;
  private static final double INFINITE = Double.POSITIVE_INFINITY;
  private final Reference file = Reference.read("conformance");

  @Test
  void practitionersDecision() {
    double u = file.number("/data/uncertainty");
    Conformance c = Conformance.atMost(file.number("/data/limit"), u);
    Population process = new Population(file.number("/data/mean"), file.number("/data/deviation"));
    double result = file.number("/data/result");
    double second = file.number("/data/secondResult");
    check("chance", c.chance(result));
    check("chanceBeyond", c.chanceBeyond(result));
    check("guard", c.guardBand(0.95));
    check("acceptance", c.acceptance(0.95).orElseThrow().upper());
    check("posteriorMean", c.given(second, process).mean());
    check("posteriorDeviation", c.given(second, process).deviation());
    check("posteriorChance", c.chance(second, process));
    check("plainChance", c.chance(second));
  }

  private void check(String name, double got) {
    file.check(SUBJECT, name, "/expected/" + name, got);
  }

  @Test
  void risksOfProcesses() {
    for (int i = 0; i < 6; i++) {
      String row = "/expected/risks/" + i + "/";
      Conformance c = new Conformance(limit(row + 3), limit(row + 4), file.number(row + 2));
      Interval accepted =
          new Interval(limit(row + 5).orElse(-INFINITE), limit(row + 6).orElse(INFINITE));
      Risks got = c.risks(new Population(file.number(row + 0), file.number(row + 1)), accepted);
      // the quadrature is good to 1e-12 absolute, which is what a risk needs
      double least = 1e-12 + 1e-9 * file.number(row + 7);
      file.check(SUBJECT, "consumer's risk " + i, row + 7, got.consumers(), least);
      file.check(
          SUBJECT,
          "producer's risk " + i,
          row + 8,
          got.producers(),
          1e-12 + 1e-9 * got.producers());
    }
  }

  private OptionalDouble limit(String pointer) {
    JsonNode node = file.at(pointer);
    return node.isNull() ? OptionalDouble.empty() : OptionalDouble.of(node.doubleValue());
  }

  @Test
  void acceptanceBetweenTwoLimits() {
    for (int i = 0; i < 4; i++) {
      String row = "/expected/twoSided/" + i + "/";
      double half = file.number(row + 0);
      Conformance c = Conformance.between(7 - half, 7 + half, file.number(row + 1));
      double confidence = file.number(row + 2);
      Interval got = c.acceptance(confidence).orElseThrow();
      file.check(SUBJECT, "accepted half width " + i, row + 3, got.upper() - 7, 1e-11);
      assertEquals(7, (got.lower() + got.upper()) / 2, 1e-12);
      assertRelative(confidence, c.chance(got.lower()), 1e-11, "on the limit");
    }
    assertEquals(
        Optional.empty(), Conformance.between(0, 1, 0.3).acceptance(0.95), "never so sure");
  }

  /** Guide's examples, typed from memory to two decimals. */
  @Test
  void guidesChances() {
    Reference guide = Reference.read("jcgm106-conformance-probability");
    guide.check(
        SUBJECT,
        "guide: upper limit",
        "/expected/upper_limit_pc",
        Conformance.atMost(
                guide.number("/data/upper_limit/limit"), guide.number("/data/upper_limit/u"))
            .chance(guide.number("/data/upper_limit/estimate")));
    guide.check(
        SUBJECT,
        "guide: lower limit",
        "/expected/lower_limit_pc",
        Conformance.atLeast(
                guide.number("/data/lower_limit/limit"), guide.number("/data/lower_limit/u"))
            .chance(guide.number("/data/lower_limit/estimate")));
    guide.check(
        SUBJECT,
        "guide: two limits",
        "/expected/two_sided_pc",
        Conformance.between(
                guide.number("/data/two_sided/lower"),
                guide.number("/data/two_sided/upper"),
                guide.number("/data/two_sided/u"))
            .chance(guide.number("/data/two_sided/estimate")));
  }

  /** The quoted 0.025 for a band of twice u is a rounded 0.0228, as the file says. */
  @Test
  void guardBandsOfTheGuide() {
    Reference guide = Reference.read("guard-band-specific-risk");
    for (String width : new String[] {"1", "1.645", "2"}) {
      Conformance c = Conformance.atMost(10, 0.5);
      double edge = c.acceptedWith(0.5 * Double.parseDouble(width)).orElseThrow().upper();
      double got = c.chanceBeyond(edge);
      guide.check(SUBJECT, "risk at " + width + " u", "/crosscheck/own/" + width, got);
      guide.check(SUBJECT, "quoted at " + width + " u", "/expected/" + width, got, 0.005);
    }
  }

  @Test
  void simulatedRisks() {
    Conformance c = Conformance.between(-1.5, 2, 0.4);
    Interval accepted = c.acceptedWith(0.3).orElseThrow();
    Risks got = c.risks(new Population(0.5, 1), accepted);
    SplittableRandom random = new SplittableRandom(21);
    int trials = 300_000;
    int consumers = 0;
    int producers = 0;
    for (int i = 0; i < trials; i++) {
      double value = 0.5 + Simulation.normal(random);
      boolean good = value >= -1.5 && value <= 2;
      boolean taken = accepted.contains(value + 0.4 * Simulation.normal(random));
      consumers += !good && taken ? 1 : 0;
      producers += good && !taken ? 1 : 0;
    }
    Simulation.assertShare(got.consumers(), consumers, trials);
    Simulation.assertShare(got.producers(), producers, trials);
    Evidence.own(
        SUBJECT,
        "consumer's risk, two limits",
        "simulation of 300 000",
        (double) consumers / trials,
        got.consumers(),
        0.1);
  }

  @Test
  void verdicts() {
    Conformance c = Conformance.atMost(0.24, 0.01);
    assertEquals(Verdict.ACCEPT, c.verdict(0.22, 0.02));
    assertEquals(Verdict.UNDECIDED, c.verdict(0.2201, 0.02));
    assertEquals(Verdict.UNDECIDED, c.verdict(0.2599, 0.02));
    assertEquals(Verdict.REJECT, c.verdict(0.2601, 0.02));
    assertEquals(Verdict.ACCEPT, c.verdict(0.24, 0));
    Conformance low = Conformance.atLeast(5, 1);
    assertEquals(Verdict.ACCEPT, low.verdict(7, 2));
    assertEquals(Verdict.UNDECIDED, low.verdict(3, 2));
    assertEquals(Verdict.REJECT, low.verdict(2.9, 2));
    assertEquals(Verdict.UNDECIDED, Conformance.between(0, 1, 1).verdict(0.5, 0.6));
  }

  @Test
  void guardBandsThatMeetLeaveNothing() {
    Conformance c = Conformance.between(0, 1, 0.1);
    assertEquals(Optional.of(new Interval(0.5, 0.5)), c.acceptedWith(0.5));
    assertEquals(Optional.empty(), c.acceptedWith(0.51));
    assertEquals(Optional.of(new Interval(-1, 2)), c.acceptedWith(-1));
    Interval open = Conformance.atLeast(3, 0.1).acceptedWith(1).orElseThrow();
    assertEquals(new Interval(4, INFINITE), open);
  }

  @Test
  void chancesKeepTheirDigitsFarOut() {
    Conformance c = Conformance.atMost(0, 1);
    assertRelative(Normal.above(20), c.chance(20), 1e-13, "far beyond");
    assertRelative(Normal.above(20), c.chanceBeyond(-20), 1e-13, "far inside");
    Conformance two = Conformance.between(-1, 1, 0.1);
    assertRelative(two.chance(3), two.chance(-3), 1e-12, "mirrored");
    assertRelative(Normal.above(20), two.chance(3), 1e-12, "far beyond both");
    assertEquals(1, two.chance(0.2) + two.chanceBeyond(0.2), 1e-15);
  }

  @Test
  void widePopulationSaysNothing() {
    Conformance c = Conformance.atMost(1, 0.3);
    assertRelative(c.chance(0.8), c.chance(0.8, new Population(0, 1e6)), 1e-6, "wide");
    Population narrow = c.given(0.8, new Population(0.2, 1e-9));
    assertEquals(0.2, narrow.mean(), 1e-12);
    assertTrue(c.chance(0.8, new Population(0.2, 0.1)) > c.chance(0.8));
  }

  @Test
  void widerGuardBandMovesRiskToTheProducer() {
    Conformance c = Conformance.atMost(1, 0.2);
    Population p = new Population(0.5, 0.3);
    Risks plain = c.risks(p, c.acceptedWith(0).orElseThrow());
    Risks guarded = c.risks(p, c.acceptedWith(0.2).orElseThrow());
    assertTrue(guarded.consumers() < plain.consumers());
    assertTrue(guarded.producers() > plain.producers());
    Risks all = c.risks(p, new Interval(-INFINITE, INFINITE));
    assertRelative(Normal.above(0.5 / 0.3), all.consumers(), 1e-11, "all accepted");
    assertEquals(0, all.producers());
  }

  /** The root of {@code Φ(1 − y) − Φ(−y) = 1e-17} by mpmath. */
  @Test
  void acceptanceWithHardlyAnyConfidence() {
    Interval got = Conformance.between(0, 1, 1).acceptance(1e-17).orElseThrow();
    assertRelative(9.493780283820794, got.upper(), 1e-13, "upper end");
    assertRelative(-8.493780283820794, got.lower(), 1e-13, "lower end");
  }
}
