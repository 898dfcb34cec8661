package org.quietline.assess;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.quietline.assess.ControlHistory.Entry;
import org.quietline.assess.Hint.Pattern;
import org.quietline.assess.Hints.Inseparable;
import org.quietline.assess.Hints.NextTime;
import org.quietline.bench.Calibration;
import org.quietline.bench.SignalId;
import org.quietline.stats.model.LeastSquares;
import org.quietline.stats.model.ModelShares;

/** What a story is consistent with. */
final class HintFinder {
  /** The fewest control results with limits that patterns are compared on. */
  static final int FEWEST = 15;

  /** Predictors that correlate more than this cannot be told apart. Common practice. */
  static final double ALIKE = 0.95;

  /** A pair of patterns of which neither has this share is told only if it is by design. */
  /** Squared deviations below which a model fits perfectly, and only its parameters count. */
  private static final double PERFECT = 1e-9;

  private static final double WORTH_TELLING = 0.10;

  /**
   * Pairs that are told however unlikely they are, because the way the bench works decides them.
   */
  private static final Set<Set<Pattern>> BY_DESIGN =
      Set.of(
          Set.of(Pattern.ADDITIVE, Pattern.PROPORTIONAL),
          Set.of(Pattern.CALIBRATION_DRIFT, Pattern.REAGENT_AGE));

  /** A model that is twenty times less likely has been told apart, {@code 2·ln 20}. */
  private static final double TOLD_APART = 5.991_464_547_107_982;

  /** Patterns with less than this share are not told. */
  private static final double LEAST_SHARE = 0.001;

  /** Results of other open stories are held to within so many deviations. */
  private static final double HELD = 4;

  /** How many results before the onset, and after the latest signal, are compared. */
  private static final int WINDOW = 300;

  /** Criteria and sums of squares that differ by less are equal. */
  private static final double ROUNDING = 1e-9;

  private final List<Entry> entries;
  private final OriginFit fits;
  private final StreamNumbers streams;
  private final double[] centred;
  private final double squares;
  private final IdentityHashMap<OriginModel, Double> explained = new IdentityHashMap<>();
  private final Map<Pattern, List<OriginModel>> models = new EnumMap<>(Pattern.class);

  private HintFinder(List<Entry> entries, List<Double> deviations, List<OriginModel> models) {
    this.entries = entries;
    streams = StreamNumbers.of(entries);
    centred = streams.centred(deviations.stream().mapToDouble(u -> u).toArray());
    squares = Arrays.stream(centred).map(u -> u * u).sum();
    fits = new OriginFit(entries, deviations, streams);
    for (OriginModel model : models) {
      this.models.computeIfAbsent(model.pattern(), p -> new ArrayList<>()).add(model);
    }
  }

  /** A pattern at its best place. */
  private record Fitted(OriginModel model, LeastSquares fit, double criterion) {}

  /**
   * The hints of one story. Results of other stories are left out where those are closed, because
   * their cause is known, and where they are off to the other side, because they would decide the
   * estimate; those of other open stories to the same side stay, within four deviations, because
   * one origin may be behind both. Only so many results before the onset and after the latest
   * signal are compared.
   */
  static Answer<Hints> find(
      ControlHistory history,
      StoryGroup group,
      List<StoryGroup> others,
      List<Calibration> calibrations) {
    Set<ControlPlace> own = places(group);
    Set<ControlPlace> known = new HashSet<>();
    Set<ControlPlace> held = new HashSet<>();
    for (StoryGroup other : others) {
      boolean mayBeOne = other.isOpen() && other.side() * group.side() >= 0;
      (mayBeOne ? held : known).addAll(places(other));
    }
    List<Entry> entries =
        window(
            group,
            history.entries().stream()
                .filter(Entry::isCharted)
                .filter(
                    e -> own.contains(e.place()) || (!e.excluded() && !known.contains(e.place())))
                .toList());
    if (own.isEmpty()) {
      return Answer.cannotSay(withoutOwn(history, group));
    }
    int fewest = FEWEST + StreamNumbers.of(entries).count() - 1;
    if (entries.size() < fewest) {
      return Answer.cannotSay(
          "needs " + fewest + " control results with limits, has " + entries.size());
    }
    held.removeAll(own);
    List<Double> deviations =
        entries.stream()
            .map(e -> held.contains(e.place()) ? held(e.deviation()) : e.deviation())
            .toList();
    List<OriginModel> models = OriginModels.of(group, entries, calibrations);
    return Answer.of(new HintFinder(entries, deviations, models).hints());
  }

  private static List<Entry> window(StoryGroup group, List<Entry> entries) {
    int from = ControlHistory.before(entries, group.first()) - WINDOW;
    int to = ControlHistory.upTo(entries, group.last()) + WINDOW;
    return entries.subList(Math.max(0, from), Math.min(entries.size(), to));
  }

  /** Why a story has no results of its own to be compared. */
  private static String withoutOwn(ControlHistory history, StoryGroup group) {
    SignalId id = group.stretches().get(0).signal().id();
    int has = history.numbers(id.instrument(), id.material());
    return has > 0 && has < StreamControl.FEWEST_FOR_LIMITS
        ? "needs " + StreamControl.FEWEST_FOR_LIMITS + " results of its own, has " + has
        : "needs a control result that is a number, with limits, among its own";
  }

