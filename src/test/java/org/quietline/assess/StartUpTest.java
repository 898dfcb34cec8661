package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.assess.InForce.Origin;
import org.quietline.bench.Material;
import org.quietline.bench.Method;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.Simulation;

/**
 * Limits from the first result on. Figures were recomputed with NumPy 2.4 and SciPy 1.17.1 from the
 * normal–inverse-gamma model before they were typed here.
 */
class StartUpTest {
  private static final String[] VALUES = {
    "0.201", "0.198", "0.205", "0.196", "0.203", "0.200", "0.194", "0.207", "0.199", "0.202",
    "0.197", "0.204", "0.193", "0.200", "0.206", "0.198", "0.201", "0.195", "0.203", "0.199"
  };

  private static List<Optional<InForce>> limits(TestBench bench) {
    return bench.streamOf("QC").points().stream().map(StreamFindings.Point::judgedBy).toList();
  }

  private static void check(InForce limits, Origin origin, int n, double centre, double reach) {
    assertEquals(origin, limits.origin());
    assertEquals(n, limits.results());
    assertEquals(centre, limits.centre(), 1e-12);
    assertEquals(reach, limits.reach(), 1e-11);
    assertEquals(centre + reach, limits.upperAction(), 1e-11);
  }

  @Test
  void the_first_result_is_judged_by_assigned_value_and_allowance() {
    TestBench bench = new TestBench().daily(VALUES);
    List<Optional<InForce>> limits = limits(bench);
    // t(Φ(3), 4)·(0.012/3)·√2, and for the warning t(0.975, 4)
    InForce first = limits.get(0).orElseThrow();
    check(first, Origin.TARGET, 0, 0.2, 0.037449540255897);
    assertEquals(0.015705945291820, first.upperWarning() - 0.2, 1e-12);
    assertEquals(Optional.empty(), first.from());
    check(limits.get(1).orElseThrow(), Origin.TARGET, 1, 0.2005, 0.024224891881413);
    check(limits.get(4).orElseThrow(), Origin.TARGET, 4, 0.2, 0.017371763512442);
    for (int i = 5; i < 14; i++) {
      assertEquals(Origin.EARLIER_RESULTS, limits.get(i).orElseThrow().origin());
      assertEquals(i, limits.get(i).orElseThrow().results());
    }
    for (int i = 14; i < 20; i++) {
      assertEquals(Origin.FIRST_RESULTS, limits.get(i).orElseThrow().origin());
      assertEquals(20, limits.get(i).orElseThrow().results());
    }
  }

  @Test
  void a_slip_in_the_first_result_is_a_signal() {
    TestBench bench = new TestBench().daily("0.238", "0.201");
    List<Signal> signals = bench.streamOf("QC").signals();
    assertEquals(
        List.of("tg/PM-1/QC/2026-01-05T09:00/beyond-action-limit"),
        signals.stream().map(s -> s.id().toString()).toList());
    assertEquals(0.237449540255897, signals.get(0).limit(), 1e-11);
  }

  @Test
  void without_an_assigned_value_the_first_result_is_the_centre() {
    TestBench bench = new TestBench().daily(Arrays.copyOf(VALUES, 14));
    bench.assigned = Optional.empty();
    bench.uncertainty = Optional.empty();
    List<Optional<InForce>> limits = limits(bench);
    assertEquals(Optional.empty(), limits.get(0));
    check(limits.get(1).orElseThrow(), Origin.TARGET, 1, 0.201, 0.037449540255897);
    check(limits.get(2).orElseThrow(), Origin.TARGET, 2, 0.1995, 0.024964753133519);
  }

  /** An allowance in per cent is that of the first result where no value is assigned. */
  @Test
  void an_allowance_in_per_cent_is_taken_at_the_level() {
    TestBench bench = new TestBench().daily("0.201", "0.198");
    bench.allowance = Optional.of(new Method.Allowance(new BigDecimal("6"), true));
    check(limits(bench).get(0).orElseThrow(), Origin.TARGET, 0, 0.2, 0.037449540255897);
    bench.assigned = Optional.empty();
    bench.uncertainty = Optional.empty();
    assertEquals(Optional.empty(), limits(bench).get(0));
    // a hundredth times 0.201/3 in place of 0.012/3
    check(
        limits(bench).get(1).orElseThrow(),
        Origin.TARGET,
        1,
        0.201,
        0.037449540255897 * 0.01206 / 0.012);
  }

