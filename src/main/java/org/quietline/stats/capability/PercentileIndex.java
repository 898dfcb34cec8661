package org.quietline.stats.capability;

import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.stats.Interval;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.sample.Bootstrap;

/**
 * How far a population of any shape stays from its limits, by the points that as many values lie
 * beyond as beyond three deviations of a normal population.
 *
 * <p>{@code (U − X50)/(X99.865 − X50)} for an upper limit, {@code (X50 − L)/(X50 − X0.135)} for a
 * lower one, the smaller of the two for both; for a normal population it is the index of three
 * deviations. Where the points come from is told by {@link Shape}: the far points of few values are
 * those of the assumed shape, not of the values. Source: ISO 22514-2:2017; ISO 22514-4:2016;
 * Clements (1989), Quality Progress 22, 95–100 (another family of shapes).
 */
public sealed interface PercentileIndex {
  /** How many values the far points need to be read off the values. */
  int VALUES_FOR_FAR_POINTS = 2218;

  /** What the far points are taken from. */
  enum Shape {
    /**
     * The values themselves. With fewer than 2218 the chance is above 5 % that none of them lies
     * beyond the 99.865 % point, {@code 0.99865^n}.
     */
    EMPIRICAL,
    /** A normal population of the logarithms. */
    LOGNORMAL,
    /**
     * A normal population of the powers: the plain power that the 95 % interval allows, else the
     * most likely one.
     */
    POWER
  }

  /**
   * The index.
   *
   * @param lowPoint the value that 0.135 % lie below
   * @param median the middle value
   * @param highPoint the value that 0.135 % lie above; infinite only without an upper limit
   * @param index the index of the nearer limit
   */
  record Known(double lowPoint, double median, double highPoint, double index)
      implements PercentileIndex {
    /**
     * Checks the order.
     *
     * @param lowPoint the value that 0.135 % lie below
     * @param median the middle value
     * @param highPoint the value that 0.135 % lie above
     * @param index the index of the nearer limit
     * @throws IllegalArgumentException if the points are not in ascending order or the index is NaN
     */
    public Known {
      if (!(lowPoint < median && median < highPoint)) {
        throw new IllegalArgumentException(
            "points out of order: " + lowPoint + ", " + median + ", " + highPoint);
      }
      if (Double.isNaN(index)) {
        throw new IllegalArgumentException("index is NaN");
      }
    }
  }

  /**
   * Too few values to know the far points.
   *
   * @param has how many there are
   * @param needs how many are needed
   */
  record TooFew(int has, int needs) implements PercentileIndex {
    /**
     * Checks the counts.
     *
     * @param has how many there are
     * @param needs how many are needed
     * @throws IllegalArgumentException if a count is negative or there are as many as are needed
     */
    public TooFew {
      Require.atLeast(has, 0, "has");
      Require.atLeast(needs, has + 1, "needs");
    }
  }

  /**
   * The assumed shape has no upper far point: its power takes all values below a bound, and three
   * deviations lie beyond it. A low point that does not exist is zero instead, where such values
   * end.
   */
  record NoHighPoint() implements PercentileIndex {}

  /**
   * So many values are equal that a far point is the median.
   *
   * @param median the median
   */
  record NoSpread(double median) implements PercentileIndex {
    /**
     * Checks the median.
     *
     * @param median the median
     * @throws IllegalArgumentException if it is NaN or infinite
     */
    public NoSpread {
      Require.finite(median, "median");
    }
  }

  /**
   * Computes the index.
   *
   * @param values at least three finite numbers, not all equal; above zero unless the shape is
   *     empirical
   * @param shape what the far points are taken from
   * @param lower the lower limit, if any
   * @param upper the upper limit, if any
   * @return the index, or why there is none
   * @throws IllegalArgumentException if there are fewer than three values, all are equal, one is
   *     not usable for the shape, there is no limit, one is not finite, or they are not in order
   */
  static PercentileIndex of(
      double[] values, Shape shape, OptionalDouble lower, OptionalDouble upper) {
    Require.values(values, 3);
    Require.spread(values, "values");
    Limits.require(lower, upper);
    if (shape == Shape.EMPIRICAL && values.length < VALUES_FOR_FAR_POINTS) {
      return new TooFew(values.length, VALUES_FOR_FAR_POINTS);
    }
    FarPoints points = FarPoints.of(values, shape);
    if (upper.isPresent() && Double.isInfinite(points.high())) {
      return new NoHighPoint();
    }
    return points.low() < points.median() && points.median() < points.high()
        ? new Known(points.low(), points.median(), points.high(), points.index(lower, upper))
        : new NoSpread(points.median());
  }

  /**
   * The confidence interval of the index by the bootstrap, the shape fitted again to every sample
   * drawn. See {@link Bootstrap} on how little it holds for few values: of a lognormal population
   * the 95 % interval with the shape known to be lognormal held the truth in 82, 85, 89 and 92 % at
   * n = 8, 12, 20 and 50.
   *
   * @param values as for {@link #of}
   * @param shape what the far points are taken from
   * @param lower the lower limit, if any
   * @param upper the upper limit, if any
   * @param level the confidence level, between 0 and 1
   * @param samples how many samples to draw, at least 100
   * @param seed where the random numbers start
   * @return the interval; nothing where there is no index, the samples drawn do not spread about
   *     it, or the shape is a power and there are only three values: two of them fit every power
   * @throws IllegalArgumentException as {@link #of}, or if the level is not between 0 and 1 or
   *     there are fewer than 100 samples
   */
  static Optional<Interval> interval(
      double[] values,
      Shape shape,
      OptionalDouble lower,
      OptionalDouble upper,
      double level,
      int samples,
      long seed) {
    boolean enough = shape != Shape.POWER || values.length > 3;
    return of(values, shape, lower, upper) instanceof Known && enough
        ? Bootstrap.of(values, v -> FarPoints.of(v, shape).index(lower, upper), samples, seed)
            .interval(level)
        : Optional.empty();
  }
}
