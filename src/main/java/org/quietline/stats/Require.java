package org.quietline.stats;

import java.util.Arrays;
import java.util.Locale;

/** Checks of arguments, written so that NaN fails. */
final class Require {
  private Require() {}

  /** At least {@code least} values, each a finite number below 1e150 in size. */
  static void values(double[] values, int least) {
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

  /** Not all the same, and apart by so much that squares of deviations are not lost. */
  static void spread(double[] values, String what) {
    double range = Arrays.stream(values).max().orElse(0) - Arrays.stream(values).min().orElse(0);
    if (range == 0) {
      throw new IllegalArgumentException("all " + what + " are equal: " + values[0]);
    }
    if (!(range >= 1e-140)) {
      throw new IllegalArgumentException("spread of " + what + " is too small: " + range);
    }
  }

  static void finite(double value, String name) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(name + " is " + value);
    }
  }

  static void positive(double value, String name) {
    if (!(value > 0 && Double.isFinite(value))) {
      throw new IllegalArgumentException(name + " must be above zero, is " + value);
    }
  }

  static void notNegative(double value, String name) {
    if (!(value >= 0 && Double.isFinite(value))) {
      throw new IllegalArgumentException(name + " must not be below zero, is " + value);
    }
  }

  /** Strictly between 0 and 1. */
  static void share(double value, String name) {
    if (!(value > 0 && value < 1)) {
      throw new IllegalArgumentException(name + " must be between 0 and 1, is " + value);
    }
  }

  static void atLeast(int value, int least, String name) {
    if (value < least) {
      throw new IllegalArgumentException(name + " must be at least " + least + ", is " + value);
    }
  }
}
