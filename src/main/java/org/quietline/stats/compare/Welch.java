package org.quietline.stats.compare;

/**
 * Effective degrees of freedom of a variance of which one part is estimated and the rest is known.
 * Source: JCGM 100:2008, G.4.1.
 */
final class Welch {
  private Welch() {}

  /** {@code total²·df/part²}: df where nothing else enters, infinite where the part is zero. */
  static double effective(double part, double df, double total) {
    if (part == total) {
      return df;
    }
    double share = part / total;
    return df / (share * share);
  }
}
