package org.quietline.stats.sample;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;

/**
 * Values of which some are known only to lie below or above a limit, each with a limit of its own.
 *
 * <p>A value below a limit is neither the limit nor half of it nor zero; what is known of it is one
 * chance in the likelihood. Source: Cohen (1959), Technometrics 1, 217–237; Helsel (2012),
 * Statistics for Censored Environmental Data.
 *
 * @param exact the values known, in their unit
 * @param below the limits of those known to lie below one
 * @param above the limits of those known to lie above one
 */
public record CensoredSample(List<Double> exact, List<Double> below, List<Double> above) {
  /** Below it squares of deviations are lost. */
  private static final double LEAST_SPREAD = 1e-140;

  /**
   * Copies and checks the numbers.
   *
   * @param exact the values known
   * @param below the limits of those known to lie below one
   * @param above the limits of those known to lie above one
   * @throws IllegalArgumentException if there is no value at all or a number is NaN, infinite or
   *     larger than 1e150 in size
   */
  public CensoredSample {
    exact = List.copyOf(exact);
    below = List.copyOf(below);
    above = List.copyOf(above);
    Require.values(array(exact), 0);
    Require.values(array(below), 0);
    Require.values(array(above), 0);
    Require.atLeast(exact.size() + below.size() + above.size(), 1, "number of values");
  }

  /** The shape of the population. */
  public enum Shape {
    /** Values are normal. */
    NORMAL,
    /** Logarithms of values are normal. */
    LOGNORMAL
  }

  /**
   * Values that are all known, to which censored ones may be added.
   *
   * @param exact at least one finite number
   * @return the sample
   * @throws IllegalArgumentException if there is none or one is NaN or infinite
   */
  public static CensoredSample of(double... exact) {
    return new CensoredSample(list(exact), List.of(), List.of());
  }

  /**
   * The same with more values known to lie below a limit.
   *
   * @param limits their limits, finite
   * @return the sample with them
   * @throws IllegalArgumentException if a limit is NaN or infinite
   */
  public CensoredSample withBelow(double... limits) {
    return new CensoredSample(exact, joined(below, limits), above);
  }

  /**
   * The same with more values known to lie above a limit.
   *
   * @param limits their limits, finite
   * @return the sample with them
   * @throws IllegalArgumentException if a limit is NaN or infinite
   */
  public CensoredSample withAbove(double... limits) {
    return new CensoredSample(exact, below, joined(above, limits));
  }

  /**
   * How many values there are, known or not.
   *
   * @return the number
   */
  public int n() {
    return exact.size() + below.size() + above.size();
  }

  /**
   * The share of values that are not known.
   *
   * @return the share, from 0 to 1
   */
  public double shareCensored() {
    return (double) (below.size() + above.size()) / n();
  }

  /**
   * Fits a population by maximum likelihood. Known values that are equal as doubles, or whose
   * logarithms are for a lognormal population, or that lie within 1e-140, count as one.
   *
   * @param shape the shape of the population
   * @return the fit, or why there is none
   * @throws IllegalArgumentException if the shape is lognormal and a number is not above zero
   */
  public CensoredFit fit(Shape shape) {
    long distinct = exact.stream().distinct().count();
    if (distinct < 2) {
      return notDetermined((int) distinct);
    }
    double[] known = working(shape, exact);
    double spread = Math.sqrt(Centred.of(known).sumOfSquares());
    return spread >= LEAST_SPREAD
        ? new CensoredNormal(shape, known, working(shape, below), working(shape, above))
        : notDetermined(1);
  }

  private CensoredFit notDetermined(int distinct) {
    return new CensoredFit.NotDetermined(exact.size(), distinct, below.size() + above.size());
  }

  private static double[] working(Shape shape, List<Double> values) {
    double[] numbers = array(values);
    if (shape == Shape.NORMAL) {
      return numbers;
    }
    for (double v : numbers) {
      Require.positive(v, "value of a lognormal population");
    }
    return Arrays.stream(numbers).map(Math::log).toArray();
  }

  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(v -> v).toArray();
  }

  private static List<Double> list(double... values) {
    return DoubleStream.of(values).boxed().toList();
  }

  private static List<Double> joined(List<Double> first, double... more) {
    return DoubleStream.concat(first.stream().mapToDouble(v -> v), DoubleStream.of(more))
        .boxed()
        .toList();
  }
}
