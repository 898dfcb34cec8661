package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Period;

class DatesTest {
  @Test
  void datesCannotBeMistaken() {
    assertEquals("14 October 2026", Dates.full(LocalDate.of(2026, 10, 14)));
    assertEquals("4 Sep", Dates.brief(LocalDate.of(2026, 9, 4)));
  }

  @Test
  void aWholeMonthIsNamed() {
    assertEquals("October 2026", Dates.period(Period.of(YearMonth.of(2026, 10))));
    assertEquals(
        "1 October 2026 to 30 October 2026",
        Dates.period(new Period(LocalDate.of(2026, 10, 1), LocalDate.of(2026, 10, 30))));
  }

  @Test
  void spansAreAsShortAsTheyCanBe() {
    LocalDate day = LocalDate.of(2026, 10, 12);
    assertEquals("12 October 2026", Dates.span(day, day));
    assertEquals("12 to 28 October 2026", Dates.span(day, LocalDate.of(2026, 10, 28)));
    assertEquals("12 October 2026 to 2 November 2026", Dates.span(day, LocalDate.of(2026, 11, 2)));
  }

  @Test
  void theAxisOfDaysCountsFractions() {
    assertEquals(1.75, Dates.onAxis(LocalDateTime.of(1970, 1, 2, 18, 0)), 1e-12);
  }
}
