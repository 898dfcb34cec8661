package org.quietline.stats.compare;

import java.util.List;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.numeric.Require;

/**
 * Grubbs' test of one outlying value.
 *
 * <p>{@code G = |x − mean|/s} of the value farthest out. With {@code t = G·√(n(n − 2)/((n − 1)² −
 * n·G²))} the chance is n times the tail of Student's t with n − 2 degrees of freedom for one end,
 * 2n times for either. That is exact where no two values can be so far out together: {@code G² ≥ (n
 * − 1)(n − 2)/(2n)} for one end, {@code G² ≥ (n − 1)/2} for either, which at 5 % is up to n = 14
 * for one end and n = 13 for either. Beyond it is an upper bound; the true chance at the 5 % value
 * of one end is 4.97 % for n = 60. Critical values are those of ISO 5725-2 and of Grubbs and Beck,
 * which are two-sided and one-sided. Where two values are wild each can hide the other: see {@link
 * GrubbsPair}, {@link ExtremeStudentizedDeviates}.
 *
 * <p>For n = 3, G is at most 1.1547 and the 5 % value 1.1543: three values cannot tell which of
 * them is wrong, and readings rounded to a step decide by their rounding. Where all other values
 * are equal the test refuses. Accurate to about 1e-12 relative. Unchanged by shift, scale and
 * order. Source: Grubbs (1950), Ann. Math. Statist. 21, 27–58; Grubbs and Beck (1972),
 * Technometrics 14, 847–854; ISO 5725-2:1994, 7.3.4; NIST/SEMATECH e-Handbook 1.3.5.17.1.
 *
 * @param suspect which end was suspected
 * @param n how many values, at least 3
 * @param place where the value farthest out stands, from 0 on
 * @param statistic G
 * @param chance the chance, or its bound
 */
public record Grubbs(Suspect suspect, int n, int place, double statistic, double chance)
    implements OutlierTest {

  /**
   * Checks the ranges.
   *
   * @param suspect which end was suspected
   * @param n how many values
   * @param place where the value farthest out stands
   * @param statistic G
   * @param chance the chance, or its bound
   * @throws IllegalArgumentException if n is below 3, the place is not among them, the statistic is
   *     negative or not finite, or the chance is not from 0 to 1
   */
  public Grubbs {
    Require.atLeast(n, 3, "n");
    Chances.requirePlace(place, n);
    Require.notNegative(statistic, "statistic");
    Chances.require(chance);
  }

  /**
   * Tests values.
   *
   * @param suspect which end is suspected
   * @param values at least three finite numbers, in any order
   * @return the test
   * @throws IllegalArgumentException if there are fewer, one is no usable number, or all but the
   *     value farthest out are equal
   */
  public static Grubbs of(Suspect suspect, double... values) {
    Require.values(values, 3);
    int place = Remoteness.farthest(suspect, values);
    double[] others = Remoteness.without(place, values);
    Remoteness.requireScatter(others, "other values");
    double t = Remoteness.student(values[place], others);
    int n = values.length;
    double bound = ways(suspect, n) * Student.above(t, n - 2);
    return new Grubbs(suspect, n, place, Remoteness.inDeviations(t, n), Math.min(1, bound));
  }

  /**
   * The distance G that is exceeded with a chance of at most alpha.
   *
   * @param suspect which end is suspected
   * @param n how many values, at least 3
   * @param alpha the chance, between 0 and 1
   * @return the critical value
   * @throws IllegalArgumentException if n is below 3 or alpha is not between 0 and 1
   */
  public static double criticalValue(Suspect suspect, int n, double alpha) {
    Require.atLeast(n, 3, "n");
    Require.share(alpha, "alpha");
    return Remoteness.exceededWith(alpha / ways(suspect, n), n);
  }

  private static double ways(Suspect suspect, int n) {
    return suspect == Suspect.EITHER ? 2.0 * n : n;
  }

  @Override
  public List<Integer> places() {
    return List.of(place);
  }

  @Override
  public Certainty certainty() {
    double together = suspect == Suspect.EITHER ? (n - 1) / 2.0 : (n - 1.0) * (n - 2) / (2.0 * n);
    return statistic * statistic >= together ? Certainty.EXACT : Certainty.AT_MOST;
  }
}
