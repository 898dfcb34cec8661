package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.quietline.assess.Explanation.Effect;
import org.quietline.assess.Explanation.Kind;
import org.quietline.bench.ReagentLot;
import org.quietline.stats.distribution.StudentMixture;

/** What else could have moved the control, and does it? */
final class Explanations {
  /** Two clocks that run this nearly together cannot be told apart. */
  private static final double TOGETHER = 0.95;

  /** The fewest results on either side of a difference. */
  private static final int FEWEST = 3;

  private final Records records;
  private final DriftModel model;
  private final DriftModel.Scale scale;
  private final List<WindowPoint> used;

  Explanations(Records records, DriftModel model, DriftModel.Scale scale) {
    this.records = records;
    this.model = model;
    this.scale = scale;
    this.used = model.used();
  }

  /** Each explanation that applies, tried one at a time beside the line. */
  List<Explanation> ask() {
    List<Explanation> found = new ArrayList<>();
    found.add(reagentAge());
    found.add(materialAge());
    found.add(secondMaterial());
    found.add(person());
    found.add(temperature());
    return found;
  }

  private Explanation reagentAge() {
    return clock(Kind.REAGENT_AGE, this::daysOpen, "the opening day of its reagent lot");
  }

  private OptionalDouble daysOpen(WindowPoint point) {
    return records
        .bench()
        .reagentLotOf(point.result())
        .flatMap(ReagentLot::openedOn)
        .map(day -> OptionalDouble.of(DriftPoints.days(day.atStartOfDay(), at(point))))
        .orElse(OptionalDouble.empty());
  }

  private static LocalDateTime at(WindowPoint point) {
    return point.result().takenAt();
  }

  /**
   * Counted from the first result, so that it runs on over recalibrations: it is told from the
   * calibration by the heights of the windows.
   */
  private Explanation materialAge() {
    String material = model.points().material().orElseThrow();
    LocalDateTime first =
        used.stream()
            .filter(p -> p.material().equals(material))
            .map(Explanations::at)
            .min(Comparator.naturalOrder())
            .orElseThrow();
    if (model.windows() < 3) {
      return cannot(
          Kind.MATERIAL_AGE,
          "needs control results in 3 windows, has "
              + model.windows()
              + ": in fewer, an ageing material looks like the calibration");
    }
    List<WindowPoint> known = used.stream().filter(p -> p.material().equals(material)).toList();
    return tried(Kind.MATERIAL_AGE, Optional.empty(), known, p -> DriftPoints.days(first, at(p)));
  }

  /** Days that run beside the days since calibration. */
  private Explanation clock(
      Kind kind, Function<WindowPoint, OptionalDouble> clock, String whatIsNeeded) {
    List<WindowPoint> known = used.stream().filter(p -> clock.apply(p).isPresent()).toList();
    long current = known.stream().filter(model.points()::isCurrent).count();
    if (current < FEWEST) {
      return cannot(
          kind,
          "needs "
              + FEWEST
              + " control results of this window with "
              + whatIsNeeded
              + ", has "
              + current);
    }
    double together = together(known, clock);
    if (Math.abs(together) > TOGETHER) {
      return cannot(
          kind,
          "its age and the days since the calibration run together (correlation "
              + String.format(java.util.Locale.ROOT, "%.2f", together)
              + "): open the next one in mid-window");
    }
    return tried(kind, Optional.empty(), known, p -> clock.apply(p).getAsDouble());
  }

  /** How nearly a clock runs with the days since the calibration, within windows. */
  private static double together(
      List<WindowPoint> known, Function<WindowPoint, OptionalDouble> clock) {
    double[] days = within(known, WindowPoint::day);
    double[] ages = within(known, p -> clock.apply(p).getAsDouble());
    double products = 0;
    double squaresOfDays = 0;
    double squaresOfAges = 0;
    for (int i = 0; i < days.length; i++) {
      products += days[i] * ages[i];
      squaresOfDays += days[i] * days[i];
      squaresOfAges += ages[i] * ages[i];
    }
    boolean stands = squaresOfDays == 0 || squaresOfAges == 0;
    return stands ? 1 : products / Math.sqrt(squaresOfDays * squaresOfAges);
  }

