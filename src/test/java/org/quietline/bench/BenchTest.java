package org.quietline.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.quietline.bench.ChartSettings.LimitsFrom;
import org.quietline.bench.ChartSettings.Weight;

class BenchTest {
  private static final Origin ORIGIN = new Origin("calibrations.csv", 2);
  private static final LocalDateTime AT = ResultTest.AT;

  private static Calibration calibration(String key, String instrument, LocalDateTime at) {
    return new Calibration(
        key,
        "tg",
        instrument,
        at,
        Optional.empty(),
        List.of(new Calibration.Calibrator(BigDecimal.ONE, Optional.empty())),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        ORIGIN);
  }

  private static Action action(SignalId signal, Optional<String> cause, boolean exclude) {
    return new Action(
        AT,
        signal,
        cause,
        Optional.empty(),
        exclude,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        ORIGIN);
  }

  private static Bench bench(List<Result> results, List<Action> actions) {
    Settings settings =
        new Settings(
            "Invented",
            ZoneId.of("UTC"),
            List.of(),
            List.of(new Instrument("PM-1", "Photometer 1")),
            List.of(new Material("QC", "tg", Optional.empty(), Optional.empty())),
            List.of(new Person("RO", "R. Okafor", List.of("test"), Optional.empty())),
            List.of(),
            ChartSettings.DEFAULTS,
            OutlookSettings.DEFAULTS,
            ReleaseSettings.DEFAULTS,
            List.of());
    ReagentLot lot =
        new ReagentLot(
            "L-1",
            "tg",
            Optional.empty(),
            Optional.empty(),
            Optional.of(LocalDate.of(2026, 12, 1)),
            Optional.empty(),
            Optional.empty(),
            ORIGIN);
    return new Bench(
        settings,
        results,
        List.of(
            calibration("C-2", "PM-1", AT.minusDays(1)),
            calibration("C-1", "PM-1", AT.minusDays(30)),
            calibration("C-9", "PM-2", AT.minusHours(1))),
        List.of(lot),
        actions,
        List.of(),
        List.of());
  }

  @Test
  void results_and_calibrations_stand_in_time_order() {
    Bench bench =
        bench(
            List.of(ResultTest.result("B", AT, "1"), ResultTest.result("A", AT.minusDays(1), "1")),
            List.of());
    assertEquals(List.of("A", "B"), bench.results().stream().map(Result::sample).toList());
    assertEquals(
        List.of("C-1", "C-2", "C-9"), bench.calibrations().stream().map(Calibration::key).toList());
  }

  @Test
  void a_result_belongs_to_the_latest_calibration_of_its_instrument_before_it() {
    Bench bench = bench(List.of(), List.of());
    assertEquals("C-2", bench.calibrationOf(ResultTest.result("A", AT, "1")).orElseThrow().key());
    assertEquals(
        "C-1",
        bench.calibrationOf(ResultTest.result("A", AT.minusDays(2), "1")).orElseThrow().key());
    assertEquals(
        Optional.empty(), bench.calibrationOf(ResultTest.result("A", AT.minusDays(31), "1")));
    assertEquals("L-1", bench.reagentLotOf(ResultTest.result("A", AT, "1")).orElseThrow().key());
  }

  @Test
  void a_cause_closes_a_signal_and_only_exclusion_takes_the_result_out() {
    SignalId signal = new SignalId("tg", "PM-1", "QC", AT, Rule.READINGS_DISAGREE);
    Result result = ResultTest.result("QC", AT, "1");
    Bench open = bench(List.of(result), List.of(action(signal, Optional.empty(), false)));
    assertEquals(Optional.empty(), open.closing(signal));
    Bench closed = bench(List.of(result), List.of(action(signal, Optional.of("slip"), false)));
    assertEquals(Optional.of("slip"), closed.closing(signal).orElseThrow().cause());
    assertEquals(false, closed.isExcluded(result));
    Bench out = bench(List.of(result), List.of(action(signal, Optional.of("slip"), true)));
    assertEquals(true, out.isExcluded(result));
    assertEquals(false, out.isExcluded(ResultTest.result("QC", AT.plusDays(1), "1")));
  }

  @Test
  void settings_find_what_they_hold() {
    Settings settings = bench(List.of(), List.of()).settings();
    assertEquals("QC", settings.material("tg", "QC").orElseThrow().key());
    assertEquals(Optional.empty(), settings.material("an", "QC"));
  }

