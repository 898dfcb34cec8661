package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Revision.Advice;
import org.quietline.bench.BaselineChoice;

/** Twenty results before and after; F and t were recomputed with SciPy 1.17.1. */
class RevisionsTest {
  private static final double[] IM_1 = {
    0.201, 0.198, 0.205, 0.196, 0.203, 0.200, 0.194, 0.207, 0.199, 0.202,
    0.197, 0.204, 0.193, 0.200, 0.206, 0.198, 0.201, 0.195, 0.203, 0.199
  };

  /** The twenty with another mean and a deviation so many times as large. */
  private static String[] scaled(double shift, double factor) {
    return Arrays.stream(IM_1)
        .mapToObj(v -> String.format(Locale.ROOT, "%.9f", 0.20005 + shift + factor * (v - 0.20005)))
        .toArray(String[]::new);
  }

  private static TestBench bench(double shift, double factor) {
    return new TestBench().daily(scaled(0, 1)).daily(scaled(shift, factor));
  }

  private static Revision proposed(TestBench bench) {
    return bench.streamOf("QC").proposal().value().orElseThrow();
  }

  @Test
  void scatter_that_hardly_differs_is_pooled() {
    // 0.0052/0.00394: F = 1.742 with 19 and 19 degrees of freedom, one-sided 0.1178
    Revision revision = proposed(bench(0.0005, 0.0052 / 0.003940010686600518));
    assertEquals(Advice.POOL, revision.advice());
    assertEquals(
        0.0052 * 0.0052 / 0.003940010686600518 / 0.003940010686600518, revision.ratio(), 1e-6);
    assertEquals(0.23552120418109634, revision.ratioChance(), 1e-6);
    assertEquals(0.34274047633167243, revision.t(), 1e-6);
    assertEquals(0.7336824678579283, revision.tChance(), 1e-6);
    assertEquals(20, revision.old().results());
    assertEquals(0.20005, revision.old().mean(), 1e-9);
    assertEquals(0.003940010686600518, revision.old().deviation(), 1e-9);
    assertEquals(20, revision.fresh().results());
    assertEquals(0.20055, revision.fresh().mean(), 1e-9);
    assertEquals(0.0052, revision.fresh().deviation(), 1e-8);
    assertEquals(LocalDate.of(2026, 1, 25), revision.from());
    assertEquals(LocalDate.of(2026, 2, 13), revision.to());
    assertEquals(Optional.empty(), revision.approvedBy());
    assertEquals(Optional.empty(), revision.reason());
  }

  @Test
  void scatter_that_grew_and_a_mean_that_moved_keep_the_old_limits() {
    assertEquals(Advice.KEEP_SCATTER_GREW, proposed(bench(0, 1.7)).advice());
    assertEquals(Advice.KEEP_SCATTER_GREW, proposed(bench(0.01, 1.7)).advice());
    assertEquals(Advice.KEEP_MEAN_MOVED, proposed(bench(0.003, 1)).advice());
    assertEquals(Advice.KEEP_MEAN_MOVED, proposed(bench(-0.003, 0.5)).advice());
    Revision smaller = proposed(bench(0.0005, 0.5));
    assertEquals(Advice.REPLACE, smaller.advice());
    assertEquals(4, smaller.ratio(), 1e-5);
    // two-sided chance of F = 4 with 19 and 19
    assertEquals(0.004035915381626967, smaller.ratioChance(), 1e-6);
  }

  @Test
  void what_cannot_be_proposed() {
    TestBench bench = new TestBench().daily(Arrays.copyOf(scaled(0, 1), 14));
    assertEquals(
        Optional.of("the limits are not settled yet"), bench.streamOf("QC").proposal().why());
    bench.daily(scaled(0, 1));
    assertEquals(
        Optional.of("needs 20 results since the baseline, has 14"),
        bench.streamOf("QC").proposal().why());
    String[] equal = new String[20];
    Arrays.fill(equal, "0.2");
    assertEquals(
        Optional.of("needs results that differ"),
        new TestBench().daily(scaled(0, 1)).daily(equal).streamOf("QC").proposal().why());
  }

  private static BaselineChoice choice(int from, int to, String reason) {
    LocalDate start = TestBench.START.toLocalDate();
    return new BaselineChoice(
        "tg",
        "PM-1",
        "QC",
        start.plusDays(from),
        start.plusDays(to),
        Optional.of("RO"),
        Optional.of(reason));
  }

  @Test
  void a_revision_that_was_made_says_what_it_rested_on() {
    TestBench bench = bench(0.0005, 0.5);
    bench.baselines.add(choice(20, 39, "new lamp"));
    List<Revision> made = bench.streamOf("QC").revisions();
    assertEquals(1, made.size());
    assertEquals(Advice.REPLACE, made.get(0).advice());
    assertEquals(Optional.of("RO"), made.get(0).approvedBy());
    assertEquals(Optional.of("new lamp"), made.get(0).reason());
    assertEquals(4, made.get(0).ratio(), 1e-5);
    assertEquals(
        Optional.of("needs 20 results since the baseline, has 0"),
        bench.streamOf("QC").proposal().why());
  }

  /** Where the new limits pool old and new results, only what is new is compared with the old. */
  @Test
  void a_pooled_baseline_is_compared_by_what_is_new_in_it() {
    TestBench bench = bench(0.0005, 0.5);
    bench.baselines.add(choice(0, 19, "first"));
    bench.baselines.add(choice(1, 39, "pooled"));
    List<Revision> made = bench.streamOf("QC").revisions();
    assertEquals(1, made.size());
    assertEquals(20, made.get(0).old().results());
    assertEquals(20, made.get(0).fresh().results());
    assertEquals(4, made.get(0).ratio(), 1e-5);
    List<BaselineChoice> hardly = new ArrayList<>();
    hardly.add(choice(0, 19, "first"));
    hardly.add(choice(1, 22, "three more"));
    bench.baselines.clear();
    bench.baselines.addAll(hardly);
    assertEquals(List.of(), bench.streamOf("QC").revisions());
  }
}
