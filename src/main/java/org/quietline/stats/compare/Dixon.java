package org.quietline.stats.compare;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;

/**
 * Dixon's test of one outlying value by the gap beside it.
 *
 * <p>With the values sorted from the suspected end inwards, {@code r(j, k) = (x(1 + j) − x(1))/(x(n
 * − k) − x(1))}: j is the neighbour that the gap is taken to, so that j − 1 further outliers at
 * that end do not hide the first, and k how many values at the other end are left out. The chance
 * is a double integral over the normal density, computed to about 1e-9, not tabulated. For either
 * end it is twice the chance of the end with the larger ratio; for r10 above one half that is
 * exact, as the gaps at both ends cannot both be so large, else an upper bound.
 *
 * <p>For n = 3 the 5 % value is 0.970 for either end: of three readings two agree closely far more
 * often than one thinks, so do not throw away the third. Where the numerator is the whole
 * denominator, the values between are equal and the test refuses. Unchanged by shift, scale and
 * order. Source: Dixon (1950), Ann. Math. Statist. 21, 488–506 and (1951), 22, 68–78; choice of the
 * ratio by Dixon (1953), Biometrics 9, 74–89; Rorabacher (1991), Anal. Chem. 63, 139–146.
 *
 * @param form which ratio
 * @param suspect which end was suspected
 * @param n how many values, up to 100
 * @param place where the suspected value stands, from 0 on
 * @param statistic the ratio, from 0 to 1
 */
public record Dixon(Form form, Suspect suspect, int n, int place, double statistic)
    implements OutlierTest {
  private static final int MOST = 100;

  /** Nearer to one the integral does not tell the chance from one. */
  private static final double MOST_CHANCE = 0.999999;

  /** Which ratio. */
  public enum Form {
    /** The gap over the range: for 3 to 7 values. */
    R10(1, 0),
    /** The gap over the range without the other end's last value: for 8 to 10 values. */
    R11(1, 1),
    /** The gap to the third value over the range without the other end's last: for 11 to 13. */
    R21(2, 1),
    /** The gap to the third value over the range without the other end's last two: from 14 on. */
    R22(2, 2);

    private final int gap;
    private final int leftOut;

    Form(int gap, int leftOut) {
      this.gap = gap;
      this.leftOut = leftOut;
    }

    /**
     * The ratio that Dixon chose for so many values.
     *
     * @param n how many, at least 3
     * @return the form
     * @throws IllegalArgumentException if n is below 3
     */
    public static Form forSize(int n) {
      Require.atLeast(n, 3, "n");
      if (n <= 7) {
        return R10;
      }
      if (n <= 10) {
        return R11;
      }
      return n <= 13 ? R21 : R22;
    }

    private void requireSize(int n) {
      int least = gap + leftOut + 2;
      if (n < least || n > MOST) {
        throw new IllegalArgumentException(
            "n must be from " + least + " to " + MOST + " for " + this + ", is " + n);
      }
    }
  }

  /**
   * Checks the ranges.
   *
   * @param form which ratio
   * @param suspect which end was suspected
   * @param n how many values
   * @param place where the suspected value stands
   * @param statistic the ratio
   * @throws IllegalArgumentException if there are too few values for the form or more than 100, the
   *     place is not among them, or the ratio is not from 0 to 1
   */
  public Dixon {
    form.requireSize(n);
    Chances.requirePlace(place, n);
    if (!(statistic >= 0 && statistic <= 1)) {
      throw new IllegalArgumentException("statistic must be from 0 to 1, is " + statistic);
    }
  }

  /**
   * Tests values with the ratio that Dixon chose for their number.
   *
   * @param suspect which end is suspected
   * @param values 3 to 100 finite numbers, in any order
   * @return the test
   * @throws IllegalArgumentException if there are fewer or more, one is no usable number, or the
   *     values between gap and end are equal
   */
  public static Dixon of(Suspect suspect, double... values) {
    Require.values(values, 3);
    return of(Form.forSize(values.length), suspect, values);
  }

  /**
   * Tests values with a ratio that is chosen.
   *
   * @param form which ratio
   * @param suspect which end is suspected
   * @param values finite numbers in any order, at least j + k + 2 for r(j, k), and at most 100
   * @return the test
   * @throws IllegalArgumentException if there are fewer or more, one is no usable number, or the
   *     values between gap and end are equal
   */
  public static Dixon of(Form form, Suspect suspect, double... values) {
    Require.values(values, 3);
    form.requireSize(values.length);
    int[] up = order(values, 1);
    int[] down = order(values, -1);
    double low = ratio(form, up, values);
    double high = ratio(form, down, values);
    boolean atTop = suspect == Suspect.LARGEST || (suspect == Suspect.EITHER && high >= low);
    int[] order = atTop ? down : up;
    int last = values.length - 1 - form.leftOut;
    Remoteness.requireScatter(
        Arrays.stream(order, form.gap, last + 1).mapToDouble(i -> values[i]).toArray(),
        "values beyond the gap");
    return new Dixon(form, suspect, values.length, order[0], atTop ? high : low);
  }

  private static int[] order(double[] values, int direction) {
    return IntStream.range(0, values.length)
        .boxed()
        .sorted(Comparator.comparingDouble(i -> direction * values[i]))
        .mapToInt(Integer::intValue)
        .toArray();
  }

  private static double ratio(Form form, int[] order, double[] values) {
    double end = values[order[0]];
    double gap = Math.abs(values[order[form.gap]] - end);
    double range = Math.abs(values[order[order.length - 1 - form.leftOut]] - end);
    return range == 0 ? 0 : gap / range;
  }

  /**
   * The ratio that is exceeded with a chance of alpha, for either end of at most alpha.
   *
   * @param form which ratio
   * @param suspect which end is suspected
   * @param n how many values, at least j + k + 2 for r(j, k), at most 100
   * @param alpha the chance, between 0 and 1, for one end at most 0.999999
   * @return the critical value
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static double criticalValue(Form form, Suspect suspect, int n, double alpha) {
    form.requireSize(n);
    Require.share(alpha, "alpha");
    double oneEnd = alpha / ends(suspect);
    if (!(oneEnd <= MOST_CHANCE)) {
      throw new IllegalArgumentException(
          "alpha must be at most " + MOST_CHANCE + " for one end, is " + alpha);
    }
    GapRatio distribution = new GapRatio(form.gap, form.leftOut, n);
    return Roots.between(r -> distribution.above(r) - oneEnd, 0, 1);
  }

  private static double ends(Suspect suspect) {
    return suspect == Suspect.EITHER ? 2 : 1;
  }

  @Override
  public List<Integer> places() {
    return List.of(place);
  }

  @Override
  public double chance() {
    double end = new GapRatio(form.gap, form.leftOut, n).above(statistic);
    return Math.min(1, ends(suspect) * end);
  }

  @Override
  public Certainty certainty() {
    boolean oneEnd = suspect != Suspect.EITHER;
    return oneEnd || (form == Form.R10 && statistic >= 0.5) ? Certainty.EXACT : Certainty.AT_MOST;
  }
}
