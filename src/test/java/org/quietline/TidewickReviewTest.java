package org.quietline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Capability;
import org.quietline.assess.Concern;
import org.quietline.assess.Drift;
import org.quietline.assess.Findings;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.OutOfDate;
import org.quietline.assess.Period;
import org.quietline.assess.PersonPairs;
import org.quietline.assess.Release;
import org.quietline.assess.Replicates;
import org.quietline.assess.Review;
import org.quietline.assess.Signal;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.assess.Verdict.Level;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.bench.Role;
import org.quietline.intake.BenchFolder;
import org.quietline.intake.Intake;

/**
 * The whole way on the invented bench: every planted trouble is found, nothing is claimed in the
 * quiet method. The expected numbers are those of {@code sample-runs/tidewick/ABOUT.md}, computed
 * with NumPy and SciPy by a script that shares no code with this program.
 */
class TidewickReviewTest {
  private static final Path FOLDER = Path.of("sample-runs", "tidewick");
  private static Intake intake;
  private static Review review;
  private static Findings october;

  @BeforeAll
  static void reviewOctober() {
    intake = BenchFolder.read(FOLDER);
    review =
        new Review(
            intake.bench(),
            intake.accounting(),
            intake.settingsFingerprint(),
            intake.dataFingerprint());
    october = review.of(Period.of(review.latestMonth().orElseThrow()), Optional.empty());
  }

  private static MethodFindings method(String key) {
    return october.methods().stream()
        .filter(m -> m.method().key().equals(key))
        .findFirst()
        .orElseThrow();
  }

  private static Baseline baseline(String key) {
    return method(key).streams().get(0).baseline().value().orElseThrow();
  }

  private static List<Class<?>> concerns(String key) {
    return method(key).verdict().concerns().stream().<Class<?>>map(Object::getClass).toList();
  }

  @Test
  void the_latest_month_is_reviewed_as_of_its_last_row() {
    assertEquals(Optional.of(YearMonth.of(2026, 10)), review.latestMonth());
    assertEquals("2026-10-30T15:50", october.now().toString());
  }

  @Test
  void every_reading_row_is_accounted_for() {
    long rows =
        intake.accounting().files().stream()
            .filter(f -> f.file().startsWith("readings/"))
            .mapToLong(f -> f.rows())
            .sum();
    assertEquals(461, rows);
    assertEquals(454, intake.bench().results().size());
    assertEquals(4, intake.accounting().metBefore());
    assertEquals(3, intake.accounting().rowsAside());
    assertEquals(
        List.of(
            "readings/2026-02.csv 20 taken_at 2026-02-30T09:10",
            "readings/2026-03.csv 14 reading_1 O.18",
            "readings/2026-07.csv 11 method toal-glycerin"),
        intake.accounting().aside().stream()
            .map(a -> a.file() + " " + a.line() + " " + a.field() + " " + a.text())
            .toList());
    assertEquals(List.<SetAside>of(), intake.accounting().settingsAside());
  }

  @Test
  void records_contradict_each_other_only_where_it_was_planted_and_in_no_other_month() {
    assertEquals(
        List.of(
            "total-glycerin/PM-1/B-1071/2026-03-10T09:34/reagent-past-date",
            "total-glycerin/PM-1/QC-TG-A/2026-03-11T07:45/reagent-past-date",
            "total-glycerin/PM-1/B-1073/2026-03-12T11:48/reagent-past-date",
            "total-glycerin/PM-1/B-1165/2026-10-20T10:36/reagent-past-date",
            "total-glycerin/PM-1/B-1166/2026-10-21T11:39/reagent-past-date"),
        october.contradictions().stream().map(c -> c.id().toString()).toList());
    for (YearMonth month = YearMonth.of(2025, 9);
        month.isBefore(YearMonth.of(2026, 10));
        month = month.plusMonths(1)) {
      Findings findings = review.of(Period.of(month), Optional.empty());
      assertEquals(
          month.isBefore(YearMonth.of(2026, 3)) ? 0 : 3,
          findings.contradictions().size(),
          month.toString());
    }
  }

