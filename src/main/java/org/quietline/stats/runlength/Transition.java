package org.quietline.stats.runlength;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The chances of one value's way between places where a chart can stand, and of its signal. */
final class Transition {
  private final int targets;
  private final double[] signals;
  private final List<Stretch> stretches = new ArrayList<>();

  Transition(int sources, int targets) {
    this.targets = targets;
    this.signals = new double[sources];
  }

  void signal(int source, double chance) {
    signals[source] = chance;
  }

  /**
   * Sets the chances, or weights, of neighbouring targets; zeros at the ends are not kept.
   *
   * @param source where the chart stands
   * @param offset the first of the targets
   * @param chances their chances
   */
  void go(int source, int offset, double... chances) {
    int from = 0;
    int to = chances.length;
    while (from < to && chances[from] == 0) {
      from++;
    }
    while (to > from && chances[to - 1] == 0) {
      to--;
    }
    if (from < to) {
      stretches.add(new Stretch(source, offset + from, Arrays.copyOfRange(chances, from, to)));
    }
  }

  double signalFrom(double[] standing) {
    double chance = 0;
    for (int i = 0; i < signals.length; i++) {
      chance += standing[i] * signals[i];
    }
    return Math.min(1, Math.max(0, chance));
  }

  double[] after(double[] standing) {
    double[] next = new double[targets];
    for (Stretch stretch : stretches) {
      double share = standing[stretch.source];
      for (int j = 0; j < stretch.chances.length; j++) {
        next[stretch.offset + j] += share * stretch.chances[j];
      }
    }
    return normalized(next);
  }

  /** The same weights with a sum of one, in their own array. */
  static double[] normalized(double[] weights) {
    double total = Arrays.stream(weights).sum();
    if (total > 0) {
      for (int i = 0; i < weights.length; i++) {
        weights[i] /= total;
      }
    }
    return weights;
  }

  private static final class Stretch {
    private final int source;
    private final int offset;
    private final double[] chances;

    Stretch(int source, int offset, double[] chances) {
      this.source = source;
      this.offset = offset;
      this.chances = chances;
    }
  }
}
