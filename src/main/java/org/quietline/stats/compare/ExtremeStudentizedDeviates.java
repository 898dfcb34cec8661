package org.quietline.stats.compare;

import java.util.ArrayList;
import java.util.List;
import org.quietline.stats.numeric.Require;

/**
 * The generalised extreme studentized deviate test of up to so many outliers, at either end.
 *
 * <p>The value farthest from the mean is taken out and {@code R(i) = |x − mean|/s} noted, step by
 * step; there are as many outliers as the last step whose R(i) exceeds {@code λ(i) = (n − i)·t/√((n
 * − i − 1 + t²)(n − i + 1))}, t with n − i − 1 degrees of freedom exceeded with {@code α/(2(n − i +
 * 1))}. Looking back from the last step finds outliers that hide each other. Only the number
 * expected at most has to be given, not the number there is.
 *
 * <p>Rosner found the level kept for n of 25 and more. Below it is not: the chance of finding any
 * in a normal sample at a nominal 5 % with up to five looked for was in a simulation 13 % at n =
 * 10, 8 % at 15, 5.8 % at 25 and 5.1 % at 50. With one looked for it is {@link Grubbs}. Where the
 * values left before the last step are all equal the test refuses. Unchanged by shift, scale and
 * order. Source: Rosner (1983), Technometrics 25, 165–172; NIST/SEMATECH e-Handbook 1.3.5.17.3.
 *
 * @param n how many values, at least 3
 * @param alpha the chance of finding an outlier where there is none, between 0 and 1
 * @param steps one for each outlier looked for, at least one
 */
public record ExtremeStudentizedDeviates(int n, double alpha, List<Step> steps) {

  /**
   * One step.
   *
   * @param place where the value stands among those given, from 0 on
   * @param statistic R(i)
   * @param criticalValue λ(i)
   */
  public record Step(int place, double statistic, double criticalValue) {

    /**
     * Checks the ranges.
     *
     * @param place where the value stands
     * @param statistic R(i)
     * @param criticalValue λ(i)
     * @throws IllegalArgumentException if one is negative or not finite
     */
    public Step {
      Require.atLeast(place, 0, "place");
      Require.notNegative(statistic, "statistic");
      Require.notNegative(criticalValue, "critical value");
    }
  }

  /**
   * Checks the ranges.
   *
   * @param n how many values
   * @param alpha the chance of finding an outlier where there is none
   * @param steps one for each outlier looked for
   * @throws IllegalArgumentException if alpha is not between 0 and 1, or there are no steps or more
   *     than n − 2
   */
  public ExtremeStudentizedDeviates {
    Require.share(alpha, "alpha");
    steps = List.copyOf(steps);
    requireMost(steps.size(), n);
  }

  /**
   * Tests values.
   *
   * @param most how many outliers to look for, from 1 to n − 2
   * @param alpha the chance of finding any where there is none, between 0 and 1
   * @param values at least three finite numbers, in any order
   * @return the test
   * @throws IllegalArgumentException if an argument is outside its range, a value is no usable
   *     number, or those left after the last step are all equal
   */
  public static ExtremeStudentizedDeviates of(int most, double alpha, double... values) {
    Require.values(values, 3);
    requireMost(most, values.length);
    Require.share(alpha, "alpha");
    List<Step> steps = new ArrayList<>();
    List<Integer> places = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      places.add(i);
    }
    double[] left = values.clone();
    for (int i = 0; i < most; i++) {
      int place = Remoteness.farthest(Suspect.EITHER, left);
      double[] others = Remoteness.without(place, left);
      Remoteness.requireScatter(others, "other values");
      int size = left.length;
      double t = Remoteness.student(left[place], others);
      double critical = Remoteness.exceededWith(alpha / (2.0 * size), size);
      steps.add(new Step(places.remove(place), Remoteness.inDeviations(t, size), critical));
      left = others;
    }
    return new ExtremeStudentizedDeviates(values.length, alpha, steps);
  }

  private static void requireMost(int most, int n) {
    if (most < 1 || most > n - 2) {
      throw new IllegalArgumentException(
          "outliers looked for must be from 1 to " + (n - 2) + ", is " + most);
    }
  }

  /**
   * Where the outliers stand among the values given.
   *
   * @return places from 0 on, in the order in which they were taken out; none where there is none
   */
  public List<Integer> places() {
    int found = 0;
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i).statistic() > steps.get(i).criticalValue()) {
        found = i + 1;
      }
    }
    return steps.subList(0, found).stream().map(Step::place).toList();
  }
}