  @Test
  void exactly_the_planted_signals_are_found_and_the_right_ones_are_open() {
    List<String> signals =
        october.methods().stream()
            .flatMap(m -> m.streams().stream())
            .flatMap(s -> s.signals().stream())
            .map(s -> s.id() + (s.open() ? " open" : " closed"))
            .toList();
    String stream = "total-glycerin/PM-1/QC-TG-A/";
    assertEquals(
        List.of(
            stream + "2026-04-23T07:32/beyond-action-limit closed",
            stream + "2026-04-23T07:32/readings-disagree closed",
            stream + "2026-06-24T07:36/beyond-action-limit closed",
            stream + "2026-06-24T07:36/weighted-mean-beyond-limit closed",
            stream + "2026-07-02T07:35/beyond-action-limit closed",
            stream + "2026-07-02T07:35/weighted-mean-beyond-limit closed",
            stream + "2026-10-23T07:44/beyond-action-limit open",
            stream + "2026-10-23T07:44/weighted-mean-beyond-limit open",
            stream + "2026-10-30T07:50/beyond-action-limit open",
            stream + "2026-10-30T07:50/weighted-mean-beyond-limit open"),
        signals);
    List<Signal> found = method("total-glycerin").streams().get(0).signals();
    double[] values = {
      1.0010, 1.6380, 0.1915, 0.18459, 0.1900, 0.18676, 0.1920, 0.18654, 0.1940, 0.18952
    };
    double[] limits = {
      0.18758, 0.01130, 0.18758, 0.18385, 0.18758, 0.18391, 0.18758, 0.18391, 0.18758, 0.18393
    };
    IntStream.range(0, values.length)
        .forEach(
            i -> {
              assertEquals(values[i], found.get(i).value(), 6e-6, found.get(i).toString());
              assertEquals(limits[i], found.get(i).limit(), 6e-6, found.get(i).toString());
            });
  }

  @Test
  void limits_are_those_computed_elsewhere() {
    Baseline glycerin = baseline("total-glycerin");
    assertEquals(0.180300, glycerin.centre(), 5e-7);
    assertEquals(0.00273684, glycerin.meanMovingRange(), 5e-9);
    assertEquals(0.00234745, glycerin.sampleDeviation(), 5e-9);
    assertEquals(0.173024, glycerin.limits().lowerAction(), 6e-7);
    assertEquals(0.187576, glycerin.limits().upperAction(), 6e-7);
    assertEquals(0.0112982, glycerin.readingsRangeUpper().value().orElseThrow(), 3e-7);
    Baseline acid = baseline("acid-number");
    assertEquals(0.300275, acid.centre(), 5e-7);
    assertEquals(0.284043, acid.limits().lowerAction(), 6e-7);
    assertEquals(0.316507, acid.limits().upperAction(), 6e-7);
    assertEquals(0.0165009, acid.readingsRangeUpper().value().orElseThrow(), 3e-7);
    Baseline fatty = baseline("free-fatty-acid");
    assertTrue(fatty.provisional());
    assertEquals(1.81306, fatty.limits().lowerAction(), 6e-6);
    assertEquals(2.20694, fatty.limits().upperAction(), 6e-6);
  }

  @Test
  void the_drifting_calibration_is_found_before_its_date() {
    Drift drift = method("total-glycerin").drift().get(0);
    assertEquals("TG-C15", drift.calibration().orElseThrow().key());
    assertEquals(5, drift.deviations().size());
    Drift.Line line = drift.line().value().orElseThrow();
    // all by the posterior of recompute_outlook.py on the bench's rows, SciPy 1.17.1
    assertEquals(0.00042354963, line.slopePerDay(), 1e-10);
    assertEquals(0.00027902887, line.slope().lower(), 1e-9);
    assertEquals(0.00055483805, line.slope().upper(), 1e-9);
    assertEquals(Drift.Decision.RECALIBRATE_NOW, drift.decision());
    assertEquals(0.56766, drift.chanceBeyondNow().value().orElseThrow(), 5e-6);
    assertEquals(0.615023480, drift.chanceBeyondAtExpiry().value().orElseThrow(), 1e-6);
    // 4.152 % on that day, 5.554 % on the next
    assertEquals("2026-10-16", drift.lastSafeDay().value().orElseThrow().toString());
    Drift quiet = method("acid-number").drift().get(0);
    assertEquals(0.0000169825, quiet.line().value().orElseThrow().slopePerDay(), 1e-9);
    assertEquals(1.50e-7, quiet.chanceBeyondAtExpiry().value().orElseThrow(), 1e-6);
    assertEquals(Drift.Decision.KEEP, quiet.decision());
  }

  @Test
  void the_expired_reagents_are_found_with_the_rule_that_made_them_so() {
    assertEquals(
        List.of(
            "reagent-shelf-life TG-L04 2026-03-10 B-1071",
            "reagent-shelf-life TG-L04 2026-03-11 QC-TG-A",
            "reagent-shelf-life TG-L04 2026-03-12 B-1073",
            "reagent-expiry TG-L10 2026-10-20 B-1165",
            "reagent-expiry TG-L10 2026-10-21 B-1166"),
        october.methods().stream()
            .flatMap(m -> m.outOfDate().stream())
            .map(TidewickReviewTest::told)
            .toList());
  }

  private static String told(OutOfDate late) {
    return String.join(
        " ",
        late.kind().key(),
        late.what(),
        late.result().takenAt().toLocalDate().toString(),
        late.result().sample());
  }

