package org.quietline.assess;

/** What differences of numbers read in steps can show. */
final class Differences {
  /** A spread below this share of the last reported digit is an accident of arithmetic. */
  private static final double DUST = 1e-6;

  private Differences() {}

  /** Whether a deviation in the method's unit is no more than rounding of doubles. */
  static boolean areEqual(Records records, double deviation) {
    return !(deviation >= DUST * Math.pow(10, -records.method().decimals()));
  }
}
