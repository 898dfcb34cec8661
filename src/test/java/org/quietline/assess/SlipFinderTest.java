package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import java.time.YearMonth;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Slip.Candidate;
import org.quietline.assess.Slip.Source;
import org.quietline.assess.Slip.What;
import org.quietline.bench.Action;
import org.quietline.bench.Bench;
import org.quietline.bench.Check;
import org.quietline.bench.CheckOff;
import org.quietline.bench.Origin;
import org.quietline.bench.OutlookSettings;
import org.quietline.bench.QuestionId;
import org.quietline.bench.ReleaseSettings;
import org.quietline.bench.Role;
import org.quietline.bench.Settings;

class SlipFinderTest {
  private static final LocalDateTime LATER = LocalDateTime.of(2026, 3, 20, 9, 0);
  private static final Period MARCH = Period.of(YearMonth.of(2026, 3));

  /** Sixty batches about 0.180, from 0.170 to 0.190, whose readings differ by 0.002 at most. */
  private static TestBench usual() {
    TestBench bench = new TestBench();
    for (int i = 0; i < 60; i++) {
      int level = 180 + i * 7 % 21 - 10;
      bench.product(
          TestBench.START.plusDays(i), "B-" + (1000 + i), text(level), text(level + i % 5 - 2));
    }
    return bench;
  }

  private static String text(int thousandths) {
    return String.format(Locale.ROOT, "0.%03d", thousandths);
  }

  private static Slips ask(Bench bench) {
    return new SlipFinder(bench)
        .ask(Records.of(bench, bench.settings().methods().get(0), MARCH, MARCH.to().atTime(23, 0)));
  }

  private static Slip only(TestBench bench) {
    List<Slip> questions = ask(bench.bench()).questions();
    assertEquals(1, questions.size(), questions.toString());
    return questions.get(0);
  }

  private static Source source(Slip slip) {
    return ((Slip.Distance) slip.evidence()).source();
  }

  @Test
  void usual_results_raise_no_question_and_all_can_be_judged() {
    Slips slips = ask(usual().bench());
    assertEquals(List.of(), slips.questions());
    assertEquals(5, slips.inPeriod());
    assertEquals(5, slips.judged());
  }

  @Test
  void a_reading_ten_times_too_large_is_told_by_the_other_reading() {
    Slip slip = only(usual().product(LATER, "B-2000", "1.81", "0.180"));
    assertEquals("tg/PM-1/B-2000/2026-03-20T09:00/slip-in-value", slip.id().toString());
    assertEquals(
        List.of(
            new Candidate(
                What.POWER_OF_TEN,
                OptionalInt.of(1),
                OptionalInt.empty(),
                10,
                OptionalDouble.of(0.181))),
        slip.candidates());
    assertEquals(Source.OTHER_READING, source(slip));
    assertTrue(slip.open());
    assertTrue(slip.inPeriod());
  }

  @Test
  void a_whole_result_a_hundred_times_too_small_is_told_by_its_kind() {
    Slip slip = only(usual().product(LATER, "B-2000", "0.00181", "0.0018"));
    Candidate candidate = slip.candidates().get(0);
    assertEquals(1, slip.candidates().size());
    assertEquals(What.POWER_OF_TEN, candidate.what());
    assertEquals(OptionalInt.empty(), candidate.reading());
    assertEquals(0.01, candidate.factor(), 1e-15);
    assertEquals(0.1805, candidate.value().orElseThrow(), 1e-12);
    assertEquals(Source.SAME_KIND, source(slip));
  }

  @Test
  void twice_the_volume_is_told_without_an_acid_where_none_is_measured() {
    Slip slip = only(usual().product(LATER, "B-2000", "0.362", "0.360"));
    assertEquals(
        List.of(What.DOUBLE_VOLUME), slip.candidates().stream().map(Candidate::what).toList());
    assertEquals(0.1805, slip.candidates().get(0).value().orElseThrow(), 1e-12);
  }

