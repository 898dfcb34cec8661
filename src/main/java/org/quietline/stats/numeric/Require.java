package org.quietline.stats.numeric;

import java.util.Arrays;
import java.util.Locale;

/** Checks of arguments, written so that NaN fails. */
public final class Require {
  /**
   * Of the largest number that values were computed from, the spread that may be rounding alone.
   */
  public static final double ROUNDING = 1e-12;

  private Require() {}

  /**
   * At least so many values, each a finite number of at most 1e150 in size.
   *
   * @param values the values
   * @param least how many are needed
   * @throws IllegalArgumentException if there are fewer, or one is no usable number
   */
  public static void values(double[] values, int least) {
    if (values.length < least) {
      throw new IllegalArgumentException(
          "needs at least "
              + least
              + (least == 1 ? " value" : " values")
              + ", has "
              + values.length);
    }
    for (int i = 0; i < values.length; i++) {
      if (!(Math.abs(values[i]) <= 1e150)) {
        throw new IllegalArgumentException(
            String.format(Locale.ROOT, "value %d is %s, not a usable number", i + 1, values[i]));
      }
    }
  }

  /**
   * Not all the same, and apart by so much that squares of deviations are not lost.
   *
   * @param values the values
   * @param what their name in the plural
   * @throws IllegalArgumentException if they are all equal or nearly so
   */
  public static void spread(double[] values, String what) {
    double range = Arrays.stream(values).max().orElse(0) - Arrays.stream(values).min().orElse(0);
    if (range == 0) {
      throw new IllegalArgumentException("all " + what + " are equal: " + values[0]);
    }
    if (!(range >= 1e-140)) {
      throw new IllegalArgumentException("spread of " + what + " is too small: " + range);
    }
  }

  /**
   * Apart by more than rounding: differences of decimals such as {@code 0.62 − 0.60} and {@code
   * 0.58 − 0.56} are equal, and the doubles are not.
   *
   * @param values the values, at least one
   * @param size the largest number that they were computed from, in size
   * @param what their name in the plural
   * @throws IllegalArgumentException if they are all equal, or their range is at most {@link
   *     #ROUNDING} of the size
   */
  public static void scatter(double[] values, double size, String what) {
    spread(values, what);
    double range = Arrays.stream(values).max().orElse(0) - Arrays.stream(values).min().orElse(0);
    if (!(range > ROUNDING * size)) {
      throw new IllegalArgumentException(
          "all " + what + " are equal but for rounding: " + values[0]);
    }
  }

  /**
   * A finite number.
   *
   * @param value the number
   * @param name its name
   * @throws IllegalArgumentException if it is NaN or infinite
   */
  public static void finite(double value, String name) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(name + " is " + value);
    }
  }

  /**
   * A finite number above zero.
   *
   * @param value the number
   * @param name its name
   * @throws IllegalArgumentException if it is not
   */
  public static void positive(double value, String name) {
    if (!(value > 0 && Double.isFinite(value))) {
      throw new IllegalArgumentException(name + " must be above zero, is " + value);
    }
  }

  /**
   * A finite number of zero or more.
   *
   * @param value the number
   * @param name its name
   * @throws IllegalArgumentException if it is not
   */
  public static void notNegative(double value, String name) {
    if (!(value >= 0 && Double.isFinite(value))) {
      throw new IllegalArgumentException(name + " must not be below zero, is " + value);
    }
  }

  /**
   * Strictly between 0 and 1.
   *
   * @param value the number
   * @param name its name
   * @throws IllegalArgumentException if it is not
   */
  public static void share(double value, String name) {
    if (!(value > 0 && value < 1)) {
      throw new IllegalArgumentException(name + " must be between 0 and 1, is " + value);
    }
  }

  /**
   * A count that is large enough.
   *
   * @param value the count
   * @param least the smallest allowed
   * @param name its name
   * @throws IllegalArgumentException if it is smaller
   */
  public static void atLeast(int value, int least, String name) {
    if (value < least) {
      throw new IllegalArgumentException(name + " must be at least " + least + ", is " + value);
    }
  }
}
