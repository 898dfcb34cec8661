package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.assess.RetestFindings.Between;
import org.quietline.assess.RetestFindings.Move;
import org.quietline.assess.RetestFindings.Same;
import org.quietline.bench.Role;
import org.quietline.stats.Simulation;

/** Six retained samples; intervals and chance are those of R 4, t.test and qchisq. */
class RetestsTest {
  private static final String[] FIRST = {"0.200", "0.180", "0.190", "0.210", "0.220", "0.205"};
  private static final String[] AGAIN = {"0.202", "0.184", "0.193", "0.215", "0.221", "0.208"};

  private static LocalDateTime day(int day) {
    return FreeBench.START.plusDays(day);
  }

  private static FreeBench bench(int samples) {
    FreeBench bench = new FreeBench();
    bench.calibrated(day(-1), "").calibrated(day(8), "");
    for (int i = 0; i < samples; i++) {
      bench.result("tg", day(i), Role.PRODUCT, "B-" + i, "RO", FIRST[i]);
    }
    for (int i = 0; i < samples; i++) {
      String person = i % 2 == 0 ? "ML" : "RO";
      bench.result("tg", day(i == 0 ? 7 : 10 + i), Role.RETEST, "B-" + i, person, AGAIN[i]);
    }
    return bench;
  }

  private static RetestFindings of(FreeBench bench) {
    return Retests.ask(bench.records("tg")).get(0);
  }

  @Test
  void the_mean_difference_and_the_deviation_between_sessions() {
    RetestFindings found = of(bench(6));
    Move all = found.all().value().orElseThrow();
    assertEquals(6, all.samples());
    assertEquals(0.003, all.mean(), 1e-12);
    assertEquals(0.001515874, all.interval().lower(), 1e-9);
    assertEquals(0.004484126, all.interval().upper(), 1e-9);
    assertEquals(0.00347817, all.chance(), 5e-9);
    assertTrue(all.moved());
    Between between = all.between().value().orElseThrow();
    assertEquals(0.001, between.deviation(), 1e-12);
    assertEquals(5, between.degreesOfFreedom());
    assertEquals(0.000624, between.interval().lower(), 5e-7);
    assertEquals(0.002453, between.interval().upper(), 5e-7);
    assertEquals(1, found.rate().judged());
    assertEquals(1, found.rate().observed());
  }

  @Test
  void calibrations_and_people_are_told_apart() {
    RetestFindings found = of(bench(6));
    assertEquals(Same.YES, found.retests().get(0).calibration());
    assertEquals(Same.NO, found.retests().get(1).calibration());
    assertEquals("needs 5 samples, has 1", found.sameCalibration().why().orElseThrow());
    Move other = found.otherCalibration().value().orElseThrow();
    assertEquals(5, other.samples());
    assertEquals("needs 6 samples, has 5", other.between().why().orElseThrow());
    assertEquals("needs 5 samples, has 3", found.samePerson().why().orElseThrow());
    assertEquals("needs 5 samples, has 3", found.otherPerson().why().orElseThrow());
    assertEquals(7, found.retests().get(0).days(), 1e-12);
  }

  @Test
  void what_is_no_first_retest_in_another_session_is_counted_apart() {
    FreeBench bench = bench(2);
    bench.result("tg", day(30), Role.RETEST, "B-0", "RO", "0.203");
    bench.result("tg", day(30), Role.RETEST, "X-9", "RO", "0.203");
    bench.result("tg", day(30), Role.RETEST, "B-1", "RO", "<0.010");
    bench.result("tg", day(40), Role.PRODUCT, "B-8", "RO", "0.203");
    bench.result("tg", day(40).plusHours(1), Role.RETEST, "B-8", "RO", "0.203");
    RetestFindings found = of(bench);
    assertEquals(2, found.retests().size());
    assertEquals(1, found.repeated());
    assertEquals(1, found.unmatched());
    assertEquals(1, found.notNumbers());
    assertEquals(1, found.sameSession());
    assertEquals("needs 5 samples, has 2", found.all().why().orElseThrow());
  }

  @Test
  void equal_differences_and_levels_apart_say_so() {
    FreeBench equal = new FreeBench();
    FreeBench apart = new FreeBench();
    for (int i = 0; i < 6; i++) {
      String level = FreeBench.text(0.1 + 0.1 * i, 3);
      equal.result("tg", day(i), Role.PRODUCT, "B-" + i, "RO", level);
      equal.result("tg", day(i + 20), Role.RETEST, "B-" + i, "RO", level);
      apart.result("tg", day(i), Role.PRODUCT, "B-" + i, "RO", level);
      apart.result("tg", day(i + 20), Role.RETEST, "B-" + i, "RO", level + (i % 2) + "1");
    }
    assertEquals(
        "needs differences that differ: all 6 are the same number",
        of(equal).all().why().orElseThrow());
    String why = of(apart).all().value().orElseThrow().between().why().orElseThrow();
    assertTrue(
        why.startsWith("needs samples whose levels differ by a factor of at most 3, has 0.1"), why);
  }

  @Test
  void no_retest_no_finding() {
    assertEquals(List.of(), Retests.ask(new FreeBench().records("tg")));
  }

  @Test
  void samples_that_do_not_move_give_the_stated_false_notices() {
    SplittableRandom random = new SplittableRandom(61);
    Rate moved = new Rate(4000);
    Rate missed = new Rate(4000);
    for (int i = 0; i < 4000; i++) {
      FreeBench bench = new FreeBench();
      for (int k = 0; k < 8; k++) {
        double level = random.nextDouble(0.15, 0.25);
        String first = FreeBench.text(level + 0.003 * Simulation.normal(random), 6);
        String again = FreeBench.text(level + 0.003 * Simulation.normal(random), 6);
        bench.result("tg", day(k), Role.PRODUCT, "B-" + k, "RO", first);
        bench.result("tg", day(k + 20), Role.RETEST, "B-" + k, "RO", again);
      }
      RetestFindings found = of(bench);
      moved.add(found.rate());
      Between between = found.all().value().orElseThrow().between().value().orElseThrow();
      missed.add(between.interval().contains(0.003) ? 0 : 1, 1);
    }
    moved.assertIs(ReadingsAgreement.CHANCE_THAT_TELLS);
    missed.assertIs(0.05);
  }
}
