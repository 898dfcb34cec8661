package org.quietline.assess;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.quietline.assess.AcidityAgreement.Centre;
import org.quietline.assess.AcidityAgreement.Limits;
import org.quietline.assess.AcidityAgreement.Pair;
import org.quietline.assess.NoticeRate.Question;
import org.quietline.bench.Acid;
import org.quietline.bench.Method;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.bench.Rule;
import org.quietline.stats.Interval;
import org.quietline.stats.compare.MeanTest;
import org.quietline.stats.control.ControlLimits;
import org.quietline.stats.sample.Summary;

/** Do acid number and free fatty acid of one sample agree? Asked of the acid number. */
final class MethodsAgree {
  /**
   * Two results are of one sample when they bear its id and lie at most a week apart: both tests of
   * a batch are done within a working week, a closed sample's acidity hardly moves in it, and an id
   * that comes again later may be another sample (our choice).
   */
  static final Duration MOST_APART = Duration.ofDays(7);

  /** Levels that differ by this factor or more are compared as shares. */
  private static final double LEVELS_APART = 3;

  private final Records records;
  private final Method other;
  private final ReportedValues reportedByOther;
  private final double factor;

  private MethodsAgree(Records records, Method other) {
    this.records = records;
    this.other = other;
    this.reportedByOther = ReportedValues.of(records.bench(), other);
    this.factor = FattyAcid.acidNumberPerUnit(other);
  }

  /**
   * For each free fatty acid of the bench and each instrument of the acid number; nothing for any
   * other method.
   */
  static List<AcidityAgreement> ask(Records records) {
    if (FattyAcid.of(records.method()).filter(a -> a == FattyAcid.ACID_NUMBER).isEmpty()) {
      return List.of();
    }
    return records.bench().settings().methods().stream()
        .filter(m -> FattyAcid.areRelated(records.method(), m))
        .flatMap(m -> new MethodsAgree(records, m).judge().stream())
        .toList();
  }

  private boolean isUsable(Result result) {
    return result.role() == Role.PRODUCT && !records.bench().isExcluded(result);
  }

  private List<AcidityAgreement> judge() {
    Map<String, List<Result>> byInstrument = new TreeMap<>();
    records.results().stream()
        .filter(r -> isUsable(r) && records.value(r).isPresent())
        .forEach(r -> byInstrument.computeIfAbsent(r.instrument(), i -> new ArrayList<>()).add(r));
    List<Result> others =
        records.bench().results().stream()
            .filter(r -> r.method().equals(other.key()) && isUsable(r))
            .filter(r -> reportedByOther.of(r).value().isPresent())
            .toList();
    return byInstrument.entrySet().stream()
        .map(e -> judge(e.getKey(), e.getValue(), others))
        .toList();
  }

  private AcidityAgreement judge(String instrument, List<Result> own, List<Result> others) {
    FreeSignals maker = new FreeSignals(records, instrument, other.key(), Rule.METHODS_DISAGREE);
    List<Pair> pairs = new ArrayList<>();
    List<Signal> signals = new ArrayList<>();
    for (Match match : matches(own, others)) {
      Pair pair = pair(match, pairs, maker);
      pairs.add(pair);
      if (pair.isBeyond()) {
        Interval action = pair.limits().value().orElseThrow().action();
        double limit = pair.residual() > action.upper() ? action.upper() : action.lower();
        maker.of(pair.at(), pair.residual(), limit).ifPresent(signals::add);
      }
    }
    List<Pair> judged =
        pairs.stream()
            .filter(p -> records.period().contains(p.at()) && p.limits().value().isPresent())
            .toList();
    return new AcidityAgreement(
        instrument,
        other.key(),
        factor,
        other.unit().basis().orElse(Acid.OLEIC),
        other.unit().basis().isPresent(),
        pairs,
        own.size() - pairs.size(),
        centre(pairs),
        signals,
        new NoticeRate(
            Question.METHODS_DISAGREE,
            instrument,
            judged.size(),
            FalseSignals.BEYOND_THREE_DEVIATIONS,
            (int) judged.stream().filter(Pair::isBeyond).count()));
  }