  @Test
  void words_are_read_as_they_are_written() {
    for (Rule rule : Rule.values()) {
      assertEquals(Optional.of(rule), Rule.parse(rule.key()));
    }
    for (Role role : Role.values()) {
      assertEquals(Optional.of(role), Role.parse(" " + role.name()));
    }
    for (Storage storage : Storage.values()) {
      assertEquals(Optional.of(storage), Storage.parse(storage.key()));
    }
    for (ReplicateKind kind : ReplicateKind.values()) {
      assertEquals(Optional.of(kind), ReplicateKind.parse(kind.key()));
    }
    for (LimitsFrom from : LimitsFrom.values()) {
      assertEquals(Optional.of(from), LimitsFrom.parse(from.key()));
    }
    assertEquals(Optional.empty(), Rule.parse("six-sideways"));
    assertEquals(Optional.empty(), Role.parse("standard"));
    assertEquals(Optional.empty(), Storage.parse("warm"));
    assertEquals(Optional.empty(), ReplicateKind.parse("twice"));
    assertEquals(Optional.empty(), LimitsFrom.parse("taste"));
  }

  @Test
  void a_rule_stops_before_it_is_a_notice() {
    ChartSettings chart =
        new ChartSettings(
            20,
            LimitsFrom.MOVING_RANGE,
            0.4,
            List.of(Rule.BEYOND_ACTION_LIMIT),
            List.of(Rule.BEYOND_ACTION_LIMIT, Rule.EIGHT_ON_ONE_SIDE));
    assertEquals(Optional.of(Weight.STOP), chart.weightOf(Rule.BEYOND_ACTION_LIMIT));
    assertEquals(Optional.of(Weight.NOTICE), chart.weightOf(Rule.EIGHT_ON_ONE_SIDE));
    assertEquals(Optional.empty(), chart.weightOf(Rule.BLANK_DRIFTING));
  }

  @Test
  void an_allowance_is_an_amount_or_a_share_of_the_level() {
    assertEquals(0.012, new Method.Allowance(new BigDecimal("0.012"), false).at(5), 0.0);
    assertEquals(0.01, new Method.Allowance(new BigDecimal("5"), true).at(-0.2), 1e-15);
  }

  @Test
  void records_refuse_what_makes_no_sense() {
    BigDecimal one = BigDecimal.ONE;
    refused(() -> new Unit(" ").symbol(), "unit is empty");
    refused(() -> new Instrument("a/b", "x"), "key \"a/b\" holds a /, which a key may not");
    refused(
        () -> new Method.Allowance(BigDecimal.ZERO, false),
        "allowable-bias is 0, it must be more than 0");
    refused(
        () -> new Method.Allowance(one.negate(), true),
        "allowable-bias-percent is -1, it must be more than 0");
    refused(
        () -> new Method.ProductLimits(Optional.empty(), Optional.empty(), Optional.empty()),
        "neither a lower nor an upper limit");
    refused(
        () -> new Method.ProductLimits(Optional.of(one), Optional.of(one), Optional.empty()),
        "product-lower-limit 1 is not below product-upper-limit 1");
    refused(
        () -> new Method.ShelfLife(OptionalInt.of(0), OptionalInt.empty()),
        "shelf-life-days, refrigerated, is 0, it must be at least 1");
    refused(
        () -> new Material("QC", "tg", Optional.empty(), Optional.of(one)),
        "standard-uncertainty without an assigned-value");
    refused(
        () -> new Material("QC", "tg", Optional.of(one), Optional.of(one.negate())),
        "standard-uncertainty is -1, it must not be negative");
    refused(
        () ->
            new BaselineChoice(
                "tg",
                "PM-1",
                "QC",
                LocalDate.of(2026, 2, 1),
                LocalDate.of(2026, 1, 1),
                Optional.empty(),
                Optional.empty()),
        "to 2026-01-01 is before from 2026-02-01");
    refused(
        () -> new ChartSettings(4, LimitsFrom.MOVING_RANGE, 0.4, List.of(), List.of()),
        "baseline-results is 4, it must be at least 5");
    refused(
        () -> new ChartSettings(20, LimitsFrom.MOVING_RANGE, Double.NaN, List.of(), List.of()),
        "weighting is NaN, it must be from 0.01 to 1");
    refused(() -> new Origin("a.csv", 0), "line 0 is not a line");
    refused(
        () ->
            action(
                new SignalId("tg", "PM-1", "QC", AT, Rule.READINGS_DISAGREE),
                Optional.empty(),
                true),
        "exclude_result is yes, but no cause is given");
    refused(() -> method(10, 2), "decimals is 10, it must be at most 9");
    refused(() -> method(3, 0), "replicates is 0, it must be at least 1");
  }

