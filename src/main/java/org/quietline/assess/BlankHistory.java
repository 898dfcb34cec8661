package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.BlankTrack.Judged;
import org.quietline.assess.BlankTrack.Kind;
import org.quietline.assess.BlankTrack.Mark;
import org.quietline.assess.NoticeRate.Question;
import org.quietline.bench.Rule;
import org.quietline.bench.SignalId;
import org.quietline.stats.Interval;
import org.quietline.stats.control.PredictiveLimits;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.distribution.NormalPair;
import org.quietline.stats.distribution.Student;

/** Follows blanks of one kind, each judged by those before it. */
final class BlankHistory {
  private final Records records;
  private final String instrument;
  private final Kind kind;
  private final FreeSignals maker;
  private final double weight;
  private final List<Double> before = new ArrayList<>();
  private final List<Mark> marks = new ArrayList<>();
  private final List<Signal> signals = new ArrayList<>();
  private double mean;
  private int steps;
  private int judged;
  private int beyond;

  BlankHistory(Records records, String instrument, Kind kind) {
    this.records = records;
    this.instrument = instrument;
    this.kind = kind;
    this.maker = new FreeSignals(records, instrument, SignalId.BLANK, Rule.BLANK_DRIFTING);
    this.weight = records.bench().settings().chart().weighting();
  }

  /** Takes in the next blank, and the smallest deviation to believe. */
  void add(LocalDateTime at, double value, double rounding) {
    boolean takenOut = maker.isTakenOut(at);
    Answer<Judged> answer = judge(value, rounding, takenOut);
    marks.add(new Mark(at, value, takenOut, answer));
    answer.value().ifPresent(j -> note(at, value, j));
    if (!takenOut) {
      before.add(value);
    }
  }

  private Answer<Judged> judge(double value, double rounding, boolean takenOut) {
    if (before.size() < CalibrationHistory.FEWEST_BEFORE) {
      return Answer.cannotSay(
          "needs " + CalibrationHistory.FEWEST_BEFORE + " blanks before it, has " + before.size());
    }
    PredictiveLimits known =
        PredictiveLimits.withoutPrior(before.stream().mapToDouble(Double::doubleValue).toArray());
    double deviation = Math.max(known.deviation(), rounding);
    double spread = deviation * Math.sqrt(1 + 1 / known.weight());
    double score = score((value - known.centre()) / spread, known.degreesOfFreedom());
    int counted = steps + 1;
    double now = weight * score + (1 - weight) * mean;
    double share =
        Math.sqrt(weight / (2 - weight) * -Math.expm1(2.0 * counted * Math.log1p(-weight)));
    double bound =
        new NormalPair(Math.min(1, weight / share)).bound(FalseSignals.BEYOND_THREE_DEVIATIONS);
    double half = spread * Student.exceededWith(Normal.above(bound), known.degreesOfFreedom());
    if (!takenOut) {
      mean = now;
      steps = counted;
    }
    return Answer.of(
        new Judged(
            new Interval(known.centre() - half, known.centre() + half),
            now,
            bound * share,
            Math.abs(value - known.centre()) > half,
            Math.abs(now) > bound * share,
            before.size() < StreamControl.FEWEST_FOR_SETTLED_LIMITS));
  }

  /** The standard normal number with the same tail. */
  private static double score(double t, double df) {
    double size = Normal.exceededWith(Student.above(Math.abs(t), df));
    return t < 0 ? -size : size;
  }

  private void note(LocalDateTime at, double value, Judged found) {
    if (records.period().contains(at)) {
      judged++;
      beyond += found.isBeyond() ? 1 : 0;
    }
    Optional<Signal> signal = Optional.empty();
    if (found.valueBeyond()) {
      Interval limits = found.limits();
      signal = maker.of(at, value, value > limits.upper() ? limits.upper() : limits.lower());
    } else if (found.meanBeyond()) {
      double limit = Math.copySign(found.weightedLimit(), found.weightedMean());
      signal = maker.of(at, found.weightedMean(), limit);
    }
    signal.ifPresent(signals::add);
  }

  BlankTrack track() {
    return new BlankTrack(
        kind,
        marks,
        new NoticeRate(
            Question.BLANK_DRIFTING,
            instrument,
            judged,
            FalseSignals.BEYOND_THREE_DEVIATIONS,
            beyond));
  }

  /** Where the value is inside, a signal holds the weighted mean and its limit in deviations. */
  List<Signal> signals() {
    return List.copyOf(signals);
  }
}
