package org.quietline.stats.runlength;

import org.quietline.stats.distribution.Normal;

/**
 * The upper cumulative sum {@code C = max(0, C + x − k)}, alone or with single values watched
 * beside it.
 *
 * <p>The sum stands at zero or on a line up to the decision interval; the integral equation over
 * both is taken at zero and at Gauss–Legendre points.
 */
final class CumulativeSumWalk implements Walk {
  private final double reference;
  private final double interval;
  private final double width;
  private final double start;
  private final Line line;
  private boolean started;
  private double[] standing = {1};
  private double knownMean = Double.NaN;
  private Transition known = new Transition(0, 0);

  CumulativeSumWalk(double reference, double interval, double start, double width) {
    this.reference = reference;
    this.interval = interval;
    this.start = start;
    this.width = width;
    double up = width - reference;
    double down = width + reference;
    double high = interval - up;
    this.line =
        new Line(
            1, Line.edges(0, interval, high, down, high - up, high + down, down - up, down + down));
  }

  @Override
  public double step(double mean) {
    if (!started) {
      known = transition(mean, start);
    } else if (knownMean != mean) {
      double[] places = new double[line.size() + 1];
      for (int i = 0; i < line.size(); i++) {
        places[i + 1] = line.node(i);
      }
      known = transition(mean, places);
      knownMean = mean;
    }
    started = true;
    double signal = known.signalFrom(standing);
    standing = known.after(standing);
    return signal;
  }

  @Override
  public double[] standing() {
    return standing.clone();
  }

  private Transition transition(double mean, double... places) {
    Transition transition = new Transition(places.length, line.size() + 1);
    for (int i = 0; i < places.length; i++) {
      double kept = places[i] - reference;
      double highest = Math.min(width, interval - kept);
      transition.signal(i, Normal.above(highest - mean) + Normal.above(mean + width));
      double[] row = new double[line.size() + 1];
      row[0] = Chances.between(-width, -kept, mean);
      line.add(row, 1, Math.max(0, kept - width), kept + highest, kept + mean);
      transition.go(i, 0, row);
    }
    return transition;
  }
}
