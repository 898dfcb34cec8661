package org.quietline.stats.distribution;

import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import org.quietline.stats.numeric.Quadrature;
import org.quietline.stats.numeric.Require;

/**
 * The range of k normal values over an independent estimate of their deviation, as in Tukey's
 * comparison of all pairs of means.
 *
 * <p>{@code P(Q ≤ q) = ∫ P(R ≤ q·u) f(u) du} with R the range of standard normal values and f the
 * density of {@code u = √(χ²(ν)/ν)}, by Gauss–Legendre panels laid where density and range change;
 * the upper tail likewise and not as one minus the rest. Relative error below 1e-10 in either tail
 * for chances above 1e-15. Source: Harter (1960), Ann. Math. Statist. 31, 1122–1147; Copenhaver and
 * Holland (1988), J. Statist. Comput. Simul. 30, 1–15.
 *
 * @param groups how many values k, from 2 to 100
 * @param degreesOfFreedom of the estimate ν, at least 1, infinity for a known deviation
 */
public record StudentizedRange(int groups, double degreesOfFreedom) {
  /** Ranges of normal values between which their distribution is smooth. */
  private static final double[] RANGES = {1, 3, 5, 8, 14};

  /** Halvings twice over towards zero, where the density of u may have a broken power. */
  private static final int GRADES = 8;

  /** From so many degrees of freedom on a broken power is smooth enough. */
  private static final double FEW = 8;

  /** A density too small to matter to any chance that is worth telling. */
  private static final double NOTHING = 1e-40;

  private static final double ROOT2 = Math.sqrt(2);

  private static final double LOWEST = -16;
  private static final double HIGHEST = 12;
  private static final double STEP = 4;

  /**
   * Checks the numbers.
   *
   * @param groups how many values k
   * @param degreesOfFreedom of the estimate ν
   * @throws IllegalArgumentException if k is not from 2 to 100 or ν is NaN or below 1
   */
  public StudentizedRange {
    new NormalRange(groups);
    if (!(degreesOfFreedom >= 1)) {
      throw new IllegalArgumentException(
          "degrees of freedom must be at least 1, is " + degreesOfFreedom);
    }
  }

  /**
   * The chance of at most q.
   *
   * @param q the range over the estimate, zero or more
   * @return the chance
   * @throws IllegalArgumentException if q is negative or NaN
   */
  public double below(double q) {
    NormalRange range = new NormalRange(groups);
    return Math.min(1, mean(q, range::below));
  }

  /**
   * The chance of more than q.
   *
   * @param q the range over the estimate, zero or more
   * @return the chance
   * @throws IllegalArgumentException if q is negative or NaN
   */
  public double above(double q) {
    NormalRange range = new NormalRange(groups);
    return Math.min(1, mean(q, range::above));
  }

  /**
   * The value that is exceeded with a given chance, the q of the tables.
   *
   * @param chance the chance, between 0 and 1
   * @return the value
   * @throws IllegalArgumentException if the chance is not between 0 and 1
   */
  public double exceededWith(double chance) {
    Require.share(chance, "chance");
    NormalRange range = new NormalRange(groups);
    double known = range.exceededWith(chance);
    if (Double.isInfinite(degreesOfFreedom)) {
      return known;
    }
    double pair = Normal.above(known / ROOT2);
    boolean lower = chance > 0.5;
    return TailRoot.of(
        lower ? 1 - chance : chance,
        lower,
        ROOT2 * Student.exceededWith(pair, degreesOfFreedom),
        q -> lower ? below(q) : above(q),
        q -> mean(q, w -> w * range.density(w)));
  }

  /**
   * The value with a given chance of falling below it.
   *
   * @param chance the chance, between 0 and 1
   * @return the value
   * @throws IllegalArgumentException if the chance is not between 0 and 1
   */
  public double quantile(double chance) {
    Require.share(chance, "chance");
    return exceededWith(1 - chance);
  }

  /** The mean over u of what a range of {@code q·u} gives. */
  private double mean(double q, DoubleUnaryOperator byRange) {
    if (!(q >= 0)) {
      throw new IllegalArgumentException("range must not be below zero, is " + q);
    }
    if (Double.isInfinite(degreesOfFreedom)) {
      return byRange.applyAsDouble(q);
    }
    return Quadrature.integrate(
        u -> {
          double density = density(u);
          return density < NOTHING ? 0 : density * byRange.applyAsDouble(q * u);
        },
        edges(q));
  }

  private double density(double u) {
    double nu = degreesOfFreedom;
    return 2 / u * IncompleteGamma.density(nu / 2, nu * u * u / 2);
  }

  private double[] edges(double q) {
    double spread = 1 / Math.sqrt(2 * degreesOfFreedom);
    double to = 1 + HIGHEST * spread;
    TreeSet<Double> edges = new TreeSet<>();
    edges.add(0.0);
    for (double step = LOWEST; step <= HIGHEST; step += STEP) {
      edges.add(1 + step * spread);
    }
    for (double range : RANGES) {
      edges.add(range / q);
    }
    double first = Math.min(1, edges.higher(0.0));
    boolean broken = degreesOfFreedom < FEW && degreesOfFreedom != Math.rint(degreesOfFreedom);
    for (int i = 1; broken && i <= GRADES; i++) {
      edges.add(first * Math.pow(4, -i));
    }
    return edges.stream().mapToDouble(e -> e).filter(e -> 0 <= e && e <= to).toArray();
  }
}
