package org.quietline.stats.runlength;

/**
 * What the mean of the values does from the first value on, in deviations of single values from the
 * centre of the chart.
 */
public sealed interface Change {
  /**
   * No change: the mean stays at the centre, and every signal is a false one.
   *
   * @return a shift of zero
   */
  static Shift none() {
    return new Shift(0);
  }

  /**
   * A sudden shift that stays.
   *
   * @param size how far the mean of every value is from the centre, at most 100 either way
   * @return the shift
   * @throws IllegalArgumentException if the size is outside its range or NaN
   */
  static Shift shift(double size) {
    return new Shift(size);
  }

  /**
   * A steady drift: the mean of the t-th value is {@code t·perValue}.
   *
   * @param perValue how far the mean moves from one value to the next, from 0.0001 to 100 either
   *     way
   * @return the drift
   * @throws IllegalArgumentException if the figure is outside its range or NaN
   */
  static Drift drift(double perValue) {
    return new Drift(perValue);
  }

  /**
   * The mean of a value.
   *
   * @param value the number of the value, counted from 1
   * @return its mean in deviations from the centre
   */
  double mean(long value);

  /**
   * A shift that stays; zero is no change.
   *
   * @param size how far the mean of every value is from the centre
   */
  record Shift(double size) implements Change {
    /**
     * Checks the size.
     *
     * @param size how far the mean of every value is from the centre
     * @throws IllegalArgumentException if it is more than 100 either way or NaN
     */
    public Shift {
      if (!(Math.abs(size) <= 100)) {
        throw new IllegalArgumentException("shift must be from -100 to 100, is " + size);
      }
    }

    @Override
    public double mean(long value) {
      return size;
    }
  }

  /**
   * A mean that moves by the same step from each value to the next; the first value is one step
   * from the centre.
   *
   * @param perValue the step
   */
  record Drift(double perValue) implements Change {
    /**
     * Checks the step.
     *
     * @param perValue the step
     * @throws IllegalArgumentException if it is below 0.0001 or above 100 in size, or NaN
     */
    public Drift {
      if (!(Math.abs(perValue) >= 1e-4 && Math.abs(perValue) <= 100)) {
        throw new IllegalArgumentException(
            "drift per value must be from 0.0001 to 100 in size, is " + perValue);
      }
    }

    @Override
    public double mean(long value) {
      return value * perValue;
    }
  }
}
