package org.quietline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Path;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.Period;
import org.quietline.assess.Review;
import org.quietline.assess.Slip;
import org.quietline.intake.BenchFolder;
import org.quietline.intake.Intake;

/**
 * The questions on the invented bench: the one slip that was planted, and no other in fourteen
 * months, although a lot stepped, a calibration drifted and a person's readings lie apart.
 */
class TidewickSlipsTest {
  private static Review review;

  @BeforeAll
  static void read() {
    Intake intake = BenchFolder.read(Path.of("sample-runs", "tidewick"));
    review =
        new Review(
            intake.bench(),
            intake.accounting(),
            intake.settingsFingerprint(),
            intake.dataFingerprint());
  }

  private static List<MethodFindings> in(YearMonth month) {
    return review.of(Period.of(month), Optional.empty()).methods();
  }

  @Test
  void the_planted_slip_is_asked_about_and_answered_by_taking_the_result_out() {
    List<Slip> slips =
        in(YearMonth.of(2026, 10)).stream().flatMap(m -> m.slips().questions().stream()).toList();
    assertEquals(
        List.of("total-glycerin/PM-1/QC-TG-A/2026-04-23T07:32/slip-in-value"),
        slips.stream().map(s -> s.id().toString()).toList());
    assertEquals(
        List.of("POWER_OF_TEN reading 1 meant 0.182"),
        slips.get(0).candidates().stream()
            .map(
                c ->
                    c.what()
                        + " reading "
                        + c.reading().orElseThrow()
                        + " meant "
                        + c.value().orElseThrow())
            .toList());
    assertFalse(slips.get(0).open());
  }

  @Test
  void no_month_has_an_open_question() {
    for (YearMonth month = YearMonth.of(2025, 9);
        !month.isAfter(YearMonth.of(2026, 10));
        month = month.plusMonths(1)) {
      for (MethodFindings method : in(month)) {
        assertEquals(List.of(), method.slips().open(), month + " " + method.method().key());
      }
    }
  }

  /** The first month has too few results, and free fatty acid was taken up late. */
  @Test
  void what_could_be_judged_is_counted() {
    assertEquals(
        List.of("19 of 19", "17 of 17", "0 of 11"),
        in(YearMonth.of(2026, 10)).stream()
            .map(m -> m.slips().judged() + " of " + m.slips().inPeriod())
            .toList());
    assertEquals(
        List.of("12 of 17", "0 of 15", "0 of 0"),
        in(YearMonth.of(2025, 9)).stream()
            .map(m -> m.slips().judged() + " of " + m.slips().inPeriod())
            .toList());
  }
}
