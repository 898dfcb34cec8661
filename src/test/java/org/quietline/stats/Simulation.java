package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;

/** Seeded simulation for second opinions. */
public final class Simulation {
  private Simulation() {}

  public static double[] normal(SplittableRandom random, int n) {
    double[] values = new double[n];
    for (int i = 0; i < n; i++) {
      values[i] = normal(random);
    }
    return values;
  }

  /** A standard normal number by Box and Muller. */
  public static double normal(SplittableRandom random) {
    double radius = Math.sqrt(-2 * Math.log(1 - random.nextDouble()));
    return radius * Math.cos(2 * Math.PI * random.nextDouble());
  }

  /** A share seen in so many trials is within four of its own standard errors. */
  public static void assertShare(double expected, int seen, int trials) {
    double error = Math.sqrt(expected * (1 - expected) / trials);
    double share = (double) seen / trials;
    assertTrue(
        Math.abs(share - expected) <= 4 * error,
        () -> "share " + share + ", expected " + expected + " with error " + error);
  }

  public static void assertShareAtLeast(double expected, int seen, int trials) {
    double error = Math.sqrt(expected * (1 - expected) / trials);
    double share = (double) seen / trials;
    assertTrue(share >= expected - 4 * error, () -> "share " + share + " below " + expected);
  }
}
