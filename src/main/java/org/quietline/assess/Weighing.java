package org.quietline.assess;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.quietline.assess.NoticeRate.Question;
import org.quietline.assess.PairsOfPeriod.Standing;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.ChartSettings.Weight;
import org.quietline.bench.Rule;

/** Weighs everything found about one method into a verdict. */
final class Weighing {
  /** A control result younger than this is recent also in the first days of a period. */
  static final int RECENT_DAYS = 14;

  /** Questions that are put once a review, and whose notice is no signal of a rule. */
  private static final Set<Question> ASKED_OF_ALL =
      EnumSet.of(Question.RETESTS_MOVED, Question.ORDER_OF_READINGS, Question.SAMPLES_UNEVEN);

  /** The rules of which one at least must stop the method: they watch the level of results. */
  private static final Set<Rule> LEVEL_RULES =
      EnumSet.of(
          Rule.BEYOND_ACTION_LIMIT,
          Rule.WEIGHTED_MEAN_BEYOND_LIMIT,
          Rule.CUMULATIVE_SUM_BEYOND_LIMIT,
          Rule.TWO_OF_THREE_BEYOND_WARNING,
          Rule.FOUR_OF_FIVE_BEYOND_ONE_DEVIATION);

  /** From so many pairs on, all of them identical is not chance. */
  static final int MANY_PAIRS = 8;

  private final Records records;
  private final List<Concern> concerns = new ArrayList<>();

  private Weighing(Records records) {
    this.records = records;
  }

  static Verdict verdict(
      Records records,
      List<Replicates> replicates,
      FreeStreams free,
      List<PersonPairs> people,
      List<StreamFindings> streams,
      List<Drift> drift,
      List<OutOfDate> outOfDate,
      Slips slips) {
    Weighing weighing = new Weighing(records);
    streams.forEach(weighing::weighSignals);
    weighing.weighFree(free);
    drift.forEach(weighing::weighDrift);
    weighing.weighDates(outOfDate);
    if (!slips.open().isEmpty()) {
      weighing.concerns.add(new Concern.LooksLikeSlips(slips.open()));
    }
    weighing.weighAmount(streams);
    streams.stream().filter(s -> isLive(s, streams)).forEach(weighing::weighBias);
    weighing.weighRules();
    weighing.weighPairs(free);
    replicates.stream()
        .filter(r -> r.deviation() == 0 && r.pairs() >= MANY_PAIRS)
        .forEach(r -> weighing.concerns.add(new Concern.PairsIdentical(r)));
    streams.stream()
        .filter(s -> s.diagnosis().value().filter(Diagnosis::warns).isPresent())
        .filter(s -> isLive(s, streams))
        .forEach(s -> weighing.concerns.add(new Concern.LimitsDoNotFit(s)));
    people.stream()
        .filter(PersonPairs::differs)
        .forEach(p -> weighing.concerns.add(new Concern.PersonDiffers(p)));
    return Verdict.of(weighing.concerns);
  }

  private void weighSignals(StreamFindings stream) {
    List<Signal> stops = open(stream, Weight.STOP);
    List<Signal> notices = open(stream, Weight.NOTICE);
    if (!stops.isEmpty()) {
      concerns.add(new Concern.OpenStopSignals(stream, stops));
    }
    if (!notices.isEmpty()) {
      concerns.add(new Concern.OpenNotices(stream, notices));
    }
  }

  private static List<Signal> open(StreamFindings stream, Weight weight) {
    return open(stream.signals(), weight);
  }

  private static List<Signal> open(List<Signal> signals, Weight weight) {
    return signals.stream().filter(s -> s.open() && s.weight() == weight).toList();
  }

  private void weighFree(FreeStreams free) {
    for (Weight weight : Weight.values()) {
      List<Signal> open = open(free.signals(), weight);
      if (!open.isEmpty()) {
        concerns.add(new Concern.OpenFreeSignals(weight, open));
      }
    }
    free.notices().rates().stream()
        .filter(r -> r.observed() > 0 && ASKED_OF_ALL.contains(r.question()))
        .forEach(r -> concerns.add(new Concern.FreeNotice(r)));
  }

  private void weighPairs(FreeStreams free) {
    free.policy().stream()
        .filter(p -> p.standing().value().filter(s -> s == Standing.ACTION).isPresent())
        .forEach(p -> concerns.add(new Concern.PairsDisagree(p)));
  }

