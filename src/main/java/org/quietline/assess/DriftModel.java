package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.quietline.assess.Drift.Effect;
import org.quietline.stats.distribution.StudentMixture;
import org.quietline.stats.mixed.GroupedPoints;
import org.quietline.stats.mixed.LineOutlook;

/**
 * Lines through the control results of all windows of an instrument, with steps for other materials
 * and, in the window in use, for other lots.
 */
final class DriftModel {
  /** A lot's or a material's step takes one result; from two on they say something of a slope. */
  private static final int FEWEST_OF_A_STEP = 2;

  /** The fewest steps from day to day, within windows, that a slope is drawn from. */
  private static final int FEWEST_STEPS = 2;

  /** The span of a method whose calibrations have no validity, in days. */
  private static final double USUAL_SPAN = 30;

  private final DriftPoints points;
  private final LevelForm form;
  private final List<WindowPoint> used;
  private final List<Step> steps;
  private final List<Step> confounded;
  private final List<ToDoubleFunction<WindowPoint>> extra;
  private final LineOutlook outlook;

  private DriftModel(
      DriftPoints points,
      LevelForm form,
      List<WindowPoint> used,
      List<Step> steps,
      List<Step> confounded,
      List<ToDoubleFunction<WindowPoint>> extra,
      LineOutlook outlook) {
    this.points = points;
    this.form = form;
    this.used = used;
    this.steps = steps;
    this.confounded = confounded;
    this.extra = extra;
    this.outlook = outlook;
  }

  /** A change that results on its side share. */
  private record Step(Effect.Of of, String key, Predicate<WindowPoint> side) {
    double[] column(List<WindowPoint> used) {
      return used.stream().mapToDouble(p -> side.test(p) ? 1 : 0).toArray();
    }
  }

  /**
   * What lines need to know beside the results.
   *
   * @param validDays the validity, in days, or zero if there is none
   * @param rounding the least deviation that the results' last digit leaves
   */
  record Scale(double validDays, double rounding) {
    double span() {
      return validDays > 0 ? validDays : USUAL_SPAN;
    }
  }

  /** Lines, if the results carry them. */
  static Answer<DriftModel> of(DriftPoints points, LevelForm form, Scale scale) {
    return of(points, form, scale, points.used(), List.of());
  }

  /** Lines beside something else that may have moved the results, through those it is known of. */
  static Answer<DriftModel> beside(
      DriftPoints points,
      LevelForm form,
      Scale scale,
      List<WindowPoint> known,
      ToDoubleFunction<WindowPoint> column) {
    return of(points, form, scale, known, List.of(column))
        .value()
        .filter(m -> !m.extra.isEmpty())
        .map(Answer::of)
        .orElseGet(() -> Answer.cannotSay("it changed together with something else"));
  }

  private static Answer<DriftModel> of(
      DriftPoints points,
      LevelForm form,
      Scale scale,
      List<WindowPoint> among,
      List<ToDoubleFunction<WindowPoint>> extra) {
    List<WindowPoint> used = new ArrayList<>(among);
    List<Step> steps = new ArrayList<>(stepsOf(points, used));
    List<Step> confounded = new ArrayList<>();
    OptionalInt twin = confounded(used, steps, List.of());
    while (twin.isPresent()) {
      Step step = steps.remove(twin.getAsInt());
      confounded.add(step);
      used.removeIf(step.side());
      steps.removeIf(s -> used.stream().noneMatch(s.side()));
      twin = confounded(used, steps, List.of());
    }
    if (used.stream().noneMatch(points::isCurrent)) {
      return Answer.cannotSay("needs a control result in this window");
    }
    List<ToDoubleFunction<WindowPoint>> told =
        confounded(used, steps, extra).isPresent() ? List.of() : extra;
    int missing = missing(used, steps.size() + told.size());
    if (missing > 0) {
      return Answer.cannotSay(
          "needs "
              + missing
              + " more control result"
              + (missing == 1 ? "" : "s")
              + " on other days of a window");
    }
    LineOutlook outlook = outlook(points, form, used, columns(used, steps, told), scale);
    return Answer.of(new DriftModel(points, form, used, steps, confounded, told, outlook));
  }

  private static List<Step> stepsOf(DriftPoints points, List<WindowPoint> used) {
    List<Step> steps = new ArrayList<>();
    String material = points.material().orElse("");
    for (String other : distinct(used.stream().map(WindowPoint::material).toList(), material)) {
      steps.add(new Step(Effect.Of.MATERIAL, other, p -> p.material().equals(other)));
    }
    List<String> lots =
        used.stream().filter(points::isCurrent).flatMap(p -> p.lot().stream()).toList();
    for (String other : distinct(lots, points.lot().orElse(""))) {
      Predicate<WindowPoint> side = p -> points.isCurrent(p) && p.lot().equals(Optional.of(other));
      if (used.stream().filter(side).count() < FEWEST_OF_A_STEP) {
        used.removeIf(side);
      } else {
        steps.add(new Step(Effect.Of.LOT, other, side));
      }
    }
    return steps;
  }

