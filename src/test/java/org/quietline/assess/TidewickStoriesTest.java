package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Hint.Pattern;
import org.quietline.assess.Hints.NextTime;
import org.quietline.assess.LookBack.Since;
import org.quietline.bench.Bench;
import org.quietline.bench.Method;
import org.quietline.intake.BenchFolder;

/**
 * The three troubles of total glycerin in {@code sample-runs/tidewick/ABOUT.md}, told as stories.
 */
class TidewickStoriesTest {
  private static List<Story> glycerin;
  private static List<Story> acid;

  @BeforeAll
  static void tell() {
    Bench bench = BenchFolder.read(Path.of("sample-runs", "tidewick")).bench();
    glycerin = stories(bench, "total-glycerin");
    acid = stories(bench, "acid-number");
  }

  private static List<Story> stories(Bench bench, String key) {
    Method method =
        bench.settings().methods().stream()
            .filter(m -> m.key().equals(key))
            .findFirst()
            .orElseThrow();
    Period october = Period.of(YearMonth.of(2026, 10));
    Records records = Records.of(bench, method, october, LocalDateTime.of(2026, 10, 30, 15, 50));
    return Stories.ask(records, TestBench.streams(records), List.of());
  }

  private static Hints hints(Story story) {
    return story.hints().value().orElseThrow();
  }

  @Test
  void ten_signals_are_three_stories_and_the_quiet_method_has_none() {
    assertEquals(List.of(2, 4, 4), glycerin.stream().map(s -> s.signals().size()).toList());
    assertEquals(List.of(false, false, true), glycerin.stream().map(Story::open).toList());
    assertEquals(List.of(), acid);
  }

  @Test
  void the_slip_looks_like_one_result() {
    Story slip = glycerin.get(0);
    assertEquals(Pattern.ONE_RESULT, hints(slip).leading().pattern());
    assertEquals(
        List.of(LocalDateTime.of(2026, 4, 23, 7, 32)),
        hints(slip).leading().results().stream().map(ControlPlace::at).toList());
    assertTrue(hints(slip).cannotTell(Pattern.ONE_RESULT, Pattern.ONE_SESSION));
  }

  @Test
  void the_reagent_lot_leads_and_another_step_on_that_day_would_look_the_same() {
    Story lot = glycerin.get(1);
    Hint leading = hints(lot).leading();
    assertEquals(Pattern.LOT_STEP, leading.pattern());
    assertEquals(Optional.of("TG-L07"), leading.subject());
    // planted is 0.011; the two results are 0.1915 and 0.1900, and the others average near 0.1805
    assertEquals(0.0103, leading.estimate().value(), 0.0007);
    assertTrue(leading.estimate().interval95().contains(0.011));
    assertEquals(LocalDateTime.of(2026, 6, 24, 7, 36), lot.onset().first());
    assertEquals(Optional.of("TG-C12"), lot.resetBy());
    assertTrue(hints(lot).cannotTell(Pattern.LOT_STEP, Pattern.ADDITIVE));
    assertEquals(Optional.empty(), lot.lookBack());
  }

  @Test
  void the_calibration_drift_leads_and_its_slope_holds_the_planted_one() {
    Story drift = glycerin.get(2);
    Hint leading = hints(drift).leading();
    assertEquals(Pattern.CALIBRATION_DRIFT, leading.pattern());
    assertEquals(Optional.of("TG-C15"), leading.subject());
    assertEquals(Hint.Per.AMOUNT_A_DAY, leading.estimate().per());
    assertTrue(leading.estimate().interval95().contains(0.0005));
    assertTrue(
        hints(drift).inseparable().stream()
            .filter(p -> p.other() == Pattern.PROPORTIONAL || p.likelier() == Pattern.ADDITIVE)
            .allMatch(p -> p.nextTime() != NextTime.OPEN_REAGENT_BETWEEN_CALIBRATIONS));
  }

  @Test
  void what_was_made_since_the_last_good_control_is_looked_back_on() {
    LookBack lookBack = glycerin.get(2).lookBack().orElseThrow();
    assertEquals(Since.LAST_GOOD_CONTROL, lookBack.since());
    assertEquals(
        Optional.of(LocalDateTime.of(2026, 10, 9, 7, 44)),
        lookBack.lastGood().map(ControlPlace::at));
    assertEquals(Optional.empty(), lookBack.endedBy());
    assertEquals(lookBack.batches(), lookBack.results().size());
    assertFalse(lookBack.results().isEmpty());
    assertTrue(
        lookBack.results().stream()
            .allMatch(r -> r.corrected().value().orElseThrow().upper() < r.value().orElseThrow()));
  }
}
