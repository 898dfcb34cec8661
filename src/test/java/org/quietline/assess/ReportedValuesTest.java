package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.assess.ReportedValue.Basis;
import org.quietline.assess.ReportedValue.Comparison;
import org.quietline.assess.ReportedValue.Path;
import org.quietline.assess.ReportedValue.Repeatability;
import org.quietline.bench.Method.PublishedRepeatability;
import org.quietline.bench.RepeatPolicy;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.bench.Rule;

/**
 * The rule by hand. A published limit of 0.02772 stands for a deviation of 0.0100, so that the
 * critical ranges of two, three and four are 0.0277, 0.0331 and 0.0363 (factors 2.772, 3.314 and
 * 3.633, the 95 % points of the range of normal values).
 */
class ReportedValuesTest {
  private static final LocalDateTime LATER = LocalDateTime.of(2026, 8, 3, 9, 0);

  private static TestBench published(String limit) {
    TestBench bench = new TestBench();
    bench.published =
        Optional.of(new PublishedRepeatability(new BigDecimal(limit), Optional.empty()));
    return bench;
  }

  /** The first ten duplicates of the worked example, once a day, so many times over. */
  private static TestBench duplicates(int times) {
    TestBench bench = new TestBench();
    for (int i = 0; i < times * ReadingsAgreementTest.DUP_1.length; i++) {
      bench.product(
          TestBench.START.plusDays(i),
          "B-" + i,
          ReadingsAgreementTest.DUP_1[i % ReadingsAgreementTest.DUP_1.length]);
    }
    return bench;
  }

  private static ReportedValue last(TestBench bench) {
    Records records = bench.records();
    return records.reported(records.results().get(records.results().size() - 1));
  }

  @ParameterizedTest
  @CsvSource({
    "one-more, 0.200 0.227,             TWO_AGREE,       0.2135,             2, 2, 0",
    "one-more, 0.200 0.228,             TWO_DISAGREE,    0.2140,             2, 3, 0",
    "one-more, 0.200 0.228 0.233,       THREE_AGREE,     0.2203333333333333, 3, 3, 0",
    "one-more, 0.200 0.228 0.234,       THREE_MEDIAN,    0.2280,             3, 3, 0",
    "one-more, 0.228 0.200 0.195,       THREE_AGREE,     0.2076666666666667, 3, 3, 0",
    "one-more, 0.228 0.200 0.194,       THREE_MEDIAN,    0.2000,             3, 3, 0",
    "one-more, 0.200 0.227 0.500,       MORE_THAN_ASKED, 0.2135,             2, 2, 1",
    "one-more, 0.200 0.228 0.234 0.21,  THREE_MEDIAN,    0.2280,             3, 3, 1",
    "two-more, 0.200 0.227,             TWO_AGREE,       0.2135,             2, 2, 0",
    "two-more, 0.200 0.228,             TWO_DISAGREE,    0.2140,             2, 4, 0",
    "two-more, 0.200 0.228 0.233,       THREE_AGREE,     0.2203333333333333, 3, 4, 0",
    "two-more, 0.200 0.228 0.234,       THREE_MEDIAN,    0.2280,             3, 4, 0",
    "two-more, 0.200 0.228 0.210 0.236, FOUR_AGREE,      0.2185,             4, 4, 0",
    "two-more, 0.200 0.228 0.210 0.237, FOUR_MEDIAN,     0.2190,             4, 4, 0",
    "two-more, 0.2 0.228 0.21 0.237 9,  FOUR_MEDIAN,     0.2190,             4, 4, 1",
    "two-more, 0.200 0.227 0.5 0.6,     MORE_THAN_ASKED, 0.2135,             2, 2, 2",
  })
  void each_line_of_the_rule(
      String policy, String readings, Path path, double value, int used, int asked, int surplus) {
    TestBench bench = published("0.02772");
    bench.repeatPolicy = RepeatPolicy.parse(policy).orElseThrow();
    bench.product(LATER, "B-1", readings.split(" ", -1));
    ReportedValue found = last(bench);
    assertEquals(path, found.path());
    assertEquals(value, found.value().getAsDouble(), 1e-15);
    assertEquals(used, found.used());
    assertEquals(asked, found.asked());
    assertEquals(surplus, found.surplus());
    assertEquals(readings.split(" ", -1).length, found.readings());
    assertEquals(asked > found.readings(), found.wantsReading());
    assertEquals(
        Answer.of(new Repeatability(Basis.PUBLISHED, 0)),
        found.repeatability(),
        "a published limit holds where there are too few pairs");
  }

