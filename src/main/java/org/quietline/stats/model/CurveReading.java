package org.quietline.stats.model;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.quietline.stats.Interval;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;

/**
 * The x of an item that gave a reading, by a calibration curve with one predictor, within the range
 * that was calibrated.
 *
 * <p>The set of all x of the range next to the estimate that Student's t test does not reject,
 * {@code |f(x) − y| ≤ t·s·√(1/w + x′(X′WX)⁻¹x)}; the curve must rise or fall throughout the range.
 * An end that the test does not reach within the range is left open. Ends are found on a grid of
 * 1000 steps and then to about 1e-14. Source: ISO 11095:1996; Draper and Smith (1998), 3.2; for the
 * curve NIST/SEMATECH e-Handbook 2.3.6.5. For a straight line use {@link InversePrediction}, which
 * needs no range.
 */
public sealed interface CurveReading {
  /** How many steps the walk over the range takes. */
  int STEPS = 1000;

  /**
   * The place was found.
   *
   * @param at where the fitted curve has the height of the reading
   * @param lower the lower end, or empty where all lower places of the range stay possible
   * @param upper the upper end, or empty where all higher places of the range stay possible
   */
  record Found(double at, OptionalDouble lower, OptionalDouble upper) implements CurveReading {}

  /**
   * The fitted curve has no such height within the range.
   *
   * @param heights its lowest and highest height there
   */
  record NotReached(Interval heights) implements CurveReading {}

  /**
   * The fitted curve turns within the range, so that one reading would have two places.
   *
   * @param at about where it turns first
   */
  record Turns(double at) implements CurveReading {}

  /**
   * Reads a curve backwards.
   *
   * @param curve the calibration curve, with one predictor
   * @param range the range that was calibrated, from a lower to a higher x
   * @param y the reading, or the mean of several, finite
   * @param weight its weight on the scale of the points, above zero; the mean of m readings of
   *     weight 1 has weight m
   * @param level the confidence level, between 0 and 1
   * @return the place, or why there is none
   * @throws IllegalArgumentException if the curve has more than one predictor, the range has no
   *     width, y is not finite, the weight is not above zero or the level is not between 0 and 1
   */
  static CurveReading of(
      LeastSquares curve, Interval range, double y, double weight, double level) {
    if (curve.terms().predictors() != 1) {
      throw new IllegalArgumentException(
          "one predictor is needed, there are " + curve.terms().predictors());
    }
    Require.positive(range.upper() - range.lower(), "width of the range");
    Require.finite(y, "reading");
    Require.positive(weight, "weight");
    Require.share(level, "level");
    OptionalDouble turn = turn(curve, range);
    if (turn.isPresent()) {
      return new Turns(turn.getAsDouble());
    }
    double from = curve.at(range.lower());
    double to = curve.at(range.upper());
    if (y < Math.min(from, to) || y > Math.max(from, to)) {
      return new NotReached(new Interval(Math.min(from, to), Math.max(from, to)));
    }
    double at = Roots.between(x -> curve.at(x) - y, range.lower(), range.upper());
    DoubleUnaryOperator outside =
        x -> {
          Interval likely = curve.predictionInterval(level, weight, x);
          return Math.max(likely.lower() - y, y - likely.upper());
        };
    double stride = (range.upper() - range.lower()) / STEPS;
    return new Found(
        at, end(outside, at, -stride, range.lower()), end(outside, at, stride, range.upper()));
  }

  private static OptionalDouble turn(LeastSquares curve, Interval range) {
    double before = curve.at(range.lower());
    double whole = curve.at(range.upper()) - before;
    for (int i = 1; i <= STEPS; i++) {
      double share = (double) i / STEPS;
      double x = range.lower() * (1 - share) + range.upper() * share;
      double height = curve.at(x);
      if (!((height - before) * whole > 0)) {
        return OptionalDouble.of(x);
      }
      before = height;
    }
    return OptionalDouble.empty();
  }

  /** Where the function first rises above zero, going in strides from a place where it does not. */
  private static OptionalDouble end(
      DoubleUnaryOperator outside, double from, double stride, double last) {
    if (outside.applyAsDouble(from) >= 0) {
      return OptionalDouble.of(from);
    }
    double near = from;
    for (int i = 0; i < STEPS && near != last; i++) {
      double next = near + stride;
      double far = stride > 0 ? Math.min(last, next) : Math.max(last, next);
      if (outside.applyAsDouble(far) > 0) {
        return OptionalDouble.of(Roots.between(outside, Math.min(near, far), Math.max(near, far)));
      }
      near = far;
    }
    return OptionalDouble.empty();
  }
}
