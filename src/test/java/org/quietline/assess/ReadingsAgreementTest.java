package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.quietline.bench.ReplicateKind;
import org.quietline.bench.Role;
import org.quietline.bench.Rule;

/** Pairs against the duplicates example DUP-1, recomputed with SciPy 1.17.1. */
class ReadingsAgreementTest {
  static final String[][] DUP_1 = {
    {"0.182", "0.178"}, {"0.201", "0.206"}, {"0.165", "0.166"}, {"0.190", "0.181"},
    {"0.212", "0.209"}, {"0.174", "0.178"}, {"0.188", "0.190"}, {"0.195", "0.183"},
    {"0.169", "0.171"}, {"0.203", "0.200"}
  };

  private static TestBench duplicates() {
    TestBench bench = new TestBench();
    for (int i = 0; i < DUP_1.length; i++) {
      bench.product(TestBench.START.plusDays(i), "B-" + i, DUP_1[i]);
    }
    return bench;
  }

  @Test
  void ten_duplicates_give_the_published_deviation_limit_and_interval() {
    Replicates found = duplicates().method("2026-01").replicates().get(0);
    assertEquals(10, found.pairs());
    assertEquals(Role.PRODUCT, found.role());
    assertEquals(ReplicateKind.RE_READ, found.kind());
    assertEquals(10, found.degreesOfFreedom());
    assertEquals(0.003930648801, found.deviation(), 1e-12);
    assertEquals(0.010895002412, found.limit(), 1e-12);
    assertEquals(0.00274641, found.interval().lower(), 5e-9);
    assertEquals(0.00689803, found.interval().upper(), 5e-9);
    assertEquals(List.of("B-7"), found.beyondInPeriod().stream().map(r -> r.sample()).toList());
    // at least one of ten beyond a limit that one in twenty passes by chance
    assertEquals(0.40126306, found.chanceOfSoMany(), 5e-9);
  }

  @Test
  void single_and_censored_results_are_counted_and_left_out() {
    TestBench bench = duplicates();
    LocalDateTime later = TestBench.START.plusDays(15);
    bench.product(later, "B-20", "0.2");
    bench.product(later, "B-21", "<0.05", "0.06");
    Replicates found = bench.method("2026-01").replicates().get(0);
    assertEquals(10, found.pairs());
    assertEquals(2, found.leftOut());
  }

  @Test
  void only_pairs_of_the_period_are_judged_but_all_are_used() {
    TestBench bench = duplicates();
    bench.product(LocalDateTime.of(2026, 2, 3, 9, 0), "B-30", "0.200", "0.201");
    Replicates found = bench.method("2026-02").replicates().get(0);
    assertEquals(11, found.pairs());
    assertEquals(1, found.pairsInPeriod());
    assertEquals(List.of(), found.beyondInPeriod());
    assertEquals(1, found.chanceOfSoMany(), 0.0);
  }

  @Test
  void roles_are_kept_apart_and_an_excluded_control_is_left_out() {
    TestBench bench = duplicates();
    bench.control(TestBench.START.plusDays(20), "0.20", "2.0");
    bench.control(TestBench.START.plusDays(21), "0.20", "0.21");
    bench.action(TestBench.START.plusDays(20), Rule.BEYOND_ACTION_LIMIT, true);
    List<Replicates> found = bench.method("2026-01").replicates();
    assertEquals(
        List.of(Role.CONTROL, Role.PRODUCT), found.stream().map(Replicates::role).toList());
    assertEquals(1, found.get(0).pairs());
    assertEquals(1, found.get(0).leftOut());
  }

  @Test
  void a_method_of_one_reading_has_no_pairs() {
    TestBench bench = duplicates();
    bench.replicates = 1;
    assertEquals(List.of(), bench.method("2026-01").replicates());
    assertEquals(
        Optional.of("one reading makes a result, so there are no pairs"),
        bench.method("2026-01").precision().repeatability().why());
  }

  @Test
  void a_person_whose_pairs_are_twice_as_far_apart_is_told_with_the_chance() {
    TestBench bench = new TestBench();
    for (int i = 0; i < 30; i++) {
      bench.result(
          TestBench.START.plusHours(i),
          Role.PRODUCT,
          "A-" + i,
          "RO",
          Optional.empty(),
          "0.200",
          i % 2 == 0 ? "0.201" : "0.203");
      bench.result(
          TestBench.START.plusHours(i).plusMinutes(5),
          Role.PRODUCT,
          "C-" + i,
          "EV",
          Optional.empty(),
          "0.200",
          i % 2 == 0 ? "0.202" : "0.206");
    }
    List<PersonPairs> people = bench.method("2026-01").people();
    assertEquals(List.of("EV", "RO"), people.stream().map(PersonPairs::person).toList());
    PersonPairs ev = people.get(0);
    // ratio of variances exactly 4 on 30 and 30 degrees of freedom (SciPy 1.17.1), 2 compared
    assertEquals(2 * 0.00014180644939309, ev.chance(), 1e-12);
    assertTrue(ev.differs());
    assertEquals(30, ev.othersPairs());
    assertEquals(2, ev.deviation() / ev.othersDeviation(), 1e-12);
    assertFalse(people.get(1).differs());
  }

  @Test
  void seven_pairs_are_too_few_to_compare_people() {
    TestBench bench = duplicates();
    for (int i = 0; i < 7; i++) {
      bench.result(
          TestBench.START.plusHours(i),
          Role.PRODUCT,
          "A-" + i,
          "EV",
          Optional.empty(),
          "0.2",
          "0.9");
    }
    assertEquals(List.of(), bench.method("2026-01").people());
  }

  @Test
  void people_are_not_compared_over_levels_that_differ_too_much() {
    TestBench bench = new TestBench();
    for (int i = 0; i < 20; i++) {
      String level = i % 2 == 0 ? "0.2" : "2.0";
      bench.product(TestBench.START.plusHours(i), "B-" + i, level + "00", level + "01");
      bench.result(
          TestBench.START.plusHours(i).plusMinutes(1),
          Role.PRODUCT,
          "E-" + i,
          "EV",
          Optional.empty(),
          level + "00",
          level + "09");
    }
    assertEquals(List.of(), bench.method("2026-01").people());
  }

  @Test
  void controls_of_one_person_are_not_compared_with_products_of_another() {
    TestBench bench = new TestBench();
    for (int i = 0; i < 20; i++) {
      bench.control(TestBench.START.plusHours(i), "0.200", "0.201");
      bench.result(
          TestBench.START.plusHours(i).plusMinutes(1),
          Role.PRODUCT,
          "E-" + i,
          "EV",
          Optional.empty(),
          "0.200",
          "0.209");
    }
    assertEquals(List.of(), bench.method("2026-01").people());
  }

  @Test
  void a_person_whose_pairs_differ_where_all_others_are_equal_is_told() {
    TestBench bench = new TestBench();
    for (int i = 0; i < 10; i++) {
      bench.product(TestBench.START.plusHours(i), "B-" + i, "0.200", "0.200");
      bench.result(
          TestBench.START.plusHours(i).plusMinutes(1),
          Role.PRODUCT,
          "E-" + i,
          "EV",
          Optional.empty(),
          "0.200",
          "0.270");
    }
    assertEquals(
        List.of("EV"),
        bench.method("2026-01").people().stream()
            .filter(PersonPairs::differs)
            .map(PersonPairs::person)
            .toList());
  }
}
