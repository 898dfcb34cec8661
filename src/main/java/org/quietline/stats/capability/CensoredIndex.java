package org.quietline.stats.capability;

import org.quietline.stats.Interval;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;
import org.quietline.stats.sample.CensoredNormal;
import org.quietline.stats.sample.CensoredSample;
import org.quietline.stats.sample.Summary;

/**
 * The performance index of values of which some are known only to lie below a bound, against an
 * upper limit: the distance of the limit from the location of the fitted population, over three
 * deviations; for a lognormal population both on the scale of logarithms.
 *
 * <p>The deviation is that of maximum likelihood times {@code √(n/(n − 1))}, so that without bounds
 * the index is the {@link PerformanceIndex}. Its bounds are read from the profile likelihood of the
 * distance of the limit: where it has fallen so far as that of n values without bounds has, of the
 * same index, at the exact bound by the noncentral t. So without bounds they are exact, too. In
 * simulation with 0, 25 and 40 % of 12, 24 and 40 values only bounds, the 95 % lower bound held the
 * index in 94.8 to 96.4 %, the 95 % interval the share in 94.5 to 95.6 %.
 *
 * <p>Source: Cohen (1959), Technometrics 1, 217–237, for the fit; Meeker and Escobar (1995), Am.
 * Stat. 49, 48–53, for the profile.
 *
 * @param fit the population
 * @param n how many values, bounds counted
 * @param limit the upper limit, in the unit of the values; above zero for a lognormal population
 */
public record CensoredIndex(CensoredNormal fit, int n, double limit) {
  /**
   * Checks the arguments.
   *
   * @param fit the population
   * @param n how many values
   * @param limit the upper limit
   * @throws IllegalArgumentException if there are fewer than two values, or the limit is not finite
   *     or not above zero for a lognormal population
   */
  public CensoredIndex {
    Require.atLeast(n, 2, "n");
    if (fit.shape() == CensoredSample.Shape.LOGNORMAL) {
      Require.positive(limit, "limit");
    }
    Require.finite(limit, "limit");
  }

  /**
   * The index.
   *
   * @return {@code (U − μ)/(3σ)}
   */
  public double index() {
    double working = fit.shape() == CensoredSample.Shape.NORMAL ? limit : Math.log(limit);
    return (working - fit.location()) / (3 * fit.scale() * Math.sqrt(n / (n - 1.0)));
  }

  /**
   * The share of the population beyond the limit.
   *
   * @return the share, from 0 to 1
   */
  public double shareBeyond() {
    return Normal.above(3 * index());
  }

  /**
   * The confidence interval of the share beyond the limit.
   *
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval shareBeyondInterval(double level) {
    Require.share(level, "level");
    double most = distance(withoutBounds().interval(level).upper());
    double least = distance(withoutBounds().interval(level).lower());
    return new Interval(Normal.above(most), Normal.above(least));
  }

  /**
   * The one-sided lower confidence bound of the index.
   *
   * @param level the confidence level, between 0 and 1
   * @return the bound
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public double lowerBound(double level) {
    return distance(withoutBounds().lowerBound(level)) / 3;
  }

  /** As many values without bounds, of the same index. */
  private PerformanceIndex withoutBounds() {
    return PerformanceIndex.upper(new Summary(n, 0, 1), 3 * index());
  }

  /** How many deviations the limit is away where the profile has fallen as far as at a bound. */
  private double distance(double bound) {
    double best = 3 * index() * Math.sqrt(n / (n - 1.0));
    double fall = Math.signum(3 * bound - best) * fall(best, 3 * bound);
    return Roots.of(
        z -> Math.signum(z - best) * Math.max(0, fit.fall(limit, z)) - fall,
        best,
        0.2 * (1 + Math.abs(best)));
  }

  /** How far the profile of n values without bounds falls from its top, at its distance. */
  private double fall(double best, double z) {
    double a = 1 + best * best;
    double inverse = (best * z + Math.sqrt(best * best * z * z + 4 * a)) / (2 * a);
    double off = z - best * inverse;
    return n * ((inverse * inverse + off * off - 1) / 2 - Math.log(inverse));
  }
}
