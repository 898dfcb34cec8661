package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Story.OnsetFrom;
import org.quietline.assess.Story.Size;
import org.quietline.bench.ChartSettings.Weight;
import org.quietline.bench.Rule;
import org.quietline.bench.SignalId;

/** A bench whose first twenty results have centre 0.200 and deviation 0.002 by the moving range. */
class StoriesTest {
  private static final String[] QUIET = {
    "0.201", "0.199", "0.201", "0.199", "0.202", "0.198", "0.200", "0.202", "0.199", "0.201",
    "0.198", "0.201", "0.199", "0.202", "0.200", "0.198", "0.201", "0.199", "0.201", "0.199"
  };

  static List<Story> stories(TestBench bench, Signal... free) {
    Period period = Period.of(YearMonth.of(2026, 1));
    LocalDateTime now = bench.results.get(bench.results.size() - 1).takenAt();
    Records records =
        Records.of(bench.bench(), bench.bench().settings().methods().get(0), period, now);
    return Stories.ask(records, TestBench.streams(records), List.of(free));
  }

  private static TestBench quiet() {
    return new TestBench().calibrated("C-1", TestBench.START.minusDays(1)).daily(QUIET);
  }

  private static LocalDateTime day(int number) {
    return TestBench.START.plusDays(number);
  }

  @Test
  void a_quiet_bench_has_no_story() {
    assertEquals(List.of(), stories(quiet()));
  }

  @Test
  void signals_of_one_shift_are_one_story_that_begins_before_the_first_signal() {
    TestBench bench = quiet().daily("0.204", "0.205", "0.208", "0.204", "0.209");
    List<Story> stories = stories(bench);
    assertEquals(1, stories.size());
    Story story = stories.get(0);
    assertTrue(story.signals().size() >= 3, story.signals().toString());
    assertEquals(story.signals().get(0).id(), story.id());
    assertEquals(day(20), story.onset().first());
    assertEquals(Optional.of(day(19)), story.onset().lastBefore());
    assertEquals(OnsetFrom.STEP, story.onset().from());
    assertTrue(story.open());
    assertTrue(story.stops());
    assertEquals(Optional.empty(), story.resetBy());
    Size size = story.sizes().get(0);
    assertEquals(5, size.results());
    // the five results have mean 0.206, the baseline 0.2
    assertEquals(0.006, size.size(), 1e-12);
    assertTrue(size.interval95().lower() > 0.003 && size.interval95().upper() < 0.009);
  }

  @Test
  void a_good_result_later_does_not_close_a_story_and_one_closed_signal_does_not_either() {
    TestBench bench = quiet().daily("0.220", "0.200", "0.200");
    bench.action(day(20), Rule.BEYOND_ACTION_LIMIT, false);
    Story story = stories(bench).get(0);
    assertEquals(day(20), story.onset().first());
    assertTrue(story.open(), "its other signal is open");
    bench.action(day(20), Rule.WEIGHTED_MEAN_BEYOND_LIMIT, false);
    bench.action(day(21), Rule.WEIGHTED_MEAN_BEYOND_LIMIT, false);
    bench.action(day(22), Rule.WEIGHTED_MEAN_BEYOND_LIMIT, false);
    Story closed = stories(bench).get(0);
    assertFalse(closed.open());
    assertFalse(closed.stops());
    assertEquals(Optional.empty(), closed.lookBack());
  }

  @Test
  void what_a_calibration_ended_is_one_story_and_what_comes_after_it_another() {
    TestBench bench = quiet().daily("0.210", "0.211");
    bench.calibrated("C-2", day(21).plusHours(5));
    bench.daily("0.200", "0.199", "0.201", "0.200", "0.211", "0.212");
    List<Story> stories = stories(bench);
    assertEquals(2, stories.size());
    assertEquals(Optional.of("C-2"), stories.get(0).resetBy());
    assertEquals(day(26), stories.get(1).onset().first());
  }

