package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Answer;
import org.quietline.assess.Concern;
import org.quietline.assess.Drift;
import org.quietline.assess.Findings;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.OutOfDate;
import org.quietline.assess.Signal;
import org.quietline.assess.StreamFindings;
import org.quietline.bench.ChartSettings.Weight;
import org.quietline.bench.Role;
import org.quietline.bench.Rule;
import org.quietline.bench.SignalId;

/** Every concern as the whole sentence a person reads. */
class ReasonsTest {
  private static final MethodFindings METHOD = Invented.glycerin();
  private static final StreamFindings STREAM = METHOD.streams().get(0);
  private static final Drift DRIFT = METHOD.drift().get(0);
  private static final Findings ALL = Invented.bench();

  private static String said(Concern concern) {
    return new Reasons(METHOD, ALL).sentence(concern);
  }

  private static Signal signal(Rule rule, double value, double limit, int day) {
    return new Signal(
        new SignalId(
            "total-glycerin", "PM-1", "QC-TG-A", LocalDateTime.of(2026, 10, day, 9, 12), rule),
        Weight.STOP,
        value,
        limit,
        true,
        Optional.empty());
  }

  @Test
  void oneOpenStopSignal() {
    assertEquals(
        "1 stop signal is open for QC-TG-A on PM-1, of 14 October 2026: result 0.1910 is above the"
            + " action limit of 0.1893 % mass; no cause is recorded.",
        said(
            new Concern.OpenStopSignals(
                STREAM, List.of(signal(Rule.BEYOND_ACTION_LIMIT, 0.191, 0.1893, 14)))));
  }

  @Test
  void severalOpenNotices() {
    assertEquals(
        "2 notices are open for QC-TG-A on PM-1, the latest of 15 October 2026: eight in a row on"
            + " one side of the centre, 0.1790 against 0.1803 % mass; no cause is recorded.",
        said(
            new Concern.OpenNotices(
                STREAM,
                List.of(
                    signal(Rule.BEYOND_ACTION_LIMIT, 0.16, 0.171, 14),
                    signal(Rule.EIGHT_ON_ONE_SIDE, 0.179, 0.1803, 15)))));
  }

  @Test
  void signalsOfTheOtherStopRules() {
    assertEquals(
        "the weighted mean, 0.1752, is below its limit of 0.1757 % mass",
        RuleWords.seen(
            signal(Rule.WEIGHTED_MEAN_BEYOND_LIMIT, 0.1752, 0.1757, 14), METHOD.method()));
    assertEquals(
        "two readings are 0.0120 apart, the limit is 0.0083 % mass",
        RuleWords.seen(signal(Rule.READINGS_DISAGREE, 0.012, 0.0083, 14), METHOD.method()));
  }

  @Test
  void everyRuleHasItsOwnPhrase() {
    long phrases = java.util.Arrays.stream(Rule.values()).map(RuleWords::phrase).distinct().count();
    assertEquals(Rule.values().length, phrases);
  }

  @Test
  void anExpiredCalibration() {
    assertEquals(
        "Calibration C-30 on PM-1 ended on 16 October 2026, 15 days ago, and results need a"
            + " calibration in force.",
        said(new Concern.CalibrationExpired(window("C-30", 45, Drift.Decision.EXPIRED))));
    Drift without =
        new Drift(
            "PM-1",
            Optional.empty(),
            Optional.empty(),
            0,
            List.of(),
            Answer.cannotSay("needs 3 results, has 0"),
            OptionalDouble.empty(),
            Answer.cannotSay("needs 3 results, has 0"),
            Answer.cannotSay("needs 3 results, has 0"),
            Answer.cannotSay("needs 3 results, has 0"),
            Answer.cannotSay("needs 3 results, has 0"),
            Drift.Decision.EXPIRED);
    assertEquals(
        "Calibration (not recorded) on PM-1 is past its validity, and results need a calibration in"
            + " force.",
        said(new Concern.CalibrationExpired(without)));
    assertEquals(
        "Calibration (not recorded) on PM-1 has more likely than not carried results beyond the"
            + " allowance: the control is off.",
        said(new Concern.RecalibrateNow(without)));
    assertEquals(
        "Calibration (not recorded) on PM-1 will not last to its date: staying within the allowance"
            + " is safe to 3 November 2026 only.",
        said(new Concern.RecalibrateEarly(without, LocalDate.of(2026, 11, 3))));
  }

  private static Drift window(String key, int daysAgo, Drift.Decision decision) {
    return Invented.drift(
        "total-glycerin",
        "PM-1",
        key,
        daysAgo,
        new double[] {0, 10, 20},
        new double[] {0, 0.008, 0.016},
        decision,
        Answer.of(LocalDate.of(2026, 10, 12)));
  }

  /** The line through (0, 0), (10, 0.008), (20, 0.016) is exact: its interval has no width. */
  @Test
  void recalibrateNow() {
    assertEquals(
        "Calibration C-30 on PM-1 has more likely than not carried results beyond the allowance of"
            + " 0.0120 % mass: the control is off by +0.0160 (95 %: +0.0160 to +0.0160).",
        said(new Concern.RecalibrateNow(window("C-30", 20, Drift.Decision.RECALIBRATE_NOW))));
  }

