package org.quietline.assess;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.assess.Drift.Decision;
import org.quietline.assess.Drift.Deviation;
import org.quietline.assess.Drift.FanDay;
import org.quietline.assess.Drift.Line;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.Calibration;
import org.quietline.stats.model.StraightLine;

/**
 * Is the calibration in use drifting, and how long does it stay safe? A straight line through the
 * deviations of the current window only; its chances are those of a Student t with the line's own
 * degrees of freedom.
 */
final class CalibrationDrift {
  /** The fewest control results in a window that a line is drawn through. */
  static final int FEWEST_FOR_A_LINE = 3;

  /** The normal quantile that 2.5 % exceed. */
  private static final double NORMAL_95 = 1.959_963_984_540_054;

  /** A longer validity is drawn in longer steps. */
  private static final int MOST_FAN_DAYS = 60;

  /** The chance of being beyond the allowance that a safe day may carry. */
  static final double SAFE_CHANCE = 0.05;

  /** A scatter finer than this share of the last digit is an accident of rounding. */
  static final double FINEST_SCATTER = 0.01;

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
    List<Calibration> windows =
        records.calibrations().stream().filter(c -> c.instrument().equals(instrument)).toList();
    if (windows.isEmpty()) {
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
    return new Window(windows.get(windows.size() - 1), windows.size()).judge();
  }

  /** One calibration's window, up to now. */
  private final class Window {
    private final Calibration calibration;
    private final int windows;
    private final Optional<LocalDate> expires;
    private final List<Deviation> deviations = new ArrayList<>();
    private Answer<Double> uncertainty = Answer.cannotSay("there is no reference");
    private double reference;
    private boolean judgesItself;

    Window(Calibration calibration, int windows) {
      this.calibration = calibration;
      this.windows = windows;
      this.expires =
          records.method().calibrationValidDays().isPresent()
              ? Optional.of(
                  calibration
                      .calibratedAt()
                      .toLocalDate()
                      .plusDays(records.method().calibrationValidDays().getAsInt()))
              : Optional.empty();
      streams.stream()
          .filter(s -> s.instrument().equals(calibration.instrument()))
          .max(Comparator.comparing(s -> s.points().stream().filter(this::isHere).count()))
          .ifPresent(this::collect);
    }

    /** One material: independent errors of several references would look like a slope. */
    private void collect(StreamFindings stream) {
      Optional<Double> assigned =
          stream.material().assignedValue().map(java.math.BigDecimal::doubleValue);
      Optional<Baseline> baseline = stream.baseline().value();
      Optional<Double> known = assigned.or(() -> baseline.map(Baseline::centre));
      if (known.isEmpty()) {
        return;
      }
      reference = known.get();
      uncertainty =
          assigned.isPresent()
              ? stream
                  .material()
                  .standardUncertainty()
                  .map(u -> Answer.of(u.doubleValue()))
                  .orElse(
                      Answer.cannotSay(
                          "needs the standard-uncertainty of the assigned value of "
                              + stream.material().key()
                              + "; the chances leave it out"))
              : Answer.of(
                  baseline.map(b -> b.sampleDeviation() / Math.sqrt(b.results())).orElse(0.0));
      for (Point point : stream.points()) {
        if (isHere(point)) {
          deviations.add(
              new Deviation(
                  point.at(),
                  daysSince(point.at()),
                  point.value().getAsDouble() - reference,
                  assigned.isPresent(),
                  stream.material().key()));
          judgesItself |= assigned.isEmpty() && point.inBaseline();
        }
      }
    }

    private boolean isHere(Point point) {
      return point.counts() && point.calibration().equals(Optional.of(calibration.key()));
    }

    private double daysSince(LocalDateTime moment) {
      return Duration.between(calibration.calibratedAt(), moment).toMinutes() / 1440.0;
    }

    Drift judge() {
      Answer<Double> allowance = allowance();
      Answer<StraightLine> fit = fit();
      Answer<Line> line = fit.map(f -> describe(f, allowance));
      Answer<Double> now = chance(fit, allowance, today());
      Answer<Double> atExpiry =
          expires.isEmpty()
              ? Answer.cannotSay("no calibration-valid-days is set for this method")
              : chance(fit, allowance, lastDay());
      Answer<LocalDate> lastSafeDay = lastSafeDay(fit, line, atExpiry, allowance);
      return new Drift(
          calibration.instrument(),
          Optional.of(calibration),
          expires,
          windows,
          deviations,
          uncertainty,
          allowance.value().map(OptionalDouble::of).orElse(OptionalDouble.empty()),
          line,
          now,
          atExpiry,
          lastSafeDay,
          decide(line, now, atExpiry, lastSafeDay, allowance));
    }

    private Answer<Double> allowance() {
      if (records.method().allowance().isEmpty()) {
        return Answer.cannotSay("no allowable-bias is set for this method");
      }
      double amount = records.method().allowance().get().at(reference);
      return amount > 0
          ? Answer.of(amount)
          : Answer.cannotSay("allowable-bias-percent needs a reference other than zero");
    }

    private Answer<StraightLine> fit() {
      if (deviations.size() < FEWEST_FOR_A_LINE) {
        return Answer.cannotSay(
            "needs "
                + FEWEST_FOR_A_LINE
                + " control results in this window, has "
                + deviations.size());
      }
      if (judgesItself) {
        return Answer.cannotSay(
            "the baseline's own results are in this window, so they cannot show its drift:"
                + " needs an assigned value or a later window");
      }
      double[] days = deviations.stream().mapToDouble(Deviation::day).toArray();
      double[] values = deviations.stream().mapToDouble(Deviation::deviation).toArray();
      if (java.util.Arrays.stream(days).distinct().count() < 2) {
        return Answer.cannotSay("needs control results on different days of this window");
      }
      StraightLine line = StraightLine.fit(days, values);
      if (line.residualDeviation() < FINEST_SCATTER * lastDigit()) {
        return Answer.cannotSay("needs results read finely enough to show their scatter");
      }
      return Answer.of(line.withSharedUncertainty(uncertainty.value().orElse(0.0)));
    }

