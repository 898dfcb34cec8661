package org.quietline.stats.distribution;

import org.quietline.stats.numeric.Require;

/**
 * The chi-square distribution for any degrees of freedom above zero, fractional ones included, as
 * Satterthwaite's approximation needs them.
 *
 * <p>Tails come from the series and the continued fraction of the incomplete gamma function with
 * the density in Loader's form, above 2e8 degrees of freedom from Temme's expansion, quantiles from
 * Newton's method on the logarithm of the nearer tail. Both are accurate to about 1e-13 relative,
 * in both tails, for 0.05 to 1e6 degrees of freedom; up to 1e300 tails to about 1e-10. Source: DLMF
 * 8.7.1, 8.9.2 and 8.12; Loader (2000), Fast and Accurate Computation of Binomial Probabilities.
 */
public final class ChiSquare {
  private static final double MOST = 1e300;

  private ChiSquare() {}

  /**
   * The chance of exceeding a value.
   *
   * @param x the value, zero or more
   * @param df the degrees of freedom, above zero, at most 1e300
   * @return the chance
   * @throws IllegalArgumentException if the value is negative or NaN or the degrees of freedom are
   *     not above zero or more than 1e300
   */
  public static double above(double x, double df) {
    check(x, df);
    return Double.isInfinite(x) ? 0 : IncompleteGamma.above(df / 2, x / 2);
  }

  /**
   * The chance of falling below a value.
   *
   * @param x the value, zero or more
   * @param df the degrees of freedom, above zero, at most 1e300
   * @return the chance
   * @throws IllegalArgumentException if the value is negative or NaN or the degrees of freedom are
   *     not above zero or more than 1e300
   */
  public static double below(double x, double df) {
    check(x, df);
    return Double.isInfinite(x) ? 1 : IncompleteGamma.below(df / 2, x / 2);
  }

  /**
   * The value with a given chance of falling below it.
   *
   * @param chance the chance, between 0 and 1
   * @param df the degrees of freedom, above zero, at most 1e300
   * @return the value
   * @throws IllegalArgumentException if the chance is not between 0 and 1 or the degrees of freedom
   *     are not above zero or more than 1e300
   */
  public static double quantile(double chance, double df) {
    Require.share(chance, "chance");
    checkDegrees(df);
    return chance <= 0.5
        ? root(chance, true, start(Normal.quantile(chance), chance, df), df)
        : root(1 - chance, false, start(Normal.quantile(chance), chance, df), df);
  }

  /**
   * The value that is exceeded with a given chance, small chances with all their digits.
   *
   * @param chance the chance, between 0 and 1
   * @param df the degrees of freedom, above zero, at most 1e300
   * @return the value
   * @throws IllegalArgumentException if the chance is not between 0 and 1 or the degrees of freedom
   *     are not above zero or more than 1e300
   */
  public static double exceededWith(double chance, double df) {
    Require.share(chance, "chance");
    checkDegrees(df);
    return chance <= 0.5
        ? root(chance, false, start(Normal.exceededWith(chance), 1 - chance, df), df)
        : quantile(1 - chance, df);
  }

  private static double root(double chance, boolean lower, double start, double df) {
    double a = df / 2;
    return TailRoot.of(
        chance,
        lower,
        start,
        x -> lower ? below(x, df) : above(x, df),
        x -> IncompleteGamma.density(a, x / 2));
  }

  /** Wilson and Hilferty's approximation, and for small values the first term of the series. */
  private static double start(double z, double chance, double df) {
    double a = df / 2;
    double spread = 2 / (9 * df);
    double root = 1 - spread + z * Math.sqrt(spread);
    double cube = root > 0 ? df * root * root * root : 0;
    double scale = Math.exp((Stirling.rest(a) + 0.5 * Math.log(2 * Math.PI * a)) / a - 1) * a;
    double first = 2 * scale * Math.exp(Math.log(chance) / a);
    return chance < 0.5 ? Math.max(first, cube) : cube;
  }

  private static void checkDegrees(double df) {
    Require.positive(df, "degrees of freedom");
    if (df > MOST) {
      throw new IllegalArgumentException(
          "degrees of freedom must be at most " + MOST + ", is " + df);
    }
  }

  private static void check(double x, double df) {
    checkDegrees(df);
    if (!(x >= 0)) {
      throw new IllegalArgumentException("value must not be below zero, is " + x);
    }
  }
}