  private static List<String> distinct(List<String> keys, String without) {
    return keys.stream().distinct().filter(k -> !k.equals(without)).toList();
  }

  private static OptionalInt confounded(
      List<WindowPoint> used, List<Step> steps, List<ToDoubleFunction<WindowPoint>> extra) {
    double[] days = days(used);
    boolean spread = used.stream().mapToDouble(WindowPoint::day).distinct().count() > 1;
    return spread && steps.size() + extra.size() > 0
        ? GroupedPoints.confounded(days, columns(used, steps, extra))
        : OptionalInt.empty();
  }

  /** How many results on further days a slope still needs. */
  private static int missing(List<WindowPoint> used, int steps) {
    long windows = used.stream().mapToInt(WindowPoint::window).distinct().count();
    long moments = used.stream().map(p -> p.window() + " " + p.day()).distinct().count();
    return (int) Math.max(0, FEWEST_STEPS + steps - (moments - windows));
  }

  private static double[] days(List<WindowPoint> used) {
    return used.stream().mapToDouble(WindowPoint::day).toArray();
  }

  private static double[][] columns(
      List<WindowPoint> used, List<Step> steps, List<ToDoubleFunction<WindowPoint>> extra) {
    return Stream.concat(
            steps.stream().map(s -> s.column(used)),
            extra.stream().map(c -> used.stream().mapToDouble(c).toArray()))
        .toArray(double[][]::new);
  }

  private static LineOutlook outlook(
      DriftPoints points, LevelForm form, List<WindowPoint> used, double[][] columns, Scale scale) {
    MaterialReference reference = points.reference().orElseThrow();
    double[] deviations = used.stream().mapToDouble(p -> form.deviation(p, reference)).toArray();
    double[] weights = used.stream().mapToDouble(p -> form.weight(p, reference)).toArray();
    int[] windows = used.stream().mapToInt(WindowPoint::window).toArray();
    GroupedPoints grouped =
        GroupedPoints.weighted(weights, days(used), deviations, windows, columns);
    return LineOutlook.of(grouped, scale.span(), scale.rounding())
        .withSharedUncertainty(reference.uncertainty().value().orElse(0.0));
  }

  LineOutlook outlook() {
    return outlook;
  }

  /** The scatter of a result about its line, in its own unit and at its own level. */
  double scatterOf(WindowPoint point) {
    return outlook.residualDeviation() * form.scatter(point, points.reference().orElseThrow());
  }

  DriftPoints points() {
    return points;
  }

  LevelForm form() {
    return form;
  }

  /** The results that the lines rest on. */
  List<WindowPoint> used() {
    return used;
  }

  int windows() {
    return (int) used.stream().mapToInt(WindowPoint::window).distinct().count();
  }

  LineOutlook.GroupLine line() {
    return outlook.line(points.currentWindow());
  }

  StudentMixture slope() {
    return outlook.groupSlope(points.currentWindow());
  }

  /** Zeros for the steps: the material and lot that the line speaks of. */
  double[] here() {
    return new double[steps.size() + extra.size()];
  }

  /** What the thing beside the lines does, for one unit of it. */
  StudentMixture beside() {
    return outlook.regressor(steps.size());
  }

  /**
   * How well the lines bear out the results: the logarithm of their density in the unit in which
   * they were measured, for comparing forms. Steps of materials count in their own unit, too.
   */
  double logEvidence() {
    MaterialReference reference = points.reference().orElseThrow();
    double log = outlook.logEvidence();
    for (WindowPoint p : used) {
      log -= Math.log(form.scale(p, reference));
    }
    for (Step step : steps) {
      if (step.of() == Effect.Of.MATERIAL) {
        log +=
            Math.log(
                form.scale(used.stream().filter(step.side()).findFirst().orElseThrow(), reference));
      }
    }
    return log;
  }

  List<String> confoundedKeys() {
    return confounded.stream().map(Step::key).toList();
  }

  List<Effect> effects() {
    List<Effect> effects = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      Step step = steps.get(i);
      StudentMixture difference = outlook.regressor(i);
      effects.add(
          new Effect(
              step.of(),
              step.key(),
              step.of() == Effect.Of.MATERIAL
                  ? points.material().orElseThrow()
                  : points.lot().orElse(""),
              difference.mean(),
              difference.interval(0.95)));
    }
    return effects;
  }
}
