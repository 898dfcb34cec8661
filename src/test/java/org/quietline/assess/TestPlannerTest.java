package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.quietline.stats.mixed.GroupedPoints;
import org.quietline.stats.mixed.LineOutlook;

class TestPlannerTest {
  private static final LocalDate START = LocalDate.of(2026, 3, 1);

  private static LineOutlook.GroupLine line() {
    double[] days = {1, 8, 15, 22, 1, 9, 14, 25, 2, 10, 16, 0, 4};
    double[] values = {0.5, 1.5, 0.2, 1.9, -1.1, 0.3, 0.4, 0.6, 2.0, 1.4, 2.9, -0.4, 0.9};
    int[] windows = {0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 3, 3};
    return LineOutlook.of(GroupedPoints.ofOneOrMore(days, values, windows), 30, 0).line(3);
  }

  private static TestPlanner planner(int today, OptionalInt lastSafe) {
    return new TestPlanner(line(), START, today, 30, lastSafe, OptionalDouble.of(4));
  }

  private static double varianceAfter(TestPlan plan) {
    return line()
        .varianceAfter(
            30, plan.days().stream().mapToDouble(d -> ChronoUnit.DAYS.between(START, d)).toArray());
  }

  /** Every choice of one, two and three days is tried. */
  @Test
  void noOtherDaysNarrowTheOutlookMore() {
    int today = 5;
    int last = 24;
    double[] least = {0, 1e9, 1e9, 1e9};
    for (int i = today + 1; i <= last; i++) {
      least[1] = Math.min(least[1], line().varianceAfter(30, i));
      for (int j = i + 1; j <= last; j++) {
        least[2] = Math.min(least[2], line().varianceAfter(30, i, j));
        for (int k = j + 1; k <= last; k++) {
          least[3] = Math.min(least[3], line().varianceAfter(30, i, j, k));
        }
      }
    }
    for (int n = 1; n <= 3; n++) {
      TestPlan plan = planner(today, OptionalInt.empty()).plan(n).value().orElseThrow();
      assertEquals(n, plan.days().size());
      assertEquals(least[n], varianceAfter(plan), 1e-9 * least[n], n + " tests");
      assertTrue(plan.widthThen() < plan.widthNow(), n + " tests");
      assertTrue(plan.widthThen() <= plan.evenlyThen() * 1.001, n + " tests");
    }
  }

  @Test
  void testsComeBeforeTheLastSafeDay() {
    TestPlan plan = planner(5, OptionalInt.of(9)).plan(3).value().orElseThrow();
    assertTrue(plan.days().stream().noneMatch(d -> d.isAfter(START.plusDays(9))));
    assertTrue(plan.days().stream().noneMatch(d -> d.isBefore(START.plusDays(6))));
    assertEquals(3, plan.days().stream().distinct().count());
  }

  @Test
  void whereNoDayIsLeftThePlanSaysSo() {
    assertEquals(
        Optional.of("no day is left on which a result could still change what to do"),
        planner(24, OptionalInt.empty()).plan(1).why());
    assertEquals(
        Optional.of("only 2 days are left for tests"),
        planner(22, OptionalInt.empty()).plan(3).why());
    assertEquals(
        Optional.of("only 1 day is left for tests"),
        planner(23, OptionalInt.empty()).plan(2).why());
    assertEquals(
        List.of(START.plusDays(24)),
        planner(23, OptionalInt.empty()).plan(1).value().orElseThrow().days());
  }
}
