package org.quietline.stats.distribution;

import org.quietline.stats.numeric.Quadrature;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;

/**
 * Two standard normal numbers with a correlation, held against one bound: two looks at the same
 * values, such as a value and the weighted mean it enters.
 *
 * <p>{@code P(|X| > c or |Z| > c) = 2Q(c) + ∫ φ(x)·[Q((c − ρx)/r) + Q((c + ρx)/r)] dx} over {@code
 * |x| < c}, with {@code r = √(1 − ρ²)} and Q the upper tail. Correlations of 1 and −1 are one look.
 * Accurate to about 1e-12 relative. Source: the conditional distribution of one normal number given
 * another, DLMF 7.20 and Tong (1990), The Multivariate Normal Distribution, chapter 2 (from
 * memory).
 *
 * @param correlation the correlation ρ, from −1 to 1
 */
public record NormalPair(double correlation) {
  /** Panels of the integral, in widths of the step that a high correlation makes near the bound. */
  private static final double[] PANELS = {32, 16, 8, 4, 2, 1};

  /**
   * Checks the range.
   *
   * @param correlation the correlation
   * @throws IllegalArgumentException if it is not from −1 to 1
   */
  public NormalPair {
    if (!(correlation >= -1 && correlation <= 1)) {
      throw new IllegalArgumentException("correlation must be from -1 to 1, is " + correlation);
    }
  }

  /**
   * The chance that at least one of the two is farther from zero than a bound.
   *
   * @param bound the bound c, zero or more
   * @return the chance
   * @throws IllegalArgumentException if the bound is negative or not finite
   */
  public double outside(double bound) {
    Require.notNegative(bound, "bound");
    double rest = Math.sqrt((1 - correlation) * (1 + correlation));
    if (rest == 0) {
      return Normal.outside(bound);
    }
    double[] edges = new double[PANELS.length + 2];
    for (int i = 0; i < PANELS.length; i++) {
      edges[i + 1] = Math.max(0, bound - PANELS[i] * rest);
    }
    edges[edges.length - 1] = bound;
    return Normal.outside(bound)
        + 2 * Quadrature.integrate(x -> Normal.density(x) * beyond(x, bound, rest), edges);
  }

  private double beyond(double x, double bound, double rest) {
    return Normal.above((bound - correlation * x) / rest)
        + Normal.above((bound + correlation * x) / rest);
  }

  /**
   * The bound that at least one of the two exceeds in size with a given chance.
   *
   * @param chance the chance, between 0 and 1
   * @return the bound, from that of one number to that of two added up
   * @throws IllegalArgumentException if the chance is not between 0 and 1
   */
  public double bound(double chance) {
    Require.share(chance, "chance");
    double one = Normal.exceededWith(chance / 2);
    double two = Normal.exceededWith(chance / 4);
    return Roots.between(b -> outside(b) / chance - 1, one, two);
  }
}