  @Test
  void what_a_calibration_left_as_it_was_stays_one_story() {
    TestBench bench = quiet().daily("0.210", "0.211");
    bench.calibrated("C-2", day(21).plusHours(5));
    bench.daily("0.209", "0.210", "0.211");
    List<Story> stories = stories(bench);
    assertEquals(1, stories.size());
    assertEquals(day(20), stories.get(0).onset().first());
    assertEquals(Optional.empty(), stories.get(0).resetBy());
  }

  @Test
  void moves_to_opposite_sides_are_two_stories() {
    TestBench bench = quiet().daily("0.212", "0.211", "0.212", "0.188", "0.187", "0.186");
    assertEquals(2, stories(bench).size());
  }

  @Test
  void a_signal_on_no_control_result_is_told_with_what_went_on_at_the_time() {
    TestBench bench = quiet().daily("0.210", "0.211", "0.212");
    Signal during = free(day(21).plusHours(1));
    assertEquals(1, stories(bench, during).size());
    assertTrue(stories(bench, during).get(0).signals().contains(during));
    Signal before = free(day(3).plusHours(1));
    List<Story> two = stories(bench, before);
    assertEquals(2, two.size());
    assertEquals(List.of(before), two.get(0).signals());
    assertEquals(List.of(), two.get(0).sizes());
    assertEquals(
        Optional.of("needs a control result that is a number, with limits, among its own"),
        two.get(0).hints().why());
    assertEquals(
        Optional.of("needs a control result that is a number among its signals"),
        two.get(0).lookBack().orElseThrow().assumed().why());
  }

  @Test
  void a_stream_with_too_few_results_for_limits_says_how_many_it_needs() {
    TestBench bench = new TestBench();
    bench.assigned = Optional.empty();
    bench.uncertainty = Optional.empty();
    bench.allowance = Optional.empty();
    bench.daily("0.201", "0.199");
    Signal apart =
        new Signal(
            new SignalId("tg", "PM-1", "QC", day(1), Rule.READINGS_DISAGREE),
            Weight.STOP,
            0.07,
            0.05,
            true,
            Optional.empty());
    assertEquals(
        Optional.of("needs 5 results of its own, has 2"),
        stories(bench, apart).get(0).hints().why());
  }

  @Test
  void of_closed_stories_only_the_latest_are_compared_with_patterns() {
    TestBench bench = quiet();
    for (int i = 0; i < 14; i++) {
      bench.daily(QUIET).daily(i % 2 == 0 ? "0.230" : "0.170");
    }
    bench.daily(QUIET);
    for (Story story : stories(bench)) {
      story.signals().forEach(s -> bench.action(s.id().at(), s.id().rule(), true));
    }
    List<Story> closed = stories(bench);
    assertTrue(closed.size() > 12, closed.size() + " stories");
    assertTrue(closed.stream().noneMatch(Story::open));
    for (Story story : closed.subList(0, closed.size() - 12)) {
      assertEquals(
          Optional.of("needs an open signal, or to be one of the latest 12 stories"),
          story.hints().why());
    }
    for (Story story : closed.subList(closed.size() - 12, closed.size())) {
      assertEquals(Optional.empty(), story.hints().why());
    }
  }

  static Signal free(LocalDateTime at) {
    return new Signal(
        new SignalId("tg", "PM-1", "blank", at, Rule.BLANK_DRIFTING),
        Weight.STOP,
        0.07,
        0.05,
        true,
        Optional.empty());
  }

  @Test
  void a_revision_of_limits_does_not_turn_the_sign_of_what_was_before() {
    TestBench bench = quiet();
    bench.daily("0.212");
    int before = bench.results.size();
    for (String value : QUIET) {
      bench.daily(
          new java.math.BigDecimal(value).add(new java.math.BigDecimal("0.030")).toString());
    }
    java.time.LocalDate from = TestBench.START.plusDays(before).toLocalDate();
    bench.baselines.add(
        new org.quietline.bench.BaselineChoice(
            "tg",
            "PM-1",
            "QC",
            from,
            from.plusDays(QUIET.length - 1),
            java.util.Optional.empty(),
            java.util.Optional.empty()));
    Story first = stories(bench).get(0);
    assertEquals(1, first.sizes().get(0).results(), first.signals().toString() + first.onset());
    assertTrue(first.sizes().get(0).size() > 0.008, first.sizes().toString());
  }
}
