package org.quietline.stats.model;

import java.util.OptionalDouble;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.numeric.Require;

/**
 * Where a straight line has a given height: all x that Student's t test does not reject, which need
 * not be an interval.
 *
 * <p>With {@code e = y − ȳ}, {@code D = x − x̄} and κ = 1/w + 1/Σw (without 1/w for a fixed
 * height), the set is {@code (b·D − e)² ≤ t²·s²·(κ + D²/Sxx)}. With {@code g = t²·s²/(b²·Sxx)} it
 * is an interval where g is below 1, that is where the slope differs from zero at the same level;
 * else everything outside an interval, or everything. It holds the true x with exactly the stated
 * chance for normal errors, at any number of points; of the bounded sets alone nothing like it is
 * true. Source: Fieller, Some problems in interval estimation, J. R. Statist. Soc. B 16 (1954)
 * 175–185; Draper and Smith (1998), 3.2; Graybill (1976).
 *
 * <p>An end of the set of level 1 − 2α is a one-sided bound of level 1 − α where the slope's sign
 * is beyond doubt. Extrapolation is not marked: whether x lies within the points is the caller's to
 * see.
 */
public sealed interface InversePrediction {

  /**
   * How far the slope is from being told from zero, {@code g = (t·s(b)/b)²}: told at 0, not told
   * from 1 on, infinite for a slope of zero.
   *
   * @return g
   */
  double g();

  /**
   * Whether the set holds an x.
   *
   * @param x the place
   * @return true inside, ends included
   */
  boolean contains(double x);

  /**
   * Where the fitted line has the height, a bounded set's best single value.
   *
   * @return the place, or empty where the fitted line is flat
   */
  OptionalDouble estimate();

  /**
   * An interval.
   *
   * @param at where the fitted line has the height
   * @param interval all places that are not rejected
   * @param g how far the slope is from being told from zero, below 1
   */
  record Bounded(double at, Interval interval, double g) implements InversePrediction {
    /**
     * Checks the ranges.
     *
     * @param at where the fitted line has the height
     * @param interval all places that are not rejected
     * @param g how far the slope is from being told from zero
     * @throws IllegalArgumentException if the place is not finite or g is not from 0 to 1
     */
    public Bounded {
      Require.finite(at, "place");
      if (!(g >= 0 && g <= 1)) {
        throw new IllegalArgumentException("g of a bounded set must be from 0 to 1, is " + g);
      }
    }

    @Override
    public boolean contains(double x) {
      return interval.contains(x);
    }

    @Override
    public OptionalDouble estimate() {
      return OptionalDouble.of(at);
    }
  }

  /**
   * All places but those between two ends: the slope may have either sign. One end is infinite
   * where g is exactly 1.
   *
   * @param estimate where the fitted line has the height, empty where it is flat
   * @param below the upper end of the lower ray
   * @param above the lower end of the upper ray
   * @param g how far the slope is from being told from zero, 1 or more
   */
  record TwoRays(OptionalDouble estimate, double below, double above, double g)
      implements InversePrediction {
    /**
     * Checks the ranges.
     *
     * @param estimate where the fitted line has the height
     * @param below the upper end of the lower ray
     * @param above the lower end of the upper ray
     * @param g how far the slope is from being told from zero
     * @throws IllegalArgumentException if the ends are not in order or g is below 1
     */
    public TwoRays {
      if (!(below <= above)) {
        throw new IllegalArgumentException("rays up to " + below + " and from " + above);
      }
      requireUntold(g);
    }

    @Override
    public boolean contains(double x) {
      return x <= below || x >= above;
    }
  }

  /**
   * All places: the points say nothing about where the line has the height.
   *
   * @param estimate where the fitted line has the height, empty where it is flat
   * @param g how far the slope is from being told from zero, 1 or more
   */
  record WholeLine(OptionalDouble estimate, double g) implements InversePrediction {
    /**
     * Checks the range.
     *
     * @param estimate where the fitted line has the height
     * @param g how far the slope is from being told from zero
     * @throws IllegalArgumentException if g is below 1
     */
    public WholeLine {
      requireUntold(g);
    }

    @Override
    public boolean contains(double x) {
      return true;
    }
  }

