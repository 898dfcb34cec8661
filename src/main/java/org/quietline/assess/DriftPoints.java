package org.quietline.assess;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.bench.Calibration;
import org.quietline.bench.Method;
import org.quietline.bench.Result;
import org.quietline.bench.Role;

/**
 * The control results of one instrument by the windows of its calibrations, and those that lines
 * are drawn through.
 *
 * <p>A line speaks of one material of the window in use: of those with two results or more the one
 * whose level is nearest to the product limit, for there a drift decides; without a limit that of
 * the highest level, where a share is the largest amount; of levels alike that of most results. An
 * earlier window is seen through the lot that most of its results were made with: a lot opened in
 * mid-window steps where the calibration does not, and such a step would look like a slope. In the
 * window in use each lot beside the latest has a step of its own.
 */
final class DriftPoints {
  /** One result hardly says where a material stands. */
  private static final int FEWEST_OF_A_SPEAKER = 2;

  /** Levels that differ by less than this share count as one. */
  private static final double ALIKE = 0.1;

  private final List<Calibration> calibrations;
  private final List<WindowPoint> all;
  private final OptionalDouble limit;
  private final Optional<WindowPoint> speaker;
  private final Optional<String> lot;
  private final List<WindowPoint> used;

  private DriftPoints(List<Calibration> calibrations, List<WindowPoint> all, OptionalDouble limit) {
    this(calibrations, all, limit, Optional.empty());
  }

  private DriftPoints(
      List<Calibration> calibrations,
      List<WindowPoint> all,
      OptionalDouble limit,
      Optional<WindowPoint> chosen) {
    this.calibrations = calibrations;
    this.all = all;
    this.limit = limit;
    this.speaker = chosen.or(this::speaker);
    this.lot =
        current().stream().map(WindowPoint::lot).flatMap(Optional::stream).reduce((a, b) -> b);
    this.used = all.stream().filter(this::isUsed).toList();
  }

  /** The results of one instrument that has at least one calibration. */
  static DriftPoints of(
      Records records, List<StreamFindings> streams, List<Calibration> calibrations) {
    String instrument = calibrations.get(0).instrument();
    Map<String, MaterialReference> references = new HashMap<>();
    streams.stream()
        .filter(s -> s.instrument().equals(instrument))
        .forEach(
            s -> MaterialReference.of(s).ifPresent(r -> references.put(s.material().key(), r)));
    List<WindowPoint> points = new ArrayList<>();
    for (Result result : records.of(Role.CONTROL)) {
      MaterialReference reference = references.get(result.sample());
      Optional<Calibration> calibration = records.bench().calibrationOf(result);
      if (reference == null
          || !result.instrument().equals(instrument)
          || !records.counts(result)
          || calibration.isEmpty()) {
        continue;
      }
      points.add(
          new WindowPoint(
              result,
              calibrations.indexOf(calibration.get()),
              days(calibration.get().calibratedAt(), result.takenAt()),
              records.value(result).getAsDouble(),
              reference));
    }
    return new DriftPoints(calibrations, points, limit(records.method()));
  }

  private static OptionalDouble limit(Method method) {
    return method
        .limits()
        .flatMap(l -> l.upper().or(l::lower))
        .map(l -> OptionalDouble.of(l.doubleValue()))
        .orElse(OptionalDouble.empty());
  }

  static double days(LocalDateTime from, LocalDateTime to) {
    return Duration.between(from, to).toMinutes() / 1440.0;
  }

  /**
   * The same without some results, as if they had never been taken; but the line speaks of the
   * material that it spoke of with them.
   */
  DriftPoints without(List<WindowPoint> hidden) {
    return new DriftPoints(
        calibrations, all.stream().filter(p -> !hidden.contains(p)).toList(), limit, speaker);
  }

