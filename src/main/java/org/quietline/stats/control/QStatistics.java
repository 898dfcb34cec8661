package org.quietline.stats.control;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.numeric.Require;

/**
 * Q statistics: each value against those before it, on a scale on which an independent normal
 * series in control gives independent standard normal numbers from the start, without a baseline.
 *
 * <p>With m values before x, their mean, and s with m − 1 degrees of freedom, or s₀ about the known
 * centre with m:
 *
 * <ul>
 *   <li>both known: {@code (x − c)/d}, from the first value;
 *   <li>centre unknown: {@code √(m/(m+1))·(x − mean)/d}, from the second;
 *   <li>deviation unknown: {@code Φ⁻¹(T(m, (x − c)/s₀))}, from the second;
 *   <li>both unknown: {@code Φ⁻¹(T(m − 1, √(m/(m+1))·(x − mean)/s))}, from the third.
 * </ul>
 *
 * <p>T is Student's distribution function. A value that comes before that, or whose predecessors
 * have no spread where spread is needed, has none. A change that is there for long enters the
 * estimates and fades from the chart; so it is for the first values, not in place of limits from a
 * baseline. Accurate to about 1e-11. Source: Quesenberry (1991), J. Qual. Technol. 23, 213–224.
 *
 * @param centre the centre, if known
 * @param deviation the deviation, if known, above zero
 */
public record QStatistics(OptionalDouble centre, OptionalDouble deviation) {

  /**
   * Checks what is known.
   *
   * @param centre the centre, if known
   * @param deviation the deviation, if known
   * @throws IllegalArgumentException if the centre is not finite or the deviation not above zero
   */
  public QStatistics {
    centre.ifPresent(c -> Require.finite(c, "centre"));
    deviation.ifPresent(d -> Require.positive(d, "deviation"));
  }

  /**
   * With neither centre nor deviation known.
   *
   * @return the statistics
   */
  public static QStatistics unknown() {
    return new QStatistics(OptionalDouble.empty(), OptionalDouble.empty());
  }

  /**
   * With the centre known and the deviation not.
   *
   * @param centre the centre
   * @return the statistics
   * @throws IllegalArgumentException if the centre is not finite
   */
  public static QStatistics knownCentre(double centre) {
    return new QStatistics(OptionalDouble.of(centre), OptionalDouble.empty());
  }

  /**
   * With the deviation known and the centre not.
   *
   * @param deviation the deviation, above zero
   * @return the statistics
   * @throws IllegalArgumentException if the deviation is not above zero
   */
  public static QStatistics knownDeviation(double deviation) {
    return new QStatistics(OptionalDouble.empty(), OptionalDouble.of(deviation));
  }

  /**
   * With both known.
   *
   * @param centre the centre
   * @param deviation the deviation, above zero
   * @return the statistics
   * @throws IllegalArgumentException if the centre is not finite or the deviation not above zero
   */
  public static QStatistics known(double centre, double deviation) {
    return new QStatistics(OptionalDouble.of(centre), OptionalDouble.of(deviation));
  }

  /**
   * Follows values in time order.
   *
   * @param values finite numbers, possibly none
   * @param restarts for each value, whether what is not known is forgotten before it
   * @return the statistic of each value, none where there is too little before it
   * @throws IllegalArgumentException if a value is NaN or infinite or the lengths differ
   */
  public List<OptionalDouble> trace(double[] values, boolean[] restarts) {
    Require.values(values, 0);
    if (values.length != restarts.length) {
      throw new IllegalArgumentException(
          values.length + " values but " + restarts.length + " restart marks");
    }
    List<OptionalDouble> statistics = new ArrayList<>(values.length);
    Before before = new Before(0);
    for (int i = 0; i < values.length; i++) {
      if (i == 0 || restarts[i]) {
        before = new Before(centre.orElse(values[i]));
      }
      statistics.add(statistic(before, values[i]));
      before.add(values[i]);
    }
    return List.copyOf(statistics);
  }

  private OptionalDouble statistic(Before before, double value) {
    int m = before.count;
    double off = value - before.origin;
    double freedom = centre.isPresent() ? m : m - 1;
    double shrink = 1;
    if (centre.isEmpty()) {
      if (m == 0) {
        return OptionalDouble.empty();
      }
      off -= before.mean;
      shrink = Math.sqrt(m / (m + 1.0));
    }
    if (deviation.isPresent()) {
      return OptionalDouble.of(shrink * off / deviation.getAsDouble());
    }
    double squares = centre.isPresent() ? before.squares : before.squaresAboutMean;
    if (!(squares > 0)) {
      return OptionalDouble.empty();
    }
    double t = shrink * off / Math.sqrt(squares / freedom);
    return OptionalDouble.of(Math.copySign(1, t) * fromStudent(Math.abs(t), freedom));
  }

  /** The normal value that is exceeded as seldom as t of Student's, t zero or more. */
  private static double fromStudent(double t, double freedom) {
    return Math.max(0, Normal.exceededWith(Student.above(t, freedom)));
  }

  /** What the values before tell, taken from an origin so that an offset costs no digits. */
  private static final class Before {
    private final double origin;
    private int count;
    private double mean;
    private double squares;
    private double squaresAboutMean;

    Before(double origin) {
      this.origin = origin;
    }

    /** Updates mean and squares in one pass. Source: Welford (1962), Technometrics 4, 419–420. */
    void add(double value) {
      double off = value - origin;
      count++;
      double step = off - mean;
      mean += step / count;
      squaresAboutMean += step * (off - mean);
      squares += off * off;
    }
  }
}
