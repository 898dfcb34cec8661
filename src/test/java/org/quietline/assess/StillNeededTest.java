package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.Material;

class StillNeededTest {
  private static StillNeeded only(TestBench bench) {
    List<StillNeeded> needed = StillNeeded.of(bench.bench());
    assertEquals(1, needed.size());
    return needed.get(0);
  }

  @Test
  void a_method_without_anything_needs_a_calibration_and_controls() {
    TestBench bench = new TestBench();
    bench.validDays = OptionalInt.of(30);
    StillNeeded needed = only(bench);
    assertTrue(needed.needsCalibration());
    assertEquals(Optional.empty(), needed.calibratedUntil());
    assertEquals(List.of("QC"), needed.materials().stream().map(Material::key).toList());
    assertEquals(5, needed.provisionalLimits());
    assertEquals(OptionalInt.of(15), needed.settledLimits());
    assertEquals(20, needed.baseline());
  }

  @Test
  void the_latest_calibration_counts_whatever_the_order_of_the_rows() {
    TestBench bench = new TestBench();
    bench.validDays = OptionalInt.of(30);
    bench.calibrated("C-2", TestBench.START.plusDays(10)).calibrated("C-1", TestBench.START);
    StillNeeded needed = only(bench);
    assertFalse(needed.needsCalibration());
    LocalDate day = TestBench.START.plusDays(40).toLocalDate();
    assertEquals(Optional.of(day), needed.calibratedUntil());
  }

  @Test
  void a_method_that_is_not_calibrated_needs_no_calibration() {
    TestBench bench = new TestBench();
    bench.validDays = OptionalInt.empty();
    assertFalse(only(bench).needsCalibration());
    bench.calibrated("C-1", TestBench.START);
    assertEquals(Optional.empty(), only(bench).calibratedUntil());
  }

  @Test
  void a_small_baseline_never_settles() {
    TestBench bench = new TestBench();
    ChartSettings usual = ChartSettings.DEFAULTS;
    bench.chart =
        new ChartSettings(
            14, usual.limitsFrom(), usual.weighting(), usual.stopRules(), usual.noticeRules());
    assertEquals(OptionalInt.empty(), only(bench).settledLimits());
    assertEquals(14, only(bench).baseline());
  }
}
