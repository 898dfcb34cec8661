package org.quietline.stats.control;

import org.quietline.stats.compare.BinomialTail;
import org.quietline.stats.numeric.Require;

/**
 * Limits of shares of a sample that have a property, the p chart: {@code share ± 3·√(share·(1 −
 * share)/n)}, kept within 0 and 1.
 *
 * <p>They take the counts as binomial and the share as the true one; {@link #falseAlarm} gives the
 * true chance of a false alarm. Source: ISO 7870-2:2013, attribute charts; NIST/SEMATECH
 * e-Handbook, section 6.3.3.2.
 *
 * @param share the share of all samples together, from 0 to 1
 */
public record ShareLimits(double share) {
  private static final double WIDTH = 3;

  /**
   * Checks the share.
   *
   * @param share the share
   * @throws IllegalArgumentException if it is not from 0 to 1
   */
  public ShareLimits {
    if (!(share >= 0 && share <= 1)) {
      throw new IllegalArgumentException("share must be from 0 to 1, is " + share);
    }
  }

  /**
   * From samples.
   *
   * @param counts how many of each sample have the property, at least one sample
   * @param sizes the size of each sample, at least 1
   * @return the limits
   * @throws IllegalArgumentException if there is no sample, the lengths differ, or a count is not
   *     from 0 to its size
   */
  public static ShareLimits of(int[] counts, int[] sizes) {
    Require.atLeast(counts.length, 1, "number of samples");
    if (counts.length != sizes.length) {
      throw new IllegalArgumentException(counts.length + " counts but " + sizes.length + " sizes");
    }
    long sum = 0;
    long all = 0;
    for (int i = 0; i < counts.length; i++) {
      Require.atLeast(counts[i], 0, "count");
      Require.atLeast(sizes[i], Math.max(1, counts[i]), "sample size");
      sum += counts[i];
      all += sizes[i];
    }
    return new ShareLimits((double) sum / all);
  }

  /**
   * The limits of the share in a sample.
   *
   * @param size the size of the sample, at least 1
   * @return the limits
   * @throws IllegalArgumentException if the size is below 1
   */
  public ChartLimits limits(int size) {
    Require.atLeast(size, 1, "sample size");
    double half = WIDTH * Math.sqrt(share * (1 - share) / size);
    return new ChartLimits(Math.max(0, share - half), share, Math.min(1, share + half));
  }

  /**
   * The chance that the share in a sample is outside its limits where this is the true share.
   *
   * @param size the size of the sample, at least 1
   * @return the chance
   * @throws IllegalArgumentException if the size is below 1
   */
  public double falseAlarm(int size) {
    ChartLimits limits = limits(size);
    int fewest = 0;
    while (limits.beyond((double) fewest / size)) {
      fewest++;
    }
    int most = size;
    while (limits.beyond((double) most / size)) {
      most--;
    }
    double below = BinomialTail.atLeast(size - fewest + 1, size, 1 - share);
    return below + BinomialTail.atLeast(most + 1, size, share);
  }
}