    /** One unit in the last digit that results are reported with. */
    private double lastDigit() {
      return Math.pow(10, -records.method().decimals());
    }

    private double today() {
      return Math.max(0, daysSince(records.now()));
    }

    private double lastDay() {
      return records.method().calibrationValidDays().isPresent()
          ? records.method().calibrationValidDays().getAsInt()
          : Math.ceil(today());
    }

    private Line describe(StraightLine fit, Answer<Double> allowance) {
      List<FanDay> fan = new ArrayList<>();
      double step = Math.max(1, lastDay() / MOST_FAN_DAYS);
      for (double day = 0; day <= lastDay() + step / 2; day += step) {
        double at = Math.min(day, lastDay());
        fan.add(
            new FanDay(
                at,
                fit.at(at),
                fit.intervalAt(at, 0.50),
                fit.intervalAt(at, 0.80),
                fit.intervalAt(at, 0.95),
                allowance
                    .value()
                    .map(a -> OptionalDouble.of(fit.chanceBeyond(at, a)))
                    .orElse(OptionalDouble.empty())));
      }
      var slope = fit.slopeInterval(0.95);
      return new Line(
          fit.slope(),
          slope,
          !slope.contains(0),
          fit.at(today()),
          fit.intervalAt(today(), 0.95),
          fit.at(lastDay()),
          fit.intervalAt(lastDay(), 0.95),
          lastDay() * Math.max(Math.abs(slope.lower()), Math.abs(slope.upper())),
          fan);
    }

    private Answer<Double> chance(Answer<StraightLine> fit, Answer<Double> allowance, double day) {
      return allowance.value().isEmpty()
          ? Answer.cannotSay(allowance.why().orElseThrow())
          : fit.map(f -> f.chanceBeyond(day, allowance.value().get()));
    }

    /**
     * From today the walk goes on to expiry while the chance stays safe; where today is not safe
     * any more, it goes back to the latest day that was.
     */
    private Answer<LocalDate> lastSafeDay(
        Answer<StraightLine> fit,
        Answer<Line> line,
        Answer<Double> atExpiry,
        Answer<Double> allowance) {
      if (atExpiry.why().isPresent()) {
        return Answer.cannotSay(atExpiry.why().get());
      }
      double allowed = allowance.value().orElseThrow();
      if (usedUp(allowed)) {
        return Answer.cannotSay(
            "the uncertainty of the assigned value alone uses up the allowance");
      }
      StraightLine known = fit.value().orElseThrow();
      int expiry = (int) lastDay();
      int day =
          (int) Math.min(expiry, ChronoUnit.DAYS.between(start(), records.now().toLocalDate()));
      if (known.chanceBeyond(day, allowed) <= SAFE_CHANCE) {
        while (day < expiry && known.chanceBeyond(day + 1.0, allowed) <= SAFE_CHANCE) {
          day++;
        }
      } else {
        while (day >= 0 && known.chanceBeyond(day, allowed) > SAFE_CHANCE) {
          day--;
        }
      }
      if (day < expiry && !line.value().orElseThrow().slopeIsReal()) {
        return Answer.cannotSay("the control results of this window do not show a clear change");
      }
      return day < 0
          ? Answer.cannotSay("on no day of this window was the chance at or below 5 %")
          : Answer.of(start().plusDays(day));
    }

    private LocalDate start() {
      return calibration.calibratedAt().toLocalDate();
    }

    /** With this uncertainty of the reference no day could be safe, however good the line. */
    private boolean usedUp(double allowed) {
      return uncertainty.value().orElse(0.0) > allowed / NORMAL_95;
    }

    private Decision decide(
        Answer<Line> line,
        Answer<Double> chanceNow,
        Answer<Double> atExpiry,
        Answer<LocalDate> lastSafeDay,
        Answer<Double> allowance) {
      if (expires.isPresent() && records.now().toLocalDate().isAfter(expires.get())) {
        return Decision.EXPIRED;
      }
      if (chanceNow.value().isEmpty()) {
        return Decision.CANNOT_SAY;
      }
      double now = chanceNow.value().get();
      Line known = line.value().orElseThrow();
      if (now > 0.5 && showsBeyond(known, allowance.value().orElseThrow())) {
        return Decision.RECALIBRATE_NOW;
      }
      if (atExpiry.value().isEmpty() || usedUp(allowance.value().orElseThrow())) {
        return Decision.CANNOT_SAY;
      }
      if (now <= SAFE_CHANCE && atExpiry.value().get() <= SAFE_CHANCE) {
        return Decision.KEEP;
      }
      boolean outward = Math.abs(known.biasAtExpiry()) >= Math.abs(known.biasNow());
      if (!known.slopeIsReal() || !outward) {
        return Decision.CANNOT_SAY;
      }
      boolean inTime = now <= SAFE_CHANCE && lastSafeDay.value().isPresent();
      return inTime ? Decision.RECALIBRATE_BY : Decision.RECALIBRATE_NOW;
    }

    /** Not knowing makes a large chance, too; this asks that the data themselves say so. */
    private static boolean showsBeyond(Line line, double allowed) {
      return Math.abs(line.biasNow()) > allowed && (line.slopeIsReal() || !line.now().contains(0));
    }
  }
}
