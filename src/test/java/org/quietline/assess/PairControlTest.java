package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.quietline.assess.PairFindings.Form;
import org.quietline.assess.PairFindings.Judged;
import org.quietline.assess.PairFindings.OrderEffect;
import org.quietline.assess.PairFindings.Resolution;
import org.quietline.assess.PairFindings.Scale;
import org.quietline.bench.Role;

/** Pairs whose numbers follow by hand; quantiles and chances are those of R 4. */
class PairControlTest {
  /** One pair a day about a level, the differences in thousandths. */
  private static FreeBench bench(double level, int... thousandths) {
    FreeBench bench = new FreeBench();
    for (int d : thousandths) {
      int i = bench.results.size();
      bench.result(
          "tg",
          FreeBench.START.plusDays(i),
          Role.PRODUCT,
          "B-" + i,
          "RO",
          FreeBench.text(level + d / 1000.0, 3),
          FreeBench.text(level, 3));
    }
    return bench;
  }

  private static PairFindings of(FreeBench bench) {
    return PairControl.ask(bench.records("tg")).get(0);
  }

  @Test
  void the_sixth_pair_is_judged_by_the_five_before_it() {
    PairFindings found = of(bench(0.2, 1, -2, 2, 0, -1, 12));
    assertEquals(1, found.judged().size());
    Judged sixth = found.judged().get(0);
    assertEquals(0.012 / Math.sqrt(2) / Math.sqrt(10e-6 / 10), sixth.statistic(), 1e-9);
    assertEquals(2.570582, sixth.warning(), 1e-6);
    assertEquals(5.507074, sixth.action(), 1e-4);
    assertTrue(sixth.isBeyond());
    assertTrue(sixth.provisional());
    assertEquals(1, found.beyondWarning());
    assertEquals(0.05, found.chanceOfSoManyWarnings(), 1e-12);
    assertEquals(0.0026998, found.chanceOfSoManyActions(), 1e-7);
    assertEquals(1, found.rate().observed());
  }

  @Test
  void only_pairs_of_the_period_are_judged_and_by_all_before_them() {
    FreeBench bench = bench(0.2, 1, -2, 2, 0, -1, 1, 2, -1, 3, 1);
    Period period =
        new Period(
            FreeBench.START.toLocalDate().plusDays(7), FreeBench.START.toLocalDate().plusDays(8));
    PairFindings found = PairControl.ask(bench.records("tg", period)).get(0);
    assertEquals(
        List.of("B-7", "B-8"), found.judged().stream().map(j -> j.result().sample()).toList());
    assertEquals(
        0.001 / Math.sqrt(2) / Math.sqrt(15e-6 / 14), found.judged().get(0).statistic(), 1e-9);
    assertEquals(2, found.rate().judged());
    assertEquals(LocalDate.of(2026, 1, 12), period.from());
  }

  @Test
  void equal_readings_are_coarse_and_a_wide_pair_after_them_is_seen() {
    FreeBench bench = bench(0.2, 0, 0, 0, 0, 0, 0, 0, 0);
    PairFindings equal = of(bench);
    assertEquals(
        "needs pairs that differ: the readings of all 8 pairs are equal",
        equal.scale().why().orElseThrow());
    assertEquals(
        "needs pairs that differ: the readings of all 8 pairs are equal",
        equal.order().why().orElseThrow());
    assertEquals(Resolution.COARSE, equal.resolution());
    assertEquals(1, equal.zeros());
    assertEquals(0, equal.rate().observed());
    assertTrue(of(bench(0.2, 0, 0, 0, 0, 0, 0, 0, 0, 9)).judged().get(3).isBeyond());
  }