  private static double[] within(List<WindowPoint> points, ToDoubleFunction<WindowPoint> of) {
    Map<Integer, double[]> sums = new LinkedHashMap<>();
    for (WindowPoint p : points) {
      double[] sum = sums.computeIfAbsent(p.window(), k -> new double[2]);
      sum[0] += of.applyAsDouble(p);
      sum[1]++;
    }
    return points.stream()
        .mapToDouble(
            p -> {
              double[] sum = sums.computeIfAbsent(p.window(), k -> new double[] {0, 1});
              return of.applyAsDouble(p) - sum[0] / sum[1];
            })
        .toArray();
  }

  /** A second material that is run beside the first: does it drift otherwise? */
  private Explanation secondMaterial() {
    String material = model.points().material().orElseThrow();
    Optional<String> other =
        mostFrequent(
            used.stream()
                .filter(model.points()::isCurrent)
                .map(WindowPoint::material)
                .filter(m -> !m.equals(material))
                .toList());
    if (other.isEmpty()) {
      return cannot(
          Kind.SECOND_MATERIAL,
          "needs a second control material in this window: with one, an ageing material looks like"
              + " the calibration");
    }
    return tried(
        Kind.SECOND_MATERIAL, other, used, p -> p.material().equals(other.get()) ? p.day() : 0);
  }

  private static Optional<String> mostFrequent(List<String> keys) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    keys.forEach(k -> counts.merge(k, 1, Integer::sum));
    return counts.entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .filter(e -> e.getValue() >= FEWEST)
        .map(Map.Entry::getKey);
  }

  /** The person with most results in the window in use against all others. */
  private Explanation person() {
    List<WindowPoint> known = used.stream().filter(p -> operator(p).isPresent()).toList();
    Optional<String> most =
        mostFrequent(
            known.stream()
                .filter(model.points()::isCurrent)
                .flatMap(p -> operator(p).stream())
                .toList());
    long others = known.stream().filter(p -> !operator(p).equals(most)).count();
    if (most.isEmpty() || others < FEWEST) {
      return cannot(
          Kind.PERSON,
          "needs "
              + FEWEST
              + " control results by one person in this window and as many by others anywhere");
    }
    return tried(Kind.PERSON, most, known, p -> operator(p).equals(most) ? 1 : 0);
  }

  private static Optional<String> operator(WindowPoint point) {
    return point.result().operator();
  }

  private Explanation temperature() {
    List<WindowPoint> known =
        used.stream().filter(p -> p.result().temperatureC().isPresent()).toList();
    long current = known.stream().filter(model.points()::isCurrent).count();
    if (current < FEWEST) {
      return cannot(
          Kind.TEMPERATURE,
          "needs " + FEWEST + " control results of this window with a temperature, has " + current);
    }
    return tried(
        Kind.TEMPERATURE,
        Optional.empty(),
        known,
        p -> p.result().temperatureC().orElseThrow().doubleValue());
  }

  private static Explanation cannot(Kind kind, String why) {
    return new Explanation(kind, Optional.empty(), Answer.cannotSay(why));
  }

  private Explanation tried(
      Kind kind,
      Optional<String> subject,
      List<WindowPoint> known,
      ToDoubleFunction<WindowPoint> column) {
    Answer<Effect> effect =
        DriftModel.beside(model.points(), model.form(), scale, known, column)
            .map(
                m -> {
                  StudentMixture size = m.beside();
                  StudentMixture slope = m.slope();
                  return new Effect(
                      size.mean(),
                      size.interval(0.95),
                      slope.mean(),
                      slope.interval(0.95),
                      known.size());
                });
    return new Explanation(kind, subject, effect);
  }
}
