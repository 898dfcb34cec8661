package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Concern;
import org.quietline.assess.DateCoverage;
import org.quietline.assess.Drift;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.Signal;
import org.quietline.assess.Slips;
import org.quietline.assess.Verdict;
import org.quietline.bench.Role;
import org.quietline.report.Block.Step;

class StepsTest {
  private static List<Step> steps(MethodFindings base, List<Concern> concerns) {
    return Steps.of(
        new MethodFindings(
            base.method(),
            Verdict.of(concerns),
            base.replicates(),
            base.people(),
            base.streams(),
            base.drift(),
            base.precision(),
            base.capability(),
            base.outOfDate(),
            new DateCoverage(5, 0, 0, List.of()),
            Slips.NONE));
  }

  @Test
  void aHoldSaysWhatWaits() {
    List<Step> steps = Steps.of(Invented.glycerin());
    assertEquals(
        new Step(
            "Report no result of this method until the cause is found and mended and a control is good.",
            "",
            "now",
            true),
        steps.get(0));
    assertEquals(
        "Find the cause of each signal and record it in actions.csv.", steps.get(1).what());
    assertTrue(steps.get(1).detail().startsWith("total-glycerin/PM-1/QC-TG-A/2026-10-"));
    assertTrue(steps.get(1).detail().endsWith("/weighted-mean-beyond-limit"));
    assertEquals(
        new Step(
            "Check the control as found, recalibrate PM-1, check it as left.",
            "",
            "by 3 November 2026",
            false),
        steps.get(3));
  }

  @Test
  void aSteadyMethodHasItsNextCalibration() {
    assertEquals(
        List.of(
            new Step(
                "Check the control as found, recalibrate PM-1, check it as left.",
                "",
                "by 19 November 2026",
                false)),
        Steps.of(Invented.acid()));
  }

  @Test
  void withNothingElseAControlComesNext() {
    List<Step> steps = steps(Invented.nothing(), List.of());
    assertEquals(1, steps.size());
    assertEquals("Measure a control each week.", steps.get(0).what());
  }

  @Test
  void thereAreNeverMoreThanSixAndNoneIsForgotten() {
    MethodFindings m = Invented.glycerin();
    Drift drift = m.drift().get(0);
    List<Signal> one =
        m.verdict().concerns().get(0) instanceof Concern.OpenStopSignals c
            ? c.open().subList(0, 1)
            : List.of();
    List<Concern> all = new ArrayList<>(m.verdict().concerns());
    all.add(new Concern.OpenNotices(m.streams().get(0), one));
    all.add(new Concern.CalibrationExpired(drift));
    all.add(new Concern.RecalibrateNow(drift));
    all.add(new Concern.DriftUnknown(drift));
    all.add(new Concern.PairsDisagree(Invented.policy("PM-1", Role.CONTROL, 18, 7)));
    all.add(new Concern.TooFewResults(m.streams().get(0)));
    all.add(new Concern.Biased(m.streams().get(0)));
    all.add(new Concern.NoRecentControls("PM-1", LocalDate.of(2026, 8, 3)));
    List<Step> steps = steps(m, all);
    assertEquals(6, steps.size());
    assertTrue(steps.get(5).what().matches("Then go through the other \\d+ things asked above\\."));
    assertTrue(steps.get(5).pressing());
    assertFalse(steps.stream().anyMatch(s -> s.what().isBlank() || s.by().isBlank()));
  }

  @Test
  void oneSignalIsNamed() {
    MethodFindings m = Invented.acid();
    Signal signal = Invented.glycerin().streams().get(0).signals().get(0);
    List<Step> steps =
        steps(m, List.of(new Concern.OpenNotices(m.streams().get(0), List.of(signal))));
    assertEquals("Find the cause of the signal and record it in actions.csv.", steps.get(0).what());
    assertEquals(signal.id().toString(), steps.get(0).detail());
    assertFalse(steps.get(0).pressing());
  }
}
