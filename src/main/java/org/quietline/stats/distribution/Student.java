package org.quietline.stats.distribution;

/**
 * Student's t distribution for any degrees of freedom above zero, infinity included.
 *
 * <p>Tails come from a continued fraction of the incomplete beta function with the front factor in
 * Loader's form, quantiles from Newton's method on the logarithm of the tail. Both are accurate to
 * about 1e-13 relative from 0.05 degrees of freedom to any number. Source: Didonato and Morris
 * (1992), ACM Trans. Math. Softw. 18, 360–373; Abramowitz and Stegun 26.7.1.
 */
public final class Student {
  private static final double SMALLEST = 1e-100;
  private static final double FARTHEST = 1e120;

  private Student() {}

  /**
   * The chance of exceeding a value.
   *
   * @param value the value; one beyond 1e120 is taken as 1e120
   * @param df the degrees of freedom, above zero, infinity included
   * @return the chance
   * @throws IllegalArgumentException if the value is NaN or the degrees of freedom are not above
   *     zero
   */
  public static double above(double value, double df) {
    check(df);
    if (Double.isNaN(value)) {
      throw new IllegalArgumentException("value is NaN");
    }
    if (value < 0) {
      return 1 - above(-value, df);
    }
    double t = Math.min(value, FARTHEST);
    if (Double.isInfinite(df)) {
      return Normal.above(t);
    }
    return t == 0 ? 0.5 : t * t > 3 ? far(t, df) : 0.5 - near(t, df);
  }

  private static void check(double df) {
    if (!(df > 0)) {
      throw new IllegalArgumentException("degrees of freedom must be above zero, is " + df);
    }
  }

  private static double far(double t, double df) {
    double ratio = t * t / df;
    return 0.5 * IncompleteBeta.below(df / 2, 0.5, 1 / (1 + ratio), 1 / (1 + 1 / ratio));
  }

  /** The chance from zero to t, for small t by the other side of the fraction. */
  private static double near(double t, double df) {
    double ratio = t * t / df;
    return 0.5 * IncompleteBeta.below(0.5, df / 2, 1 / (1 + 1 / ratio), 1 / (1 + ratio));
  }

  /**
   * The value exceeded with a given chance.
   *
   * @param wanted the chance, at most one half; below 1e-100 it is taken as 1e-100
   * @param df the degrees of freedom, above zero, infinity included
   * @return the value, zero or more
   * @throws IllegalArgumentException if the chance is NaN, negative or above one half, the degrees
   *     of freedom are not above zero, or so few that the value is beyond 1e120
   */
  public static double exceededWith(double wanted, double df) {
    check(df);
    if (!(wanted >= 0 && wanted <= 0.5)) {
      throw new IllegalArgumentException("chance must be from 0 to one half, is " + wanted);
    }
    double chance = Math.max(wanted, SMALLEST);
    double z = Normal.exceededWith(chance);
    if (Double.isInfinite(df)) {
      return z;
    }
    if (chance == 0.5) {
      return 0;
    }
    if (above(FARTHEST, df) > chance) {
      throw new IllegalArgumentException(
          "value exceeded with chance "
              + chance
              + " is beyond "
              + FARTHEST
              + " for "
              + df
              + " degrees of freedom");
    }
    return TailRoot.of(chance, false, z, t -> above(t, df), t -> weight(t, df));
  }

  /** The value times its density. */
  static double weight(double t, double df) {
    double ratio = t * t / df;
    return IncompleteBeta.front(df / 2, 0.5, 1 / (1 + ratio), 1 / (1 + 1 / ratio));
  }
}
