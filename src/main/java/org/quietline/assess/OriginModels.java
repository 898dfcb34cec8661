package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.IntToDoubleFunction;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.quietline.assess.ControlHistory.Entry;
import org.quietline.assess.Hint.Pattern;
import org.quietline.assess.Hint.Per;
import org.quietline.bench.Calibration;

/** The patterns a story may follow, each at all places where it may lie. */
final class OriginModels {
  /** How long before the onset a beginning is searched for, at the start of each sitting. */
  private static final int DAYS_BEFORE_ONSET = 60;

  /** How many beginnings, and how many single results, are searched at most. */
  private static final int MOST_PLACES = 150;

  private final StoryGroup group;
  private final List<Entry> entries;
  private final List<Calibration> calibrations;
  private final StreamNumbers streams;
  private final double[] centres;
  private final double[] deviations;
  private final List<Entry> own;
  private final List<LocalDateTime> beginnings;

  /** Whether the levels differ enough to tell an amount from a share. */
  private final boolean levelsTell;

  private final List<OriginModel> models = new ArrayList<>();

  private OriginModels(StoryGroup group, List<Entry> entries, List<Calibration> calibrations) {
    this.group = group;
    this.entries = entries;
    this.calibrations = calibrations;
    streams = StreamNumbers.of(entries);
    centres = entries.stream().mapToDouble(Entry::centre).toArray();
    deviations = entries.stream().mapToDouble(e -> e.sigma().orElseThrow()).toArray();
    own = group.results();
    levelsTell = levelsTell(own);
    LocalDateTime earliest = group.first().minusDays(DAYS_BEFORE_ONSET);
    Set<Integer> sessions = new HashSet<>();
    beginnings =
        thinned(
            entries.stream()
                .filter(
                    e -> isHere(e) && !e.at().isBefore(earliest) && !e.at().isAfter(group.last()))
                .filter(e -> sessions.add(e.session()))
                .map(Entry::at)
                .toList());
  }

  /** At most so many, evenly spread, that of the onset among them. */
  private List<LocalDateTime> thinned(List<LocalDateTime> all) {
    int every = (all.size() + MOST_PLACES - 1) / MOST_PLACES;
    if (every <= 1) {
      return all;
    }
    int onset = (int) all.stream().filter(at -> at.isBefore(group.first())).count();
    return IntStream.range(0, all.size())
        .filter(i -> i % every == onset % every)
        .mapToObj(all::get)
        .toList();
  }

  /** At most so many results of the story, those farthest from their centres. */
  private List<Entry> farthest() {
    if (own.size() <= MOST_PLACES) {
      return own;
    }
    return own.stream()
        .sorted(Comparator.comparingDouble((Entry e) -> -Math.abs(e.deviation())))
        .limit(MOST_PLACES)
        .sorted(Comparator.comparing(Entry::at))
        .toList();
  }

  /**
   * All models of a story.
   *
   * @param group the story
   * @param entries the results to be explained
   * @param calibrations the method's calibrations
   */
  static List<OriginModel> of(
      StoryGroup group, List<Entry> entries, List<Calibration> calibrations) {
    OriginModels all = new OriginModels(group, entries, calibrations);
    all.steps();
    all.persons();
    all.materials();
    all.lots();
    all.calibrations();
    all.single();
    return all.models.stream().filter(OriginModel::saysSomething).toList();
  }

  /** Whether {@code 1/σ} and {@code level/σ} correlate too little to be the same. */
  private static boolean levelsTell(List<Entry> results) {
    double amounts = 0;
    double shares = 0;
    double both = 0;
    for (Entry entry : results) {
      double amount = 1 / entry.sigma().orElseThrow();
      double share = entry.centre() * amount;
      amounts += amount * amount;
      shares += share * share;
      both += amount * share;
    }
    return Math.abs(both) <= HintFinder.ALIKE * Math.sqrt(amounts * shares);
  }

  private boolean isHere(Entry entry) {
    return entry.instrument().equals(group.instrument());
  }

  private Predicate<Entry> until(Optional<LocalDateTime> end) {
    return e -> end.isEmpty() || e.at().isBefore(end.get());
  }

  private void steps() {
    int searched = searched(beginnings.size()) + (group.resetBy().isPresent() ? 1 : 0);
    boolean[] during = holds(until(group.endedAt()).and(this::isHere));
    for (LocalDateTime from : beginnings) {
      IntToDoubleFunction step = since(during, from);
      add(Pattern.ADDITIVE, Optional.empty(), Per.AMOUNT, searched, step);
      add(Pattern.PROPORTIONAL, Optional.empty(), Per.SHARE, searched, step);
    }
  }

  private void persons() {
    List<String> people = distinct(own, Entry::person);
    int searched = searched(beginnings.size()) + searched(people.size());
    Predicate<Entry> during = until(group.closedAt());
    for (String person : people) {
      boolean[] theirs = holds(during.and(e -> e.person().filter(person::equals).isPresent()));
      for (LocalDateTime from : beginnings) {
        both(Pattern.ONE_PERSON, Optional.of(person), searched, since(theirs, from));
      }
    }
  }

