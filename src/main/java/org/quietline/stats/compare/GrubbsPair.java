package org.quietline.stats.compare;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Quadrature;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;

/**
 * Grubbs' test of the two largest or the two smallest values together.
 *
 * <p>{@code G = SS(without the two)/SS(all)}, sums of squared deviations from the own mean; small
 * where the two lie apart. It finds two outliers that hide each other from {@link Grubbs}. The
 * chance of at most G is an integral over the largest value and the distribution of the largest of
 * the others, computed and not tabulated: to about 1e-7 relative up to 30 values, 1e-5 at 60, and
 * for ratios below 1e-4 of more than four values, where the chance is next to nothing, to about
 * 1e-3 (held to its power law up to eight values). For either end it is twice the chance of the end
 * that is farther out: an upper bound. ISO 5725-2 prints for each end the critical values whose
 * chances are 2.5 % and 0.5 %, as 5 % and 1 % of either. Not for one outlier at each end.
 *
 * <p>Four values: 5 % needs G below 0.0002 or 0.0008, which no rounded readings support. Where all
 * other values are equal the test refuses. Unchanged by shift, scale and order. Source: Grubbs
 * (1950), Ann. Math. Statist. 21, 27–58; ISO 5725-2:1994, 7.3.4.2 and table 5.
 *
 * @param suspect which end was suspected
 * @param n how many values, from 4 to 60
 * @param places where the two values stand, from 0 on, ascending
 * @param statistic G, from 0 to 1
 * @param chance the chance of at most G, or for either end its bound
 */
public record GrubbsPair(
    Suspect suspect, int n, List<Integer> places, double statistic, double chance)
    implements OutlierTest {
  private static final int MOST = 60;
  private static final int PANELS = 6;
  private static final double SMALLEST = 1e-300;

  /**
   * Checks the ranges.
   *
   * @param suspect which end was suspected
   * @param n how many values
   * @param places where the two values stand
   * @param statistic G
   * @param chance the chance of at most G, or its bound
   * @throws IllegalArgumentException if n is not from 4 to 60, or the statistic or the chance is
   *     not from 0 to 1
   */
  public GrubbsPair {
    requireSize(n);
    places = List.copyOf(places);
    requireRatio(statistic);
    Chances.require(chance);
  }

  /**
   * Tests values.
   *
   * @param suspect which end is suspected
   * @param values 4 to 60 finite numbers, in any order
   * @return the test
   * @throws IllegalArgumentException if there are fewer or more, one is no usable number, or all
   *     but the two suspected are equal
   */
  public static GrubbsPair of(Suspect suspect, double... values) {
    Require.values(values, 4);
    int n = values.length;
    requireSize(n);
    Integer[] order = IntStream.range(0, n).boxed().toArray(Integer[]::new);
    Arrays.sort(order, Comparator.comparingDouble(i -> values[i]));
    double[] sorted = Arrays.stream(order).mapToDouble(i -> values[i]).toArray();
    double[] low = Arrays.copyOfRange(sorted, 2, n);
    double[] high = Arrays.copyOfRange(sorted, 0, n - 2);
    double all = Centred.of(sorted).sumOfSquares();
    double lowRatio = Centred.of(low).sumOfSquares() / all;
    double highRatio = Centred.of(high).sumOfSquares() / all;
    boolean atTop =
        suspect == Suspect.LARGEST || (suspect == Suspect.EITHER && highRatio <= lowRatio);
    Remoteness.requireScatter(atTop ? high : low, "other values");
    double ratio = atTop ? highRatio : lowRatio;
    List<Integer> places =
        (atTop ? List.of(order[n - 1], order[n - 2]) : List.of(order[0], order[1]))
            .stream().sorted().toList();
    double chance = Math.min(1, ends(suspect) * below(n).applyAsDouble(ratio));
    return new GrubbsPair(suspect, n, places, ratio, chance);
  }

  /**
   * The ratio G that is undercut with a chance of alpha, for either end of at most alpha.
   *
   * @param suspect which end is suspected
   * @param n how many values, from 4 to 60
   * @param alpha the chance, between 0 and 1
   * @return the critical value
   * @throws IllegalArgumentException if n is not from 4 to 60 or alpha is not between 0 and 1
   */
  public static double criticalValue(Suspect suspect, int n, double alpha) {
    requireSize(n);
    Require.share(alpha, "alpha");
    var below = below(n);
    double wanted = Math.log(alpha / ends(suspect));
    double logRatio =
        Roots.between(
            x -> Math.log(Math.max(SMALLEST, below.applyAsDouble(Math.exp(x)))) - wanted, -60, 0);
    return Math.exp(logRatio);
  }

  @Override
  public Certainty certainty() {
    return suspect == Suspect.EITHER ? Certainty.AT_MOST : Certainty.EXACT;
  }

  /** The chance of a ratio below one given, for one end. */
  private static DoubleUnaryOperator below(int n) {
    LargestDeviation others = LargestDeviation.of(n - 1);
    double scale = n * LargestDeviation.densityAtZero(n);
    double widen = Math.sqrt(n / (n - 2.0));
    return ratio -> {
      DoubleUnaryOperator density =
          angle -> {
            double square = Math.pow(Math.cos(angle), 2);
            double rest = Math.min(1, ratio / square);
            double most = widen * Math.tan(angle);
            return Math.pow(Math.cos(angle), n - 3)
                * (others.above(Math.sqrt(1 - rest), rest) - others.above(most));
          };
      return scale * Quadrature.integrate(density, edges(ratio, n));
    };
  }

  /** Where the largest value starts to count, and where the integrand has a kink. */
  private static double[] edges(double ratio, int n) {
    double together = (n - 2) / (2.0 * (n - 1));
    double start = (1 - ratio) * together;
    double[] squares = {
      start,
      together,
      1 - ratio / (1 - 1 / ((n - 2.0) * (n - 2.0))),
      1 - ratio / (1 - (n - 3) / (2.0 * (n - 2))),
      1
    };
    double[] coarse =
        Arrays.stream(squares)
            .map(w -> Math.asin(Math.sqrt(Math.min(1, Math.max(start, w)))))
            .sorted()
            .toArray();
    double[] fine = new double[(coarse.length - 1) * PANELS + 1];
    for (int i = 0; i < fine.length; i++) {
      int panel = Math.min(i / PANELS, coarse.length - 2);
      double part = (i - panel * PANELS) / (double) PANELS;
      fine[i] = coarse[panel] + (coarse[panel + 1] - coarse[panel]) * part * part * (3 - 2 * part);
    }
    return fine;
  }

  private static double ends(Suspect suspect) {
    return suspect == Suspect.EITHER ? 2 : 1;
  }

  private static void requireSize(int n) {
    if (n < 4 || n > MOST) {
      throw new IllegalArgumentException("n must be from 4 to " + MOST + ", is " + n);
    }
  }

  private static void requireRatio(double statistic) {
    if (!(statistic >= 0 && statistic <= 1)) {
      throw new IllegalArgumentException("statistic must be from 0 to 1, is " + statistic);
    }
  }
}
