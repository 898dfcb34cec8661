package org.quietline.assess;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.Calibration;
import org.quietline.bench.Material;
import org.quietline.bench.Origin;
import org.quietline.bench.ReagentLot;
import org.quietline.bench.Result;
import org.quietline.bench.Role;

/**
 * The control results of a method over all instruments and materials, in time order, each with how
 * far it is from where it should be and the circumstances that could explain it. The only place
 * where stories read {@link StreamFindings}.
 */
final class ControlHistory {
  /** How many deviations from the centre action limits lie. */
  private static final double ACTION_REACH = 3;

  private final List<Entry> entries;
  private final Set<ControlPlace> signalled;
  private final Map<Origin, Integer> sessions;
  private final Map<ControlPlace, Entry> byPlace = new HashMap<>();
  private final Map<String, List<Entry>> charted = new HashMap<>();
  private final Map<String, List<Entry>> counted = new HashMap<>();
  private final Map<List<String>, List<Entry>> streams = new HashMap<>();
  private final Map<List<String>, Integer> numbers;

  private ControlHistory(
      List<Entry> entries,
      Set<ControlPlace> signalled,
      Map<Origin, Integer> sessions,
      Map<List<String>, Integer> numbers) {
    this.entries = List.copyOf(entries);
    this.signalled = Set.copyOf(signalled);
    this.sessions = Map.copyOf(sessions);
    this.numbers = Map.copyOf(numbers);
    for (Entry entry : entries) {
      byPlace.putIfAbsent(entry.place(), entry);
      if (entry.isCharted()) {
        add(charted, entry.instrument(), entry);
        if (!entry.excluded()) {
          add(counted, entry.instrument(), entry);
          add(streams, List.of(entry.instrument(), entry.material()), entry);
        }
      }
    }
  }

  private static <K> void add(Map<K, List<Entry>> lists, K key, Entry entry) {
    lists.computeIfAbsent(key, k -> new ArrayList<>()).add(entry);
  }

  /**
   * One control result.
   *
   * @param result the result
   * @param place as signals name it
   * @param value its value
   * @param centre the centre of the settled limits that judged it, else the baseline's; where there
   *     is no baseline, that of the limits that judged it, or the assigned value
   * @param sigma the deviation of its stream; without a baseline a third of how far the action
   *     limits that judged it reach; absent without limits
   * @param baselineResults how many results the baseline has; 0 without
   * @param inBaseline whether it is one of them
   * @param calibration the calibration it was made under, if known
   * @param lot the reagent lot it names
   * @param daysOpen days since that lot was opened, if known
   * @param session which sitting it belongs to, the same number for results of one
   * @param excluded whether an action took it out
   */
  record Entry(
      Result result,
      ControlPlace place,
      double value,
      double centre,
      OptionalDouble sigma,
      int baselineResults,
      boolean inBaseline,
      Optional<Calibration> calibration,
      Optional<String> lot,
      OptionalDouble daysOpen,
      int session,
      boolean excluded) {

    LocalDateTime at() {
      return place.at();
    }

    String instrument() {
      return place.instrument();
    }

    String material() {
      return place.material();
    }

    Optional<String> person() {
      return result.operator();
    }

    Optional<String> calibrationKey() {
      return calibration.map(Calibration::key);
    }

    /** Days since its calibration, if known. */
    OptionalDouble daysSinceCalibration() {
      return calibration
          .map(c -> OptionalDouble.of(days(c.calibratedAt(), at())))
          .orElse(OptionalDouble.empty());
    }

    /** How far it is from the centre, in the method's unit. */
    double difference() {
      return value - centre;
    }

    boolean isCharted() {
      return sigma.isPresent();
    }

    /** How far it is from the centre, in deviations of its stream. */
    double deviation() {
      return difference() / sigma.orElseThrow();
    }
  }

  static double days(LocalDateTime from, LocalDateTime to) {
    return Duration.between(from, to).toMinutes() / (24.0 * 60);
  }

  /** Reads the streams of a method. */
  static ControlHistory of(Records records, List<StreamFindings> streams) {
    Map<Origin, Result> results = new HashMap<>();
    records.of(Role.CONTROL).forEach(r -> results.put(r.origin(), r));
    Map<Origin, Integer> sessions = sessions(records);
    List<Entry> entries = new ArrayList<>();
    Set<ControlPlace> signalled = new HashSet<>();
    Map<List<String>, Integer> numbers = new HashMap<>();
    for (StreamFindings stream : streams) {
      numbers.put(List.of(stream.instrument(), stream.material().key()), stream.counted());
      stream.signals().forEach(s -> signalled.add(ControlPlace.of(s.id())));
      for (Point point : stream.points()) {
        Origin origin = new Origin(point.file(), point.line());
        Optional.ofNullable(results.get(origin))
            .flatMap(
                r ->
                    entry(
                        records,
                        stream,
                        point,
                        r,
                        sessions.getOrDefault(origin, -1 - entries.size())))
            .ifPresent(entries::add);
      }
    }
    entries.sort(Comparator.comparing(Entry::at));
    return new ControlHistory(entries, signalled, sessions, numbers);
  }