  @Test
  void a_result_far_off_that_no_plain_slip_explains_is_no_question() {
    assertEquals(
        List.of(), ask(usual().product(LATER, "B-2000", "0.270", "0.271").bench()).questions());
  }

  @Test
  void readings_that_changed_places_are_told_by_both_pairs() {
    Slip slip =
        only(
            usual()
                .product(LATER, "B-2000", "0.171", "0.189")
                .product(LATER.plusMinutes(10), "B-2001", "0.188", "0.172"));
    assertEquals("tg/PM-1/B-2000/2026-03-20T09:00/swapped-readings", slip.id().toString());
    assertEquals("B-2001", slip.partner().orElseThrow().sample());
    assertEquals(
        Set.of("1 with 1", "2 with 2"),
        slip.candidates().stream()
            .map(c -> c.reading().orElseThrow() + " with " + c.partnerReading().orElseThrow())
            .collect(Collectors.toSet()));
    assertTrue(slip.candidates().stream().allMatch(c -> c.what() == What.READINGS_EXCHANGED));
  }

  @Test
  void readings_of_two_sessions_do_not_change_places() {
    assertEquals(
        List.of(),
        ask(usual()
                .product(LATER, "B-2000", "0.171", "0.189")
                .product(LATER.plusHours(4), "B-2001", "0.188", "0.172")
                .bench())
            .questions());
  }

  @Test
  void a_control_that_changed_places_with_a_batch_is_told_by_the_other_controls() {
    TestBench bench = usual();
    for (int i = 0; i < 40; i++) {
      bench.control(TestBench.START.plusDays(i).plusHours(8), text(199 + i % 3), text(199 + i % 2));
    }
    Slip slip =
        only(
            bench
                .control(LATER, "0.172", "0.173")
                .product(LATER.plusMinutes(20), "B-2000", "0.200", "0.199"));
    assertEquals("tg/PM-1/QC/2026-03-20T09:00/swapped-samples", slip.id().toString());
    assertEquals("B-2000", slip.partner().orElseThrow().sample());
    assertEquals(0.1995, slip.candidates().get(0).value().orElseThrow(), 1e-12);
    assertEquals(Source.MATERIAL, source(slip));
  }

  @Test
  void the_readings_of_the_row_before_are_no_chance_where_digits_are_fine() {
    Slip slip =
        only(
            usual()
                .product(LATER, "B-2000", "0.1853", "0.1841")
                .product(LATER.plusMinutes(9), "B-2001", "0.1853", "0.1841"));
    assertEquals("tg/PM-1/B-2001/2026-03-20T09:09/copied-down", slip.id().toString());
    assertEquals("B-2000", slip.partner().orElseThrow().sample());
    assertTrue(((Slip.Coincidence) slip.evidence()).chance() < 0.001);
  }

  @Test
  void the_readings_of_the_row_before_may_be_chance_where_digits_are_coarse() {
    assertEquals(
        List.of(),
        ask(usual()
                .product(LATER, "B-2000", "0.180", "0.181")
                .product(LATER.plusMinutes(9), "B-2001", "0.180", "0.181")
                .bench())
            .questions());
  }

  @Test
  void the_same_sample_read_the_same_again_is_no_copy() {
    assertEquals(
        List.of(),
        ask(usual()
                .product(LATER, "B-2000", "0.1853", "0.1841")
                .product(LATER.plusMinutes(9), "B-2000", "0.1853", "0.1841")
                .bench())
            .questions());
  }

  @Test
  void a_new_kind_of_sample_is_not_held_against_another_kind() {
    TestBench bench = usual();
    for (int i = 0; i < 4; i++) {
      bench.product(LATER.plusDays(i), "O-" + i, "1.80", "1.81");
    }
    Slips slips = ask(bench.bench());
    assertEquals(List.of(), slips.questions());
    assertEquals(9, slips.inPeriod());
    assertEquals(5, slips.judged());
  }

