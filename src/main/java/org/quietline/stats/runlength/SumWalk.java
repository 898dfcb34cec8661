package org.quietline.stats.runlength;

import org.jspecify.annotations.Nullable;

/**
 * Cumulative sums on their way between places.
 *
 * <p>The chances of a mean are kept as long as it stays. Where it is another each time they are
 * tilted from those of a mean of zero, which is exact and many times faster.
 */
final class SumWalk implements Walk {
  /** A change or two is no drift. */
  private static final int FEW_CHANGES = 2;

  private final Ways first;
  private final Ways later;
  private boolean started;
  private double[] standing = {1};
  private double knownMean = Double.NaN;
  private Transition known = new Transition(0, 0);
  private int changes;
  private @Nullable Tilt tilt;

  /**
   * A walk at its start.
   *
   * @param first the ways from the start
   * @param later the ways from each place that these and they themselves lead to
   */
  SumWalk(Ways first, Ways later) {
    this.first = first;
    this.later = later;
  }

  @Override
  public double step(double mean) {
    if (!started) {
      started = true;
      return take(first.at(mean));
    }
    if (knownMean != mean) {
      if (changes == FEW_CHANGES && later.tilts(mean)) {
        return tilted(mean);
      }
      changes = Math.min(FEW_CHANGES, changes + 1);
      known = later.at(mean);
      knownMean = mean;
    }
    return take(known);
  }

  @Override
  public double[] standing() {
    return standing.clone();
  }

  private double take(Transition transition) {
    double signal = transition.signalFrom(standing);
    standing = transition.after(standing);
    return signal;
  }

  private double tilted(double mean) {
    if (tilt == null) {
      tilt = later.tilt();
    }
    double signal = later.signal(standing, mean);
    double[] next = new double[standing.length];
    tilt.add(standing, mean, next);
    next[0] += later.zero(standing, mean);
    standing = Transition.normalized(next);
    return signal;
  }
}