  @Test
  void with_nothing_known_limits_begin_at_the_fourth_result() {
    TestBench bench = new TestBench().daily(Arrays.copyOf(VALUES, 14));
    bench.allowance = Optional.empty();
    for (boolean assigned : new boolean[] {true, false}) {
      if (!assigned) {
        bench.assigned = Optional.empty();
        bench.uncertainty = Optional.empty();
      }
      List<Optional<InForce>> limits = limits(bench);
      for (int i = 0; i < 3; i++) {
        assertEquals(Optional.empty(), limits.get(i));
      }
      InForce fourth = limits.get(3).orElseThrow();
      assertEquals(Origin.EARLIER_RESULTS, fourth.origin());
      // mean and deviation of 0.201, 0.198, 0.205, times t(Φ(3), 2)·√(4/3) by SciPy 1.17.1
      assertEquals(0.604 / 3, fourth.centre(), 1e-12);
      assertEquals(0.07788670934585755, fourth.reach(), 1e-10);
    }
  }

  private static TestBench afterOther(int results, String... own) {
    TestBench bench = new TestBench();
    bench.otherMaterials.add(new Material("OLD", "tg", Optional.empty(), Optional.empty()));
    for (int i = 0; i < results; i++) {
      bench.result(
          TestBench.START.minusDays(60 - i),
          Role.CONTROL,
          "OLD",
          "RO",
          Optional.empty(),
          VALUES[i % 20],
          VALUES[i % 20]);
    }
    for (int i = 0; i < own.length; i++) {
      bench.control(TestBench.START.plusDays(i), own[i], own[i]);
    }
    return bench;
  }

  @Test
  void another_materials_scatter_rules_until_the_fourteenth() {
    TestBench bench = afterOther(20, VALUES);
    List<Optional<InForce>> limits = limits(bench);
    // t(Φ(3), 4)·0.003940010686600518·√2
    check(
        limits.get(0).orElseThrow(),
        Origin.OTHER_MATERIAL,
        0,
        0.2,
        0.037449540255897 * 0.003940010686600518 / 0.004);
    for (int i = 0; i < 14; i++) {
      assertEquals(Origin.OTHER_MATERIAL, limits.get(i).orElseThrow().origin());
      assertEquals(Optional.of("OLD"), limits.get(i).orElseThrow().from());
    }
    assertEquals(Origin.FIRST_RESULTS, limits.get(14).orElseThrow().origin());
    assertEquals(Origin.TARGET, limits(afterOther(14, VALUES)).get(0).orElseThrow().origin());
    StreamFindings old = bench.streamOf("OLD");
    assertEquals(
        Optional.empty(), afterOther(14, VALUES).streamOf("OLD").points().get(0).judgedBy());
    // settled limits judge the first results afterwards
    assertEquals(Origin.FIRST_RESULTS, old.points().get(0).judgedBy().orElseThrow().origin());
    assertEquals(Origin.TARGET, old.points().get(1).judgedBy().orElseThrow().origin());
  }

  /** At twice the level the scatter is taken to be twice as large; at half the level as large. */
  @Test
  void another_level_has_the_same_share_or_the_same_amount() {
    TestBench bench = afterOther(20, "0.4001");
    bench.assigned = Optional.of(new BigDecimal("0.4001"));
    double same = 0.037449540255897 * 0.003940010686600518 / 0.004;
    check(limits(bench).get(0).orElseThrow(), Origin.OTHER_MATERIAL, 0, 0.4001, 2 * same);
    bench.assigned = Optional.of(new BigDecimal("0.1"));
    check(limits(bench).get(0).orElseThrow(), Origin.OTHER_MATERIAL, 0, 0.1, same);
    TestBench unknown = afterOther(20, "0.4001", "0.4");
    unknown.assigned = Optional.empty();
    unknown.uncertainty = Optional.empty();
    check(limits(unknown).get(1).orElseThrow(), Origin.OTHER_MATERIAL, 1, 0.4001, 2 * same);
  }

  @Test
  void a_material_without_scatter_says_nothing_and_steps_are_believed() {
    TestBench bench = new TestBench();
    bench.otherMaterials.add(new Material("OLD", "tg", Optional.empty(), Optional.empty()));
    bench.replicates = 3;
    for (int i = 0; i < 19; i++) {
      bench.result(
          TestBench.START.minusDays(60 - i),
          Role.CONTROL,
          "OLD",
          "RO",
          Optional.empty(),
          "0.1",
          "0.1",
          "0.1");
    }
    // a mean of two that differs from those of three by arithmetic alone
    bench.result(
        TestBench.START.minusDays(9), Role.CONTROL, "OLD", "RO", Optional.empty(), "0.1", "0.1");
    bench.daily("0.2");
    StreamFindings stream = bench.streamOf("QC");
    assertEquals(Origin.TARGET, stream.points().get(0).judgedBy().orElseThrow().origin());
    bench = new TestBench().daily("0.2");
    bench.allowance = Optional.of(new Method.Allowance(new BigDecimal("0.000001"), false));
    // half a step of the third decimal, for the mean of two readings
    check(
        limits(bench).get(0).orElseThrow(),
        Origin.TARGET,
        0,
        0.2,
        0.037449540255897 * 0.0005 / Math.sqrt(2) / 0.004);
  }

