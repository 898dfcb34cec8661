package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.quietline.assess.InstrumentCalibrations.Curve;
import org.quietline.assess.InstrumentCalibrations.Step;
import org.quietline.bench.Bench;
import org.quietline.bench.Method;
import org.quietline.intake.BenchFolder;

/**
 * The invented bench, all fourteen months: from TG-C12 on the calibrators of total glycerin respond
 * 6 % higher, T. Brannagh's pairs are wide, and nothing is wrong in the acid number.
 */
class FreeStreamsOfTidewickTest {
  private static final Bench BENCH = BenchFolder.read(Path.of("sample-runs", "tidewick")).bench();

  private static Records records(String key) {
    Method method =
        BENCH.settings().methods().stream()
            .filter(m -> m.key().equals(key))
            .findFirst()
            .orElseThrow();
    Period all = new Period(LocalDate.of(2025, 9, 1), LocalDate.of(2026, 10, 31));
    return Records.of(BENCH, method, all, LocalDate.of(2026, 10, 31).atTime(23, 59));
  }

  private static InstrumentCalibrations calibrations(String key) {
    return CalibrationHistory.ask(records(key)).get(0);
  }

  private static List<String> steps(InstrumentCalibrations found) {
    return found.curves().stream()
        .filter(c -> c.step().value().filter(Step::isBeyond).isPresent())
        .map(c -> c.calibration().key())
        .toList();
  }

  /** By hand: 0.045 + 1.700 · 0.240 = 0.453, and (0.453 − 0.0385)/1.825 = 0.227123. */
  @Test
  void the_lot_step_is_the_only_step_and_what_read_0_240_reads_0_227() {
    InstrumentCalibrations found = calibrations("total-glycerin");
    assertEquals(List.of("TG-C12"), steps(found));
    Curve curve = found.curves().get(11);
    Step step = curve.step().value().orElseThrow();
    assertEquals(0.240, step.level());
    assertEquals((0.453 - 0.0385) / 1.825, step.reads(), 1e-9);
    assertFalse(step.uncertainty().value().orElseThrow().interval().contains(0));
    assertTrue(
        Math.abs(step.change()) > 2 * step.limit().value().orElseThrow().value(), step.toString());
    CalibrationTrack slopes = found.tracks().get(0);
    assertTrue(slopes.marks().get(11).isBeyond());
    assertEquals(11, found.steps().judged());
    assertEquals(0.0297, found.steps().expected(), 5e-5);
    assertEquals(0, found.blanks().get(0).rate().observed());
    assertEquals(List.of(), found.signals());
  }

  @Test
  void nothing_is_found_in_the_acid_number() {
    InstrumentCalibrations found = calibrations("acid-number");
    assertEquals(List.of(), steps(found));
    assertEquals(11, found.steps().judged());
    assertEquals(11, found.blanks().get(0).rate().judged());
    FreeNotices notices = FreeNotices.ask(records("acid-number"));
    assertEquals(0, notices.observed());
    assertTrue(notices.expected() > 0.3 && notices.expected() < 0.6, notices.toString());
    PairFindings pairs = PairControl.ask(records("acid-number")).get(0);
    assertEquals(149, pairs.judged().size());
    assertTrue(pairs.chanceOfSoManyWarnings() > 0.5);
  }

  @Test
  void no_sample_has_both_an_acid_number_and_a_free_fatty_acid() {
    AcidityAgreement found = MethodsAgree.ask(records("acid-number")).get(0);
    assertEquals(List.of(), found.pairs());
    assertEquals(154, found.unmatched());
    assertEquals(
        "needs 5 samples measured by both methods, has 0", found.centre().why().orElseThrow());
    assertEquals(List.of(), Retests.ask(records("acid-number")));
  }

  /** All but one of the wide pairs are the person's; the control was not read by that person. */
  @Test
  void wide_pairs_are_the_persons_and_no_sign_of_uneven_samples() {
    PairFindings pairs = PairControl.ask(records("total-glycerin")).get(0);
    List<String> people =
        pairs.judged().stream()
            .filter(PairFindings.Judged::isBeyond)
            .map(j -> j.result().operator().orElseThrow())
            .toList();
    assertEquals(List.of("RO", "TB", "TB", "TB", "TB", "TB", "TB"), people);
    assertTrue(pairs.chanceOfSoManyActions() < 1e-5);
    SampleEvenness evenness = Heterogeneity.ask(records("total-glycerin")).get(0);
    assertFalse(evenness.comparison().value().orElseThrow().uneven());
  }
}
