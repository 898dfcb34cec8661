package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.quietline.bench.Bench;
import org.quietline.bench.Method.ShelfLife;
import org.quietline.bench.Origin;
import org.quietline.bench.Storage;
import org.quietline.bench.Temperature;

class ReagentLifeTest {
  private static final LocalDate OPENED = LocalDate.of(2026, 2, 1);

  private final List<Temperature> temperatures = new ArrayList<>();
  private final TestBench made = new TestBench();

  private ReagentLife life(Storage storage) {
    made.lot("L1", OPENED, LocalDate.of(2026, 12, 31), storage);
    Bench bench = made.bench();
    Bench with =
        new Bench(
            bench.settings(),
            bench.results(),
            bench.calibrations(),
            bench.reagentLots(),
            bench.actions(),
            bench.outsideResults(),
            bench.conflicts(),
            temperatures);
    Records records =
        Records.of(
            with,
            with.settings().methods().get(0),
            new Period(LocalDate.of(2026, 1, 1), LocalDate.of(2026, 12, 31)),
            LocalDateTime.of(2026, 12, 31, 23, 0));
    return new ReagentLife(records, with.reagentLots().get(0));
  }

  private void temperature(LocalDateTime at, String place, String celsius) {
    temperatures.add(
        new Temperature(
            at, place, new BigDecimal(celsius), Optional.empty(), new Origin("cold-chain.csv", 2)));
  }

  /**
   * Seventeen days at 5 °C and three at 25 °C are 29 days at 5 °C where Q10 is 2, 44 where it is 3.
   */
  @Test
  void daysInTheWarmCountAsOftenAsTheRateIsHigher() {
    for (int q10 : new int[] {2, 3}) {
      double warm = 60 / ReagentLife.lifeAt(25, 60, 60.0 / (q10 * q10), 60);
      assertEquals(q10 == 2 ? 29 : 44, 17 + 3 * warm, 1e-12);
    }
  }

  @Test
  void coldNeverMakesALotLastLongerThanItsShelfLife() {
    assertEquals(60, ReagentLife.lifeAt(1, 60, 15, 60), 0);
    assertEquals(60, ReagentLife.lifeAt(5, 60, 15, 60), 0);
    assertEquals(30, ReagentLife.lifeAt(15, 60, 15, 60), 1e-12);
    assertEquals(15, ReagentLife.lifeAt(25, 60, 15, 60), 1e-12);
  }

  /** Three days at 25 °C take twelve of the sixty, so that nine are lost. */
  @Test
  void warmDaysShortenALot() {
    made.shelfLife = new ShelfLife(OptionalInt.of(60), OptionalInt.of(15));
    for (int day = 0; day < 3; day++) {
      temperature(OPENED.plusDays(10L + day).atStartOfDay(), "refrigerated", "25");
    }
    assertEquals(
        Optional.of(OPENED.plusDays(60 - 9)), life(Storage.REFRIGERATED).lastDayByWarmth());
  }

  @Test
  void aTemperatureOfAnotherPlaceDoesNotCount() {
    made.shelfLife = new ShelfLife(OptionalInt.of(60), OptionalInt.of(15));
    temperature(OPENED.plusDays(10).atStartOfDay(), "ambient", "30");
    temperature(OPENED.plusDays(11).atStartOfDay(), "L2", "30");
    assertEquals(Optional.of(OPENED.plusDays(60)), life(Storage.REFRIGERATED).lastDayByWarmth());
  }

  @Test
  void aTemperatureCountsForADayAtMost() {
    made.shelfLife = new ShelfLife(OptionalInt.of(60), OptionalInt.of(15));
    temperature(OPENED.plusDays(10).atStartOfDay(), "L1", "25");
    assertEquals(Optional.of(OPENED.plusDays(57)), life(Storage.REFRIGERATED).lastDayByWarmth());
  }

  @Test
  void withoutBothShelfLivesWarmthSaysNothing() {
    made.shelfLife = new ShelfLife(OptionalInt.of(60), OptionalInt.empty());
    temperature(OPENED.plusDays(10).atStartOfDay(), "L1", "25");
    assertEquals(Optional.empty(), life(Storage.REFRIGERATED).lastDayByWarmth());
  }

  @Test
  void aFrozenLotIsOutOfUseFromThatDay() {
    temperature(OPENED.minusDays(3).atStartOfDay(), "refrigerated", "-4");
    temperature(OPENED.plusDays(5).atTime(3, 0), "refrigerated", "-0.5");
    assertEquals(Optional.of(OPENED.plusDays(4)), life(Storage.REFRIGERATED).dayBeforeFreezing());
  }

  @Test
  void aTemperatureNamesALotOrHowItIsKept() {
    made.lot("L1", OPENED, OPENED.plusDays(90), Storage.AMBIENT);
    temperature(OPENED.atStartOfDay(), "ambient", "21");
    assertTrue(temperatures.get(0).isOf(made.lots.get(0)));
    temperature(OPENED.atStartOfDay(), "L1", "21");
    assertTrue(temperatures.get(1).isOf(made.lots.get(0)));
    temperature(OPENED.atStartOfDay(), "refrigerated", "21");
    assertFalse(temperatures.get(2).isOf(made.lots.get(0)));
  }
}