  private static Method method(int decimals, int replicates) {
    return new Method(
        "tg",
        "Total glycerin",
        new Unit("% mass"),
        decimals,
        replicates,
        ReplicateKind.RE_READ,
        OptionalInt.of(30),
        Optional.empty(),
        Optional.empty(),
        Method.ShelfLife.NOT_SET,
        Optional.empty());
  }

  private static void refused(Executable made, String sentence) {
    assertEquals(sentence, assertThrows(IllegalArgumentException.class, made).getMessage());
  }

  @Test
  void an_answer_to_a_slip_takes_a_sample_out_and_never_a_control() {
    Result control = ResultTest.result("QC", AT, "1");
    Result product = as(Role.PRODUCT, ResultTest.result("B-1", AT, "1"));
    Result other = as(Role.PRODUCT, ResultTest.result("B-2", AT, "1"));
    Bench bench =
        bench(
            List.of(control, product, other),
            List.of(
                taking(QuestionId.of(control, Check.SLIP_IN_VALUE), AT.plusDays(1)),
                taking(QuestionId.of(product, Check.SLIP_IN_VALUE), AT.plusDays(1)),
                taking(QuestionId.of(other, Check.TIME_DOES_NOT_EXIST), AT.plusDays(1))));
    assertEquals(
        List.of(false, true, false), bench.results().stream().map(bench::isExcluded).toList());
  }

  @Test
  void an_action_older_than_its_result_does_nothing() {
    Result control = ResultTest.result("QC", AT, "1");
    SignalId signal = new SignalId("tg", "PM-1", "QC", AT, Rule.BEYOND_ACTION_LIMIT);
    Bench early = bench(List.of(control), List.of(taking(signal, AT.minusDays(1))));
    assertEquals(false, early.isExcluded(control));
    assertEquals(Optional.empty(), early.closing(signal));
    Bench late = bench(List.of(control), List.of(taking(signal, AT)));
    assertEquals(true, late.isExcluded(control));
    assertEquals(true, late.closing(signal).isPresent());
    QuestionId past = QuestionId.of(control, Check.RESULT_AFTER_VALIDITY);
    Bench foreseen = bench(List.of(control), List.of(taking(past, AT.minusDays(1))));
    assertEquals(Optional.empty(), foreseen.closing(past));
    QuestionId time = QuestionId.of(control, Check.TIME_OUT_OF_STEP);
    Bench aboutTime = bench(List.of(control), List.of(taking(time, AT.minusDays(1))));
    assertEquals(true, aboutTime.closing(time).isPresent());
  }

  private static Action taking(Matter matter, LocalDateTime recordedAt) {
    return new Action(
        recordedAt,
        matter,
        Optional.of("typed ten times too large"),
        Optional.empty(),
        true,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        ORIGIN);
  }

  private static Result as(Role role, Result r) {
    return new Result(
        r.takenAt(),
        r.method(),
        r.instrument(),
        role,
        r.sample(),
        r.readings(),
        r.writtenReadings(),
        r.writtenUnit(),
        r.calibration(),
        r.reagentLot(),
        r.operator(),
        r.remark(),
        r.session(),
        r.temperatureC(),
        r.sequence(),
        r.origin());
  }

  @Test
  void rows_add_up_or_the_accounting_is_refused() {
    var file = new Accounting.FileRead("readings/a.csv", "00", 5);
    var aside = new Accounting.SetAside("readings/a.csv", 4, "reading_1", "O.18", "is a letter", 2);
    Accounting whole = new Accounting(List.of(file), List.of(aside), List.of(), 2, 1);
    assertEquals(5, whole.rows());
    assertEquals(2, whole.rowsAside());
    assertEquals("readings/a.csv, line 4, reading_1: is a letter", aside.toString());
    refused(
        () -> new Accounting(List.of(file), List.of(), List.of(), 3, 1),
        "5 rows read, but 3 taken in, 1 met before, 0 set aside and 0 in conflict");
  }

  @Test
  void a_person_has_a_sign_and_a_name() {
    refused(() -> new Instrument("PM\t1", "Photometer 1"), "key holds a sign that does not print");
    refused(() -> new Person("", "x", List.of(), Optional.empty()), "key is empty");
    refused(() -> new Person("RO", " ", List.of(), Optional.empty()), "name is empty");
  }
}
