package org.quietline.stats.model;

/**
 * A number carried as the unevaluated sum of two doubles, about 31 decimal digits.
 *
 * <p>Source: Dekker, A floating-point technique for extending the available precision, Numer. Math.
 * 18 (1971) 224–242; Hida, Li and Bailey (2001), Algorithms for quad-double precision arithmetic.
 *
 * @param high the number rounded to a double
 * @param low what that leaves out
 */
record Twofold(double high, double low) {
  static final Twofold ZERO = new Twofold(0, 0);
  static final Twofold ONE = new Twofold(1, 0);

  static Twofold of(double value) {
    return new Twofold(value, 0);
  }

  Twofold plus(Twofold other) {
    double sum = high + other.high;
    double lows = low + other.low;
    double carried = error(high, other.high, sum) + lows;
    double first = sum + carried;
    double second = (carried - (first - sum)) + error(low, other.low, lows);
    return normal(first, second);
  }

  Twofold minus(Twofold other) {
    return plus(new Twofold(-other.high, -other.low));
  }

  Twofold times(Twofold other) {
    double product = high * other.high;
    double rest = Math.fma(high, other.high, -product) + (high * other.low + low * other.high);
    return normal(product, rest);
  }

  Twofold times(double factor) {
    return times(of(factor));
  }

  Twofold square() {
    return times(this);
  }

  /** Long division, three digits of a double each. */
  Twofold over(Twofold divisor) {
    double first = high / divisor.high;
    Twofold left = minus(divisor.times(first));
    double second = left.high / divisor.high;
    double third = left.minus(divisor.times(second)).high / divisor.high;
    return normal(first, second).plus(of(third));
  }

  double value() {
    return high + low;
  }

  private static Twofold normal(double large, double small) {
    double sum = large + small;
    return new Twofold(sum, small - (sum - large));
  }

  /** What {@code sum} leaves out of {@code a + b}; exact. */
  private static double error(double a, double b, double sum) {
    double part = sum - a;
    return (a - (sum - part)) + (b - part);
  }
}
