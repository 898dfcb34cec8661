package org.quietline.stats.capability;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;

/**
 * Whether a measured quantity keeps its limits, given that its measurement has an error: chance of
 * conformance, guard bands, and the risks of wrong decisions.
 *
 * <p>The error is normal with standard deviation u. A result y conforms with the chance {@code Φ((U
 * − y)/u) − Φ((L − y)/u)}. With a {@link Population} the true values come from is normal too, mean
 * m and deviation s, the true value given y is normal with mean {@code (m·u² + y·s²)/(u² + s²)} and
 * deviation {@code u·s/√(u² + s²)}. Chances are exact to about 1e-14 relative, global risks by
 * quadrature to about 1e-12 absolute. Source: JCGM 106:2012, clauses 7 to 9; ILAC-G8:09/2019.
 *
 * @param lower the lower limit, if any
 * @param upper the upper limit, if any
 * @param uncertainty the standard uncertainty u of a result, above zero
 */
public record Conformance(OptionalDouble lower, OptionalDouble upper, double uncertainty) {
  /** Beyond this many deviations nothing is left that counts. */
  private static final double REACH = 10;

  /**
   * Checks the limits.
   *
   * @param lower the lower limit, if any
   * @param upper the upper limit, if any
   * @param uncertainty the standard uncertainty u of a result
   * @throws IllegalArgumentException if there is no limit, one is not finite, they are not in
   *     order, or the uncertainty is not above zero
   */
  public Conformance {
    Limits.require(lower, upper);
    Require.positive(uncertainty, "uncertainty");
  }

  /**
   * What true values are before anything is measured: a normal population.
   *
   * @param mean its mean
   * @param deviation its standard deviation without errors of measurement, above zero
   */
  public record Population(double mean, double deviation) {
    /**
     * Checks the ranges.
     *
     * @param mean its mean
     * @param deviation its standard deviation
     * @throws IllegalArgumentException if the mean is not finite or the deviation not above zero
     */
    public Population {
      Require.finite(mean, "population mean");
      Require.positive(deviation, "population deviation");
    }
  }

  /**
   * The chances of wrong decisions before a value is measured.
   *
   * @param consumers the chance that a value does not conform and is accepted
   * @param producers the chance that a value conforms and is not accepted
   */
  public record Risks(double consumers, double producers) {
    /**
     * Checks the ranges.
     *
     * @param consumers the chance that a value does not conform and is accepted
     * @param producers the chance that a value conforms and is not accepted
     * @throws IllegalArgumentException if one is not from 0 to 1
     */
    public Risks {
      for (double risk : new double[] {consumers, producers}) {
        if (!(risk >= 0 && risk <= 1)) {
          throw new IllegalArgumentException("risk must be from 0 to 1, is " + risk);
        }
      }
    }
  }

  /** What to do with a result when there is a guard band on either side of each limit. */
  public enum Verdict {
    /** Inside the limits by the guard band or more. */
    ACCEPT,
    /** Nearer to a limit than the guard band. */
    UNDECIDED,
    /** Outside the limits by more than the guard band. */
    REJECT
  }

  /**
   * Against an upper limit.
   *
   * @param limit the upper limit
   * @param uncertainty the standard uncertainty of a result, above zero
   * @return the question
   * @throws IllegalArgumentException if the limit is not finite or the uncertainty not above zero
   */
  public static Conformance atMost(double limit, double uncertainty) {
    return new Conformance(OptionalDouble.empty(), OptionalDouble.of(limit), uncertainty);
  }

  /**
   * Against a lower limit.
   *
   * @param limit the lower limit
   * @param uncertainty the standard uncertainty of a result, above zero
   * @return the question
   * @throws IllegalArgumentException if the limit is not finite or the uncertainty not above zero
   */
  public static Conformance atLeast(double limit, double uncertainty) {
    return new Conformance(OptionalDouble.of(limit), OptionalDouble.empty(), uncertainty);
  }

  /**
   * Against two limits.
   *
   * @param lower the lower limit
   * @param upper the upper limit, above it
   * @param uncertainty the standard uncertainty of a result, above zero
   * @return the question
   * @throws IllegalArgumentException if a limit is not finite, they are not in order, or the
   *     uncertainty is not above zero
   */
  public static Conformance between(double lower, double upper, double uncertainty) {
    return new Conformance(OptionalDouble.of(lower), OptionalDouble.of(upper), uncertainty);
  }

  /**
   * The chance that the true value conforms, knowing nothing but the result.
   *
   * @param result the result y, finite
   * @return the chance
   * @throws IllegalArgumentException if the result is not finite
   */
  public double chance(double result) {
    Require.finite(result, "result");
    return inside(result, uncertainty);
  }

  /**
   * The chance that the true value does not conform, knowing nothing but the result: the specific
   * risk of accepting it. It keeps its digits where it is small.
   *
   * @param result the result y, finite
   * @return the chance
   * @throws IllegalArgumentException if the result is not finite
   */
  public double chanceBeyond(double result) {
    Require.finite(result, "result");
    return outside(result, uncertainty);
  }

