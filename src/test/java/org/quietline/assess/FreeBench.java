package org.quietline.assess;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.quietline.bench.Action;
import org.quietline.bench.Bench;
import org.quietline.bench.Calibration;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.Instrument;
import org.quietline.bench.Material;
import org.quietline.bench.Method;
import org.quietline.bench.Origin;
import org.quietline.bench.OutlookSettings;
import org.quietline.bench.Reading;
import org.quietline.bench.ReleaseSettings;
import org.quietline.bench.ReplicateKind;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.bench.Rule;
import org.quietline.bench.Settings;
import org.quietline.bench.SignalId;
import org.quietline.bench.Unit;

/**
 * Builds an invented bench for the questions that cost no reagent: total glycerin {@code tg}, acid
 * number {@code an} and free fatty acid {@code free-fatty-acid}, all on {@code PM-1}.
 */
final class FreeBench {
  static final LocalDateTime START = LocalDateTime.of(2026, 1, 5, 9, 0);

  final List<Result> results = new ArrayList<>();
  final List<Calibration> calibrations = new ArrayList<>();
  final List<Action> actions = new ArrayList<>();
  Optional<BigDecimal> limit = Optional.of(new BigDecimal("0.240"));
  Optional<BigDecimal> assigned = Optional.of(new BigDecimal("0.200"));
  int replicates = 2;
  boolean usesRules = true;

  static String text(double value, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }

  /** A calibration of tg; pairs of assigned value and response. */
  FreeBench calibrated(LocalDateTime at, String blank, String... pairs) {
    List<Calibration.Calibrator> calibrators = new ArrayList<>();
    for (int i = 0; i < pairs.length; i += 2) {
      calibrators.add(
          new Calibration.Calibrator(
              new BigDecimal(pairs[i]),
              pairs[i + 1].isEmpty()
                  ? Optional.empty()
                  : Optional.of(new BigDecimal(pairs[i + 1]))));
    }
    calibrations.add(
        new Calibration(
            "C-" + (calibrations.size() + 1),
            "tg",
            "PM-1",
            at,
            blank.isEmpty() ? Optional.empty() : Optional.of(new BigDecimal(blank)),
            calibrators,
            Optional.empty(),
            Optional.of("RO"),
            Optional.empty(),
            new Origin("calibrations.csv", calibrations.size() + 2)));
    return this;
  }

  FreeBench result(
      String method,
      LocalDateTime at,
      Role role,
      String sample,
      String person,
      String... readings) {
    List<Reading> read = Arrays.stream(readings).map(r -> Reading.parse(r).orElseThrow()).toList();
    results.add(
        new Result(
            at,
            method,
            "PM-1",
            role,
            sample,
            read,
            read,
            new Unit("% mass"),
            Optional.empty(),
            Optional.empty(),
            person.isEmpty() ? Optional.empty() : Optional.of(person),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            new Origin("readings/a.csv", results.size() + 2)));
    return this;
  }

  FreeBench takenOut(SignalId id) {
    actions.add(
        new Action(
            id.at().plusHours(1),
            id,
            Optional.of("wrong vial"),
            Optional.empty(),
            true,
            Optional.empty(),
            Optional.of("RO"),
            Optional.empty(),
            new Origin("actions.csv", actions.size() + 2)));
    return this;
  }

  private Method method(String key, String unit, int decimals, Optional<BigDecimal> upper) {
    return new Method(
        key,
        key,
        new Unit(unit),
        decimals,
        replicates,
        ReplicateKind.RE_PREPARED,
        OptionalInt.of(30),
        Optional.empty(),
        upper.map(
            u -> new Method.ProductLimits(Optional.empty(), Optional.of(u), Optional.empty())),
        Method.ShelfLife.NOT_SET,
        Optional.empty());
  }

  Bench bench() {
    ChartSettings d = ChartSettings.DEFAULTS;
    List<Rule> notices =
        usesRules
            ? List.of(Rule.CALIBRATION_STEP, Rule.BLANK_DRIFTING, Rule.METHODS_DISAGREE)
            : List.of();
    Settings settings =
        new Settings(
            "Invented bench",
            ZoneId.of("UTC"),
            List.of(
                method("tg", "% mass", 3, limit),
                method("an", "mg KOH/g", 3, Optional.empty()),
                method("free-fatty-acid", "% mass", 3, Optional.empty())),
            List.of(new Instrument("PM-1", "Photometer 1")),
            List.of(new Material("QC", "tg", assigned, Optional.empty())),
            List.of(),
            List.of(),
            new ChartSettings(
                d.baselineResults(), d.limitsFrom(), d.weighting(), d.stopRules(), notices),
            OutlookSettings.DEFAULTS,
            ReleaseSettings.DEFAULTS,
            List.of());
    return new Bench(settings, results, calibrations, List.of(), actions, List.of(), List.of());
  }

  /** One method's records with everything in the period. */
  Records records(String method) {
    return records(method, new Period(LocalDate.of(2026, 1, 1), LocalDate.of(2036, 12, 31)));
  }

  Records records(String method, Period period) {
    Bench bench = bench();
    Method of =
        bench.settings().methods().stream()
            .filter(m -> m.key().equals(method))
            .findFirst()
            .orElseThrow();
    return Records.of(bench, of, period, period.to().atTime(23, 59));
  }
}
