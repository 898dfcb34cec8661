package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.quietline.bench.Method.ProductLimits;
import org.quietline.stats.capability.PerformanceIndex;
import org.quietline.stats.sample.CensoredNormal;
import org.quietline.stats.sample.CensoredSample;
import org.quietline.stats.sample.Summary;

/** Capability against CAP-1: 24 batches, mean 0.182, deviation 0.021, limit 0.240. */
class ProcessCapabilityTest {
  /** Normal scores of 24 values, moved and scaled to CAP-1 (SciPy 1.17.1). */
  private static final String[] CAP_1 = {
    "0.139760", "0.149490", "0.155186", "0.159466", "0.163011", "0.166110", "0.168914", "0.171514",
    "0.173971", "0.176330", "0.178622", "0.180878", "0.183122", "0.185378", "0.187670", "0.190029",
    "0.192486", "0.195086", "0.197890", "0.200989", "0.204534", "0.208814", "0.214510", "0.224240"
  };

  /** In an order that is not that of their size. */
  private static TestBench batches(String... values) {
    int step = values.length % 7 == 0 ? 5 : 7;
    String[] mixed = new String[values.length];
    for (int i = 0; i < values.length; i++) {
      mixed[i] = values[i * step % values.length];
    }
    return inOrder(mixed);
  }

  private static TestBench inOrder(String... values) {
    TestBench bench = new TestBench();
    for (int i = 0; i < values.length; i++) {
      bench.product(TestBench.START.plusHours(i), "B-" + i, values[i], values[i]);
    }
    return bench;
  }

  @Test
  void batches_that_wander_get_no_index_and_a_reason() {
    String why = capability(inOrder(CAP_1)).index().why().orElseThrow();
    assertTrue(why.startsWith("the batches are not stable"), why);
  }

  /** The lower half of a normal population, its middle on the limit. */
  @Test
  void results_that_stop_at_the_limit_get_no_index_and_a_reason() {
    String[] cut = new String[40];
    for (int i = 0; i < cut.length; i++) {
      double score = org.quietline.stats.distribution.Normal.quantile((i + 0.5) / 80);
      cut[i] = BigDecimal.valueOf(0.24 + 0.02 * score).toPlainString();
    }
    Capability found = capability(batches(cut));
    assertEquals(0, found.beyond());
    String why = found.index().why().orElseThrow();
    assertTrue(why.startsWith("the results stop at the limit as if"), why);
  }

  private static Capability capability(TestBench bench) {
    return bench.method("2026-01").capability().value().orElseThrow();
  }

  @Test
  void twenty_four_batches_support_only_the_published_lower_bound() {
    Capability found = capability(batches(CAP_1));
    Capability.Index index = found.index().value().orElseThrow();
    assertEquals(0.92063, index.ppk(), 5e-5);
    assertEquals(0.66674, index.lower95(), 5e-5);
    assertEquals(2873.13, index.expectedBeyondPerMillion(), 0.01);
    assertEquals(Capability.Shape.NORMAL, found.shape());
    // norm.sf of the noncentralities over sqrt(24) at nct.cdf 0.975 and 0.025, SciPy 1.17.1
    assertEquals(1.3453e-4, index.beyond95().lower(), 1e-7);
    assertEquals(0.0309319, index.beyond95().upper(), 1e-6);
    assertEquals(0, found.beyond());
    assertEquals(24, found.batches().size());
  }

  @Test
  void a_lower_limit_counts_too_and_the_nearer_one_is_told() {
    TestBench bench = batches(CAP_1);
    bench.limits =
        Optional.of(
            new ProductLimits(
                Optional.of(new BigDecimal("0.150")),
                Optional.of(new BigDecimal("0.240")),
                Optional.empty()));
    Capability found = capability(bench);
    assertEquals(
        (0.182 - 0.150) / (3 * 0.02099989), found.index().value().orElseThrow().ppk(), 1e-6);
    assertEquals(2, found.beyond());
  }

  @Test
  void a_skewed_shape_gets_the_index_of_its_logarithms() {
    String[] skewed = new String[30];
    double[] logs = new double[30];
    for (int i = 0; i < 30; i++) {
      BigDecimal value = BigDecimal.valueOf(Math.exp(i / 5.0) / 2000);
      skewed[i] = value.toPlainString();
      logs[i] = Math.log(value.doubleValue());
    }
    Capability found = capability(batches(skewed));
    assertEquals(Capability.Shape.LOGNORMAL, found.shape());
    Capability.Index index = found.index().value().orElseThrow();
    PerformanceIndex expected = PerformanceIndex.upper(Summary.of(logs), Math.log(0.24));
    assertEquals(expected.index(), index.ppk(), 1e-12);
    assertEquals(expected.lowerBound(0.95), index.lower95(), 1e-12);
    assertEquals(expected.shareBeyondInterval(0.95).upper(), index.beyond95().upper(), 1e-12);
    assertTrue(index.beyond95().contains(index.expectedBeyondPerMillion() / 1e6));
  }

