package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Hint.Pattern;
import org.quietline.assess.LookBack.Doubted;
import org.quietline.assess.LookBack.Since;
import org.quietline.assess.SimulatedBench.Kind;
import org.quietline.bench.Role;
import org.quietline.stats.Interval;

class LookBackTest {
  private static final String[] QUIET = {
    "0.201", "0.199", "0.201", "0.199", "0.202", "0.198", "0.200", "0.202", "0.199", "0.201",
    "0.198", "0.201", "0.199", "0.202", "0.200", "0.198", "0.201", "0.199", "0.201", "0.199"
  };

  private static LocalDateTime day(int number) {
    return TestBench.START.plusDays(number);
  }

  private static void control(TestBench bench, int day, String value) {
    bench.control(day(day), value, value);
  }

  /** Quiet to day 19, off by 0.010 from day 21 on; batches each day at noon from day 18 on. */
  private static TestBench shifted() {
    TestBench bench = new TestBench().calibrated("C-1", TestBench.START.minusDays(1)).daily(QUIET);
    batch(bench, 18, "B-18", "0.200");
    batch(bench, 19, "B-19", "0.235");
    control(bench, 20, "0.200");
    batch(bench, 20, "B-20", "0.244");
    control(bench, 21, "0.210");
    batch(bench, 21, "B-21", "0.230");
    control(bench, 22, "0.211");
    batch(bench, 22, "B-22", "0.248");
    bench.result(
        day(22).plusHours(4), Role.RETEST, "B-20", "RO", Optional.empty(), "0.246", "0.246");
    bench.product(day(22).plusHours(5), "B-23", "<0.010", "<0.010");
    control(bench, 23, "0.209");
    return bench;
  }

  private static void batch(TestBench bench, int day, String sample, String value) {
    bench.product(day(day).plusHours(3), sample, value, value);
  }

  private static LookBack lookBack(TestBench bench) {
    List<Story> stories = StoriesTest.stories(bench);
    return stories.get(stories.size() - 1).lookBack().orElseThrow();
  }

  @Test
  void it_begins_at_the_last_control_before_the_onset_that_broke_no_rule() {
    LookBack lookBack = lookBack(shifted());
    assertEquals(Since.LAST_GOOD_CONTROL, lookBack.since());
    assertEquals(Optional.of(day(20)), lookBack.from());
    assertEquals(
        List.of("B-20", "B-21", "B-22", "B-20", "B-23"),
        lookBack.results().stream()
            .sorted(java.util.Comparator.comparing(Doubted::at))
            .map(Doubted::sample)
            .toList());
    assertEquals(4, lookBack.batches(), "a batch and its retest count once");
  }

  @Test
  void results_with_a_limit_inside_stand_first_and_the_nearest_follow() {
    LookBack lookBack = lookBack(shifted());
    // an error of about 0.010: 0.244, 0.246 and 0.248 may be 0.234, 0.236 and 0.238, the limit is
    // 0.240; 0.230 stays within and becomes 0.220
    assertEquals(
        List.of(true, true, true, false, false),
        lookBack.results().stream().map(Doubted::limitInside).toList());
    assertEquals(2, lookBack.batchesAtLimit());
    Doubted nearest = lookBack.results().get(3);
    assertEquals("B-21", nearest.sample());
    assertEquals(0.010, nearest.margin().orElseThrow(), 1e-12);
    Doubted censored = lookBack.results().get(4);
    assertEquals("B-23", censored.sample());
    assertEquals(Optional.of("needs a value that is a number"), censored.corrected().why());
    assertTrue(censored.margin().isEmpty());
  }

  @Test
  void one_material_is_corrected_by_an_amount_and_every_range_holds_the_planted_one() {
    LookBack lookBack = lookBack(shifted());
    assertEquals(Hint.Per.AMOUNT, lookBack.assumed().value().orElseThrow().estimate().per());
    for (Doubted result : lookBack.results().subList(0, 4)) {
      Interval corrected = result.corrected().value().orElseThrow();
      assertTrue(corrected.contains(result.value().orElseThrow() - 0.010), result.toString());
      assertTrue(corrected.upper() < result.value().orElseThrow(), result.toString());
    }
  }

  @Test
  void without_a_good_control_it_begins_at_the_calibration_or_at_the_start_and_says_so() {
    TestBench bench = new TestBench().daily(QUIET);
    bench.calibrated("C-1", TestBench.START.minusDays(1));
    batch(bench, -3, "B-1", "0.230");
    bench.results.sort(java.util.Comparator.comparing(org.quietline.bench.Result::takenAt));
    Signal before = StoriesTest.free(TestBench.START.minusHours(2));
    LookBack lookBack = StoriesTest.stories(bench, before).get(0).lookBack().orElseThrow();
    assertEquals(Since.CALIBRATION, lookBack.since());
    assertEquals(0, lookBack.batches());
    bench.calibrations.clear();
    LookBack whole = StoriesTest.stories(bench, before).get(0).lookBack().orElseThrow();
    assertEquals(Since.START, whole.since());
    assertEquals(Optional.empty(), whole.from());
    assertEquals(1, whole.batches());
    assertFalse(whole.results().get(0).limitInside());
  }

  @Test
  void a_calibration_that_ended_the_story_ends_the_look_back_and_is_named() {
    TestBench bench = shifted();
    bench.calibrated("C-2", day(23).plusHours(2));
    for (int i = 24; i < 28; i++) {
      control(bench, i, "0.200");
      batch(bench, i, "B-" + (i + 10), "0.239");
    }
    LookBack lookBack = lookBack(bench);
    assertEquals(Optional.of("C-2"), lookBack.endedBy());
    assertEquals(4, lookBack.batches());
  }

