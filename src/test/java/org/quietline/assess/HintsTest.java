package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Hint.Pattern;
import org.quietline.assess.Hint.Per;
import org.quietline.assess.Hints.Inseparable;
import org.quietline.assess.Hints.NextTime;
import org.quietline.assess.SimulatedBench.Kind;

class HintsTest {
  private static Hints hints(SimulatedBench bench) {
    return bench.plantedStory().orElseThrow().hints().value().orElseThrow();
  }

  private static List<NextTime> nextTimes(Hints hints, Pattern one, Pattern other) {
    return hints.inseparable().stream()
        .filter(p -> List.of(one, other).containsAll(List.of(p.likelier(), p.other())))
        .map(Inseparable::nextTime)
        .toList();
  }

  @Test
  void reagent_opened_on_calibration_days_cannot_be_told_from_the_calibration_on_any_seed() {
    for (int seed = 0; seed < 20; seed++) {
      SimulatedBench bench = new SimulatedBench(seed).plant(Kind.CALIBRATION_DRIFT, 29, 6);
      bench.firstLotAfterDays = 30;
      bench.lotDays = 30;
      assertEquals(
          List.of(NextTime.OPEN_REAGENT_BETWEEN_CALIBRATIONS),
          nextTimes(hints(bench), Pattern.CALIBRATION_DRIFT, Pattern.REAGENT_AGE),
          "seed " + seed);
    }
  }

  @Test
  void one_material_cannot_tell_an_amount_from_a_share_or_itself_from_the_method() {
    for (int seed = 0; seed < 10; seed++) {
      SimulatedBench bench = new SimulatedBench(seed).plant(Kind.ADDITIVE, 30, 4);
      bench.levels = List.of(0.180);
      Hints hints = hints(bench);
      assertEquals(
          List.of(NextTime.RUN_TWO_MATERIALS_AT_DIFFERENT_LEVELS),
          nextTimes(hints, Pattern.ADDITIVE, Pattern.PROPORTIONAL),
          "seed " + seed);
      assertTrue(hints.cannotTell(Pattern.ADDITIVE, Pattern.ONE_MATERIAL), "seed " + seed);
      assertEquals(Per.AMOUNT, hints.leading().estimate().per(), "seed " + seed);
    }
  }

  @Test
  void one_person_alone_cannot_be_told_from_the_method() {
    for (int seed = 0; seed < 10; seed++) {
      SimulatedBench bench = new SimulatedBench(seed).plant(Kind.ADDITIVE, 30, 4);
      bench.people = List.of("RO");
      assertEquals(
          List.of(NextTime.LET_ANOTHER_PERSON_RUN_CONTROLS),
          nextTimes(hints(bench), Pattern.ADDITIVE, Pattern.ONE_PERSON),
          "seed " + seed);
    }
  }

  @Test
  void two_materials_three_people_and_reagent_opened_between_tell_them_apart() {
    Hints hints = hints(new SimulatedBench(1).plant(Kind.PROPORTIONAL, 30, 4));
    assertEquals(Pattern.PROPORTIONAL, hints.leading().pattern());
    assertFalse(hints.cannotTell(Pattern.ADDITIVE, Pattern.PROPORTIONAL));
    assertFalse(hints.cannotTell(Pattern.PROPORTIONAL, Pattern.ONE_MATERIAL));
    assertFalse(hints.cannotTell(Pattern.PROPORTIONAL, Pattern.ONE_PERSON));
    assertFalse(hints.cannotTell(Pattern.CALIBRATION_DRIFT, Pattern.REAGENT_AGE));
  }

  @Test
  void hints_name_person_material_and_lot_and_carry_the_results_and_the_estimate() {
    SimulatedBench bench = new SimulatedBench(3).plant(Kind.ONE_PERSON, 28, 4);
    Hint person = hints(bench).leading();
    assertEquals(Optional.of("TB"), person.subject());
    assertEquals(Hint.DecidingCheck.LET_ANOTHER_PERSON_RUN_THE_SAME_SAMPLE, person.check());
    assertEquals(4 * bench.deviation(), person.estimate().value(), bench.deviation());
    assertTrue(
        person.results().stream()
            .allMatch(
                p ->
                    bench.records().results().stream()
                        .filter(r -> r.takenAt().equals(p.at()))
                        .allMatch(r -> r.operator().equals(Optional.of("TB")))));
    assertEquals(
        Optional.of("QC-2"),
        hints(new SimulatedBench(3).plant(Kind.MATERIAL_STEP, 28, 4)).leading().subject());
    assertEquals(
        Optional.of("L-5"),
        hints(new SimulatedBench(3).plant(Kind.LOT_STEP, 27, 4)).leading().subject());
  }

  @Test
  void shares_sum_to_one_but_for_the_least_and_stand_in_order() {
    List<Hint> ranked = hints(new SimulatedBench(5).plant(Kind.ADDITIVE, 30, 3.5)).ranked();
    assertEquals(1, ranked.stream().mapToDouble(Hint::share).sum(), 0.01);
    for (int i = 1; i < ranked.size(); i++) {
      assertTrue(ranked.get(i - 1).share() >= ranked.get(i).share() - 1e-9);
    }
  }

  @Test
  void few_results_give_no_hints_and_say_what_they_need() {
    TestBench bench = new TestBench().daily("0.201", "0.198", "0.205", "0.196", "0.203", "0.300");
    Story story = StoriesTest.stories(bench).get(0);
    assertEquals(Optional.of("needs 15 control results with limits, has 6"), story.hints().why());
  }
}
