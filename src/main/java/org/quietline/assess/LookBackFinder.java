package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.quietline.assess.ControlHistory.Entry;
import org.quietline.assess.Hint.Estimate;
import org.quietline.assess.Hint.Pattern;
import org.quietline.assess.Hint.Per;
import org.quietline.assess.LookBack.Assumed;
import org.quietline.assess.LookBack.Doubted;
import org.quietline.assess.LookBack.LikelyError;
import org.quietline.assess.LookBack.Since;
import org.quietline.assess.Story.Size;
import org.quietline.bench.Calibration;
import org.quietline.bench.ReagentLot;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.Interval;

/** Which results an open story puts in doubt. */
final class LookBackFinder {
  /** A share this far down would mean that nearly nothing was read, and cannot be divided by. */
  private static final double LEAST_SHARE = -0.9;

  private final Records records;
  private final StoryGroup group;
  private final Optional<Entry> lastGood;
  private final Optional<Calibration> under;
  private final Optional<Calibration> endedBy;
  private final ControlHistory history;
  private final Answer<Hints> hints;

  /** The hint that results are corrected by. */
  private final Optional<Hint> used;

  private final Answer<Assumed> assumed;

  LookBackFinder(
      Records records,
      ControlHistory history,
      StoryGroup group,
      Answer<Hints> hints,
      List<Size> sizes) {
    this.records = records;
    this.group = group;
    this.hints = hints;
    this.history = history;
    LocalDateTime onset = group.first();
    lastGood = lastGood(history, group);
    under =
        records.calibrations().stream()
            .filter(c -> c.instrument().equals(group.instrument()))
            .filter(c -> !c.calibratedAt().isAfter(onset))
            .reduce((earlier, later) -> later);
    endedBy = group.resetBy();
    Answer<Assumed> bySizes = ofSizes(sizes);
    used = hints.value().map(LookBackFinder::used).filter(hint -> isToTheSameSide(hint, bySizes));
    assumed =
        used.map(hint -> Answer.of(new Assumed(Optional.of(hint.pattern()), hint.estimate())))
            .orElse(bySizes);
  }

  private static Optional<Entry> lastGood(ControlHistory history, StoryGroup group) {
    List<Entry> counted = history.counted(group.instrument());
    for (int i = ControlHistory.before(counted, group.first()) - 1; i >= 0; i--) {
      if (history.isGood(counted.get(i))) {
        return Optional.of(counted.get(i));
      }
    }
    return Optional.empty();
  }

  private static Hint used(Hints hints) {
    Hint leading = hints.leading();
    boolean byLevel = leading.estimate().per() == Per.SHARE;
    Hint used = leading;
    if (byLevel && hints.cannotTell(Pattern.ADDITIVE, Pattern.PROPORTIONAL)) {
      used =
          hints.ranked().stream()
              .filter(h -> h.pattern() == Pattern.ADDITIVE)
              .findFirst()
              .orElse(leading);
    }
    return used;
  }

  /**
   * Whether a hint says of results of the story that they are off, and to the side where they are.
   */
  private boolean isToTheSameSide(Hint hint, Answer<Assumed> bySizes) {
    Set<ControlPlace> said = Set.copyOf(hint.results());
    double size = bySizes.value().map(a -> a.estimate().value()).orElse((double) group.side());
    return group.results().stream().anyMatch(e -> said.contains(e.place()))
        && hint.estimate().value() * size >= 0;
  }

  private Answer<Assumed> ofSizes(List<Size> sizes) {
    String material = group.stretches().get(0).signal().id().material();
    return sizes.stream()
        .filter(s -> s.material().equals(material))
        .findFirst()
        .map(s -> new Assumed(Optional.empty(), new Estimate(s.size(), s.interval95(), Per.AMOUNT)))
        .map(Answer::of)
        .orElseGet(
            () -> Answer.cannotSay("needs a control result that is a number among its signals"));
  }

  LookBack find() {
    Optional<LocalDateTime> from =
        lastGood.map(Entry::at).or(() -> under.map(Calibration::calibratedAt));
    List<Doubted> results =
        records.results().stream()
            .filter(r -> r.role() == Role.PRODUCT || r.role() == Role.RETEST)
            .filter(r -> r.instrument().equals(group.instrument()))
            .filter(r -> from.isEmpty() || r.takenAt().isAfter(from.get()))
            .filter(r -> endedBy.map(c -> r.takenAt().isBefore(c.calibratedAt())).orElse(true))
            .map(this::doubted)
            .sorted(NEAREST_FIRST)
            .toList();
    return new LookBack(
        lastGood.isPresent()
            ? Since.LAST_GOOD_CONTROL
            : under.isPresent() ? Since.CALIBRATION : Since.START,
        from,
        lastGood.map(Entry::place),
        endedBy.map(Calibration::key),
        assumed,
        batches(results.stream()),
        batches(results.stream().filter(Doubted::limitInside)),
        results);
  }

  private static final Comparator<Doubted> NEAREST_FIRST =
      Comparator.comparingDouble((Doubted d) -> d.margin().orElse(Double.POSITIVE_INFINITY))
          .thenComparing(Doubted::at);

  private static int batches(Stream<Doubted> results) {
    return (int) results.map(Doubted::sample).distinct().count();
  }

