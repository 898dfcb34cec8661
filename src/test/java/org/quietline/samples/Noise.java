package org.quietline.samples;

import java.util.SplittableRandom;

/** Random numbers that are the same on every machine: a fixed seed and {@link StrictMath} only. */
final class Noise {
  private final SplittableRandom random;

  Noise(long seed) {
    this.random = new SplittableRandom(seed);
  }

  /** Uniform on [0, 1). */
  double uniform() {
    return random.nextDouble();
  }

  /** A whole number from the first bound to the second, both included. */
  int between(int least, int most) {
    return random.nextInt(least, most + 1);
  }

  /** Normal with mean 0, by the transform of Box and Muller (1958); the sine half is not used. */
  double normal(double deviation) {
    double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - random.nextDouble()));
    return deviation * radius * StrictMath.cos(2 * StrictMath.PI * random.nextDouble());
  }
}
