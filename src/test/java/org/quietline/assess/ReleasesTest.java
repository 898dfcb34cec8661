package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Release.Decision;
import org.quietline.assess.Release.HeldBy;
import org.quietline.assess.Release.Judged;
import org.quietline.assess.Release.Way;
import org.quietline.assess.Release.WayOut;
import org.quietline.assess.SplitModel.Place;
import org.quietline.assess.UncertaintyBudget.Combined;
import org.quietline.bench.Method.Allowance;
import org.quietline.bench.Method.ProductLimits;
import org.quietline.bench.Method.PublishedRepeatability;
import org.quietline.bench.ReleaseSettings;
import org.quietline.bench.Role;
import org.quietline.stats.distribution.Student;

/** Batches of an invented bench of forty calibrations with three control results each. */
class ReleasesTest {
  private static final int CALIBRATIONS = 40;
  private final TestBench made = new TestBench();
  private LocalDateTime last = TestBench.START;

  @BeforeEach
  void forty_calibrations() {
    made.limits = limits("0.240");
    made.assigned = Optional.of(new BigDecimal("0.200"));
    made.uncertainty = Optional.of(new BigDecimal("0.001"));
    Random random = new Random(5);
    for (int c = 0; c < CALIBRATIONS; c++) {
      last = TestBench.START.plusDays(7L * c);
      made.calibrated("C" + c, last);
      double calibration = 0.003 * random.nextGaussian();
      for (int s = 1; s <= 3; s++) {
        double value = 0.2 + calibration + 0.002 * random.nextGaussian();
        made.control(
            last.plusDays(s),
            read(value + 0.002 * random.nextGaussian()),
            read(value + 0.002 * random.nextGaussian()));
      }
    }
  }

  private static Optional<ProductLimits> limits(String upper) {
    return Optional.of(
        new ProductLimits(Optional.empty(), Optional.of(new BigDecimal(upper)), Optional.empty()));
  }

  private static String read(double value) {
    return String.format(Locale.ROOT, "%.5f", value);
  }

  private Release release(String sample) {
    return made.review()
        .release(Optional.empty(), Optional.of(sample))
        .batches()
        .get(0)
        .releases()
        .get(0);
  }

  private Judged judged(String sample) {
    return release(sample).judged().value().orElseThrow();
  }

  private UncertaintyBudget budget() {
    Records records = made.records();
    return new Budgets(records, OutsideComparisons.differences(records))
        .of("PM-1")
        .value()
        .orElseThrow();
  }

  @Test
  void values_far_from_the_limit_are_clear_and_near_it_they_are_not() {
    made.product(last.plusDays(4), "B-1", "0.200", "0.200");
    made.product(last.plusDays(4).plusHours(1), "B-2", "0.238", "0.238");
    made.product(last.plusDays(4).plusHours(2), "B-3", "0.270", "0.270");
    assertEquals(Optional.of(Decision.WITHIN), release("B-1").decision().value());
    assertEquals(Optional.of(Decision.TOO_CLOSE_TO_CALL), release("B-2").decision().value());
    assertEquals(Optional.of(Decision.BEYOND), release("B-3").decision().value());
    assertTrue(judged("B-1").ways().isEmpty());
    assertEquals(List.of(Way.READING, Way.SESSION, Way.CALIBRATION), ways("B-2"));
  }

  private List<Way> ways(String sample) {
    return judged(sample).ways().stream().map(WayOut::way).toList();
  }

  /** The figures as a reader recomputes them from the parts. */
  @Test
  void the_chance_follows_from_the_parts() {
    made.product(last.plusDays(4), "B-2", "0.2350", "0.2370");
    Uncertainty.Budget parts = budget().statement();
    double squares =
        parts.parts().stream().mapToDouble(p -> p.uncertainty() * p.uncertainty()).sum();
    assertEquals(Math.sqrt(squares), parts.standard(), 1e-15);
    Judged judged = judged("B-2");
    assertEquals(parts.standard(), judged.uncertainty(), 1e-15);
    assertEquals(parts.degreesOfFreedom(), judged.degreesOfFreedom(), 1e-9);
    assertEquals(
        1 - Student.above((0.240 - 0.236) / judged.uncertainty(), judged.degreesOfFreedom()),
        judged.chance(),
        1e-12);
    assertEquals(
        Student.exceededWith(0.05, judged.degreesOfFreedom()) * judged.uncertainty(),
        judged.guardBand(),
        1e-12);
  }

