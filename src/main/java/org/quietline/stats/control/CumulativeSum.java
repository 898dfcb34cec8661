package org.quietline.stats.control;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.quietline.stats.numeric.Require;

/**
 * The tabular cumulative sum chart, two-sided.
 *
 * <p>With {@code u = (x − centre)/deviation}: {@code C⁺ = max(0, C⁺ + u − k)} and {@code C⁻ =
 * max(0, C⁻ − u − k)}, both from the head start at the beginning and after each restart; a signal
 * when one is above h. A sum equal to h is no signal. Tuned to a shift of {@code 2k} deviations; k
 * = 0.5 and h = 5 give one false signal in 465 values on average. Exact but for rounding in the
 * last digits. Source: Page (1954), Biometrika 41, 100–115; Lucas and Crosier (1982), Technometrics
 * 24, 199–205 (head start); ISO 7870-4:2021; Hawkins and Olwell (1998).
 *
 * @param centre the centre, in the unit of the values
 * @param deviation the deviation of single values, above zero; 1 for sums in the unit of the values
 * @param reference the reference value k in deviations, zero or more
 * @param decision the decision interval h in deviations, above zero
 * @param headStart where both sums start, in deviations, zero or more and not above h
 * @param afterSignal what becomes of the sums after a signal
 */
public record CumulativeSum(
    double centre,
    double deviation,
    double reference,
    double decision,
    double headStart,
    AfterSignal afterSignal) {

  private static final double USUAL_REFERENCE = 0.5;
  private static final double USUAL_DECISION = 5;

  /**
   * Checks the ranges.
   *
   * @param centre the centre
   * @param deviation the deviation of single values
   * @param reference the reference value k
   * @param decision the decision interval h
   * @param headStart where both sums start
   * @param afterSignal what becomes of the sums after a signal
   * @throws IllegalArgumentException if a figure is outside its range or NaN
   */
  public CumulativeSum {
    Require.finite(centre, "centre");
    Require.positive(deviation, "deviation");
    Require.notNegative(reference, "reference value");
    Require.positive(decision, "decision interval");
    Require.notNegative(headStart, "head start");
    if (headStart > decision) {
      throw new IllegalArgumentException(
          "head start " + headStart + " is above the decision interval " + decision);
    }
  }

  /** What becomes of the sums after a signal. */
  public enum AfterSignal {
    /** They go on, until a restart is marked. */
    GO_ON,
    /** Both start anew at the head start with the next value. */
    START_ANEW
  }

  /**
   * The usual chart: k = 0.5, h = 5, no head start, sums go on after a signal.
   *
   * @param centre the centre
   * @param deviation the deviation of single values, above zero
   * @return the chart
   * @throws IllegalArgumentException if a figure is outside its range or NaN
   */
  public static CumulativeSum usual(double centre, double deviation) {
    return new CumulativeSum(
        centre, deviation, USUAL_REFERENCE, USUAL_DECISION, 0, AfterSignal.GO_ON);
  }

  /**
   * A chart whose reference value, decision interval and sums are in the unit of the values; no
   * head start, sums go on after a signal.
   *
   * @param centre the centre
   * @param reference the reference value K, zero or more
   * @param decision the decision interval H, above zero
   * @return the chart
   * @throws IllegalArgumentException if a figure is outside its range or NaN
   */
  public static CumulativeSum inUnits(double centre, double reference, double decision) {
    return new CumulativeSum(centre, 1, reference, decision, 0, AfterSignal.GO_ON);
  }

  /**
   * The same chart with both sums half-way up at each start, so that a shift that is there from the
   * start is seen soon. Source: Lucas and Crosier (1982).
   *
   * @return the chart
   */
  public CumulativeSum withHeadStart() {
    return new CumulativeSum(centre, deviation, reference, decision, decision / 2, afterSignal);
  }

  /**
   * The same chart starting anew after each signal.
   *
   * @return the chart
   */
  public CumulativeSum startingAnewAfterSignals() {
    return new CumulativeSum(
        centre, deviation, reference, decision, headStart, AfterSignal.START_ANEW);
  }

  /**
   * One of the two sums after a value.
   *
   * @param sum the sum, in deviations
   * @param count of how many values it holds something: those since it was last zero or since the
   *     start, this one included. The change behind a signal most likely began with the first of
   *     them
   * @param shift how far the mean of these values is from the centre, in their unit with its sign,
   *     {@code ±deviation·(k + (C − start)/count)}; none where the sum is zero. At a signal it
   *     overstates the change, as the values were chosen by their height
   * @param beyond whether the sum is above the decision interval
   */
  public record Arm(double sum, int count, OptionalDouble shift, boolean beyond) {}

  /**
   * Both sums after a value.
   *
   * @param high the sum for an upward change
   * @param low the sum for a downward change, itself counted upwards
   */
  public record Point(Arm high, Arm low) {
    /**
     * Whether either sum is above the decision interval.
     *
     * @return true at a signal
     */
    public boolean signal() {
      return high.beyond() || low.beyond();
    }
  }

  /**
   * Follows values in time order.
   *
   * @param values finite numbers, possibly none
   * @param restarts for each value, whether both sums start anew before it
   * @return both sums after each value
   * @throws IllegalArgumentException if a value is NaN or infinite, or above 1e150 in size as it is
   *     or in deviations, or the lengths differ
   */
  public List<Point> trace(double[] values, boolean[] restarts) {
    double[] deviations = ChartedSeries.standardise(centre, deviation, values);
    if (values.length != restarts.length) {
      throw new IllegalArgumentException(
          values.length + " values but " + restarts.length + " restart marks");
    }
    List<Point> points = new ArrayList<>(values.length);
    Running high = new Running(1);
    Running low = new Running(-1);
    boolean anew = false;
    for (int i = 0; i < values.length; i++) {
      if (restarts[i] || anew) {
        high.start();
        low.start();
      }
      Point point = new Point(high.after(deviations[i]), low.after(deviations[i]));
      points.add(point);
      anew = point.signal() && afterSignal == AfterSignal.START_ANEW;
    }
    return List.copyOf(points);
  }

  /** One sum on its way. */
  private final class Running {
    private final int side;
    private double sum = headStart;
    private double from = headStart;
    private int count;

    Running(int side) {
      this.side = side;
    }

    void start() {
      sum = headStart;
      from = headStart;
      count = 0;
    }

    Arm after(double u) {
      sum = Math.max(0, sum + side * u - reference);
      if (sum == 0) {
        from = 0;
        count = 0;
        return new Arm(0, 0, OptionalDouble.empty(), false);
      }
      count++;
      double mean = reference + (sum - from) / count;
      return new Arm(sum, count, OptionalDouble.of(side * deviation * mean), sum > decision);
    }
  }
}