  /** No place: the points lie exactly on a flat line of another height. */
  record Nowhere() implements InversePrediction {
    @Override
    public double g() {
      return Double.POSITIVE_INFINITY;
    }

    @Override
    public boolean contains(double x) {
      return false;
    }

    @Override
    public OptionalDouble estimate() {
      return OptionalDouble.empty();
    }
  }

  /**
   * Where the true line crosses a fixed height, itself free of error.
   *
   * @param line the line, without a shared uncertainty
   * @param height the height, finite
   * @param level the chance of holding the true place, between 0 and 1
   * @return the set
   * @throws IllegalArgumentException if the line has a shared uncertainty, the height is not finite
   *     or the level is not between 0 and 1
   */
  static InversePrediction ofHeight(StraightLine line, double height, double level) {
    return solve(line, height, 0, level);
  }

  /**
   * The x of an item that gave a reading y, or several with mean y: calibration. The scatter of
   * several readings is not used; it adds nothing to s.
   *
   * @param line the line, without a shared uncertainty
   * @param y the reading, or the mean of several, finite
   * @param weight its weight on the scale of the points, above zero; the mean of m readings of
   *     weight 1 has weight m
   * @param level the chance of holding the true x, between 0 and 1
   * @return the set
   * @throws IllegalArgumentException if the line has a shared uncertainty, y is not finite, the
   *     weight is not above zero or the level is not between 0 and 1
   */
  static InversePrediction ofReading(StraightLine line, double y, double weight, double level) {
    Require.positive(weight, "weight");
    return solve(line, y, 1 / weight, level);
  }

  private static InversePrediction solve(
      StraightLine line, double height, double newShare, double level) {
    Require.finite(height, "height");
    Require.share(level, "level");
    if (line.sharedUncertainty() > 0) {
      throw new IllegalArgumentException(
          "no exact set for a line with a shared uncertainty, here " + line.sharedUncertainty());
    }
    double t = Student.exceededWith((1 - level) / 2, line.degreesOfFreedom());
    double rise = line.slope();
    double away = height - line.at(line.meanOfX());
    double scatter = t * line.residualDeviation() * Math.sqrt(newShare + line.meanShare());
    int ofSlope = -exponent(rise, t * line.slopeError());
    int ofHeight = -exponent(away, scatter);
    double b = Math.scalb(rise, ofSlope);
    double unsure = Math.scalb(t * line.slopeError(), ofSlope);
    double off = Math.scalb(away, ofHeight);
    double wide = Math.scalb(scatter, ofHeight);
    int back = ofSlope - ofHeight;
    double lead = (b - unsure) * (b + unsure);
    double under = unsure * unsure * off * off + lead * wide * wide;
    if (b == 0 && unsure == 0) {
      return off == 0 ? new WholeLine(OptionalDouble.empty(), infinite()) : new Nowhere();
    }
    double g = b == 0 ? infinite() : (unsure / b) * (unsure / b);
    OptionalDouble at =
        b == 0
            ? OptionalDouble.empty()
            : OptionalDouble.of(line.meanOfX() + Math.scalb(off / b, back));
    if (!(lead > 0) && !(under > 0)) {
      return new WholeLine(at, g);
    }
    double middle = b * off;
    double far = middle + Math.copySign(Math.sqrt(Math.max(0, under)), middle);
    double one = line.meanOfX() + Math.scalb(far / (lead > 0 ? lead : Math.min(lead, -0.0)), back);
    double other =
        line.meanOfX() + Math.scalb(far == 0 ? 0 : (off - wide) * (off + wide) / far, back);
    double low = Math.min(one, other);
    double high = Math.max(one, other);
    return lead > 0
        ? new Bounded(at.orElseThrow(), new Interval(low, high), g)
        : new TwoRays(at, low, high, g);
  }

  /** The power of two that takes the larger of two sizes near one, so that no product is lost. */
  private static int exponent(double a, double b) {
    double size = Math.max(Math.abs(a), Math.abs(b));
    return size == 0 ? 0 : Math.getExponent(size);
  }

  private static void requireUntold(double g) {
    if (!(g >= 1)) {
      throw new IllegalArgumentException("g of an unbounded set must be at least 1, is " + g);
    }
  }

  private static double infinite() {
    return Double.POSITIVE_INFINITY;
  }
}
