package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.assess.AcidityAgreement.Limits;
import org.quietline.assess.AcidityAgreement.Pair;
import org.quietline.bench.Acid;
import org.quietline.bench.Role;
import org.quietline.bench.Rule;
import org.quietline.bench.SignalId;
import org.quietline.stats.Simulation;

/** Acid numbers against free fatty acids; limits are those of R 4 for the same residuals. */
class MethodsAgreeTest {
  private static final double FACTOR = 1.986312039282116;
  private static final double[] FIVE = {0.010, 0.012, 0.008, 0.011, 0.009};

  private static LocalDateTime day(int day) {
    return FreeBench.START.plusDays(day);
  }

  private static void acidNumber(FreeBench bench, int day, String sample, String value) {
    bench.result("an", day(day), Role.PRODUCT, sample, "RO", value);
  }

  private static void fattyAcid(FreeBench bench, int day, String sample, String value) {
    bench.result("free-fatty-acid", day(day).plusHours(3), Role.PRODUCT, sample, "RO", value);
  }

  private static AcidityAgreement of(FreeBench bench) {
    List<AcidityAgreement> all = MethodsAgree.ask(bench.records("an"));
    assertEquals(1, all.size());
    return all.get(0);
  }

  private static FreeBench withResiduals(double percent, double... residuals) {
    FreeBench bench = new FreeBench();
    for (int i = 0; i < residuals.length; i++) {
      acidNumber(bench, i, "B-" + i, FreeBench.text(FACTOR * percent + residuals[i], 9));
      fattyAcid(bench, i, "B-" + i, FreeBench.text(percent, 9));
    }
    return bench;
  }

  @Test
  void one_percent_of_oleic_acid_is_an_acid_number_of_1_9863() {
    FreeBench bench = new FreeBench();
    acidNumber(bench, 1, "B-1", "1.9863");
    fattyAcid(bench, 1, "B-1", "1.0000");
    AcidityAgreement found = of(bench);
    assertEquals(0, found.pairs().get(0).residual(), 5e-5);
    assertEquals(1.9863, found.factor(), 5e-5);
    assertEquals(Acid.OLEIC, found.basis());
    assertFalse(found.basisStated());
    assertEquals("free-fatty-acid", found.otherMethod());
    assertEquals(day(1).plusHours(3), found.pairs().get(0).at());
    assertEquals(
        "needs 5 samples measured by both methods, has 1", found.centre().why().orElseThrow());
    assertEquals(
        "needs 5 samples measured by both methods before it, has 0",
        found.pairs().get(0).limits().why().orElseThrow());
  }

  @Test
  void it_is_asked_of_the_acid_number_only() {
    FreeBench bench = withResiduals(0.2, FIVE);
    assertEquals(List.of(), MethodsAgree.ask(bench.records("free-fatty-acid")));
    assertEquals(List.of(), MethodsAgree.ask(bench.records("tg")));
  }

  @Test
  void the_sixth_sample_is_judged_by_the_five_before_it() {
    double[] six = {0.010, 0.012, 0.008, 0.011, 0.009, 0.030};
    AcidityAgreement found = of(withResiduals(0.2, six));
    Pair sixth = found.pairs().get(5);
    Limits limits = sixth.limits().value().orElseThrow();
    assertEquals(0.010, limits.centre(), 1e-8);
    assertEquals(0.010 - 0.0114665331, limits.action().lower(), 1e-8);
    assertEquals(0.010 + 0.0114665331, limits.action().upper(), 1e-8);
    assertFalse(limits.relative());
    assertTrue(limits.provisional());
    assertTrue(sixth.isBeyond());
    Signal signal = found.signals().get(0);
    assertEquals(
        "an/PM-1/free-fatty-acid/2026-01-10T12:00/methods-disagree", signal.id().toString());
    assertEquals(limits.action().upper(), signal.limit());
    assertEquals(1, found.rate().judged());
    assertEquals(1, found.rate().observed());
    assertEquals(80.0 / 6000, found.centre().value().orElseThrow().mean(), 1e-8);
  }

