package org.quietline.stats.mixed;

/** Which likelihood is made as large as possible. */
enum Likelihood {
  /**
   * That of the error contrasts, after Patterson and Thompson (1971): divides by values less fixed
   * coefficients.
   */
  RESTRICTED,
  /** That of the values: divides by their number. */
  FULL;

  double divisor(Blocks blocks) {
    return this == RESTRICTED ? blocks.degreesOfFreedom() : blocks.fixed().observations();
  }
}