  @Test
  void the_limits_of_the_next_result_are_those_that_then_judge_it() {
    for (int n : new int[] {0, 1, 3, 4, 5, 8, 13, 20}) {
      TestBench bench = new TestBench();
      for (int i = 0; i < n; i++) {
        bench.daily(VALUES[i % 20]);
      }
      if (n == 0) {
        continue;
      }
      Optional<InForce> next = bench.streamOf("QC").next();
      bench.daily("0.2");
      assertEquals(next, bench.streamOf("QC").points().get(n).judgedBy(), "after " + n);
    }
    TestBench bench = new TestBench().daily(Arrays.copyOf(VALUES, 14));
    InForce next = bench.streamOf("QC").next().orElseThrow();
    assertEquals(Origin.EARLIER_RESULTS, next.origin());
    assertEquals(14, next.results());
  }

  /**
   * Over benches as the knowledge before describes them, each of the first 14 results is beyond its
   * limits with 0.27 % chance and beyond its warning limits with 5 %; the limits narrow on average.
   */
  @Test
  void the_first_results_are_beyond_their_limits_as_often_as_meant() {
    for (boolean assigned : new boolean[] {true, false}) {
      SplittableRandom random = new SplittableRandom(20261111);
      int benches = 3000;
      int[] action = new int[15];
      int[] warning = new int[15];
      int[] judged = new int[15];
      double[] reach = new double[15];
      for (int b = 0; b < benches; b++) {
        TestBench bench = new TestBench();
        double chiSquare = Arrays.stream(Simulation.normal(random, 4)).map(z -> z * z).sum();
        double sigma = 4 * Math.sqrt(4 / chiSquare);
        double mean = 200 + (assigned ? 1 : 5) * sigma * Simulation.normal(random);
        bench.assigned = assigned ? Optional.of(new BigDecimal("200")) : Optional.empty();
        bench.uncertainty = Optional.empty();
        bench.allowance = Optional.of(new Method.Allowance(new BigDecimal("12"), false));
        bench.replicates = 1;
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < 14; i++) {
          texts.add(String.format(Locale.ROOT, "%.4f", mean + sigma * Simulation.normal(random)));
        }
        for (int i = 0; i < 14; i++) {
          bench.control(TestBench.START.plusDays(i), texts.get(i));
        }
        List<StreamFindings.Point> points = points(bench);
        for (int i = 0; i < 14; i++) {
          if (points.get(i).judgedBy().isPresent()) {
            InForce limits = points.get(i).judgedBy().get();
            double value = points.get(i).value().getAsDouble();
            judged[i]++;
            action[i] += value > limits.upperAction() || value < limits.lowerAction() ? 1 : 0;
            warning[i] += value > limits.upperWarning() || value < limits.lowerWarning() ? 1 : 0;
            reach[i] += limits.reach() / sigma;
          }
        }
      }
      int first = assigned ? 0 : 1;
      assertEquals(assigned ? benches : 0, judged[0]);
      int all = 0;
      for (int i = first; i < 14; i++) {
        assertEquals(benches, judged[i]);
        Simulation.assertShare(0.05, warning[i], benches);
        Simulation.assertShare(0.0026998, action[i], benches);
        all += action[i];
        // at the sixth the knowledge before is let go
        assertTrue(i == first || i == 5 || reach[i] < reach[i - 1], "result " + (i + 1));
      }
      Simulation.assertShare(0.0026998, all, (14 - first) * benches);
    }
  }

  private static List<StreamFindings.Point> points(TestBench bench) {
    Records records = bench.records();
    Map.Entry<Records.StreamKey, List<Result>> stream =
        records.streams().entrySet().iterator().next();
    Records.StreamKey key = stream.getKey();
    List<Result> results = stream.getValue();
    Baselines baselines = Baselines.of(records, key, results);
    return StreamPoints.of(records, key, results, results, baselines).points();
  }
}
