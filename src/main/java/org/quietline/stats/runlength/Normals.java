package org.quietline.stats.runlength;

import java.util.SplittableRandom;

/** Normal values two by two. Source: Marsaglia and Bray (1964), SIAM Review 6, 260–264. */
final class Normals {
  private final SplittableRandom random;
  private double spare;
  private boolean hasSpare;

  Normals(long seed) {
    this.random = new SplittableRandom(seed);
  }

  double next() {
    hasSpare = !hasSpare;
    if (!hasSpare) {
      return spare;
    }
    double x;
    double y;
    double square;
    do {
      x = random.nextDouble(-1, 1);
      y = random.nextDouble(-1, 1);
      square = x * x + y * y;
    } while (square >= 1 || square == 0);
    double factor = Math.sqrt(-2 * Math.log(square) / square);
    spare = y * factor;
    return x * factor;
  }
}