  private static Set<ControlPlace> places(StoryGroup group) {
    Set<ControlPlace> places = new HashSet<>();
    group.results().forEach(e -> places.add(e.place()));
    return places;
  }

  private static double held(double deviation) {
    return Math.max(-HELD, Math.min(HELD, deviation));
  }

  private Hints hints() {
    List<Fitted> fitted = models.values().stream().map(this::best).toList();
    List<Double> shares =
        ModelShares.of(fitted.stream().mapToDouble(Fitted::criterion).toArray()).shares();
    List<Integer> order =
        IntStream.range(0, fitted.size())
            .boxed()
            .sorted(
                Comparator.comparingDouble(
                    i -> Math.rint(fitted.get(i).criterion() / ROUNDING) * ROUNDING))
            .toList();
    List<Hint> ranked =
        order.stream()
            .filter(i -> shares.get(i) >= LEAST_SHARE)
            .map(i -> hint(fitted.get(i), shares.get(i)))
            .toList();
    List<Inseparable> pairs = new ArrayList<>();
    for (int i = 0; i < order.size(); i++) {
      OriginModel likelier = fitted.get(order.get(i)).model();
      boolean likely = shares.get(order.get(i)) >= WORTH_TELLING;
      for (int j : order.subList(i + 1, order.size())) {
        Pattern other = fitted.get(j).model().pattern();
        if (likely || BY_DESIGN.contains(Set.of(likelier.pattern(), other))) {
          inseparable(likelier, other).ifPresent(pairs::add);
        }
      }
    }
    return new Hints(entries.size(), ranked, pairs);
  }

  private Fitted best(List<OriginModel> places) {
    OriginModel best = places.stream().reduce((a, b) -> isBetter(b, a) ? b : a).orElseThrow();
    LeastSquares fit = fits.leastSquares(best);
    int parameters = 2 + streams.count() + best.searched();
    double squares = Math.max(PERFECT, fit.residualSquares());
    double criterion = ModelShares.schwarz(squares, entries.size(), parameters);
    return new Fitted(best, fit, criterion);
  }

  /** Of places that explain the same but for rounding the first is kept. */
  private boolean isBetter(OriginModel later, OriginModel earlier) {
    return explained(later) > (1 + ROUNDING) * explained(earlier);
  }

  private double explained(OriginModel model) {
    return explained.computeIfAbsent(model, m -> m.explained(centred));
  }

  private Hint hint(Fitted fitted, double share) {
    OriginModel model = fitted.model();
    List<Double> predictor = model.predictor();
    List<ControlPlace> results =
        IntStream.range(0, entries.size())
            .filter(i -> predictor.get(i) != 0)
            .mapToObj(i -> entries.get(i).place())
            .toList();
    return new Hint(
        model.pattern(),
        model.subject(),
        results,
        fits.estimate(model, fitted.fit()),
        share,
        model.pattern().check());
  }

  private Optional<Inseparable> inseparable(OriginModel likelier, Pattern other) {
    double correlation =
        models.getOrDefault(other, List.of()).stream()
            .filter(m -> fitsAlike(likelier, m))
            .mapToDouble(likelier::correlation)
            .max()
            .orElse(0);
    return correlation > ALIKE
        ? Optional.of(
            new Inseparable(
                likelier.pattern(),
                other,
                Math.min(1, correlation),
                nextTime(Set.of(likelier.pattern(), other))))
        : Optional.empty();
  }

  private boolean fitsAlike(OriginModel one, OriginModel other) {
    double ratio = (squares - explained(other)) / (squares - explained(one));
    return entries.size() * Math.log(ratio) < TOLD_APART;
  }

  private static NextTime nextTime(Set<Pattern> pair) {
    if (pair.contains(Pattern.ONE_PERSON)) {
      return NextTime.LET_ANOTHER_PERSON_RUN_CONTROLS;
    }
    if (pair.contains(Pattern.ONE_MATERIAL)
        || pair.equals(Set.of(Pattern.ADDITIVE, Pattern.PROPORTIONAL))) {
      return NextTime.RUN_TWO_MATERIALS_AT_DIFFERENT_LEVELS;
    }
    if (pair.equals(Set.of(Pattern.ONE_SESSION, Pattern.ONE_RESULT))) {
      return NextTime.RUN_MORE_THAN_ONE_CONTROL_A_SESSION;
    }
    boolean calibration =
        pair.contains(Pattern.CALIBRATION_DRIFT) || pair.contains(Pattern.CALIBRATION_STEP);
    boolean reagent = pair.contains(Pattern.REAGENT_AGE) || pair.contains(Pattern.LOT_STEP);
    if (calibration && reagent) {
      return NextTime.OPEN_REAGENT_BETWEEN_CALIBRATIONS;
    }
    return pair.contains(Pattern.LOT_STEP)
        ? NextTime.RUN_OLD_AND_NEW_LOT_SIDE_BY_SIDE
        : NextTime.TAKE_MORE_CONTROL_RESULTS;
  }
}
