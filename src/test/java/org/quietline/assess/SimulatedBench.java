package org.quietline.assess;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SplittableRandom;
import org.quietline.bench.Accounting;
import org.quietline.bench.Bench;
import org.quietline.bench.Calibration;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.Instrument;
import org.quietline.bench.Material;
import org.quietline.bench.Method;
import org.quietline.bench.Origin;
import org.quietline.bench.OutlookSettings;
import org.quietline.bench.Reading;
import org.quietline.bench.ReagentLot;
import org.quietline.bench.ReleaseSettings;
import org.quietline.bench.ReplicateKind;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.bench.Settings;
import org.quietline.bench.Storage;
import org.quietline.bench.Unit;
import org.quietline.stats.Simulation;

/**
 * An invented bench drawn from a plan and a seed: one method on one instrument, sittings of
 * controls and products, calibrations, reagent lots, people, and troubles planted from a given week
 * on. No files; a year takes some milliseconds.
 *
 * <p>The reading of a level x is {@code x + calibration + sitting + reading + troubles}, each error
 * normal with the plan's deviation. Set what differs, plant, and ask for the {@link #bench()}, its
 * {@link #records()} or a {@link #review()}.
 */
final class SimulatedBench {
  static final String METHOD = "tg";
  static final String INSTRUMENT = "PM-1";
  static final LocalDate START = LocalDate.of(2025, 1, 6);
  private static final int DECIMALS = 4;

  /** How many weeks the records cover. */
  int weeks = 40;

  /** Sittings a week, each with every control material once; at most five. */
  int sessionsPerWeek = 2;

  /** Products a sitting, each a pair of readings. */
  int productsPerSession = 1;

  /** Days from one calibration to the next. */
  int calibrationDays = 30;

  /** Days from one reagent lot to the next, and of the first one after the start. */
  int lotDays = 60;

  int firstLotAfterDays = 12;

  /** The levels of the control materials QC-1, QC-2, … */
  List<Double> levels = List.of(0.100, 0.250);

  List<String> people = List.of("RO", "ML", "TB");
  double readingDeviation = 0.0015;
  double sessionDeviation = 0.0015;
  double calibrationDeviation = 0.0008;

  /** How its charts are made. */
  ChartSettings chart = ChartSettings.DEFAULTS;

  /** Where products lie, and how they spread. */
  double productLevel = 0.200;

  double productDeviation = 0.015;
  private final SplittableRandom random;
  private final List<Trouble> troubles = new ArrayList<>();
  private final List<Result> results = new ArrayList<>();
  private final Set<ControlPlace> touched = new HashSet<>();
  private final List<Calibration> calibrations = new ArrayList<>();
  private final List<ReagentLot> lots = new ArrayList<>();

  /** What can be planted. */
  enum Kind {
    /** Every reading from then on by so many deviations of a control result. */
    ADDITIVE,
    /** Every reading by a share that is so many deviations at the mean level of the materials. */
    PROPORTIONAL,
    /** The first sitting from then on. */
    ONE_SESSION,
    /** The results of the last of the people from then on. */
    ONE_PERSON,
    /** The last material from then on, by a step. */
    MATERIAL_STEP,
    /** The last material from then on, by so many deviations in 30 days. */
    MATERIAL_DRIFT,
    /** The first lot opened from then on, until the next calibration takes it up. */
    LOT_STEP,
    /** The first lot opened from then on, as long as it is used. */
    LOT_FACTOR,
    /** The reagent from the first lot opened from then on, by so many deviations in 30 days. */
    REAGENT_AGE,
    /** The first calibration from then on, by so many deviations in 30 days. */
    CALIBRATION_DRIFT,
    /** The results under the first calibration from then on. */
    CALIBRATION_STEP,
    /** The first control result from then on. */
    ONE_RESULT
  }

  /**
   * A planted trouble.
   *
   * @param kind what
   * @param from the moment from which it may act
   * @param deviations how large, in deviations of one control result
   */
  record Trouble(Kind kind, LocalDateTime from, double deviations) {}

  SimulatedBench(long seed) {
    random = new SplittableRandom(seed);
  }

  SimulatedBench plant(Kind kind, int week, double deviations) {
    troubles.add(new Trouble(kind, START.plusWeeks(week).atStartOfDay(), deviations));
    return this;
  }

  /** The true deviation of a control result, a pair of readings. */
  double deviation() {
    return Math.sqrt(
        readingDeviation * readingDeviation / 2
            + sessionDeviation * sessionDeviation
            + calibrationDeviation * calibrationDeviation);
  }

