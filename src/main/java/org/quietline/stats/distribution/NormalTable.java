package org.quietline.stats.distribution;

/**
 * Normal tails from a table, for sums over thousands of them: good to 1e-12 absolute. Between its
 * entries the tail is the cubic that has their heights and slopes.
 */
final class NormalTable {
  private static final int PER_UNIT = 256;
  private static final double END = 8.5;
  private static final double[] TAILS = new double[(int) (END * PER_UNIT) + 2];
  private static final double[] DENSITIES = new double[TAILS.length];

  static {
    for (int i = 0; i < TAILS.length; i++) {
      double z = (double) i / PER_UNIT;
      TAILS[i] = Normal.above(z);
      DENSITIES[i] = Normal.density(z) / PER_UNIT;
    }
  }

  private NormalTable() {}

  /** The chance of a normal value above z; zero beyond 8.5. */
  static double above(double z) {
    return z < 0 ? 1 - tail(-z) : tail(z);
  }

  private static double tail(double z) {
    if (!(z < END)) {
      return 0;
    }
    double place = z * PER_UNIT;
    int i = (int) place;
    double t = place - i;
    double rest = 1 - t;
    double fall = TAILS[i] - TAILS[i + 1];
    return TAILS[i]
        - t * fall
        - t * rest * (rest * (DENSITIES[i] - fall) - t * (DENSITIES[i + 1] - fall));
  }
}
