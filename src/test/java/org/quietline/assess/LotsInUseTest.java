package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.quietline.assess.OutOfDate.Kind;
import org.quietline.bench.Method.ShelfLife;
import org.quietline.bench.Role;
import org.quietline.bench.Storage;

/** Until when the reagent lots in use last. The bench begins on 5 January 2026. */
class LotsInUseTest {
  private final TestBench made = new TestBench();

  private void tested(int day, String lot) {
    made.result(
        TestBench.START.plusDays(day), Role.CONTROL, "QC", "RO", Optional.of(lot), "0.2", "0.2");
  }

  private List<LotLife> lots() {
    return made.method("2026-01").dates().lots();
  }

  private static LotLife until(String lot, LocalDate day, long left, Kind by) {
    return new LotLife(lot, Optional.of(new LotLife.Until(day, left, by)));
  }

  /** Of a printed date and a shelf life the earlier one counts. */
  @Test
  void theEarlierDateEndsALot() {
    LocalDate opened = TestBench.START.toLocalDate();
    made.shelfLife = new ShelfLife(OptionalInt.of(60), OptionalInt.of(18));
    made.lot("L1", opened, opened.plusDays(40), Storage.REFRIGERATED);
    tested(10, "L1");
    assertEquals(List.of(until("L1", opened.plusDays(40), 30, Kind.REAGENT_EXPIRY)), lots());
    made.lots.clear();
    made.lot("L1", opened, opened.plusDays(40), Storage.AMBIENT);
    assertEquals(List.of(until("L1", opened.plusDays(18), 8, Kind.REAGENT_SHELF_LIFE)), lots());
  }

  @Test
  void onlyTheLotOfTheLatestResultIsInUse() {
    LocalDate opened = TestBench.START.toLocalDate();
    made.lot("L1", opened, opened.plusDays(4), Storage.REFRIGERATED);
    made.lot("L2", opened, opened.plusDays(8), Storage.REFRIGERATED);
    tested(3, "L1");
    tested(10, "L2");
    assertEquals(List.of(until("L2", opened.plusDays(8), -2, Kind.REAGENT_EXPIRY)), lots());
  }

  @Test
  void aLotThatReagentsCsvDoesNotNameIsNoLot() {
    tested(3, "L9");
    assertEquals(List.of(), lots());
  }
}