  Bench bench() {
    if (results.isEmpty()) {
      draw();
    }
    List<Material> materials = new ArrayList<>();
    for (int i = 0; i < levels.size(); i++) {
      materials.add(
          new Material(
              material(i),
              METHOD,
              Optional.of(BigDecimal.valueOf(levels.get(i))),
              Optional.of(new BigDecimal("0.001"))));
    }
    Settings settings =
        new Settings(
            "Simulated bench",
            ZoneId.of("UTC"),
            List.of(method()),
            List.of(new Instrument(INSTRUMENT, "Photometer 1")),
            materials,
            List.of(),
            List.of(),
            chart,
            OutlookSettings.DEFAULTS,
            ReleaseSettings.DEFAULTS,
            List.of());
    return new Bench(settings, results, calibrations, lots, List.of(), List.of(), List.of());
  }

  /** The records of the whole time, as of the last result. */
  Records records() {
    Bench bench = bench();
    Period period = new Period(START, START.plusWeeks(weeks));
    LocalDateTime now = bench.results().get(bench.results().size() - 1).takenAt();
    return Records.of(bench, bench.settings().methods().get(0), period, now);
  }

  /** The control streams of the whole time. */
  List<StreamFindings> streams() {
    return TestBench.streams(records());
  }

  List<Story> stories() {
    return Stories.ask(records(), streams(), List.of());
  }

  /** The story of what was planted: the one with most signals on results that it acts on. */
  Optional<Story> plantedStory() {
    return stories().stream()
        .filter(s -> signalsOnTouched(s) > 0)
        .max(Comparator.comparingLong(this::signalsOnTouched));
  }

  private long signalsOnTouched(Story story) {
    return story.signals().stream().filter(s -> touched.contains(ControlPlace.of(s.id()))).count();
  }

  Review review() {
    Accounting accounting =
        new Accounting(
            List.of(new Accounting.FileRead("readings/a.csv", "00", bench().results().size())),
            List.of(),
            List.of(),
            bench().results().size(),
            0);
    return new Review(bench(), accounting, "5e771065", "da7a0000");
  }

  private static Method method() {
    return new Method(
        METHOD,
        "Total glycerin",
        new Unit("% mass"),
        DECIMALS,
        2,
        ReplicateKind.RE_READ,
        OptionalInt.of(30),
        Optional.of(new Method.Allowance(new BigDecimal("0.012"), false)),
        Optional.of(
            new Method.ProductLimits(
                Optional.empty(), Optional.of(new BigDecimal("0.240")), Optional.of("invented"))),
        Method.ShelfLife.NOT_SET,
        Optional.empty());
  }

  static String material(int index) {
    return "QC-" + (index + 1);
  }

  private void draw() {
    calibrateAndOpen();
    double calibrationError = 0;
    String calibration = "";
    for (int week = 0; week < weeks; week++) {
      for (int s = 0; s < sessionsPerWeek; s++) {
        LocalDateTime at = START.plusWeeks(week).plusDays(s * 5L / sessionsPerWeek).atTime(9, 0);
        Calibration now = calibrationAt(at);
        if (!now.key().equals(calibration)) {
          calibration = now.key();
          calibrationError = calibrationDeviation * Simulation.normal(random);
        }
        sitting(at, now, lotAt(at), calibrationError);
      }
    }
  }

  private void calibrateAndOpen() {
    for (int day = 0; day <= 7 * weeks; day += calibrationDays) {
      calibrations.add(
          new Calibration(
              "C-" + (calibrations.size() + 1),
              METHOD,
              INSTRUMENT,
              START.plusDays(day).atTime(8, 0),
              Optional.empty(),
              List.of(),
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              new Origin("calibrations.csv", calibrations.size() + 2)));
    }
    open(START);
    for (int day = firstLotAfterDays; day <= 7 * weeks; day += lotDays) {
      if (day > 0) {
        open(START.plusDays(day));
      }
    }
  }

  private void open(LocalDate day) {
    lots.add(
        new ReagentLot(
            "L-" + (lots.size() + 1),
            METHOD,
            Optional.of(day),
            Optional.of(day),
            Optional.empty(),
            Optional.of(Storage.REFRIGERATED),
            Optional.empty(),
            new Origin("reagents.csv", lots.size() + 2)));
  }

  private Calibration calibrationAt(LocalDateTime at) {
    return calibrations.stream()
        .filter(c -> !c.calibratedAt().isAfter(at))
        .reduce((earlier, later) -> later)
        .orElseThrow();
  }

  private ReagentLot lotAt(LocalDateTime at) {
    return lots.stream()
        .filter(l -> !opened(l).isAfter(at))
        .reduce((earlier, later) -> later)
        .orElseThrow();
  }

  private static LocalDateTime opened(ReagentLot lot) {
    return lot.openedOn().orElseThrow().atStartOfDay();
  }

