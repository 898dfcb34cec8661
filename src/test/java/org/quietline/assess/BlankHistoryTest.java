package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.quietline.assess.BlankTrack.Judged;
import org.quietline.assess.BlankTrack.Kind;
import org.quietline.bench.Role;
import org.quietline.bench.Rule;
import org.quietline.bench.SignalId;

/** Blanks in order; the quantile of Student's t is that of R 4. */
class BlankHistoryTest {
  /** t(Φ(3), 3). */
  private static final double T_3 = 9.2189405;

  private static FreeBench bench(String... blanks) {
    FreeBench bench = new FreeBench();
    for (int i = 0; i < blanks.length; i++) {
      bench.calibrated(FreeBench.START.plusDays(i), blanks[i]);
    }
    return bench;
  }

  private static InstrumentCalibrations of(FreeBench bench) {
    return CalibrationHistory.ask(bench.records("tg")).get(0);
  }

  private static Judged last(InstrumentCalibrations all, int track) {
    List<BlankTrack.Mark> marks = all.blanks().get(track).marks();
    return marks.get(marks.size() - 1).judged().value().orElseThrow();
  }

  @Test
  void the_fifth_blank_is_judged_by_the_four_before_it() {
    InstrumentCalibrations all = of(bench("0.042", "0.043", "0.041", "0.042", "0.060"));
    BlankTrack track = all.blanks().get(0);
    assertEquals(Kind.OF_CALIBRATIONS, track.kind());
    assertEquals(
        "needs 4 blanks before it, has 3", track.marks().get(3).judged().why().orElseThrow());
    Judged fifth = last(all, 0);
    double half = T_3 * 0.000816496580927726 * Math.sqrt(1.25);
    assertEquals(0.042 - half, fifth.limits().lower(), 1e-8);
    assertEquals(0.042 + half, fifth.limits().upper(), 1e-8);
    assertTrue(fifth.valueBeyond());
    assertTrue(fifth.provisional());
    Signal signal = all.signals().get(0);
    assertEquals("tg/PM-1/blank/2026-01-09T09:00/blank-drifting", signal.id().toString());
    assertEquals(0.060, signal.value());
    assertEquals(fifth.limits().upper(), signal.limit());
    assertEquals(1, track.rate().observed());
    assertEquals(5, all.withoutLine());
  }

  @Test
  void equal_blanks_are_believed_no_finer_than_their_digits() {
    assertFalse(last(of(bench("0.042", "0.042", "0.042", "0.042", "0.043")), 0).isBeyond());
    assertTrue(last(of(bench("0.042", "0.042", "0.042", "0.042", "0.046")), 0).isBeyond());
  }

  @Test
  void a_slow_rise_is_seen_by_the_weighted_mean_first() {
    String[] blanks = new String[30];
    for (int i = 0; i < 30; i++) {
      double rise = i < 20 ? 0 : 0.0016;
      blanks[i] = FreeBench.text(0.042 + rise + 0.001 * ((i * 7 % 5 - 2) / 2.0), 4);
    }
    InstrumentCalibrations all = of(bench(blanks));
    Signal first = all.signals().get(0);
    assertTrue(first.id().at().isAfter(FreeBench.START.plusDays(19)), first.toString());
    Judged judged =
        all.blanks().get(0).marks().stream()
            .filter(m -> m.at().equals(first.id().at()))
            .findFirst()
            .orElseThrow()
            .judged()
            .value()
            .orElseThrow();
    assertFalse(judged.valueBeyond());
    assertTrue(judged.meanBeyond());
    assertEquals(judged.weightedMean(), first.value());
    assertEquals(judged.weightedLimit(), first.limit());
  }

  @Test
  void results_of_role_blank_are_a_stream_of_their_own() {
    FreeBench bench = bench("0.042", "0.043");
    for (String blank : List.of("0.001", "-0.001", "0.000", "0.001", "<0.002", "0.050")) {
      bench.result(
          "tg", FreeBench.START.plusDays(bench.results.size()), Role.BLANK, "W", "RO", blank);
    }
    InstrumentCalibrations all = of(bench);
    assertEquals(2, all.blanks().size());
    BlankTrack results = all.blanks().get(1);
    assertEquals(Kind.OF_RESULTS, results.kind());
    assertEquals(5, results.marks().size());
    assertTrue(last(all, 1).isBeyond());
  }

  @Test
  void a_blank_that_an_action_took_out_judges_no_other() {
    FreeBench bench = bench("0.042", "0.043", "0.060", "0.041", "0.042", "0.043");
    double wide = last(of(bench), 0).limits().upper();
    bench.takenOut(
        new SignalId(
            "tg", "PM-1", SignalId.BLANK, FreeBench.START.plusDays(2), Rule.BLANK_DRIFTING));
    InstrumentCalibrations all = of(bench);
    assertTrue(all.blanks().get(0).marks().get(2).takenOut());
    assertEquals(
        0.042 + T_3 * 0.000816496580927726 * Math.sqrt(1.25), last(all, 0).limits().upper(), 1e-8);
    assertTrue(wide > last(all, 0).limits().upper());
  }
}
