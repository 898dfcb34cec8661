package org.quietline.assess;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.quietline.assess.InstrumentCalibrations.Curve;
import org.quietline.assess.InstrumentCalibrations.Level;
import org.quietline.assess.InstrumentCalibrations.Limit;
import org.quietline.assess.InstrumentCalibrations.Response;
import org.quietline.assess.InstrumentCalibrations.Step;
import org.quietline.assess.InstrumentCalibrations.Uncertainty;
import org.quietline.assess.NoticeRate.Question;
import org.quietline.bench.Rule;
import org.quietline.bench.SignalId;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.PairRangeLimits;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.sample.PooledDeviation;

/**
 * Holds each calibration against the one before it at one level.
 *
 * <p>Changes of a steady line follow each other's tracks: what one calibration adds the next takes
 * back. So a change is not held against earlier changes but against the scatter of the heights of
 * the lines before the two compared, which is independent of both, and the limit {@code √2·t·s} is
 * broken with exactly 0.27 % by a steady line of normal scatter. Where a step was seen the heights
 * before and after it scatter each about their own mean, so that one step does not hide the next.
 */
final class StepHistory {
  /** The fewest degrees of freedom of a deviation that an interval is made from. */
  private static final int FEWEST_FREEDOM = 2;

  /** From so many degrees of freedom on the residuals of earlier lines speak for a response. */
  private static final int ENOUGH_FREEDOM = 5;

  private static final double HALF_OF_5_PERCENT = 0.025;

  private final Records records;
  private final String instrument;
  private final Answer<Level> level;
  private final FreeSignals maker;
  private final List<List<CalibrationLine>> runs = new ArrayList<>();
  private final List<CalibrationLine> all = new ArrayList<>();
  private final List<Signal> signals = new ArrayList<>();
  private boolean newRun = true;
  private int judged;
  private int beyond;

  StepHistory(Records records, String instrument, Answer<Level> level) {
    this.records = records;
    this.instrument = instrument;
    this.level = level;
    this.maker = new FreeSignals(records, instrument, SignalId.CALIBRATION, Rule.CALIBRATION_STEP);
  }

  /** Takes in the next calibration. */
  Curve add(CalibrationLine line) {
    Answer<Step> step = step(line);
    if (!all.isEmpty()) {
      keep(all.get(all.size() - 1));
    }
    step.value().ifPresent(s -> note(line, s));
    newRun |= step.value().filter(Step::isBeyond).isPresent();
    all.add(line);
    return new Curve(line.calibration(), line.responses(), line.slope(), line.offset(), step);
  }

  /** Called when the line after it is judged, before a step there starts a new run. */
  private void keep(CalibrationLine previous) {
    if (newRun) {
      runs.add(new ArrayList<>());
      newRun = false;
    }
    if (!maker.isTakenOut(previous.calibration().calibratedAt())) {
      runs.get(runs.size() - 1).add(previous);
    }
  }

  private Answer<Step> step(CalibrationLine line) {
    if (all.isEmpty()) {
      return Answer.cannotSay("needs a calibration before it");
    }
    if (line.slope() == 0) {
      return Answer.cannotSay("needs calibrators that respond differently");
    }
    CalibrationLine before = all.get(all.size() - 1);
    return level.map(Level::value).map(at -> step(before, line, at));
  }

  private Step step(CalibrationLine before, CalibrationLine line, double at) {
    double reads = line.read(before.heightAt(at));
    double change = (before.heightAt(at) - line.heightAt(at)) / line.slope();
    return new Step(
        before.calibration(),
        at,
        before.holds(at) && line.holds(at),
        reads,
        change,
        uncertainty(before, line, at, reads, change),
        limit(line, at));
  }

