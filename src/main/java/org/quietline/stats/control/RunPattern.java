package org.quietline.stats.control;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Whether a window of values, the latest last, meets a rule, and by which of its places.
 *
 * <p>The window holds as many values as the rule spans, or all there are since the start. Rules of
 * so many in a row need a full window; rules of some among several need only the some.
 */
final class RunPattern {
  private static final List<Integer> NOT_MET = List.of();

  private RunPattern() {}

  /** The places in the window that make the pattern, ascending; none where the rule is not met. */
  static List<Integer> of(RunRule rule, double[] window) {
    if (rule instanceof RunRule.Beyond beyond) {
      double side = Math.signum(window[window.length - 1]);
      return some(beyond.count(), window, u -> side * u > beyond.zone());
    }
    if (rule instanceof RunRule.EitherSide either) {
      return some(either.count(), window, u -> Math.abs(u) > either.zone());
    }
    if (rule instanceof RunRule.Opposite opposite) {
      return opposite(opposite.zone(), window);
    }
    return window.length == rule.span() && wholeWindow(rule, window)
        ? IntStream.range(0, window.length).boxed().toList()
        : NOT_MET;
  }

  private interface Test {
    boolean holds(double u);
  }

  private static List<Integer> some(int count, double[] window, Test test) {
    List<Integer> places = new ArrayList<>();
    for (int i = 0; i < window.length; i++) {
      if (test.holds(window[i])) {
        places.add(i);
      }
    }
    boolean latest = test.holds(window[window.length - 1]);
    return latest && places.size() >= count ? places : NOT_MET;
  }

  private static List<Integer> opposite(double zone, double[] window) {
    int latest = window.length - 1;
    double side = Math.signum(window[latest]);
    if (!(side * window[latest] > zone)) {
      return NOT_MET;
    }
    List<Integer> places = new ArrayList<>();
    for (int i = 0; i < latest; i++) {
      if (-side * window[i] > zone) {
        places.add(i);
      }
    }
    if (places.isEmpty()) {
      return NOT_MET;
    }
    places.add(latest);
    return places;
  }

  private static boolean wholeWindow(RunRule rule, double[] window) {
    if (rule instanceof RunRule.SameSide) {
      double side = Math.signum(window[0]);
      return every(window, u -> side * u > 0);
    }
    if (rule instanceof RunRule.Within within) {
      return every(window, u -> Math.abs(u) <= within.zone());
    }
    if (rule instanceof RunRule.Outside outside) {
      return every(window, u -> Math.abs(u) > outside.zone());
    }
    boolean turning = rule instanceof RunRule.Alternating;
    double direction = Math.signum(window[1] - window[0]);
    for (int i = 1; i < window.length; i++) {
      if (!(direction * (window[i] - window[i - 1]) > 0)) {
        return false;
      }
      direction = turning ? -direction : direction;
    }
    return true;
  }

  private static boolean every(double[] window, Test test) {
    for (double u : window) {
      if (!test.holds(u)) {
        return false;
      }
    }
    return true;
  }
}
