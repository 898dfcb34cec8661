package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.quietline.report.Chart.Axis;

class AxesTest {
  private static String labels(Axis axis) {
    return axis.ticks().stream().map(Chart.Tick::label).collect(Collectors.joining("|"));
  }

  @Test
  void valuesGetRoundTicks() {
    assertEquals("0.175|0.180|0.185|0.190", labels(Axes.around(List.of(0.174, 0.191), 6)));
    assertEquals("0|50|100|150|200", labels(Axes.around(List.of(0.0, 200.0), 6)));
    assertEquals("−0.01|0.00|0.01", labels(Axes.around(List.of(-0.012, 0.012), 4)));
  }

  @Test
  void oneValueStillHasAnAxis() {
    Axis axis = Axes.around(List.of(0.18), 6);
    assertTrue(axis.holds(0.18) && axis.lower() < 0.18 && axis.upper() > 0.18);
    assertTrue(Axes.around(List.of(0.0), 6).holds(0));
    assertTrue(Axes.around(List.of(), 6).holds(0.5));
  }

  @Test
  void aYearIsTickedByMonthsAndNamesTheYearOnce() {
    Axis axis =
        Axes.time(LocalDateTime.of(2025, 10, 20, 8, 0), LocalDateTime.of(2026, 10, 20, 8, 0));
    assertEquals("Nov 2025|Jan 2026|Mar|May|Jul|Sep", labels(axis));
  }

  @Test
  void weeksAreTickedByDays() {
    Axis axis =
        Axes.time(LocalDateTime.of(2026, 9, 28, 0, 0), LocalDateTime.of(2026, 10, 20, 8, 0));
    assertEquals("28 Sep|5 Oct|12 Oct|19 Oct", labels(axis));
  }

  @Test
  void decadesStayReadable() {
    Axis axis = Axes.time(LocalDateTime.of(2001, 3, 1, 0, 0), LocalDateTime.of(2026, 10, 20, 8, 0));
    assertEquals("Mar 2001|Mar 2006|Mar 2011|Mar 2016|Mar 2021|Mar 2026", labels(axis));
  }

  @Test
  void daysStartAtZero() {
    assertEquals("0|5|10|15|20|25|30", labels(Axes.days(30)));
    assertTrue(Axes.days(0).holds(1));
  }

  @Test
  void anAxisHasTwoEnds() {
    assertThrows(IllegalArgumentException.class, () -> new Axis(1, 1, List.of()));
    assertThrows(IllegalArgumentException.class, () -> new Axis(Double.NaN, 1, List.of()));
  }
}
