package org.quietline.stats.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.quietline.stats.numeric.Require;

/**
 * Values in time order, in deviations from the centre, with the places where counting starts anew
 * and the places that are left out.
 *
 * <p>A left-out value is never counted and never breaks a run: the values on both sides of it are
 * neighbours. A start at a left-out place holds for the first counted value after it.
 *
 * @param deviations the values in deviations from the centre, possibly none
 * @param starts places, from 0, before which counting starts anew, as after an adjustment, a change
 *     of limits or a closed signal
 * @param leftOut places, from 0, of values that do not count
 */
public record ChartedSeries(List<Double> deviations, Set<Integer> starts, Set<Integer> leftOut) {

  /**
   * Checks and copies.
   *
   * @param deviations the values in deviations
   * @param starts places where counting starts anew
   * @param leftOut places that do not count
   * @throws IllegalArgumentException if a value is NaN, infinite or above 1e150 in size, or a place
   *     is not one of the series
   */
  public ChartedSeries {
    deviations = List.copyOf(deviations);
    Require.values(deviations.stream().mapToDouble(u -> u).toArray(), 0);
    starts = places(starts, deviations.size(), "start");
    leftOut = places(leftOut, deviations.size(), "left-out place");
  }

  private static Set<Integer> places(Set<Integer> places, int size, String name) {
    for (int place : places) {
      if (place < 0 || place >= size) {
        throw new IllegalArgumentException(name + " " + place + " in a series of " + size);
      }
    }
    return Collections.unmodifiableSet(new TreeSet<>(places));
  }

  /**
   * A series in which every value counts and nothing starts anew.
   *
   * @param deviations the values in deviations from the centre, possibly none
   * @return the series
   * @throws IllegalArgumentException if a value is NaN, infinite or above 1e150 in size
   */
  public static ChartedSeries of(double... deviations) {
    return new ChartedSeries(
        Arrays.stream(deviations).boxed().toList(), Collections.emptySet(), Collections.emptySet());
  }

  /**
   * A series of values in their own unit.
   *
   * @param centre the centre, finite
   * @param deviation the deviation, above zero
   * @param values the values, possibly none
   * @return the series of {@code (value − centre)/deviation}
   * @throws IllegalArgumentException if an argument is outside its range, NaN or infinite
   */
  public static ChartedSeries standardised(double centre, double deviation, double... values) {
    return of(standardise(centre, deviation, values));
  }

  static double[] standardise(double centre, double deviation, double[] values) {
    Require.finite(centre, "centre");
    Require.positive(deviation, "deviation");
    Require.values(values, 0);
    double[] deviations = Arrays.stream(values).map(v -> (v - centre) / deviation).toArray();
    Require.values(deviations, 0);
    return deviations;
  }

  /**
   * The same with further starts.
   *
   * @param places the places, from 0, before which counting starts anew
   * @return the series
   * @throws IllegalArgumentException if a place is not one of the series
   */
  public ChartedSeries startingAnewAt(int... places) {
    return new ChartedSeries(deviations, with(starts, places), leftOut);
  }

  /**
   * The same with further values left out.
   *
   * @param places their places, from 0
   * @return the series
   * @throws IllegalArgumentException if a place is not one of the series
   */
  public ChartedSeries leavingOut(int... places) {
    return new ChartedSeries(deviations, starts, with(leftOut, places));
  }

  private static Set<Integer> with(Set<Integer> before, int[] places) {
    Set<Integer> all = new TreeSet<>(before);
    for (int place : places) {
      all.add(place);
    }
    return all;
  }

  /** The stretches from one start to the next, each with its first place and its counted places. */
  List<Stretch> stretches() {
    List<Stretch> stretches = new ArrayList<>();
    Stretch current = new Stretch(0, new ArrayList<>());
    for (int place = 0; place < deviations.size(); place++) {
      if (starts.contains(place)) {
        stretches.add(current);
        current = new Stretch(place, new ArrayList<>());
      }
      if (!leftOut.contains(place)) {
        current.counted().add(place);
      }
    }
    stretches.add(current);
    return stretches;
  }

  record Stretch(int first, List<Integer> counted) {}
}
