package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.assess.SampleEvenness.Comparison;
import org.quietline.bench.Role;
import org.quietline.stats.Simulation;

/** Pairs of samples and of the control; the F test is that of R 4. */
class HeterogeneityTest {
  private static void pair(
      FreeBench bench, int day, Role role, String person, double level, double difference) {
    bench.result(
        "tg",
        FreeBench.START.plusDays(day),
        role,
        role == Role.CONTROL ? "QC" : "B-" + day,
        person,
        FreeBench.text(level + difference / 2, 6),
        FreeBench.text(level - difference / 2, 6));
  }

  private static SampleEvenness of(FreeBench bench) {
    return Heterogeneity.ask(bench.records("tg")).get(0);
  }

  /** A control and a sample every second day. */
  private static FreeBench bench(int pairs, double product, double control) {
    FreeBench bench = new FreeBench();
    for (int i = 0; i < pairs; i++) {
      pair(bench, 2 * i, Role.CONTROL, "RO", 0.2, control);
      pair(bench, 2 * i, Role.PRODUCT, "RO", 0.22, product);
    }
    return bench;
  }

  @Test
  void samples_twice_as_far_apart_as_the_control() {
    FreeBench bench = bench(20, 0.004, 0.002);
    SampleEvenness found = of(bench);
    Comparison all = found.comparison().value().orElseThrow();
    assertEquals(20, all.productPairs());
    assertEquals(20, all.controlPairs());
    assertEquals(0.004 / Math.sqrt(2), all.productDeviation(), 1e-9);
    assertEquals(2, all.ratio(), 1e-9);
    assertEquals(0.00157912, all.chance(), 5e-9);
    assertEquals(1.273993, all.interval().lower(), 5e-6);
    assertEquals(3.139735, all.interval().upper(), 5e-6);
    assertTrue(all.uneven());
    assertEquals(Math.sqrt((16e-6 - 4e-6) / 2), all.between(), 1e-9);
    assertEquals(1, found.rate().observed());
  }

  @Test
  void other_levels_other_people_and_other_times_are_not_held_against_the_control() {
    FreeBench bench = bench(10, 0.002, 0.002);
    for (int i = 0; i < 10; i++) {
      pair(bench, 2 * i, Role.PRODUCT, "RO", 0.5, 0.05);
      pair(bench, 2 * i, Role.PRODUCT, "TB", 0.2, 0.05);
      pair(bench, 100 + i, Role.PRODUCT, "RO", 0.2, 0.05);
    }
    Comparison found = of(bench).comparison().value().orElseThrow();
    assertEquals(10, found.productPairs());
    assertEquals(1, found.ratio(), 1e-9);
    assertEquals(0, found.between(), 1e-9);
    assertFalse(found.uneven());
  }

  @Test
  void few_pairs_and_equal_pairs_say_what_is_needed() {
    FreeBench none = new FreeBench();
    pair(none, 0, Role.CONTROL, "RO", 0.2, 0.002);
    assertEquals("needs 8 control pairs, has 1", of(none).comparison().why().orElseThrow());
    FreeBench far = new FreeBench();
    for (int i = 0; i < 12; i++) {
      pair(far, i, Role.CONTROL, "RO", 0.2, 0.002);
      pair(far, i, Role.PRODUCT, "RO", i < 4 ? 0.2 : 0.6, 0.002);
    }
    assertEquals(
        "needs 8 product pairs near the level of the control, by people and in the time that have"
            + " control pairs, has 4",
        of(far).comparison().why().orElseThrow());
    assertEquals(
        "needs pairs that differ on both sides",
        of(bench(12, 0.002, 0)).comparison().why().orElseThrow());
    FreeBench single = bench(12, 0.002, 0.002);
    single.replicates = 1;
    assertEquals(List.of(), Heterogeneity.ask(single.records("tg")));
  }

  private static NoticeRate simulated(SplittableRandom random, double ratio) {
    FreeBench bench = new FreeBench();
    for (int i = 0; i < 22; i++) {
      double control = 0.003 * Math.sqrt(2) * Simulation.normal(random);
      pair(bench, i, Role.CONTROL, "RO", 0.2, control);
      double product = ratio * 0.003 * Math.sqrt(2) * Simulation.normal(random);
      pair(bench, i, Role.PRODUCT, "RO", random.nextDouble(0.17, 0.25), product);
    }
    return of(bench).rate();
  }

  @Test
  void even_samples_give_the_stated_false_notices_and_uneven_ones_are_mostly_seen() {
    SplittableRandom random = new SplittableRandom(71);
    Rate even = new Rate(4000);
    for (int i = 0; i < 4000; i++) {
      even.add(simulated(random, 1));
    }
    even.assertIs(ReadingsAgreement.CHANCE_THAT_TELLS);
    int seen = 0;
    for (int i = 0; i < 500; i++) {
      seen += simulated(random, 2.5).observed();
    }
    assertTrue(seen > 450, "seen " + seen + " of 500");
  }
}