  @Test
  void two_levels_show_a_share_and_higher_values_are_corrected_by_more() {
    SimulatedBench bench = new SimulatedBench(2).plant(Kind.PROPORTIONAL, 32, 5);
    LookBack lookBack = bench.plantedStory().orElseThrow().lookBack().orElseThrow();
    assertEquals(
        Optional.of(Pattern.PROPORTIONAL), lookBack.assumed().value().orElseThrow().pattern());
    double share = 5 * bench.deviation() / 0.175;
    for (Doubted result : lookBack.results()) {
      double value = result.value().orElseThrow();
      double true5 = value * share / (1 + share);
      assertEquals(true5, result.error().value().orElseThrow().value(), 0.25 * true5);
    }
  }

  @Test
  void a_drift_corrects_later_results_by_more() {
    SimulatedBench bench = new SimulatedBench(4).plant(Kind.CALIBRATION_DRIFT, 29, 8);
    LookBack lookBack = bench.plantedStory().orElseThrow().lookBack().orElseThrow();
    assertEquals(
        Optional.of(Pattern.CALIBRATION_DRIFT), lookBack.assumed().value().orElseThrow().pattern());
    List<Doubted> inTime =
        lookBack.results().stream()
            .filter(Doubted::pointedAt)
            .sorted(java.util.Comparator.comparing(Doubted::at))
            .toList();
    double first = inTime.get(0).error().value().orElseThrow().value();
    double last = inTime.get(inTime.size() - 1).error().value().orElseThrow().value();
    assertTrue(last > first && first > 0, first + " and " + last);
  }

  /** Quiet results about 0.176, four days at 0.170, eight quiet days, and 30 days at 0.192. */
  private static TestBench shiftedBothWays() {
    TestBench bench = new TestBench();
    bench.assigned = Optional.of(new java.math.BigDecimal("0.176"));
    bench.calibrated("C-1", TestBench.START.minusDays(1));
    for (int i = 0; i < 66; i++) {
      boolean low = i >= 24 && i < 28;
      int centre = low ? 170 : i < 36 ? 176 : 192;
      int off = (int) Math.round(1000 * Double.parseDouble(QUIET[i % QUIET.length])) - 200;
      control(bench, i, "0." + (centre + off));
      if (low) {
        batch(bench, i, "B-" + i, "0.234");
      }
    }
    return bench;
  }

  @Test
  void a_later_shift_to_the_other_side_does_not_turn_the_correction_round() {
    List<Story> stories = StoriesTest.stories(shiftedBothWays());
    assertEquals(2, stories.size());
    Story low = stories.get(0);
    assertTrue(low.open() && stories.get(1).open());
    double size = low.sizes().get(0).size();
    assertEquals(-0.006, size, 0.001);
    LookBack lookBack = low.lookBack().orElseThrow();
    double assumed = lookBack.assumed().value().orElseThrow().estimate().value();
    assertTrue(assumed < 0, "off by " + size + ", corrected by " + assumed);
    List<Doubted> during =
        lookBack.results().stream().filter(r -> r.at().isBefore(day(28))).toList();
    assertEquals(4, during.size());
    for (Doubted result : during) {
      // read as 0.234 when results were 0.006 low
      assertTrue(result.corrected().value().orElseThrow().contains(0.240), result.toString());
      assertTrue(result.limitInside(), result.toString());
    }
    assertTrue(
        stories.get(1).lookBack().orElseThrow().assumed().value().orElseThrow().estimate().value()
            > 0);
  }

  @Test
  void growth_of_one_material_counts_from_its_beginning_and_not_from_the_calibration() {
    TestBench bench = new TestBench();
    bench.calibrated("C-1", LocalDateTime.of(2025, 10, 1, 8, 0)).daily(QUIET);
    for (int i = 20; i < 48; i++) {
      double off = Double.parseDouble(QUIET[i % QUIET.length]) + 0.00058 * (i - 19);
      control(bench, i, String.format(java.util.Locale.ROOT, "%.3f", off));
      batch(bench, i, "B-" + i, "0.210");
    }
    List<Story> stories = StoriesTest.stories(bench);
    LookBack lookBack = stories.get(0).lookBack().orElseThrow();
    LookBack.Assumed assumed = lookBack.assumed().value().orElseThrow();
    assertEquals(Optional.of(Pattern.ONE_MATERIAL), assumed.pattern());
    assertEquals(Hint.Per.AMOUNT_A_DAY, assumed.estimate().per());
    for (Doubted result : lookBack.results()) {
      double days = ControlHistory.days(day(19), result.at());
      assertEquals(0.00058 * days, result.error().value().orElseThrow().value(), 0.0025);
    }
    assertFalse(lookBack.results().isEmpty());
  }

  @Test
  void before_there_is_a_baseline_the_limits_that_judged_a_control_say_whether_it_was_good() {
    TestBench bench = new TestBench().calibrated("C-1", TestBench.START.minusDays(1));
    bench.daily("0.201", "0.199", "0.202", "0.230");
    batch(bench, 3, "B-3", "0.250");
    Story story = StoriesTest.stories(bench).get(0);
    // the limits' centre leans from the assigned 0.200 to the results before
    assertEquals(0.030, story.sizes().get(0).size(), 0.001);
    assertTrue(story.sizes().get(0).interval95().contains(0.030));
    assertEquals(Optional.of("needs 15 control results with limits, has 4"), story.hints().why());
    LookBack lookBack = story.lookBack().orElseThrow();
    assertEquals(Since.LAST_GOOD_CONTROL, lookBack.since());
    assertEquals(Optional.of(day(2)), lookBack.from());
    assertTrue(lookBack.results().get(0).limitInside());
  }
}