  @Test
  void a_shape_of_two_heaps_gets_no_index_and_a_reason() {
    String[] heaps = new String[40];
    for (int i = 0; i < 40; i++) {
      heaps[i] = (i % 2 == 0 ? "0.10" : "0.20") + (i * 3 % 10);
    }
    Capability found = capability(batches(heaps));
    assertEquals(Capability.Shape.NEITHER, found.shape());
    assertEquals(
        Optional.of(
            "the results are shaped like neither a normal nor a lognormal distribution, so an"
                + " index would mislead; 0 of 40 are beyond the limit"),
        found.index().why());
  }

  @Test
  void nine_batches_are_too_few() {
    TestBench bench = batches("1", "2", "3", "4", "5", "6", "7", "8", "9");
    assertEquals(
        Optional.of("needs 10 product results, has 9"), bench.method("2026-01").capability().why());
  }

  @Test
  void equal_batches_and_a_missing_limit_are_said() {
    TestBench bench = batches("1", "1", "1", "1", "1", "1", "1", "1", "1", "1");
    assertEquals(
        Optional.of("needs product results that differ: all 10 are the same number"),
        bench.method("2026-01").capability().why());
    bench.limits = Optional.empty();
    assertEquals(
        Optional.of("no product limit is set for this method"),
        bench.method("2026-01").capability().why());
  }

  @Test
  void bounds_away_from_the_limit_are_used_as_bounds() {
    TestBench bench = batches(CAP_1);
    bench.product(TestBench.START.plusDays(3), "B-98", "<0.15", "<0.15");
    bench.product(TestBench.START.plusDays(3), "B-99", "<0.15", "0.148");
    bench.product(TestBench.START.plusDays(3), "B-97", "", "");
    Capability found = capability(bench);
    assertEquals(2, found.bounds());
    assertEquals(1, found.leftOut());
    CensoredSample sample =
        CensoredSample.of(found.batches().stream().mapToDouble(Capability.Batch::value).toArray())
            .withBelow(0.15, 0.149);
    CensoredNormal fit =
        assertInstanceOf(CensoredNormal.class, sample.fit(CensoredSample.Shape.NORMAL));
    assertEquals(fit.mean(), found.mean(), 1e-12);
    assertEquals(
        (0.24 - fit.mean()) / (3 * fit.scale() * Math.sqrt(26 / 25.0)),
        found.index().value().orElseThrow().ppk(),
        1e-12);
  }

  @Test
  void more_bounds_than_numbers_leave_no_index() {
    TestBench bench = batches(CAP_1);
    for (int i = 0; i < 25; i++) {
      bench.product(TestBench.START.plusDays(3).plusHours(i), "L-" + i, "<0.15", "<0.15");
    }
    assertEquals(
        Optional.of("25 results are only a bound, so the spread is not known"),
        capability(bench).index().why());
  }

  @Test
  void the_share_that_is_measurement_needs_control_results() {
    TestBench bench = batches(CAP_1);
    assertEquals(
        Optional.of("needs 6 control results of one material, has 0"),
        capability(bench).measurementShare().why());
    String[] controls = {"0.195", "0.205", "0.195", "0.205", "0.195", "0.205"};
    for (int i = 0; i < controls.length; i++) {
      bench.control(TestBench.START.plusDays(i).plusMinutes(7), controls[i], controls[i]);
    }
    // deviation of the six controls: 0.005 * sqrt(6/5)
    assertEquals(
        3.0e-5 / (0.020999889800953 * 0.020999889800953),
        capability(bench).measurementShare().value().orElseThrow(),
        1e-9);
    bench.control(TestBench.START.plusDays(9), "0.9", "0.9");
    assertEquals(
        Optional.of("control results scatter as much as the product results do"),
        capability(bench).measurementShare().why());
  }

  @Test
  void bounds_beyond_the_limit_are_counted_and_leave_no_index() {
    TestBench bench = batches(CAP_1);
    bench.product(TestBench.START.plusDays(3), "B-98", ">0.300", ">0.300");
    bench.product(TestBench.START.plusDays(4), "B-99", ">0.200", "0.21");
    Capability found = capability(bench);
    assertEquals(1, found.beyond());
    assertEquals(1, found.censoredBeyond());
    assertEquals(
        Optional.of("2 results are only a bound on the limit's side, so the spread is not known"),
        found.index().why());
  }

  @Test
  void with_few_batches_bounds_beyond_the_limit_are_still_told() {
    TestBench bench = batches("0.1");
    bench.product(TestBench.START.plusDays(3), "B-98", ">0.300", ">0.300");
    assertEquals(
        Optional.of("needs 10 product results, has 1; 1 more are a bound beyond the limit"),
        bench.method("2026-01").capability().why());
  }

  @Test
  void at_most_so_many_are_beyond_as_the_lower_bound_allows() {
    Capability.Index index = capability(batches(CAP_1)).index().value().orElseThrow();
    // 1e6 * norm.sf(3 * 0.6667436741646097), SciPy 1.17.1
    assertEquals(22737.7, index.atMostBeyondPerMillion(), 0.05);
  }
}
