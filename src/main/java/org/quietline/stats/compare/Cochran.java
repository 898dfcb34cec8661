package org.quietline.stats.compare;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.quietline.stats.distribution.FisherF;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * Cochran's test of one variance that is larger than the others.
 *
 * <p>{@code C = s²(largest)/Σ s²} of k deviations with ν degrees of freedom each. The chance is k
 * times the tail of F with ν and (k − 1)·ν degrees of freedom at {@code C·(k − 1)/(1 − C)}. That is
 * exact where C is at least one half, since no two shares can be; below it is an upper bound, in
 * simulations at 5 % within a twentieth of the truth. The critical value is {@code 1/(1 + (k −
 * 1)/F(α/k))}. For one deviation above the others only; unequal numbers of readings are not for
 * this test. Accurate to about 1e-10 relative where C is below 0.999999. Where all others together
 * are less than a 1e-12th of the sum of squares the test refuses: zeros show the resolution of the
 * readings, and the chance would be nothing. Unchanged by scale and order. Source: Cochran (1941),
 * Ann. Eugenics 11, 47–52; ISO 5725-2:1994, 7.3.3; 't Lam (2010), Anal. Chim. Acta 659, 68–84
 * (formula).
 *
 * @param groups how many deviations k, at least 2
 * @param degreesOfFreedom ν of each, at least 1
 * @param place where the largest stands, from 0 on
 * @param statistic C, from 0 to 1
 */
public record Cochran(int groups, int degreesOfFreedom, int place, double statistic)
    implements OutlierTest {

  /**
   * Checks the ranges.
   *
   * @param groups how many deviations
   * @param degreesOfFreedom of each
   * @param place where the largest stands
   * @param statistic C
   * @throws IllegalArgumentException if there are fewer than 2 deviations or 1 degree of freedom,
   *     the place is not among them or C is not from 0 to 1
   */
  public Cochran {
    requireSize(groups, degreesOfFreedom);
    Chances.requirePlace(place, groups);
    if (!(statistic >= 0 && statistic <= 1)) {
      throw new IllegalArgumentException("statistic must be from 0 to 1, is " + statistic);
    }
  }

  /**
   * Tests deviations.
   *
   * @param degreesOfFreedom of each deviation, at least 1
   * @param deviations at least two, zero or more, not all but one zero
   * @return the test
   * @throws IllegalArgumentException if an argument is outside its range or NaN, or all but the
   *     largest are zero
   */
  public static Cochran ofDeviations(int degreesOfFreedom, double... deviations) {
    Require.values(deviations, 2);
    for (double d : deviations) {
      Require.notNegative(d, "deviation");
    }
    return of(degreesOfFreedom, deviations);
  }

  /**
   * Tests pairs by their differences, of which each stands for a deviation with one degree of
   * freedom: {@code C = d²(largest)/Σ d²}.
   *
   * @param differences at least two, not all but one zero
   * @return the test
   * @throws IllegalArgumentException if there are fewer, one is no usable number or all but the
   *     largest are zero
   */
  public static Cochran ofDifferences(double... differences) {
    Require.values(differences, 2);
    return of(1, Arrays.stream(differences).map(Math::abs).toArray());
  }

  private static Cochran of(int degreesOfFreedom, double... sizes) {
    int place =
        IntStream.range(0, sizes.length).reduce(0, (best, i) -> sizes[i] > sizes[best] ? i : best);
    double largest = sizes[place];
    Require.positive(largest, "largest deviation");
    double[] shares = Arrays.stream(sizes).map(d -> d / largest).toArray();
    if (!(Sum.ofSquares(Remoteness.without(place, shares)) >= Require.ROUNDING)) {
      throw new IllegalArgumentException("all other deviations are zero beside " + largest);
    }
    return new Cochran(sizes.length, degreesOfFreedom, place, 1 / Sum.ofSquares(shares));
  }

  /**
   * The share C that is exceeded with a chance of at most alpha.
   *
   * @param groups how many deviations, at least 2
   * @param degreesOfFreedom of each, at least 1
   * @param alpha the chance, between 0 and 1
   * @return the critical value
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static double criticalValue(int groups, int degreesOfFreedom, double alpha) {
    requireSize(groups, degreesOfFreedom);
    Require.share(alpha, "alpha");
    double others = (groups - 1.0) * degreesOfFreedom;
    double f = FisherF.exceededWith(alpha / groups, degreesOfFreedom, others);
    return 1 / (1 + (groups - 1) / f);
  }

  private static void requireSize(int groups, int degreesOfFreedom) {
    Require.atLeast(groups, 2, "groups");
    Require.atLeast(degreesOfFreedom, 1, "degrees of freedom");
  }

  @Override
  public List<Integer> places() {
    return List.of(place);
  }

  @Override
  public double chance() {
    if (statistic == 1) {
      return 0;
    }
    double f = statistic * (groups - 1) / (1 - statistic);
    double tail = FisherF.above(f, degreesOfFreedom, (groups - 1.0) * degreesOfFreedom);
    return Math.min(1, groups * tail);
  }

  @Override
  public Certainty certainty() {
    return statistic >= 0.5 ? Certainty.EXACT : Certainty.AT_MOST;
  }
}
