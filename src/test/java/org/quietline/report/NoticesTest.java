package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Findings;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.Period;
import org.quietline.assess.Review;
import org.quietline.assess.Signal;
import org.quietline.assess.Story;
import org.quietline.intake.BenchFolder;
import org.quietline.intake.Intake;

/** Notices on the invented bench, whose calibration drifts in October 2026. */
class NoticesTest {
  private static Review review;
  private static Findings october;

  @BeforeAll
  static void reviewOctober() {
    Intake intake = BenchFolder.read(Path.of("sample-runs", "tidewick"));
    review =
        new Review(
            intake.bench(),
            intake.accounting(),
            intake.settingsFingerprint(),
            intake.dataFingerprint());
    october = review.of(Period.of(YearMonth.of(2026, 10)), Optional.empty());
  }

  private static Story open() {
    return october.methods().stream()
        .map(MethodFindings::stories)
        .flatMap(List::stream)
        .filter(Story::open)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void theOneOpenStoryGetsANoticeThatCanBeActedOn() {
    List<Notice> notices = Notices.of(october, "0.1.0");
    assertEquals(1, notices.size());
    assertEquals(open().id(), notices.get(0).story());
    String text = BlockText.of(notices.get(0).document().pages().get(0).blocks());
    for (String part :
        List.of(
            "Total glycerin, photometric on PM-1\nhold",
            "Stop: the weighted mean, 0.1895, is above its limit of 0.1839 % mass",
            "likely begun between 9 October 2026 and 14 October 2026",
            "23 Oct 2026, 07:44 | result beyond the action limit | 0.1920 | 0.1876 | TG-C15,"
                + " readings/2026-10.csv, 34",
            "drift since calibration TG-C15",
            "read a calibrator as a sample, before recalibrating",
            "In doubt since the last good control of 9 October 2026, up to now: 11 samples",
            "B-1164 | 16 October 2026 | 0.223",
            "cause, or not found",
            "Found and mended, Resume")) {
      assertTrue(text.contains(part), () -> part + " is not in:\n" + text);
    }
    for (Signal signal : open().signals()) {
      assertTrue(text.contains(signal.id().toString()), signal.id()::toString);
    }
  }

  /**
   * The chart holds the latest twenty results, and a ring for each of the open signals' results.
   */
  @Test
  void theChartShowsTheLatestResults() {
    Block.Figure figure =
        Notices.of(october, "0.1.0").get(0).document().pages().get(0).blocks().stream()
            .filter(b -> b instanceof Block.Figure)
            .map(b -> (Block.Figure) b)
            .findFirst()
            .orElseThrow();
    ControlChart chart = (ControlChart) figure.chart();
    assertEquals(20, chart.marks().size());
    assertEquals(2, chart.rings().stream().filter(ControlChart.Ring::open).count());
    assertTrue(figure.facts().endsWith("the latest 20 of 60"), figure.facts());
  }

  @Test
  void aQuietMonthHasNoNotice() {
    Findings may = review.of(Period.of(YearMonth.of(2026, 5)), Optional.empty());
    assertEquals(List.of(), Notices.of(may, "0.1.0"));
  }

  @Test
  void theSameFindingsGiveTheSameNotice() {
    assertEquals(Notices.of(october, "0.1.0"), Notices.of(october, "0.1.0"));
  }
}