  @Test
  void the_limits_compared_are_kept_with_the_value() {
    TestBench bench = published("0.02772");
    bench.repeatPolicy = RepeatPolicy.TWO_MORE;
    bench.product(LATER, "B-1", "0.200", "0.228", "0.210", "0.237");
    List<Comparison> compared = last(bench).comparisons();
    assertEquals(List.of(2, 4), compared.stream().map(Comparison::readings).toList());
    assertEquals(0.028, compared.get(0).range());
    assertEquals(0.02772, compared.get(0).limit());
    assertEquals(0.037, compared.get(1).range());
    assertEquals(0.03633, compared.get(1).limit(), 5e-6);
    assertEquals(0.01, compared.get(1).deviation(), 5e-6);
    assertEquals(OptionalInt.empty(), compared.get(1).degreesOfFreedom());
    assertFalse(compared.get(0).agrees() || compared.get(1).agrees());
    bench.repeatPolicy = RepeatPolicy.ONE_MORE;
    assertEquals(0.03314, last(bench).comparisons().get(1).limit(), 1e-5);
  }

  @Test
  void a_range_equal_to_the_limit_agrees_whatever_binary_digits_say() {
    assertTrue(0.44 - 0.42 > 0.02, "as doubles they differ by more");
    assertEquals(
        Path.TWO_AGREE, last(published("0.02").product(LATER, "B-1", "0.42", "0.44")).path());
  }

  @Test
  void the_pair_that_exceeds_the_limit_of_the_duplicates_calls_for_a_third_reading() {
    TestBench known = published("0.0108950");
    ReportedValue byPublished = last(known.product(LATER, "B-100", "0.195", "0.183"));
    assertEquals(Path.TWO_DISAGREE, byPublished.path());
    assertTrue(byPublished.wantsReading());
    // √2·t(0.975, 30)·0.00393065 with t = 2.042272
    TestBench thirty = duplicates(3).product(LATER, "B-100", "0.195", "0.183");
    Comparison compared = last(thirty).comparisons().get(0);
    assertEquals(0.0113525, compared.limit(), 5e-8);
    assertEquals(0.00393065, compared.deviation(), 5e-9);
    assertEquals(OptionalInt.of(30), compared.degreesOfFreedom());
    assertEquals(Path.TWO_DISAGREE, last(thirty).path());
    assertEquals(3, last(thirty).asked());
  }

  @Test
  void ten_pairs_give_a_wider_limit_which_the_same_pair_keeps() {
    TestBench ten = duplicates(1).product(LATER, "B-100", "0.195", "0.183");
    // √2·t(0.975, 10)·0.00393065 with t = 2.228139
    assertEquals(0.0123857, last(ten).comparisons().get(0).limit(), 5e-8);
    assertEquals(Path.TWO_AGREE, last(ten).path());
    assertEquals(Answer.of(new Repeatability(Basis.PAIRS, 10)), last(ten).repeatability());
  }

  @Test
  void eight_pairs_before_it_are_needed_for_a_limit() {
    TestBench bench = duplicates(1);
    Records records = bench.records();
    for (int i = 0; i < 10; i++) {
      ReportedValue value = records.reported(records.results().get(i));
      assertEquals(i < 8 ? Path.NO_LIMIT : Path.TWO_AGREE, value.path());
      assertEquals(
          i < 8 ? Optional.of("needs 8 pairs before it, has " + i) : Optional.empty(),
          value.repeatability().why());
    }
  }

