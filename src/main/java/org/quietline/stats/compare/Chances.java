package org.quietline.stats.compare;

/** Checks of chances. */
final class Chances {
  private Chances() {}

  static void require(double chance) {
    if (!(chance >= 0 && chance <= 1)) {
      throw new IllegalArgumentException("chance must be from 0 to 1, is " + chance);
    }
  }

  /** Checks where a value stands among n. */
  static void requirePlace(int place, int n) {
    if (place < 0 || place >= n) {
      throw new IllegalArgumentException("place must be from 0 to " + (n - 1) + ", is " + place);
    }
  }
}