  /** MU-1 of the practitioner: 0.00829 of bias, 0.01299 in all, 0.0260 expanded with 2. */
  @Test
  void parts_combine_as_in_the_practitioner_s_example() {
    double infinite = Double.POSITIVE_INFINITY;
    Combined all =
        UncertaintyBudget.combined(
            List.of(
                new Uncertainty.Part(Uncertainty.Kind.RESULTS, 0.010, infinite),
                new Uncertainty.Part(Uncertainty.Kind.BIAS, 0.006, infinite),
                new Uncertainty.Part(Uncertainty.Kind.BIAS_ERROR, 0.010 / Math.sqrt(6), 5),
                new Uncertainty.Part(Uncertainty.Kind.REFERENCE, 0.004, infinite)));
    assertEquals(0.01299, all.uncertainty(), 5e-6);
    assertEquals(0.02597, 2 * all.uncertainty(), 1e-5);
  }

  /** JCGM 100:2008, H.1.6, an end gauge: 32 nm with 16 degrees of freedom (from memory). */
  @Test
  void degrees_of_freedom_combine_as_in_the_guide() {
    double[][] rows = {{25, 18}, {9.7, 25.6}, {2.9, 50}, {16.6, 2}};
    List<Uncertainty.Part> parts =
        java.util.Arrays.stream(rows)
            .map(r -> new Uncertainty.Part(Uncertainty.Kind.RESULTS, r[0], r[1]))
            .toList();
    Combined all = UncertaintyBudget.combined(parts);
    assertEquals(32, Math.round(all.uncertainty()));
    assertEquals(16, Math.floor(all.degreesOfFreedom()));
  }

  /** A retest under another calibration halves what lies between calibrations. */
  @Test
  void retests_enter_the_value_and_its_uncertainty() {
    made.product(last.plusDays(4), "B-2", "0.2350", "0.2370");
    made.calibrated("C-new", last.plusDays(5));
    made.result(last.plusDays(6), Role.RETEST, "B-2", "RO", Optional.empty(), "0.2300", "0.2320");
    Release release = release("B-2");
    assertEquals(2, release.results().size());
    assertEquals(0.2335, release.value().orElseThrow(), 1e-12);
    Combined expected = budget().ofMean(List.of(new Place("C39", 1, 2), new Place("C-new", 2, 2)));
    assertEquals(expected.uncertainty(), judged("B-2").uncertainty(), 1e-15);
    Combined same = budget().ofMean(List.of(new Place("C39", 1, 2), new Place("C39", 2, 2)));
    assertTrue(judged("B-2").uncertainty() < same.uncertainty());
  }

  /** Chances of the ways out, by drawing the further result from the fitted components. */
  @Test
  void ways_out_settle_as_often_as_they_say() {
    made.product(last.plusDays(4), "B-2", "0.2340", "0.2340");
    UncertaintyBudget budget = budget();
    Judged judged = judged("B-2");
    List<Place> one = List.of(new Place("C39", 1, 2));
    Place[] more = {new Place("C39", 2, 2), new Place("new", 2, 2)};
    Random random = new Random(9);
    for (int k = 0; k < 2; k++) {
      WayOut way = judged.ways().get(k + 1);
      Combined then = budget.ofMean(List.of(one.get(0), more[k]));
      double guard = then.uncertainty() * Student.exceededWith(0.05, then.degreesOfFreedom());
      double difference = budget.ofDifference(one, more[k]).uncertainty();
      int within = 0;
      int many = 100_000;
      for (int i = 0; i < many; i++) {
        double mean = (0.234 + 0.234 + difference * random.nextGaussian()) / 2;
        within += mean <= 0.240 - guard ? 1 : 0;
      }
      assertEquals(within / (double) many, way.within(), 0.01, way.toString());
      assertEquals(then.uncertainty(), way.uncertainty(), 1e-15);
    }
  }

  @Test
  void an_outside_laboratory_counts_only_with_a_stated_uncertainty() {
    made.product(last.plusDays(4), "B-2", "0.2370", "0.2370");
    made.outside("B-9", "0.2", "");
    assertEquals(List.of(Way.READING, Way.SESSION, Way.CALIBRATION), ways("B-2"));
    made.outside("B-9", "0.2", "0.004");
    assertEquals(List.of(Way.READING, Way.SESSION, Way.CALIBRATION, Way.OUTSIDE), ways("B-2"));
    WayOut outside = judged("B-2").ways().get(3);
    assertEquals(0.002, outside.uncertainty(), 1e-15);
    // the laboratory alone decides: within at or below 0.240 less 1.645 of its 0.002
    Combined own = budget().ofMean(List.of(new Place("C39", 1, 2)));
    double z = (0.240 - 1.6448536 * 0.002 - 0.237) / Math.hypot(own.uncertainty(), 0.002);
    assertEquals(1 - Student.above(z, Double.POSITIVE_INFINITY), outside.within(), 0.005);
  }

