package org.quietline.stats.distribution;

import java.util.function.DoubleUnaryOperator;
import org.quietline.stats.numeric.Quadrature;
import org.quietline.stats.numeric.Require;

/**
 * The range of n independent standard normal values, largest less smallest.
 *
 * <p>With z the smallest value, {@code P(R ≤ w) = n ∫ φ(z)·[Φ(z + w) − Φ(z)]^(n−1) dz} and {@code
 * P(R > w) = n ∫ φ(z)·{Φ̄(z)^(n−1) − [Φ(z + w) − Φ(z)]^(n−1)} dz}, each by Gauss–Legendre panels
 * about {@code z = −w/2} and without subtraction, so that both tails keep their digits: relative
 * error below 1e-12 where the chance is above 1e-100. Source: Tippett (1925), Biometrika 17,
 * 364–387; Harter (1960), Ann. Math. Statist. 31, 1122–1147.
 *
 * @param n how many values, from 2 to 100
 */
public record NormalRange(int n) {
  private static final int MOST = 100;

  /** From here on the upper tail is the smaller one, whatever n is, or nearly so. */
  private static final double WIDE = 4;

  /** Beyond this nothing is left that a double could hold. */
  private static final double WIDEST = 60;

  /** Edges of the panels over z, measured from −w/2. */
  private static final double[] EDGES = {
    -9.2, -6.5, -4.5, -3.2, -2.2, -1.4, -0.7, 0, 0.7, 1.4, 2.2, 3.2, 4.5, 6.5, 9,
  };

  /** Enough of them for up to ten values, whose peaks are wide. */
  private static final double[] FEW_EDGES = {-9.2, -5, -2.2, 0, 2.2, 5, 9};

  private static final int FEW = 10;

  /** Edges of panels over the range itself, for its second moment. */
  private static final double[] RANGES = {0, 1.5, 3, 4.5, 6, 9, 18};

  /** Edges of panels over one value, for the mean. */
  private static final double[] VALUES = {0, 1, 2, 3, 4, 6, 9};

  /**
   * Checks the number.
   *
   * @param n how many values
   * @throws IllegalArgumentException if it is below 2 or above 100
   */
  public NormalRange {
    Require.atLeast(n, 2, "n");
    if (n > MOST) {
      throw new IllegalArgumentException("n must be at most " + MOST + ", is " + n);
    }
  }

  /**
   * The chance of a range of at most w.
   *
   * @param w the range, zero or more
   * @return the chance
   * @throws IllegalArgumentException if w is negative or NaN
   */
  public double below(double w) {
    check(w);
    if (w > WIDE) {
      return 1 - above(w);
    }
    double below = integrate(w, z -> Normal.density(z) * Math.pow(Normal.upFrom(z, w), n - 1));
    return n * below;
  }

  /**
   * The chance of a range of more than w.
   *
   * @param w the range, zero or more
   * @return the chance
   * @throws IllegalArgumentException if w is negative or NaN
   */
  public double above(double w) {
    check(w);
    return w > WIDEST ? 0 : Math.min(1, n * integrate(w, z -> Normal.density(z) * wider(z, w)));
  }

  /** The chance that n − 1 values above z do not all lie within w of it. */
  private double wider(double z, double w) {
    double all = Normal.above(z);
    double share = Normal.above(z + w) / all;
    return Math.pow(all, n - 1) * -Math.expm1((n - 1) * Math.log1p(-share));
  }

  /** The density at w. */
  double density(double w) {
    if (w > WIDEST) {
      return 0;
    }
    double pairs = n * (n - 1.0);
    return pairs
        * integrate(
            w,
            z ->
                Normal.density(z)
                    * Normal.density(z + w)
                    * (n == 2 ? 1 : Math.pow(Normal.upFrom(z, w), n - 2)));
  }

  private double integrate(double w, DoubleUnaryOperator function) {
    return Quadrature.integrate(
        v -> function.applyAsDouble(v - w / 2), n > FEW ? EDGES : FEW_EDGES);
  }

  /**
   * The range with a given chance of falling below it.
   *
   * @param chance the chance, between 0 and 1
   * @return the range, in deviations
   * @throws IllegalArgumentException if the chance is not between 0 and 1
   */
  public double quantile(double chance) {
    Require.share(chance, "chance");
    return chance > 0.5 ? root(1 - chance, false) : root(chance, true);
  }

  /**
   * The range that is exceeded with a given chance.
   *
   * @param chance the chance, between 0 and 1
   * @return the range, in deviations
   * @throws IllegalArgumentException if the chance is not between 0 and 1
   */
  public double exceededWith(double chance) {
    Require.share(chance, "chance");
    return chance > 0.5 ? root(1 - chance, true) : root(chance, false);
  }

  private double root(double chance, boolean lower) {
    return TailRoot.of(
        chance, lower, mean(), w -> lower ? below(w) : above(w), w -> w * density(w));
  }

  /**
   * The mean range, d2 of the tables: {@code 2 ∫ (1 − Φ^n − Φ̄^n)} over the positive half.
   *
   * @return the mean, in deviations, to about 1e-14
   */
  public double mean() {
    return 2 * Quadrature.integrate(this::notAllOnOneSide, VALUES);
  }

  private double notAllOnOneSide(double x) {
    double above = Normal.above(x);
    return -Math.expm1(n * Math.log1p(-above)) - Math.pow(above, n);
  }

  /**
   * The deviation of the range, d3 of the tables, from {@code E R² = 2 ∫ w·P(R > w) dw}.
   *
   * @return the deviation, in deviations of a value, to about 1e-12
   */
  public double deviation() {
    double mean = mean();
    double square = 2 * Quadrature.integrate(w -> w * above(w), RANGES);
    return Math.sqrt(square - mean * mean);
  }

  private static void check(double w) {
    if (!(w >= 0)) {
      throw new IllegalArgumentException("range must not be below zero, is " + w);
    }
  }
}