  private Doubted doubted(Result result) {
    OptionalDouble value = records.value(result);
    Answer<LikelyError> error =
        value.isPresent()
            ? assumed.map(a -> error(a.estimate(), result, value.getAsDouble()))
            : Answer.cannotSay("needs a value that is a number");
    Answer<Interval> corrected =
        error.map(
            e ->
                new Interval(
                    value.orElseThrow() - e.interval95().upper(),
                    value.orElseThrow() - e.interval95().lower()));
    OptionalDouble margin = margin(value, corrected);
    boolean inside =
        corrected.value().isPresent() && margin.isPresent() && margin.getAsDouble() == 0;
    return new Doubted(
        result.takenAt(),
        result.sample(),
        result.role(),
        value,
        error,
        corrected,
        inside,
        margin,
        pointedAt(result),
        result.origin().file(),
        result.origin().line());
  }

  /** A share s of the true level makes {@code value·s/(1 + s)} of what was read. */
  private LikelyError error(Estimate estimate, Result result, double value) {
    double days =
        switch (estimate.per()) {
          case AMOUNT, SHARE -> 1;
          case AMOUNT_A_DAY, SHARE_A_DAY -> days(result);
        };
    double middle = error(estimate.per(), estimate.value() * days, value);
    double one = error(estimate.per(), estimate.interval95().lower() * days, value);
    double other = error(estimate.per(), estimate.interval95().upper() * days, value);
    return new LikelyError(middle, new Interval(Math.min(one, other), Math.max(one, other)));
  }

  private static double error(Per per, double estimate, double value) {
    if (per == Per.AMOUNT || per == Per.AMOUNT_A_DAY) {
      return estimate;
    }
    double share = Math.max(LEAST_SHARE, estimate);
    return value * share / (1 + share);
  }

  /** Days over which the error grew; unknown ones count from where the look-back begins. */
  private double days(Result result) {
    Optional<LocalDateTime> start =
        switch (used.map(Hint::pattern).orElse(Pattern.CALIBRATION_DRIFT)) {
          case ONE_MATERIAL -> used.flatMap(this::beginning);
          case REAGENT_AGE ->
              records
                  .bench()
                  .reagentLotOf(result)
                  .flatMap(ReagentLot::openedOn)
                  .map(day -> day.atStartOfDay());
          default -> records.bench().calibrationOf(result).map(Calibration::calibratedAt);
        };
    LocalDateTime from = start.or(() -> lastGood.map(Entry::at)).orElseGet(group::first);
    return Math.max(0, ControlHistory.days(from, result.takenAt()));
  }

  /**
   * When the growth of one material began: at the start of a sitting, where it was still zero. That
   * is the sitting of the first result that is off, or, where this result began it, the one with
   * the result of the material before it.
   */
  private Optional<LocalDateTime> beginning(Hint hint) {
    return hint.results().stream()
        .findFirst()
        .flatMap(history::at)
        .map(
            first -> {
              Optional<LocalDateTime> sitting =
                  history.counted(first.instrument()).stream()
                      .filter(e -> e.session() == first.session())
                      .map(Entry::at)
                      .findFirst();
              if (sitting.isPresent() && sitting.get().isBefore(first.at())) {
                return sitting.get();
              }
              List<Entry> stream = history.counted(first.instrument(), first.material());
              int earlier = ControlHistory.before(stream, first.at());
              return earlier == 0 ? first.at() : stream.get(earlier - 1).at();
            });
  }

  private OptionalDouble margin(OptionalDouble value, Answer<Interval> corrected) {
    if (value.isEmpty() || records.method().limits().isEmpty()) {
      return OptionalDouble.empty();
    }
    double read = value.getAsDouble();
    double low = corrected.value().map(c -> Math.min(read, c.lower())).orElse(read);
    double high = corrected.value().map(c -> Math.max(read, c.upper())).orElse(read);
    return records.method().limits().stream()
        .flatMap(l -> Stream.concat(l.lower().stream(), l.upper().stream()))
        .mapToDouble(java.math.BigDecimal::doubleValue)
        .map(limit -> Math.max(0, Math.max(low - limit, limit - high)))
        .min();
  }

  private boolean pointedAt(Result result) {
    return used.isEmpty() || hints.value().map(h -> pointsAt(h.leading(), result)).orElse(true);
  }

  /** Whether a pattern says that a product result is off. */
  private boolean pointsAt(Hint hint, Result result) {
    LocalDateTime first = hint.results().isEmpty() ? group.first() : hint.results().get(0).at();
    boolean since = !result.takenAt().isBefore(first);
    return switch (hint.pattern()) {
      case ADDITIVE, PROPORTIONAL -> since;
      case ONE_PERSON -> since && result.operator().equals(hint.subject());
      case ONE_MATERIAL, ONE_RESULT -> false;
      case LOT_STEP, REAGENT_AGE -> result.reagentLot().filter(l -> isNamed(hint, l)).isPresent();
      case CALIBRATION_DRIFT, CALIBRATION_STEP ->
          records.bench().calibrationOf(result).filter(c -> isNamed(hint, c.key())).isPresent();
      case ONE_SESSION -> isInSession(hint, result);
    };
  }

  private static boolean isNamed(Hint hint, String key) {
    return hint.subject().filter(s -> List.of(s.split(", ")).contains(key)).isPresent();
  }

  private boolean isInSession(Hint hint, Result result) {
    return history.isInSession(result, hint.results().get(0));
  }
}
