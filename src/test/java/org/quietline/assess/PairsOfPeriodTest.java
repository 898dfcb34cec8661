package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.assess.PairsOfPeriod.Standing;
import org.quietline.assess.ReportedValue.Path;
import org.quietline.bench.Method.PublishedRepeatability;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.bench.Rule;

/** Invented pairs against a published limit of 0.010, so that every count is plain. */
class PairsOfPeriodTest {
  /** So many pairs, the first of them beyond the limit, too few before them for a limit of own. */
  private static TestBench bench(int pairs, int beyond) {
    TestBench bench = new TestBench();
    bench.published =
        Optional.of(new PublishedRepeatability(new BigDecimal("0.010"), Optional.empty()));
    for (int i = 0; i < pairs; i++) {
      bench.product(TestBench.START, "B-" + i, "0.200", i < beyond ? "0.211" : "0.205");
    }
    return bench;
  }

  private static PairsOfPeriod only(TestBench bench) {
    List<PairsOfPeriod> found = PairsOfPeriod.ask(bench.records());
    assertEquals(1, found.size());
    return found.get(0);
  }

  /** Chances of at least so many of 20 by the binomial tables: .64, .26, .076, .016, .0026. */
  @ParameterizedTest
  @CsvSource({
    "0, 1,      AS_EXPECTED",
    "1, 0.6415, AS_EXPECTED",
    "2, 0.2642, AS_EXPECTED",
    "3, 0.0755, ADVISORY",
    "4, 0.0159, ACTION",
    "5, 0.0026, ACTION",
  })
  void of_twenty_pairs_three_call_for_attention_and_four_for_action(
      int beyond, double chance, Standing standing) {
    PairsOfPeriod found = only(bench(20, beyond));
    assertEquals(20, found.pairs());
    assertEquals(20, found.judged());
    assertEquals(beyond, found.beyond().size());
    assertEquals(1, found.expected(), 1e-15);
    assertEquals(chance, found.chanceOfSoMany(), 5e-5);
    assertEquals(Answer.of(standing), found.standing());
    assertEquals(OptionalInt.of(3), found.advisoryAt());
    assertEquals(OptionalInt.of(4), found.actionAt());
  }

  @ParameterizedTest
  @CsvSource({"2, 2, 2", "5, 2, 3", "8, 2, 3", "10, 2, 3", "14, 3, 4", "40, 5, 6", "100, 9, 11"})
  void the_counts_follow_from_the_number_of_pairs(int judged, int advisory, int action) {
    assertEquals(
        OptionalInt.of(advisory), PairsOfPeriod.fewest(judged, PairsOfPeriod.ADVISORY_CHANCE));
    assertEquals(OptionalInt.of(action), PairsOfPeriod.fewest(judged, PairsOfPeriod.ACTION_CHANCE));
  }

  @Test
  void one_pair_cannot_say() {
    PairsOfPeriod found = only(bench(1, 1));
    assertEquals(1, found.beyond().size());
    assertEquals(0.05, found.chanceOfSoMany(), 1e-15);
    assertEquals(OptionalInt.empty(), found.advisoryAt());
    assertEquals(OptionalInt.empty(), found.actionAt());
    assertEquals(
        Optional.of("needs 2 pairs with a limit from before them, has 1 of 1"),
        found.standing().why());
  }

  @Test
  void pairs_without_a_limit_are_not_called_fine() {
    TestBench bench = bench(20, 4);
    bench.published = Optional.empty();
    PairsOfPeriod found = only(bench);
    assertEquals(20, found.pairs());
    assertEquals(0, found.judged());
    assertEquals(
        Optional.of("needs 2 pairs with a limit from before them, has 0 of 20"),
        found.standing().why());
    assertEquals(Map.of(Path.NO_LIMIT, 20), found.paths());
  }

  @Test
  void each_path_is_counted_and_what_wants_a_reading_is_named() {
    TestBench bench = bench(3, 1);
    bench.product(TestBench.START.plusDays(1), "C-1", "0.200", "0.211", "0.2105");
    bench.product(TestBench.START.plusDays(1), "C-2", "0.200", "0.211", "0.230");
    bench.product(TestBench.START.plusDays(1), "C-3", "0.200", "0.201", "0.230");
    bench.product(TestBench.START.plusDays(2), "C-4", "0.200");
    bench.product(TestBench.START.plusDays(2), "C-5", "<0.200", "0.2");
    PairsOfPeriod found = only(bench);
    assertEquals(6, found.pairs());
    assertEquals(
        List.of("B-0", "C-1", "C-2"), found.beyond().stream().map(Result::sample).toList());
    assertEquals(
        List.of(
            Map.entry(Path.TWO_AGREE, 2),
            Map.entry(Path.TWO_DISAGREE, 1),
            Map.entry(Path.THREE_AGREE, 1),
            Map.entry(Path.THREE_MEDIAN, 1),
            Map.entry(Path.MORE_THAN_ASKED, 1),
            Map.entry(Path.SINGLE, 1),
            Map.entry(Path.CENSORED, 1)),
        List.copyOf(found.paths().entrySet()));
    assertEquals(List.of("B-0"), found.withoutReading().stream().map(Result::sample).toList());
  }

  @Test
  void roles_are_kept_apart_and_what_an_action_took_out_is_left_out() {
    TestBench bench = bench(2, 0);
    bench.control(TestBench.START.plusDays(1), "0.20", "2.0");
    bench.control(TestBench.START.plusDays(2), "0.20", "0.21");
    bench.action(TestBench.START.plusDays(1), Rule.READINGS_DISAGREE, true);
    List<PairsOfPeriod> found = PairsOfPeriod.ask(bench.records());
    assertEquals(
        List.of(Role.CONTROL, Role.PRODUCT), found.stream().map(PairsOfPeriod::role).toList());
    assertEquals(1, found.get(0).pairs());
    assertEquals(List.of(), found.get(0).withoutReading());
  }

  @Test
  void a_method_of_one_reading_has_no_pairs_to_judge() {
    TestBench bench = bench(20, 4);
    bench.replicates = 1;
    PairsOfPeriod found = only(bench);
    assertEquals(0, found.pairs());
    assertEquals(
        Optional.of("one reading makes a result, so there are no pairs"), found.standing().why());
  }
}
