package org.quietline.report;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.TDistribution;
import org.quietline.assess.Answer;
import org.quietline.assess.Capability;
import org.quietline.assess.Concern;
import org.quietline.assess.DateCoverage;
import org.quietline.assess.Drift;
import org.quietline.assess.Findings;
import org.quietline.assess.FreeNotices;
import org.quietline.assess.FreeStreams;
import org.quietline.assess.InForce;
import org.quietline.assess.MaterialBias;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.OutOfDate;
import org.quietline.assess.PairsOfPeriod;
import org.quietline.assess.Period;
import org.quietline.assess.PersonPairs;
import org.quietline.assess.Precision;
import org.quietline.assess.Price;
import org.quietline.assess.Replicates;
import org.quietline.assess.ReportedValue;
import org.quietline.assess.Signal;
import org.quietline.assess.Slips;
import org.quietline.assess.StreamFindings;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.assess.Verdict;
import org.quietline.bench.Accounting;
import org.quietline.bench.Action;
import org.quietline.bench.Calibration;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.ChartSettings.Weight;
import org.quietline.bench.Material;
import org.quietline.bench.Method;
import org.quietline.bench.Origin;
import org.quietline.bench.Reading;
import org.quietline.bench.ReplicateKind;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.bench.Rule;
import org.quietline.bench.SignalId;
import org.quietline.bench.Unit;
import org.quietline.stats.Interval;
import org.quietline.stats.control.ControlLimits;

/** Invented findings of an invented bench, from empty to crowded. */
public final class Invented {
  /** The end of the period. */
  public static final LocalDateTime NOW = LocalDateTime.of(2026, 10, 31, 16, 40);

  static final Period OCTOBER = new Period(LocalDate.of(2026, 10, 1), LocalDate.of(2026, 10, 31));

  private Invented() {}

  /** A hold, a watch, a steady, an empty method. */
  public static Findings bench() {
    return findings(
        "Tidewick Oil & Fuel, bench 1 (invented)",
        accounting(3),
        List.of(glycerin(), acid(), youngFattyAcid(5), nothing()));
  }

  public static Findings findings(
      String name, Accounting accounting, List<MethodFindings> methods) {
    return new Findings(
        name,
        OCTOBER,
        NOW,
        ChartSettings.DEFAULTS,
        accounting,
        methods,
        List.of(),
        "7c1f09ab",
        "91abd3e2");
  }

  public static Accounting accounting(int aside) {
    List<Accounting.SetAside> away = new ArrayList<>();
    for (int i = 0; i < aside; i++) {
      away.add(
          new Accounting.SetAside(
              "readings/october.csv",
              17 + i,
              "reading_" + (1 + i % 2),
              "O.18",
              "\"O.18\" is not a number (a letter O where a zero belongs?). The row was set aside.",
              1));
    }
    return new Accounting(
        List.of(
            new Accounting.FileRead("readings/october.csv", "ab12cd34ef56".repeat(5), 212),
            new Accounting.FileRead(
                "readings/september.csv", "0123456789ab".repeat(5), 200L + aside)),
        away,
        List.of(),
        408,
        4);
  }

  public static Method method(String key, String title, String unit, int decimals) {
    return new Method(
        key,
        title,
        new Unit(unit),
        decimals,
        2,
        ReplicateKind.RE_READ,
        OptionalInt.of(30),
        Optional.of(new Method.Allowance(new BigDecimal("0.012"), false)),
        Optional.of(
            new Method.ProductLimits(
                Optional.empty(), Optional.of(new BigDecimal("0.240")), Optional.of("ASTM D6751"))),
        Method.ShelfLife.NOT_SET,
        Optional.of(
            new Method.PublishedRepeatability(
                new BigDecimal("0.021"), Optional.of("typed in by the bench"))));
  }