  @Test
  void without_a_limit_two_give_their_mean_and_more_their_median() {
    TestBench bench = new TestBench();
    assertEquals(0.25, last(bench.product(LATER, "B-1", "0.2", "0.3")).value().getAsDouble());
    ReportedValue three = last(bench.product(LATER, "B-2", "0.2", "0.9", "0.3"));
    assertEquals(Path.NO_LIMIT, three.path());
    assertEquals(OptionalDouble.of(0.3), three.value());
    assertEquals(3, three.used());
    assertEquals(1, three.surplus());
    assertFalse(three.wantsReading());
  }

  @Test
  void pairs_that_are_all_twice_the_same_number_give_no_limit() {
    TestBench bench =
        new TestBench().daily("0.2", "0.21", "0.2", "0.2", "0.2", "0.2", "0.2", "0.2");
    ReportedValue found = last(bench.control(LATER, "0.2", "0.3"));
    assertEquals(Path.NO_LIMIT, found.path());
    assertEquals(
        Optional.of("all 8 pairs before it are twice the same number"),
        found.repeatability().why());
  }

  @Test
  void one_reading_a_bound_and_nothing_have_their_own_paths() {
    TestBench bench = published("0.02");
    assertEquals(Path.SINGLE, last(bench.product(LATER, "B-1", "0.2", "")).path());
    assertEquals(OptionalDouble.of(0.2), last(bench).value());
    ReportedValue censored = last(bench.product(LATER, "B-2", "0.2", "<0.3"));
    assertEquals(Path.CENSORED, censored.path());
    assertEquals(OptionalDouble.empty(), censored.value());
    assertEquals(Optional.of("a reading is only a bound"), censored.repeatability().why());
    assertEquals(Path.NONE, last(bench.product(LATER, "B-3", "", "")).path());
    assertEquals(OptionalDouble.empty(), last(bench).value());
  }

  @Test
  void a_method_of_one_reading_compares_nothing() {
    TestBench bench = published("0.02");
    bench.replicates = 1;
    assertEquals(Path.SINGLE, last(bench.product(LATER, "B-1", "0.2")).path());
    ReportedValue found = last(bench.product(LATER, "B-2", "0.2", "0.5", "0.3"));
    assertEquals(Path.NO_LIMIT, found.path());
    assertEquals(OptionalDouble.of(0.3), found.value());
    assertEquals(
        Optional.of("one reading makes a result, so there are no pairs"),
        found.repeatability().why());
  }

  @ParameterizedTest
  @CsvSource({
    "0.200 0.210 0.233,       MANY_AGREE,      0.2143333333333333",
    "0.200 0.210 0.234,       MANY_MEDIAN,     0.2100",
    "0.200 0.210 0.234 0.233, MANY_MEDIAN,     0.2100",
    "0.200 0.210 0.233 0.9,   MORE_THAN_ASKED, 0.2143333333333333",
    "0.200 0.227,             TWO_AGREE,       0.2135",
    "0.200 0.228,             TWO_DISAGREE,    0.2140",
  })
  void a_method_of_three_readings_holds_all_three_against_the_range_of_three(
      String readings, Path path, double value) {
    TestBench bench = published("0.02772");
    bench.replicates = 3;
    bench.product(LATER, "B-1", readings.split(" ", -1));
    assertEquals(path, last(bench).path());
    assertEquals(value, last(bench).value().getAsDouble(), 1e-15);
    assertEquals(3, last(bench).asked());
  }

  @Test
  void later_results_never_change_a_value() {
    TestBench all = duplicates(3);
    all.product(TestBench.START.plusDays(40), "B-90", "0.2", "0.211", "0.207");
    TestBench fewer = duplicates(3);
    fewer.product(TestBench.START.plusDays(40), "B-90", "0.2", "0.211", "0.207");
    for (int i = 0; i < 40; i++) {
      all.product(TestBench.START.plusDays(41 + i), "C-" + i, "0.2", "0.4", "0.9");
    }
    Records whole = all.records();
    for (Result result : fewer.records().results()) {
      assertEquals(fewer.records().reported(result), whole.reported(result));
    }
  }

