package org.quietline.assess;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.quietline.bench.Accounting;
import org.quietline.bench.Action;
import org.quietline.bench.BaselineChoice;
import org.quietline.bench.Bench;
import org.quietline.bench.Calibration;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.DriftForm;
import org.quietline.bench.Instrument;
import org.quietline.bench.Material;
import org.quietline.bench.Method;
import org.quietline.bench.Origin;
import org.quietline.bench.OutlookSettings;
import org.quietline.bench.OutsideResult;
import org.quietline.bench.Reading;
import org.quietline.bench.ReagentLot;
import org.quietline.bench.ReleaseSettings;
import org.quietline.bench.RepeatPolicy;
import org.quietline.bench.ReplicateKind;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.bench.Rule;
import org.quietline.bench.Settings;
import org.quietline.bench.SignalId;
import org.quietline.bench.Storage;
import org.quietline.bench.Unit;
import org.quietline.stats.runlength.Chart;
import org.quietline.stats.runlength.ShiftDelay;

/**
 * Builds an invented bench with one method, {@code tg} on {@code PM-1} with control material {@code
 * QC}, for the tests of this package.
 */
final class TestBench {
  static final LocalDateTime START = LocalDateTime.of(2026, 1, 5, 9, 0);

  final List<Result> results = new ArrayList<>();
  final List<Calibration> calibrations = new ArrayList<>();
  final List<ReagentLot> lots = new ArrayList<>();
  final List<Action> actions = new ArrayList<>();
  final List<BaselineChoice> baselines = new ArrayList<>();

  /** Control materials beside {@code QC}. */
  final List<Material> otherMaterials = new ArrayList<>();

  ChartSettings chart = ChartSettings.DEFAULTS;
  Optional<BigDecimal> assigned = Optional.of(new BigDecimal("0.200"));
  Optional<BigDecimal> uncertainty = Optional.of(new BigDecimal("0.002"));
  OptionalInt validDays = OptionalInt.of(30);
  Optional<Method.Allowance> allowance =
      Optional.of(new Method.Allowance(new BigDecimal("0.012"), false));
  Optional<Method.ProductLimits> limits =
      Optional.of(
          new Method.ProductLimits(
              Optional.empty(), Optional.of(new BigDecimal("0.240")), Optional.of("invented")));
  Method.ShelfLife shelfLife = new Method.ShelfLife(OptionalInt.of(60), OptionalInt.of(18));
  int replicates = 2;
  RepeatPolicy repeatPolicy = RepeatPolicy.ONE_MORE;
  Optional<Method.PublishedRepeatability> published = Optional.empty();
  Optional<DriftForm> driftForm = Optional.empty();
  OutlookSettings outlook = OutlookSettings.DEFAULTS;

  ReleaseSettings release = ReleaseSettings.DEFAULTS;
  final List<OutsideResult> outside = new ArrayList<>();
  Optional<BigDecimal> assessment = Optional.empty();

  /** A laboratory's result, with its expanded uncertainty at a factor of 2 unless that is empty. */
  TestBench outside(String sample, String value, String expanded) {
    Optional<BigDecimal> stated =
        expanded.isEmpty() ? Optional.empty() : Optional.of(new BigDecimal(expanded));
    outside.add(
        new OutsideResult(
            sample,
            "tg",
            "An invented laboratory",
            Optional.empty(),
            new BigDecimal(value),
            stated,
            stated.map(u -> new BigDecimal("2")),
            assessment,
            Optional.empty(),
            new Origin("outside.csv", outside.size() + 2)));
    return this;
  }

  TestBench control(LocalDateTime at, String... readings) {
    return result(at, Role.CONTROL, "QC", "RO", Optional.empty(), readings);
  }

  TestBench product(LocalDateTime at, String sample, String... readings) {
    return result(at, Role.PRODUCT, sample, "RO", Optional.empty(), readings);
  }

  TestBench result(
      LocalDateTime at,
      Role role,
      String sample,
      String operator,
      Optional<String> lot,
      String... readings) {
    results.add(
        new Result(
            at,
            "tg",
            "PM-1",
            role,
            sample,
            java.util.Arrays.stream(readings).map(r -> Reading.parse(r).orElseThrow()).toList(),
            java.util.Arrays.stream(readings).map(r -> Reading.parse(r).orElseThrow()).toList(),
            new Unit("% mass"),
            Optional.empty(),
            lot,
            Optional.of(operator),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            new Origin("readings/a.csv", results.size() + 2)));
    return this;
  }