  @Test
  void theLastSafeDayIsPast() {
    assertEquals(
        "The last safe day of calibration C-30 on PM-1 was 12 October 2026: the control is off by"
            + " +0.0096 (95 %: +0.0096 to +0.0096), and the chance of being beyond the allowance of"
            + " 0.0120 % mass is 0 %.",
        said(new Concern.RecalibrateNow(window("C-30", 12, Drift.Decision.RECALIBRATE_NOW))));
  }

  @Test
  void recalibrateEarly() {
    assertEquals(
        "Calibration C-31 on PM-1 will not last to its date: the control moves by +0.00043 a day,"
            + " and staying within 0.0120 % mass is safe to 3 November 2026 only.",
        said(new Concern.RecalibrateEarly(DRIFT, LocalDate.of(2026, 11, 3))));
  }

  @Test
  void driftUnknown() {
    assertEquals(
        "Whether calibration F-2 on PM-2 lasts, cannot be said: needs 3 results, has 2.",
        said(new Concern.DriftUnknown(Invented.youngFattyAcid(5).drift().get(0))));
  }

  @Test
  void usedPastItsDate() {
    OutOfDate calibration = METHOD.outOfDate().get(0);
    assertEquals(
        "1 result was made past a date: B-1039 on 12 October 2026, 2 days after calibration C-30"
            + " ended.",
        said(new Concern.UsedPastDate(List.of(calibration))));
    OutOfDate expiry =
        new OutOfDate(
            Invented.result("B-7", Role.PRODUCT, 3),
            OutOfDate.Kind.REAGENT_EXPIRY,
            "L-9",
            LocalDate.of(2026, 10, 2),
            1,
            true);
    assertEquals(
        "2 results were made past a date, the first being B-7 on 3 October 2026, 1 day after reagent"
            + " lot L-9 expired.",
        said(new Concern.UsedPastDate(List.of(expiry, calibration))));
    OutOfDate shelf =
        new OutOfDate(
            expiry.result(), OutOfDate.Kind.REAGENT_SHELF_LIFE, "L-9", expiry.lastDay(), 1, true);
    assertEquals("the shelf life of opened reagent lot L-9 ended", Reasons.what(shelf));
  }

  @Test
  void aPersonDiffers() {
    assertEquals(
        "The product pairs of AK on PM-1 are further apart than those of the others: deviation 0.0041 against"
            + " 0.0019 % mass, from 12 and 46 pairs (chance under 0.1 %).",
        said(new Concern.PersonDiffers(METHOD.people().get(1))));
  }

  /** 18 pairs of the period, one in twenty: 0.9. */
  @Test
  void pairsDisagree() {
    assertEquals(
        "7 of 18 pairs of the period (control, PM-1) are further apart than the pairs before them"
            + " allow, where chance expects 0.9 (chance of so many: 0.3 %).",
        said(new Concern.PairsDisagree(Invented.policy("PM-1", Role.CONTROL, 18, 7))));
  }

  @Test
  void tooFewResults() {
    assertEquals(
        "QC-FFA-1 on PM-2 has 4 results, and no limits yet (needs 5 results, has 4).",
        said(new Concern.TooFewResults(Invented.youngFattyAcid(4).streams().get(0))));
    assertEquals(
        "QC-FFA-1 on PM-2 has 5 results; its limits are provisional and wide until it has 15.",
        said(new Concern.TooFewResults(Invented.youngFattyAcid(5).streams().get(0))));
  }

  @Test
  void noControls() {
    assertEquals(
        "There is no control result, so nothing can be said about this method.",
        said(new Concern.NoControls(Optional.empty())));
    assertEquals(
        "There is no control result on PM-2, so nothing can be said about results made there.",
        said(new Concern.NoControls(Optional.of("PM-2"))));
    assertEquals(
        "No stop rule in use watches the level of results (bench.toml, [chart]), so no shift can hold"
            + " this method.",
        said(new Concern.NoStopRules()));
    assertEquals(
        "All 22 pairs of PM-1 (control) are twice the same number: copied, or read too coarsely to"
            + " show how readings agree.",
        said(new Concern.PairsIdentical(Invented.pairs("PM-1", Role.CONTROL, 22, 5, 0))));
    assertEquals(
        "No control result on PM-1 since 3 August 2026: nothing can be said about results made there"
            + " since.",
        said(new Concern.NoRecentControls("PM-1", LocalDate.of(2026, 8, 3))));
  }

  @Test
  void biased() {
    assertEquals(
        "QC-TG-A on PM-1 reads 0.0003 % mass above its assigned value 0.180, more than chance"
            + " explains (standard uncertainty of the difference 0.0031).",
        said(new Concern.Biased(STREAM)));
    assertEquals(
        "QC-FFA-1 on PM-2 reads off its assigned value.",
        said(new Concern.Biased(Invented.youngFattyAcid(1).streams().get(0))));
  }

  @Test
  void steadyNeverSaysThatThereIsNoProblem() {
    assertEquals(
        List.of(
            "No signal under the rules stated, on 5 control results of the period; slow moves show"
                + " late."),
        Reasons.of(Invented.acid(), ALL));
  }
}
