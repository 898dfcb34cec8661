package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.control.DailyReading.DRIFTING;
import static org.quietline.stats.control.DailyReading.IN_CONTROL;
import static org.quietline.stats.control.DailyReading.OUT_OF_CONTROL;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Simulation;

class DailyReadingTest {
  private static List<DailyReading> read(double... u) {
    return DailyReading.of(ChartedSeries.of(u)).stream().map(Optional::orElseThrow).toList();
  }

  @Test
  void oneWarningIsInControlTheSecondInThreeIsNot() {
    assertEquals(List.of(IN_CONTROL, IN_CONTROL, IN_CONTROL), read(2.5, 0.1, -0.2));
    assertEquals(List.of(IN_CONTROL, IN_CONTROL, OUT_OF_CONTROL), read(2.5, 0.1, -2.5));
    assertEquals(
        List.of(IN_CONTROL, IN_CONTROL, IN_CONTROL, IN_CONTROL), read(2.5, 0.1, -0.2, 2.5));
    assertEquals(List.of(OUT_OF_CONTROL, IN_CONTROL), read(-3.1, 0.3));
    assertEquals(List.of(OUT_OF_CONTROL, OUT_OF_CONTROL), read(-3.1, 2.1));
  }

  @Test
  void sevenValuesOnTheMoveAndTenOfElevenOnOneSideDrift() {
    List<DailyReading> rising = read(-1.5, -1, -0.5, 0.1, 0.2, 0.9, 1.5);
    assertEquals(IN_CONTROL, rising.get(5));
    assertEquals(DRIFTING, rising.get(6));
    List<DailyReading> side = read(1, 0.5, 1, 0.5, 1, -0.5, 1, 0.5, 1, 0.5, 1);
    assertEquals(IN_CONTROL, side.get(9));
    assertEquals(DRIFTING, side.get(10));
    assertEquals(OUT_OF_CONTROL, read(-1.5, -1, -0.5, 0.1, 0.2, 0.9, 3.5).get(6));
  }

  @Test
  void outOfControlIsWhereItsRulesAreMet() {
    ChartedSeries series =
        ChartedSeries.of(Simulation.normal(new SplittableRandom(570), 3000)).startingAnewAt(1500);
    List<Optional<DailyReading>> readings = DailyReading.of(series);
    List<Integer> out =
        IntStream.range(0, readings.size())
            .filter(at -> readings.get(at).equals(Optional.of(OUT_OF_CONTROL)))
            .boxed()
            .toList();
    assertEquals(
        out,
        DailyReading.outOfControl().find(series).stream()
            .map(RunRules.Met::at)
            .distinct()
            .toList());
    assertTrue(out.size() > 5);
  }

  @Test
  void leftOutValuesHaveNoReading() {
    List<Optional<DailyReading>> readings =
        DailyReading.of(ChartedSeries.of(2.5, 9, 2.5).leavingOut(1));
    assertEquals(
        List.of(Optional.of(IN_CONTROL), Optional.empty(), Optional.of(OUT_OF_CONTROL)), readings);
    assertEquals(
        List.of(Optional.of(IN_CONTROL), Optional.empty(), Optional.of(IN_CONTROL)),
        DailyReading.of(ChartedSeries.of(2.5, 9, 2.5).leavingOut(1).startingAnewAt(2)));
  }

  /** The same words as a walk over the values with counters. */
  @Test
  void agreesWithCounters() {
    SplittableRandom random = new SplittableRandom(569);
    int out = 0;
    int outByCounters = 0;
    int drifting = 0;
    int driftingByCounters = 0;
    for (int t = 0; t < 200; t++) {
      double[] u = Simulation.normal(random, 40);
      List<DailyReading> readings = read(u);
      int rising = 1;
      int falling = 1;
      for (int i = 0; i < u.length; i++) {
        int warnings = 0;
        for (int j = Math.max(0, i - 2); j < i; j++) {
          warnings += Math.abs(u[j]) > 2 ? 1 : 0;
        }
        int above = 0;
        int below = 0;
        for (int j = Math.max(0, i - 10); j <= i; j++) {
          above += u[j] > 0 ? 1 : 0;
          below += u[j] < 0 ? 1 : 0;
        }
        rising = i > 0 && u[i] > u[i - 1] ? rising + 1 : 1;
        falling = i > 0 && u[i] < u[i - 1] ? falling + 1 : 1;
        boolean isOut = Math.abs(u[i]) > 3 || (Math.abs(u[i]) > 2 && warnings > 0);
        boolean drifts =
            rising >= 7 || falling >= 7 || (u[i] > 0 && above >= 10) || (u[i] < 0 && below >= 10);
        outByCounters += isOut ? 1 : 0;
        driftingByCounters += drifts && !isOut ? 1 : 0;
        assertEquals(
            isOut ? OUT_OF_CONTROL : drifts ? DRIFTING : IN_CONTROL, readings.get(i), "at " + i);
      }
      out += (int) readings.stream().filter(r -> r == OUT_OF_CONTROL).count();
      drifting += (int) readings.stream().filter(r -> r == DRIFTING).count();
    }
    Evidence.own(
        DailyReading.class, "readings out of control", "walk with counters", outByCounters, out, 0);
    Evidence.own(
        DailyReading.class,
        "drifting readings",
        "walk with counters",
        driftingByCounters,
        drifting,
        0);
  }
}
