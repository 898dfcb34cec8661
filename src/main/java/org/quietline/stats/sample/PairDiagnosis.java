package org.quietline.stats.sample;

import java.util.Arrays;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * What the differences of pairs say besides {@link DuplicateDeviation}: two other estimates of the
 * same deviation, and whether the readings are too coarse for any of them.
 *
 * <p>{@code mean|d|/1.12838} is the estimate from ranges; {@code median|d|/0.95387} stands up to
 * half of the pairs being wild. For normal readings all three agree within their errors: much
 * larger squares than median say that a few pairs are wild. Divisors are {@code 2/√π} and {@code
 * √2·Φ⁻¹(3/4)}. Sizes that agree to 1e-9 of the largest are counted as one. Source: ISO
 * 7870-2:2013; Thompson and Howarth (1976), Analyst 101, 690–698; the rule for coarseness is a
 * convention of ours, held to simulation of rounded readings.
 *
 * @param pairs how many pairs, at least 1
 * @param deviationByRange the deviation from the mean size of a difference
 * @param deviationByMedian the deviation from the median size of a difference
 * @param zeros how many differences are zero
 * @param distinct how many different sizes there are, zero included
 */
public record PairDiagnosis(
    int pairs, double deviationByRange, double deviationByMedian, int zeros, int distinct) {
  private static final double BY_MEDIAN = Math.sqrt(2) * Normal.exceededWith(0.25);
  private static final double SAME = 1e-9;

  /** More zeros than this share are a sign of coarse readings. */
  private static final double MOST_ZEROS = 0.25;

  /** So are fewer different sizes than this. */
  private static final int LEAST_DISTINCT = 5;

  /** How fine the steps of the readings are beside their scatter. */
  public enum Resolution {
    /** Nothing speaks against the deviation. */
    FINE,
    /** More than a quarter of the differences are zero, or there are fewer than five sizes. */
    COARSE,
    /** Fewer than five pairs cannot tell. */
    TOO_FEW_PAIRS
  }

  /**
   * Checks the ranges.
   *
   * @param pairs how many pairs
   * @param deviationByRange the deviation from the mean size of a difference
   * @param deviationByMedian the deviation from the median size of a difference
   * @param zeros how many differences are zero
   * @param distinct how many different sizes there are
   * @throws IllegalArgumentException if there is no pair, a deviation is negative or not finite, or
   *     a count is out of range
   */
  public PairDiagnosis {
    Require.atLeast(pairs, 1, "pairs");
    Require.notNegative(deviationByRange, "deviation by range");
    Require.notNegative(deviationByMedian, "deviation by median");
    Require.atLeast(zeros, 0, "zeros");
    Require.atLeast(distinct, 1, "distinct");
  }

  /**
   * Looks at the differences.
   *
   * @param differences the difference of each pair, at least one, signs irrelevant
   * @return the diagnosis
   * @throws IllegalArgumentException if there is none or one is NaN or infinite
   */
  public static PairDiagnosis of(double... differences) {
    Require.values(differences, 1);
    double[] sizes = Arrays.stream(differences).map(Math::abs).sorted().toArray();
    double same = SAME * sizes[sizes.length - 1];
    Sum sum = new Sum();
    int zeros = 0;
    int distinct = 0;
    double last = Double.NEGATIVE_INFINITY;
    for (double size : sizes) {
      sum.add(size);
      zeros += size <= same ? 1 : 0;
      if (size - last > same) {
        distinct++;
        last = size;
      }
    }
    return new PairDiagnosis(
        sizes.length,
        MovingRange.deviation(sum.value() / sizes.length),
        RobustSummary.medianOf(sizes) / BY_MEDIAN,
        zeros,
        distinct);
  }

  /**
   * Whether the readings are fine enough.
   *
   * @return the resolution
   */
  public Resolution resolution() {
    if (pairs < LEAST_DISTINCT) {
      return Resolution.TOO_FEW_PAIRS;
    }
    return zeros > MOST_ZEROS * pairs || distinct < LEAST_DISTINCT
        ? Resolution.COARSE
        : Resolution.FINE;
  }
}