  private static Optional<Entry> entry(
      Records records, StreamFindings stream, Point point, Result result, int session) {
    Material material = stream.material();
    Optional<Baseline> baseline = stream.baseline().value();
    Optional<InForce> former = former(stream, point);
    Optional<Double> centre =
        former
            .map(InForce::centre)
            .or(() -> baseline.map(Baseline::centre))
            .or(() -> point.judgedBy().map(InForce::centre))
            .or(() -> material.assignedValue().map(java.math.BigDecimal::doubleValue));
    if (point.value().isEmpty() || centre.isEmpty()) {
      return Optional.empty();
    }
    OptionalDouble daysOpen =
        records
            .bench()
            .reagentLotOf(result)
            .flatMap(ReagentLot::openedOn)
            .map(opened -> OptionalDouble.of(days(opened.atStartOfDay(), point.at())))
            .orElse(OptionalDouble.empty());
    return Optional.of(
        new Entry(
            result,
            new ControlPlace(stream.instrument(), material.key(), point.at()),
            point.value().getAsDouble(),
            centre.get(),
            former.isPresent()
                ? OptionalDouble.of(former.get().reach() / ACTION_REACH)
                : sigma(baseline, point),
            former.map(InForce::results).or(() -> baseline.map(Baseline::results)).orElse(0),
            point.inBaseline(),
            records.bench().calibrationOf(result),
            result.reagentLot(),
            daysOpen,
            session,
            point.excluded()));
  }

  /**
   * Settled limits that were in force before the present ones and judged a result; for the first
   * results, which were judged by what was known before, those that came first.
   */
  private static Optional<InForce> former(StreamFindings stream, Point point) {
    Optional<Baseline> baseline = stream.baseline().value();
    Optional<InForce> settled = point.judgedBy().filter(InForce::isSettled);
    return settled
        .or(
            () ->
                stream.points().stream()
                    .flatMap(p -> p.judgedBy().filter(InForce::isSettled).stream())
                    .findFirst())
        .filter(l -> baseline.isPresent() && l.centre() != baseline.get().centre());
  }

  private static OptionalDouble sigma(Optional<Baseline> baseline, Point point) {
    return baseline
        .map(Baseline::deviation)
        .or(() -> point.judgedBy().map(limits -> limits.reach() / ACTION_REACH))
        .filter(sigma -> sigma > 0)
        .map(OptionalDouble::of)
        .orElse(OptionalDouble.empty());
  }

  private static Map<Origin, Integer> sessions(Records records) {
    List<Logged> logged =
        records.results().stream()
            .flatMap(r -> Logged.of(r, records.reported(r), true).stream())
            .toList();
    Map<Origin, Integer> numbers = new HashMap<>();
    int number = 0;
    for (List<Logged> session : Sessions.of(logged)) {
      for (Logged one : session) {
        numbers.put(one.result().origin(), number);
      }
      number++;
    }
    return numbers;
  }

  /** The results that are a number, in time order. */
  List<Entry> entries() {
    return entries;
  }

  /** The results of an instrument that have limits to hold them against, in time order. */
  List<Entry> charted(String instrument) {
    return charted.getOrDefault(instrument, List.of());
  }

  /** Those of them that no action took out. */
  List<Entry> counted(String instrument) {
    return counted.getOrDefault(instrument, List.of());
  }

  /** Those of them that are of one material. */
  List<Entry> counted(String instrument, String material) {
    return streams.getOrDefault(List.of(instrument, material), List.of());
  }

  /** How many results of a stream count, with limits or without. */
  int numbers(String instrument, String material) {
    return numbers.getOrDefault(List.of(instrument, material), 0);
  }

  /** How many results in time order were taken before a moment. */
  static int before(List<Entry> inTime, LocalDateTime moment) {
    int low = 0;
    int high = inTime.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (inTime.get(middle).at().isBefore(moment)) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** How many results in time order were taken up to and at a moment. */
  static int upTo(List<Entry> inTime, LocalDateTime moment) {
    int next = before(inTime, moment);
    while (next < inTime.size() && inTime.get(next).at().equals(moment)) {
      next++;
    }
    return next;
  }

  /** The entry a signal is on, if it is on a control result that is a number. */
  Optional<Entry> at(ControlPlace place) {
    return Optional.ofNullable(byPlace.get(place));
  }

  /** Whether a result belongs to the sitting of a control result. */
  boolean isInSession(Result result, ControlPlace control) {
    Optional<Integer> session = Optional.ofNullable(sessions.get(result.origin()));
    return session.isPresent() && session.equals(at(control).map(Entry::session));
  }

  /** Whether a result broke no rule and counts. */
  boolean isGood(Entry entry) {
    return !entry.excluded() && !signalled.contains(entry.place());
  }
}
