package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Drift.Decision;
import org.quietline.bench.DriftForm;
import org.quietline.bench.Material;
import org.quietline.bench.Role;

/** Which material a line speaks of, and which results it rests on; the limit is 0.240. */
class DriftPointsTest {
  private final TestBench bench = new TestBench().calibrated("C", TestBench.START);

  private void material(String key, String assigned) {
    bench.otherMaterials.add(
        new Material(key, "tg", Optional.of(new BigDecimal(assigned)), Optional.empty()));
  }

  private void results(String material, int many, String reading) {
    for (int i = 0; i < many; i++) {
      result(material, TestBench.START.plusDays(1 + i), Optional.empty(), reading);
    }
  }

  private void result(String material, LocalDateTime at, Optional<String> lot, String reading) {
    bench.result(at, Role.CONTROL, material, "RO", lot, reading, reading);
  }

  private DriftPoints points() {
    Records records = bench.records();
    return DriftPoints.of(records, TestBench.streams(records), records.calibrations());
  }

  @Test
  void the_level_nearest_to_the_limit_is_spoken_of_though_it_has_fewer_results() {
    material("LOW", "0.060");
    results("LOW", 6, "0.060");
    results("QC", 2, "0.201");
    assertEquals(Optional.of("QC"), points().material());
  }

  @Test
  void one_result_near_the_limit_speaks_for_nothing() {
    material("LOW", "0.060");
    results("LOW", 6, "0.060");
    results("QC", 1, "0.201");
    assertEquals(Optional.of("LOW"), points().material());
  }

  @Test
  void of_levels_alike_the_one_with_most_results_is_spoken_of() {
    material("NEXT", "0.205");
    results("NEXT", 2, "0.205");
    results("QC", 4, "0.201");
    assertEquals(Optional.of("QC"), points().material());
  }

  @Test
  void without_a_limit_the_highest_level_is_spoken_of() {
    bench.limits = Optional.empty();
    material("HIGH", "0.900");
    results("QC", 6, "0.200");
    results("HIGH", 2, "0.900");
    assertEquals(Optional.of("HIGH"), points().material());
  }

  /** A share that is small at the low level is beyond the allowance where batches are judged. */
  @Test
  void many_low_results_do_not_keep_a_calibration_whose_share_is_too_large_at_the_limit() {
    material("LOW", "0.020");
    for (int day = 1; day <= 22; day++) {
      double share = 0.006 * day;
      String low = String.format(Locale.ROOT, "%.5f", 0.020 * (1 + share) + (day % 2) * 0.00001);
      result("LOW", TestBench.START.plusDays(day), Optional.empty(), low);
      if (day % 7 == 1) {
        String near = String.format(Locale.ROOT, "%.4f", 0.2 * (1 + share) + (day % 2) * 0.0001);
        result("QC", TestBench.START.plusDays(day).plusHours(1), Optional.empty(), near);
      }
    }
    bench.driftForm = Optional.of(DriftForm.PROPORTIONAL);
    Records records = bench.records();
    Drift drift = new CalibrationDrift(records, TestBench.streams(records)).ask().get(0);
    assertEquals("QC", drift.pool().value().orElseThrow().material());
    // 0.6 % a day of 0.200 passes 0.012 on day 10
    assertEquals(0.0012, drift.line().value().orElseThrow().slopePerDay(), 0.00005);
    assertEquals(Decision.EXPIRED, drift.decision());
    assertEquals(1, drift.chanceBeyondAtExpiry().value().orElseThrow(), 0.01);
  }

  @Test
  void an_earlier_window_is_seen_through_the_lot_of_most_of_its_results() {
    result("QC", TestBench.START.plusDays(1), Optional.of("L1"), "0.200");
    result("QC", TestBench.START.plusDays(8), Optional.of("L1"), "0.201");
    result("QC", TestBench.START.plusDays(15), Optional.of("L2"), "0.204");
    result("QC", TestBench.START.plusDays(16), Optional.empty(), "0.205");
    bench.calibrated("D", TestBench.START.plusDays(20));
    result("QC", TestBench.START.plusDays(21), Optional.of("L2"), "0.200");
    result("QC", TestBench.START.plusDays(28), Optional.of("L3"), "0.200");
    DriftPoints points = points();
    assertEquals(1, points.leftOut());
    assertEquals(Optional.of("L3"), points.lot());
    assertEquals(
        List.of(1.0, 8.0, 16.0, 1.0, 8.0), points.used().stream().map(WindowPoint::day).toList());
    // as it stood when C was in use: each of its lots counts, and D's most frequent, the first
    DriftPoints then = points.seenFrom(0);
    assertEquals("C", then.calibration().key());
    assertEquals(4, then.current().size());
    assertEquals(1, then.leftOut());
    assertEquals(16, then.followedTo(), 1e-12);
    assertEquals(15, then.without(List.of(then.current().get(3))).followedTo(), 1e-12);
  }
}