  @Test
  void costs_give_the_chance_from_which_releasing_is_cheaper() {
    made.release =
        new ReleaseSettings(
            0.95,
            Optional.of(new ReleaseSettings.Costs(new BigDecimal("9000"), new BigDecimal("1000"))));
    made.product(last.plusDays(4), "B-2", "0.2370", "0.2370");
    assertEquals(OptionalDouble.of(0.9), judged("B-2").breakEven());
  }

  @Test
  void readings_that_disagree_and_a_date_that_is_past_hold_a_batch() {
    made.validDays = OptionalInt.of(4);
    made.published =
        Optional.of(new PublishedRepeatability(new BigDecimal("0.008"), Optional.empty()));
    made.product(last.plusDays(6), "B-1", "0.180", "0.220");
    Release release = release("B-1");
    assertEquals(
        List.of(HeldBy.READINGS_DISAGREE, HeldBy.CALIBRATION_PAST_DATE),
        release.held().stream().map(Release.Held::kind).toList());
    assertEquals(Optional.of(Decision.WITHIN), release.judged().map(Judged::byValue).value());
    assertEquals(Optional.of(Decision.TOO_CLOSE_TO_CALL), release.decision().value());
    assertEquals(Optional.of(last.plusDays(3)), release.lastControl());
  }

  /** An open stop signal holds what was tested since the last good control. */
  @Test
  void an_open_stop_signal_holds_what_came_after_the_last_good_control() {
    made.allowance = Optional.empty();
    made.product(last.plusDays(3).plusHours(2), "B-1", "0.200", "0.200");
    made.control(last.plusDays(4), "0.260", "0.260");
    Release held = release("B-1");
    assertTrue(held.held().stream().anyMatch(h -> h.kind() == HeldBy.STOP_SIGNAL), held.toString());
    made.product(last.plusDays(2).plusHours(2), "B-0", "0.200", "0.200");
    made.results.sort(java.util.Comparator.comparing(org.quietline.bench.Result::takenAt));
    assertEquals(List.of(), release("B-0").held());
  }

  @Test
  void what_cannot_be_judged_says_why() {
    made.product(last.plusDays(4), "B-1", "<0.010", "0.012");
    assertEquals(
        Optional.of("a reading is only a bound, or no number"), release("B-1").judged().why());
    made.assigned = Optional.empty();
    made.uncertainty = Optional.empty();
    made.allowance = Optional.empty();
    made.product(last.plusDays(5), "B-2", "0.200", "0.200");
    assertEquals(
        Optional.of(
            "nothing tells the bias: needs an assigned-value with its standard-uncertainty for QC,"
                + " 6 samples with an outside laboratory's result, or an allowable-bias"),
        release("B-2").judged().why());
    made.allowance = Optional.of(new Allowance(new BigDecimal("0.012"), false));
    assertTrue(release("B-2").judged().value().isPresent());
    made.calibrations.subList(3, made.calibrations.size()).clear();
    assertEquals(
        Optional.of("needs control results of one material in 4 calibrations on PM-1, has 3"),
        release("B-2").judged().why());
  }

  /** Six samples that a laboratory measured, too: the root mean square of the differences. */
  @Test
  void outside_differences_count_where_they_say_more_than_the_assigned_value() {
    for (int i = 1; i <= 6; i++) {
      made.product(last.plusDays(3).plusHours(i), "S-" + i, "0.210", "0.210");
      made.outside("S-" + i, i % 2 == 0 ? "0.200" : "0.204", i < 3 ? "0.010" : "");
    }
    List<Uncertainty.Part> parts = budget().statement().parts();
    Uncertainty.Part outside =
        parts.stream().filter(p -> p.kind() == Uncertainty.Kind.OUTSIDE).findFirst().orElseThrow();
    assertEquals(Math.sqrt((3 * 1e-4 + 3 * 3.6e-5) / 6), outside.uncertainty(), 1e-12);
    Uncertainty.Part stated =
        parts.stream()
            .filter(p -> p.kind() == Uncertainty.Kind.OUTSIDE_STATED)
            .findFirst()
            .orElseThrow();
    assertEquals(0.005, stated.uncertainty(), 1e-15);
    assertTrue(parts.stream().noneMatch(p -> p.kind() == Uncertainty.Kind.REFERENCE));
  }
}
