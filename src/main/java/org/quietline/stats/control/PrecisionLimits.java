package org.quietline.stats.control;

import java.util.Arrays;
import org.quietline.stats.distribution.FisherF;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * Limits of new sample deviations, from those of the past.
 *
 * <p>A new deviation with ν degrees of freedom is above {@code pooled·√F(1 − α; ν, ν_p)} with
 * chance α: F allows for the pooled deviation being an estimate, so the chance is exact for normal
 * values of one true deviation before any of them are seen. To about 1e-12 relative. Source:
 * NIST/SEMATECH e-Handbook, sections 2.2.3 and 2.6.2; NBS Special Publication 676-II.
 *
 * @param pooled the pooled deviation, {@code √(Σν·s²/Σν)}, zero or more
 * @param degreesOfFreedom its degrees of freedom ν_p, Σν
 */
public record PrecisionLimits(double pooled, int degreesOfFreedom) {

  /**
   * Checks the ranges.
   *
   * @param pooled the pooled deviation
   * @param degreesOfFreedom its degrees of freedom
   * @throws IllegalArgumentException if the deviation is negative or not finite or there is no
   *     degree of freedom
   */
  public PrecisionLimits {
    Require.notNegative(pooled, "pooled deviation");
    Require.atLeast(degreesOfFreedom, 1, "degrees of freedom");
  }

  /**
   * Pools deviations of the same degrees of freedom.
   *
   * @param degreesOfFreedom those of each, at least 1
   * @param deviations at least one, zero or more
   * @return the limits
   * @throws IllegalArgumentException if there is none, one is negative, NaN or infinite, or there
   *     is no degree of freedom
   */
  public static PrecisionLimits pool(int degreesOfFreedom, double... deviations) {
    int[] freedoms = new int[deviations.length];
    Arrays.fill(freedoms, degreesOfFreedom);
    return pool(freedoms, deviations);
  }

  /**
   * Pools deviations.
   *
   * @param degreesOfFreedom those of each, at least 1
   * @param deviations as many, at least one, zero or more
   * @return the limits
   * @throws IllegalArgumentException if there is none, one is negative, NaN or infinite, one has no
   *     degree of freedom, or the lengths differ
   */
  public static PrecisionLimits pool(int[] degreesOfFreedom, double[] deviations) {
    Require.values(deviations, 1);
    if (degreesOfFreedom.length != deviations.length) {
      throw new IllegalArgumentException(
          deviations.length + " deviations but " + degreesOfFreedom.length + " degrees of freedom");
    }
    Sum squares = new Sum();
    int freedom = 0;
    for (int i = 0; i < deviations.length; i++) {
      Require.notNegative(deviations[i], "deviation");
      Require.atLeast(degreesOfFreedom[i], 1, "degrees of freedom");
      squares.addProduct(degreesOfFreedom[i] * deviations[i], deviations[i]);
      freedom += degreesOfFreedom[i];
    }
    return new PrecisionLimits(Math.sqrt(squares.value() / freedom), freedom);
  }

  /**
   * The limit that a new deviation exceeds with a given chance.
   *
   * @param newDegreesOfFreedom those of the new deviation, at least 1
   * @param chance the chance, between 0 and 1
   * @return the limit, in the unit of the deviations
   * @throws IllegalArgumentException if there is no degree of freedom or the chance is not between
   *     0 and 1
   */
  public double upper(int newDegreesOfFreedom, double chance) {
    Require.atLeast(newDegreesOfFreedom, 1, "degrees of freedom");
    Require.share(chance, "chance");
    return pooled * Math.sqrt(FisherF.exceededWith(chance, newDegreesOfFreedom, degreesOfFreedom));
  }

  /**
   * The limit that a new deviation falls below with a given chance.
   *
   * @param newDegreesOfFreedom those of the new deviation, at least 1
   * @param chance the chance, between 0 and 1
   * @return the limit, in the unit of the deviations
   * @throws IllegalArgumentException if there is no degree of freedom or the chance is not between
   *     0 and 1
   */
  public double lower(int newDegreesOfFreedom, double chance) {
    Require.atLeast(newDegreesOfFreedom, 1, "degrees of freedom");
    Require.share(chance, "chance");
    return pooled / Math.sqrt(FisherF.exceededWith(chance, degreesOfFreedom, newDegreesOfFreedom));
  }
}
