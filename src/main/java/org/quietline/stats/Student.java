package org.quietline.stats;

import org.apache.commons.math3.special.Beta;
import org.apache.commons.math3.util.ContinuedFraction;

/**
 * Student's t distribution for any degrees of freedom above zero, infinity included.
 *
 * <p>Tails come from the continued fraction of the incomplete beta function, above ten thousand
 * degrees of freedom from Hill's expansion towards the normal distribution; quantiles from Newton's
 * method on the logarithm of the tail. Both are accurate to about 1e-12 relative. Source: DLMF
 * 8.17.22; Hill (1970), Algorithm 395, Commun. ACM 13, 617–619.
 */
final class Student {
  private static final double MANY = 1e4;
  private static final double SMALLEST = 1e-100;
  private static final double FARTHEST = 1e120;

  private Student() {}

  static double above(double value, double df) {
    if (value < 0) {
      return 1 - above(-value, df);
    }
    double t = Math.min(value, FARTHEST);
    if (Double.isInfinite(df)) {
      return Normal.above(t);
    }
    if (df > MANY) {
      return Normal.above(toNormal(t, df));
    }
    double a = df / 2;
    double square = t * t;
    double inner = 1 / (1 + df / square);
    double front =
        Math.exp(-a * Math.log1p(square / df) + 0.5 * Math.log(inner) - logBetaWithHalf(a));
    if (square > 3) {
      return 0.5 * front / a / fraction(a, 0.5, 1 / (1 + square / df));
    }
    return 0.5 - front / fraction(0.5, a, inner);
  }

  /** The value exceeded with a given chance of at most one half, and at least 1e-100. */
  static double exceededWith(double wanted, double df) {
    double chance = Math.max(wanted, SMALLEST);
    double z = Normal.exceededWith(chance);
    if (Double.isInfinite(df)) {
      return z;
    }
    double t = start(chance, z, df);
    for (int i = 0; i < 100; i++) {
      double tail = above(t, df);
      double step = tail * Math.log(tail / chance) / density(t, df);
      t = Math.max(0, t + step);
      if (Math.abs(step) <= 1e-15 * t) {
        break;
      }
    }
    return t;
  }

  private static double start(double chance, double z, double df) {
    double heavy = Math.sqrt(df) * Math.pow(2 * df * chance, -1 / df);
    double light = z + (z * z * z + z) / (4 * df);
    return df < 3 ? heavy : light;
  }

  private static double density(double t, double df) {
    return Math.exp(
        -logBetaWithHalf(df / 2) - 0.5 * Math.log(df) - (df + 1) / 2 * Math.log1p(t * t / df));
  }

  /** The logarithm of B(a, ½), with the asymptotic series of the gamma quotient for large a. */
  private static double logBetaWithHalf(double a) {
    if (a < 50) {
      return Beta.logBeta(a, 0.5);
    }
    double w = 1 / (a * a);
    double series = (-1 / 8.0 + w * (1 / 192.0 - w * (1 / 640.0 - w * 17 / 14336))) / a;
    return 0.5 * Math.log(Math.PI / a) - series;
  }

  private static double fraction(double a, double b, double x) {
    return new ContinuedFraction() {
      @Override
      protected double getA(int n, double unused) {
        return 1;
      }

      @Override
      protected double getB(int n, double point) {
        int m = n / 2;
        double base = a + 2.0 * m;
        return n % 2 == 0
            ? m * (b - m) * point / ((base - 1) * base)
            : -(a + m) * (a + b + m) * point / (base * (base + 1));
      }
    }.evaluate(x, 1e-15, 10_000);
  }

  /** The normal value with the same tail, for many degrees of freedom. */
  private static double toNormal(double t, double df) {
    double a = df - 0.5;
    double b = 48 * a * a;
    double y = a * Math.log1p(t * t / df);
    double inner = (((-0.4 * y - 3.3) * y - 24) * y - 85.5) / (0.8 * y * y + 100 + b) + y + 3;
    return (inner / b + 1) * Math.sqrt(y);
  }
}
