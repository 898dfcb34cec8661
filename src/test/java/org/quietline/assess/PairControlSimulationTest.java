package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.quietline.assess.PairFindings.OrderEffect;
import org.quietline.bench.Role;
import org.quietline.stats.Simulation;

/** Simulated product pairs: false notices with and without a level model, pairs and order found. */
class PairControlSimulationTest {
  private static final int PAIRS = 40;

  /** One pair a day, levels evenly spread over a factor, readings with six decimals. */
  private static FreeBench bench(
      SplittableRandom random, double factor, DoubleUnaryOperator deviation, double first) {
    FreeBench bench = new FreeBench();
    for (int i = 0; i < PAIRS; i++) {
      double level = 0.1 * Math.pow(factor, random.nextDouble());
      double s = deviation.applyAsDouble(level);
      bench.result(
          "tg",
          FreeBench.START.plusDays(i),
          Role.PRODUCT,
          "B-" + i,
          i % 2 == 0 ? "RO" : "ML",
          FreeBench.text(level + s * (Simulation.normal(random) + first), 6),
          FreeBench.text(level + s * Simulation.normal(random), 6));
    }
    return bench;
  }

  private static Period lastDays(int days) {
    LocalDate last = FreeBench.START.toLocalDate().plusDays(PAIRS - 1);
    return new Period(last.minusDays(days - 1), last);
  }

  private static void falseNotices(
      int histories, int days, double factor, DoubleUnaryOperator deviation) {
    SplittableRandom random = new SplittableRandom(41);
    Rate action = new Rate(histories);
    Rate warning = new Rate(histories);
    for (int i = 0; i < histories; i++) {
      Records records = bench(random, factor, deviation, 0).records("tg", lastDays(days));
      PairFindings found = PairControl.ask(records).get(0);
      assertEquals(days, found.judged().size());
      action.add(found.rate());
      warning.add(found.beyondWarning(), found.judged().size());
    }
    action.assertIs(FalseSignals.BEYOND_THREE_DEVIATIONS);
    warning.assertIs(ReadingsAgreement.SHARE_BEYOND_LIMIT);
  }

  @Test
  void levels_alike_give_the_stated_false_notices_from_the_sixth_pair_on() {
    falseNotices(2000, PAIRS - StreamControl.FEWEST_FOR_LIMITS, 2, x -> 0.003);
  }

  @Test
  void so_do_levels_apart_where_the_deviation_is_proportional() {
    falseNotices(2000, 4, 10, x -> 0.02 * x);
  }

  @Test
  void so_do_levels_apart_where_it_has_both_parts() {
    falseNotices(2000, 6, 20, x -> Math.hypot(0.003, 0.02 * x));
  }

  @Test
  void so_do_levels_apart_where_it_is_constant() {
    falseNotices(2000, 4, 10, x -> 0.02);
  }

  @Test
  void an_order_that_tells_nothing_gives_the_stated_false_notices() {
    SplittableRandom random = new SplittableRandom(43);
    Rate all = new Rate(4000);
    Rate people = new Rate(4000);
    for (int i = 0; i < 4000; i++) {
      Records records = bench(random, 2, x -> 0.003, 0).records("tg", lastDays(1));
      PairFindings found = PairControl.ask(records).get(0);
      all.add(tells(found.order().value().orElseThrow()), 1);
      people.add(found.orderByPerson().stream().anyMatch(p -> p.effect().tells()) ? 1 : 0, 1);
    }
    all.assertIs(ReadingsAgreement.CHANCE_THAT_TELLS);
    people.assertIs(ReadingsAgreement.CHANCE_THAT_TELLS);
  }

  private static int tells(OrderEffect effect) {
    return effect.tells() ? 1 : 0;
  }

  @Test
  void a_first_reading_one_deviation_high_is_mostly_told() {
    SplittableRandom random = new SplittableRandom(47);
    int told = 0;
    for (int i = 0; i < 500; i++) {
      Records records = bench(random, 2, x -> 0.003, 1).records("tg", lastDays(1));
      told += tells(PairControl.ask(records).get(0).order().value().orElseThrow());
    }
    assertTrue(told > 450, "told " + told + " of 500");
  }
}