  @Test
  void a_mean_of_first_less_second_is_tested() {
    PairFindings found = of(bench(0.2, 2, -1, 3, 0, 2, 1, 4, -1));
    OrderEffect order = found.order().value().orElseThrow();
    assertEquals(0.00125, order.mean(), 1e-12);
    assertEquals(0.0949765, order.chance(), 5e-8);
    assertEquals(-0.00028180, order.interval().lower(), 5e-9);
    assertEquals(0.00278180, order.interval().upper(), 5e-9);
    assertFalse(order.tells());
    assertEquals(List.of("RO"), found.orderByPerson().stream().map(p -> p.person()).toList());
    assertEquals(2, found.orderRate().judged());
    assertEquals("needs 8 pairs, has 5", of(bench(0.2, 1, 2, 3, 1, 2)).order().why().orElseThrow());
    assertEquals(
        "needs differences that differ: all 8 are the same number",
        of(bench(0.2, 1, 1, 1, 1, 1, 1, 1, 1)).order().why().orElseThrow());
    assertTrue(of(bench(0.2, 2, 1, 3, 2, 2, 1, 4, 1)).order().value().orElseThrow().tells());
  }

  @Test
  void chances_by_person_are_multiplied_by_the_people_asked_about() {
    FreeBench bench = bench(0.2, 2, -1, 3, 0, 2, 1, 4, -1);
    for (int i = 0; i < 8; i++) {
      bench.result(
          "tg",
          FreeBench.START.plusDays(40 + i),
          Role.PRODUCT,
          "C-" + i,
          "ML",
          FreeBench.text(0.2 + 0.001 * (i % 3), 3),
          "0.201");
    }
    PairFindings found = of(bench);
    assertEquals(2, found.orderByPerson().size());
    assertEquals(2 * 0.0949765, found.orderByPerson().get(1).effect().chance(), 1e-4);
  }

  @Test
  void few_pairs_and_levels_alike_keep_the_deviation_constant() {
    Scale few = of(bench(0.2, 1, -2, 2, 0, -1)).scale().value().orElseThrow();
    assertEquals(Form.CONSTANT, few.form());
    assertEquals(Optional.of("needs 25 pairs, has 5"), few.whyConstant());
    assertEquals(0.001, few.constant(), 1e-12);
    assertEquals(0.240, few.atLimit().value().orElseThrow().limit());
    FreeBench bench = new FreeBench();
    bench.limit = Optional.empty();
    for (int i = 0; i < 25; i++) {
      double level = i == 0 ? 0.1 : 0.2;
      bench.result(
          "tg",
          FreeBench.START.plusDays(i),
          Role.PRODUCT,
          "B-" + i,
          "RO",
          FreeBench.text(level + 0.001 * (i % 3), 3),
          FreeBench.text(level, 3));
    }
    Scale alike = of(bench).scale().value().orElseThrow();
    assertEquals(
        Optional.of("needs levels that differ by a factor of 3.0, has 2.01"), alike.whyConstant());
    assertEquals("needs a product limit above zero", alike.atLimit().why().orElseThrow());
  }

  /** Differences of 2 % of the level at every level, so that only the proportional form fits. */
  @Test
  void proportional_pairs_are_judged_at_their_own_level() {
    FreeBench bench = new FreeBench();
    bench.limit = Optional.of(new BigDecimal("0.500"));
    for (int i = 0; i < 42; i++) {
      double level = i < 40 ? 0.1 * (1 + i % 10) : i == 40 ? 0.1 : 1.0;
      double d = i < 40 ? 0.02 * level * (i % 2 == 0 ? 1 : -1) : 0.05;
      bench.result(
          "tg",
          FreeBench.START.plusDays(i),
          Role.PRODUCT,
          "B-" + i,
          "RO",
          FreeBench.text(level + d / 2, 5),
          FreeBench.text(level - d / 2, 5));
    }
    PairFindings found = of(bench);
    Scale scale = found.scale().value().orElseThrow();
    assertEquals(Optional.empty(), scale.whyConstant());
    Judged low = found.judged().get(35);
    Judged high = found.judged().get(36);
    assertEquals(0.1, low.level(), 1e-9);
    assertEquals(0.05 / (0.02 * 0.1), low.statistic(), 1e-6);
    assertTrue(low.isBeyond());
    assertFalse(high.isBeyond(), high.toString());
    assertTrue(scale.atLimit().value().orElseThrow().interval().lower() > 0);
  }

  @Test
  void single_readings_make_no_pairs() {
    FreeBench bench = bench(0.2, 1, 2, 3);
    bench.replicates = 1;
    assertEquals(List.of(), PairControl.ask(bench.records("tg")));
  }
}