  /**
   * The chance that the true value conforms, knowing the result and the population it comes from.
   *
   * @param result the result y, finite
   * @param population what true values are
   * @return the chance
   * @throws IllegalArgumentException if the result is not finite
   */
  public double chance(double result, Population population) {
    Population known = given(result, population);
    return inside(known.mean(), known.deviation());
  }

  /**
   * What the true value is, knowing the result and the population it comes from.
   *
   * @param result the result y, finite
   * @param population what true values are
   * @return mean and deviation of the true value
   * @throws IllegalArgumentException if the result is not finite
   */
  public Population given(double result, Population population) {
    Require.finite(result, "result");
    double total = Math.hypot(uncertainty, population.deviation());
    double weight = population.deviation() / total * (population.deviation() / total);
    return new Population(
        population.mean() + weight * (result - population.mean()),
        uncertainty * (population.deviation() / total));
  }

  /**
   * The guard band that leaves a result on the acceptance limit a given chance to conform to one
   * limit, {@code w = u·Φ⁻¹(confidence)}; negative for a confidence below one half.
   *
   * @param confidence the chance, between 0 and 1
   * @return the width w
   * @throws IllegalArgumentException if the confidence is not between 0 and 1
   */
  public double guardBand(double confidence) {
    Require.share(confidence, "confidence");
    return uncertainty * Normal.quantile(confidence);
  }

  /**
   * The results that conform with at least a given chance. For two limits both count, so that it is
   * a little narrower than the guard band of one limit leaves where u is large beside the width.
   *
   * @param confidence the chance, between 0 and 1
   * @return the results, to infinity where there is no limit; nothing where even a result in the
   *     middle conforms with less
   * @throws IllegalArgumentException if the confidence is not between 0 and 1
   */
  public Optional<Interval> acceptance(double confidence) {
    double guard = guardBand(confidence);
    if (lower.isEmpty() || upper.isEmpty()) {
      return acceptedWith(guard);
    }
    double half = (upper.getAsDouble() - lower.getAsDouble()) / 2;
    double middle = lower.getAsDouble() + half;
    DoubleUnaryOperator excess =
        confidence < 0.5
            ? d -> inside(middle + d, uncertainty) - confidence
            : d -> 1 - confidence - outside(middle + d, uncertainty);
    if (excess.applyAsDouble(0) < 0) {
      return Optional.empty();
    }
    double far = half + REACH * uncertainty + Math.abs(guard);
    double reach = Roots.between(excess, 0, far);
    return Optional.of(new Interval(middle - reach, middle + reach));
  }

  /**
   * The results that are accepted with a guard band.
   *
   * @param guard the width of the guard band, finite; negative accepts beyond the limits
   * @return the results, to infinity where there is no limit; nothing where guard bands meet
   * @throws IllegalArgumentException if the guard band is not finite
   */
  public Optional<Interval> acceptedWith(double guard) {
    Require.finite(guard, "guard band");
    double from = lower.orElse(Double.NEGATIVE_INFINITY) + guard;
    double to = upper.orElse(Double.POSITIVE_INFINITY) - guard;
    return from <= to ? Optional.of(new Interval(from, to)) : Optional.empty();
  }

  /**
   * What to do with a result.
   *
   * @param result the result, finite
   * @param guard the width of the guard band, zero or more
   * @return accept, reject, or neither
   * @throws IllegalArgumentException if the result is not finite or the guard band is negative or
   *     not finite
   */
  public Verdict verdict(double result, double guard) {
    Require.finite(result, "result");
    Require.notNegative(guard, "guard band");
    double low = lower.orElse(Double.NEGATIVE_INFINITY);
    double high = upper.orElse(Double.POSITIVE_INFINITY);
    if (result >= low + guard && result <= high - guard) {
      return Verdict.ACCEPT;
    }
    return result >= low - guard && result <= high + guard ? Verdict.UNDECIDED : Verdict.REJECT;
  }

  /**
   * The chances of wrong decisions for a value drawn from a population, measured once, and accepted
   * where the result lies in an interval: the global risks.
   *
   * @param population what true values are
   * @param accepted the results that are accepted
   * @return consumer's and producer's risk
   */
  public Risks risks(Population population, Interval accepted) {
    return new GlobalRisk(this, population, accepted).risks();
  }

  private double inside(double mean, double deviation) {
    double below =
        lower.isPresent() ? (mean - lower.getAsDouble()) / deviation : Double.POSITIVE_INFINITY;
    double above =
        upper.isPresent() ? (upper.getAsDouble() - mean) / deviation : Double.POSITIVE_INFINITY;
    return below < above
        ? Normal.below(below) - Normal.above(above)
        : Normal.below(above) - Normal.above(below);
  }

  private double outside(double mean, double deviation) {
    double below =
        lower.isPresent() ? (mean - lower.getAsDouble()) / deviation : Double.POSITIVE_INFINITY;
    double above =
        upper.isPresent() ? (upper.getAsDouble() - mean) / deviation : Double.POSITIVE_INFINITY;
    return Normal.above(below) + Normal.above(above);
  }
}
