package org.quietline.stats.compare;

/** Which end of a sample is suspected, decided before the values are seen. */
public enum Suspect {
  /** Only the largest values. */
  LARGEST,
  /** Only the smallest values. */
  SMALLEST,
  /** Whichever end is farther out; the chance counts both. */
  EITHER
}
