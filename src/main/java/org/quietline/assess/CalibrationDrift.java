package org.quietline.assess;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.quietline.assess.Drift.Ahead;
import org.quietline.assess.Drift.Decision;
import org.quietline.assess.Drift.Deviation;
import org.quietline.assess.Drift.EarlierWindow;
import org.quietline.assess.Drift.FanDay;
import org.quietline.assess.Drift.Line;
import org.quietline.assess.Drift.Pool;
import org.quietline.assess.Drift.Settling;
import org.quietline.bench.Calibration;
import org.quietline.bench.DriftForm;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.StudentMixture;
import org.quietline.stats.mixed.LineOutlook;

/**
 * Is the calibration in use drifting, and how long does it stay safe? Each window is a line about
 * an average line; how much windows differ is not estimated but averaged over, so that few windows
 * are not taken for more than they are (see {@link LineOutlook}).
 */
final class CalibrationDrift {
  /** The normal quantile that 2.5 % exceed. */
  private static final double NORMAL_95 = 1.959_963_984_540_054;

  /** The fan is drawn in so many steps. */
  private static final int FAN_STEPS = 12;

  private final Records records;
  private final List<StreamFindings> streams;

  CalibrationDrift(Records records, List<StreamFindings> streams) {
    this.records = records;
    this.streams = streams;
  }

  /** The current window of each instrument; none for a method that is never calibrated. */
  List<Drift> ask() {
    if (records.method().calibrationValidDays().isEmpty() && records.calibrations().isEmpty()) {
      return List.of();
    }
    return records.instruments().stream().map(this::judge).toList();
  }

  private Drift judge(String instrument) {
    List<Calibration> calibrations =
        records.calibrations().stream().filter(c -> c.instrument().equals(instrument)).toList();
    if (calibrations.isEmpty()) {
      String why = "no calibration is recorded for this instrument";
      return new Drift(
          instrument,
          Optional.empty(),
          Optional.empty(),
          0,
          List.of(),
          Answer.cannotSay(why),
          OptionalDouble.empty(),
          Answer.cannotSay(why),
          Answer.cannotSay(why),
          Answer.cannotSay(why),
          Answer.cannotSay(why),
          Decision.CANNOT_SAY);
    }
    return window(calibrations).judge();
  }

  /** The window in use of an instrument that has calibrations. */
  Window window(List<Calibration> calibrations) {
    return new Window(DriftPoints.of(records, streams, calibrations));
  }

  /** One calibration's window, up to now, beside the earlier ones. */
  final class Window {
    private final DriftPoints points;
    private final Calibration calibration;
    private final Optional<LocalDate> expires;
    private final LevelChoice levels;
    private final Answer<DriftModel> model;
    private final Answer<Double> allowance;

    Window(DriftPoints points) {
      this.points = points;
      this.calibration = points.calibration();
      OptionalInt days = records.method().calibrationValidDays();
      this.expires =
          days.isPresent() ? Optional.of(start().plusDays(days.getAsInt())) : Optional.empty();
      this.levels = LevelChoice.of(points, records.method().driftForm(), scale());
      this.model = lines();
      this.allowance = allowanceThere();
    }

    DriftPoints points() {
      return points;
    }

    Calibration calibration() {
      return calibration;
    }

    Answer<DriftModel> model() {
      return model;
    }

    LevelForm form() {
      return levels.form();
    }

    /** The error of the calibration at a value over that at the line's level; none below zero. */
    double shareAt(double value) {
      return form().drift() == DriftForm.ADDITIVE
          ? 1
          : Math.max(0, value / points.reference().orElseThrow().value());
    }

    /** The allowance for a result, in the method's unit: at its own level where it has a value. */
    OptionalDouble allowanceAt(OptionalDouble value) {
      if (value.isEmpty() || allowance.value().isEmpty()) {
        return allowance.value().map(OptionalDouble::of).orElse(OptionalDouble.empty());
      }
      double at = records.method().allowance().orElseThrow().at(value.getAsDouble());
      return at > 0 ? OptionalDouble.of(at) : OptionalDouble.empty();
    }

    double safeChance() {
      return records.bench().settings().outlook().safeChance();
    }

    LocalDate start() {
      return calibration.calibratedAt().toLocalDate();
    }

    private Answer<Double> allowanceThere() {
      if (records.method().allowance().isEmpty()) {
        return Answer.cannotSay("no allowable-bias is set for this method");
      }
      double level = points.reference().map(MaterialReference::value).orElse(0.0);
      double amount = records.method().allowance().get().at(level);
      return amount > 0
          ? Answer.of(amount)
          : Answer.cannotSay("allowable-bias-percent needs a reference other than zero");
    }

    private Answer<DriftModel> lines() {
      if (points.current().isEmpty()) {
        return Answer.cannotSay("needs a control result in this window");
      }
      if (judgesItself()) {
        return Answer.cannotSay(
            "the baseline's own results are in this window, so they cannot show its drift:"
                + " needs an assigned value or a later window");
      }
      return DriftModel.of(points, form(), scale());
    }

