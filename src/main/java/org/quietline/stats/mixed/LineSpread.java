package org.quietline.stats.mixed;

/** How the lines of groups may differ from their average. */
public enum LineSpread {
  /** In height alone: the lines are parallel. */
  PARALLEL,
  /**
   * In height at the origin and in slope, independently of each other. The origin of the times
   * matters: at it the heights differ least.
   */
  INDEPENDENT,
  /**
   * In height and slope, which may be correlated; the origin of the times does not matter. Needs
   * more groups than a small bench has: with few the correlation often ends at −1 or 1.
   */
  CORRELATED
}
