package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.quietline.assess.ReportedValue.Comparison;
import org.quietline.bench.Bench;
import org.quietline.bench.Result;
import org.quietline.intake.BenchFolder;

/** The values of the invented bench Tidewick. */
class SampleValuesTest {
  private static Records glycerin() {
    Bench bench = BenchFolder.read(Path.of("sample-runs", "tidewick")).bench();
    return Records.of(
        bench,
        bench.settings().methods().stream()
            .filter(m -> m.key().equals("total-glycerin"))
            .findFirst()
            .orElseThrow(),
        new Period(LocalDate.of(2026, 10, 1), LocalDate.of(2026, 10, 31)),
        LocalDateTime.of(2026, 10, 31, 23, 0));
  }

  @Test
  void the_only_third_reading_of_tidewick_follows_a_pair_that_disagrees_and_gives_the_median() {
    Records records = glycerin();
    List<Result> third =
        records.results().stream().filter(r -> records.reported(r).readings() > 2).toList();
    assertEquals(List.of("B-1135"), third.stream().map(Result::sample).toList());
    ReportedValue found = records.reported(third.get(0));
    assertEquals(ReportedValue.Path.THREE_MEDIAN, found.path());
    assertEquals(OptionalDouble.of(0.214), found.value());
    assertEquals(
        List.of(0.009, 0.010), found.comparisons().stream().map(Comparison::range).toList());
    assertEquals(
        List.of(false, false), found.comparisons().stream().map(Comparison::agrees).toList());
    assertEquals(0, found.surplus());
  }

  @Test
  void october_names_the_pairs_that_disagree_and_got_no_third_reading() {
    PairsOfPeriod products = PairsOfPeriod.ask(glycerin()).get(1);
    assertEquals(14, products.judged());
    assertEquals(
        List.of("B-1169", "B-1171"),
        products.withoutReading().stream().map(Result::sample).toList());
    assertEquals(Answer.of(PairsOfPeriod.Standing.AS_EXPECTED), products.standing());
  }
}