    private boolean judgesItself() {
      return points.reference().filter(r -> !r.assigned()).isPresent()
          && streams.stream()
              .filter(s -> s.instrument().equals(calibration.instrument()))
              .filter(s -> points.material().equals(Optional.of(s.material().key())))
              .flatMap(s -> s.points().stream())
              .filter(p -> p.calibration().equals(Optional.of(calibration.key())))
              .anyMatch(p -> p.counts() && p.inBaseline());
    }

    /** What the last digits of the readings leave of a result, at least. */
    DriftModel.Scale scale() {
      double[] steps = points.used().stream().mapToDouble(p -> rounding(p.result())).toArray();
      double mean = java.util.Arrays.stream(steps).average().orElse(0);
      return new DriftModel.Scale(expires.isPresent() ? lastDay() : 0, mean);
    }

    /** Readings of one vial round alike, so that their number does not help. */
    private static double rounding(Result result) {
      return CalibrationLine.roundingOf(
          result.readings().stream()
              .filter(Reading.Measured.class::isInstance)
              .map(r -> ((Reading.Measured) r).value())
              .toList());
    }

    /** Whole days from the calibration to now. */
    int today() {
      return (int) Math.max(0, ChronoUnit.DAYS.between(start(), records.now().toLocalDate()));
    }

    /** The last day of validity in days since the calibration; without one, today. */
    int lastDay() {
      return records.method().calibrationValidDays().orElse(today());
    }

    Drift judge() {
      Optional<CalibrationDecision> decision = decision();
      return new Drift(
          calibration.instrument(),
          Optional.of(calibration),
          expires,
          points.calibrations().size(),
          deviations(points.currentWindow()),
          points
              .reference()
              .map(MaterialReference::uncertainty)
              .orElse(Answer.cannotSay("there is no reference")),
          allowance.value().map(OptionalDouble::of).orElse(OptionalDouble.empty()),
          model.map(this::describe),
          chance(today()),
          expires.isEmpty()
              ? Answer.cannotSay("no calibration-valid-days is set for this method")
              : chance(lastDay()),
          lastSafeDay(decision),
          decided(decision),
          earlier(),
          model.map(this::pool),
          settling(decision),
          count());
    }

    private Answer<WindowCount> count() {
      return expires.isEmpty() || allowance.value().isEmpty()
          ? Answer.cannotSay("needs calibration-valid-days and an allowable-bias")
          : WindowCounts.of(
              points,
              form(),
              allowance.value().get(),
              lastDay(),
              records.bench().settings().outlook().reliability());
    }

    private List<EarlierWindow> earlier() {
      List<EarlierWindow> earlier = new ArrayList<>();
      for (int i = 0; i < points.currentWindow(); i++) {
        List<Deviation> deviations = deviations(i);
        if (!deviations.isEmpty()) {
          earlier.add(new EarlierWindow(points.calibrations().get(i), deviations));
        }
      }
      return earlier;
    }

    private List<Deviation> deviations(int window) {
      List<WindowPoint> used = model.value().map(DriftModel::used).orElse(points.used());
      return points.of(window).stream()
          .map(
              p ->
                  new Deviation(
                      p.result().takenAt(),
                      p.day(),
                      form().deviation(p, points.reference().orElseThrow()),
                      p.reference().assigned(),
                      p.material(),
                      p.lot(),
                      1 / Math.sqrt(form().weight(p, points.reference().orElseThrow())),
                      used.contains(p)))
          .toList();
    }

    private Answer<Double> chance(int day) {
      return allowance.value().isEmpty()
          ? Answer.cannotSay(allowance.why().orElseThrow())
          : model.map(m -> m.line().at(day).chanceBeyond(allowance.value().get()));
    }

    private Line describe(DriftModel m) {
      LineOutlook.GroupLine line = m.line();
      List<FanDay> fan = new ArrayList<>();
      int last = Math.max(1, lastDay());
      for (int i = 0; i <= FAN_STEPS; i++) {
        double day = (double) last * i / FAN_STEPS;
        StudentMixture height = line.at(day);
        fan.add(
            new FanDay(
                day,
                height.mean(),
                height.sketched(0.50),
                height.sketched(0.80),
                height.sketched(0.95),
                beyond(height)));
      }
      StudentMixture slope = m.slope();
      Interval slope95 = slope.interval(0.95);
      StudentMixture now = line.at(today());
      StudentMixture end = line.at(lastDay());
      return new Line(
          slope.mean(),
          slope95,
          !slope95.contains(0),
          now.mean(),
          now.interval(0.95),
          end.mean(),
          end.interval(0.95),
          lastDay() * Math.max(Math.abs(slope95.lower()), Math.abs(slope95.upper())),
          fan);
    }

    private OptionalDouble beyond(StudentMixture height) {
      return allowance
          .value()
          .map(a -> OptionalDouble.of(height.chanceBeyond(a)))
          .orElse(OptionalDouble.empty());
    }

    private Ahead ahead(StudentMixture height) {
      return new Ahead(height.mean(), height.interval(0.95), beyond(height));
    }