  private void sitting(
      LocalDateTime start, Calibration calibration, ReagentLot lot, double calibrationError) {
    double common = calibrationError + sessionDeviation * Simulation.normal(random);
    String person = people.get(random.nextInt(people.size()));
    LocalDateTime at = start;
    for (int i = 0; i < levels.size(); i++) {
      Taken taken = new Taken(at, start, Role.CONTROL, material(i), calibration, lot, person);
      take(taken, levels.get(i), common);
      at = at.plusMinutes(20);
    }
    for (int i = 0; i < productsPerSession; i++) {
      String sample = "B-" + (1000 + results.size());
      double level = productLevel + productDeviation * Simulation.normal(random);
      take(new Taken(at, start, Role.PRODUCT, sample, calibration, lot, person), level, common);
      at = at.plusMinutes(20);
    }
  }

  /** The circumstances of a result. */
  private record Taken(
      LocalDateTime at,
      LocalDateTime session,
      Role role,
      String sample,
      Calibration calibration,
      ReagentLot lot,
      String person) {}

  private void take(Taken taken, double level, double common) {
    double off = 0;
    for (Trouble trouble : troubles) {
      off += trouble.deviations() * deviation() * share(trouble, taken, level);
    }
    if (off != 0 && taken.role() == Role.CONTROL) {
      touched.add(new ControlPlace(INSTRUMENT, taken.sample(), taken.at()));
    }
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < 2; i++) {
      double reading = level + common + off + readingDeviation * Simulation.normal(random);
      BigDecimal rounded = new BigDecimal(reading).setScale(DECIMALS, RoundingMode.HALF_EVEN);
      readings.add(new Reading.Measured(rounded));
    }
    results.add(
        new Result(
            taken.at(),
            METHOD,
            INSTRUMENT,
            taken.role(),
            taken.sample(),
            readings,
            readings,
            new Unit("% mass"),
            Optional.of(taken.calibration().key()),
            Optional.of(taken.lot().key()),
            Optional.of(taken.person()),
            Optional.empty(),
            Optional.of(String.format(Locale.ROOT, "S-%s", taken.session())),
            Optional.empty(),
            Optional.empty(),
            new Origin("readings/a.csv", results.size() + 2)));
  }

  /** How much of a trouble acts on a result. */
  private double share(Trouble trouble, Taken taken, double level) {
    boolean since = !taken.at().isBefore(trouble.from());
    boolean lastMaterial =
        taken.role() == Role.CONTROL && taken.sample().equals(material(levels.size() - 1));
    double months = ControlHistory.days(trouble.from(), taken.at()) / 30;
    return switch (trouble.kind()) {
      case ADDITIVE -> since ? 1 : 0;
      case PROPORTIONAL -> since ? level / meanLevel() : 0;
      case ONE_SESSION -> taken.session().equals(firstSession(trouble, taken)) ? 1 : 0;
      case ONE_PERSON -> since && taken.person().equals(people.get(people.size() - 1)) ? 1 : 0;
      case MATERIAL_STEP -> since && lastMaterial ? 1 : 0;
      case MATERIAL_DRIFT -> since && lastMaterial ? months : 0;
      case LOT_STEP ->
          isLot(trouble, taken) && taken.calibration().equals(atOpening(taken.lot())) ? 1 : 0;
      case LOT_FACTOR -> isLot(trouble, taken) ? 1 : 0;
      case REAGENT_AGE ->
          isLot(trouble, taken) ? ControlHistory.days(opened(taken.lot()), taken.at()) / 30 : 0;
      case CALIBRATION_DRIFT ->
          isCalibration(trouble, taken)
              ? ControlHistory.days(taken.calibration().calibratedAt(), taken.at()) / 30
              : 0;
      case CALIBRATION_STEP -> isCalibration(trouble, taken) ? 1 : 0;
      case ONE_RESULT -> since && isFirstControl(trouble) ? 1 : 0;
    };
  }

  private double meanLevel() {
    return levels.stream().mapToDouble(l -> l).average().orElseThrow();
  }

  /** The first sitting from the trouble's moment on, which the results drawn so far tell. */
  private LocalDateTime firstSession(Trouble trouble, Taken taken) {
    return results.stream()
        .map(Result::takenAt)
        .filter(at -> !at.isBefore(trouble.from()))
        .findFirst()
        .orElse(taken.session().isBefore(trouble.from()) ? LocalDateTime.MAX : taken.session());
  }

  private boolean isLot(Trouble trouble, Taken taken) {
    return lots.stream()
        .filter(l -> !opened(l).isBefore(trouble.from()))
        .findFirst()
        .filter(taken.lot()::equals)
        .isPresent();
  }

  private Calibration atOpening(ReagentLot lot) {
    return calibrationAt(opened(lot).plusDays(1));
  }

  private boolean isCalibration(Trouble trouble, Taken taken) {
    return calibrations.stream()
        .filter(c -> !c.calibratedAt().isBefore(trouble.from()))
        .findFirst()
        .filter(taken.calibration()::equals)
        .isPresent();
  }

  private boolean isFirstControl(Trouble trouble) {
    return results.stream()
        .noneMatch(r -> r.role() == Role.CONTROL && !r.takenAt().isBefore(trouble.from()));
  }
}