  private Answer<Limit> limit(CalibrationLine line, double at) {
    List<double[]> heights =
        runs.stream()
            .filter(run -> !run.isEmpty())
            .map(run -> run.stream().mapToDouble(l -> l.heightAt(at)).toArray())
            .toList();
    int before = heights.stream().mapToInt(h -> h.length).sum() + 1;
    if (before < CalibrationHistory.FEWEST_BEFORE) {
      return Answer.cannotSay(
          "needs "
              + CalibrationHistory.FEWEST_BEFORE
              + " calibrations before it, has "
              + Math.min(before, all.size()));
    }
    int freedom = before - 1 - heights.size();
    if (freedom < FEWEST_FREEDOM) {
      return Answer.cannotSay(
          "needs " + (FEWEST_FREEDOM - freedom) + " more calibrations without a step before it");
    }
    double rounding = line.rounding() * Math.sqrt(line.leverageAt(at));
    double deviation = Math.max(rounding, PooledDeviation.ofGroups(heights).deviation());
    PairRangeLimits range = PairRangeLimits.prediction(deviation / Math.abs(line.slope()), freedom);
    return Answer.of(
        new Limit(
            range.action(),
            range.warning(),
            freedom,
            before < StreamControl.FEWEST_FOR_SETTLED_LIMITS));
  }

  private Answer<Uncertainty> uncertainty(
      CalibrationLine before, CalibrationLine line, double at, double reads, double change) {
    Optional<PooledDeviation> residual =
        ofResiduals().filter(d -> d.degreesOfFreedom() >= ENOUGH_FREEDOM);
    Optional<PooledDeviation> response = residual.or(() -> betweenCalibrations(line));
    if (response.filter(d -> d.degreesOfFreedom() >= FEWEST_FREEDOM).isEmpty()) {
      return Answer.cannotSay(
          "needs the scatter of a response from 2 calibrations with the same calibrators before"
              + " the two compared");
    }
    double freedom = response.get().degreesOfFreedom();
    double deviation = Math.max(line.rounding(), response.get().deviation());
    double standard =
        deviation
            / Math.abs(line.slope())
            * Math.sqrt(before.leverageAt(at) + line.leverageAt(reads));
    double half = standard * Student.exceededWith(HALF_OF_5_PERCENT, freedom);
    return Answer.of(
        new Uncertainty(
            standard,
            new Interval(change - half, change + half),
            deviation,
            freedom,
            residual.isPresent()
                ? Uncertainty.Scatter.RESIDUALS_OF_LINES
                : Uncertainty.Scatter.BETWEEN_CALIBRATIONS));
  }

  /** The residuals of a line say nothing about its height, so that of the line before counts. */
  private Optional<PooledDeviation> ofResiduals() {
    List<CalibrationLine> free = all.stream().filter(l -> l.degreesOfFreedom() > 0).toList();
    return free.isEmpty()
        ? Optional.empty()
        : Optional.of(
            PooledDeviation.ofDeviations(
                free.stream().mapToDouble(CalibrationLine::residual).toArray(),
                free.stream().mapToDouble(CalibrationLine::degreesOfFreedom).toArray()));
  }

  /** The responses of the calibrators in use now, each about its mean in each run. */
  private Optional<PooledDeviation> betweenCalibrations(CalibrationLine line) {
    List<double[]> groups = new ArrayList<>();
    for (List<CalibrationLine> run : runs) {
      TreeMap<BigDecimal, List<Double>> responses = new TreeMap<>();
      for (Response response : line.responses()) {
        responses.put(response.assigned(), new ArrayList<>());
      }
      for (CalibrationLine earlier : run) {
        for (Response response : earlier.responses()) {
          List<Double> own = responses.get(response.assigned());
          if (own != null) {
            own.add(response.value().doubleValue());
          }
        }
      }
      responses.values().stream()
          .filter(r -> !r.isEmpty())
          .map(r -> r.stream().mapToDouble(Double::doubleValue).toArray())
          .forEach(groups::add);
    }
    return groups.stream().anyMatch(g -> g.length > 1)
        ? Optional.of(PooledDeviation.ofGroups(groups))
        : Optional.empty();
  }

  private void note(CalibrationLine line, Step step) {
    if (records.period().contains(line.calibration().calibratedAt())
        && step.limit().value().isPresent()) {
      judged++;
      beyond += step.isBeyond() ? 1 : 0;
    }
    if (step.isBeyond()) {
      double limit = step.limit().value().orElseThrow().value();
      maker
          .of(line.calibration().calibratedAt(), step.change(), Math.copySign(limit, step.change()))
          .ifPresent(signals::add);
    }
  }

  NoticeRate rate() {
    return new NoticeRate(
        Question.CALIBRATION_STEP,
        instrument,
        judged,
        FalseSignals.BEYOND_THREE_DEVIATIONS,
        beyond);
  }

  List<Signal> signals() {
    return List.copyOf(signals);
  }
}