    private Pool pool(DriftModel m) {
      LineOutlook outlook = m.outlook();
      return new Pool(
          points.material().orElseThrow(),
          m.used().size(),
          m.windows(),
          outlook.degreesOfFreedom(),
          outlook.residualDeviation(),
          levels.form().drift(),
          levels.from(),
          levels.chanceOfShare(),
          safeChance(),
          points.followedTo(),
          lastDay() > points.followedTo(),
          ahead(outlook.averageAt(lastDay(), m.here())),
          m.windows() < 2
              ? Answer.cannotSay("needs control results in 2 windows")
              : Answer.of(ahead(outlook.newLineAt(lastDay(), m.here()))),
          m.effects(),
          m.confoundedKeys(),
          points.leftOut(),
          uncheckedLot());
    }

    /** A lot that results were made with since the last control result, which none has checked. */
    private Optional<String> uncheckedLot() {
      List<WindowPoint> here = points.current();
      return records.results().stream()
          .filter(r -> r.instrument().equals(calibration.instrument()))
          .filter(r -> !r.takenAt().isBefore(calibration.calibratedAt()))
          .flatMap(r -> r.reagentLot().stream())
          .reduce((earlier, later) -> later)
          .filter(l -> here.stream().anyMatch(p -> p.lot().isPresent()))
          .filter(l -> here.stream().noneMatch(p -> p.lot().equals(Optional.of(l))));
    }

    private Optional<CalibrationDecision> decision() {
      return model.value().isEmpty() || allowance.value().isEmpty() || usedUp()
          ? Optional.empty()
          : Optional.of(CalibrationDecision.of(question(model.value().get())));
    }

    private CalibrationDecision.Question question(DriftModel m) {
      LineOutlook.GroupLine line = m.line();
      return new CalibrationDecision.Question(
          line::at,
          m.slope(),
          allowance.value().orElseThrow(),
          safeChance(),
          Math.min(today(), lastDay()),
          lastDay(),
          points.followedTo());
    }

    private Answer<LocalDate> lastSafeDay(Optional<CalibrationDecision> decision) {
      if (expires.isEmpty()) {
        return Answer.cannotSay("no calibration-valid-days is set for this method");
      }
      if (decision.isEmpty()) {
        return Answer.cannotSay(whyNotDecided());
      }
      CalibrationDecision taken = decision.get();
      Optional<String> why = taken.why().or(() -> lotInTheWay(taken));
      if (why.isPresent()) {
        return Answer.cannotSay(why.get());
      }
      return taken.lastSafeDay().isPresent()
          ? Answer.of(start().plusDays(taken.lastSafeDay().getAsInt()))
          : Answer.cannotSay("on no day of this window was the chance low enough");
    }

    private String whyNotDecided() {
      return model
          .why()
          .or(() -> allowance.why())
          .orElse("the uncertainty of the assigned value alone uses up the allowance");
    }

    /** With this uncertainty of the reference no day could be safe, however good the line. */
    private boolean usedUp() {
      double uncertainty = points.reference().flatMap(r -> r.uncertainty().value()).orElse(0.0);
      return uncertainty > allowance.value().orElseThrow() / NORMAL_95;
    }

    private Decision decided(Optional<CalibrationDecision> decision) {
      if (expires.isPresent() && records.now().toLocalDate().isAfter(expires.get())) {
        return Decision.EXPIRED;
      }
      if (decision.isEmpty() || (expires.isEmpty() && !isBeyond(decision.get()))) {
        return Decision.CANNOT_SAY;
      }
      return lotInTheWay(decision.get()).isPresent()
          ? Decision.CANNOT_SAY
          : decision.get().decision();
    }

    /** A calibration is not kept on the word of a lot that is not in use any more. */
    private Optional<String> lotInTheWay(CalibrationDecision decision) {
      return decision.decision() == Decision.KEEP
          ? uncheckedLot()
              .map(
                  l ->
                      "lot "
                          + l
                          + " is in use and no control result of this window was made with it")
          : Optional.empty();
    }

    /** Without a validity only what is already wrong can be said. */
    private static boolean isBeyond(CalibrationDecision decision) {
      return decision.decision() == Decision.RECALIBRATE_NOW;
    }

    private Answer<Settling> settling(Optional<CalibrationDecision> decision) {
      if (decided(decision) != Decision.CANNOT_SAY || expires.isEmpty()) {
        return Answer.cannotSay("nothing is left to settle");
      }
      if (decision.isEmpty()) {
        return Answer.cannotSay(whyNotDecided());
      }
      if (lotInTheWay(decision.get()).isPresent()) {
        return Answer.of(
            new Settling(
                List.of(records.now().toLocalDate().plusDays(1)),
                chance(lastDay()).value().orElseThrow()));
      }
      return new SettlingTests(question(model.value().orElseThrow()), model.value().get().line())
          .find()
          .map(t -> new Settling(t.days().stream().map(start()::plusDays).toList(), t.chance()));
    }
  }
}
