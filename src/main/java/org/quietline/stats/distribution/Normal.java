package org.quietline.stats.distribution;

/**
 * The standard normal distribution, accurate to about 1e-15 relative in both tails.
 *
 * <p>The upper tail is {@code exp(−z²/2)·m(z)}, where {@code (z + 5)·m(z)} is a Chebyshev series in
 * {@code (z − 5)/(z + 5)} and the square is taken in two doubles. The coefficients were computed in
 * 50-digit arithmetic; what they leave out is below 1e-17. Quantiles are found by Newton's method
 * on the logarithm of the tail. Source of the form: Shepherd and Laframboise (1981), Math. Comput.
 * 36, 249–253.
 */
public final class Normal {
  private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);
  private static final double SMALLEST = 1e-300;

  /** Values nearer than this are close together. */
  private static final double NEAR = 0.8;

  /** Values nearer than this over their size are close together in the tail. */
  private static final double NEAR_IN_TAIL = 2;

  private static final double[] NODES = {
    0.1834346424956498, 0.525532409916329, 0.7966664774136267, 0.9602898564975363,
  };

  private static final double[] WEIGHTS = {
    0.362683783378362, 0.31370664587788727, 0.22238103445337448, 0.10122853629037626,
  };

  /** Chances from here to one half are looked for from the middle. */
  private static final double CENTRAL = 0.3;

  /** Where the middle of the series lies. */
  private static final double CENTRE = 5;

  private static final double[] SERIES = {
    1.0849974311281507,
    -0.9451212330235238,
    0.3395428248397067,
    -0.10080114900127923,
    0.02434161739194819,
    -0.0045780677530837645,
    0.0005962634793872587,
    -3.0034572403998326e-05,
    -6.9582080289731465e-06,
    1.6616222750752958e-06,
    -4.290591277534993e-08,
    -3.778472668407595e-08,
    4.656555405437076e-09,
    7.267318981195832e-10,
    -1.876070956044787e-10,
    -1.3548475355194276e-11,
    6.754835393421527e-12,
    2.838977484398091e-13,
    -2.470501242834056e-13,
    -9.045031546393825e-15,
    9.451160470848487e-15,
    4.824922077179943e-16,
    -3.7452977060373244e-16,
    -3.173853697043559e-17,
    1.4864637847678552e-17,
  };

  private Normal() {}

  /**
   * The density.
   *
   * @param z a standard normal value
   * @return the density there
   */
  public static double density(double z) {
    return gauss(z) / ROOT_TWO_PI;
  }

  /**
   * The chance of falling below a value.
   *
   * @param z the value, infinity included
   * @return the chance
   * @throws IllegalArgumentException if the value is NaN
   */
  public static double below(double z) {
    return above(-z);
  }

  /**
   * The chance of exceeding a value.
   *
   * @param z the value, infinity included
   * @return the chance
   * @throws IllegalArgumentException if the value is NaN
   */
  public static double above(double z) {
    if (Double.isNaN(z)) {
      throw new IllegalArgumentException("value is NaN");
    }
    return z < 0 ? 1 - upper(-z) : upper(z);
  }

  /**
   * The chance of falling between two values, also where they are close together and where both are
   * in one tail: to about 1e-14 relative up to 8 from zero, 1e-13 beyond.
   *
   * @param low the lower value, minus infinity included
   * @param high the upper value, not below the lower one, infinity included
   * @return the chance, zero for equal values
   * @throws IllegalArgumentException if a value is NaN or the upper one below the lower one
   */
  public static double between(double low, double high) {
    if (!(low <= high)) {
      throw new IllegalArgumentException(
          "upper value must not be below the lower one, are " + high + " and " + low);
    }
    if (low == high) {
      return 0;
    }
    return near(low, high - low) ? narrow(low, high - low) : apart(low, high);
  }

  /** The chance of falling between a value and one that lies by a width above it. */
  static double upFrom(double low, double width) {
    return near(low, width) ? narrow(low, width) : apart(low, low + width);
  }

  private static boolean near(double low, double width) {
    double size = Math.max(Math.abs(low), Math.abs(low + width));
    return width < NEAR && width * size < NEAR_IN_TAIL;
  }

  private static double apart(double low, double high) {
    if (low > 0) {
      return above(low) - above(high);
    }
    return high < 0 ? below(high) - below(low) : 1 - above(high) - below(low);
  }

  /** The density by Gauss and Legendre's rule of eight points, which is exact enough up to 0.8. */
  private static double narrow(double low, double width) {
    double half = width / 2;
    double middle = low + half;
    double sum = 0;
    for (int i = 0; i < NODES.length; i++) {
      double step = half * NODES[i];
      sum += WEIGHTS[i] * (density(middle - step) + density(middle + step));
    }
    return half * sum;
  }

  /**
   * The chance of being farther from zero than a width.
   *
   * @param width the width, zero or more
   * @return the chance
   * @throws IllegalArgumentException if the width is NaN
   */
  public static double outside(double width) {
    return 2 * above(width);
  }

  /**
   * The logarithm of {@link #below}, finite however far in the tail.
   *
   * @param z the value
   * @return the natural logarithm of the chance
   */
  public static double logBelow(double z) {
    if (z > 0) {
      return Math.log1p(-above(z));
    }
    return Math.log(scaled(-z)) - 0.5 * z * z;
  }

  private static double upper(double z) {
    if (z > 40) {
      return 0;
    }
    return gauss(z) * scaled(z);
  }

  /** {@code exp(−z²/2)} with the square in two doubles. */
  private static double gauss(double z) {
    double square = z * z;
    double rest = square < Double.MAX_VALUE ? Math.fma(z, z, -square) : 0;
    return Math.exp(-0.5 * square) * (1 - 0.5 * rest);
  }

  /** The upper tail times exp(z²/2), for z of zero or more, by Clenshaw's recurrence. */
  private static double scaled(double z) {
    double t = 2 * (1 - 2 * CENTRE / (z + CENTRE));
    double one = 0;
    double two = 0;
    for (int i = SERIES.length - 1; i > 0; i--) {
      double next = t * one - two + SERIES[i];
      two = one;
      one = next;
    }
    return (0.5 * t * one - two + SERIES[0]) / (z + CENTRE);
  }

  /**
   * The value that is exceeded with a given chance.
   *
   * @param chance the chance, from 0 to 1; below 1e-300 it is taken as 1e-300, above one half the
   *     other tail is what 1 − chance leaves of it
   * @return the value
   * @throws IllegalArgumentException if the chance is NaN or outside its range
   */
  public static double exceededWith(double chance) {
    if (!(chance >= 0 && chance <= 1)) {
      throw new IllegalArgumentException("chance must be from 0 to 1, is " + chance);
    }
    if (chance > 0.5) {
      return -exceededWith(1 - chance);
    }
    if (chance > CENTRAL) {
      return nearZero(0.5 - chance);
    }
    double p = Math.max(chance, SMALLEST);
    double z = start(Math.sqrt(-2 * Math.log(p)));
    for (int i = 0; i < 4; i++) {
      double tail = above(z);
      z += tail / density(z) * Math.log(tail / p);
    }
    return z;
  }

  /** The value that has a given chance between itself and zero, to its last digits. */
  private static double nearZero(double chance) {
    double z = chance * ROOT_TWO_PI;
    for (int i = 0; i < 5; i++) {
      z += (chance - fromZero(z)) / density(z);
    }
    return z;
  }

  /** The chance between zero and z, for z up to about 1, by DLMF 7.6.2. */
  private static double fromZero(double z) {
    double term = z;
    double sum = z;
    for (int k = 3; term > 1e-17 * sum; k += 2) {
      term *= z * z / k;
      sum += term;
    }
    return sum * density(z);
  }

  /** Hastings' approximation to 5e-4, Abramowitz and Stegun 26.2.23. */
  private static double start(double t) {
    return t
        - (2.515517 + t * (0.802853 + t * 0.010328))
            / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
  }

  /**
   * The value with a given chance of falling below it.
   *
   * @param chance the chance, from 0 to 1, limited as in {@link #exceededWith}
   * @return the value
   * @throws IllegalArgumentException if the chance is NaN or outside its range
   */
  public static double quantile(double chance) {
    return -exceededWith(chance);
  }
}