  /** A stream whose last results climb, with signals of two rules, one of them closed. */
  public static StreamFindings stream(
      String method, String instrument, String material, int n, int seed, double climb) {
    SplittableRandom random = new SplittableRandom(seed);
    double centre = 0.1803;
    double sd = 0.0031;
    List<Double> values = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double noise = random.nextDouble() + random.nextDouble() + random.nextDouble() - 1.5;
      double late = Math.max(0, i - (n - 6)) * climb;
      values.add(centre + noise * 2 * sd + late + (n > 40 && i == 24 ? 0.014 : 0));
    }
    boolean limits = n >= 5;
    int base = Math.min(20, n);
    List<Point> points = new ArrayList<>();
    List<Signal> signals = new ArrayList<>();
    double z = centre;
    double days = n > 1 ? Math.min(390.0, 6.5 * n) / (n - 1) : 0;
    for (int i = 0; i < n; i++) {
      LocalDateTime at = NOW.minusDays(2).minusHours(Math.round((n - 1 - i) * days * 24));
      double x = values.get(i);
      boolean out = n > 40 && i == 24;
      z = out ? z : 0.4 * x + 0.6 * z;
      points.add(
          new Point(
              at,
              OptionalDouble.of(x),
              OptionalDouble.of(0.002),
              out,
              i < base,
              limits ? Optional.of(inForce(base, centre, sd)) : Optional.empty(),
              OptionalDouble.of(0.0079),
              Set.of(),
              false,
              Optional.of((n == 32 ? "AN-2026-10-" : "C-") + (18 + (i * 14) / Math.max(n, 14))),
              limits && !out ? OptionalDouble.of(z) : OptionalDouble.empty(),
              OptionalDouble.of(centre - 1.5 * sd),
              OptionalDouble.of(centre + 1.5 * sd),
              "readings/a.csv",
              i + 2));
      if (limits && Math.abs(x - centre) > 3 * sd) {
        signals.add(signal(method, instrument, material, at, x, centre + 3 * sd, !out));
      }
      if (limits && !out && Math.abs(z - centre) > 1.5 * sd) {
        signals.add(
            new Signal(
                new SignalId(method, instrument, material, at, Rule.WEIGHTED_MEAN_BEYOND_LIMIT),
                Weight.STOP,
                z,
                centre + 1.5 * sd,
                true,
                Optional.empty()));
      }
    }
    return new StreamFindings(
        instrument,
        new Material(
            material,
            method,
            Optional.of(new BigDecimal("0.180")),
            Optional.of(new BigDecimal("0.003"))),
        points,
        (int) points.stream().filter(p -> OCTOBER.contains(p.at())).count(),
        limits
            ? Answer.of(baseline(points, base, centre, sd))
            : Answer.cannotSay("needs 5 results, has " + n),
        Optional.empty(),
        limits ? Optional.of(inForce(base, centre, sd)) : Optional.empty(),
        signals,
        price(limits ? Answer.of(0.31) : Answer.cannotSay("needs limits"), sd),
        limits
            ? Answer.of(new MaterialBias(0.0003, 0.0031, false))
            : Answer.cannotSay("needs limits"),
        Answer.cannotSay("needs 8 results, has " + n),
        List.of(),
        Answer.cannotSay("needs 20 results since the baseline, has 0"));
  }

  /** What the rules of an invented stream cost. */
  public static Price price(Answer<Double> expected, double sd) {
    return new Price(
        expected,
        2,
        OptionalDouble.of(1),
        4,
        expected.map(
            e ->
                List.of(
                    new Price.Delay(sd, 1, false, 0.23, 13, 121),
                    new Price.Delay(0.012, 0.012 / sd, true, 0.98, 1, 2))));
  }

  private static InForce inForce(int results, double centre, double sd) {
    return new InForce(
        InForce.Origin.FIRST_RESULTS,
        results,
        Optional.empty(),
        centre,
        centre - 3 * sd,
        centre - 2 * sd,
        centre + 2 * sd,
        centre + 3 * sd);
  }

  private static Signal signal(
      String method,
      String instrument,
      String material,
      LocalDateTime at,
      double value,
      double limit,
      boolean open) {
    return new Signal(
        new SignalId(method, instrument, material, at, Rule.BEYOND_ACTION_LIMIT),
        Weight.STOP,
        value,
        limit,
        open,
        open ? Optional.empty() : Optional.of(action(method, instrument, material, at)));
  }

  private static Action action(
      String method, String instrument, String material, LocalDateTime at) {
    return new Action(
        at.plusHours(2),
        new SignalId(method, instrument, material, at, Rule.BEYOND_ACTION_LIMIT),
        Optional.of("bubble in the vial"),
        Optional.empty(),
        false,
        Optional.empty(),
        Optional.of("RO"),
        Optional.empty(),
        new Origin("actions.csv", 2));
  }

  private static StreamFindings.Baseline baseline(
      List<Point> points, int base, double centre, double sd) {
    boolean provisional = base < 15;
    double k = provisional ? 7.25 : 3;
    return new StreamFindings.Baseline(
        base,
        points.get(0).at(),
        points.get(base - 1).at(),
        false,
        centre,
        sd,
        0,
        0.0035,
        0.0030,
        new ControlLimits(
            provisional ? ControlLimits.Basis.PREDICTION : ControlLimits.Basis.MOVING_RANGE,
            centre,
            sd,
            centre - k * sd,
            centre - 0.6 * k * sd,
            centre + 0.6 * k * sd,
            centre + k * sd,
            0.0035,
            0.0115),
        provisional ? ControlLimits.Basis.PREDICTION : ControlLimits.Basis.MOVING_RANGE,
        provisional,
        Answer.of(0.0079),
        centre - 1.5 * sd,
        centre + 1.5 * sd);
  }

  public static Calibration calibration(String key, String method, String instrument, int daysAgo) {
    return new Calibration(
        key,
        method,
        instrument,
        NOW.minusDays(daysAgo).withHour(8),
        Optional.empty(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        new Origin("calibrations.csv", 14));
  }

  /** A window with a least-squares line through the deviations; the fan from Student's t. */
  public static Drift drift(
      String method,
      String instrument,
      String key,
      int daysAgo,
      double[] days,
      double[] y,
      Drift.Decision decision,
      Answer<LocalDate> safe) {
    int n = days.length;
    Calibration calibration = calibration(key, method, instrument, daysAgo);
    List<Drift.Deviation> deviations = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      deviations.add(
          new Drift.Deviation(
              calibration.calibratedAt().plusHours(Math.round(24 * days[i])),
              days[i],
              y[i],
              true,
              "QC-TG-A"));
    }
    Answer<Drift.Line> line =
        n < 3 ? Answer.cannotSay("needs 3 results, has " + n) : Answer.of(line(days, y, daysAgo));
    LocalDate expires = calibration.calibratedAt().toLocalDate().plusDays(30);
    return new Drift(
        instrument,
        Optional.of(calibration),
        Optional.of(expires),
        14,
        deviations,
        Answer.of(0.003),
        OptionalDouble.of(0.012),
        line,
        line.map(
            l -> l.fan().get(Math.min(daysAgo, l.fan().size() - 1)).chanceBeyond().getAsDouble()),
        line.map(l -> l.fan().get(l.fan().size() - 1).chanceBeyond().getAsDouble()),
        safe,
        decision);
  }

  private static Drift.Line line(double[] x, double[] y, int today) {
    int n = x.length;
    double mx = 0;
    double my = 0;
    for (int i = 0; i < n; i++) {
      mx += x[i] / n;
      my += y[i] / n;
    }
    double sxx = 0;
    double sxy = 0;
    for (int i = 0; i < n; i++) {
      sxx += (x[i] - mx) * (x[i] - mx);
      sxy += (x[i] - mx) * (y[i] - my);
    }
    double b = sxy / sxx;
    double sse = 0;
    for (int i = 0; i < n; i++) {
      sse += Math.pow(y[i] - my - b * (x[i] - mx), 2);
    }
    double s = Math.sqrt(sse / (n - 2));
    TDistribution t = new TDistribution(null, n - 2);
    List<Drift.FanDay> fan = new ArrayList<>();
    for (int day = 0; day <= 30; day++) {
      double middle = my + b * (day - mx);
      double se = s * Math.sqrt(1.0 / n + (day - mx) * (day - mx) / sxx);
      double beyond =
          1
              - t.cumulativeProbability((0.012 - middle) / se)
              + t.cumulativeProbability((-0.012 - middle) / se);
      fan.add(
          new Drift.FanDay(
              day,
              middle,
              about(middle, se * t.inverseCumulativeProbability(0.75)),
              about(middle, se * t.inverseCumulativeProbability(0.90)),
              about(middle, se * t.inverseCumulativeProbability(0.975)),
              OptionalDouble.of(beyond)));
    }
    double sb = s / Math.sqrt(sxx) * t.inverseCumulativeProbability(0.975);
    Drift.FanDay now = fan.get(Math.min(30, today));
    Drift.FanDay end = fan.get(30);
    return new Drift.Line(
        b,
        about(b, sb),
        Math.abs(b) > sb,
        now.middle(),
        now.nearlyAll(),
        end.middle(),
        end.nearlyAll(),
        30 * (Math.abs(b) + sb),
        fan);
  }

  private static Interval about(double middle, double half) {
    return new Interval(middle - half, middle + half);
  }

  public static Replicates pairs(String instrument, Role role, int n, int inPeriod, int beyond) {
    List<Result> far = new ArrayList<>();
    for (int i = 0; i < beyond; i++) {
      far.add(result("B-" + (1041 + i), role, 4 + i));
    }
    return new Replicates(
        instrument,
        role,
        ReplicateKind.RE_READ,
        n,
        2,
        0.0021,
        n,
        new Interval(0.0018, 0.0026),
        0.00582,
        inPeriod,
        far,
        beyond > 3 ? 0.003 : 0.64);
  }

  /** What became of the pairs of an invented period. */
  public static PairsOfPeriod policy(String instrument, Role role, int inPeriod, int beyond) {
    List<Result> far = new ArrayList<>();
    for (int i = 0; i < beyond; i++) {
      far.add(result("B-" + (1041 + i), role, 4 + i));
    }
    return new PairsOfPeriod(
        instrument,
        role,
        inPeriod,
        inPeriod,
        far,
        inPeriod / 20.0,
        beyond > 3 ? 0.003 : 0.64,
        OptionalInt.of(2),
        OptionalInt.of(3),
        Answer.of(beyond > 3 ? PairsOfPeriod.Standing.ACTION : PairsOfPeriod.Standing.AS_EXPECTED),
        Map.of(
            ReportedValue.Path.TWO_AGREE,
            inPeriod - beyond,
            ReportedValue.Path.THREE_MEDIAN,
            beyond),
        List.of());
  }

  /** What the records of an invented method say without a control test: its pairs only. */
  public static FreeStreams free(PairsOfPeriod... policy) {
    return new FreeStreams(
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(policy),
        new FreeNotices(List.of()));
  }

  public static Result result(String sample, Role role, int day) {
    return new Result(
        LocalDateTime.of(2026, 10, day, 9, 12),
        "total-glycerin",
        "PM-1",
        role,
        sample,
        List.of(
            new Reading.Measured(new BigDecimal("0.181")),
            new Reading.Measured(new BigDecimal("0.189"))),
        List.of(
            new Reading.Measured(new BigDecimal("0.181")),
            new Reading.Measured(new BigDecimal("0.189"))),
        new Unit("% mass"),
        Optional.empty(),
        Optional.empty(),
        Optional.of("RO"),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        new Origin("readings/october.csv", 12));
  }

  public static Capability capability(int n, boolean normal) {
    SplittableRandom random = new SplittableRandom(5);
    List<Capability.Batch> batches = new ArrayList<>();
    int beyond = 0;
    for (int i = 0; i < n; i++) {
      double noise = random.nextDouble() + random.nextDouble() + random.nextDouble() - 1.5;
      double value = 0.186 + 0.042 * noise;
      beyond += value > 0.240 ? 1 : 0;
      batches.add(
          new Capability.Batch(
              NOW.minusHours(Math.round((n - i) * 24 * 330.0 / n)), "B-" + (1000 + i), value));
    }
    return new Capability(
        batches,
        1,
        0,
        0,
        OptionalDouble.empty(),
        OptionalDouble.of(0.240),
        0.186,
        0.021,
        beyond,
        normal ? Capability.Shape.NORMAL : Capability.Shape.NEITHER,
        OptionalDouble.of(normal ? 0.4 : 0.002),
        normal
            ? Answer.of(new Capability.Index(0.857, 0.69, 5100.0, 9000, new Interval(6e-4, 0.021)))
            : Answer.cannotSay("the shape of the batches is not normal"),
        normal ? Answer.of(0.22) : Answer.cannotSay("needs the intermediate deviation"));
  }

  /** On hold: a climbing window, open signals, results past a date, a person who differs. */
  public static MethodFindings glycerin() {
    StreamFindings stream = stream("total-glycerin", "PM-1", "QC-TG-A", 60, 17, 0.0022);
    LocalDate safe = LocalDate.of(2026, 11, 3);
    Drift drift =
        drift(
            "total-glycerin",
            "PM-1",
            "C-31",
            19,
            new double[] {0.4, 4.1, 8.2, 12.1, 17.3},
            new double[] {0.0008, 0.0017, 0.0049, 0.0052, 0.0081},
            Drift.Decision.RECALIBRATE_BY,
            Answer.of(safe));
    OutOfDate past =
        new OutOfDate(
            result("B-1039", Role.PRODUCT, 12),
            OutOfDate.Kind.CALIBRATION_VALIDITY,
            "C-30",
            LocalDate.of(2026, 10, 10),
            2,
            true);
    List<PersonPairs> people =
        List.of(
            new PersonPairs("RO", "PM-1", Role.PRODUCT, 46, 0.0019, 12, 0.0041, 1, false),
            new PersonPairs("AK", "PM-1", Role.PRODUCT, 12, 0.0041, 46, 0.0019, 0.0004, true));
    List<Signal> open = stream.signals().stream().filter(Signal::open).toList();
    return new MethodFindings(
        method("total-glycerin", "Total glycerin, enzymatic kit, photometric", "% mass", 3),
        Verdict.of(
            List.of(
                new Concern.OpenStopSignals(stream, open),
                new Concern.UsedPastDate(List.of(past)),
                new Concern.RecalibrateEarly(drift, safe),
                new Concern.PersonDiffers(people.get(1)))),
        List.of(pairs("PM-1", Role.CONTROL, 58, 5, 0), pairs("PM-1", Role.PRODUCT, 41, 12, 2)),
        people,
        List.of(stream),
        List.of(drift),
        new Precision(Answer.of(0.0021), Answer.of(0.0037)),
        Answer.of(capability(41, true)),
        List.of(past),
        new DateCoverage(5, 0, 0, List.of()),
        Slips.NONE);
  }

  /** Steady, and its calibration lasts. */
  public static MethodFindings acid() {
    StreamFindings stream = stream("acid-number", "PM-1", "QC-AN-B", 32, 4, 0);
    StreamFindings quiet =
        new StreamFindings(
            stream.instrument(),
            stream.material(),
            stream.points(),
            stream.pointsInPeriod(),
            stream.baseline(),
            stream.choiceNotUsed(),
            stream.next(),
            List.of(),
            stream.price(),
            stream.bias(),
            stream.diagnosis(),
            stream.revisions(),
            stream.proposal());
    Drift drift =
        drift(
            "acid-number",
            "PM-1",
            "A-12",
            11,
            new double[] {0.5, 3.1, 7.2, 10.1},
            new double[] {0.0004, -0.0006, 0.0006, -0.0001},
            Drift.Decision.KEEP,
            Answer.of(LocalDate.of(2026, 11, 19)));
    return new MethodFindings(
        method("acid-number", "Acid number, colour kit", "mg KOH/g", 3),
        Verdict.of(List.of()),
        List.of(pairs("PM-1", Role.CONTROL, 30, 4, 0)),
        List.of(),
        List.of(quiet),
        List.of(drift),
        new Precision(Answer.of(0.0021), Answer.of(0.0034)),
        Answer.of(capability(24, false)),
        List.of(),
        new DateCoverage(5, 0, 0, List.of()),
        Slips.NONE);
  }

  /** Young: few results, no line, no capability. */
  public static MethodFindings youngFattyAcid(int n) {
    StreamFindings stream = stream("ffa", "PM-2", "QC-FFA-1", n, 8, 0);
    List<Concern> concerns = new ArrayList<>();
    List<Drift> drift = new ArrayList<>();
    if (n > 0) {
      drift.add(
          drift(
              "ffa",
              "PM-2",
              "F-2",
              9,
              new double[] {0.3, 7.9},
              new double[] {0.002, 0.004},
              Drift.Decision.CANNOT_SAY,
              Answer.cannotSay("needs 3 results in this window, has 2")));
      concerns.add(new Concern.DriftUnknown(drift.get(0)));
    }
    concerns.add(new Concern.TooFewResults(stream));
    return new MethodFindings(
        method("ffa", "Free fatty acid in incoming oil", "% mass", 3),
        Verdict.of(concerns),
        List.of(),
        List.of(),
        List.of(stream),
        drift,
        new Precision(
            Answer.cannotSay("needs 2 pairs, has 0"),
            Answer.cannotSay("needs 8 results, has " + n)),
        Answer.cannotSay("needs 8 product results, has " + n),
        List.of(),
        new DateCoverage(5, 0, 0, List.of()),
        Slips.NONE);
  }

  /** A method nobody ever ran. */
  public static MethodFindings nothing() {
    return new MethodFindings(
        method("water", "Water by reagent", "mg/kg", 0),
        Verdict.of(List.of(new Concern.NoControls(Optional.empty()))),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        new Precision(
            Answer.cannotSay("needs 2 pairs, has 0"), Answer.cannotSay("needs 8 results, has 0")),
        Answer.cannotSay("there are no product results"),
        List.of(),
        new DateCoverage(5, 0, 0, List.of()),
        Slips.NONE);
  }

  /** Two hundred results, names beyond reason. */
  public static MethodFindings crowded() {
    String key = "a-method-whose-key-nobody-would-type-twice-in-a-row";
    StreamFindings stream =
        stream(
            key,
            "PHOTOMETER-NUMBER-ONE-IN-THE-BACK-ROOM",
            "QC-WITH-A-VERY-LONG-KEY-INDEED-2026-A",
            200,
            3,
            0.004);
    List<Signal> open = stream.signals().stream().filter(Signal::open).toList();
    return new MethodFindings(
        method(
            key,
            "A method with a title that goes on and on, through the kit, the photometer, the"
                + " wavelength and the Supercalifragilisticexpialidocious_wavelength_correction_2026",
            "% mass",
            3),
        Verdict.of(List.of(new Concern.OpenStopSignals(stream, open))),
        List.of(pairs("PHOTOMETER-NUMBER-ONE-IN-THE-BACK-ROOM", Role.CONTROL, 200, 18, 7)),
        List.of(),
        List.of(stream),
        List.of(),
        new Precision(Answer.of(0.0021), Answer.of(0.0037)),
        Answer.of(capability(200, true)),
        List.of(),
        new DateCoverage(5, 0, 0, List.of()),
        Slips.NONE);
  }

  /** Two instruments, one to recalibrate now, one expired; signals all through the year. */
  public static MethodFindings busy() {
    StreamFindings one = restless(stream("ffa-b", "PM-1", "QC-FFA-1", 70, 21, 0));
    StreamFindings two = stream("ffa-b", "PM-2", "QC-FFA-1", 12, 22, 0);
    Drift now =
        drift(
            "ffa-b",
            "PM-1",
            "F-31",
            24,
            new double[] {0.4, 6.1, 13.2, 20.1},
            new double[] {0.001, 0.0062, 0.0098, 0.0171},
            Drift.Decision.RECALIBRATE_NOW,
            Answer.of(LocalDate.of(2026, 10, 20)));
    Drift expired =
        drift(
            "ffa-b",
            "PM-2",
            "F-12",
            36,
            new double[] {1.4, 9.1, 19.2, 30.5},
            new double[] {0.001, -0.0042, 0.0028, -0.002},
            Drift.Decision.EXPIRED,
            Answer.cannotSay("the validity is over"));
    return new MethodFindings(
        method("ffa-b", "Free fatty acid, both photometers", "% mass", 2),
        Verdict.of(
            List.of(
                new Concern.OpenStopSignals(
                    one, one.signals().stream().filter(Signal::open).toList()),
                new Concern.RecalibrateNow(now),
                new Concern.CalibrationExpired(expired),
                new Concern.TooFewResults(two))),
        List.of(pairs("PM-1", Role.CONTROL, 58, 5, 0), pairs("PM-2", Role.CONTROL, 12, 4, 4)),
        List.of(),
        List.of(one, two),
        List.of(now, expired),
        new Precision(Answer.of(0.0021), Answer.of(0.0037)),
        Answer.cannotSay("the method has no limit for products"),
        List.of(),
        new DateCoverage(5, 0, 0, List.of()),
        Slips.NONE);
  }

  /** The same stream with a signal on every sixth result, every second one closed. */
  private static StreamFindings restless(StreamFindings stream) {
    List<Signal> signals = new ArrayList<>();
    for (int i = 2; i < stream.points().size(); i += 6) {
      Point point = stream.points().get(i);
      signals.add(
          new Signal(
              new SignalId(
                  "ffa-b",
                  stream.instrument(),
                  stream.material().key(),
                  point.at(),
                  Rule.READINGS_DISAGREE),
              i % 4 == 0 ? Weight.NOTICE : Weight.STOP,
              0.0091,
              0.0079,
              i % 12 == 2,
              Optional.empty()));
    }
    return new StreamFindings(
        stream.instrument(),
        stream.material(),
        stream.points(),
        stream.pointsInPeriod(),
        stream.baseline(),
        stream.choiceNotUsed(),
        stream.next(),
        signals,
        stream.price(),
        stream.bias(),
        stream.diagnosis(),
        stream.revisions(),
        stream.proposal());
  }
}
