package org.quietline.stats.runlength;

import java.util.ArrayList;
import java.util.List;
import org.quietline.stats.distribution.Normal;

/**
 * The ways of one value between places where cumulative sums can stand, whatever the mean of the
 * value: to a signal, to the target at zero, and by a normal density onto lines.
 */
final class Ways {
  private static final double FARTHEST_MEAN = 12;
  private static final double LARGEST_POWER = 300;

  private final int targets;
  private final List<Ends> sources = new ArrayList<>();
  private final List<Way> all = new ArrayList<>();
  private double reach;

  Ways(int targets) {
    this.targets = targets;
  }

  /**
   * Adds a source.
   *
   * @param low a value below it signals
   * @param high a value above it signals
   * @param zeroLow values from here
   * @param zeroHigh to here, if that is more, lead to zero
   */
  void source(double low, double high, double zeroLow, double zeroHigh) {
    sources.add(new Ends(low, high, zeroLow, zeroHigh));
  }

  /**
   * Adds a way of the latest source onto a line, where {@code place + sign·value} is.
   *
   * @param line the line
   * @param offset the target that is its first point
   * @param from where on the line the ways begin
   * @param to where they end
   * @param place where a value of zero leads
   * @param sign 1 where a larger value leads higher, −1 where it leads lower
   */
  void go(Line line, int offset, double from, double to, double place, int sign) {
    all.add(new Way(sources.size() - 1, line, offset, from, to, place, sign));
    for (double end : new double[] {place, line.node(0), line.node(line.size() - 1)}) {
      reach = Math.max(reach, Math.abs(end));
    }
  }

  /** The chances for one mean. */
  Transition at(double mean) {
    Transition transition = new Transition(sources.size(), targets);
    for (int i = 0; i < sources.size(); i++) {
      transition.signal(i, sources.get(i).signal(mean));
      transition.go(i, 0, sources.get(i).zero(mean));
    }
    for (Way way : all) {
      double[] row = new double[way.line.size()];
      way.line.add(row, 0, way.from, way.to, way.place + way.sign * mean);
      transition.go(way.source, way.offset, row);
    }
    return transition;
  }

  /** Whether the chances for a mean can be had from those for a mean of zero without loss. */
  boolean tilts(double mean) {
    return Math.abs(mean) <= FARTHEST_MEAN && Math.abs(mean) * reach <= LARGEST_POWER;
  }

  /** The chances for a mean of zero, to be tilted to others. */
  Tilt tilt() {
    Tilt tilt = new Tilt(targets);
    for (Way way : all) {
      tilt.go(way.source, way.line, way.offset, way.from, way.to, way.place, way.sign);
    }
    return tilt;
  }

  double signal(double[] standing, double mean) {
    double chance = 0;
    for (int i = 0; i < standing.length; i++) {
      chance += standing[i] * sources.get(i).signal(mean);
    }
    return Math.min(1, Math.max(0, chance));
  }

  double zero(double[] standing, double mean) {
    double chance = 0;
    for (int i = 0; i < standing.length; i++) {
      chance += standing[i] * sources.get(i).zero(mean);
    }
    return chance;
  }

  private static final class Ends {
    private final double low;
    private final double high;
    private final double zeroLow;
    private final double zeroHigh;

    Ends(double low, double high, double zeroLow, double zeroHigh) {
      this.low = low;
      this.high = high;
      this.zeroLow = zeroLow;
      this.zeroHigh = zeroHigh;
    }

    double signal(double mean) {
      return Normal.above(high - mean) + Normal.above(mean - low);
    }

    double zero(double mean) {
      return Chances.between(zeroLow, zeroHigh, mean);
    }
  }

  private static final class Way {
    private final int source;
    private final Line line;
    private final int offset;
    private final double from;
    private final double to;
    private final double place;
    private final int sign;

    Way(int source, Line line, int offset, double from, double to, double place, int sign) {
      this.source = source;
      this.line = line;
      this.offset = offset;
      this.from = from;
      this.to = to;
      this.place = place;
      this.sign = sign;
    }
  }
}