  private void materials() {
    List<String> materials = distinct(own, e -> Optional.of(e.material()));
    int searched = searched(beginnings.size()) + searched(materials.size());
    Predicate<Entry> during = until(group.closedAt());
    for (String material : materials) {
      boolean[] its = holds(during.and(e -> e.material().equals(material)));
      Optional<String> subject = Optional.of(material);
      for (LocalDateTime from : beginnings) {
        IntToDoubleFunction since = since(its, from);
        add(Pattern.ONE_MATERIAL, subject, Per.AMOUNT, searched, since);
        add(
            Pattern.ONE_MATERIAL,
            subject,
            Per.AMOUNT_A_DAY,
            searched,
            i -> since.applyAsDouble(i) == 0 ? 0 : ControlHistory.days(from, entries.get(i).at()));
      }
    }
  }

  private boolean[] holds(Predicate<Entry> predicate) {
    boolean[] holds = new boolean[entries.size()];
    for (int i = 0; i < holds.length; i++) {
      holds[i] = predicate.test(entries.get(i));
    }
    return holds;
  }

  private IntToDoubleFunction since(boolean[] during, LocalDateTime from) {
    int first = ControlHistory.before(entries, from);
    return i -> i >= first && during[i] ? 1 : 0;
  }

  private void lots() {
    List<String> lots = distinct(own, Entry::lot);
    Predicate<Entry> during = until(group.closedAt());
    for (String lot : lots) {
      Predicate<Entry> its = during.and(e -> e.lot().filter(lot::equals).isPresent());
      both(Pattern.LOT_STEP, lot, searched(lots.size()), where(its));
      both(
          Pattern.LOT_STEP,
          lot,
          searched(lots.size()),
          where(its.and(this::isHere).and(until(takenUp(its)))));
    }
    growing(Pattern.REAGENT_AGE, lots, Entry::lot, Entry::daysOpen, during);
  }

  /** The first calibration after a lot was first used. */
  private Optional<LocalDateTime> takenUp(Predicate<Entry> lot) {
    Optional<LocalDateTime> first =
        entries.stream().filter(this::isHere).filter(lot).map(Entry::at).findFirst();
    return calibrations.stream()
        .filter(c -> c.instrument().equals(group.instrument()))
        .map(Calibration::calibratedAt)
        .filter(at -> first.isPresent() && at.isAfter(first.get()))
        .findFirst();
  }

  private void calibrations() {
    List<String> keys = distinct(own, Entry::calibrationKey);
    for (String key : keys) {
      both(
          Pattern.CALIBRATION_STEP,
          key,
          searched(keys.size()),
          where(e -> isHere(e) && e.calibrationKey().filter(key::equals).isPresent()));
    }
    growing(
        Pattern.CALIBRATION_DRIFT,
        keys,
        Entry::calibrationKey,
        Entry::daysSinceCalibration,
        this::isHere);
  }

  /** A growth within each of several stretches, and the same growth within all of them. */
  private void growing(
      Pattern pattern,
      List<String> keys,
      Function<Entry, Optional<String>> key,
      Function<Entry, OptionalDouble> days,
      Predicate<Entry> among) {
    List<List<String>> choices = new ArrayList<>();
    keys.forEach(k -> choices.add(List.of(k)));
    if (keys.size() > 1) {
      choices.add(keys);
    }
    for (List<String> chosen : choices) {
      both(
          pattern,
          String.join(", ", chosen),
          searched(choices.size()),
          e ->
              among.test(e) && key.apply(e).filter(chosen::contains).isPresent()
                  ? days.apply(e).orElse(0)
                  : 0);
    }
  }

  private void single() {
    List<Entry> farthest = farthest();
    List<Integer> sessions = farthest.stream().map(Entry::session).distinct().toList();
    for (int session : sessions) {
      both(
          Pattern.ONE_SESSION,
          Optional.empty(),
          searched(sessions.size()),
          i -> entries.get(i).session() == session ? 1 : 0);
    }
    for (Entry one : farthest) {
      IntToDoubleFunction it = i -> entries.get(i).place().equals(one.place()) ? 1 : 0;
      add(Pattern.ONE_RESULT, Optional.empty(), Per.AMOUNT, searched(own.size()), it);
    }
  }

  private static int searched(int places) {
    return places > 1 ? 1 : 0;
  }

  private static List<String> distinct(
      Collection<Entry> entries, Function<Entry, Optional<String>> what) {
    return entries.stream().flatMap(e -> what.apply(e).stream()).distinct().toList();
  }

  private static ToDoubleFunction<Entry> where(Predicate<Entry> holds) {
    return e -> holds.test(e) ? 1 : 0;
  }

  private void both(Pattern pattern, String subject, int searched, ToDoubleFunction<Entry> shape) {
    both(pattern, Optional.of(subject), searched, i -> shape.applyAsDouble(entries.get(i)));
  }

  private void both(
      Pattern pattern, Optional<String> subject, int searched, IntToDoubleFunction shape) {
    add(pattern, subject, pattern.grows() ? Per.AMOUNT_A_DAY : Per.AMOUNT, searched, shape);
    if (levelsTell) {
      add(pattern, subject, pattern.grows() ? Per.SHARE_A_DAY : Per.SHARE, searched, shape);
    }
  }

  private void add(
      Pattern pattern, Optional<String> subject, Per per, int searched, IntToDoubleFunction shape) {
    boolean byLevel = per == Per.SHARE || per == Per.SHARE_A_DAY;
    double[] predictor = new double[entries.size()];
    for (int i = 0; i < entries.size(); i++) {
      double at = shape.applyAsDouble(i);
      predictor[i] = at == 0 ? 0 : at * (byLevel ? centres[i] : 1) / deviations[i];
    }
    models.add(
        new OriginModel(pattern, subject, per, searched, predictor, streams.centred(predictor)));
  }
}
