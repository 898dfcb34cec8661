package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

/** Agreement counted in digits. */
public final class Digits {
  private Digits() {}

  /** The log relative error: how many decimal digits agree, 17 for equality. */
  public static double agreeing(double actual, double expected) {
    if (actual == expected) {
      return 17;
    }
    double error = expected == 0 ? Math.abs(actual) : Math.abs((actual - expected) / expected);
    return -Math.log10(error);
  }

  public static void assertAgree(double least, double expected, double actual, String what) {
    double digits = agreeing(actual, expected);
    assertTrue(
        digits >= least,
        () -> what + ": " + actual + " agrees with " + expected + " to " + digits + " digits");
  }

  public static void assertRelative(double expected, double actual, double tolerance, String what) {
    assertEquals(expected, actual, tolerance * Math.abs(expected), what);
  }
}
