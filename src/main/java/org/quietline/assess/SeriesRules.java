package org.quietline.assess;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.quietline.assess.InForce.Origin;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.Rule;
import org.quietline.stats.control.ChartedSeries;
import org.quietline.stats.control.CumulativeSum;
import org.quietline.stats.control.RunRule;
import org.quietline.stats.control.RunRules;
import org.quietline.stats.sample.MovingRange;

/**
 * The rules about several results in a row, on results judged by settled limits. None reaches
 * across a restart; results that do not count are not there.
 */
final class SeriesRules {
  private final List<Point> counted;
  private final double[] deviations;
  private final boolean[] restarts;
  private final int[] leftOut;

  /**
   * A rule that was broken.
   *
   * @param rule which
   * @param at the place of the result that broke it, among those that count
   * @param points the places of the results that make the pattern
   * @param value the number that broke it: the result, the sum in deviations, the moving range
   * @param limit the limit it broke; the centre for a run, the result before for a rise or fall
   * @param size how far the pattern's results lie from the centre on average; empty for a range
   */
  record Broken(
      Rule rule, int at, List<Integer> points, double value, double limit, OptionalDouble size) {}

  private SeriesRules(List<Point> counted) {
    this.counted = counted;
    this.deviations = new double[counted.size()];
    this.restarts = new boolean[counted.size()];
    this.leftOut =
        IntStream.range(0, counted.size()).filter(i -> !settled(counted.get(i))).toArray();
    for (int i = 0; i < deviations.length; i++) {
      restarts[i] = counted.get(i).restarted() || (i > 0 && !settled(counted.get(i - 1)));
      deviations[i] = settled(counted.get(i)) ? deviation(counted.get(i)) : 0;
    }
  }

  static List<Broken> of(List<Point> counted) {
    SeriesRules rules = new SeriesRules(counted);
    List<Broken> broken = new ArrayList<>();
    rules.patterns(broken);
    rules.sums(broken);
    rules.movingRanges(broken);
    return broken;
  }

  private static boolean settled(Point point) {
    return point
        .judgedBy()
        .filter(l -> l.origin() == Origin.FIRST_RESULTS || l.origin() == Origin.CHOSEN)
        .filter(l -> l.reach() > 0)
        .isPresent();
  }

  /** In thirds of the way to the action limit. */
  private static double deviation(Point point) {
    InForce limits = point.judgedBy().orElseThrow();
    return off(point) / (limits.reach() / StreamRules.ACTION);
  }

  private static double off(Point point) {
    return point.value().getAsDouble() - point.judgedBy().orElseThrow().centre();
  }

  private void patterns(List<Broken> broken) {
    Map<RunRule, Rule> known = new LinkedHashMap<>();
    for (Rule rule : Rule.values()) {
      StreamRules.pattern(rule).ifPresent(pattern -> known.put(pattern, rule));
    }
    int[] starts = IntStream.range(0, restarts.length).filter(i -> restarts[i]).toArray();
    ChartedSeries series = ChartedSeries.of(deviations).startingAnewAt(starts).leavingOut(leftOut);
    for (RunRules.Met met : new RunRules(List.copyOf(known.keySet())).find(series)) {
      Point last = counted.get(met.at());
      broken.add(
          new Broken(
              Optional.ofNullable(known.get(met.rule())).orElseThrow(),
              met.at(),
              met.points(),
              last.value().getAsDouble(),
              limit(met, last),
              meanOff(met.points())));
    }
  }

  private double limit(RunRules.Met met, Point last) {
    InForce limits = last.judgedBy().orElseThrow();
    if (met.rule() instanceof RunRule.Beyond beyond) {
      double zone = beyond.zone() * limits.reach() / StreamRules.ACTION;
      return limits.centre() + Math.copySign(zone, off(last));
    }
    return met.rule() instanceof RunRule.Steady
        ? counted.get(met.at() - 1).value().getAsDouble()
        : limits.centre();
  }

  private OptionalDouble meanOff(List<Integer> points) {
    return points.stream().mapToDouble(p -> off(counted.get(p))).average();
  }

  private void sums(List<Broken> broken) {
    List<CumulativeSum.Point> sums = StreamRules.sums().trace(deviations, restarts);
    for (int i = 0; i < sums.size(); i++) {
      CumulativeSum.Point point = sums.get(i);
      if (point.signal() && settled(counted.get(i))) {
        boolean up = point.high().beyond();
        CumulativeSum.Arm arm = up ? point.high() : point.low();
        List<Integer> since = IntStream.rangeClosed(i - arm.count() + 1, i).boxed().toList();
        broken.add(
            new Broken(
                Rule.CUMULATIVE_SUM_BEYOND_LIMIT,
                i,
                since,
                up ? arm.sum() : -arm.sum(),
                up ? StreamRules.DECISION : -StreamRules.DECISION,
                meanOff(since)));
      }
    }
  }

  private void movingRanges(List<Broken> broken) {
    for (int i = 1; i < deviations.length; i++) {
      if (!restarts[i] && settled(counted.get(i)) && settled(counted.get(i - 1))) {
        double third = counted.get(i).judgedBy().orElseThrow().reach() / StreamRules.ACTION;
        double range =
            Math.abs(
                counted.get(i).value().getAsDouble() - counted.get(i - 1).value().getAsDouble());
        double upper = MovingRange.D4 * MovingRange.D2 * third;
        if (range > upper) {
          broken.add(
              new Broken(
                  Rule.MOVING_RANGE_BEYOND_LIMIT,
                  i,
                  List.of(i - 1, i),
                  range,
                  upper,
                  OptionalDouble.empty()));
        }
      }
    }
  }
}