  @Test
  void results_of_one_moment_do_not_judge_each_other() {
    TestBench bench = duplicates(1);
    bench.product(LATER, "B-100", "0.2", "0.9");
    bench.product(LATER, "B-101", "0.2", "0.201");
    assertEquals(Answer.of(new Repeatability(Basis.PAIRS, 10)), last(bench).repeatability());
  }

  @Test
  void a_third_reading_never_enters_the_deviation() {
    TestBench bench = new TestBench();
    for (int i = 0; i < 10; i++) {
      String[] pair = ReadingsAgreementTest.DUP_1[i];
      bench.product(TestBench.START.plusDays(i), "B-" + i, pair[0], pair[1], "0.5");
    }
    ReportedValue found = last(bench.product(LATER, "B-100", "0.195", "0.183"));
    assertEquals(0.00393065, found.comparisons().get(0).deviation(), 5e-9);
  }

  @Test
  void other_roles_and_what_an_action_took_out_do_not_enter() {
    TestBench bench = new TestBench();
    for (int i = 0; i < 10; i++) {
      bench.control(TestBench.START.plusDays(i), ReadingsAgreementTest.DUP_1[i]);
      bench.product(TestBench.START.plusDays(i), "B-" + i, "0.1", "0.2");
    }
    bench.control(TestBench.START.plusDays(20), "0.20", "2.0");
    bench.control(LATER, "0.195", "0.183");
    assertEquals(Answer.of(new Repeatability(Basis.PAIRS, 11)), last(bench).repeatability());
    bench.action(TestBench.START.plusDays(20), Rule.READINGS_DISAGREE, true);
    assertEquals(Answer.of(new Repeatability(Basis.PAIRS, 10)), last(bench).repeatability());
    assertEquals(0.00393065, last(bench).comparisons().get(0).deviation(), 5e-9);
    assertEquals(Role.CONTROL, bench.results.get(bench.results.size() - 1).role());
  }

  @Test
  void from_25_pairs_over_a_factor_of_three_the_limit_follows_the_level() {
    TestBench bench = new TestBench();
    for (int i = 0; i < 25; i++) {
      BigDecimal level = new BigDecimal(i % 2 == 0 ? "0.10" : "1.00");
      BigDecimal other = level.multiply(new BigDecimal(i % 3 == 0 ? "1.04" : "1.01"));
      bench.product(TestBench.START.plusDays(i), "B-" + i, level.toString(), other.toPlainString());
    }
    ReportedValue low = last(bench.product(LATER, "B-100", "0.10", "0.13"));
    assertEquals(Answer.of(new Repeatability(Basis.PAIRS_BY_LEVEL, 25)), low.repeatability());
    assertEquals(Path.TWO_DISAGREE, low.path());
    bench.results.remove(25);
    assertEquals(Path.TWO_AGREE, last(bench.product(LATER, "B-101", "1.00", "1.03")).path());
    bench.results.subList(24, 26).clear();
    ReportedValue before = last(bench.product(LATER, "B-100", "0.10", "0.13"));
    assertEquals(Answer.of(new Repeatability(Basis.PAIRS, 24)), before.repeatability());
    assertEquals(Path.TWO_AGREE, before.path(), "one deviation for all levels lets it pass");
  }

  @Test
  void a_result_of_another_bench_is_refused() {
    Records records = duplicates(1).records();
    Result other = published("0.02").product(LATER, "B-1", "0.2", "0.2").results.get(0);
    assertEquals(
        "no result of tg: readings/a.csv, line 2",
        assertThrows(IllegalArgumentException.class, () -> records.reported(other)).getMessage());
  }
}