  @Test
  void six_results_of_a_kind_are_too_few_to_tell_even_ten_times() {
    TestBench bench = new TestBench();
    for (int i = 0; i < 5; i++) {
      bench.product(LATER.plusDays(i), "B-" + i, text(170 + 4 * i), text(171 + 4 * i));
    }
    Slips slips = ask(bench.product(LATER.plusDays(6), "B-6", "1.80", "1.81").bench());
    assertEquals(List.of(), slips.questions());
    assertEquals(0, slips.judged());
  }

  @Test
  void zeros_bounds_and_blanks_are_left_out_and_counted() {
    TestBench bench =
        usual()
            .product(LATER, "B-2000", "0.000", "0.180")
            .product(LATER.plusMinutes(5), "B-2001", "<0.010", "0.180")
            .product(LATER.plusMinutes(9), "B-2002", "-0.180", "-0.181")
            .result(LATER.plusMinutes(20), Role.BLANK, "water", "RO", Optional.empty(), "0.002");
    Slips slips = ask(bench.bench());
    assertEquals(List.of(), slips.questions());
    assertEquals(9, slips.inPeriod());
    assertEquals(5, slips.judged());
  }

  @Test
  void an_action_that_names_the_question_answers_it_and_is_not_idle() {
    TestBench bench = usual().product(LATER, "B-2000", "1.81", "0.180");
    QuestionId id = only(bench).id();
    bench.actions.add(
        new Action(
            LATER.plusHours(1),
            id,
            Optional.of("typed with the point in a wrong place"),
            Optional.empty(),
            false,
            Optional.empty(),
            Optional.of("RO"),
            Optional.empty(),
            new Origin("actions.csv", 2)));
    Findings findings = bench.findings("2026-03");
    Slip slip = findings.methods().get(0).slips().questions().get(0);
    assertEquals(id, slip.id());
    assertEquals(bench.actions.get(0), slip.closing().orElseThrow());
    assertEquals(List.of(), findings.methods().get(0).slips().open());
    assertEquals(List.of(), findings.idleActions());
    assertEquals(0, concerns(findings));
  }

  @Test
  void an_open_question_of_the_period_is_a_concern_and_an_earlier_one_is_not() {
    TestBench bench = usual().product(LATER, "B-2000", "1.81", "0.180");
    bench.product(LATER.plusMonths(1), "B-2001", "0.180", "0.181");
    assertEquals(1, concerns(bench.findings("2026-03")));
    assertEquals(0, concerns(bench.findings("2026-04")));
    assertEquals(1, bench.method("2026-04").slips().questions().size());
  }

  private static long concerns(Findings findings) {
    return findings.methods().get(0).verdict().concerns().stream()
        .filter(c -> c instanceof Concern.LooksLikeSlips && c.level() == Verdict.Level.WATCH)
        .count();
  }

  @Test
  void a_check_that_is_off_asks_nothing() {
    Bench bench = usual().product(LATER, "B-2000", "1.81", "0.180").bench();
    Settings s = bench.settings();
    Settings off =
        new Settings(
            s.name(),
            s.timezone(),
            s.methods(),
            s.instruments(),
            s.materials(),
            s.people(),
            s.baselines(),
            s.chart(),
            OutlookSettings.DEFAULTS,
            ReleaseSettings.DEFAULTS,
            List.of(new CheckOff(Check.SLIP_IN_VALUE, Optional.of("tg"), "typed by a machine")));
    assertEquals(
        List.of(),
        ask(new Bench(off, bench.results(), List.of(), List.of(), List.of(), List.of(), List.of()))
            .questions());
  }

  /** Doubling the records must not double the work twice over: one sample tested every day. */
  @Test
  void many_results_of_one_sample_take_no_quadratic_time() {
    TestBench bench = new TestBench();
    for (int i = 0; i < 20_000; i++) {
      bench.product(
          TestBench.START.plusMinutes(i), "TANK", text(170 + i * 7 % 21), text(171 + i * 7 % 21));
    }
    long start = System.nanoTime();
    assertEquals(List.of(), ask(bench.bench()).questions());
    long seconds = (System.nanoTime() - start) / 1_000_000_000L;
    assertTrue(seconds < 30, "took " + seconds + " s");
  }
}