  @Test
  void results_more_than_a_week_apart_are_of_two_samples() {
    FreeBench bench = new FreeBench();
    acidNumber(bench, 1, "B-1", "0.500");
    fattyAcid(bench, 8, "B-1", "0.250");
    acidNumber(bench, 1, "B-2", "0.500");
    fattyAcid(bench, 7, "B-2", "0.250");
    acidNumber(bench, 3, "B-3", "0.500");
    AcidityAgreement found = of(bench);
    assertEquals(List.of("B-2"), found.pairs().stream().map(p -> p.acidNumber().sample()).toList());
    assertEquals(2, found.unmatched());
  }

  @Test
  void levels_far_apart_are_compared_as_shares() {
    FreeBench bench = new FreeBench();
    double[] percents = {0.2, 1, 2, 0.4, 4, 2};
    for (int i = 0; i < percents.length; i++) {
      double share = i == 5 ? 1.3 : 1.05 + 0.002 * i;
      acidNumber(bench, i, "B-" + i, FreeBench.text(share * FACTOR * percents[i], 6));
      fattyAcid(bench, i, "B-" + i, FreeBench.text(percents[i], 6));
    }
    AcidityAgreement found = of(bench);
    Limits limits = found.pairs().get(5).limits().value().orElseThrow();
    assertTrue(limits.relative());
    assertEquals(0.0526 * found.pairs().get(5).level(), limits.centre(), 2e-3);
    assertTrue(found.pairs().get(5).isBeyond());
  }

  @Test
  void what_an_action_took_out_judges_no_other() {
    double[] seven = {0.010, 0.012, 0.008, 0.011, 0.009, 0.200, 0.010};
    FreeBench bench = withResiduals(0.2, seven);
    bench.takenOut(
        new SignalId("an", "PM-1", "free-fatty-acid", day(5).plusHours(3), Rule.METHODS_DISAGREE));
    AcidityAgreement found = of(bench);
    assertEquals(0.010, found.pairs().get(6).limits().value().orElseThrow().centre(), 1e-8);
    assertFalse(found.signals().get(0).open());
    assertEquals(6, found.centre().value().orElseThrow().pairs());
  }

  private static NoticeRate simulated(SplittableRandom random, double shift, boolean levelsApart) {
    FreeBench bench = new FreeBench();
    for (int i = 0; i < 25; i++) {
      double percent = levelsApart ? Math.exp(random.nextDouble(-2, 1)) : 0.2;
      double add = i == 24 ? shift : 0;
      double scale = levelsApart ? FACTOR * percent : 1;
      double residual = (0.010 + 0.003 * (Simulation.normal(random) + add)) * scale;
      double acidNumber = FACTOR * percent + residual;
      acidNumber(bench, i, "B-" + i, FreeBench.text(acidNumber, 6));
      fattyAcid(bench, i, "B-" + i, FreeBench.text(percent, 6));
    }
    LocalDate last = day(24).toLocalDate();
    Period period = new Period(shift == 0 ? day(0).toLocalDate() : last, last);
    return MethodsAgree.ask(bench.records("an", period)).get(0).rate();
  }

  @Test
  void agreeing_methods_give_the_stated_false_notices() {
    for (boolean levelsApart : new boolean[] {false, true}) {
      SplittableRandom random = new SplittableRandom(51);
      Rate rate = new Rate(2000);
      for (int i = 0; i < 2000; i++) {
        rate.add(simulated(random, 0, levelsApart));
      }
      rate.assertIs(FalseSignals.BEYOND_THREE_DEVIATIONS);
    }
  }

  @Test
  void a_sample_six_deviations_off_is_mostly_seen() {
    SplittableRandom random = new SplittableRandom(53);
    int seen = 0;
    for (int i = 0; i < 500; i++) {
      seen += simulated(random, 6, i % 2 == 0).observed();
    }
    assertTrue(seen > 450, "seen " + seen + " of 500");
  }
}