  @Test
  void the_person_whose_readings_disagree_more_is_found_and_nobody_else() {
    List<PersonPairs> differ =
        october.methods().stream()
            .flatMap(m -> m.people().stream())
            .filter(PersonPairs::differs)
            .toList();
    assertEquals(List.of("TB"), differ.stream().map(PersonPairs::person).toList());
    assertEquals(38, differ.get(0).pairs());
    assertEquals(0.00483, differ.get(0).deviation(), 5e-6);
    assertEquals(128, differ.get(0).othersPairs());
    assertEquals(0.001752, differ.get(0).othersDeviation(), 5e-7);
  }

  @Test
  void pairs_agree_with_the_deviations_computed_elsewhere() {
    Replicates control = replicates("total-glycerin", Role.CONTROL);
    assertEquals(59, control.pairs());
    assertEquals(0.002123, control.deviation(), 5e-7);
    Replicates product = replicates("total-glycerin", Role.PRODUCT);
    assertEquals(166, product.pairs());
    assertEquals(0.002776, product.deviation(), 5e-7);
    assertEquals(0.003941, replicates("acid-number", Role.CONTROL).deviation(), 5e-7);
    assertEquals(0.004586, replicates("acid-number", Role.PRODUCT).deviation(), 5e-7);
  }

  private static Replicates replicates(String key, Role role) {
    return method(key).replicates().stream()
        .filter(r -> r.role() == role)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void capability_is_told_where_there_are_enough_batches() {
    Capability glycerin = method("total-glycerin").capability().value().orElseThrow();
    assertEquals(167, glycerin.batches().size());
    assertEquals(0.915, glycerin.index().value().orElseThrow().ppk(), 5e-4);
    Capability acid = method("acid-number").capability().value().orElseThrow();
    assertEquals(154, acid.batches().size());
    assertEquals(1.766, acid.index().value().orElseThrow().ppk(), 5e-4);
    assertEquals(
        Optional.of("needs 10 product results, has 8"),
        method("free-fatty-acid").capability().why());
  }

  @Test
  void verdicts_say_hold_steady_and_watch_each_with_its_reasons() {
    assertEquals(Level.HOLD, method("total-glycerin").verdict().level());
    assertEquals(
        List.of(
            Concern.OpenStopSignals.class,
            Concern.RecalibrateNow.class,
            Concern.UsedPastDate.class,
            Concern.PersonDiffers.class),
        concerns("total-glycerin"));
    assertEquals(Level.STEADY, method("acid-number").verdict().level());
    assertEquals(Level.WATCH, method("free-fatty-acid").verdict().level());
    // one result of the new calibration: a chance of 7 % now is more than a safe day carries
    assertEquals(
        List.of(Concern.DriftUnknown.class, Concern.TooFewResults.class),
        concerns("free-fatty-acid"));
    assertFalse(october.steady());
  }

  @Test
  void the_quiet_method_has_no_signal_in_any_of_fourteen_months() {
    for (YearMonth month = YearMonth.of(2025, 9);
        !month.isAfter(YearMonth.of(2026, 10));
        month = month.plusMonths(1)) {
      MethodFindings acid =
          review.of(Period.of(month), Optional.empty()).methods().stream()
              .filter(m -> m.method().key().equals("acid-number"))
              .findFirst()
              .orElseThrow();
      assertEquals(List.of(), acid.streams().get(0).signals(), month.toString());
      assertEquals(List.of(), acid.outOfDate(), month.toString());
      assertTrue(acid.people().stream().noneMatch(PersonPairs::differs), month.toString());
      assertTrue(acid.verdict().level() != Level.HOLD, month.toString());
    }
  }

  /** The batch planted at the limit, and those tested while the drift was on. */
  @Test
  void batches_are_within_held_or_too_close_to_call() {
    List<Release> releases = method("total-glycerin").batches().releases();
    assertEquals(14, releases.size());
    Release close =
        releases.stream().filter(r -> r.sample().equals("B-1159")).findFirst().orElseThrow();
    assertEquals(Optional.of(Release.Decision.TOO_CLOSE_TO_CALL), close.decision().value());
    assertEquals(List.of(), close.held());
    Release.Judged judged = close.judged().value().orElseThrow();
    assertEquals(Optional.of(Release.Way.CALIBRATION), judged.worth());
    assertEquals(4, judged.ways().size());
    List<String> held =
        releases.stream().filter(r -> !r.held().isEmpty()).map(Release::sample).toList();
    assertEquals(11, held.size());
    assertTrue(held.contains("B-1161") && held.contains("B-1171"), held.toString());
    assertTrue(
        method("acid-number").batches().releases().stream()
            .allMatch(r -> r.judged().value().orElseThrow().byValue() == Release.Decision.WITHIN));
    assertTrue(
        method("free-fatty-acid").batches().releases().stream()
            .allMatch(r -> r.decision().value().isEmpty()));
  }
}
