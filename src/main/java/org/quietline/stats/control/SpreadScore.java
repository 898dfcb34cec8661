package org.quietline.stats.control;

import java.util.Arrays;

/**
 * Scores that tell of the spread of single values: near zero on average while the deviation is the
 * stated one, higher when it grows, lower when it shrinks.
 *
 * <p>{@code (√|u| − m)/s} with {@code u = (x − centre)/deviation}; {@code m = 2^¼·Γ(¾)/√π} and
 * {@code s² = √(2/π) − m²} are the mean and variance of {@code √|Z|} for a standard normal Z, 0.822
 * and 0.349 in the source. For normal values of the stated deviation the score has mean 0 and
 * deviation 1 exactly and is close to normal, so a {@link CumulativeSum} with centre 0 and
 * deviation 1 on the scores watches the deviation. It answers to a shift of the mean too. Source:
 * Hawkins (1981), J. Qual. Technol. 13, 228–231.
 */
public final class SpreadScore {
  private static final double MEAN = 0.822_178_958_662_458_6;
  private static final double DEVIATION = 0.349_150_856_701_771;

  private SpreadScore() {}

  /**
   * The scores of values.
   *
   * @param centre the centre, finite
   * @param deviation the deviation of single values, above zero
   * @param values finite numbers, possibly none
   * @return a score for each, −2.35 for a value on the centre and without an upper bound
   * @throws IllegalArgumentException if an argument is outside its range, NaN or infinite
   */
  public static double[] of(double centre, double deviation, double... values) {
    return Arrays.stream(ChartedSeries.standardise(centre, deviation, values))
        .map(u -> (Math.sqrt(Math.abs(u)) - MEAN) / DEVIATION)
        .toArray();
  }
}