  /** One control a day from the start, each with two equal readings. */
  /** The control streams of records, without the time it takes to simulate delays. */
  static List<StreamFindings> streams(Records records) {
    FalseSignals falseSignals = new FalseSignals(records.bench().settings().chart());
    return new StreamControl(records, new PriceOfRules(records, falseSignals, asked -> NO_DELAY))
        .ask();
  }

  private static final ShiftDelay NO_DELAY =
      ShiftDelay.simulate(Chart.individuals(1), new ShiftDelay.Baseline.Right(), 1, 50, 100, 1);

  TestBench daily(String... values) {
    for (String value : values) {
      control(START.plusDays(results.size()), value, value);
    }
    return this;
  }

  TestBench calibrated(String key, LocalDateTime at) {
    calibrations.add(
        new Calibration(
            key,
            "tg",
            "PM-1",
            at,
            Optional.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            new Origin("calibrations.csv", calibrations.size() + 2)));
    return this;
  }

  TestBench lot(String key, LocalDate opened, LocalDate expires, Storage storage) {
    lots.add(
        new ReagentLot(
            key,
            "tg",
            Optional.of(opened),
            Optional.of(opened),
            Optional.of(expires),
            Optional.of(storage),
            Optional.empty(),
            new Origin("reagents.csv", lots.size() + 2)));
    return this;
  }

  TestBench action(LocalDateTime at, Rule rule, boolean exclude) {
    actions.add(
        new Action(
            at.plusHours(1),
            new SignalId("tg", "PM-1", "QC", at, rule),
            Optional.of("decimal slip"),
            Optional.empty(),
            exclude,
            Optional.empty(),
            Optional.of("RO"),
            Optional.empty(),
            new Origin("actions.csv", actions.size() + 2)));
    return this;
  }

  Bench bench() {
    Method method =
        new Method(
            "tg",
            "Total glycerin",
            new Unit("% mass"),
            3,
            replicates,
            ReplicateKind.RE_READ,
            repeatPolicy,
            validDays,
            allowance,
            limits,
            shelfLife,
            published,
            Optional.empty(),
            driftForm,
            Optional.empty());
    List<Material> materials = new ArrayList<>(otherMaterials);
    materials.add(0, new Material("QC", "tg", assigned, uncertainty));
    Settings settings =
        new Settings(
            "Invented bench",
            ZoneId.of("UTC"),
            List.of(method),
            List.of(new Instrument("PM-1", "Photometer 1")),
            materials,
            List.of(),
            baselines,
            chart,
            outlook,
            release,
            List.of());
    return new Bench(settings, results, calibrations, lots, actions, outside, List.of());
  }

  /** The records of the method over the whole of 2026. */
  Records records() {
    Bench bench = bench();
    return Records.of(
        bench,
        bench.settings().methods().get(0),
        new Period(LocalDate.of(2026, 1, 1), LocalDate.of(2026, 12, 31)),
        LocalDateTime.of(2026, 12, 31, 23, 0));
  }

  Review review() {
    Accounting accounting =
        new Accounting(
            List.of(new Accounting.FileRead("readings/a.csv", "00", results.size())),
            List.of(),
            List.of(),
            results.size(),
            0);
    return new Review(bench(), accounting, "5e771065", "da7a0000");
  }

  Findings findings(String month) {
    return review().of(Period.of(YearMonth.parse(month)), Optional.empty());
  }

  MethodFindings method(String month) {
    return findings(month).methods().get(0);
  }

  StreamFindings stream(String month) {
    return method(month).streams().get(0);
  }

  /** The stream of one material over the whole of 2026. */
  StreamFindings streamOf(String material) {
    Records records = records();
    return new StreamControl(
            records, new PriceOfRules(records, new FalseSignals(chart), PriceOfRules.simulated()))
        .ask().stream().filter(s -> s.material().key().equals(material)).findFirst().orElseThrow();
  }
}