  /** The same as it stood when an earlier window was the one in use. */
  DriftPoints seenFrom(int window) {
    List<Calibration> turned = new ArrayList<>(calibrations);
    turned.add(turned.remove(window));
    List<WindowPoint> points = new ArrayList<>();
    for (WindowPoint p : all) {
      int place = p.window() == window ? calibrations.size() - 1 : p.window();
      points.add(
          new WindowPoint(
              p.result(),
              p.window() > window ? p.window() - 1 : place,
              p.day(),
              p.value(),
              p.reference()));
    }
    points.sort(Comparator.comparingInt(WindowPoint::window));
    return new DriftPoints(turned, points, limit);
  }

  private Optional<WindowPoint> speaker() {
    List<WindowPoint> here = current();
    List<WindowPoint> among = here.isEmpty() ? all : here;
    Map<String, Integer> counts = new LinkedHashMap<>();
    among.forEach(p -> counts.merge(p.material(), 1, Integer::sum));
    int most = counts.values().stream().mapToInt(Integer::intValue).max().orElse(0);
    List<WindowPoint> known =
        among.stream()
            .filter(p -> countOf(counts, p) >= Math.min(FEWEST_OF_A_SPEAKER, most))
            .toList();
    Optional<WindowPoint> decisive =
        known.stream().min(Comparator.comparingDouble(this::fromLimit));
    List<WindowPoint> alike =
        known.stream().filter(p -> isAlike(level(p), level(decisive.orElseThrow()))).toList();
    int mostAlike = alike.stream().mapToInt(p -> countOf(counts, p)).max().orElse(0);
    return alike.stream()
        .filter(p -> countOf(counts, p) == mostAlike)
        .reduce((earlier, later) -> later);
  }

  private static int countOf(Map<String, Integer> counts, WindowPoint point) {
    return counts.getOrDefault(point.material(), 0);
  }

  private static double level(WindowPoint point) {
    return point.reference().value();
  }

  private double fromLimit(WindowPoint point) {
    return limit.isPresent()
        ? Math.abs(level(point) - limit.getAsDouble())
        : -Math.abs(level(point));
  }

  private static boolean isAlike(double level, double other) {
    return Math.abs(level - other) <= ALIKE * Math.abs(other);
  }

  private boolean isUsed(WindowPoint point) {
    return isCurrent(point) || point.mayBeOf(mostOf(point.window()));
  }

  /** The lot of most results of a window; of several as many, the one that came first. */
  private Optional<String> mostOf(int window) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    all.stream()
        .filter(p -> p.window() == window)
        .flatMap(p -> p.lot().stream())
        .forEach(l -> counts.merge(l, 1, Integer::sum));
    int most = counts.values().stream().mapToInt(Integer::intValue).max().orElse(0);
    return counts.entrySet().stream()
        .filter(e -> e.getValue() == most)
        .map(Map.Entry::getKey)
        .findFirst();
  }

  boolean isCurrent(WindowPoint point) {
    return point.window() == currentWindow();
  }

  int currentWindow() {
    return calibrations.size() - 1;
  }

  Calibration calibration() {
    return calibrations.get(currentWindow());
  }

  List<Calibration> calibrations() {
    return calibrations;
  }

  /** The results of the window in use, in time order. */
  List<WindowPoint> current() {
    return of(currentWindow());
  }

  /** The results of a window, in time order. */
  List<WindowPoint> of(int window) {
    return all.stream().filter(p -> p.window() == window).toList();
  }

  /** All results of the instrument's windows. */
  List<WindowPoint> all() {
    return all;
  }

  /** The results that lines are drawn through. */
  List<WindowPoint> used() {
    return used;
  }

  /** How many results are left out for their lot. */
  int leftOut() {
    return all.size() - used.size();
  }

  /** What the material that the line speaks of is held against. */
  Optional<MaterialReference> reference() {
    return speaker.map(WindowPoint::reference);
  }

  /** The material that the line speaks of. */
  Optional<String> material() {
    return speaker.map(WindowPoint::material);
  }

  /** The lot of the latest control result in the window in use, if recorded. */
  Optional<String> lot() {
    return lot;
  }

  /** The longest that any window was followed, in days. */
  double followedTo() {
    return used.stream().mapToDouble(WindowPoint::day).max().orElse(0);
  }
}