  /** An instrument that rests in the period rests in the verdict, unless it is the only one. */
  private boolean isInUse(String instrument) {
    return records.instruments().size() == 1
        || records.results().stream()
            .anyMatch(
                r -> r.instrument().equals(instrument) && records.period().contains(r.takenAt()));
  }

  private void weighDrift(Drift drift) {
    if (!isInUse(drift.instrument())) {
      return;
    }
    switch (drift.decision()) {
      case EXPIRED -> concerns.add(new Concern.CalibrationExpired(drift));
      case RECALIBRATE_NOW -> concerns.add(new Concern.RecalibrateNow(drift));
      case RECALIBRATE_BY ->
          concerns.add(
              new Concern.RecalibrateEarly(
                  drift, drift.lastSafeDay().value().orElse(records.now().toLocalDate())));
      case CANNOT_SAY -> {
        if (isDue(drift)) {
          concerns.add(new Concern.DriftUnknown(drift));
        }
      }
      case KEEP -> {}
    }
  }

  /**
   * Early in a window nothing can be said yet, and nothing is amiss; from half its validity on, or
   * once the line itself gives a chance that is not safe, not knowing is a concern.
   */
  private boolean isDue(Drift drift) {
    double safe = records.bench().settings().outlook().safeChance();
    if (drift.chanceBeyondNow().value().filter(p -> p > safe).isPresent()) {
      return true;
    }
    OptionalInt days = records.method().calibrationValidDays();
    if (drift.calibration().isEmpty() || days.isEmpty()) {
      return true;
    }
    LocalDate halfway =
        drift.calibration().get().calibratedAt().toLocalDate().plusDays(days.getAsInt() / 2);
    return !records.now().toLocalDate().isBefore(halfway);
  }

  private void weighDates(List<OutOfDate> outOfDate) {
    List<OutOfDate> now = outOfDate.stream().filter(o -> o.inPeriod() && o.open()).toList();
    if (!now.isEmpty()) {
      concerns.add(new Concern.UsedPastDate(now));
    }
  }

  private void weighAmount(List<StreamFindings> streams) {
    List<Point> all = streams.stream().flatMap(s -> s.points().stream()).toList();
    if (all.stream().noneMatch(Point::counts)) {
      concerns.add(new Concern.NoControls(Optional.empty()));
      return;
    }
    records.instruments().forEach(instrument -> weighAmount(instrument, streams));
    streams.stream()
        .filter(s -> isLive(s, streams))
        .filter(s -> s.baseline().value().map(b -> b.provisional()).orElse(true))
        .forEach(s -> concerns.add(new Concern.TooFewResults(s)));
  }

  /** A control material that is used up is history, once another one has taken its place. */
  private static boolean isLive(StreamFindings stream, List<StreamFindings> all) {
    return stream.pointsInPeriod() > 0
        || all.stream()
            .filter(s -> s.instrument().equals(stream.instrument()))
            .noneMatch(s -> s.pointsInPeriod() > 0);
  }

  /** An instrument in use needs controls of its own; another one's say nothing about it. */
  private void weighAmount(String instrument, List<StreamFindings> streams) {
    Optional<Point> last =
        streams.stream()
            .filter(s -> s.instrument().equals(instrument))
            .flatMap(s -> s.points().stream())
            .filter(Point::counts)
            .max(Comparator.comparing(Point::at));
    boolean inUse = isInUse(instrument);
    if (last.isEmpty()) {
      if (inUse) {
        concerns.add(new Concern.NoControls(Optional.of(instrument)));
      }
      return;
    }
    boolean recent =
        records.period().contains(last.get().at())
            || !last.get().at().isBefore(records.now().minusDays(RECENT_DAYS));
    if (!recent && inUse) {
      concerns.add(new Concern.NoRecentControls(instrument, last.get().at().toLocalDate()));
    }
  }

  private void weighRules() {
    ChartSettings chart = records.bench().settings().chart();
    if (chart.stopRules().stream().noneMatch(LEVEL_RULES::contains)) {
      concerns.add(new Concern.NoStopRules());
    }
  }

  private void weighBias(StreamFindings stream) {
    if (stream.bias().value().isEmpty() || !stream.bias().value().get().significant()) {
      return;
    }
    double size = Math.abs(stream.bias().value().get().difference());
    double level = stream.material().assignedValue().orElseThrow().doubleValue();
    if (records.method().allowance().map(a -> size > a.at(level)).orElse(true)) {
      concerns.add(new Concern.Biased(stream));
    }
  }
}
