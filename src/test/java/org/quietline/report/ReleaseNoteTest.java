package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Answer;
import org.quietline.assess.Release;
import org.quietline.assess.Release.Decision;
import org.quietline.assess.Release.Held;
import org.quietline.assess.Release.HeldBy;
import org.quietline.assess.Release.Judged;
import org.quietline.assess.Release.Used;
import org.quietline.assess.Release.Way;
import org.quietline.assess.Release.WayOut;
import org.quietline.assess.ReleaseFindings;
import org.quietline.assess.Uncertainty;
import org.quietline.bench.Method;
import org.quietline.bench.ReleaseSettings;

/** The note on a batch and its lines on the screen, state by state. */
class ReleaseNoteTest {
  private static final Method METHOD = Invented.glycerin().method();
  private static final LocalDateTime TESTED = Invented.NOW.minusDays(3);

  private static Judged judged(Decision byValue, double chance, OptionalDouble breakEven) {
    boolean close = byValue == Decision.TOO_CLOSE_TO_CALL;
    return new Judged(
        "QC-TG-A",
        15,
        0.0051,
        158,
        0.0039,
        chance,
        0.0084,
        OptionalDouble.empty(),
        OptionalDouble.of(0.24),
        byValue,
        close
            ? List.of(
                new WayOut(Way.READING, 0.005, 0.1, 0.02),
                new WayOut(Way.CALIBRATION, 0.004, 0.55, 0.05))
            : List.of(),
        close ? Optional.of(Way.CALIBRATION) : Optional.empty(),
        breakEven);
  }

  private static Release release(Answer<Judged> judged, Held... held) {
    return new Release(
        METHOD,
        "B-7",
        "PM-1",
        List.of(new Used(TESTED, 0.2345, 2, "TG-C9", 1, false, "readings/2026-10.csv", 31)),
        OptionalDouble.of(0.2345),
        0.95,
        judged,
        List.of(held),
        Optional.empty());
  }

  private static ReleaseFindings findings(Release... releases) {
    ReleaseFindings.Batch batch =
        new ReleaseFindings.Batch(
            "B-7",
            List.of(releases),
            java.util.Arrays.stream(releases)
                .map(r -> Answer.<Uncertainty.Budget>cannotSay("it is not known"))
                .toList());
    return new ReleaseFindings(
        "An invented bench",
        Invented.NOW,
        ReleaseSettings.DEFAULTS,
        Invented.accounting(0),
        List.of(batch),
        "aa11",
        "bb22");
  }

  private static String note(ReleaseFindings findings) {
    Document note = ReleaseNote.of(findings.batches().get(0), findings, "0.1.0");
    assertEquals(1, note.pages().size());
    return BlockText.of(note.pages().get(0).blocks());
  }

  private static void says(String text, String... parts) {
    for (String part : parts) {
      assertTrue(text.contains(part), () -> part + " is not in:\n" + text);
    }
  }

  @Test
  void aClearBatchMayGoByTheRule() {
    ReleaseFindings clear =
        findings(release(Answer.of(judged(Decision.WITHIN, 0.9999, OptionalDouble.empty()))));
    says(
        note(clear),
        "May batch B-7 go?\nwithin",
        "the rule lets it go",
        "conforms with a chance of over 99.9 %.",
        "| 0.2345 | at most 0.240",
        "| 0.0051 | at most 0.2316 | over 99.9 % | within",
        " 2 readings, calibration TG-C9, readings/2026-10.csv line 31",
        "in-house production-control result; no control of its calibration before it",
        "JCGM 106:2012",
        "Local codes and competent professionals prevail.",
        "Decided, Authorised");
    assertFalse(note(clear).contains("Costs alone"));
    assertTrue(clear.steady());
    says(String.join("\n", ReleaseLines.of(clear)), "B-7  within");
  }

  @Test
  void aBatchBeyondIsNotReleased() {
    ReleaseFindings beyond =
        findings(release(Answer.of(judged(Decision.BEYOND, 0.0004, OptionalDouble.empty()))));
    says(
        note(beyond),
        "May batch B-7 go?\nbeyond",
        "Do not release: it is beyond a limit.",
        "with a chance of under 0.1 %: beyond the limit.");
    assertFalse(beyond.steady());
  }

  @Test
  void aCloseOneHasItsWaysOutAndWhatCostsSay() {
    ReleaseFindings close =
        findings(
            release(Answer.of(judged(Decision.TOO_CLOSE_TO_CALL, 0.86, OptionalDouble.of(0.94)))));
    says(
        note(close),
        "May batch B-7 go?\ntoo close to call",
        "Hold it: the result is nearer to the limit than it is sure.",
        "one more reading of the same vial or portion | 0.0050 | 10 % | 2.0 % | 12 %",
        "The cheapest way out is a fresh test after a recalibration: it settles the question with a"
            + " chance of 60 %.",
        "leave 0.0039",
        "For an outside laboratory it cannot be said",
        "from a chance of 94 % on; here it is 86 %. That is advice beside the rule, not the rule.");
  }

  /** A value that is clear does not help where what it was measured with is in doubt. */
  @Test
  void aStopSignalHoldsWhateverTheValue() {
    ReleaseFindings held =
        findings(
            release(
                Answer.of(judged(Decision.WITHIN, 0.999, OptionalDouble.empty())),
                new Held(HeldBy.STOP_SIGNAL, "tg/PM-1/one"),
                new Held(HeldBy.STOP_SIGNAL, "tg/PM-1/two"),
                new Held(HeldBy.REAGENT_PAST_DATE, "L10")));
    says(
        note(held),
        "May batch B-7 go?\nheld",
        "what it was tested with is in doubt, whatever the value says",
        "but an open stop signal puts it in doubt (tg/PM-1/one, tg/PM-1/two); reagent lot L10 was"
            + " past its date.");
    assertFalse(held.steady());
  }

  @Test
  void whatCannotBeSaidIsSaid() {
    ReleaseFindings unknown = findings(release(Answer.cannotSay("needs 4 calibrations, has 2")));
    says(
        note(unknown),
        "May batch B-7 go?\ncannot say",
        "It cannot be said whether this batch may go: needs 4 calibrations, has 2. Hold it, or have"
            + " it tested outside.");
    says(String.join("\n", ReleaseLines.of(unknown)), "it cannot be said: needs 4 calibrations");
  }

  /** The gravest method decides: one beyond, one not known, one within. */
  @Test
  void theGravestMethodDecides() {
    Release within = release(Answer.of(judged(Decision.WITHIN, 0.999, OptionalDouble.empty())));
    Release beyond = release(Answer.of(judged(Decision.BEYOND, 0.01, OptionalDouble.empty())));
    Release unknown = release(Answer.cannotSay("no uncertainty"));
    says(note(findings(within, unknown, beyond)), "May batch B-7 go?\nbeyond");
    says(note(findings(within, unknown)), "May batch B-7 go?\ncannot say");
  }
}
