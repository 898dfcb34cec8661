package org.quietline.assess;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.stats.Interval;

/**
 * How far the results of single samples differ when they are measured in two ways, and whether that
 * depends on the level. Source: Bland and Altman (1986, 1999) for the limits, with exact intervals;
 * Deming's line with equal scatter of both ways; Passing and Bablok (1983).
 *
 * @param points the samples
 * @param limits between them lie about 95 % of such differences, first less second
 * @param ofLower the 95 % interval of the lower limit
 * @param ofUpper the 95 % interval of the upper limit
 * @param trend the 95 % interval of the slope of the differences along the mean of both; empty
 *     where all samples have one level
 * @param deming the first way as a line of the second, both scattering alike
 * @param passingBablok the same by the medians of slopes
 * @param linearityChance the chance of points that leave the second line so far, if it is straight
 */
public record PairedAgreement(
    List<Point> points,
    Interval limits,
    Interval ofLower,
    Interval ofUpper,
    Optional<Interval> trend,
    Answer<Line> deming,
    Answer<Line> passingBablok,
    OptionalDouble linearityChance) {
  /** The fewest samples from which limits are told. */
  static final int FEWEST = 6;

  /** The fewest samples from which lines are told. */
  static final int FEWEST_FOR_LINES = 10;

  /** Copies the list. */
  public PairedAgreement {
    points = List.copyOf(points);
  }

  /**
   * A sample.
   *
   * @param one its result the first way
   * @param other its result the second way
   */
  public record Point(double one, double other) {
    /**
     * The difference.
     *
     * @return first less second
     */
    public double difference() {
      return one - other;
    }

    /**
     * The level.
     *
     * @return the mean of both
     */
    public double level() {
      return one / 2 + other / 2;
    }
  }

  /**
   * A line, {@code first = intercept + slope·second}.
   *
   * @param slope its slope; 1 where nothing depends on the level
   * @param ofSlope the 95 % interval of that
   * @param intercept its intercept
   * @param ofIntercept the 95 % interval of that
   */
  public record Line(double slope, Interval ofSlope, double intercept, Interval ofIntercept) {}
}
