package org.quietline.report.pdf;

import java.security.SecureRandom;

/** Names font subsets by a fixed sequence, so that equal documents give equal bytes. */
final class FixedRandom extends SecureRandom {
  private static final long serialVersionUID = 1L;

  private long state;

  FixedRandom(long seed) {
    state = seed;
  }

  /** A linear congruential step; constants of Knuth's MMIX. */
  @Override
  public double nextDouble() {
    state = state * 6364136223846793005L + 1442695040888963407L;
    return (state >>> 11) * 0x1.0p-53;
  }
}