  /** Two results of one sample. */
  private record Match(Result acidNumber, Result freeFattyAcid, LocalDateTime at) {}

  /**
   * In time order each result is matched with the latest one of the other method that is still
   * free, so that what comes later never changes an earlier match.
   */
  private static List<Match> matches(List<Result> own, List<Result> others) {
    List<Result> inTime =
        Stream.concat(own.stream(), others.stream())
            .sorted(Comparator.comparing(Result::takenAt))
            .toList();
    Map<String, Result> free = new HashMap<>();
    List<Match> matches = new ArrayList<>();
    for (Result result : inTime) {
      Optional<Result> waiting =
          Optional.ofNullable(free.get(result.sample()))
              .filter(w -> !w.method().equals(result.method()))
              .filter(w -> !w.takenAt().plus(MOST_APART).isBefore(result.takenAt()));
      if (waiting.isPresent()) {
        free.remove(result.sample());
        boolean isOwn = result.method().equals(own.get(0).method());
        Result acidNumber = isOwn ? result : waiting.get();
        Result freeFattyAcid = isOwn ? waiting.get() : result;
        matches.add(new Match(acidNumber, freeFattyAcid, result.takenAt()));
      } else {
        free.put(result.sample(), result);
      }
    }
    return matches;
  }

  private Pair pair(Match match, List<Pair> earlier, FreeSignals maker) {
    double acidNumber = records.value(match.acidNumber()).orElseThrow();
    OptionalDouble percent = reportedByOther.of(match.freeFattyAcid()).value();
    double converted = factor * percent.orElseThrow();
    double level = (acidNumber + converted) / 2;
    return new Pair(
        match.acidNumber(),
        match.freeFattyAcid(),
        match.at(),
        acidNumber - converted,
        level,
        maker.isTakenOut(match.at()),
        limits(earlier.stream().filter(p -> !p.takenOut()).toList(), level));
  }

  private Answer<Limits> limits(List<Pair> before, double level) {
    if (before.size() < StreamControl.FEWEST_FOR_LIMITS) {
      return Answer.cannotSay(
          "needs "
              + StreamControl.FEWEST_FOR_LIMITS
              + " samples measured by both methods before it, has "
              + before.size());
    }
    double least = Math.min(level, before.stream().mapToDouble(Pair::level).min().orElseThrow());
    double most = Math.max(level, before.stream().mapToDouble(Pair::level).max().orElseThrow());
    boolean relative = least > 0 && most >= LEVELS_APART * least;
    double scale = relative ? level : 1;
    double rounding = Math.pow(10, -records.method().decimals()) / Math.sqrt(12);
    ControlLimits limits =
        ControlLimits.predictionFrom(
            rounding / scale,
            before.stream()
                .mapToDouble(p -> relative ? p.residual() / p.level() : p.residual())
                .toArray());
    return Answer.of(
        new Limits(
            scale * limits.centre(),
            new Interval(scale * limits.lowerAction(), scale * limits.upperAction()),
            relative,
            before.size() < StreamControl.FEWEST_FOR_SETTLED_LIMITS));
  }

  private Answer<Centre> centre(List<Pair> pairs) {
    double[] residuals =
        pairs.stream().filter(p -> !p.takenOut()).mapToDouble(Pair::residual).toArray();
    if (residuals.length < StreamControl.FEWEST_FOR_LIMITS) {
      return Answer.cannotSay(
          "needs "
              + StreamControl.FEWEST_FOR_LIMITS
              + " samples measured by both methods, has "
              + residuals.length);
    }
    Summary summary = Summary.of(residuals);
    if (Differences.areEqual(records, summary.deviation())) {
      return Answer.cannotSay(
          "needs residuals that differ: all " + residuals.length + " are the same number");
    }
    return Answer.of(
        new Centre(
            summary.mean(), MeanTest.oneSample(summary, 0).interval(0.95), residuals.length));
  }
}
